package bot

import (
	"slices"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/plan"
	"presshand/engine/unit"
)

func exactly1(v float64) unit.Triple { return unit.TripleOf(unit.Exactly(v)) }

func TestClock_days(t *testing.T) {
	for seconds, want := range map[float64]string{
		7*3600 + 30*60:        "07:30",
		7*3600 + 30*60 + 1:    "07:31", // the minute that follows
		24 * 3600:             "00:00 the next day",
		2*24*3600 + 18*3600:   "18:00 on day 3",
		23*3600 + 59*60 + 0.5: "00:00 the next day",
	} {
		if got := clock(seconds); got != want {
			t.Errorf("%g s is %q, want %q", seconds, got, want)
		}
	}
}

func TestDayClock_namesTheDayOnce(t *testing.T) {
	in, today := dayClock(unit.Minutes(25*60), 0)
	out, _ := dayClock(unit.Minutes(26*60), today)
	if in != "day 2 01:00" || out != "02:00" {
		t.Errorf("%q and %q, want the day in the first only", in, out)
	}
}

// dayOf makes a day of loads with one panel each, half an hour apart.
func dayOf(loads, presses int) engine.Answer {
	d := &engine.Day{Sizes: []plan.Rect{{}}, Presses: presses, Timed: true}
	for i := range loads {
		at := func(m float64) unit.Time { return unit.Minutes(480 + 30*float64(i) + m) }
		st := plan.Stage{Load: i, Press: i % presses, LayUp: at(0), Shut: at(5), Out: at(60)}
		late := st
		late.Out = at(90)
		d.Loads = append(d.Loads, engine.DayLoad{Panels: make([]plan.Placed, 1), Stage: st, Late: late})
	}
	return engine.Answer{
		About: engine.Schedule, Verdict: engine.Good, Day: d,
		Values: unit.Facts{unit.LoadsNeeded: exactly1(float64(loads)), unit.LoadsLeast: exactly1(float64(loads))},
	}
}

func TestPlanHeadline_day(t *testing.T) {
	got := style{}.planHeadline(worked{answer: dayOf(2, 1)})
	if want := "2 panels in 2 loads (fewer cannot be had), the last out at 09:30 (at the latest 10:00)."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	due := dayOf(2, 1)
	due.Day.Deadline = unit.Minutes(600)
	if got := (style{}).planHeadline(worked{answer: due}); !strings.HasSuffix(got, "(at the latest 10:00), in time for 10:00.") {
		t.Errorf("%q does not say that it is in time", got)
	}
	a := dayOf(2, 1)
	a.Day.Timed, a.Values[unit.LoadsLeast] = false, exactly1(1)
	if got, want := (style{}).planHeadline(worked{answer: a}), "2 panels in 2 loads (no fewer than 1 can be had)."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A few loads have a line each, more a line for each press.
func TestPlanLines_day(t *testing.T) {
	few := style{}.planLines(dayOf(2, 2))
	if want := []string{
		"Load 1: 1 panel in press 1, lay up 08:00, shut 08:05, out 09:00 (late 09:30)",
		"Load 2: 1 panel in press 2, lay up 08:30, shut 08:35, out 09:30 (late 10:00)",
	}; !slices.Equal(few, want) {
		t.Errorf("%q, want %q", few, want)
	}
	many := style{}.planLines(dayOf(16, 2))
	if len(many) != 2 || !strings.HasPrefix(many[1], "Press 2: load 2 (1) in 08:35, out 09:30; load 4 (1) in 09:35, out 10:30;") ||
		!strings.HasSuffix(many[1], "; … 2 more") {
		t.Errorf("%q, want two lines that end in two more loads", many)
	}
}

// Panels made alike share a line, and their widths are told where they differ.
func TestPlanLines_picks(t *testing.T) {
	a := engine.Answer{About: engine.Strips, Verdict: engine.Good, Values: unit.Facts{
		unit.Picks:       unit.Sets{{60, 60, 85}, {60, 85, 60}, {85, 85}},
		unit.PickTargets: unit.Numbers{200, 200, 160},
		unit.Over:        unit.Triples{exactly1(0), exactly1(0), exactly1(5)},
	}}
	got := style{metric: true}.planLines(a)
	if want := []string{
		"2 × 200 mm: 1 of 85 mm and 2 of 60 mm, nothing beyond the trim", "1 × 160 mm: 2 of 85 mm, 5 mm beyond the trim",
	}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := (style{metric: true}).planHeadline(worked{answer: a}), "3 panels, 5 mm beyond the trim on all of them together."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestPlanHeadline_onePick(t *testing.T) {
	a := engine.Answer{About: engine.Strips, Verdict: engine.Good, Values: unit.Facts{
		unit.Picks: unit.Sets{{70, 70}}, unit.PickTargets: unit.Numbers{152},
		unit.WidthSum: exactly1(140), unit.WedgeGap: exactly1(12),
	}}
	got := style{metric: true}.planHeadline(worked{answer: a})
	if want := "take 2 of 70 mm: 140 mm (5 1/2 in), which leaves 12 mm for the wedge."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
