package engine

import (
	"slices"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// judge judges the day: the deadline, and how good the plan is proven to be.
func (s *scheduling) judge(b *builder, most int) {
	s.judgeDeadline(b)
	s.judgeNight(b)
	c := s.packed.Certificate
	reason := ReasonLoadsNear
	if c.Best {
		reason = ReasonLoadsFewest
	}
	give(b, unit.LoadsLeast, unit.Exactly(float64(c.Bound)))
	b.judge("loads", None, reason, unit.Facts{
		unit.LoadsNeeded: unit.Number(c.Loads), unit.LoadsLeast: unit.Number(c.Bound), unit.LoadsByArea: unit.Number(c.AreaBound),
		unit.PanelsPerLoad: unit.Number(s.perLoad(most)),
	})
	if len(s.set.Stages) == 0 {
		return
	}
	clock := s.clockFigures()
	switch {
	case !s.timed:
		b.advise(ReasonStartUnsaid, unit.Facts{unit.WholeJob: b.a.Values[unit.WholeJob]})
	case s.set.Finish > wholeDay && s.hours == "":
		b.advise(ReasonPastMidnight, clock)
		b.warn(CautionPowerCut)
	}
	s.adviseHours(b)
	if s.timed && !s.set.Certificate.Best {
		b.advise(ReasonClockNear, clock)
	}
	if b.stopped && !(s.set.Certificate.Best && s.packed.Certificate.Best) {
		b.advise(ReasonStopped, nil)
	}
}

func (s *scheduling) clockFigures() unit.Facts {
	fs := unit.Facts{
		unit.LastOut: unit.Number(s.set.Finish), unit.LastOutLate: unit.Number(s.set.LateEnd),
		unit.LastOutLeast: unit.Number(s.set.Certificate.Bound), unit.LoadsNeeded: unit.Number(len(s.set.Stages)),
		unit.OutBy: unit.Number(s.clock.Deadline),
	}
	if d := s.set.DeadlineStanding; d != nil {
		fs[unit.Late] = unit.Number(d.Over)
		fs[unit.InTime] = unit.Number(d.InTime)
		if d.Holds {
			fs[unit.InTime] = unit.Number(d.LateTime)
		}
	}
	return fs
}

// judgeDeadline judges whether all is out in time, and says what gives where it
// is not.
func (s *scheduling) judgeDeadline(b *builder) {
	d := s.set.DeadlineStanding
	if d == nil {
		return
	}
	figures := s.clockFigures()
	if d.LatestStart > 0 {
		b.giveValue(unit.LatestStart, unit.Word(clockWord(d.LatestStart)))
	}
	switch {
	case d.HoldsLate:
		b.judge("deadline", Good, ReasonDeadlineHolds, figures)
	case d.Holds:
		b.judge("deadline", Care, ReasonDeadlineTight, figures)
	default:
		b.judge("deadline", Stop, ReasonDeadlineMissed, figures)
		s.adviseRelief(b)
	}
}

// adviseRelief tells what would hold a deadline that is missed.
func (s *scheduling) adviseRelief(b *builder) {
	d := s.set.DeadlineStanding
	if d.LatestStart > 0 && d.LatestStart < s.clock.Start {
		b.advise(ReasonStartBy, unit.Facts{unit.LatestStart: unit.Number(d.LatestStart), unit.OutBy: unit.Number(s.clock.Deadline)})
	}
	if d.Presses > s.clock.Presses {
		b.advise(ReasonMorePresses, unit.Facts{unit.PressesNeed: unit.Number(d.Presses), unit.OutBy: unit.Number(s.clock.Deadline)})
	}
	if d.LatestStart == 0 && d.Presses == 0 {
		b.advise(ReasonNothingGives, unit.Facts{unit.OutBy: unit.Number(s.clock.Deadline)})
	}
}

// adviseGlueLimit tells where the glue's closed time and not the bed limits a
// load.
func (s *scheduling) adviseGlueLimit(b *builder, most int) {
	per := s.perLoad(most)
	if most == 0 || per >= most {
		s.adviseButting(b, most)
		return
	}
	b.advise(ReasonGlueLimitsLoad, unit.Facts{
		unit.PanelsPerLoad: unit.Number(per), unit.BedHolds: unit.Number(most), unit.ClosedTime: figure(unit.ClosedTime, s.closed),
	})
}

// adviseButting tells where the room kept between panels costs one in a load.
func (s *scheduling) adviseButting(b *builder, most int) {
	butted, err := s.capacity(0)
	if s.job.PanelsPerLoad > 0 {
		butted = min(butted, s.job.PanelsPerLoad)
	}
	if err == nil && most > 0 && butted > most {
		b.advise(ReasonRoomBetween, unit.Facts{unit.BedHolds: unit.Number(butted), unit.PanelsPerLoad: unit.Number(most)})
	}
}

// judgeGluing judges lay-up, warmth, press time and wood of a day's loads.
func (s *scheduling) judgeGluing(b *builder, most int) error {
	s.judgeLayup(b)
	s.adviseGlueLimit(b, most)
	if b.q.About == Load { // its part on the glue judges the rest
		return nil
	}
	c := b.glue()
	lowest := lowestTemperature(b, c)
	give(b, unit.MinTemp, unit.Exactly(lowest))
	judgeTemperature(b, c, lowest)
	needed, err := glueTimes(b, c)
	if err != nil {
		return err
	}
	judgePressTime(b, needed.press)
	if err := judgeMoisture(b); err != nil {
		return err
	}
	warnOfGlue(b, c)
	return nil
}

// judgeLayup judges the longest lay-up, and tells with how few panels it would be
// well within the closed time.
func (s *scheduling) judgeLayup(b *builder) {
	if s.ofLoad > 0 {
		judgeAgainstClosed(b, unit.Exactly(s.ofLoad), s.closed)
		return
	}
	longest := s.longestLayup()
	judgeAgainstClosed(b, longest, s.closed)
	limit := layupMargin * s.closed.Low
	if longest.High <= limit {
		return
	}
	n := s.panelsWithin(limit-s.pump.High, plan.MaxPanels)
	if float64(n)*slices.Max(s.layups)+s.pump.High <= limit {
		b.advise(ReasonSmallerLoads, unit.Facts{unit.Comfortable: unit.Number(n)})
	}
}
