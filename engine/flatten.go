package engine

import (
	"fmt"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// leftUnderEdges is how near the edges of a hollow strip must come.
const leftUnderEdges = 0.00015 // m

// A curl is a strip that does not lie flat. Figures in SI.
type curl struct {
	depth, span, thick float64
	stiff              unit.Range[float64]
	up                 string // hump, hollow or ""
	across             bool   // a cup, not a bow
}

// answerFlatten answers whether the vacuum flattens a cup, a bow or both. A board
// with both carries the load crosswise, so what they need adds up.
func answerFlatten(b *builder) error {
	curls := b.curls()
	if !b.evacuated() && !asksOnlyFor(b, unit.FlattenNeed) {
		b.need(unit.Vacuum)
	}
	var need unit.Range[float64]
	var parts []unit.Range[float64]
	for _, c := range curls {
		r, err := c.need()
		if err != nil {
			return err
		}
		c.work(b, r)
		c.adviseDeep(b)
		parts = append(parts, r)
		need = unit.Around(need.Low+r.Low, need.Mid+r.Mid, need.High+r.High)
	}
	if len(curls) > 1 {
		b.work(unit.FlattenNeed, need, "bow + cup", "the load is carried both ways at once", Computed, func() string {
			return sayRange(unit.FlattenNeed, parts[0]) + " + " + sayRange(unit.FlattenNeed, parts[1])
		})
	}
	if len(curls) > 0 {
		give(b, unit.FlattenNeed, need)
		if curls[0].up != "hump" {
			b.advise(ReasonHumpUp, nil)
		}
	}
	if !b.evacuated() {
		return nil
	}
	p, _, err := b.vacuum()
	if err != nil {
		return err
	}
	give(b, unit.FacePressure, p)
	pa, err := b.ambient()
	if err != nil {
		return err
	}
	b.workVacuum(pa, p)
	b.judgeVacuum()
	if len(curls) > 0 {
		if err := b.judgeFlat(p, need); err != nil {
			return err
		}
	}
	b.warnOfVacuum()
	return nil
}

// curls reads a cup across and a bow along; none where something is missing.
func (b *builder) curls() []curl {
	t, whole := b.thickness()
	if !whole {
		b.need(unit.StripThickness)
	}
	var all []curl
	wood, up := b.species(), b.word(unit.CupUp)
	bow, bowed := b.number(unit.Bow)
	if bowed {
		span, ok := b.length()
		if !ok {
			b.need(unit.StripLength)
			whole = false
		}
		all = append(all, curl{bow, span, t, b.along(wood), up, false})
	}
	cup, cupped := b.number(unit.Cup)
	if !cupped && !bowed {
		b.need(unit.Cup)
		whole = false
	}
	if cupped || !bowed {
		span, ok := b.number(unit.StripWidth)
		if !ok {
			span, ok = b.number(unit.PanelWidth)
		}
		if !ok {
			b.need(unit.StripWidth)
			whole = false
		}
		all = append(all, curl{cup, span, t, b.across(wood), up, true})
	}
	if !whole {
		return nil
	}
	return all
}

// need returns the pressure that flattens; which way up may be unsaid, then the
// high end is that of the hollow.
func (c curl) need() (unit.Range[float64], error) {
	var err error
	over := func(f func(E unit.Stiffness) (unit.Pressure, error)) unit.Range[float64] {
		return unit.Sweep(func(at unit.Corner) float64 {
			p, e := f(unit.Stiffness(at[0]))
			err = firstError(err, e)
			return float64(p)
		}, c.stiff)
	}
	t, depth, span := unit.Length(c.thick), unit.Length(c.depth), unit.Length(c.span)
	hump := over(func(E unit.Stiffness) (unit.Pressure, error) { return press.HumpPressure(E, t, depth, span) })
	if c.up == "hump" {
		return hump, err
	}
	hollow := over(func(E unit.Stiffness) (unit.Pressure, error) {
		return press.HollowPressure(E, t, depth, span, leftUnderEdges)
	})
	if c.up == "hollow" {
		return hollow, err
	}
	if c.stiff.Low != c.stiff.High {
		hump.High = hollow.High
	}
	return hump, err
}

func (c curl) work(b *builder, need unit.Range[float64]) {
	if !b.q.Why {
		return
	}
	formula := "p = 6.4 E t³ c / s⁴; high end hollow up"
	switch c.up {
	case "hump":
		formula = "p = 6.4 E t³ c / s⁴"
	case "hollow":
		formula = "p = max(10.67 E t³ c / s⁴, 2.667 E t³ c² / (s⁴ g))"
	}
	source, standing := b.stiffnessSource(c.across)
	b.work(unit.FlattenNeed, need, formula, "simply supported strip under even load, Wood Handbook Eq. 9-2; hollow up derived; "+source, standing, func() string {
		return fmt.Sprintf("E = %.4g GPa, t = %.4g mm, c = %.4g mm, s = %.4g mm, g = %.3g mm", c.stiff.Mid/1e9, c.thick*1e3, c.depth*1e3, c.span*1e3, leftUnderEdges*1e3)
	})
}

// judgeFlat judges the vacuum against what flattening takes and, where a glue
// line is to be pressed, what is left for it.
func (b *builder) judgeFlat(p, need unit.Range[float64]) error {
	v := capacityAgainst(p, need)
	r := map[Verdict]Reason{Good: ReasonFlattens, Care: ReasonMayFlatten, Stop: ReasonStaysCurled}[v]
	b.judge("flat", v, r, unit.Facts{
		unit.FacePressure: figure(unit.FacePressure, p),
		unit.FlattenNeed:  figure(unit.FlattenNeed, need),
	})
	if !b.known(unit.GlueClass, unit.CoreKind, unit.CoreThickness) {
		return nil
	}
	left := unit.Around(p.Low-need.High, p.Mid-need.Mid, p.High-need.Low)
	give(b, unit.FlattenLeft, left)
	b.work(unit.FlattenLeft, left, "p − need", "what is left for the glue line", Computed, func() string {
		return sayFinely(unit.FacePressure, p.Mid) + " − " + sayFinely(unit.FlattenNeed, need.Mid)
	})
	c := b.glue()
	b.judgeFace("glue line", left, c)
	warnOfGlue(b, c)
	return b.judgeGlueLine()
}
