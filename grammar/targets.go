package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// targetWidths reads the width that strips must fill: "need 48", "make 30 even",
// "three panels 24 wide and one 30".
func (r *reader) targetWidths() {
	if !r.has(unit.StockPiles) && r.topic != Strips {
		return
	}
	first := -1
	for i := range r.items {
		if !r.free(i) || !r.length(i) || r.countsOther(i) || r.is(r.next(i), kindRole, "trim") || r.is(r.next(i), kindNoun) && !r.is(r.next(i), kindNoun, "panel", "fence", "opening") {
			continue
		}
		if r.is(r.next(i), kindAttr) && r.items[r.next(i)].id != "wide" && !r.items[r.next(i)].used {
			continue
		}
		if r.panelsOfWidth(i) || r.is(i-1, kindRole, "target") && r.countAtWide(i) && !r.has(unit.PanelCount) { // "need two at 24"
			r.bind(i, unit.PanelCount)
			continue
		}
		if am := r.items[i].amount; am.plural || am.form == formWords && am.unit == nil && r.is(r.next(i), kindNoun, "panel") || !r.targetCue(i) {
			continue
		}
		if first < 0 {
			first = i
			r.bind(i, unit.TargetWidth)
			continue
		}
	}
}

// panelsTold reads "panels: 3 of 420 wide and 2 of 600 wide": behind the heading a
// count and a width are of panels, not of strips in stock.
func (r *reader) panelsTold() {
	if !r.mentions(kindNoun, "panel") || r.has(unit.Targets) || r.has(unit.TargetWidth) || !r.stockContext() {
		return
	}
	for k := range r.items {
		if !r.is(k, kindNoun, "panel") || !isPlural(r.items[k].word) || !r.labels(k+1) && !r.word(k+1, "are", "wanted", "needed") || k+2 >= len(r.items) || r.items[k+2].amount == nil {
			continue
		}
		var piles unit.Piles
		var at []pile
		for i := k + 2; i < len(r.items) && !r.isStop(i); i++ {
			p, ok := r.pileAt(i)
			if !ok || p.count != i {
				continue
			}
			n, _ := r.items[i].amount.whole()
			v, _, ok := r.valueOf(r.items[p.width].amount, unit.TargetWidth)
			if !ok || impossible(unit.TargetWidth, v) != "" {
				return
			}
			piles, at = append(piles, unit.Pile{Width: v, Count: n}), append(at, p)
			i = p.width
		}
		for _, p := range at {
			r.items[p.count].used, r.items[p.width].used = true, true
			r.useWide(p.width)
		}
		switch len(at) {
		case 0:
		case 1:
			r.bind(at[0].count, unit.PanelCount)
			r.bind(at[0].width, unit.TargetWidth)
		default:
			text := r.text[r.items[at[0].count].start:r.items[at[len(at)-1].width].end]
			r.bound = append(r.bound, binding{Fact{Field: unit.Targets, Value: piles, Unit: r.bareUnit(nil, unit.Distance), Text: text}, at[0].count, false})
		}
		return
	}
}

// eachWide: "how many strips for 30 wide if they're 2 3/8 each" tells the strips'
// width.
func (r *reader) eachWide() {
	if !r.says("ea") && !r.means(kindRole, "in a row") || !r.mentions(kindNoun, "strip") || r.has(unit.StripWidth) || r.has(unit.StockPiles) {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if !r.free(i) || !r.length(i) || !small(r.size(i)) || r.items[i].amount.link != linkNone || r.is(r.next(i), kindAttr) || r.is(r.next(i), kindNoun) {
			continue
		}
		behind := (r.is(i+1, kindRole, "in a row") || r.word(i+1, "ea")) && (r.word(i-1, "theyre", "are", "at", "being") || r.isBreak(i-1) && r.isBreak(i+2) && r.items[i].amount.form != formWords && !(r.items[i].amount.bare() && r.items[i].amount.form == formInt))
		before := r.word(i-1, "is", "being", "at") && r.is(i-2, kindRole, "in a row")
		if !behind && !before {
			continue
		}
		if from, _ := r.sentence(i); behind && r.within(from, i, kindNoun, "sled") >= 0 && r.within(from, i, kindNoun, "strip") < 0 {
			r.bind(i, unit.SledThickness) // "two sleds one on the other, 3/4 each, strips 5/16"
			continue
		}
		r.bind(i, unit.StripWidth)
		return
	}
}

// targetCue: a word of need before the amount, or a panel beside it.
func (r *reader) targetCue(i int) bool {
	if r.is(r.next(i), kindNoun, "panel", "fence", "opening") || r.cameOut(i) {
		return true
	}
	for j := i - 1; j >= 0 && !r.isBreak(j); j-- {
		switch {
		case j == i-1 && (r.word(j, "hit", "reach") || r.getTo(i)):
			return true
		case r.is(j, kindRole, "target"), r.is(j, kindNoun, "panel", "opening", "fence"), r.is(j, kindAsk, "strips"), r.is(j, kindAsk, "load"):
			return true
		case j == i-1 && r.word(j, "for") && r.asksFor(Strips) && !r.has(unit.StockPiles) && r.size(i) > leastFenced:
			return true // "how many strips for 33"
		case r.word(j, "get", "reach", "hit") && (r.word(i+1, "out", "outta", "from") || r.is(i+1, kindVerb, "out")):
			return true
		case r.is(j, kindRole, "trim"):
			return false
		case r.items[j].amount != nil && !r.items[j].used:
			return false
		}
	}
	return false
}

// cameOut: "24 finished", "so 900 clean", "dead on 360", "finish at 36".
func (r *reader) cameOut(i int) bool {
	const leastWide = 0.15
	if r.size(i) < leastWide || r.items[i].amount.link != linkNone && r.items[i].amount.link != linkAt {
		return false
	}
	if r.word(i+1, "finished", "clean", "net", "final", "done", "overall", "altogether", "exactly", "trimmed", "even", "neat") {
		return true
	}
	if r.word(i+1, "clear") && r.is(i+2, kindAttr, "wide") {
		r.items[i+2].used = true
		return true // "30 1/2 clear width"
	}
	if r.is(i+1, kindRole, "in a row") && r.isBreak(i+2) && r.mentions(kindNoun, "panel") {
		return true // "three tops, 450 each"
	}
	return r.word(i-1, "on", "at", "to", "with") && r.word(i-2, "dead", "bang", "spot", "smack", "finish", "finishes", "finishing", "ends", "comes", "out", "up") || r.word(i-1, "exactly", "dead", "finish", "finishes", "finished", "net", "hit") || r.word(i-1, "a") && r.word(i+1, "from")
}

// panelsOfWidth: "make two 16 wide" counts panels by a number in words.
func (r *reader) panelsOfWidth(i int) bool {
	n, spoken := r.spokenNumber(i)
	k := i + 1
	return spoken && n > 1 && k < len(r.items) && r.free(k) && r.length(k) && r.is(r.next(k), kindAttr, "wide") && !small(r.size(k)) && !r.has(unit.PanelCount)
}

// countsOfPlurals counts "eleven 2s, six 3s": a count and what is so wide.
func (r *reader) countsOfPlurals() int {
	n := 0
	for i := 0; i+1 < len(r.items); i++ {
		next := r.items[i+1].amount
		if next == nil || !next.plural || !r.free(i) || next.link != linkNone || !r.length(i+1) || !small(r.size(i+1)) {
			continue
		}
		if _, whole := r.items[i].amount.whole(); whole && !r.items[i].amount.plural {
			n++
		}
	}
	return n
}

// ofPairs counts "25 of 40", "14 of 62 mm": a count and a width.
func (r *reader) ofPairs() int {
	n := 0
	if !r.says("of") {
		return n
	}
	for i := range r.items {
		of := i + 1
		if r.is(of, kindNoun, "strip") {
			of++ // "10 slats of 80 and 14 of 60"
		}
		w := of + 1
		if r.word(w, "the", "these", "those") {
			w++
		}
		if !r.free(i) || !r.word(of, "of") || w >= len(r.items) || !r.free(w) || !r.length(w) {
			continue
		}
		if _, whole := r.items[i].amount.whole(); whole && small(r.size(w)) && r.items[w].amount.link == linkNone && !r.is(r.next(w), kindNoun) {
			n++
		}
	}
	return n
}

// numberedWidths counts "7 no. 38", "4no. 51": a count and a width.
func (r *reader) numberedWidths() int {
	n := 0
	if !r.means(kindRole, "name") {
		return n
	}
	for i := range r.items {
		if _, whole := r.wholeAt(i); whole && r.is(i+1, kindRole, "name") && in(r.items[i+1].word, "no .", "no.") && r.free(i+2) && r.length(i+2) && small(r.size(i+2)) && !r.timesAt(i+3) {
			n++
		}
	}
	return n
}

// madeFrom reports whether panels are to come "out of" or "from" what is listed.
func (r *reader) madeFrom() bool {
	if !r.says("outta", "of", "from") && !r.means(kindNoun, "panel") {
		return false
	}
	for i := range r.items {
		if r.word(i, "outta") || r.word(i+1, "of") && (r.is(i, kindVerb, "out") || r.word(i, "out")) || r.is(i, kindNoun, "panel") && strings.HasSuffix(r.items[i].word, " out of") || r.word(i, "from") {
			return true
		}
	}
	return false
}

// takenFrom reports whether words of [from, to) go over from what is needed to the
// strips: "out of", "from".
func (r *reader) takenFrom(from, to int) bool {
	return r.opensWithin(from, to, "of", "from", "out of") || r.within(from, to, kindRole, "start") >= 0 || r.within(from, to, kindVerb, "out") >= 0
}

// useWide uses up the "wide" behind the width at item i.
func (r *reader) useWide(i int) {
	if k := r.next(i); r.is(k, kindAttr, "wide") {
		r.items[k].used = true
	}
}
