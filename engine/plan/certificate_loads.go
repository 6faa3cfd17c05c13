package plan

import (
	"fmt"
	"math"
)

// box is where a placed panel lies, in nanometres.
type box struct{ x, y, w, h int64 }

// CheckLoads returns what is wrong with a plan for a job; nil where every panel
// is in one load, on the bed, clear of its neighbours, under the opening, no
// load holds more than can be laid up, and the certificate agrees.
func CheckLoads(job LoadJob, p LoadPlan) error {
	left := make([]int, len(job.Panels))
	for i, r := range job.Panels {
		left[i] = max(0, r.Count)
	}
	for i, l := range p.Loads {
		if len(l.Panels) == 0 {
			return fmt.Errorf("load %d is empty", i)
		}
		if job.PanelsPerLoad > 0 && len(l.Panels) > job.PanelsPerLoad {
			return fmt.Errorf("load %d has %d panels, want at most %d", i, len(l.Panels), job.PanelsPerLoad)
		}
		if err := checkLoad(job, l, left); err != nil {
			return fmt.Errorf("load %d: %w", i, err)
		}
	}
	for i, n := range left {
		if n > 0 {
			return fmt.Errorf("%d of panel %d are in no load", n, i)
		}
	}
	c := p.Certificate
	switch {
	case c.Loads != len(p.Loads):
		return fmt.Errorf("certificate is of %d loads, there are %d", c.Loads, len(p.Loads))
	case c.Bound > c.Loads:
		return fmt.Errorf("%d loads are said to be fewer than the least possible, %d", c.Loads, c.Bound)
	case c.Best != (c.Bound == c.Loads):
		return fmt.Errorf("best is said to be %v at %d loads and a bound of %d", c.Best, c.Loads, c.Bound)
	}
	return nil
}

func checkLoad(job LoadJob, l Load, left []int) error {
	layers := map[int][]box{}
	top := 0
	for _, at := range l.Panels {
		if at.Panel < 0 || at.Panel >= len(left) {
			return fmt.Errorf("panel %d of %d", at.Panel, len(left))
		}
		if left[at.Panel]--; left[at.Panel] < 0 {
			return fmt.Errorf("panel %d is laid more often than wanted", at.Panel)
		}
		r := job.Panels[at.Panel]
		b := box{nm(at.X), nm(at.Y), nm(r.Width), nm(r.Length)}
		if at.Turned {
			b.w, b.h = b.h, b.w
		}
		if b.x < 0 || b.y < 0 || b.x+b.w > nm(job.Bed.Width)+1 || b.y+b.h > nm(job.Bed.Length)+1 || at.Layer < 0 {
			return fmt.Errorf("panel %d lies off the bed", at.Panel)
		}
		for _, o := range layers[at.Layer] {
			if gapBetween(b, o) < nm(job.Gap)-2 {
				return fmt.Errorf("panel %d lies %g mm from another, want %g mm", at.Panel, float64(gapBetween(b, o))/1e6, job.Gap.Millimetres())
			}
		}
		layers[at.Layer] = append(layers[at.Layer], b)
		top = max(top, at.Layer)
	}
	if top == 0 {
		return nil
	}
	if high := int64(top+1) * nm(job.LayerHeight); high == 0 || high > nm(job.Opening)+1 {
		return fmt.Errorf("%d layers are %g mm high, want at most the opening of %g mm", top+1, float64(high)/1e6, job.Opening.Millimetres())
	}
	return nil
}

// gapBetween returns the larger of the gaps across and along, negative where
// two boxes overlap.
func gapBetween(a, b box) int64 {
	gap := int64(math.MinInt64)
	for _, g := range []int64{b.x - a.x - a.w, a.x - b.x - b.w, b.y - a.y - a.h, a.y - b.y - b.h} {
		gap = max(gap, g)
	}
	return gap
}
