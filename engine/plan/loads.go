package plan

import (
	"cmp"
	"fmt"
	"slices"

	"presshand/engine/unit"
)

// The bed that nobody named, and the room between panels on it. The bed is a
// sheet of 4 x 8 ft; the room is common practice without a source (c).
var (
	DefaultBed = Rect{Width: unit.Millimetres(1220), Length: unit.Millimetres(2440)}
	DefaultGap = unit.Millimetres(25)
)

// A Rect is so many panels of one size, or a bed.
type Rect struct {
	Width, Length unit.Length
	Count         int
}

// A LoadJob asks which panels go into the press together.
type LoadJob struct {
	Panels []Rect
	Bed    Rect        // its count does not matter
	Gap    unit.Length // between panels; none is needed at the bed's edge
	// Layers of one load: what of LayerHeight fits into Opening; one where
	// either is 0.
	LayerHeight, Opening unit.Length
	PanelsPerLoad        int // what can be laid up within the glue's closed time; 0: any number
}

// A Placed panel lies with its corner at X across and Y along the bed.
type Placed struct {
	Panel  int // index into LoadJob.Panels
	Layer  int // from the bottom, 0 first
	X, Y   unit.Length
	Turned bool // its width lies along the bed
}

// A Load is what is in the press at once.
type Load struct{ Panels []Placed }

// A LoadPlan is the answer to a [LoadJob].
type LoadPlan struct {
	Loads       []Load
	Layers      int // that one load can have
	Certificate LoadCertificate
}

// A LoadCertificate says how good a packing is proven to be.
type LoadCertificate struct {
	Loads     int
	Bound     int // no packing needs fewer
	AreaBound int // what area alone would say
	Best      bool
}

// Layers returns how many layers of one load fit under the press's opening; one
// where either height is not known.
func (job LoadJob) Layers() int {
	if !(job.LayerHeight > 0) || !(job.Opening > 0) {
		return 1
	}
	return int(min(1000, usual.down(job.Opening)/max(1, usual.up(job.LayerHeight))))
}

// Loads packs panels into the fewest loads that it can find, turned if that
// helps.
//
// Units: lengths in and out are [unit.Length]; the watch sees loads and their
// bound. Valid for up to [MaxPanels] panels that each fit the bed, and a layer
// that fits the opening; outside it the error is a [*unit.RangeError].
//
// Source: maximal rectangles (Jylänki, A Thousand Ways to Pack the Bin, 2010,
// (m)), emptied and filled anew; up to ten panels exactly, by every set of
// them. Bounds: bounds.go.
func Loads(job LoadJob, watch Watch[int]) (LoadPlan, error) {
	f, err := newFloor(job)
	if err != nil {
		return LoadPlan{}, err
	}
	bound := f.bound()
	best := f.packBest(bound, watch)
	if len(f.items) <= fewPanels && best.loads() > bound {
		if exact, known := f.exact(best); known {
			best, bound = exact, exact.loads()
		}
	}
	p := f.plan(job, best)
	p.Certificate = LoadCertificate{Loads: len(p.Loads), Bound: bound, AreaBound: f.areaBound(), Best: len(p.Loads) == bound}
	if err := CheckLoads(job, p); err != nil {
		return LoadPlan{}, fmt.Errorf("load plan refused by its checker: %w", err)
	}
	return p, nil
}

// A floor is a load job in whole numbers, every length with a gap added: the
// gap is then part of the panel, and the bed has room for one more at its edge.
type floor struct {
	items  []item // largest first
	w, h   int64
	layers int
	most   int // panels in one load
}

// An item is one panel: w across and h along the bed, unless turned.
type item struct {
	w, h  int64
	panel int
}

func (f *floor) fits(w, h int64) bool { return w <= f.w && h <= f.h }

func newFloor(job LoadJob) (*floor, error) {
	if err := job.valid(); err != nil {
		return nil, err
	}
	gap := usual.up(job.Gap)
	f := &floor{w: usual.down(job.Bed.Width) + gap, h: usual.down(job.Bed.Length) + gap, layers: job.Layers(), most: job.PanelsPerLoad}
	for i, p := range job.Panels {
		it := item{usual.up(p.Width) + gap, usual.up(p.Length) + gap, i}
		if !f.fits(it.w, it.h) && !f.fits(it.h, it.w) {
			return nil, &unit.RangeError{
				What: fmt.Sprintf("panel %g mm wide and as long as", p.Width.Millimetres()), Got: p.Length.Millimetres(), Unit: " mm",
				Want: fmt.Sprintf("one that fits the bed of %g x %g mm", job.Bed.Width.Millimetres(), job.Bed.Length.Millimetres()),
			}
		}
		for range p.Count {
			f.items = append(f.items, it)
		}
	}
	if f.most == 0 {
		f.most = len(f.items)
	}
	slices.SortStableFunc(f.items, func(a, b item) int {
		return cmp.Or(cmp.Compare(b.w*b.h, a.w*a.h), cmp.Compare(a.panel, b.panel))
	})
	return f, nil
}

func (job LoadJob) valid() error {
	n := 0
	for _, p := range append([]Rect{{job.Bed.Width, job.Bed.Length, 0}}, job.Panels...) {
		for _, l := range []unit.Length{p.Width, p.Length} {
			if err := validWidth("side of bed or panel", l); err != nil {
				return err
			}
		}
		n += max(0, min(p.Count, MaxPanels+1))
	}
	switch {
	case n < 1 || n > MaxPanels:
		return &unit.RangeError{What: "number of panels", Got: float64(n), Want: fmt.Sprintf("1 to %d", MaxPanels)}
	case !(job.Gap >= 0 && job.Gap <= longest):
		return &unit.RangeError{What: "room between panels", Got: job.Gap.Millimetres(), Unit: " mm", Want: "0 mm or more"}
	case job.PanelsPerLoad < 0:
		return &unit.RangeError{What: "panels in a load", Got: float64(job.PanelsPerLoad), Want: "1 or more"}
	case !(job.LayerHeight >= 0 && job.LayerHeight <= longest && job.Opening >= 0 && job.Opening <= longest):
		return &unit.RangeError{What: "height of a layer", Got: job.LayerHeight.Millimetres(), Unit: " mm", Want: "0 mm to 30 m, as the opening"}
	case job.Layers() < 1:
		return &unit.RangeError{What: "height of a layer", Got: job.LayerHeight.Millimetres(), Unit: " mm",
			Want: fmt.Sprintf("at most the opening of %g mm", job.Opening.Millimetres())}
	}
	return nil
}

// plan puts a packing into the words of the job.
func (f *floor) plan(job LoadJob, p *packing) LoadPlan {
	out := LoadPlan{Layers: f.layers}
	for _, g := range p.groups {
		var load Load
		layer := 0
		for _, b := range g.beds {
			if len(b.placed) == 0 {
				continue
			}
			for _, at := range b.placed {
				load.Panels = append(load.Panels, Placed{f.items[at.item].panel, layer, usual.length(at.x), usual.length(at.y), at.turned})
			}
			layer++
		}
		if layer > 0 {
			out.Loads = append(out.Loads, load)
		}
	}
	return out
}
