package plan

import (
	"fmt"
	"math"
	"slices"

	"presshand/engine/unit"
)

// DefaultUnload is what it takes to get a load out of the press. Common
// practice without a source (c).
var DefaultUnload = unit.Minutes(10)

// Limits of one question about the clock.
const (
	MaxLoads   = 200
	MaxPresses = 50
)

// A Shift is a stretch of working hours of every day, since midnight.
type Shift struct{ From, To unit.Time }

// A Turn is one load's part of the day.
type Turn struct {
	LayUp unit.Time             // the crew's time until the press is shut, pump-down included
	Press unit.Range[unit.Time] // shut until it may be opened
	// Closed is the most that may pass from the start of the lay-up to the
	// shut press; 0: no limit.
	Closed unit.Time
}

// A ClockJob asks when loads go in and come out. Times of day are since the
// midnight before the first day; one past 24 h is on a later day.
type ClockJob struct {
	Loads     []Turn
	Presses   int
	Unload    unit.Time
	Start     unit.Time
	Hours     []Shift   // in order; none: round the clock
	Overnight bool      // a press may hold a load until another day
	Deadline  unit.Time // when all is to be out; 0: none
}

// A Stage is when things happen to one load.
type Stage struct {
	Load, Press    int       // from 0; the load is an index into ClockJob.Loads
	LayUp, LaidUp  unit.Time // the crew starts, and is done
	Shut, Due      unit.Time // in the press, and ready to come out
	Unloading, Out unit.Time // the crew starts, and it is out
}

// A ClockPlan is the answer to a [ClockJob]. Stages are in the order of
// lay-ups: at the middle press time, and the same order of work at the late end
// of it, when a load may stay overnight even where none should.
type ClockPlan struct {
	Stages, Late     []Stage
	Finish, LateEnd  unit.Time
	Certificate      ClockCertificate
	DeadlineStanding *DeadlineStanding // nil without a deadline
}

// A ClockCertificate says how good the finish is proven to be, at the middle
// press time.
type ClockCertificate struct {
	Finish, Bound unit.Time // no order of work finishes before the bound
	Best          bool
}

// Clock sets loads on the clock. One crew lays up and unloads and does one
// thing at a time, within working hours; the next load is laid up while presses
// are shut, and one laid-up load can wait for a press as long as its glue
// allows. The last load comes out as early as can be found.
//
// Units: times in and out are [unit.Time]; the watch sees the finish and its
// bound. Valid for up to [MaxLoads] loads and [MaxPresses] presses, and for
// lay-ups and unloadings that fit a shift; outside it the error is a
// [*unit.RangeError].
//
// Source: branch and bound over the crew's orders of work (derived, see
// order.go).
func Clock(job ClockJob, watch Watch[unit.Time]) (ClockPlan, error) {
	s, err := newShop(job)
	if err != nil {
		return ClockPlan{}, err
	}
	found := s.search(clockNodes, never, watch)
	if found.order == nil {
		return ClockPlan{}, &unit.RangeError{What: "press time", Got: s.longestPress() / 60, Unit: " min",
			Want: "one that lets a load out on the day it goes in, or a press that may hold it overnight"}
	}
	p := ClockPlan{Stages: s.stages(found.order, false), Late: s.stages(found.order, true)}
	p.Finish, p.LateEnd = lastOut(p.Stages), lastOut(p.Late)
	p.Certificate = ClockCertificate{Finish: p.Finish, Bound: unit.Time(found.bound), Best: found.bound >= found.finish}
	if job.Deadline > 0 {
		p.DeadlineStanding = standing(job, p)
	}
	if err := CheckClock(job, p); err != nil {
		return ClockPlan{}, fmt.Errorf("clock plan refused by its checker: %w", err)
	}
	return p, nil
}

func lastOut(ss []Stage) (last unit.Time) {
	for _, s := range ss {
		last = max(last, s.Out)
	}
	return last
}

// A shop is a clock job in whole seconds.
type shop struct {
	turns     []turn
	classes   [][]int // loads alike
	presses   int
	unload    int64
	start     int64
	hours     [][2]int64
	overnight bool
}

type turn struct{ layUp, press, late, closed int64 }

const day = 24 * 3600

func wholeSeconds(t unit.Time) int64 { return int64(math.Ceil(t.Seconds() - 1e-6)) }

func newShop(job ClockJob) (*shop, error) {
	if err := job.valid(); err != nil {
		return nil, err
	}
	s := &shop{presses: job.Presses, unload: wholeSeconds(job.Unload), start: wholeSeconds(job.Start), overnight: job.Overnight}
	for _, h := range job.Hours {
		s.hours = append(s.hours, [2]int64{wholeSeconds(h.From), int64(h.To.Seconds())})
	}
	if len(s.hours) == 0 {
		s.overnight = true // nobody goes home
	}
	for i, t := range job.Loads {
		n := turn{wholeSeconds(t.LayUp), wholeSeconds(t.Press.Mid), wholeSeconds(t.Press.High), int64(t.Closed.Seconds() + 1e-6)}
		if n.closed == 0 {
			n.closed = math.MaxInt64 / 4
		}
		n.closed = max(n.closed, n.layUp) // a lay-up beyond it is judged elsewhere
		s.turns = append(s.turns, n)
		same := slices.IndexFunc(s.classes, func(c []int) bool { return s.turns[c[0]] == n })
		if same < 0 {
			s.classes = append(s.classes, nil)
			same = len(s.classes) - 1
		}
		s.classes[same] = append(s.classes[same], i)
	}
	// The longest in first is a good beginning for the search.
	slices.SortStableFunc(s.classes, func(a, b []int) int { return int(s.turns[b[0]].press - s.turns[a[0]].press) })
	for _, t := range s.turns {
		if room := s.longestShift(); t.layUp > room || s.unload > room {
			return nil, &unit.RangeError{What: "lay-up or unloading", Got: float64(max(t.layUp, s.unload)) / 60, Unit: " min",
				Want: fmt.Sprintf("at most the longest shift, %d min", room/60)}
		}
	}
	return s, nil
}

func (s *shop) longestShift() int64 {
	if len(s.hours) == 0 {
		return math.MaxInt64
	}
	var l int64
	for _, h := range s.hours {
		l = max(l, h[1]-h[0])
	}
	return l
}

func (s *shop) longestPress() float64 {
	var l int64
	for _, t := range s.turns {
		l = max(l, t.press)
	}
	return float64(l)
}

func (job ClockJob) valid() error {
	minutes := func(what string, t unit.Time) error {
		if !(t >= 0 && t <= 60*day) {
			return &unit.RangeError{What: what, Got: t.Minutes(), Unit: " min", Want: "0 min to 60 days"}
		}
		return nil
	}
	if n := len(job.Loads); n < 1 || n > MaxLoads {
		return &unit.RangeError{What: "number of loads", Got: float64(n), Want: fmt.Sprintf("1 to %d", MaxLoads)}
	}
	if n := job.Presses; n < 1 || n > MaxPresses {
		return &unit.RangeError{What: "number of presses", Got: float64(n), Want: fmt.Sprintf("1 to %d", MaxPresses)}
	}
	for _, l := range job.Loads {
		for _, t := range []unit.Time{l.LayUp, l.Press.Mid, l.Press.High, l.Closed} {
			if err := minutes("lay-up, press or closed time", t); err != nil {
				return err
			}
		}
		if l.Press.High < l.Press.Mid {
			return &unit.RangeError{What: "late end of the press time", Got: l.Press.High.Minutes(), Unit: " min", Want: "the middle or more"}
		}
	}
	before := unit.Time(0)
	for _, h := range job.Hours {
		if !(h.From >= before && h.To > h.From && h.To <= day) {
			return &unit.RangeError{What: "end of a shift", Got: h.To.Minutes() / 60, Unit: " h", Want: "after its start, in order, within the day"}
		}
		before = h.To
	}
	for _, t := range []unit.Time{job.Unload, job.Start, job.Deadline} {
		if err := minutes("unloading, start or deadline", t); err != nil {
			return err
		}
	}
	return nil
}
