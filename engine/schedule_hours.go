package engine

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// readHours reads the crew's hours, and whether a press may hold a load over
// night. Work begins with the first shift where no start is said.
func (s *scheduling) readHours(b *builder) error {
	s.cleared = b.word(unit.Overnight) == "no"
	s.hours = b.word(unit.WorkHours)
	if s.hours == "" {
		return nil
	}
	var err error
	if s.clock.Hours, err = shiftsOf(s.hours); err != nil {
		return err
	}
	s.clock.Overnight = !s.cleared
	if !s.timed {
		s.timed, s.clock.Start = true, s.clock.Hours[0].From
		b.assume(unit.StartTime, unit.Word(clockWord(s.clock.Start)))
	}
	return nil
}

// shiftsOf reads "08:00-12:00, 13:00-17:00".
func shiftsOf(hours string) ([]plan.Shift, error) {
	var out []plan.Shift
	before := unit.Time(0)
	for _, shift := range strings.Split(hours, ", ") {
		w, x, _ := strings.Cut(shift, "-")
		from, okF := clockTimeOf(w)
		to, okT := clockTimeOf(x)
		if !okF || !okT || from < before || to <= from {
			return nil, fmt.Errorf("%s is %q, want shifts of one day in order, like 08:00-12:00, 13:00-17:00", unit.WorkHours, hours)
		}
		out = append(out, plan.Shift{From: from, To: to})
		before = to
	}
	return out, nil
}

// judgeNoShift judges loads that no order of work gets done within the hours; it
// reports whether that is what went wrong.
func (s *scheduling) judgeNoShift(b *builder, err error) bool {
	var bad *unit.RangeError
	if s.hours == "" || !errors.As(err, &bad) {
		return false
	}
	switch bad.What {
	case "press time":
		b.judge("overnight", Stop, ReasonNightNeeded, unit.Facts{
			unit.WorkHours: unit.Word(s.hours), unit.PressTime: unit.PressTime.Number(s.turn.Press.Mid.Seconds()),
		})
	case "lay-up or unloading":
		b.judge("hours", Stop, ReasonShiftTooShort, unit.Facts{
			unit.WorkHours: unit.Word(s.hours), unit.LayupLoad: unit.LayupLoad.Number(s.longestLayup().Mid),
		})
	default:
		return false
	}
	return true
}

// overnight returns how many loads stay in a press until another day.
func overnight(ss []plan.Stage) (n int) {
	for _, st := range ss {
		if math.Floor(float64(st.Shut/wholeDay)) != math.Floor(float64(st.Unloading/wholeDay)) {
			n++
		}
	}
	return n
}

// judgeNight judges the wish that nothing stays in over night. Without hours
// only a day that is over before midnight keeps it.
func (s *scheduling) judgeNight(b *builder) {
	if !s.cleared || len(s.set.Stages) == 0 {
		return
	}
	if s.hours == "" && (!s.timed || s.set.Finish > wholeDay) {
		b.judge("overnight", Care, ReasonNightUnsure, nil)
	} else if late := overnight(s.set.Late); late > 0 {
		b.judge("overnight", Care, ReasonNightIfLate, unit.Facts{unit.StayNight: unit.Number(late)})
	}
}

// adviseHours tells that the hours and the wish for empty presses over night
// were held to.
func (s *scheduling) adviseHours(b *builder) {
	stay := overnight(s.set.Stages)
	figures := s.clockFigures()
	figures[unit.WorkHours], figures[unit.StayNight] = unit.Word(s.hours), unit.Number(stay)
	switch {
	case s.hours == "":
		if s.cleared && s.timed && s.set.LateEnd <= wholeDay {
			b.advise(ReasonNightCleared, figures)
		}
	case s.cleared:
		b.advise(ReasonHoursCleared, figures)
	case stay > 0:
		b.advise(ReasonHoursOvernight, figures)
		b.warn(CautionPowerCut)
	default:
		b.advise(ReasonHoursHeld, figures)
	}
}
