package engine

import (
	"slices"

	"presshand/engine/glue"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// A builder gathers an answer. Inputs are looked up as said, then among the
// room's defaults, then in the table; all but the first are noted as assumed.
// Every topic is a function of a builder, so that a load can run several.
type builder struct {
	q     Question
	a     Answer
	exact bool // ranges collapse to their mids: solving backwards

	stopped bool // a plan was not looked for to its end

	wood  wood.Species // once looked up
	class glue.Class   // once looked up
}

// valuesOfLoad is about how many figures a whole load gives, so that their map
// need not grow.
const valuesOfLoad = 28

func newBuilder(q Question) (*builder, error) {
	for _, fs := range []unit.Facts{q.Said, q.Room} {
		if err := finiteFacts(fs); err != nil {
			return nil, err
		}
	}
	return &builder{q: q, a: Answer{
		About: q.About, Values: make(unit.Facts, valuesOfLoad), Assumed: unit.Facts{},
	}}, nil
}

// answer closes the answer: asked when something is missing, else the worst of
// the checks.
func (b *builder) answer() (Answer, error) {
	b.a.Verdict = None
	for _, c := range b.a.Checks {
		b.a.Verdict = Worst(b.a.Verdict, c.Verdict)
	}
	if len(b.a.Needs) > 0 {
		b.a.Verdict = Ask
	}
	return b.a, nil
}

// said reports whether the message or its thread stated any of fs.
func (b *builder) said(fs ...unit.Field) bool {
	return slices.ContainsFunc(fs, b.q.Said.Has)
}

// known reports whether any of fs was said or is a default of the room.
func (b *builder) known(fs ...unit.Field) bool {
	return b.said(fs...) || slices.ContainsFunc(fs, b.q.Room.Has)
}

// value returns what is known of f, noting a default of the room as assumed.
func (b *builder) value(f unit.Field) (unit.Value, bool) {
	if v, ok := b.q.Said[f]; ok {
		return v, true
	}
	v, ok := b.q.Room[f]
	if ok {
		b.assume(f, v)
	}
	return v, ok
}

// number returns f in SI (temperatures in °C, percents in %).
func (b *builder) number(f unit.Field) (float64, bool) {
	v, ok := b.value(f)
	if !ok {
		return 0, false
	}
	n, ok := v.(unit.Number)
	return f.SI(n), ok
}

// numberOr returns f in SI, or si, noted as assumed.
func (b *builder) numberOr(f unit.Field, si float64) float64 {
	if v, ok := b.number(f); ok {
		return v
	}
	b.assume(f, f.Number(si))
	return si
}

// word returns f as said or set in the room, or "".
func (b *builder) word(f unit.Field) string {
	v, _ := b.value(f)
	w, _ := v.(unit.Word)
	return string(w)
}

// wordOr returns f, or w, noted as assumed.
func (b *builder) wordOr(f unit.Field, w string) string {
	if v := b.word(f); v != "" {
		return v
	}
	b.assume(f, unit.Word(w))
	return w
}

// assume notes a default that the answer uses.
func (b *builder) assume(f unit.Field, v unit.Value) { b.a.Assumed[f] = v }

// need notes fields without which a figure asked for cannot be given.
func (b *builder) need(fs ...unit.Field) {
	for _, f := range fs {
		if !slices.Contains(b.a.Needs, f) {
			b.a.Needs = append(b.a.Needs, f)
		}
	}
}

// lack notes that a figure is left out for want of some fields. They are needed
// where the figure was asked for by name.
func (b *builder) lack(figure unit.Field, fs ...unit.Field) {
	if len(fs) == 0 {
		return
	}
	if b.a.Lacks == nil {
		b.a.Lacks = map[unit.Field][]unit.Field{}
	}
	b.a.Lacks[figure] = fs
	if slices.Contains(b.q.For, figure) {
		b.need(fs...)
	}
}

// give records a computed figure, held in SI, under its name.
func give[T ~float64](b *builder, f unit.Field, r unit.Range[T]) {
	u := f.Unit()
	b.a.Values[f] = unit.TripleOf(unit.Around(u.Of(float64(r.Low)), u.Of(float64(r.Mid)), u.Of(float64(r.High))))
}

// giveValue records a computed value that is no range.
func (b *builder) giveValue(f unit.Field, v unit.Value) { b.a.Values[f] = v }

// judge records a check.
func (b *builder) judge(name string, v Verdict, r Reason, figures unit.Facts) {
	b.a.Checks = append(b.a.Checks, Check{name, v, Finding{r, finiteOnly(figures)}})
}

// advise records what would help, or what a figure hangs on, once.
func (b *builder) advise(r Reason, figures unit.Facts) {
	for _, f := range b.a.Advice {
		if f.Reason == r {
			return
		}
	}
	b.a.Advice = append(b.a.Advice, Finding{r, finiteOnly(figures)})
}

// finiteOnly returns figures without numbers that are none.
func finiteOnly(figures unit.Facts) unit.Facts {
	for f, v := range figures {
		if n, ok := v.(unit.Number); ok && !isFinite(float64(n)) {
			delete(figures, f)
		}
	}
	return figures
}

// warn records cautions, each once.
func (b *builder) warn(cs ...Caution) {
	for _, c := range cs {
		if !slices.Contains(b.a.Cautions, c) {
			b.a.Cautions = append(b.a.Cautions, c)
		}
	}
}

// why records a step of the working; step runs only where the working is kept.
func (b *builder) why(step func() Step) {
	if b.q.Why {
		b.a.Working = append(b.a.Working, step())
	}
}

// spread gives an input its uncertainty, or none where the question is solved
// at the mids.
func (b *builder) spread(low, mid, high float64) unit.Range[float64] {
	if b.exact {
		return unit.Exactly(mid)
	}
	return unit.Around(low, mid, high)
}
