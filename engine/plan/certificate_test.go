package plan_test

import (
	"slices"
	"testing"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// Each forgery spoils a good plan in one way, and the checker must see it.

func TestCheckStrips_refusesForgeries(t *testing.T) {
	job := plan.StripJob{
		Stock: []plan.Pile{{Width: unit.Millimetres(50), Count: 4}, {Width: unit.Millimetres(70), Count: 4},
			{Width: unit.Millimetres(40), Count: 2}},
		Panels:     []plan.Panel{{Width: unit.Millimetres(225), Count: 1}},
		MostStrips: 4, Narrowest: unit.Millimetres(45), Differ: true,
	}
	one := func() plan.StripPlan {
		p, err := plan.Strips(job, nil)
		if err != nil || len(p.Picks) != 1 {
			t.Fatalf("%+v, %v", p, err)
		}
		return p
	}
	for name, forge := range map[string]func(*plan.StripPlan){
		"another sum":      func(p *plan.StripPlan) { p.Picks[0].Sum += unit.Millimetres(1) },
		"another over":     func(p *plan.StripPlan) { p.Picks[0].Over += unit.Millimetres(1) },
		"a strip less":     func(p *plan.StripPlan) { p.Picks[0].Widths = p.Picks[0].Widths[1:] },
		"not in stock":     func(p *plan.StripPlan) { p.Picks[0].Widths[0] = unit.Millimetres(60) },
		"too narrow":       func(p *plan.StripPlan) { p.Picks[0].Widths[0] = unit.Millimetres(40) },
		"neighbours alike": func(p *plan.StripPlan) { slices.Sort(p.Picks[0].Widths) },
		"one left more":    func(p *plan.StripPlan) { p.Left++ },
		"panel twice":      func(p *plan.StripPlan) { p.Picks = append(p.Picks, p.Picks[0]) },
		"no such panel":    func(p *plan.StripPlan) { p.Picks[0].Panel = 1 },
		"less waste":       func(p *plan.StripPlan) { p.Certificate.Waste, p.Certificate.WasteBound = 0, 0 },
		"bound over waste": func(p *plan.StripPlan) { p.Certificate.WasteBound += unit.Millimetres(1) },
		"more panels":      func(p *plan.StripPlan) { p.Certificate.Panels++ },
		"fewer strips":     func(p *plan.StripPlan) { p.Certificate.StripsBound-- },
	} {
		p := one()
		forge(&p)
		if plan.CheckStrips(job, p) == nil {
			t.Errorf("%s: passed", name)
		}
	}
}

// By hand: 3 of 80 mm are 240 mm, 15 over; 50 and 2 of 90 mm are 230, 5 over.
// A plan of the first that claims to be best passes every sum but not the proof.
func TestCheckStrips_refusesFalseBest(t *testing.T) {
	mm := unit.Millimetres
	job := plan.StripJob{
		Stock:  []plan.Pile{{Width: mm(80), Count: 3}, {Width: mm(90), Count: 2}, {Width: mm(50), Count: 1}},
		Panels: []plan.Panel{{Width: mm(225), Count: 1}},
	}
	p := plan.StripPlan{
		Picks: []plan.Pick{{Widths: []unit.Length{mm(80), mm(80), mm(80)}, Sum: mm(240), Over: mm(15)}},
		Left:  3, LeftWidth: mm(230),
		Certificate: plan.StripCertificate{Panels: 1, PanelsBound: 1, Waste: mm(15), WasteBound: mm(5), Strips: 3, StripsBound: 3},
	}
	if err := plan.CheckStrips(job, p); err != nil {
		t.Fatalf("not said to be best: %v", err)
	}
	p.Certificate.WasteBound, p.Certificate.Best = mm(15), true
	if plan.CheckStrips(job, p) == nil {
		t.Error("said to be best: passed")
	}
}

func TestCheckLoads_refusesForgeries(t *testing.T) {
	mm := unit.Millimetres
	job := plan.LoadJob{
		Panels: []plan.Rect{{Width: mm(500), Length: mm(700), Count: 9}}, Bed: plan.DefaultBed, Gap: plan.DefaultGap,
		LayerHeight: mm(30), Opening: mm(65), PanelsPerLoad: 8,
	}
	for name, forge := range map[string]func(*plan.LoadPlan){
		"too near":      func(p *plan.LoadPlan) { p.Loads[0].Panels[1] = p.Loads[0].Panels[0] },
		"off the bed":   func(p *plan.LoadPlan) { p.Loads[0].Panels[0].X = mm(1000) },
		"third layer":   func(p *plan.LoadPlan) { p.Loads[0].Panels[0].Layer = 2 },
		"one missing":   func(p *plan.LoadPlan) { p.Loads[0].Panels = p.Loads[0].Panels[1:] },
		"empty load":    func(p *plan.LoadPlan) { p.Loads = append(p.Loads, plan.Load{}) },
		"no such panel": func(p *plan.LoadPlan) { p.Loads[0].Panels[0].Panel = 3 },
		"bound too big": func(p *plan.LoadPlan) { p.Certificate.Bound++ },
		"not best":      func(p *plan.LoadPlan) { p.Certificate.Best = !p.Certificate.Best },
		"all in one": func(p *plan.LoadPlan) {
			p.Loads[0].Panels = append(p.Loads[0].Panels, p.Loads[1].Panels...)
			p.Loads = p.Loads[:1]
		},
	} {
		p, err := plan.Loads(job, nil)
		if err != nil || len(p.Loads) != 2 {
			t.Fatalf("%d loads, %v; want 2", len(p.Loads), err)
		}
		forge(&p)
		if plan.CheckLoads(job, p) == nil {
			t.Errorf("%s: passed", name)
		}
	}
}

func TestCheckClock_refusesForgeries(t *testing.T) {
	min := unit.Minutes
	load := plan.Turn{LayUp: min(20), Press: unit.Around(min(60), min(60), min(80)), Closed: min(30)}
	job := plan.ClockJob{Loads: []plan.Turn{load, load, load}, Presses: 2, Unload: min(10), Start: min(420),
		Hours: []plan.Shift{{From: min(420), To: min(720)}}, Overnight: true}
	for name, forge := range map[string]func(*plan.ClockPlan){
		"crew twice":    func(p *plan.ClockPlan) { p.Stages[1].LayUp -= min(5); p.Stages[1].LaidUp -= min(5) },
		"before start":  func(p *plan.ClockPlan) { p.Stages[0].LayUp -= min(5) },
		"short lay-up":  func(p *plan.ClockPlan) { p.Stages[0].LaidUp -= min(1) },
		"short press":   func(p *plan.ClockPlan) { p.Stages[0].Due -= min(1) },
		"out too early": func(p *plan.ClockPlan) { p.Stages[2].Unloading -= min(5); p.Stages[2].Out -= min(5) },
		"late as mid":   func(p *plan.ClockPlan) { p.Late = p.Stages },
		"same press":    func(p *plan.ClockPlan) { p.Stages[1].Press = p.Stages[0].Press },
		"no such press": func(p *plan.ClockPlan) { p.Stages[1].Press = 2 },
		"load twice":    func(p *plan.ClockPlan) { p.Stages[1].Load = p.Stages[0].Load },
		"one missing":   func(p *plan.ClockPlan) { p.Stages = p.Stages[:2] },
		"finish":        func(p *plan.ClockPlan) { p.Finish -= min(1) },
		"bound":         func(p *plan.ClockPlan) { p.Certificate.Bound += min(1) },
		"out of hours": func(p *plan.ClockPlan) {
			last := &p.Stages[len(p.Stages)-1]
			last.Unloading, last.Out = min(715), min(725)
			p.Finish, p.Certificate.Finish = min(725), min(725)
		},
	} {
		p, err := plan.Clock(job, nil)
		if err != nil {
			t.Fatal(err)
		}
		forge(&p)
		if plan.CheckClock(job, p) == nil {
			t.Errorf("%s: passed", name)
		}
	}
	job.Loads[2].Closed = min(10) // shorter than any wait
	p, err := plan.Clock(job, nil)
	if err != nil {
		t.Fatal(err)
	}
	p.Stages[2].LayUp -= min(5)
	if plan.CheckClock(job, p) == nil {
		t.Error("glue waits: passed")
	}
}
