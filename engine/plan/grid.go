package plan

import (
	"math"

	"presshand/engine/unit"
)

// Widths are whole numbers of 1/320 mm inside: 1/64 in is 127 of them, 0.1 mm
// is 32, and 127 and 32 share no factor, so that no coarser grid holds both.
const gridsPerMetre = 320_000

// slack is what a width may lie off the grid and still count as on it: the
// rounding of its floating-point number, and no more.
const slack = 1e-3

// gridDown returns the last grid line at or below l.
func gridDown(l unit.Length) int64 {
	return int64(math.Floor(l.Metres()*gridsPerMetre + slack))
}

// gridUp returns the first grid line at or above l.
func gridUp(l unit.Length) int64 {
	return int64(math.Ceil(l.Metres()*gridsPerMetre - slack))
}

// gridNear returns the grid line nearest l.
func gridNear(l unit.Length) int64 {
	return int64(math.Round(l.Metres() * gridsPerMetre))
}

func offGrid(g int64) unit.Length { return unit.Length(float64(g) / gridsPerMetre) }

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
