package bot

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// figuresOf lists the figures of each topic, the one usually asked for first.
var figuresOf = map[engine.Topic][]unit.Field{
	engine.Face: {unit.FaceForce, unit.FacePressure, unit.FaceTonsPerSquareFoot, unit.Ambient},
	engine.Side: {unit.SideFarJoint, unit.SideFirstJoint, unit.SideIdeal, unit.Preload, unit.Rise, unit.Closing,
		unit.BarCovered, unit.GlueContact, unit.BarReach, unit.GlueFull, unit.Buckle},
	engine.Flatten: {unit.FlattenNeed, unit.FacePressure},
	engine.Stack:   {unit.StackHeight, unit.Opening, unit.Proud, unit.MatLow},
	engine.Strips:  {unit.Picks, unit.WidthSum, unit.Over, unit.WedgeGap, unit.StripsLeft},
	engine.Glue:    {unit.GlueMass, unit.PressTime, unit.ClosedTime, unit.LayupPanel, unit.MinTemp, unit.JointArea},
	engine.Pump:    {unit.Pump, unit.UltimateVacuum, unit.Hold},
	engine.Move:    {unit.WidthChange, unit.Cup, unit.Emc},
	engine.Load: {unit.SideFarJoint, unit.FacePressure, unit.PressTime, unit.StackHeight, unit.SideIdeal, unit.GlueMass,
		unit.Proud, unit.FlattenNeed, unit.ClosedTime, unit.LayupLoad, unit.LayupPanel, unit.Pump, unit.MatLow, unit.Preload},
	engine.Schedule: {unit.FinishTimes, unit.LoadsNeeded, unit.PanelsPerLoad, unit.PressTime, unit.LayupLoad},
}

// headline is the figure asked for, in words, and the fields that it shows.
func (s style) headline(w worked) (string, []unit.Field) {
	if w.goal != nil {
		return s.solvedHeadline(w)
	}
	if says := s.planHeadline(w); says != "" {
		return says, plannedFields
	}
	if len(w.rivals) > 0 {
		return s.betterHeadline(w)
	}
	for _, c := range w.answer.Checks {
		if c.Reason == engine.ReasonNoJoint && w.answer.About == engine.Side {
			return s.sentence(c.Finding, w), []unit.Field{unit.SideIdeal, unit.BarCovered, unit.BarReach, unit.GlueContact, unit.GlueFull}
		}
	}
	if c := byGravity(w.answer.Checks); len(c) > 0 && w.plainlyJudged() && c[0].Verdict == w.answer.Verdict {
		if says := s.verdictOn(c[0], w); says != "" {
			return says, nil
		}
	}
	for _, f := range w.wantedFigures() {
		if v, ok := w.answer.Values[f]; ok {
			if says, used := s.nothingSure(f, v, w.answer); says != "" {
				return says, used
			}
			if text := s.onEach(f, v, w); text != "" {
				return text + ".", []unit.Field{f}
			}
			if text := s.labelled(labelIn(f, w), f, v, " "); text != "" {
				return text + ".", []unit.Field{f}
			}
		}
	}
	if c := byGravity(w.answer.Checks); len(c) > 0 && w.answer.Verdict != engine.Ask {
		return s.verdictOn(c[0], w), nil
	}
	return "", nil
}

// plainlyJudged reports whether the answer to a question is rather a judgement
// than a figure: does it fit, does it go flat, is it too cold.
func (w worked) plainlyJudged() bool {
	if len(w.want.For) > 0 || w.answer.Verdict == engine.None {
		return false
	}
	switch w.answer.About {
	case engine.Stack, engine.Flatten:
		return true
	case engine.Face, engine.Pump:
		return w.answer.Verdict == engine.Stop
	case engine.Glue:
		return w.answer.Verdict == engine.Stop || w.answer.Verdict == engine.Care && !w.answer.Values.Has(unit.GlueMass)
	}
	return false
}

// wantedFigures are the figures asked for by name, then the topic's own.
func (w worked) wantedFigures() []unit.Field {
	return append(slices.Clone(w.want.For), figuresOf[w.answer.About]...)
}

// figureLines are the other figures, those asked for first.
func (s style) figureLines(w worked, used []unit.Field) []string {
	out := append(s.orderLines(w), s.planLines(w.answer)...)
	done := slices.Clone(used)
	for _, f := range w.wantedFigures() {
		v, ok := w.answer.Values[f]
		if !ok || slices.Contains(done, f) || f == unit.Buckle && !w.answer.Values.Has(unit.Preload) {
			continue
		}
		done = append(done, f)
		if len(w.rivals) > 0 && alike(v) || told(f, v, w) || s.idle(f, v, w) {
			continue
		}
		if len(w.rivals) > 0 {
			out = append(out, capital(s.row(f, v, w)))
		} else if text := s.onEach(f, v, w); text != "" {
			out = append(out, text)
		} else if text := s.labelled(labelIn(f, w), f, v, ": "); text != "" {
			out = append(out, capital(text))
		}
	}
	return out
}

// idle reports whether a figure says nothing that another does not.
func (s style) idle(f unit.Field, v unit.Value, w worked) bool {
	switch f {
	case unit.FaceTonsPerSquareFoot:
		return s.metric && !slices.Contains(w.want.For, f)
	case unit.SideFirstJoint: // a wedge gives all joints the same
		return preloaded(w.answer) && reflect.DeepEqual(v, w.answer.Values[unit.SideFarJoint])
	case unit.Closing:
		return w.question.Said[unit.Gap] == unit.Number(0)
	}
	return false
}

// alike reports whether a row of figures says the same thing over and over.
func alike(v unit.Value) bool {
	row, ok := v.(unit.Triples)
	if !ok {
		return false
	}
	same := func(a, b *float64) bool { return a == b || a != nil && b != nil && *a == *b }
	return !slices.ContainsFunc(row, func(t unit.Triple) bool {
		return !same(t.Low, row[0].Low) || !same(t.Mid, row[0].Mid) || !same(t.High, row[0].High)
	})
}

// told reports whether a figure without a range stands in the sentence of a
// check already.
func told(f unit.Field, v unit.Value, w worked) bool {
	if ts, ok := v.(unit.Triples); ok && len(ts) > 1 { // a check tells one of them
		return false
	}
	if t, ok := v.(unit.Triple); ok && (t.Low == nil || t.High == nil || *t.Low != *t.High) {
		return false
	}
	field := f
	if f == unit.LayupPanel && !w.answer.Values.Has(unit.LayupLoad) {
		field = unit.LayupLoad // one panel is the load
	}
	for _, c := range w.answer.Checks {
		if strings.Contains(reasonSays[c.Reason], "{"+string(field)+"}") && (c.Verdict != engine.Good || w.answer.Verdict == engine.Good) {
			return true
		}
	}
	return false
}

// line is one figure with its label, to stand in a sentence.
func (s style) line(f unit.Field, v unit.Value) string { return s.labelled(labels[f], f, v, " ") }

func (s style) labelled(label string, f unit.Field, v unit.Value, between string) string {
	if t, isTriple := v.(unit.Triple); isTriple && f == unit.WidthChange {
		label, v = changing(t)
	}
	if t, isTriple := v.(unit.Triple); isTriple && f == unit.Cup {
		v = unsigned(t)
	}
	text := s.worded(f, v)
	if label == "" || text == "" {
		return ""
	}
	return label + between + text
}

// changing says whether a width shrinks or swells, and by how much.
func changing(t unit.Triple) (string, unit.Value) {
	if t.Low == nil || t.Mid == nil || t.High == nil || *t.Low < 0 && *t.High > 0 {
		return labels[unit.WidthChange], t
	}
	if *t.High <= 0 && *t.Low < 0 {
		low, mid, high := -*t.High, -*t.Mid, -*t.Low
		return "width shrinks by", unit.Triple{Low: &low, Mid: &mid, High: &high}
	}
	return "width swells by", t
}

// unsigned is a figure of which the sign only says to which side it goes.
func unsigned(t unit.Triple) unit.Triple {
	if t.Low == nil || t.Mid == nil || t.High == nil || *t.High > 0 {
		return t
	}
	low, mid, high := -*t.High, -*t.Mid, -*t.Low
	return unit.Triple{Low: &low, Mid: &mid, High: &high}
}

// worded is a figure in words.
func (s style) worded(f unit.Field, v unit.Value) string {
	switch v := v.(type) {
	case unit.Triple:
		return s.triple(f, v)
	case unit.Number:
		return s.both(f, float64(v))
	case unit.Words:
		return listed(v, "and")
	case unit.Triples:
		var each []string
		for _, t := range v {
			each = append(each, s.triple(f, t))
		}
		return strings.Join(each, "; ")
	case unit.Sets:
		return s.picks(v)
	}
	return s.plain(f, v, unit.Unit{})
}

// picks says which strips make each panel: "2 of 3 in and 3 of 2 1/8 in".
func (s style) picks(sets unit.Sets) string {
	var panels []string
	for i, set := range sets {
		if i == 6 {
			panels = append(panels, "…")
			break
		}
		set = slices.Sorted(slices.Values(set)) // how they lie is in the drawing
		slices.Reverse(set)
		var each []string
		for k := 0; k < len(set); {
			n := 1
			for k+n < len(set) && set[k+n] == set[k] {
				n++
			}
			each = append(each, strconv.Itoa(n)+" of "+s.stated(unit.StripWidth, set[k], s.fields[unit.StockPiles]))
			k += n
		}
		panels = append(panels, listed(each, "and"))
	}
	return strings.Join(panels, "; ")
}

func lower(s string) string {
	if s == "" || s[0] < 'A' || s[0] > 'Z' {
		return s
	}
	return string(s[0]-'A'+'a') + s[1:]
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
