package engine

import (
	"presshand/engine/plan"
	"presshand/engine/unit"
)

// wish reads what is wished of a choice beside its width.
func (s *stripping) wish(b *builder) {
	if w, ok := b.number(unit.Narrowest); ok {
		s.job.Narrowest = unit.Length(w)
	}
	if w, ok := b.number(unit.Widest); ok {
		s.job.Widest = unit.Length(w)
	}
	s.job.UseNarrow = b.word(unit.UseFirst) == "narrow"
	s.job.Differ = b.word(unit.Neighbours) == "differ"
}

// limited reports whether only strips of some widths may be used.
func (s *stripping) limited() bool { return s.job.Narrowest > 0 || s.job.Widest > 0 }

// sameWidth is how far apart two widths may be and still be one: what is lost on
// the way from inches to metres and back.
const sameWidth = unit.Length(1e-6)

// usable returns the piles of a width that may be used.
func (s *stripping) usable() []plan.Pile {
	if !s.limited() {
		return s.job.Stock
	}
	var out []plan.Pile
	for _, p := range s.job.Stock {
		if p.Width > s.job.Narrowest-sameWidth && (s.job.Widest == 0 || p.Width < s.job.Widest+sameWidth) {
			out = append(out, p)
		}
	}
	return out
}

// alike returns in how many panels some neighbours are of one width.
func (s *stripping) alike() (n int) {
	for _, p := range s.plan.Picks {
		if !p.Differ {
			n++
		}
	}
	return n
}

// held returns the fields of the wishes that the plan keeps.
func (s *stripping) held() (kept unit.Words) {
	for _, w := range []struct {
		field unit.Field
		kept  bool
	}{
		{unit.StripCount, s.job.MostStrips > 0}, {unit.Narrowest, s.job.Narrowest > 0}, {unit.Widest, s.job.Widest > 0},
		{unit.Neighbours, s.job.Differ && s.alike() == 0}, {unit.UseFirst, s.job.UseNarrow},
	} {
		if w.kept {
			kept = append(kept, string(w.field))
		}
	}
	return kept
}

// judgeNeighbours judges the wish that neighbours be of different widths; it
// reports whether the plan does not keep it.
func (s *stripping) judgeNeighbours(b *builder) bool {
	n := s.alike()
	if !s.job.Differ || n == 0 {
		return false
	}
	figures := unit.Facts{}
	if len(s.plan.Picks) > 1 {
		figures[unit.Alike] = unit.Number(n)
	}
	b.judge("neighbours", Care, ReasonNeighboursAlike, figures)
	return true
}
