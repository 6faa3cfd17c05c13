package plan

// clearedBound returns a time before which no plan can finish that leaves no load
// in a press over night; 0 where it knows of none. A press holds only so many
// loads one after the other between opening and closing time, and what is left
// for the last day takes its time on that day too.
//
// Source: counting (derived).
func (s *shop) clearedBound() int64 {
	if s.overnight || len(s.hours) == 0 {
		return 0
	}
	opens, closes := s.hours[0][0], s.hours[len(s.hours)-1][1]
	cycle := s.shortestCycle(day - (closes - opens))
	each := (closes - opens) / cycle
	if each == 0 {
		return 0
	}
	loads, daily := int64(len(s.turns)), each*int64(s.presses)
	days := ceilDiv(loads, daily)
	last := ceilDiv(loads-(days-1)*daily, int64(s.presses))
	return s.start/day*day + (days-1)*day + opens + last*cycle
}

// shortestCycle returns the least that a press is taken up by a load, its lay-up
// included where no load can be laid up while the press is still full, nor in
// the evening before.
func (s *shop) shortestCycle(night int64) int64 {
	shortest := int64(never)
	waits := false
	for _, t := range s.turns {
		waits = waits || t.closed >= t.layUp+min(s.unload, night)
	}
	for _, t := range s.turns {
		cycle := t.press + s.unload
		if !waits {
			cycle += t.layUp
		}
		shortest = min(shortest, cycle)
	}
	return max(1, shortest)
}
