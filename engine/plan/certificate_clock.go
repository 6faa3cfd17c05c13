package plan

import (
	"fmt"
	"math"
	"slices"

	"presshand/engine/unit"
)

// stretch is a piece of somebody's or something's time, in milliseconds.
type stretch struct {
	from, to int64
	load     int
}

func ms(t unit.Time) int64 { return int64(math.Round(float64(t) * 1000)) }

// CheckClock returns what is wrong with a plan for a job; nil where every load
// is laid up, pressed for its time and unloaded once, by one crew that does one
// thing at a time within its hours, no press and no bench holds two loads, no
// glue waits beyond its closed time, and the certificate agrees.
func CheckClock(job ClockJob, p ClockPlan) error {
	if err := checkStages(job, p.Stages, false); err != nil {
		return err
	}
	if err := checkStages(job, p.Late, true); err != nil {
		return fmt.Errorf("at the late end: %w", err)
	}
	var last, late unit.Time
	for i := range p.Stages {
		last, late = max(last, p.Stages[i].Out), max(late, p.Late[i].Out)
	}
	c := p.Certificate
	switch {
	case ms(p.Finish) != ms(last) || ms(c.Finish) != ms(last) || ms(p.LateEnd) != ms(late):
		return fmt.Errorf("the last load is out at %g s, late %g s; said to be %g s and %g s", last, late, p.Finish, p.LateEnd)
	case ms(c.Bound) > ms(c.Finish):
		return fmt.Errorf("finish at %g s is before its bound of %g s", c.Finish, c.Bound)
	case c.Best != (ms(c.Bound) == ms(c.Finish)):
		return fmt.Errorf("best is said to be %v at a finish of %g s and a bound of %g s", c.Best, c.Finish, c.Bound)
	}
	return nil
}

func checkStages(job ClockJob, ss []Stage, late bool) error {
	seen := map[int]bool{}
	var crew, bench []stretch
	presses := map[int][]stretch{}
	for _, s := range ss {
		if s.Load < 0 || s.Load >= len(job.Loads) || seen[s.Load] || s.Press < 0 || s.Press >= job.Presses {
			return fmt.Errorf("load %d in press %d: not there, or there twice", s.Load, s.Press)
		}
		seen[s.Load] = true
		if err := checkStage(job, s, late); err != nil {
			return fmt.Errorf("load %d: %w", s.Load, err)
		}
		crew = append(crew, stretch{ms(s.LayUp), ms(s.LaidUp), s.Load}, stretch{ms(s.Unloading), ms(s.Out), s.Load})
		bench = append(bench, stretch{ms(s.LayUp), ms(s.Shut), s.Load})
		presses[s.Press] = append(presses[s.Press], stretch{ms(s.Shut), ms(s.Out), s.Load})
	}
	if len(seen) != len(job.Loads) {
		return fmt.Errorf("%d of %d loads are planned", len(seen), len(job.Loads))
	}
	for _, c := range crew {
		if !inHours(job.Hours, c) {
			return fmt.Errorf("work on load %d is out of hours", c.load)
		}
	}
	for what, list := range map[string][]stretch{"the crew": crew, "the bench": bench} {
		if err := checkApart(what, list); err != nil {
			return err
		}
	}
	for p, list := range presses {
		if err := checkApart(fmt.Sprintf("press %d", p), list); err != nil {
			return err
		}
	}
	return nil
}

func checkStage(job ClockJob, s Stage, late bool) error {
	t := job.Loads[s.Load]
	press := t.Press.Mid
	if late {
		press = t.Press.High
	}
	const dayLong = 24 * 3600 * 1000
	closed := max(ms(t.Closed), ms(t.LayUp)+1000) // times are rounded up to whole seconds
	switch {
	case ms(s.LayUp) < ms(job.Start):
		return fmt.Errorf("starts before the start")
	case ms(s.LaidUp)-ms(s.LayUp) < ms(t.LayUp) || ms(s.Out)-ms(s.Unloading) < ms(job.Unload):
		return fmt.Errorf("lay-up or unloading is cut short")
	case ms(s.Shut) < ms(s.LaidUp) || ms(s.Due)-ms(s.Shut) < ms(press) || ms(s.Unloading) < ms(s.Due):
		return fmt.Errorf("press time is cut short")
	case t.Closed > 0 && ms(s.Shut)-ms(s.LayUp) > closed:
		return fmt.Errorf("glue waits %g min, want at most %g min", (s.Shut - s.LayUp).Minutes(), t.Closed.Minutes())
	case !late && !job.Overnight && len(job.Hours) > 0 && ms(s.Unloading)/dayLong != ms(s.Shut)/dayLong:
		return fmt.Errorf("stays overnight")
	}
	return nil
}

func inHours(hours []Shift, s stretch) bool {
	const dayLong = 24 * 3600 * 1000
	midnight := s.from / dayLong * dayLong
	for _, h := range hours {
		if midnight+ms(h.From) <= s.from && s.to <= midnight+ms(h.To) {
			return true
		}
	}
	return len(hours) == 0
}

// checkApart checks that no two stretches overlap.
func checkApart(what string, list []stretch) error {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b stretch) int { return int(a.from - b.from) })
	for i := 1; i < len(list); i++ {
		if list[i].from < list[i-1].to {
			return fmt.Errorf("%s has loads %d and %d at once", what, list[i-1].load, list[i].load)
		}
	}
	return nil
}
