package plan

import (
	"fmt"

	"presshand/engine/unit"
)

// Sensible limits of one question; beyond them the answer is an error.
const (
	MaxPieces = 5000 // strips in stock
	MaxPanels = 500  // panels wanted
)

// longest is the longest piece of work that a question may name.
const longest = 30 // m

// DefaultTrim is what a panel is glued up wider than its finished width.
// Half an inch, common practice without a source (c).
var DefaultTrim = unit.Millimetres(12.7)

// DefaultWedge is the window that the wedge needs between strips and fence:
// low and high end. Common practice without a source (c).
var DefaultWedge = [2]unit.Length{unit.Millimetres(10), unit.Millimetres(20)}

// A Pile is so many strips of one width.
type Pile struct {
	Width unit.Length
	Count int
}

// A Panel is so many panels of one width: the finished width where they are
// trimmed, the opening fence to fence where they are wedged.
type Panel struct {
	Width unit.Length
	Count int
}

// A StripJob asks which strips go into which panel.
type StripJob struct {
	Stock  []Pile
	Panels []Panel

	// Wedged tells the two modes apart. Trimmed panels need a sum of at least
	// their width and Trim; wedged ones a sum that leaves between WedgeLow and
	// WedgeHigh of the opening, the nearer the middle of the two the better.
	Wedged              bool
	Trim                unit.Length
	WedgeLow, WedgeHigh unit.Length

	MostStrips        int         // in one panel; 0: any number
	Narrowest, Widest unit.Length // strips that may be used; 0: any
	UseNarrow         bool        // prefer many narrow strips to few wide ones
	Differ            bool        // no two neighbours of one width, where that can be
}

// A Pick is the strips of one panel in the order in which they lie.
type Pick struct {
	Panel  int // index into StripJob.Panels
	Widths []unit.Length
	Sum    unit.Length
	Over   unit.Length // Sum less width and trim; 0 where wedged
	Gap    unit.Length // opening less Sum; 0 where trimmed
	Differ bool        // no two neighbours are of one width
}

// A StripPlan is the answer to a [StripJob].
type StripPlan struct {
	Picks     []Pick // one for each panel that can be made
	Left      int    // strips left over, those too narrow or too wide to use included
	LeftWidth unit.Length
	// Reach is the widest further panel, or opening, that the strips left over
	// would fill. Short is what they lack for the narrowest panel that is not
	// made; 0 where all are made, or where width is not what lacks.
	Reach, Short unit.Length
	Certificate  StripCertificate
}

// A StripCertificate says how good a plan is proven to be. Most panels come
// first, then the least waste: what the sums run over or, where wedged, what
// the gaps are off the middle of the window. Sums are exact on a
// grid that holds 1/64 in and 0.1 mm, or thousandths of an inch; a width off it
// counts as the grid line below.
type StripCertificate struct {
	Panels, PanelsBound int         // made, and the most that any plan can make
	Waste, WasteBound   unit.Length // of all panels made, and the least that any plan for as many can waste
	Strips, StripsBound int         // used, and a bound on it at this waste: the fewest, with UseNarrow the most
	Best                bool        // panels and waste are proven best
	Fewest              bool        // the number of strips is proven best too; one panel only
}

// Strips chooses strips for panels: most panels first, then least waste, then
// for one panel fewest strips. One panel is solved to the proven best, several
// are where the stock has few widths or the bound is met.
//
// Units: lengths in and out are [unit.Length]; the watch sees the waste and its
// bound. Valid for up to [MaxPieces] strips and [MaxPanels] panels, widths over
// 0 up to 30 m; outside it the error is a [*unit.RangeError].
//
// Source: subset sum by dynamic programming on bit sets; the number of strips
// is held by counting offsets from the widest strips (derived, see pick.go).
func Strips(job StripJob, watch Watch[unit.Length]) (StripPlan, error) {
	if err := job.valid(); err != nil {
		return StripPlan{}, err
	}
	b := newBench(job)
	sets, cert := b.solve(watch)
	if job.Differ && cert.Panels < len(b.goals) {
		// Not enough alternates: rather more panels, some with neighbours alike.
		loose := job
		loose.Differ = false
		lb := newBench(loose)
		if ls, lc := lb.solve(watch); lc.Panels > cert.Panels {
			b, sets, cert = lb, ls, lc
		}
	}
	p := b.plan(job, sets, cert)
	if err := CheckStrips(job, p); err != nil {
		return StripPlan{}, fmt.Errorf("strip plan refused by its checker: %w", err)
	}
	return p, nil
}

func (job StripJob) valid() error {
	pieces, panels := 0, 0
	for _, p := range job.Stock {
		if err := validWidth("strip width", p.Width); err != nil {
			return err
		}
		pieces += max(0, min(p.Count, MaxPieces+1))
	}
	for _, p := range job.Panels {
		if err := validWidth("panel width", p.Width); err != nil {
			return err
		}
		panels += max(0, min(p.Count, MaxPanels+1))
	}
	switch {
	case pieces < 1 || pieces > MaxPieces:
		return &unit.RangeError{What: "number of strips in stock", Got: float64(pieces), Want: fmt.Sprintf("1 to %d", MaxPieces)}
	case panels < 1 || panels > MaxPanels:
		return &unit.RangeError{What: "number of panels", Got: float64(panels), Want: fmt.Sprintf("1 to %d", MaxPanels)}
	case job.MostStrips < 0:
		return &unit.RangeError{What: "most strips in a panel", Got: float64(job.MostStrips), Want: "1 or more"}
	}
	return job.validFit()
}

func (job StripJob) validFit() error {
	if !job.Wedged {
		if !(job.Trim >= 0 && job.Trim <= longest) {
			return &unit.RangeError{What: "trim", Got: job.Trim.Millimetres(), Unit: " mm", Want: "0 mm or more"}
		}
		return nil
	}
	if !(job.WedgeLow >= 0 && job.WedgeHigh <= longest) {
		return &unit.RangeError{What: "room for the wedge", Got: job.WedgeLow.Millimetres(), Unit: " mm", Want: "0 mm or more"}
	}
	if !(job.WedgeHigh >= job.WedgeLow) {
		want := fmt.Sprintf("%g mm or more", job.WedgeLow.Millimetres())
		return &unit.RangeError{What: "most room for the wedge", Got: job.WedgeHigh.Millimetres(), Unit: " mm", Want: want}
	}
	return nil
}

func validWidth(what string, w unit.Length) error {
	if !(w.Millimetres() >= 0.1 && w.Metres() <= longest) {
		return &unit.RangeError{What: what, Got: w.Millimetres(), Unit: " mm", Want: "0.1 mm to 30 m"}
	}
	return nil
}
