package plan

import "slices"

// repackings caps the attempts to pack with one load less; they are fewer
// where there are more panels to lay anew.
const repackings = 500_000

// repack takes the emptiest load and a few others apart and lays their panels
// anew, over and over; a packing that is no worse is kept.
func (f *floor) repack(best *packing, bound int, watch Watch[int]) *packing {
	seed := uint64(20)
	now := best
	for try := range repackings / max(1, len(f.items)) {
		if best.loads() <= bound || !watch.goOn(best.loads(), bound) {
			break
		}
		next := f.shaken(now, try, &seed)
		if !f.tighter(now, next) {
			now = next
		}
		if f.tighter(now, best) {
			best = now
		}
	}
	return best
}

// shaken returns p with some loads laid anew.
func (f *floor) shaken(p *packing, try int, seed *uint64) *packing {
	groups := slices.Clone(p.groups)
	slices.SortStableFunc(groups, cmpArea)
	apart := 1 + try%3
	out := map[*group]bool{groups[0]: true}
	for range apart {
		out[groups[int(next(seed)%uint64(len(groups)))]] = true
	}
	q := &packing{shared: map[*group]bool{}}
	var loose []int
	for _, g := range p.groups {
		if !out[g] {
			q.groups = append(q.groups, g)
			q.shared[g] = true
			continue
		}
		for _, b := range g.beds {
			for _, s := range b.placed {
				loose = append(loose, s.item)
			}
		}
	}
	slices.Sort(loose) // largest first
	for i := range loose {
		if next(seed)%4 == 0 {
			j := int(next(seed) % uint64(len(loose)))
			loose[i], loose[j] = loose[j], loose[i]
		}
	}
	r := rules[next(seed)%uint64(len(rules))]
	firstFit := next(seed)%2 == 0
	for _, i := range loose {
		f.place(q, i, r, firstFit)
	}
	return q
}

func cmpArea(a, b *group) int {
	var x, y int64
	for _, d := range a.beds {
		x += d.area
	}
	for _, d := range b.beds {
		y += d.area
	}
	switch {
	case x < y:
		return -1
	case x > y:
		return 1
	}
	return 0
}

func (g *group) clone() *group {
	c := &group{count: g.count}
	for _, b := range g.beds {
		c.beds = append(c.beds, &bed{placed: slices.Clone(b.placed), free: slices.Clone(b.free), area: b.area})
	}
	return c
}
