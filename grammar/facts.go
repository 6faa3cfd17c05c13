package grammar

import (
	"strings"

	"presshand/engine/unit"
	"presshand/engine/wood"
)

// factFields are the fields that a word of the trade can state by itself.
var factFields = map[string]unit.Field{
	"sawn": unit.Sawn, "cup_up": unit.CupUp, "faces": unit.Faces, "bar_count": unit.BarCount, "bar_foot": unit.BarFoot,
	"surface": unit.SurfaceKind, "mat_firmness": unit.MatFirmness, "core": unit.CoreKind, "gap": unit.Gap, "tent": unit.Tent, "trim": unit.Trim, "wedge_again": unit.WedgeAgain,
}

// coreKinds are the cores by the words for them.
var coreKinds = []struct{ word, core string }{
	{"ply", "plywood"}, {"baltic birch", "plywood"}, {"mdf", "mdf"}, {"fibreboard", "mdf"}, {"fiberboard", "mdf"}, {"particle", "particleboard"}, {"chipboard", "particleboard"}, {"hardboard", "hardboard"}, {"solid core", "solid"},
}

// wordFacts reads woods, glues, presses and the words that state a field.
func (r *reader) wordFacts() {
	for i := range r.items {
		it := &r.items[i]
		if it.used && it.kind != kindNoun {
			continue
		}
		switch it.kind {
		case kindWood:
			r.wood(i)
		case kindGlue:
			r.glue(i)
		case kindRole:
			if it.id == "cover" && strings.HasPrefix(it.word, "covered") && !it.used && r.is(r.prev(i), kindNoun, "bar") && r.next(i) < 0 {
				r.coverWord(i, "top") // "2 in bar covered"
			}
		case kindFact:
			r.wordFact(i)
		case kindNoun:
			if !r.ruledOut(i) {
				r.nounFact(i)
			}
		}
	}
}

// ruledOut: "frame press, not the bag".
func (r *reader) ruledOut(i int) bool {
	return r.is(i, kindNoun, "bag", "frame", "press") && r.word(i-1, "the", "a", "our") && r.is(i-2, kindNot) && in(r.items[i-2].word, "not", "instead of", "isnt", "forget", "scrap", "ditch", "skip", "never mind", "forget about", "ignore", "not using")
}

// wood takes a species, but not one whose name the table lacks: "hoop pine".
func (r *reader) wood(i int) {
	it := &r.items[i]
	if i+1 < len(r.items) && r.is(i+1, kindNoun, "core") {
		return // birch ply
	}
	if it.id == "ash" && r.word(i+1, "tray") || it.word == "lime" && r.word(i+1, "green") {
		return
	}
	if j := i - 1; j >= 0 && (r.foreignName(j) || r.is(j, kindWood, "")) {
		text := r.text[r.items[j].start:it.end]
		r.phrase.Unused = append(r.phrase.Unused, text)
		it.used, r.items[j].used = true, true
		r.phrase.Drops = append(r.phrase.Drops, "species")
		return
	}
	if it.id == "" {
		if r.is(i+1, kindWood) {
			return // the two are one name
		}
		r.unuse(it.text)
		it.used = true
		r.phrase.Drops = append(r.phrase.Drops, "species")
		return
	}
	if r.gaveWay(i) {
		it.used = true
		return
	}
	if r.deniedBefore(i) || r.deniedAfter(i) {
		r.unuse(it.text)
		it.used = true
		return
	}
	r.say(i, unit.Species, unit.Word(it.id))
	if wood.IsLoose(it.word) {
		r.bound[len(r.bound)-1].fact.Note = "the usual one of that name"
	}
}

// foreignName reports whether item j is an unknown word right before a wood,
// which then makes it another wood.
func (r *reader) foreignName(j int) bool {
	it := &r.items[j]
	return it.kind == kindNone && it.amount == nil && it.brk == 0 && len(it.word) > 2 && !fill[it.word] && !strings.ContainsAny(it.word, "0123456789") && !plainWords[it.word]
}

func (r *reader) deniedBefore(i int) bool {
	if !r.means(kindNot) {
		return false
	}
	for j := i - 1; j >= 0 && j >= i-2; j-- {
		if r.is(j, kindNot) && !(r.items[j].word == "no" && r.isBreak(j+1)) {
			r.items[j].used = true
			return true
		}
	}
	return false
}

// deniedAfter: "mate reckons it's teak, it isn't".
func (r *reader) deniedAfter(i int) bool {
	if !r.means(kindSay) {
		return false
	}
	from, to := r.clause(i)
	if r.within(from, i, kindSay) < 0 || to+1 >= len(r.items) {
		return false
	}
	_, end := r.clause(to + 1)
	return r.word(to+1, "it", "its", "but") && r.within(to+1, end, kindNot, "not") >= 0 && end-to <= 5
}

func (r *reader) glue(i int) {
	it := &r.items[i]
	if c := r.phrase.Command; c != nil && c.Verb == Copy && !r.notThis(i) {
		r.say(i, unit.GlueClass, unit.Word(it.id)) // "same as 14 except epoxy"
		return
	}
	if (it.word == "white" || it.word == "yellow") && (r.is(i+1, kindWood) || r.word(i+1, "lines", "line", "paint")) {
		return
	}
	if it.word == "melamine" && !r.word(i+1, "glue") && (r.sheetNear(i) || r.word(i+1, "waxed", "faced", "board", "top", "sheet") || r.is(i+1, kindFact, "surface=waxed") || r.word(i-1, "on", "waxed") || r.word(i-1, "the") && r.word(i-2, "on") || r.is(i-1, kindFact, "surface=waxed")) {
		it.used = true // the skin of a board
		return
	}
	if it.word == "hide" && !r.word(i+1, "glue") && !r.mentions(kindGlue) {
		return
	}
	if r.gaveWay(i) {
		it.used = true
		return
	}
	if r.deniedBefore(i) {
		r.phrase.Unused = append(r.phrase.Unused, it.text)
		if r.within(0, i, kindNot, "not") >= 0 {
			r.phrase.Negated = append(r.phrase.Negated, "not "+it.text)
		} else if c := r.phrase.Command; c != nil && c.Verb == Copy && i > 0 {
			r.phrase.Negated = append(r.phrase.Negated, r.textOf(i-1, i))
		}
		it.used = true
		return
	}
	r.say(i, unit.GlueClass, unit.Word(it.id))
}

// notThis reports whether a word denies item i that takes nothing out of what is the
// same: "same as 14 but not yellow glue, epoxy".
func (r *reader) notThis(i int) bool {
	for j := i - 1; j >= 0 && j >= i-2 && !r.isBreak(j); j-- {
		if r.is(j, kindNot) {
			return in(r.items[j].word, "not", "no", "instead of", "rather than", "dont", "without", "never", "no more", "not using")
		}
	}
	return false
}

// sheetNear reports whether a sled, a caul or the bed stands in the clause of item i.
func (r *reader) sheetNear(i int) bool {
	from, to := r.clause(i)
	return r.within(from, to, kindNoun, "sled", "caul", "bed", "fence") >= 0
}

func (r *reader) wordFact(i int) {
	key, val, _ := strings.Cut(r.items[i].id, "=")
	if r.is(i-1, kindNot, "not") && !r.isBreak(i) {
		r.items[i].used, r.items[i-1].used = true, true
		r.unuse(r.items[i].text)
		r.phrase.Negated = append(r.phrase.Negated, r.textOf(i-1, i))
		return
	}
	if key == "gap" && r.free(i-1) && r.length(i-1) && r.size(i-1) < thickestLayer && r.is(i-2, kindRole, "open") {
		r.bind(i-1, unit.Gap) // "sits open 1/32 hand tight"
		r.items[i].used = true
		return
	}
	if key == "gap" {
		if k := r.feltGap(i); k >= 0 {
			r.bind(k, unit.Gap)
			r.items[i].used = true
			return
		}
	}
	switch key {
	case "cover":
		r.coverWord(i, val)
		return
	case "bar":
		if strings.HasPrefix(r.items[i].word, "nothing") || r.deniedNear(i) {
			r.say(i, unit.BarDenied, unit.Word(val))
		}
		return
	}
	f := factFields[key]
	switch f {
	case unit.Faces:
		r.facesFact(i, val)
	case unit.Gap, unit.Tent, unit.Trim:
		if r.items[i].used = true; !r.has(f) {
			r.say(i, f, unit.Number(0))
		}
	case unit.SurfaceKind:
		if k := r.lacksBefore(i); k >= 0 { // "without wax", "no waxed sled"
			r.items[k].used = true
			if val = "bare"; r.items[i].id == "surface=bare" {
				r.unuse(r.items[i].text)
				return
			}
		}
		if r.items[i].used = true; !r.has(f) || !strings.HasPrefix(r.items[i].word, "no ") {
			r.unsay(f, "no ")
			r.say(i, f, unit.Word(val))
		}
	case unit.CupUp:
		if !r.pressedDown(i) {
			r.say(i, f, unit.Word(val))
		}
	default:
		r.say(i, f, unit.Word(val))
	}
}

// lacksBefore is a "no" or "without" right before item i; -1 where none is.
func (r *reader) lacksBefore(i int) int {
	k := i - 1
	for r.word(k, "any", "a", "the") {
		k--
	}
	if r.is(k, kindNot, "no") && in(r.items[k].word, "no", "without", "w/o", "w o", "sans") {
		return k
	}
	return -1
}

// facesFact reads "both sides" and "one face", which are of the bars where these
// are spoken of.
func (r *reader) facesFact(i int, val string) {
	from, to := r.clause(i)
	if r.word(i-1, "off", "from") && r.amountsIn(from, i) > 0 {
		r.items[i].used = true // "sanded a 32nd off each face"
		return
	}
	if r.is(r.prev(i), kindNoun, "fence", "film") {
		r.items[i].used = true // "a fence both sides", "poly film both sides"
		return
	}
	if r.ofJoint(i + 1) {
		r.items[i].used = true // "both faces of each joint"
		return
	}
	if val == "2" && (r.within(from, to, kindNoun, "bar") >= 0 || r.mentions(kindNoun, "bar") && !r.mentions(kindNoun, "face", "core", "panel")) {
		r.say(i, unit.BarCount, unit.Number(2))
		return
	}
	if val == "2" && r.has(unit.BarHeight) && r.countKind(kindNoun) == 0 {
		r.say(i, unit.BarCount, unit.Number(2)) // "both sides again, but 70 tall"
		return
	}
	if val == "1" && r.is(r.prev(i), kindNoun, "bar", "wedge") && !strings.Contains(r.items[i].word, "just") && !r.word(i-1, "the", "just", "only") {
		r.items[i].used = true // "with a 1 in bar on one side"
		return
	}
	if val == "1" && strings.Contains(r.items[i].word, "just") && r.within(from, to, kindNoun, "bar") >= 0 && !r.mentions(kindNoun, "face", "core") {
		r.say(i, unit.BarCount, unit.Number(1))
		return
	}
	if !r.faced() && r.habit.Follows && len(r.items) < 8 && strings.Contains(r.items[i].word, "side") && r.amountsIn(0, len(r.items)) == 0 && r.countKind(kindNoun) == 0 {
		n := unit.Number(2)
		if val == "1" {
			n = 1
		}
		r.say(i, unit.BarCount, n) // "and on both sides?"
		r.bound[len(r.bound)-1].fact.Loose = true
		return
	}
	ofFace := r.habit.Follows && (strings.Contains(r.items[i].word, "face") || strings.Contains(r.items[i].word, "back") || strings.Contains(r.items[i].word, "same on the "))
	if !r.faced() && !ofFace {
		return
	}
	if val == "2" {
		r.say(i, unit.Faces, unit.Number(2))
	} else {
		r.say(i, unit.Faces, unit.Number(1))
	}
}

// deniedNear: "I didn't put anything along the edge".
func (r *reader) deniedNear(i int) bool {
	from, _ := r.clause(i)
	for j := i - 1; j >= from && j >= i-3; j-- {
		if r.is(j, kindNot) {
			r.items[j].used = true
			return true
		}
	}
	return false
}

// flatOrQuarter: of "flat or quarter sawn" both are ways to saw.
func (r *reader) flatOrQuarter(a, b int) {
	if a < 0 || b < 0 || !r.is(b, kindFact, "sawn=quarter") || r.items[a].word != "flat" {
		return
	}
	r.replacesCue(a)
	r.items[a].meaning = meaning{kind: kindFact, id: "sawn=flat"}
	r.hear(a)
}

// filmOrWax: of "waxed sled or plastic?" the film is what the strips would lie on.
func (r *reader) filmOrWax(a, b int) {
	for _, p := range [...][2]int{{a, b}, {b, a}} {
		if k := p[0]; r.is(k, kindNoun, "film") && !r.items[k].used && p[1] >= 0 && r.items[p[1]].kind == kindFact && strings.HasPrefix(r.items[p[1]].id, "surface=") {
			r.items[k].meaning = meaning{kind: kindFact, id: "surface=film"}
			r.hear(k)
		}
	}
}

// choicesOfWords reads "pva or epoxy", "flat or quartersawn", offered for one
// field.
func (r *reader) choicesOfWords() {
	r.comparedLoosely()
	if !r.says("or", "vs", "versus") && !r.means(kindRole, "compare") {
		return
	}
	for i := 1; i+1 < len(r.items); i++ {
		if !r.word(i, "or", "vs", "versus") && !r.is(i, kindRole, "compare") {
			continue
		}
		a, b := r.prev(i), r.next(i)
		r.filmOrWax(a, b)
		r.flatOrQuarter(a, b)
		if a < 0 || b < 0 || r.items[a].kind != r.items[b].kind || r.items[a].id == r.items[b].id {
			continue
		}
		var f unit.Field
		va, vb := r.items[a].id, r.items[b].id
		switch r.items[a].kind {
		case kindGlue:
			f = unit.GlueClass
		case kindWood:
			if f = unit.Species; va == "" || vb == "" {
				continue // one without figures
			}
		case kindFact:
			ka, wa, _ := strings.Cut(va, "=")
			kb, wb, _ := strings.Cut(vb, "=")
			if ka != kb || factFields[ka] == "" || factFields[ka].Dimension() != unit.Text {
				continue
			}
			f, va, vb = factFields[ka], wa, wb
		case kindNoun:
			if va != "bag" && va != "frame" || vb != "bag" && vb != "frame" {
				continue
			}
			f = unit.PressKind
		default:
			continue
		}
		r.items[a].used, r.items[b].used, r.items[i].used = true, true, true
		r.phrase.Choices = append(r.phrase.Choices, Choice{f, []Fact{
			{Field: f, Value: unit.Word(va), Text: r.items[a].text}, {Field: f, Value: unit.Word(vb), Text: r.items[b].text},
		}})
	}
}
