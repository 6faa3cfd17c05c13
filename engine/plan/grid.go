package plan

import (
	"math"

	"presshand/engine/unit"
)

// A grid is how many lines to the metre lengths are counted in.
type grid float64

const (
	// usual is 1/320 mm: 1/64 in is 127 of them, 0.1 mm is 32, and 127 and 32 share
	// no factor, so that no coarser grid holds both.
	usual grid = 320_000
	// fine is 25 nm, which holds thousandths of an inch too.
	fine grid = 40_000_000
)

// slack is what a width may lie off the usual grid and still count as on it: the
// rounding of its floating-point number, and no more.
const slack = 1e-3

// down returns the last grid line at or below l.
func (g grid) down(l unit.Length) int64 {
	return int64(math.Floor(l.Metres()*float64(g) + g.slack()))
}

// up returns the first grid line at or above l.
func (g grid) up(l unit.Length) int64 {
	return int64(math.Ceil(l.Metres()*float64(g) - g.slack()))
}

// near returns the grid line nearest l.
func (g grid) near(l unit.Length) int64 {
	return int64(math.Round(l.Metres() * float64(g)))
}

// holds reports whether l lies on a grid line.
func (g grid) holds(l unit.Length) bool {
	return math.Abs(l.Metres()*float64(g)-float64(g.near(l))) <= g.slack()
}

func (g grid) slack() float64 { return slack * float64(g/usual) }

func (g grid) length(lines int64) unit.Length { return unit.Length(float64(lines) / float64(g)) }

// grid returns what the strips are counted in: the usual grid, or the fine one
// where only that holds them and they have a step that is no finer than the usual
// one, so that it costs no more. exact is false where neither holds them.
func (job StripJob) grid() (g grid, exact bool) {
	onUsual, onFine := true, true
	var ws []int64
	for _, p := range job.Stock {
		if p.Count > 0 {
			onUsual = onUsual && usual.holds(p.Width)
			onFine = onFine && fine.holds(p.Width)
			ws = append(ws, fine.near(p.Width))
		}
	}
	switch {
	case onUsual:
		return usual, true
	case onFine && commonStep(ws) >= int64(fine/usual):
		return fine, true
	}
	return usual, false
}

// commonStep returns the largest step that all of ws are multiples of.
func commonStep(ws []int64) int64 {
	var g int64
	for _, w := range ws {
		for a := w; a != 0; {
			g, a = a, g%a
		}
		if g == 1 {
			break
		}
	}
	return max(g, 1)
}
