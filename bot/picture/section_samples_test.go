package picture

import (
	"maps"

	"presshand/engine/unit"
)

// sections are the samples of a section: the usual loads, where the bar stands,
// and what goes wrong with it.
func sections() map[string]description {
	all := plainSections()
	maps.Copy(all, standingSections())
	maps.Copy(all, oddSections())
	return all
}

func plainSections() map[string]description {
	return map[string]description{
		"section-bar": CrossSection{
			Title:  "Load 14: walnut panel",
			Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Film, unit.Millimetres(0.15)}},
			Widths: equal(5, in(2.25)),
			Bar:    &Bar{Height: in(1), Width: in(0.75), Covered: unit.Around(in(0.25), in(0.25), in(1))},
			Tent:   unit.Millimetres(6),
			Face:   kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(60, 76, 82), Far: kpa(30, 52, 61), Units: inch,
		},
		"section-caul": CrossSection{
			Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Film, unit.Millimetres(0.15)}, {Caul, in(0.75)}},
			Widths: equal(8, in(2.25)),
			Bar:    &Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(1))},
			Tent:   unit.Millimetres(6),
			Face:   kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(251, 306, 330), Far: kpa(110, 199, 260), Units: Units{}, Opening: unit.Millimetres(75),
		},
		"section-stack": CrossSection{
			Title: "Two levels",
			Layers: []Layer{{Sled, in(0.75)}, {Fence, in(0.25)}, {Strips, in(5.0 / 16)}, {Film, unit.Millimetres(0.15)},
				{Sled, in(0.75)}, {Fence, in(0.52)}, {Strips, in(5.0 / 16)}, {Film, unit.Millimetres(0.15)}, {Mat, in(3.0 / 8)}, {Caul, in(0.75)}},
			Widths:  equal(6, in(2)),
			Proud:   []Proud{{By: unit.Exactly(in(1.0 / 16)), Verdict: Good}, {By: unit.Around(in(0.01), in(0.0175), in(0.025)), Verdict: Care}},
			Opening: in(4), Face: kpa(82.1, 84.66, 87.2), Units: inch,
		},
		"section-wedge": CrossSection{
			Layers: []Layer{{Sled, unit.Millimetres(18)}, {Core, unit.Millimetres(12)}, {Strips, unit.Millimetres(6)}},
			Widths: []unit.Length{0.05, 0.06, 0.055, 0.05}, Wedge: &Wedge{Gap: unit.Millimetres(15)},
			Face: kpa(80, 80, 80), Preload: kpa(100, 165, 240), Bag: true,
		},
	}
}

func standingSections() map[string]description {
	return map[string]description{
		"section-both": CrossSection{
			Layers: []Layer{{Sled, in(0.75)}, {Core, in(0.75)}, {Strips, in(0.25)}},
			Widths: equal(12, in(2.25)), Tent: unit.Millimetres(6),
			Bar:  &Bar{Height: in(1.5), Width: in(0.75), Covered: unit.Exactly(in(1)), Both: true},
			Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(251, 306, 330), Far: kpa(110, 199, 260), Units: inch,
		},
		"section-bed": CrossSection{
			Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}},
			Widths: equal(5, in(2.25)), Tent: unit.Millimetres(6),
			Bar:  &Bar{Height: in(1.5), Width: in(1.5), Covered: unit.Exactly(in(1)), OnBed: true},
			Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(251, 306, 330), Far: kpa(110, 199, 260), Units: inch,
		},
		"section-plain": CrossSection{
			Layers: []Layer{{Strips, in(0.75)}},
			Widths: equal(5, in(2.25)), Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(51, 70, 80), Far: kpa(0, 10, 20), Units: inch,
		},
	}
}

func oddSections() map[string]description {
	return map[string]description{
		"section-spring": CrossSection{
			Verdict: Care, Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.75)}}, Widths: equal(6, in(2)), SledAssumed: true,
			Spring: &Spring{Over: in(1.0 / 16), Rise: unit.Around(in(0.5), in(0.53), in(0.56)), Snap: kpa(12, 51, 103)},
			Face:   kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(172, 828, 3380), Far: kpa(172, 828, 3380),
			Preload: kpa(172, 828, 3380), Units: inch,
		},
		"section-low": CrossSection{
			Verdict: Care, Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}}, Widths: equal(6, in(2)),
			Bar:  &Bar{Height: in(0.5), Width: in(0.75), Covered: unit.Exactly(in(0.25)), OnBed: true},
			Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), Units: inch,
		},
		"section-faces": CrossSection{
			Verdict: Care, Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Core, in(0.75)}, {Strips, in(0.25)}}, Widths: equal(7, in(2)), TwoFaces: true,
			Bar:  &Bar{Height: in(1.75), Width: in(0.75), Covered: unit.Exactly(in(1.25))},
			Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(0, 153, 301), Far: kpa(0, 0, 126), Units: inch,
		},
		"section-lid": CrossSection{
			Verdict: Care, Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.5)}}, Widths: []unit.Length{in(2), in(3), in(1.5), in(4), in(2.25)},
			Bar:     &Bar{Height: in(1), Covered: unit.Around(in(0.5), in(0.5), in(1))},
			Opening: in(1.5), Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(0, 0, 102), Units: inch,
		},
		"section-tips": CrossSection{
			Verdict: Care, Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.5)}}, Widths: equal(41, in(1)), SledAssumed: true, WidthAssumed: true,
			Bar:  &Bar{Height: in(4.3125), Width: in(0.75), Covered: unit.Around(in(2.375), in(4.3125), in(4.3125)), Tips: in(2.375), Wider: in(4.0625)},
			Face: kpa(82.1, 84.66, 87.2), Side: true, Need: unit.Kilopascals(70), First: kpa(203, 616, 683), Far: kpa(0, 345, 474), Units: inch,
		},
	}
}
