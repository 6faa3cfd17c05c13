package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// barStep is what a shop adds to a bar at a time: 1/8 in.
const barStep = 0.003175 // m

// Limits of the bars that are advised.
const (
	tapeMark   = 0.00079375 // m, 1/32 in: what rounding up can add
	tallestBar = 0.5        // m
)

// vacuumStep is a mark on a dial: 1 inHg.
const vacuumStep = 3386.389 // Pa

// adviseOn records what would help the joints and what their figures hang on.
func (s *sideLoad) adviseOn(b *builder) {
	if s.single() {
		return
	}
	s.adviseOnFaces(b)
	if !s.evacuated {
		return
	}
	joint := s.joints && s.row.strips > 1
	if !s.bar.none {
		s.adviseOnBar(b, joint)
	}
	if joint {
		s.adviseOnSteps(b)
		s.adviseBarForContact(b)
		if s.bar.friction.High == 0 {
			return
		}
		b.advise(ReasonFrictionBound, unit.Facts{
			unit.SideIdeal: unit.SideIdeal.Number(s.vacuum.Mid * s.bar.even() * s.bar.covered.Mid / s.thick),
		})
	}
}

// adviseOnBar tells what keeps a bar from pushing with its whole height.
func (s *sideLoad) adviseOnBar(b *builder, joint bool) {
	height := unit.BarHeight.Number(s.bar.height)
	if s.bar.height <= s.bar.under {
		r := ReasonBarTooLow
		if s.bar.twin && s.bar.height > s.bar.lowest {
			r = ReasonBarUnderUpperFace
		}
		b.advise(r, unit.Facts{unit.BarHeight: height})
		return
	}
	if s.bar.touching() < 1 {
		least := s.bar.under + math.Min(s.thick, press.SureContact.Metres())
		b.advise(ReasonBarBarely, unit.Facts{unit.BarHeight: unit.BarHeight.Number(least)})
	}
	open := !reaches(math.Max(s.bar.covered.Mid, s.bar.cover.Mid), s.bar.height)
	if open {
		s.adviseCover(b, joint)
	}
	if s.bar.under > 0 || s.bar.caul || open {
		b.advise(ReasonKeepBack, nil)
	}
	if !s.bar.tips {
		return
	}
	w, err := press.BarWidthAgainstTipping(unit.Length(s.bar.height), unit.Length(s.bar.covered.Mid-s.bar.edge()), unit.Length(s.bar.middle))
	if err != nil {
		return
	}
	figures := unit.Facts{
		unit.BarHeight:     height,
		unit.BarWidthLeast: unit.BarWidthLeast.Number(float64(w)),
	}
	if !s.bar.shared {
		figures[unit.BarTipping] = unit.BarTipping.Number(s.bar.covered.Low - s.bar.edge())
	}
	if joint { // a wider bar holds more of its own push back
		gets := s.with(s.vacuum.Mid, s.bar.covered.Mid, float64(w))
		figures[unit.SideFarJoint] = unit.SideFarJoint.Number(math.Max(gets, s.pre.pressure.Mid))
	}
	b.advise(ReasonWiderBar, figures)
}

// adviseCover tells how to cover the rest of the bar, how wide it must be then and
// what the far joint gets, unless a preload gives as much already.
func (s *sideLoad) adviseCover(b *builder, joint bool) {
	figures := unit.Facts{unit.BarHeight: unit.BarHeight.Number(s.bar.height), unit.Cover: figure(unit.Cover, s.bar.cover)}
	width := s.widthFor(s.bar.height)
	if width > s.bar.wide {
		figures[unit.BarWidthLeast] = unit.BarWidthLeast.Number(width)
	}
	if joint {
		gets := s.with(s.vacuum.Mid, s.bar.height, math.Max(width, s.bar.wide))
		if gets <= s.far.Mid && s.pre.known {
			return
		}
		figures[unit.SideFarJoint] = unit.SideFarJoint.Number(gets)
	}
	b.advise(ReasonCoverBar, figures)
}

// adviseOnSteps tells what one more step of bar or of vacuum adds to the far
// joint, at the mids, where it is the bar that gives it what it has.
func (s *sideLoad) adviseOnSteps(b *builder) {
	now := s.mid(s.vacuum.Mid, s.bar.covered.Mid)
	if now <= 0 || now <= s.pre.pressure.Mid {
		return
	}
	if !s.bar.none && s.bar.height >= s.bar.top {
		b.advise(ReasonEachBarStep, unit.Facts{
			unit.BarHeight:    unit.BarHeight.Number(barStep),
			unit.SideFarJoint: unit.SideFarJoint.Number(s.mid(s.vacuum.Mid, s.bar.covered.Mid+barStep) - now),
		})
	}
	pa, err := b.ambient()
	if err != nil || s.vacuum.Mid+vacuumStep > nearAmbient*pa.Mid {
		return
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
	h, w, ok := s.barForContact()
	if !ok || !b.underLid(h) {
		return
	}
	figures := unit.Facts{
		unit.BarHeight:   unit.BarHeight.Number(h),
		unit.GlueContact: unit.GlueContact.Number(s.contact),
	}
	if w > s.bar.wide || s.bar.none {
		figures[unit.BarWidthLeast] = unit.BarWidthLeast.Number(w)
	}
	b.advise(ReasonBarForContact, figures)
}

// barForContact returns the least bar that, covered to its top, gives the far joint
// contact at the mids, does not tip and stands at least as high as the strips. A
// wider bar holds more of its own push back, so that height and width are worked
// out in turn; with much friction there is none. Both may be rounded up to a mark
// of the tape.
func (s *sideLoad) barForContact() (height, width float64, ok bool) {
	r, μ := s.bar.corner.Mid, s.bar.friction.Mid
	bare := (s.contact*s.thick/s.vacuum.Mid+s.bar.drag.Mid*μ*s.xFar)*s.sharers() + r + μ*r
	least := s.bar.under + s.thick
	width = s.bar.wide
	height = math.Max(least, bare+μ*width)
	for height < tallestBar {
		w := math.Max(s.widthFor(height), s.widthFor(height+tapeMark))
		if w <= width+1e-6 {
			return height, width, true
		}
		width = w
		height = math.Max(height, bare+μ*(width+tapeMark))
	}
	return 0, 0, false
}

// widthFor returns how wide a bar of some height, covered to its top, must be not
// to tip; 0 where any width will do.
func (s *sideLoad) widthFor(height float64) float64 {
	w, err := press.BarWidthAgainstTipping(unit.Length(height), unit.Length(height), unit.Length(s.bar.middle))
	if err != nil {
		return 0
	}
	return float64(w)
}

// mid returns what the bar gives the far joint at the mids, with another vacuum
// and another covered height.
func (s *sideLoad) mid(p, h float64) float64 { return s.with(p, h, s.bar.width) }

// with is mid for a bar of another width as well.
func (s *sideLoad) with(p, h, width float64) float64 {
	part := s.bar.even()
	width = s.bar.holding(width, h, s.bar.pressed.Mid, s.bar.friction.Mid)
	q, err := press.JointPressure(unit.Pressure(p), press.Push{
		Covered: unit.Length(part * h), Width: unit.Length(part * width), Corner: unit.Length(part * s.bar.corner.Mid),
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
