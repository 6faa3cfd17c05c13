package engine

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// clockTime returns a clock time as said, since midnight.
func (b *builder) clockTime(f unit.Field) (unit.Time, bool, error) {
	w := b.word(f)
	if w == "" {
		return 0, false, nil
	}
	t, ok := clockTimeOf(w)
	if !ok {
		return 0, false, fmt.Errorf("%s is %q, want a clock time like 07:30", f, w)
	}
	return t, true, nil
}

// clockTimeOf reads "07:30" as a time since midnight.
func clockTimeOf(w string) (unit.Time, bool) {
	h, m, _ := strings.Cut(w, ":")
	hours, errH := strconv.Atoi(h)
	minutes, errM := strconv.Atoi(m)
	ok := errH == nil && errM == nil && hours >= 0 && hours <= 24 && minutes >= 0 && minutes <= 59
	return unit.Minutes(float64(hours*60 + minutes)), ok
}

// clockWord returns a time since midnight as a clock shows it, to the minute
// that follows.
func clockWord(t unit.Time) string {
	minutes := wholeMinutes(t) % (24 * 60)
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}

func wholeMinutes(t unit.Time) int { return int(math.Ceil(t.Minutes() - 1e-6)) }

// setClock sets the loads on the clock, from the start said, or the latest one
// with which the deadline holds, or from nought.
func (s *scheduling) setClock(b *builder) error {
	if len(s.packed.Loads) > plan.MaxLoads {
		b.advise(ReasonTooManyLoads, unit.Facts{unit.LoadsNeeded: unit.Number(len(s.packed.Loads))})
		return nil
	}
	s.clock.Loads = nil
	for _, l := range s.packed.Loads {
		s.clock.Loads = append(s.clock.Loads, s.turnOf(s.layupOfLoad(l)))
	}
	var err error
	if s.set, err = plan.Clock(s.clock, watched[unit.Time](b)); err != nil {
		if s.judgeNoShift(b, err) {
			return nil
		}
		return underField(err, scheduleFields)
	}
	d := s.set.DeadlineStanding
	if s.timed || d == nil {
		return nil
	}
	s.timed = true
	s.clock.Start = d.LatestStart // midnight where none holds
	b.assume(unit.StartTime, unit.Word(clockWord(s.clock.Start)))
	if s.clock.Start > 0 {
		if s.set, err = plan.Clock(s.clock, watched[unit.Time](b)); err != nil {
			return underField(err, scheduleFields)
		}
	}
	return nil
}

// day returns the plan load by load, in the order of lay-ups.
func (s *scheduling) day() *Day {
	d := &Day{Bed: s.job.Bed, Sizes: s.sizes, Presses: s.clock.Presses, Timed: s.timed, Deadline: s.clock.Deadline}
	if len(s.set.Stages) == 0 {
		for _, l := range s.packed.Loads {
			d.Loads = append(d.Loads, DayLoad{Panels: l.Panels})
		}
		return d
	}
	late := map[int]plan.Stage{}
	for _, st := range s.set.Late {
		late[st.Load] = st
	}
	for _, st := range s.set.Stages {
		d.Loads = append(d.Loads, DayLoad{Panels: s.packed.Loads[st.Load].Panels, Stage: st, Late: late[st.Load]})
	}
	return d
}

// give records the loads and their times.
func (s *scheduling) give(b *builder, most int) {
	b.a.Day = s.day()
	give(b, unit.LoadsNeeded, unit.Exactly(float64(len(s.packed.Loads))))
	give(b, unit.PanelsPerLoad, unit.Exactly(float64(s.perLoad(most))))
	var panels unit.Numbers
	for _, l := range b.a.Day.Loads {
		panels = append(panels, float64(len(l.Panels)))
	}
	b.giveValue(unit.LoadPanels, panels)
	if s.ofLoad == 0 {
		give(b, unit.LayupLoad, s.longestLayup())
	}
	b.work(unit.LoadsNeeded, unit.Exactly(float64(len(s.packed.Loads))), "rectangles on beds, 25 mm apart, in layers up to the opening",
		"maximal rectangles (from memory), with a bound on the fewest loads (derived)", Computed, func() string {
			c := s.packed.Certificate
			return fmt.Sprintf("%d layers, at most %d panels a load; no fewer than %d loads, %d by area alone", s.packed.Layers, s.perLoad(most), c.Bound, c.AreaBound)
		})
	if len(s.set.Stages) == 0 {
		return
	}
	whole := unit.Around(math.Inf(-1), (s.set.Finish - s.set.Stages[0].LayUp).Seconds(), (s.set.LateEnd - s.set.Stages[0].LayUp).Seconds())
	give(b, unit.WholeJob, whole) // no low end: the early end of the press time is not planned for
	whole.Low = whole.Mid
	b.work(unit.WholeJob, whole, "one crew, one thing at a time; a load goes in when it is laid up and a press is empty, comes out when it is due",
		"search of the crew's orders of work, with a bound on the earliest end (derived)", Computed, func() string {
			return fmt.Sprintf("%d loads, %d presses, unloading %s; no order ends within %s", len(s.set.Stages), s.clock.Presses,
				say(unit.Unload, s.clock.Unload.Seconds()), say(unit.WholeJob, (s.set.Certificate.Bound-s.set.Stages[0].LayUp).Seconds()))
		})
	s.giveTimes(b)
}

// giveTimes records clock times by load; without a start there are none.
func (s *scheduling) giveTimes(b *builder) {
	if !s.timed {
		b.lack(unit.FinishTimes, unit.StartTime)
		return
	}
	var starts, shuts, outs, late unit.Words
	var days, presses unit.Numbers
	for _, l := range b.a.Day.Loads {
		starts = append(starts, clockWord(l.Stage.LayUp))
		shuts = append(shuts, clockWord(l.Stage.Shut))
		outs = append(outs, clockWord(l.Stage.Out))
		late = append(late, clockWord(l.Late.Out))
		days = append(days, math.Floor(float64(wholeMinutes(l.Stage.Out))/(24*60)))
		presses = append(presses, float64(l.Stage.Press+1))
	}
	b.giveValue(unit.LayupStarts, starts)
	b.giveValue(unit.PressShuts, shuts)
	b.giveValue(unit.FinishTimes, outs)
	b.giveValue(unit.FinishLate, late)
	b.giveValue(unit.DaysLater, days)
	b.giveValue(unit.LoadPresses, presses)
}

// longestLayup returns the lay-up of the load that takes longest, in s.
func (s *scheduling) longestLayup() unit.Range[float64] {
	longest := 0.0
	for _, l := range s.packed.Loads {
		longest = math.Max(longest, s.layupOfLoad(l))
	}
	return unit.Around(longest-s.pump.Mid+s.pump.Low, longest, longest-s.pump.Mid+s.pump.High)
}
