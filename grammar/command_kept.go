package grammar

// Loads that nobody is to take in, and those that may go in again.

// keeping is what nobody is to do to a load that waits.
var keeping = wordSet(`take put press run load touch start bring move glue slide stick shove`)

// keptOut reads what nobody is to press yet as a hold.
func (r *reader) keptOut() bool {
	told := r.means(kindVerb, string(Hold)) || r.means(kindNot) || r.says("nobody", "noone", "dont", "never", "no")
	return told && !r.asksSomething() && (r.nobodyTakes() || r.notReady())
}

// nobodyTakes reads "nobody take 14 in, the mat is missing".
func (r *reader) nobodyTakes() bool {
	first := r.firstWord()
	if !r.word(first, "nobody", "noone", "no") {
		return false
	}
	k := r.forbidden(first)
	if k < 0 || r.mentions(kindVerb, string(Hold)) {
		return false
	}
	refs, next := r.references(k)
	if next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.unitRaw == "in" {
		next++
	}
	if len(refs) == 0 || r.amountsIn(next, len(r.items)) > 0 || r.is(next, kindVerb, string(Out)) || r.word(next, "out", "off") {
		return false
	}
	for r.word(next, "in", "yet", "until", "till") || r.is(next, kindUnit, "in") || r.is(next, kindVerb, string(In)) {
		next++
	}
	r.close(&Command{Verb: Hold, Loads: refs}, next)
	return true
}

// notReady reads "11 is not ready yet, nobody take it in".
func (r *reader) notReady() bool {
	at := r.opening()
	refs, next := r.references(max(at, 0))
	if at < 0 || len(refs) != 1 || r.amountsIn(next, len(r.items)) > 0 {
		return false
	}
	for k := next; k < len(r.items); k++ {
		if r.is(k, kindVerb, string(In), string(Out)) || r.is(k, kindRole, "out") {
			return false // "14 is out, don't touch it"
		}
		if it := r.forbidden(k); it >= 0 && r.word(it, "it", "that", "this") && !r.is(it+1, kindNoun) && !r.is(it+1, kindVerb, string(Out)) && !r.word(it+1, "out", "off") {
			for r.isBreak(k-1) || r.word(k-1, "so", "and") {
				k--
			}
			r.close(&Command{Verb: Hold, Loads: refs, Note: trimmed(r.text[r.items[next-1].end:r.items[k].start])}, len(r.items))
			return true
		}
	}
	return false
}

// forbidden is what nobody is to take from item k on: the "it" of "nobody take it" and of "don't
// anybody press it"; -1 where nothing is forbidden.
func (r *reader) forbidden(k int) int {
	switch {
	case r.is(k, kindVerb, string(Hold)) && r.word(k, "dont run", "do not run", "dont start", "do not start", "dont glue", "dont load", "do not load", "dont touch", "do not touch", "dont press", "do not press"):
		return k + 1
	case r.word(k, "nobody", "noone", "dont", "never"), r.is(k, kindNot, "not") && r.word(k-1, "do"), r.word(k, "no") && r.word(k+1, "one"):
	default:
		return -1
	}
	for k++; r.word(k, "anyone", "anybody", "you", "please", "one", "to", "must", "should", "ever") || k < len(r.items) && r.items[k].text == "one"; k++ {
	}
	if !keeping[r.wordAt(k)] {
		return -1
	}
	return k + 1
}

// mended tells that what a load waited for is there.
var mended = wordSet(`found find fixed fitted replaced swapped changed mended repaired sorted got back here done made cut arrived ready put glued cleaned dug`)

// clearsAgain reads "ok found another one, clear it" of the load that was spoken of.
func (r *reader) clearsAgain() bool {
	if !r.means(kindVerb, string(Clear)) || r.asksSomething() || r.mentions(kindNot) {
		return false
	}
	told := false
	for i := 1; i < len(r.items); i++ {
		told = told || r.items[i-1].amount == nil && mended[r.items[i-1].word]
		if !told || !r.is(i, kindVerb, string(Clear)) || !r.isBreak(i-1) && !r.word(i-1, "and", "so", "then", "can", "please", "to") || !r.word(i+1, "it", "that", "this") || r.numbersIn(0, i) > 0 {
			continue
		}
		end := i + 1
		for r.word(end+1, "now", "again", "please", "pls", "then", "for", "me", "thanks") {
			end++
		}
		if r.nothingAfter(end) {
			r.close(&Command{Verb: Clear}, len(r.items))
			return true
		}
	}
	return false
}
