package bot

import (
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// mayBeNothing are figures of which friction can leave nothing; a bare 0 would
// not say why.
var mayBeNothing = map[unit.Field]bool{
	unit.SideFarJoint: true, unit.SideFirstJoint: true, unit.BarReach: true, unit.Preload: true, unit.SideNet: true,
}

const (
	nothing       = "nothing to count on"
	nextToNothing = "next to nothing"

	withoutFriction = " without friction."
)

// isNothing reports whether a figure shows as zero.
func (s style) isNothing(f unit.Field, n float64) bool {
	return mayBeNothing[f] && strings.HasPrefix(s.show(f, n), "0 ")
}

// hardly shows a figure of which the middle is nothing.
func (s style) hardly(f unit.Field, t unit.Triple) string {
	if t.High == nil || s.isNothing(f, *t.High) {
		return nothing
	}
	return nothing + ", at best " + s.both(f, *t.High)
}

// nothingSure is the headline where friction can leave a joint nothing: what it
// would get without friction stands beside it.
func (s style) nothingSure(f unit.Field, v unit.Value, a engine.Answer) (string, []unit.Field) {
	t, ok := v.(unit.Triple)
	if !ok || f != unit.SideFarJoint && f != unit.SideFirstJoint || t.Mid == nil || !s.isNothing(f, *t.Mid) {
		return "", nil
	}
	text := labels[f] + ": " + s.hardly(f, t)
	if bound, ok := frictionless(a); ok && (t.High == nil || *t.High <= bound) { // else the far end is told already
		return text + "; the truth lies between that and the " + s.both(unit.SideIdeal, bound) + withoutFriction, []unit.Field{f}
	}
	return text + ".", []unit.Field{f}
}

// frictionless is what the joints would get if nothing rubbed.
func frictionless(a engine.Answer) (float64, bool) {
	for _, f := range a.Advice {
		if f.Reason == engine.ReasonFrictionBound {
			return f.Figures.Number(unit.SideIdeal)
		}
	}
	return 0, false
}

// withoutBar says of the edge what a sentence says of a bar that is not there.
func withoutBar(says string, w worked) string {
	if !w.question.Said.Has(unit.BarDenied) && !w.answer.Assumed.Has(unit.BarDenied) {
		return says
	}
	return strings.NewReplacer(
		"the bar's whole push", "the film's whole push on the edge", "the bar is sure", "the film is sure",
	).Replace(says)
}

// labelIn names a figure as the question has it.
func labelIn(f unit.Field, w worked) string {
	denied := w.question.Said.Has(unit.BarDenied) || w.answer.Assumed.Has(unit.BarDenied)
	covered, _ := middle(w.answer, unit.BarCovered)
	bar, low := w.stated(unit.BarHeight).(unit.Number)
	switch {
	case denied && f == unit.BarReach:
		return "push on the edge goes as far as"
	case denied && f == unit.BarCovered:
		return "edge height that pushes"
	case f == unit.BarCovered && low && covered > float64(bar)+0.01:
		return "height that pushes, bar and edge above it"
	case denied && f == unit.SideIdeal:
		return "by the rule, on the bare edge"
	case f == unit.Preload && !w.question.Said.Has(unit.WedgeForce) && w.question.Said.Has(unit.Overfill):
		return "from the overfill"
	}
	return labels[f]
}
