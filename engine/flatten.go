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
	along              bool
	up                 string // hump, hollow or ""
}

// answerFlatten answers whether the vacuum flattens a cup or a bow.
func answerFlatten(b *builder) error {
	curl, ok, err := b.curl()
	if err != nil {
		return err
	}
	evacuated := b.known(unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent)
	if !evacuated && !asksOnlyFor(b, unit.FlattenNeed) {
		b.need(unit.Vacuum)
	}
	var need unit.Range[float64]
	if ok {
		if need, err = curl.need(); err != nil {
			return err
		}
		give(b, unit.FlattenNeed, need)
		curl.work(b, need)
		if curl.up != "hump" {
			b.advise(ReasonHumpUp, nil)
		}
	}
	p, evacuated, err := b.vacuum()
	if err != nil || !evacuated {
		return err
	}
	give(b, unit.FacePressure, p)
	b.judgeVacuum()
	if ok {
		b.judgeFlat(p, need)
	}
	b.warnOfVacuum()
	return nil
}

// curl reads a cup across or a bow along; false where something is missing.
func (b *builder) curl() (c curl, ok bool, err error) {
	wood := b.species()
	c.up = b.word(unit.CupUp)
	t, thick := b.thickness()
	if !thick {
		b.need(unit.StripThickness)
	}
	c.thick = t
	var span bool
	if bow, said := b.number(unit.Bow); said {
		c.depth, c.along, c.stiff = bow, true, b.along(wood)
		if c.span, span = b.length(); !span {
			b.need(unit.StripLength)
		}
		return c, thick && span, nil
	}
	cup, said := b.number(unit.Cup)
	if !said {
		b.need(unit.Cup)
	}
	c.depth, c.stiff = cup, b.across(wood)
	if c.span, span = b.number(unit.StripWidth); !span {
		c.span, span = b.number(unit.PanelWidth)
	}
	if !span {
		b.need(unit.StripWidth)
	}
	return c, thick && span && said, nil
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
	formula := "p = 6.4 E t³ c / s⁴; high end hollow up"
	switch c.up {
	case "hump":
		formula = "p = 6.4 E t³ c / s⁴"
	case "hollow":
		formula = "p = max(10.67 E t³ c / s⁴, 2.667 E t³ c² / (s⁴ g))"
	}
	b.work(unit.FlattenNeed, need, formula, "simply supported strip under even load, Wood Handbook Eq. 9-2; hollow up derived; E: "+b.stiffSource(), Seen, func() string {
		return fmt.Sprintf("E = %.4g GPa, t = %.4g mm, c = %.4g mm, s = %.4g mm, g = %.3g mm", c.stiff.Mid/1e9, c.thick*1e3, c.depth*1e3, c.span*1e3, leftUnderEdges*1e3)
	})
}

// stiffSource names where the wood's stiffness comes from.
func (b *builder) stiffSource() string {
	return "Wood Handbook, " + b.species().Name + ", ±22 % (from memory)"
}

// judgeFlat judges the vacuum against what flattening takes and, where a glue
// line is to be pressed, what is left for it.
func (b *builder) judgeFlat(p, need unit.Range[float64]) {
	v := capacityAgainst(p, need)
	r := map[Verdict]Reason{Good: ReasonFlattens, Care: ReasonMayFlatten, Stop: ReasonStaysCurled}[v]
	b.judge("flat", v, r, unit.Facts{
		unit.FacePressure: figure(unit.FacePressure, p),
		unit.FlattenNeed:  figure(unit.FlattenNeed, need),
	})
	if !b.known(unit.GlueClass, unit.CoreKind, unit.CoreThickness) {
		return
	}
	left := unit.Around(p.Low-need.High, p.Mid-need.Mid, p.High-need.Low)
	give(b, unit.FlattenLeft, left)
	c := b.glue()
	b.judgeFace("glue line", left, c)
	b.judgeBoiling(c)
	warnOfGlue(b, c)
}
