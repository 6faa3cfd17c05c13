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
		goal := s.towards(w)
		switch {
		case c[0].Reason != engine.ReasonOutOfReach || goal == "" || labels[f] == "":
			return s.verdictOn(c[0], w), nil
		case w.goal.Has("verdict"):
			return "no " + labels[f] + " will do.", nil
		}
		return "no " + labels[f] + " gives " + strings.TrimPrefix(goal, " for ") + s.nearest(w, c[0].Figures) + ".", nil
	}
	if !ok {
		return "", nil
	}
	if mm, ok := middle(w.answer, f); ok && f == unit.Opening { // a mark lower would be too low
		v = unit.TripleOf(unit.Exactly(s.roundedUp(f, mm)))
	}
	text := s.line(f, v)
	if text == "" {
		text = nameOf(f)
	}
	if w.answer.Assumed.Has(unit.Cover) && !w.question.Said.Has(unit.Cover) {
		text += ", the bar covered to its top by a caul or upper sled,"
	}
	return text + s.towards(w) + ".", []unit.Field{f}
}

// wantedNouns name figures of the face, on which it is sure what has no bearing.
var wantedNouns = map[unit.Field]string{
	unit.FacePressure: "the pressure on the face", unit.FaceTonsPerSquareFoot: "the pressure on the face", unit.FaceForce: "the force on the face",
}

// noBearing says what has nothing to do with the figure that is wanted.
func noBearing(w worked) string {
	for f := range w.goal {
		if noun := wantedNouns[f]; noun != "" && labels[w.want.Solve] != "" {
			return capital(nameOf(w.want.Solve)) + " has nothing to do with " + noun + ", so I cannot work it out that way."
		}
	}
	return ""
}

// nearest says which value comes nearest to a goal that cannot be had, and with what.
func (s style) nearest(w worked, figures unit.Facts) string {
	at, ok := figures.Number(w.want.Solve)
	if !ok {
		return ""
	}
	for f := range w.goal {
		if v, ok := figures[f].(unit.Triple); ok && v.Mid != nil && !s.isNothing(f, *v.Mid) {
			return "; the nearest is " + s.both(f, *v.Mid) + " at " + s.both(w.want.Solve, at)
		}
	}
	return ""
}

// anyMeets says that the goal is met as far as the engine looked.
func (s style) anyMeets(w worked) string {
	for _, c := range w.answer.Checks {
		at, ok := c.Figures.Number(w.want.Solve)
		if !ok || labels[w.want.Solve] == "" {
			continue
		}
		says := "any " + labels[w.want.Solve] + " %s " + s.both(w.want.Solve, at) + s.towards(w) + ": there is enough, or more"
		switch c.Reason {
		case engine.ReasonAnyUpTo:
			return strings.Replace(says, "%s", "up to", 1) + "; I looked no further."
		case engine.ReasonAnyFrom:
			return strings.Replace(says, "%s", "from", 1) + "."
		}
	}
	return ""
}

// towards says what a solved value is for.
func (s style) towards(w worked) string {
	for f, v := range w.goal {
		switch v := v.(type) {
		case unit.Number:
			says := goalSays(f)
			if f == unit.Preload && sprung(w) {
				says = "from the overfill"
			}
			return " for " + s.both(f, float64(v)) + " " + says
		case unit.Word:
			return " for a good verdict with all that is uncertain at its middle"
		}
	}
	return ""
}

// leftGoals names the goals of a question that were not worked for.
func (s style) leftGoals(w worked) string {
	var left []string
	for f, v := range w.want.Goal {
		if n, ok := v.(unit.Number); ok && w.goal != nil && !w.goal.Has(f) {
			left = append(left, s.both(f, float64(n))+" "+goalSays(f))
		}
	}
	if len(left) == 0 {
		return ""
	}
	slices.Sort(left)
	return "I work backwards for one figure at a time. Ask by itself for " + listed(left, "and") + "."
}

// sprung reports whether a preload comes from strips that overfill their opening.
func sprung(w worked) bool {
	over := w.want.Solve == unit.Overfill || w.question.Said.Has(unit.Overfill)
	return over && !w.question.Said.Has(unit.WedgeForce)
}

// goalSays says what a wanted figure is of.
func goalSays(f unit.Field) string {
	switch f {
	case unit.BarReach:
		return "of reach"
	case unit.BarCovered:
		return "of bar that pushes"
	case unit.Rise:
		return "of rise"
	case unit.Closing:
		return "to close the gap"
	case unit.Buckle:
		return "before loose strips lift"
	case unit.SideNet:
		return "left at the far joint"
	case unit.Ambient:
		return "of air outside"
	case unit.Proud:
		return "proud of the fence"
	case unit.Clearance:
		return "to spare"
	case unit.StackHeight:
		return "of stack"
	case unit.GlueMass:
		return "of glue"
	case unit.JointArea:
		return "of joints"
	case unit.LayupPanel:
		return "of lay-up"
	case unit.ClosedTime:
		return "of closed time"
	case unit.OpenTime:
		return "of open time"
	case unit.PressTime:
		return "in the press"
	case unit.UltimateVacuum:
		return "at best"
	case unit.Hold:
		return "of holding"
	case unit.Emc:
		return "of equilibrium moisture"
	case unit.WidthChange:
		return "of change in width"
	case unit.Cup:
		return "of cup"
	}
	return place(f)
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
