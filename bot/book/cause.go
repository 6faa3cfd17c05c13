package book

import (
	"cmp"
	"slices"
	"time"

	"presshand/engine/unit"
)

// A Cause is something that can have spoilt a joint of this load.
type Cause struct {
	Reason  CauseReason
	Margin  float64    // what there was over what was needed, less one; negative: there was too little
	Figures unit.Facts // the numbers that the margin comes from
}

// A CauseReason names a cause. Each has a sentence in the conversation.
type CauseReason string

const (
	FarJointUnderContact CauseReason = "far joint under contact"
	ClosingTooHard       CauseReason = "closing pressure"
	OpenTimeOverrun      CauseReason = "open time overrun"
	ColdShop             CauseReason = "cold shop"
	ProudTooSmall        CauseReason = "proud too small"
	UnevenWithoutMat     CauseReason = "uneven strips without a mat"
	OutTooEarly          CauseReason = "out too early"
)

// What a margin is measured against.
const (
	proudEnoughMM = 0.8  // common practice, no source
	unevenMM      = 0.15 // gap that water-based glue bridges; joints under a rigid caul
	warmEnoughK   = 10.0 // glue takes twice as long for each 10 °C less (common practice, no source)
)

// Causes returns what can have spoilt a joint of the load, the smallest margin
// first: what its own frozen figures say, so far as they say it.
//
//	far joint   its low pressure against the glue's contact pressure
//	closing     what is left of the far joint's mid after closing the gap, against contact
//	open time   the least closed time against the lay-up
//	cold        degrees over the glue's lowest temperature, against 10 °C
//	proud       the least proud against 0.8 mm
//	uneven      0.15 mm against the spread of thicknesses, where there is no mat
//	early       time in the press against the least press time
func Causes(l Load) []Cause {
	var out []Cause
	for _, find := range []func(Load) (Cause, bool){
		farJoint, closing, overrun, coldShop, proudSmall, uneven, early,
	} {
		if c, ok := find(l); ok {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Cause) int { return cmp.Compare(a.Margin, b.Margin) })
	return out
}

// spread is a figure of the plan with its ends.
type spread struct{ low, mid, high float64 }

// figure prefers what was computed, which has a range, to what was said.
func (p Plan) figure(f unit.Field) (spread, bool) {
	for _, facts := range []unit.Facts{p.Values, p.Said, p.Assumed} {
		switch v := facts[f].(type) {
		case unit.Number:
			return spread{float64(v), float64(v), float64(v)}, true
		case unit.Triple:
			return ends(v)
		case unit.Triples:
			return least(v)
		case unit.Numbers:
			if len(v) > 0 {
				m := slices.Min(v)
				return spread{m, m, m}, true
			}
		}
	}
	return spread{}, false
}

func ends(t unit.Triple) (spread, bool) {
	if t.Mid == nil {
		return spread{}, false
	}
	s := spread{*t.Mid, *t.Mid, *t.Mid}
	if t.Low != nil {
		s.low = *t.Low
	}
	if t.High != nil {
		s.high = *t.High
	}
	return s, true
}

func least(ts unit.Triples) (found spread, ok bool) {
	for _, t := range ts {
		if s, has := ends(t); has && (!ok || s.mid < found.mid) {
			found, ok = s, true
		}
	}
	return found, ok
}

func farJoint(l Load) (Cause, bool) {
	far, ok1 := l.Plan.figure(unit.SideFarJoint)
	contact, ok2 := l.Plan.figure(unit.GlueContact)
	if !ok1 || !ok2 || contact.mid <= 0 {
		return Cause{}, false
	}
	return Cause{FarJointUnderContact, far.low/contact.mid - 1, unit.Facts{
		unit.SideFarJoint: l.Plan.Values[unit.SideFarJoint], unit.GlueContact: unit.Number(contact.mid),
	}}, true
}

func closing(l Load) (Cause, bool) {
	far, ok1 := l.Plan.figure(unit.SideFarJoint)
	contact, ok2 := l.Plan.figure(unit.GlueContact)
	shut, ok3 := l.Plan.figure(unit.Closing)
	if !ok1 || !ok2 || !ok3 || contact.mid <= 0 || shut.mid <= 0 {
		return Cause{}, false
	}
	return Cause{ClosingTooHard, (far.mid-shut.mid)/contact.mid - 1, unit.Facts{
		unit.Closing: l.Plan.Values[unit.Closing], unit.SideFarJoint: l.Plan.Values[unit.SideFarJoint],
		unit.GlueContact: unit.Number(contact.mid),
	}}, true
}

// overrun takes the lay-up that the plan was judged by, which for a whole load
// is more than that of one panel.
func overrun(l Load) (Cause, bool) {
	closed, ok1 := l.Plan.figure(unit.ClosedTime)
	layup, ok2 := l.Plan.judgedLayup()
	for _, f := range []unit.Field{unit.LayupLoad, unit.LayupPanel} {
		if !ok2 {
			layup, ok2 = l.Plan.figure(f)
		}
	}
	if !ok1 || !ok2 || layup.mid <= 0 {
		return Cause{}, false
	}
	return Cause{OpenTimeOverrun, closed.low/layup.mid - 1, unit.Facts{
		unit.ClosedTime: l.Plan.Values[unit.ClosedTime], unit.LayupLoad: unit.Number(layup.mid),
	}}, true
}

func (p Plan) judgedLayup() (spread, bool) {
	for _, c := range p.Checks {
		if t, ok := c.Figures[unit.LayupLoad].(unit.Triple); ok {
			return ends(t)
		}
	}
	return spread{}, false
}

func coldShop(l Load) (Cause, bool) {
	shop, ok1 := l.Plan.figure(unit.ShopTemp)
	lowest, ok2 := l.Plan.figure(unit.MinTemp)
	if !ok1 || !ok2 {
		return Cause{}, false
	}
	return Cause{ColdShop, (shop.mid - lowest.mid) / warmEnoughK, unit.Facts{
		unit.ShopTemp: unit.Number(shop.mid), unit.MinTemp: unit.Number(lowest.mid),
	}}, true
}

func proudSmall(l Load) (Cause, bool) {
	proud, ok := l.Plan.figure(unit.Proud)
	if !ok {
		return Cause{}, false
	}
	return Cause{ProudTooSmall, proud.mid/proudEnoughMM - 1, unit.Facts{unit.Proud: unit.Number(proud.mid)}}, true
}

func uneven(l Load) (Cause, bool) {
	for _, evened := range [...]unit.Field{unit.MatThickness, unit.MatLow} { // a mat told of, or one in the stack
		if _, ok := l.Plan.figure(evened); ok {
			return Cause{}, false
		}
	}
	differ, ok := l.Plan.figure(unit.ThicknessSpread)
	if !ok {
		thick, ok1 := l.Plan.figure(unit.StripThickest)
		thin, ok2 := l.Plan.figure(unit.StripThinnest)
		if !ok1 || !ok2 {
			return Cause{}, false
		}
		differ.mid = thick.mid - thin.mid
	}
	if differ.mid <= 0 {
		return Cause{}, false
	}
	return Cause{UnevenWithoutMat, unevenMM/differ.mid - 1, unit.Facts{unit.ThicknessSpread: unit.Number(differ.mid)}}, true
}

func early(l Load) (Cause, bool) {
	low, _, _, ok := l.Plan.PressTime()
	if !ok || low <= 0 || l.OutAt.IsZero() {
		return Cause{}, false
	}
	lay := l.Pressed(time.Time{})
	return Cause{OutTooEarly, float64(lay)/float64(low) - 1, unit.Facts{
		unit.PressTime: unit.Number(lay.Minutes()), unit.LabelPress: unit.Number(low.Minutes()),
	}}, true
}
