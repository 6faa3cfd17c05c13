package engine

import (
	"presshand/engine/press"
	"presshand/engine/unit"
)

// barStep is what a shop adds to a bar at a time: 1/8 in.
const barStep = 0.003175 // m

// vacuumStep is a mark on a dial: 1 inHg.
const vacuumStep = 3386.389 // Pa

// adviseOn records what would help the joints and what their figures hang on.
func (s *sideLoad) adviseOn(b *builder) {
	if !s.evacuated {
		return
	}
	if !s.bar.none {
		s.adviseOnBar(b)
	}
	if s.joints && s.row.strips > 1 {
		s.adviseOnSteps(b)
		s.adviseBarForContact(b)
		b.advise(ReasonFrictionBound, unit.Facts{
			unit.SideIdeal: unit.SideIdeal.Number(s.vacuum.Mid * s.bar.covered.Mid / s.thick),
		})
	}
}

// adviseOnBar tells what keeps a bar from pushing with its whole height.
func (s *sideLoad) adviseOnBar(b *builder) {
	height := unit.BarHeight.Number(s.bar.height)
	if s.bar.height <= s.bar.under {
		b.advise(ReasonBarTooLow, unit.Facts{unit.BarHeight: height})
		return
	}
	if s.bar.covered.Mid < s.bar.height {
		figures := unit.Facts{unit.BarHeight: height, unit.Cover: figure(unit.Cover, s.bar.cover)}
		if s.joints && s.row.strips > 1 {
			figures[unit.SideFarJoint] = unit.SideFarJoint.Number(s.mid(s.vacuum.Mid, s.bar.height))
		}
		b.advise(ReasonCoverBar, figures)
	}
	if s.bar.under > 0 || s.bar.caul || s.bar.covered.Mid < s.bar.height {
		b.advise(ReasonKeepBack, nil)
	}
	if s.bar.tips {
		w, err := press.BarWidthAgainstTipping(unit.Length(s.bar.height), unit.Length(s.bar.covered.Mid), unit.Length(s.bar.middle))
		tip, err2 := press.TippingLimit(unit.Length(s.bar.height), unit.Length(s.bar.width), unit.Length(s.bar.middle))
		if firstError(err, err2) == nil {
			b.advise(ReasonWiderBar, unit.Facts{
				unit.BarHeight:  height,
				unit.BarTipping: unit.BarTipping.Number(float64(tip)),
				unit.BarWidth:   unit.BarWidth.Number(float64(w)),
			})
		}
	}
}

// adviseOnSteps tells what one more step of bar or of vacuum adds to the far
// joint, at the mids.
func (s *sideLoad) adviseOnSteps(b *builder) {
	now := s.mid(s.vacuum.Mid, s.bar.covered.Mid)
	if now <= 0 {
		return
	}
	if !s.bar.none {
		b.advise(ReasonEachBarStep, unit.Facts{
			unit.BarHeight:    unit.BarHeight.Number(barStep),
			unit.SideFarJoint: unit.SideFarJoint.Number(s.mid(s.vacuum.Mid, s.bar.covered.Mid+barStep) - now),
		})
	}
	b.advise(ReasonEachVacuumStep, unit.Facts{
		unit.Vacuum:       unit.Vacuum.Number(vacuumStep),
		unit.SideFarJoint: unit.SideFarJoint.Number(s.mid(s.vacuum.Mid+vacuumStep, s.bar.covered.Mid) - now),
	})
}

// adviseBarForContact tells which bar, covered to its top, gives the far joint
// contact at the mids, where it has less.
func (s *sideLoad) adviseBarForContact(b *builder) {
	if s.far.Mid >= s.contact || s.vacuum.Mid <= 0 {
		return
	}
	width := s.bar.width
	if s.bar.none {
		width = defaultBarWidth
	}
	r, μ := s.bar.corner.Mid, s.bar.friction.Mid
	h := s.contact*s.thick/s.vacuum.Mid + r + μ*(width+r) + s.bar.drag.Mid*μ*s.xFar
	b.advise(ReasonBarForContact, unit.Facts{
		unit.BarHeight:   unit.BarHeight.Number(h),
		unit.GlueContact: unit.GlueContact.Number(s.contact),
	})
}

// mid returns what the bar gives the far joint at the mids, with another vacuum
// and another covered height.
func (s *sideLoad) mid(p, h float64) float64 {
	q, err := press.JointPressure(unit.Pressure(p), press.Push{
		Covered: unit.Length(h), Width: unit.Length(s.bar.width), Corner: unit.Length(s.bar.corner.Mid),
		Friction: s.bar.friction.Mid, Drag: s.bar.drag.Mid,
	}, unit.Length(s.xFar), unit.Length(s.thick))
	if err != nil {
		return 0
	}
	return float64(q)
}

// warnOf records the dangers of this load.
func (s *sideLoad) warnOf(b *builder) {
	if s.evacuated {
		b.warnOfVacuum()
	}
	if b.known(unit.GlueClass) {
		warnOfGlue(b, b.glue())
	}
	b.warnOfUse()
}

// warnOfVacuum records what goes wrong between gauge, bed and work.
func (b *builder) warnOfVacuum() {
	if f, _, _ := b.gauge(); f == unit.Vacuum {
		b.warn(CautionGauge)
	}
	if b.word(unit.PressKind) != "frame" || b.known(unit.CaulThickness, unit.StackLayers) {
		b.warn(CautionBreather)
	}
	switch {
	case b.word(unit.SurfaceKind) == "bare", b.word(unit.CoreKind) == "mdf", b.word(unit.CoreKind) == "particleboard":
		b.warn(CautionPorous)
	}
}

// warnOfUse records what a panel that carries people calls for.
func (b *builder) warnOfUse() {
	if b.known(unit.StructuralUse) {
		b.warn(CautionStructural)
	}
}
