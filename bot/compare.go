package bot

import (
	"math"
	"slices"

	"presshand/engine"
	"presshand/engine/unit"
)

// list returns the values to choose from.
func (a Alternative) list() unit.Value {
	var numbers unit.Numbers
	var words unit.Words
	for _, x := range a.Values {
		switch v := x.Value.(type) {
		case unit.Number:
			numbers = append(numbers, float64(v))
		case unit.Word:
			words = append(words, string(v))
		}
	}
	if len(numbers) > 0 {
		return numbers
	}
	return words
}

// compare answers a question once for each value of a field. The answer is
// that of the better value, its figures are lists.
func (b *Bot) compare(w worked, a Alternative) worked {
	w.choice = &a
	for _, x := range a.Values {
		q := w.question
		q.Said = q.Said.Clone()
		for _, gone := range replaces[a.Field] {
			delete(q.Said, gone)
		}
		q.Said[a.Field] = x.Value
		answer, err := b.Engine.Compute(q)
		if err != nil {
			w.err = err
			return w
		}
		w.rivals = append(w.rivals, answer)
	}
	best, _ := better(w.rivals)
	w.answer = w.rivals[best]
	w.answer.Values = sideBySide(w.rivals)
	w.question.Said = w.question.Said.Clone()
	w.question.Said[a.Field] = a.Values[best].Value
	return w
}

// sideBySide puts the figures of several answers into lists, in their order.
func sideBySide(answers []engine.Answer) unit.Facts {
	out := unit.Facts{}
	for f := range answers[0].Values {
		var row unit.Triples
		for _, a := range answers {
			t, ok := a.Values[f].(unit.Triple)
			if !ok {
				break
			}
			row = append(row, t)
		}
		if len(row) == len(answers) {
			out[f] = row
		}
	}
	return out
}

// A measure is a figure by which one answer is better than another.
type measure struct {
	field unit.Field
	less  bool // the smaller the better
}

// measures are, for each topic, the figures that decide, the first first.
var measures = map[engine.Topic][]measure{
	engine.Face:     {{unit.FacePressure, false}},
	engine.Side:     {{unit.SideFarJoint, false}, {unit.SideFirstJoint, false}, {unit.SideIdeal, false}, {unit.GlueContact, true}},
	engine.Load:     {{unit.SideFarJoint, false}, {unit.SideFirstJoint, false}, {unit.SideIdeal, false}, {unit.FacePressure, false}},
	engine.Flatten:  {{unit.FlattenNeed, true}, {unit.FacePressure, false}},
	engine.Stack:    {{unit.MatLow, false}, {unit.StackHeight, true}},
	engine.Strips:   {{unit.Over, true}},
	engine.Glue:     {{unit.ClosedTime, false}, {unit.PressTime, true}, {unit.GlueMass, true}},
	engine.Pump:     {{unit.Pump, true}, {unit.UltimateVacuum, false}, {unit.Hold, false}},
	engine.Move:     {{unit.WidthChange, true}, {unit.Cup, true}, {unit.Emc, true}},
	engine.Schedule: {{unit.WholeJob, true}, {unit.LoadsNeeded, true}},
}

// telling is the first figure by which answers differ.
func telling(answers []engine.Answer) measure {
	all := measures[answers[0].About]
	for _, m := range all {
		if differ(answers, m.field) {
			return m
		}
	}
	if len(all) == 0 {
		return measure{}
	}
	return all[0]
}

// differ reports whether the middles of a figure differ among answers.
func differ(answers []engine.Answer, f unit.Field) bool {
	first, ok := middle(answers[0], f)
	for _, a := range answers[1:] {
		if x, okX := middle(a, f); ok && okX && x != first {
			return true
		}
	}
	return false
}

// better returns which answer is the best, by verdict and then by the figure
// that its topic is judged on; and whether the figure tells them apart.
func better(answers []engine.Answer) (best int, told bool) {
	m := telling(answers)
	for i := 1; i < len(answers); i++ {
		mine, his := answers[i].Verdict, answers[best].Verdict
		if mine != his {
			told = true
			if his == engine.Ask || mine != engine.Ask && engine.Worst(mine, his) == his {
				best = i
			}
			continue
		}
		x, okX := middle(answers[i], m.field)
		y, okY := middle(answers[best], m.field)
		if okX && okY && x != y {
			told = true
			if m.less == (math.Abs(x) < math.Abs(y)) {
				best = i
			}
		}
	}
	return best, told
}

func middle(a engine.Answer, f unit.Field) (float64, bool) {
	t, ok := a.Values[f].(unit.Triple)
	if !ok || t.Mid == nil {
		return 0, false
	}
	return *t.Mid, true
}

// drawn is what a picture of an answer is drawn from: of several compared ones
// the better.
func (s style) drawn(w worked) Drawn {
	d := Drawn{Question: w.question, Answer: w.answer, style: s}
	field, values := w.compared()
	if len(w.rivals) == 0 || len(values) == 0 {
		return d
	}
	best, told := better(w.rivals)
	d.Answer = w.rivals[best]
	rest := s.each(field, slices.Delete(slices.Clone(values), best, best+1))
	how := "better than "
	if !told {
		how = "no better than "
	}
	d.caption = "Drawn: " + s.plainChoice(field, values[best]) + ", " + how + listed(rest, "and") + "."
	return d
}
