package engine

import (
	"math"

	"presshand/engine/unit"
)

// A row is what is known of the strips of one panel, side by side from the bar,
// in m; 0 is not known.
type row struct {
	strips  int
	strip   float64   // width of a strip, the widest where they differ
	widths  []float64 // where they differ
	width   float64   // across the joints
	counted bool      // strips follow from the panel's width; one may be ripped narrower
}

// row works out what of a panel's count, strip width and width is known or
// follows from the others. What follows is noted as assumed.
func (b *builder) row() (row, error) {
	var p row
	if v, ok := b.value(unit.StripWidths); ok {
		ws, _ := v.(unit.Numbers)
		return p.ofWidths(ws)
	}
	p.width, _ = b.number(unit.PanelWidth)
	p.strip, _ = b.number(unit.StripWidth)
	if n, ok := b.number(unit.StripCount); ok {
		if err := unit.AtLeast("count of strips", n, 1, ""); err != nil {
			return p, err
		}
		p.strips = int(math.Min(n, math.MaxInt32))
	}
	for f, l := range map[unit.Field]float64{unit.PanelWidth: p.width, unit.StripWidth: p.strip} {
		if b.known(f) {
			if err := unit.MoreThan(string(f), l*1000, 0, ""); err != nil {
				return p, err
			}
		}
	}
	p.complete(b)
	return p, nil
}

// ofWidths is the row of strips laid from the bar in the order given.
func (p row) ofWidths(mm unit.Numbers) (row, error) {
	for _, w := range mm {
		if err := unit.MoreThan("width of a strip", w, 0, " mm"); err != nil {
			return p, err
		}
		p.widths = append(p.widths, w/1000)
		p.strip = math.Max(p.strip, w/1000)
		p.width += w / 1000
	}
	p.strips = len(mm)
	return p, nil
}

// complete works out the third of count, strip and width from the other two.
func (p *row) complete(b *builder) {
	switch {
	case p.strips == 0 && p.strip > 0 && p.width > 0:
		n := math.Max(1, math.Ceil(p.width/p.strip-0.01))
		p.strips, p.counted = int(math.Min(n, math.MaxInt32)), true
		b.assume(unit.StripCount, unit.Number(n))
	case p.strip == 0 && p.strips > 0 && p.width > 0:
		p.strip = p.width / float64(p.strips)
		b.assume(unit.StripWidth, unit.StripWidth.Number(p.strip))
	case p.width == 0 && p.strips > 0 && p.strip > 0:
		p.width = float64(p.strips) * p.strip
	}
}

// whole reports whether every joint's place is known.
func (p row) whole() bool { return p.strips > 0 && p.strip > 0 }

// joint returns the distance of joint i, counted from 1, from the bar.
func (p row) joint(i int) float64 {
	if p.widths == nil {
		return float64(i) * p.strip
	}
	x := 0.0
	for _, w := range p.widths[:i] {
		x += w
	}
	return x
}

// farthest returns the distance of the joint that is farthest from a bar; with
// bars on both sides that is the one nearest the middle.
func (p row) farthest(bars int) float64 {
	last := p.strips - 1
	switch {
	case bars < 2 && p.counted:
		return p.width - p.strip // the far joint is one strip in from the fence
	case bars < 2:
		return p.joint(last)
	}
	if p.widths == nil {
		i := p.strips / 2
		return math.Min(p.joint(i), p.width-p.joint(i))
	}
	far := 0.0
	for i := 1; i <= last; i++ {
		far = math.Max(far, math.Min(p.joint(i), p.width-p.joint(i)))
	}
	return far
}

// nearest returns the distance of the joint that is nearest to a bar.
func (p row) nearest(bars int) float64 {
	if bars < 2 {
		return p.joint(1)
	}
	return math.Min(p.joint(1), p.width-p.joint(p.strips-1))
}

// missing returns what the message has still to say of the panel.
func (p row) missing() []unit.Field {
	switch {
	case p.width > longestWork || p.strip*float64(p.strips) > longestWork:
		return []unit.Field{unit.StripCount}
	case p.strips == 0 && p.strip == 0 && p.width > 0:
		return []unit.Field{unit.StripWidth}
	case p.strips == 0 && p.strip == 0:
		return []unit.Field{unit.StripCount, unit.StripWidth}
	case p.strips == 0:
		return []unit.Field{unit.StripCount}
	case p.strip == 0:
		return []unit.Field{unit.StripWidth}
	}
	return nil
}
