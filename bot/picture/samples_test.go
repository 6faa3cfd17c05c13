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

func sections() map[string]description {
	return map[string]description{
		"section-bar": CrossSection{
			Title:  "Load 14: walnut panel",
			Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Film, unit.Millimetres(0.15)}},
			Widths: equal(5, in(2.25)),
			Bar:    &Bar{Height: in(1), Width: in(0.75), Covered: unit.Around(in(0.25), in(0.25), in(1))},
			Tent:   unit.Millimetres(6),
			Face:   kpa(82.1, 84.66, 87.2), First: kpa(60, 76, 82), Far: kpa(30, 52, 61), Units: inch,
		},
		"section-caul": CrossSection{
			Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Film, unit.Millimetres(0.15)}, {Caul, in(0.75)}},
			Widths: equal(8, in(2.25)),
			Bar:    &Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(1))},
			Tent:   unit.Millimetres(6),
			Face:   kpa(82.1, 84.66, 87.2), First: kpa(251, 306, 330), Far: kpa(110, 199, 260), Units: Units{}, Opening: unit.Millimetres(75),
		},
		"section-stack": CrossSection{
			Title: "Two levels",
			Layers: []Layer{{Sled, in(0.75)}, {Fence, in(0.25)}, {Strips, in(5.0 / 16)}, {Film, unit.Millimetres(0.15)},
				{Sled, in(0.75)}, {Fence, in(0.3)}, {Strips, in(5.0 / 16)}, {Film, unit.Millimetres(0.15)}, {Mat, in(3.0 / 8)}, {Caul, in(0.75)}},
			Widths:  equal(6, in(2)),
			Proud:   []Proud{{By: unit.Exactly(in(1.0 / 16))}, {By: unit.Exactly(in(1.0 / 64)), TooLittle: true}},
			Opening: in(4), Face: kpa(82.1, 84.66, 87.2), Units: inch,
		},
		"section-wedge": CrossSection{
			Layers: []Layer{{Sled, unit.Millimetres(18)}, {Core, unit.Millimetres(12)}, {Strips, unit.Millimetres(6)}},
			Widths: []unit.Length{0.05, 0.06, 0.055, 0.05}, Wedge: &Wedge{Gap: unit.Millimetres(15)},
			Face: kpa(80, 80, 80), Preload: kpa(100, 165, 240), Bag: true,
		},
		"section-both": CrossSection{
			Layers: []Layer{{Sled, in(0.75)}, {Core, in(0.75)}, {Strips, in(0.25)}},
			Widths: equal(12, in(2.25)), Tent: unit.Millimetres(6),
			Bar:  &Bar{Height: in(1.5), Width: in(0.75), Covered: unit.Exactly(in(1)), Both: true},
			Face: kpa(82.1, 84.66, 87.2), First: kpa(251, 306, 330), Far: kpa(110, 199, 260), FarJoint: 6, Units: inch,
		},
		"section-bed": CrossSection{
			Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}},
			Widths: equal(5, in(2.25)), Tent: unit.Millimetres(6),
			Bar:  &Bar{Height: in(1.5), Width: in(1.5), Covered: unit.Exactly(in(1)), OnBed: true},
			Face: kpa(82.1, 84.66, 87.2), First: kpa(251, 306, 330), Far: kpa(110, 199, 260), Units: inch,
		},
		"section-plain": CrossSection{
			Layers: []Layer{{Strips, in(0.75)}},
			Widths: equal(5, in(2.25)), Face: kpa(82.1, 84.66, 87.2), First: kpa(51, 70, 80), Far: kpa(0, 10, 20), Units: inch,
		},
	}
}
