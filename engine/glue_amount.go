package engine

import (
	"fmt"
	"math"
	"slices"

	"presshand/engine/glue"
	"presshand/engine/unit"
)

// A glued panel is what the joint area takes of a panel; zero where unknown.
type gluedPanel struct {
	strips                   int
	width, length, thickness unit.Length
	onCore                   bool
}

func gluedPanelOf(b *builder) (gluedPanel, error) {
	p, err := b.row()
	if err != nil {
		return gluedPanel{}, err
	}
	t, _ := b.thickness()
	l, _ := b.length()
	return gluedPanel{
		strips: p.strips, width: unit.Length(p.width), length: unit.Length(l), thickness: unit.Length(t),
		onCore: facesOnCore(b),
	}, nil
}

// lacking returns the fields that the joint area would still take.
func (p gluedPanel) lacking(b *builder) []unit.Field {
	var fs []unit.Field
	if p.width == 0 && (p.onCore || p.strips == 0) {
		fs = append(fs, unit.PanelWidth)
	}
	if p.length == 0 {
		fs = append(fs, unit.PanelLength)
	}
	if p.onCore {
		return fs
	}
	if p.strips == 0 && !b.known(unit.StripWidth) {
		fs = append(fs, unit.StripWidth)
	}
	if p.thickness == 0 {
		fs = append(fs, unit.StripThickness)
	}
	return fs
}

// bothFaces reports whether faces are laid on both sides of a core.
func (b *builder) bothFaces() bool {
	n, ok := b.number(unit.Faces)
	return ok && n >= 2
}

// facesOnCore reports whether faces are laid on a core.
func facesOnCore(b *builder) bool {
	return b.known(unit.CoreKind, unit.CoreThickness, unit.Faces) ||
		slices.ContainsFunc(b.layers(), func(l unit.Layer) bool { return l.Part == partCore })
}

// glueAmount gives the joint area and the glue to mix, or notes what they lack.
func glueAmount(b *builder, c glue.Class) error {
	p, err := gluedPanelOf(b)
	if err != nil {
		return err
	}
	lacking := p.lacking(b)
	if len(lacking) > 0 {
		b.lack(unit.GlueMass, lacking...)
		b.lack(unit.JointArea, lacking...)
		if amountIsAsked(b) {
			b.need(lacking...)
		}
		return nil
	}
	area, err := jointArea(b, p)
	if err != nil {
		return err
	}
	give(b, unit.JointArea, unit.Exactly(area))
	spread, err := labelOr(b, unit.LabelSpread, c.Spread)
	if err != nil {
		return err
	}
	mass := unit.Exactly(0.0)
	for _, end := range []struct{ s, m *float64 }{
		{&spread.Low, &mass.Low}, {&spread.Mid, &mass.Mid}, {&spread.High, &mass.High},
	} {
		m, err := glue.Mass(unit.Spread(*end.s), area)
		if err != nil {
			return err
		}
		*end.m = float64(m)
	}
	give(b, unit.GlueMass, mass)
	b.work(unit.GlueMass, mass, "m = 1.10 · s · A",
		"s: "+sourceOf(b, unit.LabelSpread, c.SpreadStanding)+"; the tenth for pot and squeeze-out: common practice",
		unit.Weakest(standingOf(b, unit.LabelSpread, c.SpreadStanding), CommonPractice), func() string {
			return fmt.Sprintf("1.10 · %.4g g/m² · %.4g m²", spread.Mid*1000, area.SquareMetres())
		})
	return nil
}

// jointArea returns the area of all glue lines: the edge joints, and the faces
// where they are laid on a core.
func jointArea(b *builder, p gluedPanel) (unit.Area, error) {
	var area unit.Area
	sides := 0
	count, err := b.count(unit.PanelCount, 1)
	if err != nil {
		return 0, err
	}
	if p.onCore {
		if sides, err = b.count(unit.Faces, 1); err != nil {
			return 0, err
		}
		faces, err := glue.FaceArea(count, sides, p.width, p.length)
		if err != nil {
			return 0, err
		}
		area += faces
	}
	switch {
	case p.strips == 0 || p.thickness == 0:
		b.advise(ReasonEdgesNotCounted, nil)
	default:
		edges, err := glue.EdgeArea(count, p.strips, p.thickness, p.length)
		if err != nil {
			return 0, err
		}
		area += edges
	}
	b.work(unit.JointArea, unit.Exactly(float64(area)), "A = N · ((n − 1) · t · L + faces · W · L), faces only where laid on a core",
		"geometry", Computed, func() string {
			return fmt.Sprintf("%d · (%d · %.4g mm · %.4g mm + %d · %.4g mm · %.4g mm)", count, max(0, p.strips-1),
				p.thickness.Millimetres(), p.length.Millimetres(), sides, p.width.Millimetres(), p.length.Millimetres())
		})
	return area, nil
}

// mostCounted is more than anybody glues of anything.
const mostCounted = 1e6

// count returns a whole number that is known, or n, noted as assumed.
func (b *builder) count(f unit.Field, n int) (int, error) {
	v := b.numberOr(f, float64(n))
	if !(v >= 1 && v <= mostCounted && v == math.Trunc(v)) {
		return 0, &unit.RangeError{What: string(f), Got: v, Want: "a whole number from 1 to a million"}
	}
	return int(v), nil
}

// amountIsAsked reports whether a question about glue is about an amount: it
// asks for one by name, or tells of panels and of nothing else to judge.
func amountIsAsked(b *builder) bool {
	if len(b.q.For) > 0 {
		return slices.Contains(b.q.For, unit.GlueMass) || slices.Contains(b.q.For, unit.JointArea)
	}
	if b.q.About != Glue {
		return false
	}
	sized := b.said(unit.PanelCount, unit.PanelWidth, unit.PanelLength, unit.StripCount, unit.StripWidth,
		unit.StripWidths, unit.StripThickness, unit.StripLength, unit.CoreKind, unit.CoreThickness, unit.Faces)
	judged := b.said(unit.ShopTemp, unit.ShopHumidity, unit.WoodMoisture, unit.WoodMoistureLow, unit.WoodMoistureHigh,
		unit.Gap, unit.PressTime, unit.LayupPanel, unit.LayupLoad, unit.LabelOpen, unit.LabelClosed, unit.LabelPress)
	return sized && !judged
}
