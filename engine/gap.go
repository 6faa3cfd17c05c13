package engine

import (
	"math"

	"presshand/engine/glue"
	"presshand/engine/press"
	"presshand/engine/unit"
)

// Published depth of bending of a crooked strip between two ends, against half
// of it where both strips of a joint are crooked and give alike.
const bothCrooked = 0.5

// A gap is the worst one at a joint closed hand-tight. Figures in SI.
type gap struct {
	said  bool
	open  float64 // g
	most  float64 // what the glue fills
	bends bool    // the pressure that closes it is known
}

// tight reports whether the joint is said to close hand-tight.
func (g gap) tight() bool { return g.said && reaches(g.most, g.open) }

// wide reports whether a gap is said that the glue does not fill.
func (g gap) wide() bool { return g.said && !reaches(g.most, g.open) }

// thresholds are what the glue wants on this wood.
func (s *sideLoad) thresholds(b *builder, c glue.Class) {
	s.contact = float64(glue.Contact(c))
	s.full = float64(glue.Full(c, b.species().SpecificGravity))
}

// close reads a gap and works out the pressure that closes it.
func (s *sideLoad) close(b *builder, c glue.Class) error {
	s.gap.most = float64(c.Gap)
	if s.gap.open, s.gap.said = b.number(unit.Gap); !s.gap.said {
		return nil
	}
	if s.gap.open == 0 {
		s.gap.bends = true
		return nil
	}
	L, ok := b.length()
	switch {
	case !ok && s.gap.wide():
		b.need(unit.StripLength)
		return nil
	case !ok || s.row.strip == 0:
		return nil
	}
	var err error
	s.closing = unit.Sweep(func(c unit.Corner) float64 {
		p, e := press.ClosingPressure(unit.Stiffness(c[0]), unit.Length(s.row.strip), unit.Length(s.gap.open), unit.Length(L))
		err = firstError(err, e)
		return float64(p) * c[1]
	}, b.along(b.species()), b.spread(bothCrooked, 1, 1))
	s.gap.bends = true
	return err
}

// net returns what is left of a joint's pressure once its gap is closed.
func (s *sideLoad) net(p unit.Range[float64]) unit.Range[float64] {
	return unit.Around(p.Low-s.closing.High, p.Mid-s.closing.Mid, p.High-s.closing.Low)
}

var nan = math.NaN()
