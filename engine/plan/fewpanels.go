package plan

import (
	"math/bits"
	"slices"
)

// fewPanels is the number of panels up to which a packing is made exactly.
const fewPanels = 10

// bedEffort caps the positions tried to find whether some panels fit a bed.
const bedEffort = 400_000

// exact returns a packing of the fewest loads; known is false where too many
// positions would have to be tried. Every set of panels is a whole number whose
// bits are its panels: first those that fit a bed, then those that fit a load,
// then the fewest loads that hold each.
func (f *floor) exact(start *packing) (best *packing, known bool) {
	n := len(f.items)
	layouts := make([][]spot, 1<<n) // nil where the set does not fit a bed
	for set := 1; set < 1<<n; set++ {
		fits := true
		for rest := set; rest != 0 && fits; rest &= rest - 1 {
			without := set &^ (rest & -rest)
			fits = without == 0 || layouts[without] != nil
		}
		if !fits {
			continue
		}
		l := &layout{floor: f, effort: bedEffort}
		for rest := set; rest != 0; rest &= rest - 1 {
			l.todo = append(l.todo, bits.TrailingZeros(uint(rest)))
		}
		if l.found() {
			layouts[set] = l.placed
		} else if l.effort <= 0 {
			return start, false
		}
	}
	fit := func(set int) bool { return layouts[set] != nil }
	load, bedOf := cover(n, f.layers, fit)
	fewest, loadOf := cover(n, n, func(set int) bool {
		return bits.OnesCount(uint(set)) <= f.most && load[set] <= f.layers
	})
	if fewest[1<<n-1] > n {
		return start, false
	}
	p := &packing{}
	for set := 1<<n - 1; set != 0; set &^= loadOf[set] {
		g := &group{count: bits.OnesCount(uint(loadOf[set]))}
		for rest := loadOf[set]; rest != 0; rest &^= bedOf[rest] {
			g.beds = append(g.beds, &bed{placed: layouts[bedOf[rest]]})
		}
		p.groups = append(p.groups, g)
	}
	return p, true
}

// cover returns for each set of n panels the fewest parts, each allowed, that
// make it up, more than most where there are none, and the part that holds its
// first panel.
func cover(n, most int, allowed func(int) bool) (fewest, part []int) {
	fewest, part = make([]int, 1<<n), make([]int, 1<<n)
	ok := make([]bool, 1<<n)
	for set := 1; set < 1<<n; set++ {
		ok[set] = allowed(set)
	}
	for set := 1; set < 1<<n; set++ {
		fewest[set] = max(most, n) + 1
		first := set & -set
		others := set &^ first
		for sub := others; ; sub = (sub - 1) & others {
			if p := sub | first; ok[p] && fewest[set&^p]+1 < fewest[set] {
				fewest[set], part[set] = fewest[set&^p]+1, p
			}
			if sub == 0 {
				break
			}
		}
	}
	return fewest, part
}

// A layout looks for a way to lay some panels on one bed, in the order of
// their corners: row by row, left to right. Pushed down and left, every panel
// lies at the foot of the bed or on top of one laid before it, and as far
// across as some others are wide (the normal patterns of Christofides &
// Whitlock, 1977 (m)); so no way to lay them is missed.
type layout struct {
	floor  *floor
	todo   []int
	across []int64
	placed []spot
	sizes  [][2]int64 // of the placed
	effort int
}

func (l *layout) found() bool {
	var area int64
	l.across = []int64{0}
	for _, i := range l.todo {
		it := l.floor.items[i]
		area += it.w * it.h
		for _, x := range slices.Clone(l.across) {
			l.across = append(l.across, x+it.w, x+it.h)
		}
		slices.Sort(l.across)
		l.across = slices.Compact(l.across)
		cut, _ := slices.BinarySearch(l.across, l.floor.w)
		l.across = l.across[:cut]
	}
	if area > l.floor.w*l.floor.h {
		return false
	}
	return l.next(spot{})
}

// next lays one more panel after the last.
func (l *layout) next(last spot) bool {
	if len(l.todo) == 0 {
		return true
	}
	levels := []int64{0}
	for i, s := range l.placed {
		levels = append(levels, s.y+l.sizes[i][1])
	}
	slices.Sort(levels)
	for _, y := range slices.Compact(levels) {
		for _, x := range l.across {
			if y < last.y || y == last.y && x < last.x {
				continue
			}
			if l.lay(x, y) {
				return true
			}
			if l.effort <= 0 {
				return false
			}
		}
	}
	return false
}

// lay tries every panel left at one corner.
func (l *layout) lay(x, y int64) bool {
	for at, i := range l.todo {
		it := l.floor.items[i]
		if at > 0 && l.floor.items[l.todo[at-1]] == it {
			continue // its like was tried
		}
		for _, turned := range []bool{false, true} {
			w, h := it.w, it.h
			if turned {
				if w == h {
					continue
				}
				w, h = h, w
			}
			if l.effort--; l.effort <= 0 {
				return false
			}
			if x+w > l.floor.w || y+h > l.floor.h || !l.clear(x, y, w, h) {
				continue
			}
			rest := l.todo
			l.todo = slices.Delete(slices.Clone(l.todo), at, at+1)
			l.placed = append(l.placed, spot{i, x, y, turned})
			l.sizes = append(l.sizes, [2]int64{w, h})
			if l.next(spot{x: x, y: y}) {
				return true
			}
			l.todo, l.placed, l.sizes = rest, l.placed[:len(l.placed)-1], l.sizes[:len(l.sizes)-1]
		}
	}
	return false
}

func (l *layout) clear(x, y, w, h int64) bool {
	for i, s := range l.placed {
		if x < s.x+l.sizes[i][0] && s.x < x+w && y < s.y+l.sizes[i][1] && s.y < y+h {
			return false
		}
	}
	return true
}
