package plan

import (
	"math"
	"slices"
)

// A scale is a dual feasible function tabulated for the panels: numbers that,
// put in place of their sides, still sum to at most 1 across any bed. The
// areas of panels so resized then sum to at most 1 on any bed, so that the sum
// over all panels bounds the beds; a scale that blows up what leaves useless
// rests bounds better than area does. A panel that may be turned counts with
// the smaller of its two areas.
//
// Source: Fekete & Schepers, A general framework for bounds for
// higher-dimensional orthogonal packing problems, 2004 (m): the functions u, U
// and φ, and that products of them bound.
type scale struct{ w, h []float64 } // of each kind's two sides; +Inf where it does not fit this way

// A kind is so many panels of one size.
type kind struct {
	w, h int64
	n    float64
}

func (f *floor) kinds() []kind {
	at := map[[2]int64]int{}
	var ks []kind
	for _, it := range f.items {
		key := [2]int64{min(it.w, it.h), max(it.w, it.h)}
		i, ok := at[key]
		if !ok {
			i = len(ks)
			at[key] = i
			ks = append(ks, kind{key[0], key[1], 0})
		}
		ks[i].n++
	}
	return ks
}

// mostScales caps the scales tried on each side of the bed.
const mostScales = 120

// scales returns the scales of kinds for a bed that is size across, the plain
// one first.
func scales(ks []kind, size int64) []scale {
	out := []scale{tabulate(ks, size, func(x int64) float64 { return float64(x) / float64(size) })}
	for k := int64(1); k <= 24; k++ {
		out = append(out, tabulate(ks, size, func(x int64) float64 { return stepped(x, size, k) }))
	}
	for _, e := range thresholds(ks, size) {
		out = append(out,
			tabulate(ks, size, func(x int64) float64 { return cutOff(x, size, e) }),
			tabulate(ks, size, func(x int64) float64 { return rounded(x, size, e) }))
	}
	return out
}

// thresholds returns the sides at which the scales change.
func thresholds(ks []kind, size int64) []int64 {
	var es []int64
	for _, k := range ks {
		for _, x := range []int64{k.w, k.h, k.w + 1, k.h + 1, size - k.w, size - k.h} {
			if x > 0 && 2*x <= size {
				es = append(es, x)
			}
		}
	}
	slices.Sort(es)
	es = slices.Compact(es)
	for len(es) > mostScales { // thin them evenly
		kept := es[:0]
		for i := 0; i < len(es); i += 2 {
			kept = append(kept, es[i])
		}
		es = kept
	}
	return es
}

func tabulate(ks []kind, size int64, u func(int64) float64) scale {
	var s scale
	side := func(x int64) float64 {
		if x > size {
			return math.Inf(1)
		}
		return u(x)
	}
	for _, k := range ks {
		s.w = append(s.w, side(k.w))
		s.h = append(s.h, side(k.h))
	}
	return s
}

// stepped is u with k steps.
func stepped(x, size, k int64) float64 {
	if (k+1)*x%size == 0 {
		return float64(x) / float64(size)
	}
	return float64((k+1)*x/size) / float64(k)
}

// cutOff is U: what is under e counts nothing, what leaves less than e all.
func cutOff(x, size, e int64) float64 {
	switch {
	case x > size-e:
		return 1
	case x < e:
		return 0
	}
	return float64(x) / float64(size)
}

// rounded is φ: it counts in pieces of e.
func rounded(x, size, e int64) float64 {
	whole := float64(size / e)
	switch {
	case 2*x > size:
		return 1 - float64((size-x)/e)/whole
	case x < e:
		return 0
	}
	return 1 / whole
}

// bound returns a number of loads that no packing can do with less.
func (f *floor) bound() int {
	beds := max(f.scaledBound(), f.cliqueBound())
	return max((beds+f.layers-1)/f.layers, (len(f.items)+f.most-1)/f.most, 1)
}

func (f *floor) scaledBound() int {
	ks := f.kinds()
	across, along := scales(ks, f.w), scales(ks, f.h)
	best := 0.0
	for _, a := range across {
		for _, b := range along {
			best = max(best, area(ks, a, b))
		}
	}
	return wholeBeds(best)
}

// wholeBeds rounds up, the rounding of floating-point sums aside.
func wholeBeds(area float64) int { return int(math.Ceil(area - 1e-7)) }

// area sums the resized panels, each turned the way that counts less.
func area(ks []kind, across, along scale) float64 {
	var sum float64
	for i, k := range ks {
		straight, turned := across.w[i]*along.h[i], across.h[i]*along.w[i]
		if math.IsInf(across.w[i], 1) || math.IsInf(along.h[i], 1) {
			straight = math.Inf(1) // not NaN where the other is 0
		}
		if math.IsInf(across.h[i], 1) || math.IsInf(along.w[i], 1) {
			turned = math.Inf(1)
		}
		sum += k.n * min(straight, turned)
	}
	return sum
}

// areaBound is what area alone, gaps included, would say.
func (f *floor) areaBound() int {
	ks := f.kinds()
	beds := wholeBeds(area(ks, scales(ks, f.w)[0], scales(ks, f.h)[0]))
	return max(1, (beds+f.layers-1)/f.layers)
}

// cliqueBound returns the size of a set of panels no two of which can lie on
// one bed. It is the largest such set that picking greedily from each panel in
// turn finds.
func (f *floor) cliqueBound() int {
	best := 0
	for i := range f.items {
		clique := []int{i}
		for j := range f.items {
			apart := j != i
			for _, c := range clique {
				apart = apart && !f.together(f.items[c], f.items[j])
			}
			if apart {
				clique = append(clique, j)
			}
		}
		best = max(best, len(clique))
	}
	return best
}

// together reports whether two items can lie on one bed.
func (f *floor) together(a, b item) bool {
	for _, p := range [][2]int64{{a.w, a.h}, {a.h, a.w}} {
		for _, q := range [][2]int64{{b.w, b.h}, {b.h, b.w}} {
			beside := p[0]+q[0] <= f.w && max(p[1], q[1]) <= f.h
			behind := p[1]+q[1] <= f.h && max(p[0], q[0]) <= f.w
			if beside || behind {
				return true
			}
		}
	}
	return false
}
