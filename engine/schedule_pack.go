package engine

import (
	"math"
	"slices"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// fitsBed judges panels that the bed is too small for.
func (s *scheduling) fitsBed(b *builder) bool {
	W, L := s.job.Bed.Width, s.job.Bed.Length
	for _, r := range s.sizes {
		if r.Width <= W && r.Length <= L || r.Length <= W && r.Width <= L {
			continue
		}
		b.judge("bed", Stop, ReasonPanelOffBed, unit.Facts{
			unit.PanelWidth: unit.PanelWidth.Number(r.Width.Metres()), unit.PanelLength: unit.PanelLength.Number(r.Length.Metres()),
			unit.BedWidth: unit.BedWidth.Number(W.Metres()), unit.BedLength: unit.BedLength.Number(L.Metres()),
		})
		return false
	}
	return true
}

// fitsOpening judges a layer that the press is too low for.
func (s *scheduling) fitsOpening(b *builder) bool {
	if s.job.Layers() > 0 {
		return true
	}
	h, o := s.job.LayerHeight.Metres(), s.job.Opening.Metres()
	b.judge("height", Stop, ReasonTooHigh, unit.Facts{
		unit.StackHeight: unit.StackHeight.Number(h), unit.Opening: unit.Opening.Number(o), unit.Clearance: unit.Clearance.Number(o - h),
	})
	return false
}

// limitLoad limits a load to what can be laid up before the glue is too stiff.
func (s *scheduling) limitLoad() {
	if s.ofLoad > 0 {
		return
	}
	s.job.PanelsPerLoad = s.panelsWithin(s.closed.Mid-s.pump.Mid, plan.MaxPanels)
}

// panelsWithin returns how many panels can be laid up within some seconds, one
// at least.
func (s *scheduling) panelsWithin(seconds float64, most int) int {
	each := slices.Max(s.layups)
	if !(each > 0) {
		return most
	}
	return int(math.Max(1, math.Min(float64(most), math.Floor(seconds/each+1e-9))))
}

// capacity returns how many panels one load holds by room alone, with some room
// between them; 0 where the panels are of several sizes.
func (s *scheduling) capacity(g unit.Length) (int, error) {
	if len(s.sizes) != 1 {
		return 0, nil
	}
	r := s.sizes[0]
	area := func(w, l unit.Length) float64 { return float64(w+g) * float64(l+g) }
	byArea := math.Floor(area(s.job.Bed.Width, s.job.Bed.Length)/area(r.Width, r.Length)+1e-9) * float64(s.job.Layers())
	low, high := 1, int(math.Max(1, math.Min(byArea, plan.MaxPanels)))
	for low < high { // more panels never need fewer loads
		k := (low + high + 1) / 2
		one := s.job
		one.PanelsPerLoad, one.Gap = 0, g
		one.Panels = []plan.Rect{{Width: r.Width, Length: r.Length, Count: k}}
		p, err := plan.Loads(one, nil)
		if err != nil {
			return 0, underField(err, scheduleFields)
		}
		if len(p.Loads) == 1 {
			low = k
		} else {
			high = k - 1
		}
	}
	return low, nil
}

// perLoad returns how many panels a full load has: by room, and by the glue.
func (s *scheduling) perLoad(most int) int {
	if most == 0 { // several sizes: the fullest load
		for _, l := range s.packed.Loads {
			most = max(most, len(l.Panels))
		}
		return most
	}
	if s.job.PanelsPerLoad > 0 {
		return min(most, s.job.PanelsPerLoad)
	}
	return most
}

// countBy works out how many panels can be had where no count was said: as many
// as the day allows, or else only what one load holds. It reports whether a
// count came of it.
func (s *scheduling) countBy(b *builder, most int) bool {
	per := s.perLoad(most)
	if !s.timed || s.clock.Deadline == 0 {
		give(b, unit.PanelsPerLoad, unit.Exactly(float64(per)))
		if b.known(unit.StartTime, unit.Deadline, unit.PressCount) {
			b.need(unit.PanelCount)
		}
		s.adviseGlueLimit(b, most)
		return false
	}
	inTime := func(panels int) bool {
		job := s.clock
		job.Deadline = 0
		for n := panels; n > 0; n -= per {
			job.Loads = append(job.Loads, s.turnOf(s.layupOf(min(n, per))))
		}
		p, err := plan.Clock(job, nil)
		return err == nil && p.Finish <= s.clock.Deadline
	}
	full := 0 // loads that come out in time
	for full < maxDayLoads && (full+1)*per <= plan.MaxPanels && inTime((full+1)*per) {
		full++
	}
	n := full * per
	for more := min(per-1, plan.MaxPanels-n); more > 0; more-- {
		if inTime(n + more) {
			n += more
			break
		}
	}
	s.sizes[0].Count = max(1, n) // where not even one is, the deadline says so
	give(b, unit.PanelCount, unit.Exactly(float64(n)))
	return true
}

// maxDayLoads is more than any crew gets through by a deadline.
const maxDayLoads = 100

// layupOf returns the lay-up of a load of n panels of the first size, in s.
func (s *scheduling) layupOf(n int) float64 {
	if s.ofLoad > 0 {
		return s.ofLoad
	}
	return float64(n)*s.layups[0] + s.pump.Mid
}

// layupOfLoad returns the lay-up of one of the loads packed, in s.
func (s *scheduling) layupOfLoad(l plan.Load) float64 {
	if s.ofLoad > 0 {
		return s.ofLoad
	}
	t := s.pump.Mid
	for _, p := range l.Panels {
		t += s.layups[p.Panel]
	}
	return t
}

func (s *scheduling) turnOf(layup float64) plan.Turn {
	t := s.turn
	t.LayUp = unit.Time(layup)
	return t
}
