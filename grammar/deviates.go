package grammar

import "presshand/engine/unit"

// How far strips are from what they should be is no measure of them: "one strip is 1/32
// fat", "they're 1/16 short".

var (
	// offThick are words of a strip that is thicker or thinner than the others.
	offThick = wordSet(`proud fat fatter thick thicker thin thinner heavy heavier light lighter low lower high higher undersize undersized oversize oversized`)
	// offElse are words of other ways to be off.
	offElse = wordSet(`short shorter shy narrow narrower wide wider longer out off under scant loose looser tight tighter warped bent kinked curved wonky wavy hooked undercut full slack`)
)

// mostOdd, in metres: what is thicker is a strip, and not by how much it is off.
const mostOdd = 0.0018

// killDeviations gives what is said of one strip that is off to how much they vary or
// to the gap that it leaves, and else leaves it unused.
func (r *reader) killDeviations() {
	crooked := r.says("crooked")
	for i := range r.items {
		if !r.live(i) || !crooked && r.isBreak(i+1) || r.items[i].amount.link != linkNone || i+2 < len(r.items) && r.items[i+2].amount != nil || r.items[i].amount.value == nil || !r.length(i) || r.size(i) <= 0 || r.size(i) > mostApart {
			continue
		}
		if crooked && r.crookedBy(i) {
			r.bind(i, unit.Gap)
			continue
		}
		single, counted, ok := r.offSubject(i)
		if !ok {
			continue
		}
		n, w := i+1, r.wordAt(i+1)
		thick := offThick[w] && (w != "thick" || r.size(i) < mostOdd)
		f := unit.Field("")
		switch {
		case w == "crooked", (w == "out" || w == "off") && (r.word(n+1, "straight") || r.word(n+1, "of") && r.word(n+2, "straight")):
			f = unit.Gap
		case thick && single && !r.word(n+1, "of", "than"):
			f = unit.ThicknessSpread
		case thick && !r.compares(n) && w != "oversize", offElse[w] && (w != "wide" || r.size(i) < mostOdd) && (single || !r.compares(n)):
			r.items[i].amount.dead = true
		default:
			continue
		}
		r.items[n].meaning = meaning{}
		if f != "" && !r.has(f) && r.bind(i, f) {
			r.items[n].used = true
		}
		if counted >= 0 && r.free(counted) {
			r.items[counted].used = r.one(counted)
			r.items[counted].amount.dead = true
		}
	}
}

// crookedBy: "one board is crooked by 1/16".
func (r *reader) crookedBy(i int) bool {
	k := i - 1
	for r.word(k, "about", "only", "just", "by", "maybe", "around", "like") {
		k--
	}
	if !r.word(k, "crooked") || r.has(unit.Gap) || !r.mentions(kindNoun, "strip") || r.is(r.next(i), kindNoun) || r.is(r.next(i), kindAttr) {
		return false
	}
	r.items[k].used = true
	if c := r.within(0, k, kindNoun, "strip"); c > 0 && r.one(c-1) {
		r.items[c-1].used = true
	}
	return true
}

// compares reports whether item n is a comparative: all strips "1/32 thicker" are
// another size.
func (r *reader) compares(n int) bool {
	c, ok := comparatives[r.wordAt(n)]
	return ok && c.attr != ""
}

// offSubject reports whether strips, or one of them, are what the number at item i is
// said of, and where one of them is counted.
func (r *reader) offSubject(i int) (single bool, counted int, ok bool) {
	k := i - 1
	for r.word(k, "about", "only", "just", "like", "by", "maybe", "around", "a", "at", "still", "now") {
		k--
	}
	verb := k
	for r.word(k, "is", "are", "was", "were", "came", "comes", "come", "out", "run", "runs", "ran", "sits", "sit", "stands", "in", "up", "ended", "ends") {
		k--
	}
	if r.word(k, "them", "em", "those", "these") && r.word(k-1, "of") {
		if k -= 2; k >= 0 && r.free(k) && r.items[k].amount.bare() {
			return true, k, true // "3 of them are 1/16 narrow"
		}
	} else if r.is(k, kindNoun, "strip") {
		if single = !isPlural(r.items[k].word) || r.one(k-1); !single && k == verb {
			return false, -1, false // "strips 6 off 50x12"
		}
		if k--; r.word(k, "the", "my", "our", "these", "those") && r.word(k-1, "of") {
			k -= 2 // "one of the strips"
		}
	} else if !r.word(k, "one", "ones", "theyre") && !r.one(k) || k == i-1 && !r.word(k, "ones", "theyre") {
		return false, -1, false
	}
	for r.word(k, "outer", "outside", "middle", "inner", "last", "first", "end", "far", "bad") {
		k--
	}
	if r.one(k) {
		return true, k, true
	}
	return single || r.word(k, "one", "ones", "some", "couple", "few"), -1, true
}

// one reports whether item k is the number one in words.
func (r *reader) one(k int) bool {
	if k < 0 || k >= len(r.items) || r.items[k].amount == nil {
		return false
	}
	am := r.items[k].amount
	return am.form == formWords && am.equals(one)
}
