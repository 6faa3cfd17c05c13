package grammar

import (
	"presshand/engine/unit"
)

// killThen marks what was so once, or is so in another place, where the message tells
// how it is here and now: "last week it lost 4 inHg in 10 min, now it's 1 in 10 min",
// "old pump was 3 cfm, new one's 8", "the van was at 6 °C, the shop is 19 °C".
func (r *reader) killThen() {
	ours := r.says("ours", "mine", "weve", "we", "ive", "were", "im")
	if !ours && !r.means(kindAir, "shop") && !r.says("yesterday", "yesterdays", "previously", "formerly", "originally", "last", "used", "old", "previous", "before") {
		return
	}
	past := false
	for from, to := 0, 0; from < len(r.items); from = to + 1 {
		to = from
		for to < len(r.items) && !r.partsClauses(to) {
			to++
		}
		if ours {
			r.oursInstead(from, to)
		}
		once := r.once(from, to)
		if past = once || past && r.amountsIn(from, to) > 0; !past { // "last week, 4 inHg in 10 min"
			r.killElsewhere(from, to)
			continue
		}
		r.killOnce(from, to)
		past = once && r.amountsIn(from, to) == 0
	}
}

// oursInstead puts what is ours in the place of what [from, to) tells of others': "my
// buddy's is 8 cfm, ours is 6", "the other shop has 3 presses, we've 2".
func (r *reader) oursInstead(from, to int) {
	k := to + 1
	for r.word(k, "but", "and", "so") {
		k++
	}
	i := r.nextAmount(from, to)
	if i < 0 || r.within(from, i, kindSay) >= 0 || r.within(from, i, kindPerson) < 0 && !r.opensWithin(from, i, "neighbour", "neighbor", "neighbours", "neighbors", "theirs", "others") || !r.word(k, "ours", "mine", "weve", "we", "ive", "were", "im") {
		return
	}
	j := r.nextAmount(k, min(k+4, len(r.items)))
	if j < 0 || !r.live(j) || !alike(r.items[i].amount, r.items[j].amount) || r.items[i].amount.unit == nil && r.items[j].amount.unit != nil || r.ofElse(i, j) {
		return
	}
	const furthest = 5
	if a, b := r.items[i].amount.float(), r.items[j].amount.float(); a < furthest*b && b < furthest*a {
		r.takesPlace(i, j)
	}
}

// partsClauses reports whether item i ends a clause; a stroke or a hyphen does not.
func (r *reader) partsClauses(i int) bool {
	it := &r.items[i]
	switch it.brk {
	case ',', '.', ';', '\n', '(', ')', '?', '!':
		return true
	}
	return it.amount == nil && (it.word == "but" || it.word == "now" && i > 0)
}

// pastTimes are what "last" goes with of the past: the "last joint" is one of a panel's.
var pastTimes = wordSet(`week weeks month months year years time times night winter summer spring autumn fall monday tuesday wednesday thursday friday saturday sunday tues thurs mon wed fri`)

// once reports whether [from, to) speaks of another time: "yesterday", "last week",
// "the old pump".
func (r *reader) once(from, to int) bool {
	for k := from; k < to; k++ {
		if r.items[k].amount == nil && r.onceAt(k, to) {
			return true
		}
	}
	return false
}

// onceAt reports whether the word at item k, in a clause that ends at item to, speaks of
// another time.
func (r *reader) onceAt(k, to int) bool {
	switch r.items[k].word {
	case "yesterday", "yesterdays", "previously", "formerly", "originally":
		return true
	case "last":
		return k+1 < to && (pastTimes[r.items[k+1].word] || r.word(k+1, "batch", "lot", "load") && r.word(k+2, "was", "were", "had")) && !r.word(k-1, "since")
	case "used":
		return r.word(k+1, "to") && r.word(k+2, "be", "run", "pull", "hold", "get", "do", "sit", "read", "show") || r.is(k+2, kindVacuum)
	case "old", "previous":
		return r.is(k+1, kindNoun, "pump", "leak") || r.is(k+1, kindVacuum) || r.word(k+1, "one", "ones", "tape", "seal", "gasket", "setup")
	case "before":
		return r.word(k+1, "the", "we", "i") && r.word(k+2, "new", "retaped", "fixed", "taped", "repair", "fix", "changed", "swapped", "sealed")
	}
	return false
}

// hourOfPast: of "yesterday at 9 am the gauge was 26" the hour parts nothing.
func (r *reader) hourOfPast(k int) bool {
	am := r.items[k].amount
	if !am.bare() || am.link != linkAt && !r.word(k-1, "at", "around", "about", "by") {
		return false
	}
	return r.is(k+1, kindRole, "am", "pm") || r.opensWithin(max(k-3, 0), k, "yesterday")
}

// onlyYesterdays: a reply "yesterday the gauge was 26" does not say what it shows now.
func (r *reader) onlyYesterdays(i, from, to int) bool {
	alone := from == 0 && to == len(r.items) && r.opensWithin(from, to, "yesterday")
	return r.habit.Follows && alone && r.items[i].amount.bare() && r.within(from, i, kindVacuum, "gauge") >= 0 && r.opensWithin(from, i, "was", "showed", "read")
}

// onceOnly reports whether an amount is of one of the dimensions of which a load or a press has one value at a time.
func onceOnly(am *amount) bool {
	return am.is(unit.Warmth) || am.is(unit.Pumping) || am.is(unit.Pressing) || am.is(unit.Leaking) || am.is(unit.Content)
}

// killOnce marks the numbers of [from, to), which is of another time, that another
// clause tells anew, and the hours that work lasted till then.
func (r *reader) killOnce(from, to int) {
	for i := from; i < to; i++ {
		am := r.items[i].amount
		if am == nil || am.dead {
			continue
		}
		switch {
		case r.hourOfPast(i), r.onlyYesterdays(i, from, to), r.countedAgain(i, to), r.gaugeAgain(i, to):
			am.dead = true
		case r.length(i) && r.thisOnes(to) && r.comparable(i, r.nextAmount(to, len(r.items))):
			r.takesPlace(i, r.nextAmount(to, len(r.items))) // "the last batch was 3/4 thick, this one's 1/2"
			r.items[to+1].meaning, r.items[to+1].word, r.items[to+1].used = meaning{}, "", true
		case onceOnly(am) && r.saidApart(am.unit.Dimension, from, to):
			am.dead = true
			if j := r.nextAmount(i, to); am.is(unit.Pressing) && j >= 0 && r.items[j].amount.is(unit.Lasting) {
				r.items[j].amount.dead = true
			}
		case (am.bare() || am.form == formPair) && r.word(i-1, "till", "until", "til", "at", "by", "before", "to") && r.wasWorking(from, i):
			am.dead = true
			for k := from; k < i; k++ {
				if r.is(k, kindRole, "start", "deadline") || r.is(k, kindAsk, "schedule") {
					r.items[k].meaning, r.items[k].used = meaning{}, true
				}
			}
		}
	}
}

// countedAgain: of "we tried 4 strips last time. 11 ash strips" those of now count, which
// stand before or behind.
func (r *reader) countedAgain(i, to int) bool {
	what := r.next(i)
	if !r.items[i].amount.bare() || !r.is(what, kindNoun) || what >= to {
		return false
	}
	for k := range r.items {
		if (k < i || k >= to) && r.live(k) && r.items[k].amount.bare() && r.is(r.nextPastWood(k), kindNoun, r.items[what].id) && !r.spoiled(k) {
			return true
		}
	}
	return false
}

// gaugeAgain: of "last week the gauge read 18. 21 inHg" the later reading counts.
func (r *reader) gaugeAgain(i, to int) bool {
	return r.items[i].amount.bare() && r.word(i-1, "read", "was", "showed") && r.is(r.prev(i-1), kindVacuum, "gauge") && r.saidApart(unit.Pressing, i, to)
}

// thisOnes: "this one's 1/2", behind what the last one was.
func (r *reader) thisOnes(to int) bool {
	k := to + 1
	return r.word(k, "this", "these", "now", "today", "todays") && (r.word(k+1, "ones", "one", "is", "are", "its", "theyre", "time", "batch") || r.is(k+1, kindRole, "lot")) && r.nextAmount(k, min(k+5, len(r.items))) >= 0
}

// wasWorking: "yesterday we didn't get going till nine", "it took us till 1:40".
func (r *reader) wasWorking(from, to int) bool {
	return r.opensWithin(from, to, "took", "ran", "were", "was", "finished", "ended", "worked", "stayed", "got", "didnt", "kept", "left", "started", "began", "went", "dragged", "lasted") || r.within(from, to, kindNot, "not") >= 0
}

func (r *reader) nextAmount(i, to int) int {
	for j := i + 1; j < to; j++ {
		if r.items[j].amount != nil {
			return j
		}
	}
	return -1
}

// saidApart reports whether an amount of the dimension stands outside [from, to), in a
// clause that is not of another time.
func (r *reader) saidApart(d unit.Dimension, from, to int) bool {
	for i := range r.items {
		if i >= from && i < to {
			continue
		}
		if am := r.items[i].amount; am != nil && !am.dead && am.is(d) {
			return true
		}
	}
	return false
}

// afield are places with an air of their own that no load is glued in.
var afield = wordSet(`van truck lorry ute car kiln outside outdoors warehouse store storeroom container dryer radiator pot oven stove kettle cellar loft attic basement supplier suppliers depot rack`)

// killElsewhere marks how warm and how damp it is in another place than the shop,
// where that is told as well: "kiln at 40% rh, workshop 60% rh".
func (r *reader) killElsewhere(from, to int) {
	if !r.means(kindAir, "shop") {
		return
	}
	at := -1
	for k := from; k < to && at < 0; k++ {
		if w := r.items[k].word; r.items[k].amount == nil && (afield[w] || w == "van at" || w == "truck at") {
			at = k
		}
	}
	if at < 0 || r.within(from, to, kindAir, "shop", "service") >= 0 {
		return
	}
	for i := from; i < to; i++ {
		am := r.items[i].amount
		if am == nil || am.dead || !am.is(unit.Warmth) && !(am.is(unit.Proportion) && r.within(from, to, kindAir, "rh") >= 0) {
			continue
		}
		if r.shopTells(am.unit.Dimension) {
			am.dead = true
			if w := r.items[at].word; w == "van at" || w == "truck at" {
				r.items[at].meaning, r.items[at].used = meaning{}, true
			}
		}
	}
}

// shopTells reports whether the message tells an amount of the dimension right beside
// the shop.
func (r *reader) shopTells(d unit.Dimension) bool {
	for i := range r.items {
		if !r.is(i, kindAir, "shop") {
			continue
		}
		from, to := r.clause(i)
		for k := from; k < to; k++ {
			if am := r.items[k].amount; am != nil && am.is(d) {
				return true
			}
		}
	}
	return false
}
