package grammar

import "presshand/engine/unit"

// goneOf is how many of the pile found at k are told behind it to be no more to be had:
// "10 at 2 3/4, of which Ray used 4", "9 of 3, 2 of which are split"; 0 where none are.
// "4 of them" behind two piles may be of both, and "2 of which are bent" may do yet: both
// are asked about.
func (r *reader) goneOf(found []pile, k int) int {
	p := found[k]
	from, to := max(p.count, p.width)+1, len(r.items)
	if k+1 < len(found) {
		to = min(found[k+1].count, found[k+1].width)
	}
	_, end := r.sentence(from - 1)
	if n, ok := r.badOnes(found, k, from, min(to, end)); ok {
		return n
	}
	apart := end // from there on a sentence of its own may be of all piles
	for n := 0; n < 2 && end+1 < len(r.items) && r.items[end].brk == '.'; n++ {
		_, end = r.sentence(end + 1)
	}
	for i := from; i < min(to, end); i++ {
		n, ok := r.wholeAt(i)
		if !ok || !r.free(i) || !r.items[i].amount.bare() || r.items[i].amount.plural || r.items[i].amount.link != linkNone {
			continue
		}
		at, of := r.ofThose(i)
		if !of {
			apart = min(apart, i) // "need 48 wide" stands between
			continue
		}
		several, bent := k > 0 && (r.word(at, "them", "em") || i > apart), r.crooked(at)
		if !bent && !r.gonePart(at) {
			return 0
		}
		if (several || bent) && n > 0 {
			r.items[i].used = true
			r.phrase.Changes = append(r.phrase.Changes, Change{By: r.amendment(i), Less: true, Fields: []unit.Field{unit.StockPiles}})
			r.useSpoilt(at)
			return 0
		}
		if have, _ := r.items[p.count].amount.whole(); n < 1 || n >= have {
			return 0
		}
		r.items[i].used = true
		r.unuse(r.items[p.count].text)
		r.unuse(r.items[i].text)
		r.useSpoilt(at)
		return n
	}
	return 0
}

// badOnes is how many "but one's got a split" or "but two are cracked" right behind the pile
// found at k rules out; behind several they may be of any, which is asked about.
func (r *reader) badOnes(found []pile, k, from, to int) (n int, ok bool) {
	i := from
	for r.is(i, kindNoun, "strip") || r.isBreak(i) && i == from || r.word(i, "but", "and", "though", "only", "wide") || r.is(i, kindAttr, "wide") {
		i++
	}
	if i >= to || i < from || !r.opensWithin(from, i, "but", "and", "though", "only") && !r.isBreak(i-1) {
		return 0, false
	}
	if k > 0 && r.within(found[k-1].width, found[k].count, kindFix) >= 0 {
		return 0, false // "wait its 8 at 2 3/8, one is split" says why
	}
	n = 1
	if !r.word(i, "ones") {
		m, whole := r.wholeAt(i)
		if !whole || !r.free(i) || !r.items[i].amount.bare() || r.items[i].amount.plural || r.items[i].amount.link != linkNone || !r.word(i+1, "has", "have", "got", "is", "are", "had") {
			return 0, false
		}
		n = m
	}
	bad := r.gonePart(i)
	for j := i + 1; j < to && j < i+5 && !r.isBreak(j) && !bad; j++ {
		bad = r.word(j, "knot", "knots", "split", "splits", "crack", "cracks", "shake", "shakes", "rot", "worm")
	}
	_, end := r.clause(i)
	if have, _ := r.items[found[k].count].amount.whole(); !bad || n < 1 || n >= have || r.negatedWithin(i, end) || r.amountsIn(i+1, end) > 0 || r.opensWithin(i, end, "fine", "ok", "okay", "usable", "so", "small", "tiny", "little", "bit") {
		return 0, false
	}
	if k > 0 {
		r.phrase.Changes = append(r.phrase.Changes, Change{By: Amendment{Text: r.items[i].text, Value: float64(n)}, Less: true, Fields: []unit.Field{unit.StockPiles}})
		n = 0
	} else {
		r.unuse(r.items[found[k].count].text)
		if r.items[i].amount != nil {
			r.unuse(r.items[i].text)
		}
	}
	r.items[i].used = true
	r.useSpoilt(i)
	return n, true
}

// ofThose is the item of "which" or "those" by which the count at item i is one of some of
// a pile: "2 of those", "of which Ray used 4".
func (r *reader) ofThose(i int) (at int, ok bool) {
	if r.word(i+1, "of") && r.word(i+2, "which", "those", "these", "them", "em") {
		return i + 2, true
	}
	for k := i - 1; k > 0 && k > i-5 && r.items[k].amount == nil && !r.isBreak(k); k-- {
		if r.word(k, "which", "those", "these") && r.word(k-1, "of") {
			return k, true
		}
	}
	return 0, false
}

// gonePart reports whether the clause of item at says that those are gone or no good.
func (r *reader) gonePart(at int) bool {
	from, to := r.clause(at)
	for j := from; j < to; j++ {
		if r.items[j].amount == nil && (spoilt[r.items[j].word] || r.word(j, "took", "broke", "knot", "knots", "knotty", "went", "spoken", "promised", "short") || r.is(j, kindNot, "no") && r.word(j+1, "good", "use")) {
			return !r.negatedWithin(from, j)
		}
	}
	return false
}

// crooked reports whether the clause of item at says that those are out of true, with no
// figure of by how much: "2 of them are bowed".
func (r *reader) crooked(at int) bool {
	from, to := r.clause(at)
	for j := at + 1; j < to; j++ {
		if r.is(j, kindNoun, "bow", "cup") && r.word(j, "bowed", "cupped") || r.word(j, "crooked", "bent", "kinked", "banana", "sprung") {
			return !r.negatedWithin(from, j) && r.amountsIn(at, to) == 0
		}
	}
	return false
}

// negatedWithin reports whether a word of [from, to) denies: "2 of those are not split".
func (r *reader) negatedWithin(from, to int) bool { return r.within(from, to, kindNot) >= 0 }

// useSpoilt uses up the words around item at that say what is the matter with some.
func (r *reader) useSpoilt(at int) {
	from, to := r.clause(at)
	for j := from; j < to; j++ {
		if r.items[j].amount == nil && spoilt[r.items[j].word] {
			r.items[j].used = true
		}
	}
}

// reluctant reports whether a wish and no order stands around the word of denial at item j:
// "I'd rather not touch the 68s", "skip the 2s if you can help it".
func (r *reader) reluctant(j int) bool {
	from, to := r.sentence(j)
	for k := from; k < to; k++ {
		if r.word(k, "unless", "rather", "prefer", "possible", "possibly", "ideally") || r.word(k, "if") && r.word(k+1, "you", "we", "i", "it") && r.word(k+2, "can", "could", "avoidable") {
			return true
		}
	}
	return false
}

// boardWanted: "want a 300 wide board out of them" says what strips of a stock must come to.
func (r *reader) boardWanted(i int) bool {
	if !r.has(unit.StockPiles) {
		return false
	}
	p := r.prev(i)
	if r.is(p, kindNoun, "strip") && !isPlural(r.items[p].word) {
		p = r.prev(p)
	}
	return r.is(p, kindRole, "target") && r.size(i) > leastFenced && r.forStrips(i)
}

// getTo: "can I get to 50" asks whether strips of a stock come to so much.
func (r *reader) getTo(i int) bool {
	wide := r.length(i) && r.size(i) >= leastFenced && r.isBreak(i+1)
	if !wide || !r.has(unit.StockPiles) && r.stockPairs(i) < 2 {
		return false
	}
	if r.word(i-1, "a") && r.word(i-2, "do", "give", "cover") {
		return true // "will nine 2 1/2s and five 3s do a 36?"
	}
	get := i - 1
	if r.word(get, "to") {
		get--
	}
	if r.word(get, "me", "us") && r.word(get-1, "get") {
		return true // "get me to 40"
	}
	gets := r.word(get, "get", "getto", "get to")
	strips := r.word(get-1, "that", "these", "those")
	somebody := r.word(get-1, "i", "we", "you", "it", "they", "them") && r.word(get-2, "can", "could", "will", "would", "does", "do")
	return gets && (strips || somebody)
}

// widthOfAll: "how wide will it come out if I use all 9 of the 2 3/8 and 4 of the 3 1/8"
// asks for a sum, and for nothing that a bar can do.
func (r *reader) widthOfAll() {
	if r.solving != unit.PanelWidth || r.mentions(kindNoun, "bar", "wedge") || r.mentions(kindVacuum) || r.pressureSaid() || r.mentions(kindAttr, "thick") {
		return
	}
	for k := range r.phrase.Asks {
		if a := &r.phrase.Asks[k]; a.Solve == unit.PanelWidth && len(a.Goal) == 0 {
			a.About, a.Solve = Strips, ""
			r.solving, r.topic = "", Strips
		}
	}
}

// stockPairs counts the counts and widths of strips before item i.
func (r *reader) stockPairs(i int) int {
	n := 0
	for k := range i {
		if p, ok := r.pileAt(k); ok && r.length(p.width) && small(r.size(p.width)) {
			n++
		}
	}
	return n
}

// listsStock: "9 of 3 1/4 and 12 of 2, has to come out at 26, enough?" begins with strips, not with a load.
func (r *reader) listsStock(at int) bool {
	if !r.mentions(kindAsk, "strips") && !r.mentions(kindRole, "target") {
		return false
	}
	_, pile := r.pileAt(at)
	return pile && r.stockPairs(len(r.items)) > 1
}

// reckoned takes words for what they are beside a stock: "which I make 7 at 62" makes
// nothing, and in "boss wants it 18 1/4" the width is needed.
func (r *reader) reckoned() {
	be, to := r.says("be", "should be"), r.says("get to")
	gets := r.says("get", "for", "to", "makes", "gets", "gives") && !r.mentions(kindNoun, "bar", "panel", "press")
	if !be && !to && !gets && !r.says("make", "wants") {
		return
	}
	for i := range r.items {
		switch w := r.items[i].word; {
		case r.items[i].amount != nil:
			if be && r.free(i) && r.itShouldBe(i) && r.length(i) {
				r.items[i-1].meaning = meaning{kind: kindRole, id: "target"}
				r.hear(i - 1)
			}
		case w == "make" && r.is(i, kindRole, "target") && r.word(i-1, "i") && r.word(i-2, "which", "that"):
			r.items[i].meaning = meaning{}
		case w == "wants" && r.is(i, kindSay) && r.word(i+1, "it", "this", "that") && r.wideAlone(i+2) && r.stockPairs(len(r.items)) > 1:
			r.items[i].meaning = meaning{kind: kindRole, id: "target"}
			r.hear(i)
		case gets && r.getsWide(i), to && r.getsToWidth(i):
			r.items[i].meaning = meaning{kind: kindRole, id: "target"}
			r.hear(i)
		}
	}
}

// itShouldBe: in "12 at 2, 10 at 3, (it) should be 38" the number is far beyond all that the
// piles tell, and is what they have to come to; else it may correct one of them.
func (r *reader) itShouldBe(i int) bool {
	k := i - 1
	if !r.word(k, "should be") {
		if !r.word(k, "be") || !r.word(k-1, "to", "must", "should") {
			return false
		}
		k--
		for r.word(k-1, "has", "needs", "supposed", "got", "ought") {
			k--
		}
	}
	_, to := r.clause(i)
	if !r.word(k-1, "it", "its", "itll", "thing", "lot") && !r.isBreak(k-1) || r.size(i) < leastFenced || r.timesAt(i+1) || i+1 < to && !r.is(i+1, kindAttr, "wide") {
		return false
	}
	most, widest, piles := 0, 0.0, 0
	for j := range k {
		p, ok := r.pileAt(j)
		if !ok || !r.length(p.width) || !small(r.size(p.width)) {
			continue
		}
		n, _ := r.items[p.count].amount.whole()
		most, widest = max(most, n), max(widest, r.size(p.width))
		piles++
	}
	return piles > 1 && r.size(i) > 2*widest && (!r.items[i].amount.bare() || r.items[i].amount.float() > float64(2*most))
}

// asksWidth: behind the word at item i stands what strips are to come to: "can I get 31 wide",
// "enough for 31 wide", "closest to 31", "what makes 31 wide".
func (r *reader) asksWidth(i int) bool {
	if r.items[i].amount != nil {
		return false
	}
	switch r.items[i].word {
	case "get":
		return r.word(i-1, "i", "we", "you") && r.word(i-2, "can", "could", "will", "would")
	case "for":
		return r.word(i-1, "enough")
	case "to":
		return r.word(i-1, "closest", "nearest", "close")
	case "makes", "gets", "gives":
		return r.word(i-1, "what", "which")
	}
	return false
}

// getsWide: in "five 4 1/4, seven 3 - can I get 31 wide" the word at item i says what strips that
// are counted in words must come to.
func (r *reader) getsWide(i int) bool {
	if !r.asksWidth(i) {
		return false
	}
	j := i + 1
	for r.word(j, "to", "a", "it") {
		j++
	}
	wide := r.is(j+1, kindAttr, "wide")
	if !r.free(j) || !r.length(j) || r.size(j) < leastFenced || r.timesAt(j+1) || !wide && !r.isBreak(j+1) {
		return false
	}
	return r.spokenCounts() > 1 && !r.mentions(kindNoun, "bar", "panel", "press") && !r.mentions(kindVacuum) && !r.pressureSaid()
}

// getsToWidth: beside a stock "how do i get to 24" is of its width, and no gauge's.
func (r *reader) getsToWidth(i int) bool {
	if !r.is(i, kindVacuum, "pull") || !r.word(i, "get to") || !r.wideAlone(i+1) || !r.isBreak(i+2) && !r.is(i+2, kindAttr, "wide") || r.stockPairs(len(r.items)) < 2 {
		return false
	}
	return r.within(0, i, kindVacuum) < 0 && r.within(i+1, len(r.items), kindVacuum) < 0 && !r.mentions(kindNoun, "bar", "pump", "bag", "press", "leak") && !r.pressureSaid()
}

// wideAlone reports whether a measure at item i could be how wide a panel is, as no other
// goes with it and no word says that it is something else.
func (r *reader) wideAlone(i int) bool {
	return r.free(i) && r.length(i) && r.size(i) > leastFenced && !r.timesAt(i+1) && !r.is(r.next(i), kindAttr, "thick", "long", "tall")
}

// someOfPanels: "4 panels, two of them 24 wide and two 18" tells how wide some are.
func (r *reader) someOfPanels(i int) bool {
	w := i + 3
	return r.word(i+1, "of") && r.word(i+2, "them", "em", "those", "these") && r.free(w) && r.length(w) && !r.timesAt(w+1) && r.size(w) > widestStrip && r.within(0, i, kindNoun, "panel") >= 0
}
