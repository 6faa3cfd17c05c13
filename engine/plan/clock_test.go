package plan_test

import (
	"fmt"
	"testing"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// tenMinutes is the beat of the brute force.
func tenMinutes(n int) unit.Time { return unit.Minutes(float64(10 * n)) }

// A bruteClock plays the shop beat by beat: at each beat the crew, if free,
// waits, starts a lay-up or starts an unloading. It knows of no order of work
// and no bound.
type bruteClock struct {
	layUp, press, closed []int
	presses, unload      int
	hours                [][2]int // in beats of a day; none: always
	sameDay              bool     // none may stay overnight
	known                map[bruteState]bool
}

const beatsADay = 144

type bruteState struct {
	now, free int // the crew is free from then on
	left      int // loads not laid up yet, by bits
	onBench   int // load, -1 if none
	began     int // its lay-up
	in        [2]int
	due       [2]int
	leaving   int // press being unloaded, -1 if none
}

func (b *bruteClock) canWork(t, n int) bool {
	if len(b.hours) == 0 {
		return true
	}
	for _, h := range b.hours {
		if h[0] <= t%beatsADay && t%beatsADay+n <= h[1] {
			return true
		}
	}
	return false
}

// within reports whether all can be out by the limit.
func (b *bruteClock) within(s bruteState, limit int) bool {
	if s.free <= s.now && s.leaving >= 0 {
		s.in[s.leaving], s.due[s.leaving], s.leaving = -1, 0, -1
	}
	for p := range b.presses {
		if s.onBench >= 0 && s.now >= s.began+b.layUp[s.onBench] && s.in[p] < 0 {
			if s.now-s.began > b.closed[s.onBench] {
				return false
			}
			s.in[p], s.due[p], s.onBench, s.began = s.onBench, s.now+b.press[s.onBench], -1, 0
		}
	}
	done := s.left == 0 && s.onBench < 0
	for _, l := range s.in {
		done = done && l < 0
	}
	if done {
		return true
	}
	if s.now >= limit {
		return false
	}
	if was, ok := b.known[s]; ok {
		return was
	}
	can := b.moves(s, limit)
	b.known[s] = can
	return can
}

func (b *bruteClock) moves(s bruteState, limit int) bool {
	wait := s
	wait.now++
	if b.within(wait, limit) {
		return true
	}
	if s.free > s.now {
		return false
	}
	for l := range b.layUp {
		if s.left>>l&1 == 1 && s.onBench < 0 && b.canWork(s.now, b.layUp[l]) {
			n := s
			n.left &^= 1 << l
			n.onBench, n.began, n.free = l, s.now, s.now+b.layUp[l]
			n.now++
			if b.within(n, limit) {
				return true
			}
		}
	}
	for p, l := range s.in {
		if l >= 0 && s.due[p] <= s.now && b.canWork(s.now, b.unload) && b.mayLeave(s.due[p]-b.press[l], s.now) {
			n := s
			n.leaving, n.free = p, s.now+b.unload
			n.now++
			if b.within(n, limit) {
				return true
			}
		}
	}
	return false
}

func (b *bruteClock) mayLeave(shut, now int) bool {
	return !b.sameDay || shut/beatsADay == now/beatsADay
}

// canFinish reports whether all can be out by the limit.
func (b *bruteClock) canFinish(start, limit int) bool {
	b.known = map[bruteState]bool{}
	return b.within(bruteState{now: start, free: start, left: 1<<len(b.layUp) - 1, onBench: -1,
		in: [2]int{-1, -1}, leaving: -1}, limit)
}

func (b *bruteClock) job(start int) plan.ClockJob {
	job := plan.ClockJob{Presses: b.presses, Unload: tenMinutes(b.unload), Start: tenMinutes(start), Overnight: !b.sameDay}
	for i := range b.layUp {
		job.Loads = append(job.Loads, plan.Turn{LayUp: tenMinutes(b.layUp[i]),
			Press: unit.Exactly(tenMinutes(b.press[i])), Closed: tenMinutes(b.closed[i])})
	}
	for _, h := range b.hours {
		job.Hours = append(job.Hours, plan.Shift{From: tenMinutes(h[0]), To: tenMinutes(h[1])})
	}
	return job
}

func TestClock_againstBruteForce(t *testing.T) {
	d := dice(3)
	for range 50 {
		b := bruteClock{presses: d.from(1, 2), unload: 1}
		for range d.from(1, 4) {
			l := d.from(1, 4)
			b.layUp, b.press, b.closed = append(b.layUp, l), append(b.press, d.from(1, 8)), append(b.closed, l+d.roll(4))
		}
		start := 45
		if d.roll(2) == 0 {
			b.hours = [][2]int{{42, 42 + d.from(6, 10)}, {54, 54 + d.from(6, 10)}}
		}
		b.sameDay = d.roll(3) == 0 && b.hours != nil
		p, err := plan.Clock(b.job(start), nil)
		if err != nil && b.sameDay && !b.canFinish(start, start+2*beatsADay) {
			continue // and brute force finds none either
		}
		if err != nil {
			t.Fatalf("%+v: %v", b, err)
		}
		got := int(p.Finish.Minutes()+0.5) / 10
		if b.sameDay {
			bound := int(p.Certificate.Bound.Minutes()+0.5) / 10
			if !b.canFinish(start, got) || b.canFinish(start, bound-1) {
				t.Fatalf("%+v: out at beat %d, bound %d, brute force differs", b, got, bound)
			}
			continue
		}
		if !p.Certificate.Best || !b.canFinish(start, got) || b.canFinish(start, got-1) {
			t.Fatalf("%+v: out at beat %d (%+v), brute force differs", b, got, p.Certificate)
		}
	}
}

// By hand: one press, lay-up 20 min, press 60, unloading 10. The first load is
// shut at 7:50 and due at 8:50. The next, laid up meanwhile, goes in at 9:00,
// due 10:00, out 10:10; the third in at 10:10, out at 11:20.
func ExampleClock_nextLoadLaidUpMeanwhile() {
	load := plan.Turn{LayUp: unit.Minutes(20), Press: unit.Exactly(unit.Minutes(60)), Closed: unit.Minutes(30)}
	p, err := plan.Clock(plan.ClockJob{
		Loads: []plan.Turn{load, load, load}, Presses: 1, Unload: plan.DefaultUnload, Start: unit.Minutes(7*60 + 30),
	}, nil)
	for _, s := range p.Stages {
		fmt.Printf("out %02d:%02d\n", int(s.Out.Minutes())/60, int(s.Out.Minutes())%60)
	}
	fmt.Println(p.Certificate.Best, err)
	// Output:
	// out 09:00
	// out 10:10
	// out 11:20
	// true <nil>
}

// By hand: with 20 min closed time the next load cannot wait for the unloading,
// so it is laid up after it: 20 + 60 + 10 min each, 7:30 to 12:00 for three. The
// deadline of 11:00 sees two out (9:00, 10:30); an hour earlier holds. Three
// presses: lay-ups to 8:30, the last due at 9:30, out 9:40; two: 7:50 and 8:10
// shut, out at 9:00 and 9:20, third laid up to 9:40 or earlier, out by 10:50.
func TestClock_deadline(t *testing.T) {
	load := plan.Turn{LayUp: unit.Minutes(20), Press: unit.Around(unit.Minutes(60), unit.Minutes(60), unit.Minutes(90)), Closed: unit.Minutes(20)}
	p, err := plan.Clock(plan.ClockJob{Loads: []plan.Turn{load, load, load}, Presses: 1, Unload: unit.Minutes(10),
		Start: unit.Minutes(450), Deadline: unit.Minutes(660)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := plan.DeadlineStanding{Over: unit.Minutes(60), InTime: 2, LateTime: 1, LatestStart: unit.Minutes(390), Presses: 2}
	if got := *p.DeadlineStanding; got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got := p.LateEnd.Minutes(); got != 450+3*120 { // 20 + 90 + 10 min each
		t.Errorf("late end at %g min, want 810", got)
	}
}

// By hand: hours 7 to 12, lay-up 60 min, press 5 h, unloading 10 min. A load in
// by 8:00 is due at 13:00, after hours: it stays until the next day, 7:10.
func TestClock_overnight(t *testing.T) {
	job := plan.ClockJob{Loads: []plan.Turn{{LayUp: unit.Minutes(60), Press: unit.Exactly(unit.Minutes(300))}},
		Presses: 1, Unload: unit.Minutes(10), Start: unit.Minutes(420), Overnight: true,
		Hours: []plan.Shift{{From: unit.Minutes(420), To: unit.Minutes(720)}}}
	p, err := plan.Clock(job, nil)
	if err != nil || p.Finish.Minutes() != 24*60+430 {
		t.Errorf("finish %g min, %v; want 1870 min", p.Finish.Minutes(), err)
	}
	job.Overnight = false
	if _, err := plan.Clock(job, nil); err == nil {
		t.Error("no error where a load may not stay overnight and must")
	}
	// 3 h of press: in by 8:00, out 11:10; a second load waits for the morrow.
	job.Loads[0].Press = unit.Exactly(unit.Minutes(180))
	job.Loads = append(job.Loads, job.Loads[0])
	if p, err = plan.Clock(job, nil); err != nil || p.Finish.Minutes() != 24*60+670 {
		t.Errorf("finish %g min, %v; want 2110 min", p.Finish.Minutes(), err)
	}
}

// By hand: hours 7:30 to 16:00, lay-up 12 min, press 84, unloading 10, glue that
// waits for no unloading: 106 min a load, four a day in one press. Of ten the
// last two are out on the third day at 7:30 + 212 min = 11:02, and no plan is
// sooner done.
func TestClock_clearedOvernightIsProven(t *testing.T) {
	job := plan.ClockJob{Presses: 1, Unload: unit.Minutes(10), Start: unit.Minutes(450),
		Hours: []plan.Shift{{From: unit.Minutes(450), To: unit.Minutes(960)}}}
	for range 10 {
		job.Loads = append(job.Loads, plan.Turn{LayUp: unit.Minutes(12), Press: unit.Exactly(unit.Minutes(84)), Closed: unit.Minutes(14)})
	}
	p, err := plan.Clock(job, nil)
	if want := float64(2*24*60 + 662); err != nil || p.Finish.Minutes() != want || !p.Certificate.Best {
		t.Errorf("finish %g min, proven %t (%v); want %g, proven", p.Finish.Minutes(), p.Certificate.Best, err, want)
	}
}
