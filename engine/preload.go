package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// Uncertainty of what is set before the vacuum.
var (
	wedgeFriction = unit.Around(0.30, 0.40, 0.50) // smooth dry wood, Wood Handbook FPL-GTR-190 p. 4-17
	fenceGives    = unit.Around(5e6, 15e6, 50e6)  // N/m for each m of length (our estimate): screw slip and rail bending
	creepLeaves   = unit.Around(0.6, 0.8, 1.0)    // (our estimate)
)

const (
	overfillError = 0.00025 // m (our estimate): tape and pencil
	squeezeOut    = 0.00005 // m at each joint (our estimate)
)

// A preload is what stands on the joints before the vacuum. Figures in SI.
type preload struct {
	known    bool
	pressure unit.Range[float64]
	driven   bool // by a wedge of known force
	sprung   bool // by strips that overfill the opening
	bySpring bool // the overfill is the larger of the two
	rise     unit.Range[float64]
	snap     unit.Range[float64]
	fence    unit.Range[float64] // N/m
}

// preload reads a wedge and an overfill; with both the larger counts.
func (b *builder) preload(p row, t float64, E unit.Range[float64]) (preload, error) {
	var pre preload
	if err := b.drivenPreload(&pre, p, t, E); err != nil {
		return pre, err
	}
	if err := b.sprungPreload(&pre, p, t, E); err != nil {
		return pre, err
	}
	pre.fence = pre.pressure.Times(b.sharers() * t)
	return pre, nil
}

func (b *builder) drivenPreload(pre *preload, p row, t float64, E unit.Range[float64]) error {
	n, ratio := b.number(unit.WedgeRatio)
	D, driven := b.number(unit.WedgeForce)
	switch {
	case !ratio && !driven:
		return nil
	case !ratio:
		b.need(unit.WedgeRatio)
		return nil
	}
	if err := unit.MoreThan("run of the wedge", n, 0, ""); err != nil {
		return err
	}
	α, μ := unit.Slope(1, n), b.collapse(wedgeFriction)
	b.judgeWedge(α, μ)
	b.warn(CautionPinch)
	if !driven {
		b.advise(ReasonWedgeForceUnknown, nil)
		return nil
	}
	L, ok := b.length()
	if !ok {
		b.need(unit.StripLength)
		return nil
	}
	var err error
	edges := b.sharers() * t
	r := unit.Sweep(func(c unit.Corner) float64 {
		N, e := press.WedgeForce(unit.Force(D), α, unit.Friction(c[0]))
		q, e2 := press.DrivenPreload(N, unit.Length(edges), unit.Length(L))
		if e != nil || e2 != nil {
			err = firstError(e, e2)
		}
		return float64(q)
	}, μ)
	if err != nil {
		return err
	}
	r.Low = b.relieved(r, p, E)
	pre.add(r)
	pre.driven = true
	return nil
}

// relieved returns what squeeze-out leaves of a driven preload at worst: all of it
// where the wedge is driven again. How many joints there are may not be known; then
// nothing may be left.
func (b *builder) relieved(r unit.Range[float64], p row, E unit.Range[float64]) float64 {
	if b.exact || b.drivenAgain() {
		return r.Low
	}
	b.advise(ReasonDriveAgain, nil)
	if !p.whole() {
		return 0
	}
	loss, err := press.SqueezeOutRelief(unit.Stiffness(E.Mid), float64(p.strips), squeezeOut, unit.Length(p.width))
	if err != nil {
		return 0
	}
	return r.Low - float64(loss) // below 0 nothing is left, see add
}

// drivenAgain reports whether the wedge is driven once more just before the vacuum.
func (b *builder) drivenAgain() bool { return b.word(unit.WedgeAgain) == "yes" }

func (b *builder) sprungPreload(pre *preload, p row, t float64, E unit.Range[float64]) error {
	δ, ok := b.number(unit.Overfill)
	if !ok {
		return nil
	}
	if p.width == 0 {
		b.need(unit.PanelWidth)
		return nil
	}
	b.warn(CautionHoldDown, CautionPinch)
	W, edges := p.width, b.sharers()*t
	over := b.spread(math.Max(0, δ-overfillError), δ, math.Max(δ, math.Min(δ+overfillError, W/press.MostOverfill)))
	var err error
	r := unit.Sweep(func(c unit.Corner) float64 {
		q, e := press.OverfillPreload(c[3], unit.Length(c[0]), unit.Length(W), unit.Length(edges), unit.Stiffness(c[1]), unit.Stiffness(c[2]))
		err = firstError(err, e)
		return float64(q)
	}, over, E, b.collapse(fenceGives), b.collapse(creepLeaves))
	pre.rise = unit.Sweep(func(c unit.Corner) float64 {
		y, e := press.Rise(unit.Length(W), unit.Length(c[0]))
		err = firstError(err, e)
		return float64(y)
	}, over)
	pre.snap = unit.Sweep(func(c unit.Corner) float64 {
		q, e := press.SnapPressure(unit.Stiffness(c[1]), unit.Length(t), unit.Length(c[0]), unit.Length(W))
		err = firstError(err, e)
		return float64(q)
	}, pre.rise, E)
	pre.bySpring = r.Mid > pre.pressure.Mid
	pre.add(r)
	pre.sprung = true
	return err
}

// add keeps the larger of two preloads, none being 0.
func (pre *preload) add(r unit.Range[float64]) {
	pre.pressure = larger(pre.pressure, r)
	pre.known = true
}

// larger returns the larger of two independent figures.
func larger(a, b unit.Range[float64]) unit.Range[float64] {
	return unit.Around(math.Max(a.Low, b.Low), math.Max(a.Mid, b.Mid), math.Max(a.High, b.High))
}

// judgeWedge judges whether a wedge stays in by itself at the least friction.
func (b *builder) judgeWedge(α unit.Angle, μ unit.Range[float64]) {
	figures := unit.Facts{unit.WedgeRatio: unit.Number(1 / α.Tan())}
	holds, err := press.WedgeHolds(α, unit.Friction(μ.Low))
	if err == nil && holds {
		b.judge("wedge", Good, ReasonWedgeHolds, figures)
		return
	}
	b.judge("wedge", Care, ReasonWedgeSlips, figures)
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
