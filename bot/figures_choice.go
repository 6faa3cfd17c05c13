package bot

import (
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// solvedHeadline says which value reaches the goal.
func (s style) solvedHeadline(w worked) (string, []unit.Field) {
	f := w.want.Solve
	v, ok := w.answer.Values[f]
	if c := byGravity(w.answer.Checks); !ok && len(c) > 0 {
		goal := s.towards(w.goal)
		switch {
		case c[0].Reason != engine.ReasonOutOfReach || goal == "" || labels[f] == "":
			return s.verdictOn(c[0], w), nil
		case w.goal.Has("verdict"):
			return "no " + labels[f] + " will do.", nil
		}
		return "no " + labels[f] + " gives " + strings.TrimPrefix(goal, " for ") + ".", nil
	}
	if !ok {
		return "", nil
	}
	text := s.line(f, v)
	if text == "" {
		text = strings.ReplaceAll(string(f), "_", " ")
	}
	if w.answer.Assumed.Has(unit.Cover) && !w.question.Said.Has(unit.Cover) {
		text += ", the bar covered to its top by a caul or upper sled,"
	}
	return text + s.towards(w.goal) + ".", []unit.Field{f}
}

// towards says what a solved value is for.
func (s style) towards(goal unit.Facts) string {
	var out []string
	for f, v := range goal {
		switch v := v.(type) {
		case unit.Number:
			out = append(out, s.both(f, float64(v))+" "+place(f))
		case unit.Word:
			out = append(out, "a good verdict")
		}
	}
	if len(out) == 0 {
		return ""
	}
	slices.Sort(out)
	return " for " + listed(out, "and")
}

// place says where a figure is had: "at the far joint".
func place(f unit.Field) string {
	switch f {
	case unit.SideFarJoint:
		return "at the far joint"
	case unit.SideFirstJoint:
		return "at the first joint"
	case unit.SideIdeal:
		return "by the rule"
	case unit.FacePressure, unit.FaceForce, unit.FaceTonsPerSquareFoot:
		return "on the face"
	case unit.Preload:
		return "from the wedge"
	case unit.Pump:
		return "of pumping"
	}
	return labels[f]
}

// betterHeadline says which of several values is better, and by how much.
func (s style) betterHeadline(w worked) (string, []unit.Field) {
	best, told := better(w.rivals)
	m := telling(w.rivals)
	field, values := w.compared()
	if len(values) == 0 {
		return "", nil
	}
	if !told {
		return "no difference between " + listed(s.each(field, values), "and") + ".", nil
	}
	text := s.plainChoice(field, values[best]) + " is better"
	second := 0
	if best == 0 {
		second = 1
	}
	x, okX := middle(w.rivals[best], m.field)
	y, okY := middle(w.rivals[second], m.field)
	if okX && okY {
		text += ": " + place(m.field) + " " + s.both(m.field, x) + " against " + s.both(m.field, y) +
			" with " + s.plainChoice(field, values[second])
	}
	return text + ".", []unit.Field{m.field}
}

func (w worked) compared() (unit.Field, []unit.Value) {
	if w.choice == nil {
		return "", nil
	}
	var out []unit.Value
	for _, x := range w.choice.Values {
		out = append(out, x.Value)
	}
	return w.choice.Field, out
}

func (s style) each(f unit.Field, values []unit.Value) []string {
	var out []string
	for _, v := range values {
		out = append(out, s.plainChoice(f, v))
	}
	return out
}

// plainChoice shows one of the values compared.
func (s style) plainChoice(f unit.Field, v unit.Value) string {
	text := s.plain(f, v, s.fields[f])
	if _, word := v.(unit.Word); !word && labels[f] != "" {
		return labels[f] + " " + text
	}
	return text
}

// row sets the figures of the values compared beside each other.
func (s style) row(f unit.Field, v unit.Value, w worked) string {
	figures, ok := v.(unit.Triples)
	field, values := w.compared()
	if !ok || len(values) != len(figures) || labels[f] == "" {
		return ""
	}
	var each []string
	for i, t := range figures {
		each = append(each, s.plain(field, values[i], s.fields[field])+": "+s.triple(f, t))
	}
	return labels[f] + " – " + strings.Join(each, "; ")
}
