package plan

import (
	"slices"

	"presshand/engine/unit"
)

// A deed is what the crew does next: lays up a load, unloads a press, or both,
// the load laid up waiting for the press that is unloaded. -1 stands for
// neither load nor press.
//
// Unloading the press that is due first is never worse than another: whatever
// comes after finds an empty press and the crew at the same time. A load that
// is laid up goes into an empty press at once where there is one. So the
// deeds in order give all the times, and every sensible plan is such an order.
type deed struct{ load, unload, into int }

// A floorState is the shop at the time when the crew is free.
type floorState struct {
	now     int64
	holds   []int   // load in each press, -1 where empty
	due     []int64 // of each press that is shut
	shut    []int64
	late    bool // press times at their late end
	lenient bool // loads may stay overnight
	finish  int64
}

func (s *shop) open(late bool) *floorState {
	f := &floorState{now: s.start, holds: make([]int, s.presses), due: make([]int64, s.presses),
		shut: make([]int64, s.presses), late: late, lenient: late || s.overnight}
	for i := range f.holds {
		f.holds[i] = -1
	}
	return f
}

func (f *floorState) clone() *floorState {
	c := *f
	c.holds, c.due, c.shut = slices.Clone(f.holds), slices.Clone(f.due), slices.Clone(f.shut)
	return &c
}

// at returns the first time from t at which the crew can work on for so long.
func (s *shop) at(t, work int64) int64 {
	if len(s.hours) == 0 {
		return t
	}
	for d := t / day * day; ; d += day {
		for _, h := range s.hours {
			if from := max(t, d+h[0]); from+work <= d+h[1] {
				return from
			}
		}
	}
}

// worked returns when the crew, free at t, has worked for so long in all.
func (s *shop) worked(t, work int64) int64 {
	if len(s.hours) == 0 {
		return t + work
	}
	for d := t / day * day; ; d += day {
		for _, h := range s.hours {
			from := max(t, d+h[0])
			if room := d + h[1] - from; room > 0 {
				if work <= room {
					return from + work
				}
				work -= room
			}
		}
	}
}

// earliest returns the press that is due first, -1 where all are empty.
func (f *floorState) earliest() int {
	best := -1
	for p, l := range f.holds {
		if l >= 0 && (best < 0 || f.due[p] < f.due[best]) {
			best = p
		}
	}
	return best
}

// do moves the shop on by one deed and writes its times to laid and out; false
// where the glue cannot wait so long, or a load would have to stay overnight and
// may not.
func (s *shop) do(f *floorState, d deed, laid, out *Stage) bool {
	switch {
	case d.load < 0:
		u := s.at(max(f.now, f.due[d.unload]), s.unload)
		return s.takeOut(f, d.unload, u, out)
	case d.unload < 0:
		begin := s.at(f.now, s.turns[d.load].layUp)
		if s.putIn(f, d, begin, laid) {
			return true
		}
		// It would stay overnight: first thing tomorrow, or never.
		begin = s.at((begin/day+1)*day, s.turns[d.load].layUp)
		return s.putIn(f, d, begin, laid)
	}
	begin, u, ok := s.waiting(f, d)
	return ok && s.takeOut(f, d.unload, u, out) && s.putIn(f, d, begin, laid)
}

// waiting returns when to lay up a load that waits for a press, and when to
// unload that press: as early as can be, and the lay-up late enough for its
// glue.
func (s *shop) waiting(f *floorState, d deed) (begin, unloading int64, ok bool) {
	t := s.turns[d.load]
	if t.closed < t.layUp+s.unload {
		return 0, 0, false
	}
	begin = s.at(f.now, t.layUp)
	for latest := max(begin, f.due[d.unload]) + 3*day; begin < latest; {
		unloading = s.at(max(begin+t.layUp, f.due[d.unload]), s.unload)
		if unloading+s.unload-begin <= t.closed {
			return begin, unloading, true
		}
		begin = s.at(max(begin+1, unloading+s.unload-t.closed), t.layUp)
	}
	return 0, 0, false // no stretch of hours is long enough
}

func (s *shop) takeOut(f *floorState, press int, u int64, out *Stage) bool {
	if out != nil {
		out.Unloading, out.Out = unit.Time(u), unit.Time(u+s.unload)
	}
	f.now = u + s.unload
	f.finish = max(f.finish, f.now)
	f.holds[press] = -1
	return f.lenient || u/day == f.shut[press]/day
}

// clears reports whether the crew can empty every press today if it does
// nothing else.
func (s *shop) clears(f *floorState) bool {
	var dues []int64
	for p, l := range f.holds {
		if l >= 0 {
			dues = append(dues, f.due[p])
		}
	}
	slices.Sort(dues)
	now := f.now
	for _, due := range dues {
		u := s.at(max(now, due), s.unload)
		if u/day != f.now/day {
			return false
		}
		now = u + s.unload
	}
	return true
}

// putIn shuts a press on a load whose lay-up begins at begin: at its end, or
// once the press is empty.
func (s *shop) putIn(f *floorState, d deed, begin int64, laid *Stage) bool {
	t := s.turns[d.load]
	laidUp := begin + t.layUp
	shut := max(f.now, laidUp)
	due := shut + t.press
	if f.late {
		due = shut + t.late
	}
	was := f.now
	f.now = shut
	f.holds[d.into], f.shut[d.into], f.due[d.into] = d.load, shut, due
	if !f.lenient && !s.clears(f) {
		f.now, f.holds[d.into] = was, -1
		return false
	}
	if laid != nil {
		*laid = Stage{Load: d.load, Press: d.into, LayUp: unit.Time(begin), LaidUp: unit.Time(laidUp),
			Shut: unit.Time(shut), Due: unit.Time(due)}
	}
	return true
}

// stages plays an order of work and returns its times.
func (s *shop) stages(order []deed, late bool) []Stage {
	f := s.open(late)
	var out []Stage
	place := map[int]int{}
	for _, d := range order {
		var laid, done Stage
		var gone int
		if d.unload >= 0 {
			gone = f.holds[d.unload]
		}
		s.do(f, d, &laid, &done)
		if d.unload >= 0 {
			st := &out[place[gone]]
			st.Unloading, st.Out = done.Unloading, done.Out
		}
		if d.load >= 0 {
			place[d.load] = len(out)
			out = append(out, laid)
		}
	}
	return out
}
