package engine

import (
	"fmt"
	"strings"

	"presshand/engine/unit"
)

// workBar keeps the working of what the bar gives. Terms that nearly cancel are
// written out, or the result would not follow from them.
func (s *sideLoad) workBar(b *builder) {
	pa, err := b.ambient()
	if err != nil {
		return
	}
	b.workAir(pa, s.vacuum)
	formula := "p_ideal = p H / t"
	if s.ruled() > s.thick {
		formula = "p_ideal = p H / (2 t), both faces"
	}
	b.work(unit.SideIdeal, s.ideal, formula, "force balance without friction", Computed, func() string {
		return fmt.Sprintf("%.4g kPa · %.4g mm / %.4g mm", s.vacuum.Mid/1e3, mm(s.bar.height), mm(s.ruled()))
	})
	s.workCovered(b)
	if s.xFar > 0 {
		s.workJoint(b, unit.SideFirstJoint, s.first, s.xFirst)
		s.workJoint(b, unit.SideFarJoint, s.far, s.xFar)
	}
	s.workReach(b)
}

func (s *sideLoad) workCovered(b *builder) {
	if s.bar.none {
		b.work(unit.BarCovered, s.bar.covered, "h = t", "no bar: the film on the strips' own edge", Computed, func() string {
			return fmt.Sprintf("t = %.4g mm", mm(s.thick))
		})
		return
	}
	b.work(unit.BarCovered, s.bar.covered, s.coveredFormula(),
		"free body of the bar with its film: film down its inner face pushes back", Computed, func() string {
			return fmt.Sprintf("t = %.4g mm, H = %.4g mm, c = %.4g mm, u = %.4g mm, b = %.4g mm, z = %.4g mm",
				mm(s.thick), mm(s.bar.height), mm(s.bar.cover.Mid), mm(s.bar.under), mm(s.bar.width), mm(s.bar.middle))
		})
}

// coveredFormula is how the height that pushes is worked out for this bar.
func (s *sideLoad) coveredFormula() string {
	formula := "h = max(t, min(H, c)), h = t where H ≤ u; low also at most (H² + b²) / (2 max(z, H − z))"
	switch e := s.bar.edge(); {
	case e > 0 && s.bar.shared:
		formula = "h = max(t, min(H, c) + e), e = u + t − H, the upper strips being higher"
	case e > 0 && s.bar.height > s.bar.under:
		formula += " + e, and t at least, e = u + t − H being their edge above the bar"
	}
	if s.bar.touching() < 1 && !s.bar.shared {
		formula += "; at most t + u (H − u) / a, as the bar hardly overlaps them: a = min(t, 3 mm), our estimate"
	}
	if s.bar.shared {
		formula, _, _ = strings.Cut(formula, "; low")
		formula += "; u and z of the upper face on the lower one and the core"
	}
	if !s.bar.covering {
		formula += "; high with c = H, should something stand behind it"
	}
	return formula
}

// pushed is how much of the push reaches the strips' edge at the bar, in symbols and
// in numbers.
func (s *sideLoad) pushed() (symbols, numbers string) {
	r, μ := mm(s.bar.corner.Mid), s.bar.friction.Mid
	holds := s.bar.holding(s.bar.width, s.bar.covered.Mid, s.bar.pressed.Mid, μ)
	symbols = "(h − r) − μ (b + r)"
	if holds < s.bar.width {
		symbols = "(h − r) − μ (b' + r)"
	}
	numbers = fmt.Sprintf("(%.6g − %.6g) − %.4g (%.6g + %.6g)", mm(s.bar.covered.Mid), r, μ, mm(holds), r)
	if !s.bar.shared {
		return symbols, numbers
	}
	symbols, numbers = "½ ("+symbols+")", "½ ("+numbers+")"
	if k := s.bar.touching(); k < 1 {
		symbols = "k " + symbols + " + (1 − k) ((t − r) − μ r)"
		numbers = fmt.Sprintf("%.6g · %s + %.6g ((%.6g − %.6g) − %.4g · %.6g)", k, numbers, 1-k, mm(s.thick), r, μ, r)
	}
	return symbols, numbers
}

// ends says what the ends of a range have beyond the formula.
func (s *sideLoad) ends(rubs string) (text string) {
	if s.bar.shared {
		text += ", ½ for each face; low and high with the shares of a bar that leans"
	}
	if s.bar.touching() < 1 && s.bar.shared {
		text += ", k = (H − u) / min(t, 3 mm) as the bar hardly overlaps the upper face"
	}
	if s.bar.holding(s.bar.width, s.bar.covered.Mid, s.bar.pressed.Mid, s.bar.friction.Mid) < s.bar.width {
		text += ", b' of b = min(b, [h − t + max(0, min(μ b − (f − t), H − u))] / μ), f = h with the edge above the bar: joints get no less than from the film on the bare edge"
	}
	if s.bar.drag.High > 1 {
		text += ", low with 2 " + rubs + " under a caul or core that cannot move along"
	}
	return text
}

func (s *sideLoad) workJoint(b *builder, f unit.Field, r unit.Range[float64], x float64) {
	symbols, pushed := s.pushed()
	formula := "p = max(0, p [" + symbols + " − μ x]) / t" + s.ends("μ x")
	b.work(f, r, formula+"; the larger of this and the preload",
		"horizontal force balance, Coulomb friction used up; "+b.frictionSource(), Estimate, func() string {
			numbers := fmt.Sprintf("%.6g kPa · [%s − %.4g · %.6g] mm / %.6g mm", s.vacuum.Mid/1e3, pushed, s.bar.friction.Mid, mm(x), mm(s.thick))
			if s.pre.known {
				numbers += ", or " + say(unit.Preload, s.pre.pressure.Mid)
			}
			return numbers
		})
}

func (s *sideLoad) workReach(b *builder) {
	reach := s.bar.reach()
	symbols, pushed := s.pushed()
	formula := "x = max(0, [" + symbols + "] / μ)" + s.ends("μ")
	if !isFinite(reach.Mid) {
		b.why(func() Step {
			return Step{Name: string(unit.BarReach), Formula: formula, Numbers: "μ = 0", Result: "everywhere, nothing rubs",
				Source: "zero of the joint pressure", Standing: Computed}
		})
		return
	}
	b.work(unit.BarReach, reach, formula, "zero of the joint pressure", Computed, func() string {
		return fmt.Sprintf("[%s] mm / %.4g", pushed, s.bar.friction.Mid)
	})
}

// mm returns a length in millimetres.
func mm(m float64) float64 { return m * 1e3 }

// frictionSource names where μ comes from.
func (b *builder) frictionSource() string {
	switch {
	case b.known(unit.FrictionStated):
		return "μ as measured"
	case b.word(unit.SurfaceKind) == "bare":
		return "μ: Wood Handbook FPL-GTR-190 p. 4-17, static end McKenzie & Karpovich 1968"
	}
	return "μ and the bridged corner are our estimates"
}
