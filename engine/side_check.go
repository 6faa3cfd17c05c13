package engine

import (
	"math"

	"presshand/engine/glue"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// judge judges the joints and what else a panel under side pressure can suffer.
func (s *sideLoad) judge(b *builder) error {
	if s.evacuated {
		b.judgeVacuum()
	}
	if err := b.judgeGlueLine(); err != nil {
		return err
	}
	if s.single() {
		b.judge("joints", None, ReasonNoJoint, nil)
	}
	if s.evacuated && facesOnCore(b) {
		b.judgeFace("face", s.vacuum, b.glue())
	}
	if s.pressed() {
		s.judgeJoints(b)
		s.judgeCrush(b)
		s.judgeStarved(b)
	}
	if s.pre.known {
		s.judgeSprung(b)
	}
	return nil
}

// judgeJoints judges the far joint and, where it comes out otherwise, the first
// one too. A preload presses all joints alike.
func (s *sideLoad) judgeJoints(b *builder) {
	if s.xFar == 0 {
		b.judgeJoint(s, "joints", s.far, 0)
		return
	}
	b.judgeJoint(s, "far joint", s.far, s.xFar)
	if s.xFirst != s.xFar {
		b.judgeJoint(s, "first joint", s.first, s.xFirst)
	}
}

func (b *builder) judgeJoint(s *sideLoad, name string, pressure unit.Range[float64], x float64) {
	net := s.net(pressure)
	v, r := s.jointVerdict(net, x > 0 && pressure.Low <= 0)
	figures := unit.Facts{
		unit.SideNet:      figure(unit.SideNet, net),
		unit.GlueContact:  unit.GlueContact.Number(s.contact),
		unit.GlueFull:     unit.GlueFull.Number(s.full),
		unit.UnderContact: unit.Number(100 * shareUnder(net, s.contact)),
	}
	if x > 0 {
		figures[unit.JointAt] = unit.JointAt.Number(x)
	}
	if x > 0 && !s.bar.none {
		figures[unit.BarReach] = figure(unit.BarReach, s.bar.reach())
	}
	if s.gap.wide() {
		figures[unit.Gap] = unit.Gap.Number(s.gap.open)
		figures[unit.GapLimit] = unit.GapLimit.Number(s.gap.most)
		if s.gap.bends {
			figures[unit.Closing] = figure(unit.Closing, s.closing)
		}
	}
	b.judge(name, v, r, figures)
}

// jointVerdict judges one joint by what is left of its pressure once the gap is
// closed; unreached where friction may eat the whole push before it.
func (s *sideLoad) jointVerdict(net unit.Range[float64], unreached bool) (Verdict, Reason) {
	touches := reaches(net.Low, s.contact)
	switch {
	case touches && reaches(net.Mid, s.full):
		return Good, ReasonJointFull
	case touches && s.gap.tight():
		return Good, ReasonJointTight
	case s.gap.wide() && !reaches(net.High, s.contact):
		return Stop, ReasonJointOpen
	case s.gap.wide() && !s.gap.bends:
		return Care, ReasonJointGapLength
	case s.gap.wide():
		return Care, ReasonJointGapWide
	case touches:
		return Care, ReasonJointHandTight
	case unreached:
		return Care, ReasonJointBeyondReach
	}
	return Care, ReasonJointUnderContact
}

// shareUnder returns how much of a range lies under a bound.
func shareUnder(r unit.Range[float64], bound float64) float64 {
	if r.High <= r.Low {
		if r.Mid < bound {
			return 1
		}
		return 0
	}
	return math.Max(0, math.Min(1, (bound-r.Low)/(r.High-r.Low)))
}

// judgeCrush judges the highest joint pressure against what the wood bears
// across the grain.
func (s *sideLoad) judgeCrush(b *builder) {
	kind := b.species()
	if kind.Crush == 0 {
		s.adviseOnCrush(b, kind)
		return
	}
	bears := float64(kind.Crush)
	figures := unit.Facts{
		unit.SideFirstJoint: figure(unit.SideFirstJoint, s.first),
		unit.Crushing:       unit.Crushing.Number(bears),
	}
	switch {
	case !reaches(bears, s.first.High):
		b.judge("crush", Stop, ReasonCrushed, figures)
	case !reaches(bears/2, s.first.High):
		b.judge("crush", Care, ReasonCrushNear, figures)
	}
}

// softestCrush is the least compression across the grain that the wood table has in
// each group.
var softestCrush = func() map[wood.Group]float64 {
	least := map[wood.Group]float64{wood.Hardwood: math.Inf(1), wood.Softwood: math.Inf(1)}
	for _, s := range wood.All() {
		if s.Crush > 0 {
			least[s.Group] = math.Min(least[s.Group], float64(s.Crush))
		}
	}
	return least
}()

// adviseOnCrush says that crushing is not judged, and how much the softest wood of
// the group bears where that is near.
func (s *sideLoad) adviseOnCrush(b *builder, kind wood.Species) {
	figures := unit.Facts{unit.Species: unit.Word(kind.Name)}
	if softest := softestCrush[kind.Group]; !reaches(softest/2, s.first.High) {
		figures[unit.SideFirstJoint] = figure(unit.SideFirstJoint, s.first)
		figures[unit.Crushing] = unit.Crushing.Number(softest)
	}
	b.advise(ReasonCrushUnknown, figures)
}

// judgeStarved warns where so much pressure squeezes the glue out.
func (s *sideLoad) judgeStarved(b *builder) {
	most, limited := glue.Starved(b.glue())
	if !limited || reaches(float64(most), s.first.High) {
		return
	}
	b.judge("starved joint", Care, ReasonStarved, unit.Facts{
		unit.SideFirstJoint: figure(unit.SideFirstJoint, s.first),
		unit.Starving:       unit.Starving.Number(float64(most)),
	})
}

// judgeSprung judges whether loose strips lift before the vacuum and whether a
// sprung panel lies down under it.
func (s *sideLoad) judgeSprung(b *builder) {
	if buckle, ok := s.buckle(); ok {
		figures := unit.Facts{
			unit.Preload: figure(unit.Preload, s.pre.pressure),
			unit.Buckle:  figure(unit.Buckle, buckle),
		}
		v, r := Good, ReasonNoLift
		if s.pre.pressure.Mid > buckle.Mid {
			v, r = Care, ReasonLifts
			b.warn(CautionHoldDown)
		}
		b.judge("lift", v, r, figures)
	}
	if !s.pre.sprung || !s.evacuated {
		return
	}
	v := capacityAgainst(s.vacuum, s.pre.snap)
	r := map[Verdict]Reason{Good: ReasonLies, Care: ReasonMayStand, Stop: ReasonStands}[v]
	b.judge("lies down", v, r, unit.Facts{
		unit.FacePressure: figure(unit.FacePressure, s.vacuum),
		unit.Snap:         figure(unit.Snap, s.pre.snap),
		unit.Rise:         figure(unit.Rise, s.pre.rise),
	})
}
