package plan

import (
	"testing"

	"presshand/engine/unit"
)

// likeJobs calls f with days of panels of one size that the rules alone do not
// pack into as few loads as the bound asks for.
func likeJobs(t *testing.T, f func(floor *floor, bound int, first *packing)) {
	t.Helper()
	found := 0
	for w := 7.0; w <= 40; w += 1.7 {
		for l := w; l <= 60; l += 3.1 {
			for _, gap := range []unit.Length{0, DefaultGap} {
				most := int(48 * 96 / (w * l))
				for _, count := range []int{most, 2 * most} {
					if count <= fewPanels {
						continue
					}
					job := LoadJob{Bed: Rect{Width: unit.Inches(48), Length: unit.Inches(96)}, Gap: gap,
						Panels: []Rect{{Width: unit.Inches(w), Length: unit.Inches(l), Count: count}}}
					fl, err := newFloor(job)
					if err != nil {
						t.Fatal(err)
					}
					bound := fl.bound()
					if first := fl.packBest(bound, nil); first.loads() > bound {
						found++
						f(fl, bound, first)
					}
				}
			}
		}
	}
	if found < 20 {
		t.Errorf("%d such days, want 20 or more", found)
	}
}

// Panels of one size are laid by every rule and no more often: a day of them is
// asked for most, and laying them anew hundreds of thousands of times saves
// nothing.
func TestLoads_alikeAreNotRepacked(t *testing.T) {
	likeJobs(t, func(f *floor, bound int, first *packing) {
		looks := 0
		f.packBest(bound, func(int, int) bool { looks++; return true })
		if most := 2 * len(rules); looks > most {
			t.Errorf("%d panels are packed %d times, want %d at most", len(f.items), looks, most)
		}
		seed, now := uint64(20), first
		for try := range 300 {
			if next := f.shaken(now, try, &seed); !f.tighter(now, next) {
				now = next
			}
		}
		if now.loads() < first.loads() {
			t.Errorf("%d panels %d x %d: laid anew in %d loads, by the rules in %d", len(f.items), f.items[0].w, f.items[0].h, now.loads(), first.loads())
		}
	})
}
