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
	if says := s.anyMeets(w); says != "" {
		return says, []unit.Field{f}
	}
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
		text = nameOf(f)
	}
	if w.answer.Assumed.Has(unit.Cover) && !w.question.Said.Has(unit.Cover) {
		text += ", the bar covered to its top by a caul or upper sled,"
	}
	return text + s.towards(w.goal) + ".", []unit.Field{f}
}

// anyMeets says that the goal is met as far as the engine looked.
func (s style) anyMeets(w worked) string {
	for _, c := range w.answer.Checks {
		if c.Reason != engine.ReasonAnyMeets {
			continue
		}
		f := w.want.Solve
		at, ok := c.Figures.Number(f)
		if !ok || labels[f] == "" {
			return s.verdictOn(c, w)
		}
		if w.goal.Has("verdict") {
			return "any " + labels[f] + " up to " + s.both(f, at) + " lies flat, with all that is uncertain at its middle; I looked no further."
		}
		return "any " + labels[f] + " that I tried gives more than is asked" + s.towards(w.goal) + "; the least of it is at " + s.both(f, at) + "."
	}
	return ""
}

// towards says what a solved value is for.
func (s style) towards(goal unit.Facts) string {
	var out []string
	for f, v := range goal {
		switch v := v.(type) {
		case unit.Number:
			out = append(out, strings.TrimSpace(s.both(f, float64(v))+" "+place(f)))
		case unit.Word:
			out = append(out, "a good verdict with all that is uncertain at its middle")
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
