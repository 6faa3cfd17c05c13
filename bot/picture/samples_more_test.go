package picture

import (
	"presshand/engine/unit"
)

// falling is a made-up curve: straight down to nothing at the reach, and the
// joints of n strips on it.
func falling(n int, w unit.Length, start, reach unit.Range[float64]) ([]PressureAt, []Joint) {
	at := func(x unit.Length) PressureAt {
		p := func(s, r float64) unit.Pressure { return unit.Kilopascals(max(0, s*(1-x.Metres()/r))) }
		return PressureAt{x, unit.Around(p(start.Low, reach.Low), p(start.Mid, reach.Mid), p(start.High, reach.High))}
	}
	var curve []PressureAt
	width := unit.Length(n) * w
	for i := range 25 {
		curve = append(curve, at(width*unit.Length(i)/24))
	}
	var joints []Joint
	for i := 1; i < n; i++ {
		joints = append(joints, Joint{i, at(unit.Length(i) * w)})
	}
	return curve, joints
}

func plans() map[string]description {
	curve, joints := falling(5, in(2.25), unit.Around(200.0, 300.0, 338.0), unit.Around(0.25, 0.5, 0.9))
	long, many := falling(24, in(2), unit.Around(60.0, 300.0, 338.0), unit.Around(0.4, 0.9, 1.5))
	clock := DayClock{Presses: []string{"Press 1", "Press 2"}, Deadline: unit.Minutes(16*60 + 20)}
	start, times := 7.5*60, func(layUp, in, due, out float64) ClockTimes {
		m := unit.Minutes
		return ClockTimes{m(layUp), m(in), m(in), m(due), m(out - 10), m(out)}
	}
	for i := range 6 {
		in := start + 42
		l := ClockLoad{Number: i + 1, Panels: 3, Press: i % 2, Usual: times(start, in, in+90, in+100), Late: times(start, in+float64(10*i), in+float64(120+10*i), in+float64(130+10*i))}
		clock.Loads = append(clock.Loads, l)
		start += 42
		if i%2 == 1 {
			start = in + 100
		}
	}
	longDay := DayClock{Presses: []string{"Press"}, Loads: []ClockLoad{
		{Number: 1, Usual: times(840, 860, 2000, 2010), Late: times(840, 860, 3000, 3010)},
		{Number: 2, Usual: times(2010, 2030, 3170, 3190), Late: times(3010, 3030, 5000, 5010)},
	}}
	return map[string]description{
		"chart":      PressureChart{Curve: curve, Joints: joints, Contact: unit.Kilopascals(70), Full: unit.Kilopascals(1120), Reach: unit.Around(in(10), in(20), in(36)), Units: inch},
		"chart-long": PressureChart{Title: "Load 21, side pressure", Curve: long, Joints: many, Contact: unit.Kilopascals(70), Full: unit.Kilopascals(350), Reach: unit.Around(in(16), in(35), in(60)), Preload: kpa(60, 110, 180)},
		"chart-two": PressureChart{Pusher: TwoBars, Curve: []PressureAt{{0, kpa(60, 150, 220)}, {0.05, kpa(0, 90, 160)}, {0.125, kpa(0, 0, 70)}, {0.18, kpa(0, 0, 0)}, {0.22, kpa(0, 0, 0)}, {0.275, kpa(0, 0, 70)}, {0.35, kpa(0, 90, 160)}, {0.4, kpa(60, 150, 220)}},
			Joints:  []Joint{{1, PressureAt{0.1, kpa(20, 60, 100)}}, {2, PressureAt{0.2, kpa(20, 60, 80)}}, {3, PressureAt{0.3, kpa(20, 60, 100)}}},
			Contact: unit.Kilopascals(70), Reach: unit.Around[unit.Length](0.05, 0.125, 0.18), Preload: kpa(20, 60, 80), Closing: kpa(2, 4, 8)},
		"strips": StripLayout{Panels: []StripPanel{{Widths: []unit.Length{in(3), in(3.75), in(2.125), in(3.75), in(3), in(2.125), in(2.125), in(3)}, Target: in(22), Trim: in(0.5), Over: in(0.375)}}, First: "bar", Last: "fence", Units: inch},
		"strips-two": StripLayout{Panels: []StripPanel{
			{Name: "Top A", Widths: []unit.Length{0.08, 0.06, 0.1, 0.06, 0.02, 0.02, 0.08}, Target: 0.434, Wedge: 0.014},
			{Name: "Top B", Widths: []unit.Length{0.08, 0.1, 0.1, 0.06}},
			{Name: "Side", Widths: equal(9, 0.055), Target: 0.47, Over: 0.025}}},
		"strips-short": StripLayout{Panels: []StripPanel{{Name: "Panel 1", Widths: equal(8, in(2.015625)), Target: in(16), Over: in(0.125)}, {Name: "Panel 2: not enough", Target: in(16), Reach: in(5.5), Short: in(10.5)}}, More: 2, First: "bar", Last: "fence", Units: inch},
		"bed": BedPlan{Width: unit.Millimetres(1220), Length: unit.Millimetres(2440), Bed: "48 × 96 in, as none was named", Gap: "1 in (25 mm)", Units: inch,
			Sizes: []PanelSize{{"A", in(22), in(48), 3}, {"B", in(22), in(47), 2}, {"C", in(3), in(8), 1}},
			Notes: []string{"More than 4 cannot be laid up before the glue is too stiff."}, Beds: []Bed{
				{Name: "Load 1", Panels: []Placed{{"A", 0, 0, in(48), in(22)}, {"A", 0, in(23), in(48), in(22)}, {"B", in(49), 0, in(22), in(47)}, {"B", in(72), 0, in(22), in(47)}}},
				{Name: "Load 2, two layers of the same", Panels: []Placed{{"A", 0, 0, in(48), in(22)}, {"C", 0, in(23), in(8), in(3)}}},
			}},
		"bed-many": BedPlan{Width: 1.2, Length: 2.4, More: 3, Sizes: []PanelSize{{"", 0.6, 1.2, 14}}, Beds: []Bed{
			{"Load 1", []Placed{{"", 0, 0, 1.2, 0.6}, {"", 1.22, 0, 1.1, 0.6}}}, {"Load 2", []Placed{{"", 0, 0, 1.2, 0.6}, {"", 1.22, 0, 1.1, 0.6}}},
			{"Load 3", []Placed{{"", 0, 0, 0.3, 0.3}, {"", 1.22, 0, 1.1, 0.6}}}, {"Load 4", []Placed{{"", 0, 0, 2.1, 0.9}}}, {"Load 5", nil}}},
		"clock":      clock,
		"clock-long": longDay,
	}
}
