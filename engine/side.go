package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// A side load is what presses on the edge joints of one panel. Figures in SI.
type sideLoad struct {
	row       row
	bar       bar
	pre       preload
	thick     float64             // t
	across    unit.Range[float64] // E⊥
	vacuum    unit.Range[float64]
	evacuated bool // the vacuum is known

	ideal         unit.Range[float64]
	first, far    unit.Range[float64] // joint pressures, the larger of preload and bar
	xFirst, xFar  float64
	joints        bool // the joints' places are known
	closing       unit.Range[float64]
	gap           gap
	contact, full float64
}

// answerSide answers what presses on edge joints.
func answerSide(b *builder) error {
	s, ready, err := b.sideInputs()
	if err != nil || !ready {
		return err
	}
	if err := s.compute(b); err != nil {
		return err
	}
	s.give(b)
	if err := s.judge(b); err != nil {
		return err
	}
	if s.evacuated || b.said(unit.Opening) {
		if err := b.judgeUnderLid(); err != nil {
			return err
		}
	}
	s.adviseOn(b)
	s.adviseLimits(b)
	s.warnOf(b)
	s.work(b)
	return nil
}

// sideInputs reads a side load; not ready where something that every figure
// needs is missing.
func (b *builder) sideInputs() (s sideLoad, ready bool, err error) {
	if s.row, err = b.row(); err != nil {
		return s, false, err
	}
	var ok bool
	if s.thick, ok = b.thickness(); !ok {
		b.need(unit.StripThickness)
	} else if err := unit.MoreThan("thickness of the strips", s.thick*1000, 0, " mm"); err != nil {
		return s, false, err
	}
	preloaded := b.known(unit.WedgeForce, unit.WedgeRatio, unit.Overfill)
	s.evacuated = b.evacuated()
	if !s.evacuated && (!preloaded || b.known(unit.BarHeight)) {
		b.need(unit.Vacuum)
	}
	s.joints = len(s.row.missing()) == 0
	if s.evacuated || s.row.width > longestWork {
		b.need(s.row.missing()...)
	}
	if !ok {
		return s, false, nil
	}
	wood := b.species()
	s.across = b.across(wood)
	if s.pre, err = b.preload(s.row, s.thick, s.across); err != nil {
		return s, false, err
	}
	if s.evacuated {
		if s.vacuum, s.evacuated, err = b.vacuum(); err != nil {
			return s, false, err
		}
		if s.bar, ok, err = b.bar(s.thick); err != nil || !ok {
			return s, false, err
		}
	}
	return s, s.evacuated || s.pre.known, nil
}

// compute works the pressures out, from the vacuum, the preload or both.
func (s *sideLoad) compute(b *builder) error {
	glue := b.glue()
	s.thresholds(b, glue)
	if s.evacuated {
		ideal := unit.Sweep(func(c unit.Corner) float64 {
			p, err := press.IdealSidePressure(unit.Pressure(c[0]), unit.Length(s.bar.height), unit.Length(s.ruled()))
			if err != nil {
				return nan
			}
			return float64(p)
		}, s.vacuum)
		s.ideal = ideal
	}
	s.first, s.far = s.pre.pressure, s.pre.pressure
	if s.evacuated && s.joints && s.row.strips > 1 {
		s.xFirst, s.xFar = s.row.nearest(s.bar.sides), s.row.farthest(s.bar.sides)
		first, err := s.bar.joint(s.vacuum, s.xFirst, s.thick)
		if err != nil {
			return err
		}
		far, err := s.bar.joint(s.vacuum, s.xFar, s.thick)
		if err != nil {
			return err
		}
		s.first, s.far = larger(first, s.pre.pressure), larger(far, s.pre.pressure)
	}
	return s.close(b, glue)
}

// sharers is how many edges a bar presses: those of both faces of a core, or one.
func (s *sideLoad) sharers() float64 {
	if s.bar.twin {
		return 2
	}
	return 1
}

// ruled is the thickness by which the shop's rule divides the height of a bar.
func (s *sideLoad) ruled() float64 {
	if s.bar.none {
		return s.thick
	}
	return s.sharers() * s.thick
}

// pressed reports whether there is a joint whose pressure is known.
func (s *sideLoad) pressed() bool {
	if s.single() {
		return false
	}
	return s.pre.known || s.evacuated && s.joints && s.row.strips > 1
}

// single reports whether there is but one strip, which has no joint.
func (s *sideLoad) single() bool { return s.row.strips == 1 }

// everywhere is the reach of a bar where nothing rubs.
const everywhere = "everywhere"

// give records the figures.
func (s *sideLoad) give(b *builder) {
	if s.evacuated {
		give(b, unit.FacePressure, s.vacuum)
		give(b, unit.SideIdeal, s.ideal)
		give(b, unit.BarCovered, s.bar.covered)
		if reach := s.bar.reach(); math.IsInf(reach.Low, 1) {
			b.giveValue(unit.BarReach, unit.Word(everywhere))
		} else {
			give(b, unit.BarReach, reach)
		}
	}
	if s.pressed() {
		give(b, unit.SideFirstJoint, s.first)
		give(b, unit.SideFarJoint, s.far)
	}
	if s.pre.known {
		give(b, unit.Preload, s.pre.pressure)
		give(b, unit.FenceLoad, s.pre.fence)
	}
	if s.pre.sprung {
		give(b, unit.Rise, s.pre.rise)
		give(b, unit.Snap, s.pre.snap)
	}
	if q, ok := s.buckle(); ok {
		give(b, unit.Buckle, q)
	}
	if s.gap.bends && !s.single() {
		give(b, unit.Closing, s.closing)
		give(b, unit.SideNet, s.net(s.far))
	}
	give(b, unit.GlueContact, unit.Exactly(s.contact))
	give(b, unit.GlueFull, unit.Exactly(s.full))
}

// buckle returns the side pressure at which loose strips lift; false where the
// panel's width is not known.
func (s *sideLoad) buckle() (unit.Range[float64], bool) {
	if s.row.width == 0 {
		return unit.Range[float64]{}, false
	}
	return unit.Sweep(func(c unit.Corner) float64 {
		p, err := press.BucklePressure(unit.Stiffness(c[0]), unit.Length(s.thick), unit.Length(s.row.width))
		if err != nil {
			return nan
		}
		return float64(p)
	}, s.across), true
}
