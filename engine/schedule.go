package engine

import (
	"math"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// A Day is what a schedule sets: which panels go into which load, and when.
type Day struct {
	Bed      plan.Rect
	Sizes    []plan.Rect // of the panels; Placed.Panel is an index of them
	Loads    []DayLoad   // in the order of their lay-ups
	Presses  int
	Timed    bool      // times are since the first midnight; else since the first lay-up
	Deadline unit.Time // since the first midnight; 0: none
}

// A DayLoad is one load: what lies in it, and its times at the middle press time
// and at its late end.
type DayLoad struct {
	Panels      []plan.Placed
	Stage, Late plan.Stage // zero where the loads are not set on the clock
}

// A scheduling is what a question about a day asks for, and what came of it.
type scheduling struct {
	sizes   []plan.Rect
	layups  []float64 // s, by size
	counted bool      // how many panels is known
	job     plan.LoadJob
	turn    plan.Turn // of a full load, its lay-up left open
	pump    unit.Range[float64]
	ofLoad  float64 // s, the lay-up of a whole load where it was said
	closed  unit.Range[float64]
	clock   plan.ClockJob
	hours   string // the crew's, as said; "": round the clock
	cleared bool   // no press may hold a load over night
	timed   bool
	packed  plan.LoadPlan
	set     plan.ClockPlan
}

// answerSchedule answers which panels go into the press together, and when each
// load goes in and comes out.
func answerSchedule(b *builder) error {
	var s scheduling
	if err := s.read(b); err != nil || len(b.a.Needs) > 0 {
		return err
	}
	if !s.fitsBed(b) || !s.fitsOpening(b) {
		return nil
	}
	s.limitLoad()
	most, err := s.capacity(s.job.Gap)
	if err != nil {
		return err
	}
	if !s.counted && !s.countBy(b, most) {
		return nil
	}
	if s.packed, err = plan.Loads(s.job, watched[int](b)); err != nil {
		return underField(err, scheduleFields)
	}
	if err := s.setClock(b); err != nil {
		return err
	}
	s.give(b, most)
	s.judge(b, most)
	return s.judgeGluing(b, most)
}

// scheduleFields are the fields behind what a plan of loads refuses.
var scheduleFields = map[string]unit.Field{
	"number of panels": unit.PanelCount, "side of bed or panel": unit.PanelWidth, "height of a layer": unit.Opening,
	"number of presses": unit.PressCount, "lay-up, press or closed time": unit.LayupPanel, "unloading, start or deadline": unit.Unload,
}

// read reads the panels, the bed, the glue and the clock.
func (s *scheduling) read(b *builder) error {
	if err := s.readPanels(b); err != nil {
		return err
	}
	s.readBed(b)
	times, err := glueTimes(b, b.glue())
	if err != nil {
		return err
	}
	s.closed = times.closed
	give(b, unit.ClosedTime, times.closed)
	press := times.press
	if t, ok := b.number(unit.PressTime); ok {
		press = unit.Exactly(t)
	} else {
		give(b, unit.PressTime, press)
	}
	s.turn = plan.Turn{
		Press:  unit.Around(unit.Time(press.Low), unit.Time(press.Mid), unit.Time(press.High)),
		Closed: unit.Time(times.closed.Mid),
	}
	s.pump = unit.Exactly(usualPumpDown)
	if b.known(unit.PumpSpeed) {
		if s.pump, err = pumpDownOrUsual(b); err != nil {
			return err
		}
	}
	s.ofLoad, _ = b.number(unit.LayupLoad)
	return s.readClock(b)
}

// readPanels reads how many panels of which sizes there are, and how long each
// takes to lay up.
func (s *scheduling) readPanels(b *builder) error {
	row, err := b.row()
	if err != nil {
		return err
	}
	if row.width == 0 {
		row.width, _ = b.number(unit.TargetWidth)
	}
	length, _ := b.length()
	var widths unit.Piles
	v, _ := b.value(unit.Targets)
	if listed, ok := v.(unit.Piles); ok && len(listed) > 0 {
		widths, s.counted = listed, true
	} else if row.width > 0 {
		count := 1
		if s.counted = b.known(unit.PanelCount); s.counted {
			if count, err = b.count(unit.PanelCount, 1); err != nil {
				return err
			}
		}
		widths = unit.Piles{{Width: row.width * 1000, Count: count}}
	}
	if len(widths) == 0 {
		b.need(unit.PanelWidth)
		if length == 0 {
			b.need(unit.PanelLength)
		}
	}
	for _, w := range widths {
		long := unit.Millimetres(w.Length)
		if w.Length == 0 {
			long = unit.Length(length)
		}
		if long == 0 {
			b.need(unit.PanelLength)
		}
		s.sizes = append(s.sizes, plan.Rect{Width: unit.Millimetres(w.Width), Length: long, Count: w.Count})
		s.layups = append(s.layups, b.layupOf(row, w.Width/1000))
	}
	return nil
}

// layupOf returns what it takes to lay up a panel of some width, in s.
func (b *builder) layupOf(p row, width float64) float64 {
	if t, ok := b.number(unit.LayupPanel); ok {
		return t
	}
	n := p.strips
	switch {
	case p.strip > 0 && p.width != width:
		n = int(math.Max(1, math.Ceil(width/p.strip-0.01)))
	case n == 0:
		n = usualStrips
		b.assume(unit.StripCount, unit.Number(n))
	}
	t := layupPerPanel + layupPerJoint*float64(n-1)
	if !b.known(unit.LayupLoad) {
		b.assume(unit.LayupPanel, unit.LayupPanel.Number(t))
		workLayup(b, n, t)
	}
	return t
}

// readBed reads the bed, and how high one layer is where the opening is known.
func (s *scheduling) readBed(b *builder) {
	s.job = plan.LoadJob{Panels: s.sizes, Gap: plan.DefaultGap}
	s.job.Bed = plan.Rect{
		Width:  unit.Length(b.numberOr(unit.BedWidth, plan.DefaultBed.Width.Metres())),
		Length: unit.Length(b.numberOr(unit.BedLength, plan.DefaultBed.Length.Metres())),
	}
	opening, okO := b.number(unit.Opening)
	thick, okT := b.thickness()
	if !okO || !okT {
		return
	}
	s.job.Opening = unit.Length(opening)
	layer := b.numberOr(unit.SledThickness, defaultSled) + thick + b.numberOr(unit.FilmThickness, defaultFilm)
	if core, ok := b.number(unit.CoreThickness); ok {
		layer += core
	}
	s.job.LayerHeight = unit.Length(layer)
}

// readClock reads presses, start, hours and deadline.
func (s *scheduling) readClock(b *builder) error {
	presses, err := b.count(unit.PressCount, 1)
	if err != nil {
		return err
	}
	s.clock = plan.ClockJob{
		Presses: presses, Overnight: true,
		Unload: unit.Time(b.numberOr(unit.Unload, plan.DefaultUnload.Seconds())),
	}
	start, timed, err := b.clockTime(unit.StartTime)
	if err != nil {
		return err
	}
	deadline, due, err := b.clockTime(unit.Deadline)
	if err != nil {
		return err
	}
	s.timed, s.clock.Start = timed, start
	if err := s.readHours(b); err != nil {
		return err
	}
	if due {
		s.clock.Deadline = deadline
		if s.timed && deadline <= s.clock.Start { // the morning after
			s.clock.Deadline += wholeDay
		}
	}
	return nil
}

const wholeDay = unit.Time(24 * 3600)
