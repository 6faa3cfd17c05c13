package bot

import (
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// sentence puts a finding of the engine into words.
func (s style) sentence(f engine.Finding, w worked) string {
	if f.Reason == engine.ReasonEachBarStep && s.metric {
		f.Figures = inMetricSteps(f.Figures)
	}
	form, ok := reasonSays[f.Reason]
	if !ok {
		return ""
	}
	if says := noBearing(w); f.Reason == engine.ReasonNoBearing && says != "" {
		return says
	}
	form = strings.NewReplacer("{where}", "on the face", "{sought}", "{"+string(w.want.Solve)+"}").Replace(form)
	says := s.fill(form, f.Figures, w.answer.Values, w.question.Said, w.answer.Assumed)
	if f.Reason == engine.ReasonVacuumAboveAmbient {
		if w.question.Said.Has(unit.Altitude) || w.question.Room.Has(unit.Altitude) {
			says = strings.Replace(says, ", or tell me how high the shop lies", "", 1)
		}
		// both may round to one figure
		got := s.fill("{vacuum_kpa}", f.Figures, w.answer.Values, w.question.Said)
		says = strings.Replace(says, "the air here gives "+got+" at most", "that would be all the air there is here", 1)
	}
	return s.holding(withoutBar(says, w), f, w)
}

// verdictOn is the sentence of a check, which may be about another place than
// the face.
func (s style) verdictOn(c engine.Check, w worked) string {
	says := s.sentence(c.Finding, w)
	switch c.Name {
	case "first joint":
		if c.Reason == engine.ReasonJointHandTight || c.Reason == engine.ReasonJointUnderContact {
			return "At the first joint: " + lower(says)
		}
	case "glue line":
		return strings.Replace(says, " on the face", " left for the glue line", 1)
	case "thinnest strips":
		return strings.Replace(says, " on the face", s.fill(" on the thinnest strips[ of level {level}]", c.Figures), 1)
	}
	return says
}

// fill puts figures into a sentence. {field} stands for a figure in the
// person's unit, {field.low} and {field.high} for its ends, {field.up} for a length
// rounded up, which is to be at least so much. A part in square
// brackets is left out where one of its figures is not there or nothing; so is
// a whole sentence where one is not there.
func (s style) fill(form string, from ...unit.Facts) string {
	var out strings.Builder
	for {
		before, rest, optional := strings.Cut(form, "[")
		text, ok := s.fillPart(before, from)
		if !ok {
			return ""
		}
		out.WriteString(text)
		if !optional {
			return out.String()
		}
		var part string
		part, form, _ = strings.Cut(rest, "]")
		if text, ok := s.fillPart(part, from); ok && !strings.Contains(text, " 0 ") && !strings.Contains(text, nextToNothing) {
			out.WriteString(text)
		}
	}
}

func (s style) fillPart(form string, from []unit.Facts) (string, bool) {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(form, "{")
		out.WriteString(before)
		if !found {
			return out.String(), true
		}
		var name string
		name, form, _ = strings.Cut(rest, "}")
		text, ok := s.figure(name, from)
		if !ok {
			return "", false
		}
		out.WriteString(text)
	}
}

// figure shows what the first of some facts that knows it has under a name.
func (s style) figure(name string, from []unit.Facts) (string, bool) {
	name, end, _ := strings.Cut(name, ".")
	f := unit.Field(name)
	for _, fs := range from {
		switch v := fs[f].(type) {
		case nil:
		case unit.Number:
			if end == "up" {
				v = unit.Number(s.roundedUp(f, float64(v)))
			}
			return s.show(f, float64(v)), true
		case unit.Triple:
			if f == unit.Cup {
				v = unsigned(v)
			}
			if n := endOf(v, end); n != nil && s.isNothing(f, *n) || n != nil && f == unit.Cup && *n < 0.05 {
				return nextToNothing, true
			} else if n != nil {
				return s.show(f, *n), true
			}
		case unit.Triples:
			if n := leastOf(v); n != nil {
				return s.show(f, *n), true
			}
		default:
			if end == "" { // a word has no ends
				return s.plain(f, v, unit.Unit{}), true
			}
		}
	}
	return "", false
}

// metricStep is what a metric shop adds to a bar at a time.
const metricStep = 3.0 // mm

// inMetricSteps tells what a bar gains in a step of a metric tape; the gain is the
// same for each millimetre.
func inMetricSteps(fs unit.Facts) unit.Facts {
	step, ok := fs.Number(unit.BarHeight)
	gain, ok2 := fs.Number(unit.SideFarJoint)
	if !ok || !ok2 || step == 0 {
		return fs
	}
	fs = fs.Clone()
	fs[unit.BarHeight], fs[unit.SideFarJoint] = unit.Number(metricStep), unit.Number(gain/step*metricStep)
	return fs
}

func endOf(t unit.Triple, end string) *float64 {
	switch end {
	case "low":
		return t.Low
	case "high":
		return t.High
	}
	return t.Mid
}

func leastOf(ts unit.Triples) *float64 {
	var least *float64
	for _, t := range ts {
		if t.Mid != nil && (least == nil || *t.Mid < *least) {
			least = t.Mid
		}
	}
	return least
}

// cautionSays warns as a foreman would: what can happen, and what to do.
var cautionSays = map[engine.Caution]string{
	engine.CautionImplosion:          "Only vessels made for vacuum: never glass, never an unrated tank. They burst inwards without warning.",
	engine.CautionBreather:           "Keep a breather path to the pump everywhere: a middle that is sealed off gets no pressure at all.",
	engine.CautionGauge:              "A gauge at the pump reads higher than the press has. Put one on the bag or the bed.",
	engine.CautionPorous:             "Plain MDF, particleboard and ply leak through their faces. Seal the bed or lay film under the work.",
	engine.CautionPowerCut:           "Know what happens when the power goes: a check valve, a reservoir made for it, clamps within reach.",
	engine.CautionPinch:              "A driven wedge lets go all at once. Keep fingers and faces out of its line, and ease it out.",
	engine.CautionHoldDown:           "Sprung strips jump. Hold them down until the vacuum does.",
	engine.CautionHands:              "Hands out while it pulls down; it does not stop for fingers.",
	engine.CautionNoise:              "Ears covered beside the pump, a dust mask at the planer.",
	engine.CautionStructural:         "These figures do not prove a panel that people stand or lean on. Stairs, guards and beams go by the local building code and a licensed engineer.",
	engine.CautionLabel:              "The glue's own label and safety data sheet come before this table.",
	engine.CautionFormaldehyde:       "This glue gives off formaldehyde while it cures: fresh air, gloves, eyes covered.",
	engine.CautionPhenol:             "Phenol burns skin: gloves and eye protection.",
	engine.CautionFlammable:          "There is alcohol in it: no flame, no sparks, fresh air.",
	engine.CautionPowder:             "The powder irritates: wear a dust mask when you mix it.",
	engine.CautionIsocyanate:         "Isocyanate: it can make lungs and skin allergic for good. Fresh air, gloves, eyes covered.",
	engine.CautionIsocyanateHardener: "Read the hardener's label: in two-part kinds it can be an isocyanate. Then fresh air, gloves, eyes covered.",
	engine.CautionEpoxySkin:          "Epoxy can make your skin allergic for good: gloves and eye protection, and never clean hands with solvent.",
	engine.CautionEpoxyHeat:          "A full pot of mixed epoxy heats up and can smoke: small batches, spread them out.",
	engine.CautionHotGlue:            "The pot and the glue scald: gloves and eye protection.",
	engine.CautionAlkaline:           "This glue is alkaline: gloves and eye protection. It stains oak and other woods rich in tannin.",
}
