package picture

import (
	"fmt"
	"maps"
	"math"

	"presshand/engine/unit"
)

type description interface{ Draw() (*Drawing, error) }

// tape writes a length as a tape measure reads it, to 1/32 in.
func tape(l unit.Length) string {
	n := int(math.Round(l.Inches() * 32))
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, part, of := n/32, n%32, 32
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return fmt.Sprintf("%s%d in", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d in", sign, part, of)
	}
	return fmt.Sprintf("%s%d %d/%d in", sign, whole, part, of)
}

func psi(p unit.Pressure) string { return fmt.Sprintf("%.1f psi", p.PoundsPerSquareInch()) }

var inch = Units{Length: tape, Pressure: psi, LengthAxis: unit.Inch, PressureAxis: unit.PSI}

func in(v float64) unit.Length { return unit.Inches(v) }

func kpa(low, mid, high float64) unit.Range[unit.Pressure] {
	return unit.Around(unit.Kilopascals(low), unit.Kilopascals(mid), unit.Kilopascals(high))
}

func equal(n int, w unit.Length) []unit.Length {
	ws := make([]unit.Length, n)
	for i := range ws {
		ws[i] = w
	}
	return ws
}

// samples are one drawing of each kind and the turns that a kind can take.
func samples() map[string]description {
	all := sections()
	maps.Copy(all, plans())
	return all
}
