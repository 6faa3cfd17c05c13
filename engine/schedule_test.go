package engine_test

import (
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// epoxyDay is a day with round numbers: three panels of 600 × 1200 mm lie turned
// across a bed of 1220 × 2440 mm (3 × 600 + 2 × 25 = 1850 mm along it; a fourth
// would take 2475), each laid up in 60 s, with 5 min to pull down.
func epoxyDay() unit.Facts {
	return unit.Facts{
		unit.PanelCount: unit.Number(14), unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(1200),
		unit.GlueClass: unit.Word("epoxy"), unit.ShopTemp: unit.Number(20), unit.PressTime: unit.Number(60),
		unit.LayupPanel: unit.Number(60), unit.StartTime: unit.Word("08:00"),
	}
}

func with(said unit.Facts, f unit.Field, v unit.Value) unit.Facts {
	said[f] = v
	return said
}

// By hand: the load of two panels is the quickest to lay up and goes first, shut
// at 08:07, due at 09:07 and out at 09:17. Each further one is laid up while the
// press is shut (epoxy waits), shut as soon as it is empty, and out 60 + 10 min
// later.
func TestSchedule_onePress(t *testing.T) {
	a := mustAnswer(t, engine.Schedule, epoxyDay())
	wantTriple(t, a, unit.LoadsNeeded, 5, 5, 5, 0)
	wantTriple(t, a, unit.PanelsPerLoad, 3, 3, 3, 0)
	outs, _ := a.Values[unit.FinishTimes].(unit.Words)
	if want := []string{"09:17", "10:27", "11:37", "12:47", "13:57"}; !slices.Equal(outs, want) {
		t.Errorf("out at %v, want %v", outs, want)
	}
	panels, _ := a.Values[unit.LoadPanels].(unit.Numbers)
	sum := 0.0
	for _, n := range panels {
		sum += n
	}
	if len(panels) != 5 || sum != 14 || slices.Max(panels) != 3 {
		t.Errorf("loads of %v panels, want 14 in 5 of at most 3", panels)
	}
	if a.Assumed[unit.PressCount] != unit.Number(1) || a.Assumed[unit.Unload] != unit.Number(10) || a.Assumed[unit.BedWidth] != unit.Number(1220) {
		t.Errorf("assumed %v, want one press, 10 min to unload and the usual bed", a.Assumed)
	}
	if a.Day == nil || len(a.Day.Loads) != 5 || !a.Day.Timed {
		t.Errorf("day is %+v, want five loads on the clock", a.Day)
	}
}

// Two presses: the first takes three loads from 08:07 on, the second two, and the
// crew is free whenever a press is due: 08:07 + 3 × (60 + 10) min = 11:37.
func TestSchedule_twoPresses(t *testing.T) {
	a := mustAnswer(t, engine.Schedule, with(epoxyDay(), unit.PressCount, unit.Number(2)))
	outs, _ := a.Values[unit.FinishTimes].(unit.Words)
	if len(outs) != 5 || slices.Max(outs) != "11:37" {
		t.Errorf("out at %v, want five, the last at 11:37", outs)
	}
}

// A closed time of 10 min at 20 °C, 5 of which are the pump-down, leaves time to
// lay up two panels at 140 s though the bed takes three: seven loads.
func TestSchedule_glueLimitsLoad(t *testing.T) {
	said := with(with(epoxyDay(), unit.LabelClosed, unit.Number(10)), unit.LayupPanel, unit.Number(140))
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.PanelsPerLoad, 2, 2, 2, 0)
	wantTriple(t, a, unit.LoadsNeeded, 7, 7, 7, 0)
	wantCheck(t, a, "lay-up", engine.Care, engine.ReasonLayupTight) // 580 s of 600, more than 0.7 of it
	i := slices.IndexFunc(a.Advice, func(f engine.Finding) bool { return f.Reason == engine.ReasonGlueLimitsLoad })
	if i < 0 || a.Advice[i].Figures[unit.BedHolds] != unit.Number(3) {
		t.Errorf("advice is %v, want that the bed holds 3", a.Advice)
	}
}

// A single panel of 10 min and 5 min of pump-down are over 10 min: planned, with
// a stop.
func TestSchedule_layupTooLong(t *testing.T) {
	said := with(with(epoxyDay(), unit.LabelClosed, unit.Number(10)), unit.LayupPanel, unit.Number(600))
	a := mustAnswer(t, engine.Schedule, said)
	wantCheck(t, a, "lay-up", engine.Stop, engine.ReasonLayupTooLong)
	wantTriple(t, a, unit.PanelsPerLoad, 1, 1, 1, 0)
}

// The lay-up of a load as said stands for every load, and nothing is added.
// 25 min are 08:25, then 60 + 10 min: 09:35.
func TestSchedule_layupOfLoadSaid(t *testing.T) {
	a := mustAnswer(t, engine.Schedule, with(with(epoxyDay(), unit.LayupLoad, unit.Number(1500)), unit.PanelCount, unit.Number(3)))
	outs, _ := a.Values[unit.FinishTimes].(unit.Words)
	if !slices.Equal(outs, []string{"09:35"}) {
		t.Errorf("out at %v, want 09:35", outs)
	}
}

// The day ends at 13:57, 5 h 57 min after its start. By 13:00 four of five loads
// are out; a start at 07:00 holds (07:03 rounded to five minutes), so do two
// presses.
func TestSchedule_deadlineMissed(t *testing.T) {
	a := mustAnswer(t, engine.Schedule, with(epoxyDay(), unit.Deadline, unit.Word("13:00")))
	wantCheck(t, a, "deadline", engine.Stop, engine.ReasonDeadlineMissed)
	if a.Values[unit.LatestStart] != unit.Word("07:00") {
		t.Errorf("latest start is %v, want 07:00", a.Values[unit.LatestStart])
	}
	for _, c := range a.Checks {
		if c.Reason == engine.ReasonDeadlineMissed && (c.Figures[unit.InTime] != unit.Number(4) || c.Figures[unit.Late] != unit.Number(57*60)) {
			t.Errorf("figures are %v, want 4 loads in time and 57 min over", c.Figures)
		}
	}
	if !slices.ContainsFunc(a.Advice, func(f engine.Finding) bool {
		return f.Reason == engine.ReasonMorePresses && f.Figures[unit.PressesNeed] == unit.Number(2)
	}) {
		t.Errorf("advice is %v, want two presses", a.Advice)
	}
}

// A press time from a label stands by itself, that of the table runs: epoxy takes
// 8, 16 or 48 h at 20 °C, so that a deadline at the middle is not sure.
func TestSchedule_deadlineTight(t *testing.T) {
	said := with(with(epoxyDay(), unit.Deadline, unit.Word("13:57")), unit.PanelCount, unit.Number(14))
	a := mustAnswer(t, engine.Schedule, said)
	wantCheck(t, a, "deadline", engine.Good, engine.ReasonDeadlineHolds)

	delete(said, unit.PressTime)
	said[unit.PanelCount] = unit.Number(3)
	said[unit.Deadline] = unit.Word("06:00") // the next morning: 08:08, 16 h and 10 min make 00:18
	a = mustAnswer(t, engine.Schedule, said)
	wantCheck(t, a, "deadline", engine.Care, engine.ReasonDeadlineTight)
}

// Out by 14:00 without a start: 5 h 57 min before it is 08:03, to five minutes
// 08:00.
func TestSchedule_latestStart(t *testing.T) {
	said := with(epoxyDay(), unit.Deadline, unit.Word("14:00"))
	delete(said, unit.StartTime)
	a := mustAnswer(t, engine.Schedule, said)
	outs, _ := a.Values[unit.FinishTimes].(unit.Words)
	if a.Assumed[unit.StartTime] != unit.Word("08:00") || len(outs) != 5 || outs[4] != "13:57" {
		t.Errorf("start %v, out at %v; want 08:00 and the last at 13:57", a.Assumed[unit.StartTime], outs)
	}
}

// Without a start there are loads but no clock: 5 h 57 min from the first lay-up.
func TestSchedule_noStart(t *testing.T) {
	said := epoxyDay()
	delete(said, unit.StartTime)
	a := mustAnswer(t, engine.Schedule, said)
	whole, _ := a.Values[unit.WholeJob].(unit.Triple)
	if a.Values.Has(unit.FinishTimes) || len(a.Needs) > 0 || whole.Mid == nil || *whole.Mid != (5*60+57)*60 {
		t.Errorf("finish %v, needs %v, whole job %v; want none, none and 21420 s", a.Values[unit.FinishTimes], a.Needs, whole.Mid)
	}
	b, err := engine.Compute(engine.Question{About: engine.Schedule, Said: said, For: []unit.Field{unit.FinishTimes}})
	if err != nil || !slices.Contains(b.Needs, unit.StartTime) {
		t.Errorf("asked for the finish needs %v (%v), want the start", b.Needs, err)
	}
}

// No count, but a start and a deadline: by 13:00 four loads of three are out
// (12:48, or sooner), and no fifth, however small.
func TestSchedule_asManyAsTheDayAllows(t *testing.T) {
	said := with(epoxyDay(), unit.Deadline, unit.Word("13:00"))
	delete(said, unit.PanelCount)
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.PanelCount, 12, 12, 12, 0)
	wantTriple(t, a, unit.LoadsNeeded, 4, 4, 4, 0)
}

// Only the size: what one load holds.
func TestSchedule_oneLoadHolds(t *testing.T) {
	said := unit.Facts{unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(1200), unit.GlueClass: unit.Word("epoxy")}
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.PanelsPerLoad, 3, 3, 3, 0)
	if len(a.Needs) > 0 {
		t.Errorf("needs %v, want none", a.Needs)
	}
	a = mustAnswer(t, engine.Schedule, with(said, unit.StartTime, unit.Word("07:00")))
	if !slices.Equal(a.Needs, []unit.Field{unit.PanelCount}) {
		t.Errorf("needs %v, want the count", a.Needs)
	}
}

// Under an opening of 120 mm go two layers of 19 + 30 + 0.15 mm: six panels a
// load, three loads.
func TestSchedule_layers(t *testing.T) {
	said := with(with(epoxyDay(), unit.StripThickness, unit.Number(30)), unit.Opening, unit.Number(120))
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.PanelsPerLoad, 6, 6, 6, 0)
	wantTriple(t, a, unit.LoadsNeeded, 3, 3, 3, 0)

	a = mustAnswer(t, engine.Schedule, with(said, unit.Opening, unit.Number(45)))
	wantCheck(t, a, "height", engine.Stop, engine.ReasonTooHigh)
}

func TestSchedule_offTheBed(t *testing.T) {
	a := mustAnswer(t, engine.Schedule, with(epoxyDay(), unit.PanelWidth, unit.Number(1300)))
	wantCheck(t, a, "bed", "", "") // 1200 lie across, 1300 along
	wantTriple(t, a, unit.PanelsPerLoad, 1, 1, 1, 0)
	a = mustAnswer(t, engine.Schedule, with(epoxyDay(), unit.PanelLength, unit.Number(2500)))
	wantCheck(t, a, "bed", engine.Stop, engine.ReasonPanelOffBed)
}

// Panels of 400 and 800 mm, both 1200 long: 400 + 25 + 800 = 1225 mm is too wide
// side by side, but turned they lie 400 + 25 + 800 = 1225 of 2440 mm along the bed,
// and one more of 800 mm besides (2050). The areas alone say the same.
func TestSchedule_severalWidths(t *testing.T) {
	said := with(epoxyDay(), unit.Targets, pilesOf(1, 400, 2, 800))
	delete(said, unit.PanelCount)
	delete(said, unit.PanelWidth)
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.LoadsNeeded, 1, 1, 1, 0)
}

// Two panels of 610 × 1500 mm go side by side on 1220 mm only if they touch: with
// 25 mm between them a load holds one, and that is told.
func TestSchedule_roomBetween(t *testing.T) {
	said := with(with(epoxyDay(), unit.PanelWidth, unit.Number(610)), unit.PanelLength, unit.Number(1500))
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.PanelsPerLoad, 1, 1, 1, 0)
	i := slices.IndexFunc(a.Advice, func(f engine.Finding) bool { return f.Reason == engine.ReasonRoomBetween })
	if i < 0 || a.Advice[i].Figures[unit.BedHolds] != unit.Number(2) {
		t.Errorf("advice is %v, want two in a load without room", a.Advice)
	}
	said = with(epoxyDay(), unit.PanelWidth, unit.Number(700)) // 3 × 700 = 2100 of 2440 mm, room or not
	if hasAdvice(mustAnswer(t, engine.Schedule, said), engine.ReasonRoomBetween) {
		t.Error("told of room where butting gains nothing")
	}
}

func TestSchedule_needsSize(t *testing.T) {
	a := mustAnswer(t, engine.Schedule, unit.Facts{unit.PanelCount: unit.Number(9), unit.StartTime: unit.Word("07:00")})
	if !slices.Equal(a.Needs, []unit.Field{unit.PanelWidth, unit.PanelLength}) {
		t.Errorf("needs %v, want width and length", a.Needs)
	}
}

// A load described with a start or several presses is set on the clock too, and
// its lay-up is judged load by load.
func TestLoad_setOnTheClock(t *testing.T) {
	said := with(with(epoxyDay(), unit.StripWidth, unit.Number(60)), unit.StripThickness, unit.Number(20))
	a := mustAnswer(t, engine.Load, said)
	outs, _ := a.Values[unit.FinishTimes].(unit.Words)
	if len(outs) != 5 || outs[4] != "13:57" || len(a.Needs) > 0 {
		t.Errorf("out at %v, needs %v; want five, the last at 13:57, and nothing", outs, a.Needs)
	}
	wantCheck(t, a, "lay-up", engine.Good, engine.ReasonLayupWithin) // 480 s of 45 min
}

// A clock time that is none is refused.
func TestSchedule_refusesClock(t *testing.T) {
	_, err := engine.Compute(engine.Question{About: engine.Schedule, Said: with(epoxyDay(), unit.StartTime, unit.Word("half seven"))})
	if err == nil {
		t.Error("half seven passed")
	}
}

// Two sizes in one day: five of 600 × 1200 mm, three to a bed of 2440 mm, and
// four of 1200 × 2400 mm, which take a bed each: six loads.
func TestSchedule_mixedSizes(t *testing.T) {
	said := epoxyDay()
	for _, f := range []unit.Field{unit.PanelCount, unit.PanelWidth, unit.PanelLength} {
		delete(said, f)
	}
	said[unit.Targets] = unit.Piles{{Width: 600, Length: 1200, Count: 5}, {Width: 1200, Length: 2400, Count: 4}}
	a := mustAnswer(t, engine.Schedule, said)
	wantTriple(t, a, unit.LoadsNeeded, 6, 6, 6, 0)
	if len(a.Day.Sizes) != 2 || a.Day.Sizes[0].Length == a.Day.Sizes[1].Length {
		t.Errorf("sizes %v, want two with lengths of their own", a.Day.Sizes)
	}
	said[unit.Targets] = unit.Piles{{Width: 600, Length: 1200, Count: 5}, {Width: 1200, Count: 4}}
	if a := mustAnswer(t, engine.Schedule, said); !slices.Equal(a.Needs, []unit.Field{unit.PanelLength}) {
		t.Errorf("needs %v, want the length", a.Needs)
	}
}
