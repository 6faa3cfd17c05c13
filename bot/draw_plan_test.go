package bot

import (
	"testing"

	"presshand/engine"
	"presshand/engine/plan"
	"presshand/engine/unit"
)

func TestNumbered_runsAndRests(t *testing.T) {
	for want, numbers := range map[string][]int{
		"Load 3": {3}, "Loads 1 and 2": {1, 2}, "Loads 1 to 4": {1, 2, 3, 4}, "Loads 1, 2 and 4": {1, 2, 4},
		"Load 1 and 6 others like it": {1, 2, 3, 5, 7, 9, 11},
	} {
		if got := numbered("Load", numbers); got != want {
			t.Errorf("%v is %q, want %q", numbers, got, want)
		}
	}
}

// Two loads alike are one drawing, layers are drawn apart, and what lies across
// the bed in the plan runs down the page.
func TestDrawn_beds(t *testing.T) {
	mm := unit.Millimetres
	lying := []plan.Placed{{X: mm(10), Y: mm(20)}, {Layer: 1, Turned: true}}
	day := &engine.Day{
		Bed: plan.DefaultBed, Sizes: []plan.Rect{{Width: mm(600), Length: mm(1200)}},
		Loads: []engine.DayLoad{{Panels: lying}, {Panels: lying}, {Panels: lying[:1]}},
	}
	beds := Drawn{Answer: engine.Answer{About: engine.Schedule, Day: day}}.beds()
	if len(beds.Beds) != 3 || beds.Beds[0].Name != "Loads 1 and 2, layer 1" || beds.Beds[2].Name != "Load 3" {
		t.Fatalf("beds are %+v, want two layers of loads 1 and 2, and load 3", beds.Beds)
	}
	flat, turned := beds.Beds[0].Panels[0], beds.Beds[1].Panels[0]
	if flat.X != mm(20) || flat.Y != mm(10) || flat.Along != mm(1200) || flat.Across != mm(600) {
		t.Errorf("panel lies as %+v, want 20 and 10 mm from the corner, 1200 along", flat)
	}
	if turned.Along != mm(600) || turned.Across != mm(1200) {
		t.Errorf("turned panel lies as %+v, want 600 along", turned)
	}
	if _, err := beds.Draw(); err != nil {
		t.Error(err)
	}
}

// Panels made alike are drawn once, each with its own width to fill.
func TestDrawn_stripsAlikeOnce(t *testing.T) {
	got := Drawn{Answer: engine.Answer{About: engine.Strips, Values: unit.Facts{
		unit.Picks: unit.Sets{{60, 85}, {60, 85}, {85, 85}}, unit.PickTargets: unit.Numbers{140, 140, 165},
		unit.WedgeGap: unit.Triples{exactly1(15), exactly1(15), exactly1(12)},
	}}}.strips()
	if len(got.Panels) != 2 || got.Panels[0].Name != "Panels 1 and 2" || got.Panels[1].Name != "Panel 3" {
		t.Fatalf("drawn are %+v, want two of one kind and one of another", got.Panels)
	}
	if p := got.Panels[1]; p.Target != unit.Millimetres(165) || p.Wedge != unit.Millimetres(12) {
		t.Errorf("the last fills %v and leaves %v, want 165 and 12 mm", p.Target, p.Wedge)
	}
}
