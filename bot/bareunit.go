package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// read parses a message with bare lengths in the unit of the thread's: "and 20 thick?"
// of strips that are 40 mm wide and 12 mm thick. What could not be so long is in the
// shop's own.
func (t *turn) read(text string) grammar.Phrase {
	habit := grammar.Habit{Metric: t.settings.Metric, Follows: !t.before.empty()}
	u, ok := t.lengthUnit()
	if !ok || u.Metric == habit.Metric {
		return t.bot.Parse(text, habit)
	}
	own := habit
	habit.Metres, habit.Inches = u.Metric, !u.Metric
	p := t.bot.Parse(text, habit)
	if p.NewStart || p.Command != nil || slices.ContainsFunc(p.Facts, unlikelyLength) {
		return t.bot.Parse(text, own)
	}
	return p
}

func unlikelyLength(f grammar.Fact) bool {
	n, isNumber := f.Value.(unit.Number)
	return isNumber && f.Field.Dimension() == unit.Distance && !isLikely(f.Field, n)
}

// inItsUnit gives a bare length of a thread that tells its lengths in several units the
// one in which it was told before, or in which alone it can be so long.
func (t *turn) inItsUnit(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || p.Command != nil || strings.ContainsAny(t.m.Text, `"'”″’`) {
		return p
	}
	for i, f := range p.Facts {
		n, isNumber := f.Value.(unit.Number)
		u, told := t.otherUnit(f)
		if !isNumber || !told || f.Note != "" || f.Field.Dimension() != unit.Distance || f.Unit.Dimension != unit.Distance || !bareText(f.Text, u.Metric) {
			continue
		}
		other := f.Field.Number(u.SI(writtenIn(f.Unit, f.Field, n)))
		if !isLikely(f.Field, other) {
			continue
		}
		p.Facts = slices.Clone(p.Facts)
		p.Facts[i].Value, p.Facts[i].Unit = other, u
	}
	return p
}

// otherUnit is the unit of the thread that f may be in, and is not.
func (t *turn) otherUnit(f grammar.Fact) (unit.Unit, bool) {
	if x, said := t.before.Said.find(f.Field); said {
		if u, ok := named[x.Unit]; ok && u.Metric != f.Unit.Metric {
			return u, true
		}
	}
	for _, u := range t.lengthUnits() {
		if u.Metric != f.Unit.Metric && unlikelyLength(f) {
			return u, true
		}
	}
	return unit.Unit{}, false
}

// bareText reports whether a number was typed without a unit; fractions are inches.
func bareText(text string, metric bool) bool {
	others := "0123456789., "
	if !metric {
		others += "/-½¼¾⅛⅜⅝⅞"
	}
	return strings.Trim(text, others) == ""
}

// lengthUnit is the unit of all lengths of the thread; ok is false where there are
// none, or in several.
func (t *turn) lengthUnit() (u unit.Unit, ok bool) {
	us := t.lengthUnits()
	if len(us) == 0 || slices.ContainsFunc(us, func(v unit.Unit) bool { return v.Metric != us[0].Metric }) {
		return unit.Unit{}, false
	}
	return us[0], true
}

// lengthUnits are the units in which a thread tells its lengths.
func (t *turn) lengthUnits() []unit.Unit {
	var us []unit.Unit
	for _, x := range t.before.Said {
		if u, known := named[x.Unit]; known && x.Field.Dimension() == unit.Distance && u.Dimension == unit.Distance && x.Field != unit.Altitude {
			us = append(us, u)
		}
	}
	return us
}

// changesInches is how "1 in" changes or answers a measure: "taller, 1 in", "oh, 1 in".
var changesInches = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|yeah|yep|right|and|so|then|well|hmm*|ah|it'?s|is|the|i|we)\b[\s,.!:;-]*)*(?:make|made|no|nope|nah|not|oh|oops|sorry|actually|rather|instead|change|call|try|say|use|take|meant|mean|up|bump|raise|drop|lower|` +
	`(?:tall|high|low|short|wid|narrow|thick|thinn|bigg|small|deep|long)e?r|should be|i'?d say)\b|^\W*(?:[a-z]+\W+)?\d+ ?in (?:instead|rather)\b`)

// thenInches may be a load too: "ok, 1 in then".
var thenInches = regexp.MustCompile(`(?i)^\W*(?:[a-z]+\W+)?\d+ ?in then\b`)

// inNow tells of a load that went in: "actually 1 in now", "1 in at 9".
var inNow = regexp.MustCompile(`(?i)\d ?in (?:now|at)\b`)

// directed says which way a measure changes: "wider, 3 in".
var directed = regexp.MustCompile(`(?i)\b(?:tall|high|low|short|wid|narrow|thick|thinn|long)e?r\b`)

var inchWord = regexp.MustCompile(`(?i)(\d ?)in\b`)

// insteadInches takes "taller, 1 in" for a measure in a thread of figures, whatever
// loads there are: the words around it change or answer one. It reports whether it did.
func (t *turn) insteadInches() bool {
	changes := changesInches.MatchString(t.m.Text)
	if t.before.Load != 0 || t.before.empty() || !changes && !thenInches.MatchString(t.m.Text) {
		return false
	}
	p := t.parse(inchWord.ReplaceAllString(t.m.Text, "${1}inches"))
	if p.Command != nil || len(p.Facts) == 0 || inNow.MatchString(t.m.Text) || !slices.ContainsFunc(p.Facts, t.lookedFor) && !(changes && directed.MatchString(t.m.Text)) {
		return false
	}
	t.phrase = p
	return true
}

// lookedFor reports whether a fact is of what the thread asks for or of the bar.
func (t *turn) lookedFor(f grammar.Fact) bool {
	return f.Field == unit.BarHeight || slices.ContainsFunc(t.before.Asks, func(w Wanted) bool { return w.Solve == f.Field }) ||
		slices.ContainsFunc(t.before.Pending, func(p Pending) bool { return p.Field == f.Field })
}
