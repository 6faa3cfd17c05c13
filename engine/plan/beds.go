package plan

import (
	"cmp"
	"math"
	"slices"
)

// A space is a free rectangle of a bed.
type space struct{ x, y, w, h int64 }

func (s space) holds(o space) bool {
	return s.x <= o.x && s.y <= o.y && o.x+o.w <= s.x+s.w && o.y+o.h <= s.y+s.h
}

// A spot is where an item lies on a bed.
type spot struct {
	item   int
	x, y   int64
	turned bool
}

// A bed is one layer of a load: what lies on it, and the largest free
// rectangles, which may overlap.
type bed struct {
	placed []spot
	free   []space
	area   int64 // covered
}

// A group is the beds of one load.
type group struct {
	beds  []*bed
	count int
}

// A packing is the loads so far. Those that are shared with another packing
// are copied before anything is put in.
type packing struct {
	groups []*group
	shared map[*group]bool
}

// own returns load i for putting something in.
func (p *packing) own(i int) *group {
	g := p.groups[i]
	if p.shared[g] {
		g = g.clone()
		p.groups[i] = g
	}
	return g
}

func (p *packing) loads() int {
	n := 0
	for _, g := range p.groups {
		if g.count > 0 {
			n++
		}
	}
	return n
}

// A rule scores a free space for an item; the lowest score wins.
type rule func(s space, w, h int64) (int64, int64)

// The rules of the method of maximal rectangles.
var rules = []rule{
	func(s space, w, h int64) (int64, int64) { return min(s.w-w, s.h-h), max(s.w-w, s.h-h) }, // best short side
	func(s space, w, h int64) (int64, int64) { return s.w*s.h - w*h, min(s.w-w, s.h-h) },     // best area
	func(s space, w, h int64) (int64, int64) { return s.y + h, s.x },                         // lowest
	func(s space, w, h int64) (int64, int64) { return max(s.w-w, s.h-h), min(s.w-w, s.h-h) }, // best long side
}

// find returns the best free space of a bed for an item.
func (f *floor) find(b *bed, it item, r rule) (at space, turned bool, a, c int64, ok bool) {
	a, c = math.MaxInt64, math.MaxInt64
	for _, s := range b.free {
		if it.w <= s.w && it.h <= s.h {
			if x, y := r(s, it.w, it.h); x < a || x == a && y < c {
				at, turned, a, c, ok = space{s.x, s.y, it.w, it.h}, false, x, y, true
			}
		}
		if it.h <= s.w && it.w <= s.h && it.w != it.h {
			if x, y := r(s, it.h, it.w); x < a || x == a && y < c {
				at, turned, a, c, ok = space{s.x, s.y, it.h, it.w}, true, x, y, true
			}
		}
	}
	return at, turned, a, c, ok
}

// put lays an item on a bed and cuts the free spaces that it touches.
func (b *bed) put(i int, at space, turned bool) {
	b.placed = append(b.placed, spot{i, at.x, at.y, turned})
	b.area += at.w * at.h
	kept := b.free[:0:0]
	var cut []space
	for _, s := range b.free {
		if at.x >= s.x+s.w || at.x+at.w <= s.x || at.y >= s.y+s.h || at.y+at.h <= s.y {
			kept = append(kept, s)
			continue
		}
		for _, c := range []space{
			{s.x, s.y, at.x - s.x, s.h},
			{at.x + at.w, s.y, s.x + s.w - at.x - at.w, s.h},
			{s.x, s.y, s.w, at.y - s.y},
			{s.x, at.y + at.h, s.w, s.y + s.h - at.y - at.h},
		} {
			if c.w > 0 && c.h > 0 {
				cut = append(cut, c)
			}
		}
	}
	b.free = kept
	for i, c := range cut {
		inside := func(o space) bool { return o.holds(c) }
		dropped := slices.ContainsFunc(kept, inside) || slices.ContainsFunc(cut[:i], inside) ||
			slices.ContainsFunc(cut[i+1:], func(o space) bool { return o != c && o.holds(c) })
		if !dropped {
			b.free = append(b.free, c)
		}
	}
}

func (f *floor) newBed() *bed { return &bed{free: []space{{0, 0, f.w, f.h}}} }

// place lays an item where the rule likes it best among the loads there are,
// or opens a layer or a load.
func (f *floor) place(p *packing, i int, r rule, firstFit bool) {
	load, layer := -1, 0
	var at space
	var turned bool
	a, c := int64(math.MaxInt64), int64(math.MaxInt64)
	for l, g := range p.groups {
		if g.count >= f.most {
			continue
		}
		for k, b := range g.beds {
			s, t, x, y, ok := f.find(b, f.items[i], r)
			if ok && (x < a || x == a && y < c) {
				load, layer, at, turned, a, c = l, k, s, t, x, y
			}
		}
		if load >= 0 && firstFit {
			break
		}
	}
	if load < 0 {
		load = f.open(p)
		layer = len(p.groups[load].beds) - 1
		at, turned, _, _, _ = f.find(p.groups[load].beds[layer], f.items[i], r)
	}
	g := p.own(load)
	g.beds[layer].put(i, at, turned)
	g.count++
}

// open adds a bed to the first load that has room for a layer, or to a new one,
// and returns which.
func (f *floor) open(p *packing) int {
	for i, g := range p.groups {
		if len(g.beds) < f.layers && g.count < f.most {
			g = p.own(i)
			g.beds = append(g.beds, f.newBed())
			return i
		}
	}
	p.groups = append(p.groups, &group{beds: []*bed{f.newBed()}})
	return len(p.groups) - 1
}

// orders returns the orders in which items are laid.
func (f *floor) orders() [][]int {
	keys := []func(it item) int64{
		func(it item) int64 { return it.w * it.h },
		func(it item) int64 { return max(it.w, it.h) },
		func(it item) int64 { return min(it.w, it.h) },
		func(it item) int64 { return it.w + it.h },
		func(it item) int64 { return max(it.w, it.h) - min(it.w, it.h) },
	}
	var out [][]int
	for _, key := range keys {
		o := make([]int, len(f.items))
		for i := range o {
			o[i] = i
		}
		slices.SortStableFunc(o, func(a, b int) int { return cmp.Compare(key(f.items[b]), key(f.items[a])) })
		out = append(out, o)
		if f.alike() { // every order is the same
			break
		}
	}
	return out
}

// alike reports whether all panels are of one size.
func (f *floor) alike() bool {
	first := f.items[0]
	return !slices.ContainsFunc(f.items, func(it item) bool { return it.w != first.w || it.h != first.h })
}

// packBest packs in every order by every rule, then empties loads and fills
// them anew until the bound is met or the work is done. Panels of one size are
// not laid anew: that never saved a load.
func (f *floor) packBest(bound int, watch Watch[int]) *packing {
	var best *packing
	for _, o := range f.orders() {
		for _, r := range rules {
			for _, firstFit := range []bool{true, false} {
				p := &packing{}
				for _, i := range o {
					f.place(p, i, r, firstFit)
				}
				if best == nil || f.tighter(p, best) {
					best = p
				}
				if best.loads() <= bound || !watch.goOn(best.loads(), bound) {
					return best
				}
			}
		}
	}
	if f.alike() { // laid anew they would lie as they do
		return best
	}
	return f.repack(best, bound, watch)
}

// tighter reports whether a is better than b: fewer loads or, at as many, more
// uneven ones, the last of which may be emptied yet.
func (f *floor) tighter(a, b *packing) bool {
	if x, y := a.loads(), b.loads(); x != y {
		return x < y
	}
	return f.unevenness(a) > f.unevenness(b)
}

func (f *floor) unevenness(p *packing) float64 {
	var sum float64
	for _, g := range p.groups {
		var share float64
		for _, b := range g.beds {
			share += float64(b.area) / float64(f.w*f.h)
		}
		share /= float64(f.layers)
		most := float64(g.count) / float64(f.most)
		sum += share*share + most*most/10
	}
	return sum
}
