package plan

import "presshand/engine/unit"

// A DeadlineStanding says whether a deadline holds, and what gives where it
// does not.
type DeadlineStanding struct {
	Holds     bool      // at the middle press time
	HoldsLate bool      // at its late end too
	Over      unit.Time // how far the finish is past it; 0 where it holds
	InTime    int       // loads that are out by then
	LateTime  int       // loads that are out by then at the late end
	// LatestStart is the last start, to five minutes, with which it holds; 0
	// where none of the first day does.
	LatestStart unit.Time
	Presses     int // fewest presses with which it holds from the same start; 0 where more do not help
}

// startStep is how finely a start is looked for.
const startStep = 5 * 60

// variantNodes caps the search for each variant of the plan.
const variantNodes = 5_000

func standing(job ClockJob, p ClockPlan) *DeadlineStanding {
	d := &DeadlineStanding{
		Holds: p.Finish <= job.Deadline, HoldsLate: p.LateEnd <= job.Deadline,
		Over:   max(0, p.Finish-job.Deadline),
		InTime: outBy(p.Stages, job.Deadline), LateTime: outBy(p.Late, job.Deadline),
	}
	holds := func(v ClockJob) bool {
		s, err := newShop(v)
		if err != nil {
			return false
		}
		first := func(best, _ unit.Time) bool { return best > job.Deadline }
		return s.search(variantNodes, int64(job.Deadline.Seconds())+1, first).order != nil
	}
	from, to := 0, int(min(job.Deadline, day).Seconds())/startStep
	if d.Holds {
		from = int(job.Start.Seconds()) / startStep
		d.LatestStart = job.Start
	}
	for from <= to { // the later the start, the later the finish
		mid := (from + to) / 2
		v := job
		v.Start = unit.Time(mid * startStep)
		if holds(v) {
			d.LatestStart = max(d.LatestStart, v.Start)
			from = mid + 1
		} else {
			to = mid - 1
		}
	}
	d.Presses = fewestPresses(job, d.Holds, holds)
	return d
}

// fewestPresses looks for a number of presses that does: fewer where the
// deadline holds, more where it does not.
func fewestPresses(job ClockJob, does bool, holds func(ClockJob) bool) int {
	if does {
		for job.Presses > 1 {
			job.Presses--
			if !holds(job) {
				return job.Presses + 1
			}
		}
		return 1
	}
	for job.Presses < min(len(job.Loads), MaxPresses) {
		job.Presses++
		if holds(job) {
			return job.Presses
		}
	}
	return 0
}

func outBy(ss []Stage, deadline unit.Time) (n int) {
	for _, s := range ss {
		if s.Out <= deadline {
			n++
		}
	}
	return n
}
