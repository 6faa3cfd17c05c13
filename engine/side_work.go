package engine

import (
	"fmt"

	"presshand/engine/glue"
	"presshand/engine/unit"
)

// work keeps the working of a side load.
func (s *sideLoad) work(b *builder) {
	if !b.q.Why {
		return
	}
	if s.evacuated {
		s.workBar(b)
	}
	if s.pre.driven || s.pre.sprung {
		s.workPreload(b)
	}
	if s.pressed() && s.xFar == 0 {
		s.workWedged(b)
	}
	if q, ok := s.buckle(); ok {
		source, standing := b.stiffnessSource(true)
		b.work(unit.Buckle, q, "p = π² E⊥ t² / (12 W²)", "Euler's column; an upper bound for unglued joints; "+source, standing, func() string {
			return fmt.Sprintf("π² · %.4g GPa · (%.4g mm)² / (12 · (%.4g mm)²)", s.across.Mid/1e9, s.thick*1e3, s.row.width*1e3)
		})
	}
	if s.gap.bends {
		s.workGap(b)
	}
	b.work(unit.GlueContact, unit.Exactly(s.contact), "by class of glue", "common practice, no source", CommonPractice, func() string { return b.glue().Name })
	s.workFull(b)
}

// workWedged keeps the working of joints that a preload alone presses.
func (s *sideLoad) workWedged(b *builder) {
	for _, f := range [...]unit.Field{unit.SideFirstJoint, unit.SideFarJoint} {
		b.work(f, s.pre.pressure, "p = p_pre, alike at all joints", "friction holds what was set before the vacuum", Estimate, func() string {
			return say(unit.Preload, s.pre.pressure.Mid)
		})
	}
}

// workFull keeps the working of what clamps would give, which of hide glue and
// epoxy does not hang on the wood.
func (s *sideLoad) workFull(b *builder) {
	c := b.glue()
	if !glue.HangsOnWood(c) {
		b.work(unit.GlueFull, unit.Exactly(s.full), "by class of glue: hide 350 kPa, epoxy 30 kPa", "from memory", FromMemory, func() string { return c.Name })
		return
	}
	b.work(unit.GlueFull, unit.Exactly(s.full), "690 kPa at specific gravity 0.40 to 1205 kPa at 0.63",
		"lower ends of 100–150 psi softwood and 175–250 psi hardwood advice for edge joints; the line between is our estimate", Estimate,
		func() string {
			return fmt.Sprintf("%s, specific gravity %.3g", c.Name, b.species().SpecificGravity)
		})
}

// workGap keeps the working of closing a gap.
func (s *sideLoad) workGap(b *builder) {
	source, standing := b.stiffnessSource(false)
	b.work(unit.Closing, s.closing, "p = 6.4 E_L w³ g / L⁴; the low end takes half of it, both strips giving",
		"Wood Handbook Eq. 9-2, simply supported beam under even load; "+source, standing, func() string {
			if s.gap.open == 0 {
				return "g = 0 mm"
			}
			L, _ := b.length()
			return fmt.Sprintf("6.4 · %.4g GPa · (%.4g mm)³ · %.4g mm / (%.4g mm)⁴", b.along(b.species()).Mid/1e9, s.row.strip*1e3, s.gap.open*1e3, L*1e3)
		})
	b.work(unit.SideNet, s.net(s.far), "p_far − p_close; low less high, high less low", "what is left of the far joint's pressure", Computed, func() string {
		return sayFinely(unit.SideFarJoint, s.far.Mid) + " − " + sayFinely(unit.Closing, s.closing.Mid)
	})
}

func (s *sideLoad) workPreload(b *builder) {
	formula, source := "p = N / (t L), N = D / (tan(α + φ) + tan φ); low less E⊥ (n − 1) 0.05 mm / W", "statics of a single-taper wedge (from memory); squeeze-out is our estimate"
	if b.drivenAgain() {
		formula = "p = N / (t L), N = D / (tan(α + φ) + tan φ); driven again, so nothing is lost to squeeze-out"
	}
	edges := b.sharers() * s.thick
	numbers := func() string {
		n, _ := b.number(unit.WedgeRatio)
		D, _ := b.number(unit.WedgeForce)
		L, _ := b.length()
		return fmt.Sprintf("D = %.4g N, α = atan(1/%.4g), φ = atan %.3g, t = %.4g mm, L = %.4g mm", D, n, wedgeFriction.Mid, edges*1e3, L*1e3)
	}
	if s.pre.bySpring {
		formula, source = "p = 0.8 (δ / W) / (1/E⊥ + t / (W K_f))", "Hooke's law, strips and fence in series; creep and K_f are our estimates"
		numbers = func() string {
			δ, _ := b.number(unit.Overfill)
			return fmt.Sprintf("δ = %.4g mm, W = %.4g mm, E⊥ = %.4g GPa, t = %.4g mm, K_f = %.4g N/mm²", δ*1e3, s.row.width*1e3, s.across.Mid/1e9, edges*1e3, fenceGives.Mid/1e6)
		}
	}
	b.work(unit.Preload, s.pre.pressure, formula, source, Estimate, numbers)
	b.work(unit.FenceLoad, s.pre.fence, "p_pre t, on each metre of fence", "definition of pressure", Computed, func() string {
		return fmt.Sprintf("%s · %.4g mm", say(unit.Preload, s.pre.pressure.Mid), edges*1e3)
	})
	if !s.pre.sprung {
		return
	}
	b.work(unit.Rise, s.pre.rise, "rise = √(3 W δ / 8)", "length of a shallow arc", Computed, func() string {
		δ, _ := b.number(unit.Overfill)
		return fmt.Sprintf("√(3 · %.4g mm · %.4g mm / 8)", s.row.width*1e3, δ*1e3)
	})
	source, standing := b.stiffnessSource(true)
	b.work(unit.Snap, s.pre.snap, "p = 8.21 E⊥ t rise³ / W⁴", "derived: parabolic arch without bending stiffness; "+source, standing, func() string {
		return fmt.Sprintf("8.21 · %.4g GPa · %.4g mm · (%.4g mm)³ / (%.4g mm)⁴", s.across.Mid/1e9, s.thick*1e3, s.pre.rise.Mid*1e3, s.row.width*1e3)
	})
}
