package grammar

import (
	"reflect"
	"slices"
	"strings"

	"presshand/engine/unit"
)

// settle decides between rival readings of a field, moves a check's facts to
// what was measured, chooses the questions and lists what was not used.
func (r *reader) settle() {
	r.tooNarrow()
	if r.phrase.Command == nil && r.foreign() {
		r.giveBack()
	}
	r.rivals()
	r.rivalled()
	r.unitsWanted()
	r.terms()
	r.chooseAsks()
	r.nothingToCompute()
	r.measured()
	r.leftovers()
}

// rivals: of two values for one field the later counts behind a word of
// correction; offered with "or" they are a choice; else nobody may choose.
func (r *reader) rivals() {
	r.phrase.Facts = slices.Grow(r.phrase.Facts, len(r.bound))
	var group []binding
	for i := range r.bound {
		b := &r.bound[i]
		first := 0
		for r.bound[first].fact.Field != b.fact.Field {
			first++
		}
		if first < i {
			continue // was settled with the first
		}
		next := i + 1
		for next < len(r.bound) && r.bound[next].fact.Field != b.fact.Field {
			next++
		}
		if next == len(r.bound) && !b.weak {
			r.phrase.Facts = append(r.phrase.Facts, b.fact)
			continue
		}
		group = append(group[:0], *b)
		for ; next < len(r.bound); next++ {
			if r.bound[next].fact.Field == b.fact.Field {
				group = append(group, r.bound[next])
			}
		}
		if b.fact.Field == unit.PressKind && len(group) > 1 && r.has(unit.PressCount) {
			continue // "two presses, a bag and a frame"
		}
		r.rival(b.fact.Field, group)
	}
	r.vacuumTwice()
	if len(r.phrase.Drops) > 0 && slices.ContainsFunc(r.phrase.Facts, func(f Fact) bool { return f.Field == unit.Species }) {
		r.phrase.Drops = slices.DeleteFunc(r.phrase.Drops, func(p Part) bool { return p == "species" })
	}
	r.refusedTwice()
	for _, x := range r.doubted {
		if slices.ContainsFunc(r.phrase.Facts, func(f Fact) bool { return f.Field == x.Field }) {
			r.unuse(x.Text)
		} else {
			r.refuse(x.Field, x.Text, x.Want)
		}
	}
}

func (r *reader) rival(f unit.Field, bs []binding) {
	for i := 1; i < len(bs); i++ { // by place in the message
		for k := i; k > 0 && bs[k].from < bs[k-1].from; k-- {
			bs[k], bs[k-1] = bs[k-1], bs[k]
		}
	}
	if f == unit.Deadline && len(bs) > 1 {
		bs = r.outBefore(bs)
	}
	bs = r.firm(bs)
	if len(bs) == 0 {
		return
	}
	kept := bs[:1]
	for _, b := range bs[1:] {
		last := kept[len(kept)-1]
		switch {
		case same(last.fact.Value, b.fact.Value):
			if hasDigit(b.fact.Text) && b.fact.Text != last.fact.Text {
				f := &kept[len(kept)-1].fact
				f.Again = append(f.Again, b.fact.Text)
			}
		case r.fixedBetween(last.from, b.from):
			r.unuse(last.fact.Text)
			kept = append(kept[:len(kept)-1], b)
		default:
			kept = append(kept, b)
		}
	}
	switch {
	case len(kept) == 1:
		r.phrase.Facts = append(r.phrase.Facts, kept[0].fact)
	case r.offered(kept):
		c := Choice{Field: f}
		for _, b := range kept {
			c.Values = append(c.Values, b.fact)
		}
		r.phrase.Choices = append(r.phrase.Choices, c)
	default:
		c := Clash{Field: f}
		for _, b := range kept {
			c.Texts = append(c.Texts, b.fact.Text)
			r.unuse(b.fact.Text)
		}
		r.phrase.Clashes = append(r.phrase.Clashes, c)
	}
}

// visitors come for the panels, and the time that is given to be out counts for more.
var visitors = wordSet(`truck trucks lorry van driver courier carrier hauler customer client pickup pick collection delivery`)

// outBefore drops when the truck comes where another deadline is set: "truck's here at
// 4 so they have to be out by 3:30".
func (r *reader) outBefore(bs []binding) []binding {
	comes := func(b binding) bool {
		for k := b.from - 1; k >= 0 && k >= b.from-3; k-- {
			if r.is(k, kindRole, "deadline") {
				who, _, _ := strings.Cut(r.items[k].word, " ")
				return visitors[who]
			}
		}
		return false
	}
	if !slices.ContainsFunc(bs, comes) || !slices.ContainsFunc(bs, func(b binding) bool { return !comes(b) }) {
		return bs
	}
	out := bs[:0]
	for _, b := range bs {
		if comes(b) {
			r.unuse(b.fact.Text)
			continue
		}
		out = append(out, b)
	}
	return out
}

// firm drops what is only hearsay; it stays unused. Where the shop lies, and what
// its pump makes, may come from somebody else.
func (r *reader) firm(bs []binding) []binding {
	if f := bs[0].fact.Field; f == unit.Altitude || f == unit.VacuumPercent || f == unit.PressVolume {
		if !slices.ContainsFunc(bs, func(b binding) bool { return !b.weak }) {
			return bs
		}
	}
	if !slices.ContainsFunc(bs, func(b binding) bool { return !b.weak }) && r.wondersIf() {
		return bs
	}
	out := bs[:0]
	for _, b := range bs {
		if b.weak {
			r.unuse(b.fact.Text)
			continue
		}
		out = append(out, b)
	}
	return out
}

// wondersIf: "he swears he pulls 27 inHg, can that even be?" wants the figure tried.
func (r *reader) wondersIf() bool {
	for i := range r.items {
		switch {
		case r.word(i, "can", "could") && r.word(i+1, "that", "it", "this") && r.opensWithin(i+2, min(i+4, len(r.items)), "be"),
			r.word(i, "is", "would") && r.word(i+1, "that", "he", "she", "it", "this") && r.opensWithin(i+2, min(i+5, len(r.items)), "possible", "right", "true", "real", "realistic", "lying"):
			return true
		}
	}
	return false
}

func same(a, b unit.Value) bool {
	x, okX := a.(unit.Number)
	y, okY := b.(unit.Number)
	if okX && okY {
		d := float64(x - y)
		return d*d <= 2.5e-5*float64(x)*float64(x) // half a per cent apart is one number rounded twice
	}
	return reflect.DeepEqual(a, b)
}

func (r *reader) unuse(text string) {
	if text != "" {
		r.phrase.Unused = append(r.phrase.Unused, text)
	}
}

// fixedBetween reports whether a word of correction stands between two items.
func (r *reader) fixedBetween(a, b int) bool {
	return r.within(a, b, kindFix) >= 0 || slices.Contains(r.fixedAt, b)
}

// offered reports whether "or" or "versus" stands between each two readings, or
// they are what somebody is "torn between".
func (r *reader) offered(bs []binding) bool {
	if len(bs) == 2 && (r.tornBetween(bs[0].from, bs[1].from) || r.whichOfThem(bs[1].from)) {
		return true
	}
	for i := 1; i < len(bs); i++ {
		found := false
		for k := bs[i-1].from; k < bs[i].from; k++ {
			if r.word(k, "or", "vs", "versus") || r.is(k, kindRole, "compare") {
				found = true
			}
		}
		if !found && !(r.items[bs[i].from].amount != nil && r.items[bs[i].from].amount.link == linkOr) {
			return false
		}
	}
	return true
}

// tornBetween: "between a 3/4 bar and a 1 1/4 bar".
func (r *reader) tornBetween(a, b int) bool {
	for k := a - 1; k >= 0 && k >= a-3; k-- {
		if r.word(k, "between") {
			return r.opensWithin(k, b, "and")
		}
	}
	return false
}

// vacuumTwice: a gauge, an absolute reading and a per cent are one field said in
// three ways.
func (r *reader) vacuumTwice() {
	told := 0
	for i := range r.phrase.Facts {
		switch r.phrase.Facts[i].Field {
		case unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent:
			told++
		}
	}
	if told < 2 {
		return
	}
	c := Clash{Field: unit.Vacuum}
	kept := r.phrase.Facts[:0]
	for _, f := range r.phrase.Facts {
		switch f.Field {
		case unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent:
			c.Texts = append(c.Texts, f.Text)
			r.unuse(f.Text)
		default:
			kept = append(kept, f)
		}
	}
	r.phrase.Facts = kept
	r.phrase.Clashes = append(r.phrase.Clashes, c)
}

// unitsWanted reads "in psi", "how many oz".
func (r *reader) unitsWanted() {
	if !r.means(kindUnit) && !r.says("in") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "bar") && r.items[i].word == "bar" && (r.word(i-1, "in") || r.is(i-1, kindUnit)) && r.next(i) < 0 && (i == 1 || r.pressureSaid()) {
			r.items[i].used = true
			r.phrase.In = append(r.phrase.In, unit.Bar) // "in bar?"
		}
		if r.items[i].kind == kindUnit && r.items[i].amount == nil && !r.items[i].used && len(r.items[i].word) > 1 {
			r.items[i].used = true
			r.phrase.In = append(r.phrase.In, *r.items[i].unit)
		}
	}
}

// nothingToCompute gives the numbers of a question about a danger or a word back:
// its answer uses none.
func (r *reader) nothingToCompute() {
	if len(r.phrase.Asks) != 1 || r.phrase.Asks[0].About != Safety && r.phrase.Asks[0].About != Words && r.phrase.Asks[0].About != Why {
		return
	}
	if r.phrase.Asks[0].About == Safety && r.phrase.Asks[0].Peril == "structure" {
		return // what is to carry people is a load, and its facts are heard
	}
	for _, f := range r.phrase.Facts {
		if _, ok := f.Value.(unit.Number); ok {
			r.unuse(f.Text)
		}
	}
	for _, f := range r.phrase.Refused {
		r.unuse(f.Text)
	}
	r.phrase.Facts, r.phrase.Refused = nil, nil
}

// measured moves the facts of a second check to what was measured.
func (r *reader) measured() {
	c := r.phrase.Command
	if c == nil || c.Verb != Check {
		return
	}
	for _, f := range r.phrase.Facts {
		if f.Field == unit.GlueLot || f.Field == unit.Job {
			continue
		}
		c.Measured = append(c.Measured, f)
	}
	for _, f := range r.phrase.Refused {
		r.unuse(f.Text)
	}
	kept := r.phrase.Facts[:0]
	for _, f := range r.phrase.Facts {
		if f.Field == unit.GlueLot || f.Field == unit.Job {
			kept = append(kept, f)
		}
	}
	r.phrase.Facts = kept
	c.Doubts = distinct(append(c.Doubts, r.doubts()...))
	c.By = r.checker()
}

// leftovers lists each number and each meaningful word that nothing took.
func (r *reader) leftovers() {
	for i := range r.items {
		it := &r.items[i]
		if it.taken {
			r.phrase.Taken = append(r.phrase.Taken, Taken{Typed: it.text, As: it.word})
		}
		switch {
		case it.amount != nil && it.amount.ordinal && (r.phrase.Command == nil || r.phrase.Command.Note == ""):
			r.unuse(it.text)
		case it.used || it.brk != 0 && it.amount == nil:
		case it.amount != nil, it.list != nil:
			r.unuse(it.text)
		case r.unknown(i):
			if i > 0 && r.unknown(i-1) {
				continue
			}
			end := i
			for end+1 < len(r.items) && r.unknown(end+1) && end < i+3 {
				end++
			}
			r.unuse(r.text[it.start:r.items[end].end])
		}
	}
	r.phrase.Unused = distinct(r.phrase.Unused)
}

// unknown reports whether item i is a word that means nothing here.
func (r *reader) unknown(i int) bool {
	if i < 0 || i >= len(r.items) {
		return false
	}
	it := &r.items[i]
	return !it.used && it.brk == 0 && it.amount == nil && (it.kind == kindNone || r.is(i, kindFill, "elsewhere")) && !fill[it.word] && !plainWords[it.word]
}

func distinct(ss []string) []string {
	if len(ss) < 2 {
		return ss
	}
	seen := map[string]bool{}
	out := ss[:0]
	for _, s := range ss {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}

// whichOfThem: "the lad wants a 40 mm bar, I'd have said a 60 mm bar. Which one?" offers the
// two before item i.
func (r *reader) whichOfThem(i int) bool {
	for k := i + 1; k < len(r.items); k++ {
		if r.word(k, "which") && r.isBreak(k-1) && (r.one(k+1) || r.word(k+1, "one", "is", "would", "do", "bar", "should") || k+1 < len(r.items) && r.isBreak(k+1)) {
			return r.amountsIn(i+1, k) == 0
		}
	}
	return false
}
