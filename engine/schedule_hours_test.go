package engine_test

import (
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: each load is 60 min in the press and 10 to unload, and epoxy waits, so
// 08:08 + 70, 140 and 210 min: three loads are out before noon (11:38). The
// fourth, in at 11:38, waits for the morrow, when the last two panels are laid up
// until 08:07 and change places with it until 08:17.
func TestSchedule_hours(t *testing.T) {
	said := epoxyDay()
	delete(said, unit.StartTime)
	said[unit.WorkHours] = unit.Word("08:00-12:00")
	a := mustAnswer(t, engine.Schedule, said)
	outs, _ := a.Values[unit.FinishTimes].(unit.Words)
	days, _ := a.Values[unit.DaysLater].(unit.Numbers)
	if want := []string{"09:18", "10:28", "11:38", "08:17", "09:27"}; !slices.Equal(outs, want) || !slices.Equal(days, []float64{0, 0, 0, 1, 1}) {
		t.Errorf("out at %v on days %v, want %v, the last two on the next", outs, days, want)
	}
	if a.Assumed[unit.StartTime] != unit.Word("08:00") {
		t.Errorf("assumed %v, want the start of work", a.Assumed)
	}
	wantAdvice(t, a, engine.ReasonHoursOvernight, unit.StayNight, unit.Number(1))

	// With the press empty over night both are laid up the next morning, the two
	// panels first, until 08:07.
	a = mustAnswer(t, engine.Schedule, with(said, unit.Overnight, unit.Word("no")))
	outs, _ = a.Values[unit.FinishTimes].(unit.Words)
	if want := []string{"09:18", "10:28", "11:38", "09:17", "10:27"}; !slices.Equal(outs, want) {
		t.Errorf("out at %v, want %v", outs, want)
	}
	wantAdvice(t, a, engine.ReasonHoursCleared, unit.WorkHours, unit.Word("08:00-12:00"))
}

func TestSchedule_nightsThatCannotBe(t *testing.T) {
	said := epoxyDay()
	said[unit.WorkHours], said[unit.Overnight] = unit.Word("08:00-12:00"), unit.Word("no")
	a := mustAnswer(t, engine.Schedule, with(said, unit.PressTime, unit.Number(300)))
	wantCheck(t, a, "overnight", engine.Stop, engine.ReasonNightNeeded)

	said[unit.LayupLoad] = unit.Number(5 * 3600)
	a = mustAnswer(t, engine.Schedule, said)
	wantCheck(t, a, "hours", engine.Stop, engine.ReasonShiftTooShort)
}

// Without hours a day that ends before midnight keeps the presses empty over
// night; another cannot be told to.
func TestSchedule_nightsWithoutHours(t *testing.T) {
	said := with(epoxyDay(), unit.Overnight, unit.Word("no"))
	a := mustAnswer(t, engine.Schedule, said)
	wantAdvice(t, a, engine.ReasonNightCleared, unit.LoadsNeeded, unit.Number(5))
	a = mustAnswer(t, engine.Schedule, with(said, unit.StartTime, unit.Word("20:00")))
	wantCheck(t, a, "overnight", engine.Care, engine.ReasonNightUnsure)
}

func TestSchedule_hoursThatAreNone(t *testing.T) {
	for _, hours := range []string{"8 to 5", "17:00-08:00", "08:00-12:00, 11:00-13:00"} {
		if _, err := engine.Compute(engine.Question{About: engine.Schedule, Said: with(epoxyDay(), unit.WorkHours, unit.Word(hours))}); err == nil {
			t.Errorf("hours %q: no error", hours)
		}
	}
}

func wantAdvice(t *testing.T, a engine.Answer, r engine.Reason, f unit.Field, v unit.Value) {
	t.Helper()
	i := slices.IndexFunc(a.Advice, func(x engine.Finding) bool { return x.Reason == r })
	if i < 0 || a.Advice[i].Figures[f] != v {
		t.Errorf("advice is %v, want %s with %s %v", a.Advice, r, f, v)
	}
}
