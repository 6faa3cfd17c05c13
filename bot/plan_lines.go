package bot

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"presshand/engine"
	"presshand/engine/plan"
	"presshand/engine/unit"
)

// How many of a plan are told one by one.
const (
	maxPlanLines = 6 // panels made differently, or presses
	maxLoadLines = 4
)

// planHeadline says what came of choosing strips or planning a day, "" where
// the answer is of another kind or has no plan.
func (s style) planHeadline(w worked) string {
	a := w.answer
	if len(w.rivals) > 0 {
		return s.rivalDays(w)
	}
	switch {
	case a.About == engine.Strips && a.Verdict == engine.Stop:
		return s.sentence(byGravity(a.Checks)[0].Finding, w)
	case a.About == engine.Strips:
		return s.picksHeadline(a)
	case a.About == engine.Schedule && a.Verdict == engine.Stop && a.Day == nil && len(a.Checks) > 0:
		return s.sentence(byGravity(a.Checks)[0].Finding, w)
	case a.Day != nil && !a.Values.Has(unit.SideFarJoint):
		return s.dayHeadline(a)
	}
	return ""
}

// rivalDays sets days side by side, the better one first.
func (s style) rivalDays(w worked) string {
	f, values := w.compared()
	best, told := better(w.rivals)
	var each []string
	for i, a := range w.rivals {
		if a.About != engine.Schedule || a.Day == nil || i >= len(values) {
			return ""
		}
		text := s.saying(f, values[i], s.fields[f]) + ": " + strings.TrimSuffix(s.dayHeadline(a), ".")
		if i == best {
			each = append([]string{text}, each...)
		} else {
			each = append(each, text)
		}
	}
	text := strings.Join(each, ". ") + "."
	if told {
		text = "better with " + text
	}
	return text
}

func (s style) picksHeadline(a engine.Answer) string {
	picks, _ := a.Values[unit.Picks].(unit.Sets)
	if len(picks) == 0 {
		return ""
	}
	if len(picks) > 1 {
		return strconv.Itoa(len(picks)) + " panels" + s.wasted(a) + "."
	}
	return "take " + s.pick(picks[0]) + s.comesTo(a) + "."
}

// pick says which strips make a panel: "3 of 2 1/8 in + 2 of 3 in".
func (s style) pick(set []float64) string { return s.picks(unit.Sets{set}) }

// comesTo says what the strips of a single panel add up to.
func (s style) comesTo(a engine.Answer) string {
	sum, ok := a.Values[unit.WidthSum].(unit.Triple)
	if !ok || sum.Mid == nil {
		return ""
	}
	text := ": " + s.both(unit.WidthSum, *sum.Mid)
	if gap, ok := a.Values[unit.WedgeGap].(unit.Triple); ok && gap.Mid != nil {
		return text + ", which leaves " + s.show(unit.WedgeGap, *gap.Mid) + " for the wedge"
	}
	if over, ok := a.Values[unit.Over].(unit.Triple); ok && over.Mid != nil {
		return text + ", " + s.overBy(*over.Mid)
	}
	return text
}

func (s style) overBy(mm float64) string {
	if mm == 0 {
		return "nothing beyond the trim"
	}
	return s.show(unit.Over, mm) + " beyond the trim"
}

// wasted says what several trimmed panels waste together.
func (s style) wasted(a engine.Answer) string {
	overs, ok := a.Values[unit.Over].(unit.Triples)
	if !ok {
		return ""
	}
	all := 0.0
	for _, t := range overs {
		if t.Mid != nil {
			all += *t.Mid
		}
	}
	if all < 0.001 {
		return ", nothing beyond the trim on any"
	}
	return ", " + s.show(unit.Over, all) + " beyond the trim on all of them together"
}

// dayHeadline says how many loads, and when the last is out.
func (s style) dayHeadline(a engine.Answer) string {
	n := len(a.Day.Loads)
	text := counted(n, "load")
	panels := 0
	for _, l := range a.Day.Loads {
		panels += len(l.Panels)
	}
	text = counted(panels, "panel") + " in " + text + fewest(a, n)
	last := a.Day.Loads[0]
	for _, l := range a.Day.Loads {
		if l.Stage.Out > last.Stage.Out {
			last = l
		}
	}
	if !a.Day.Timed || last.Stage.Out == 0 {
		return text + "."
	}
	late := unit.Time(0)
	for _, l := range a.Day.Loads {
		late = max(late, l.Late.Out)
	}
	text += ", the last out at " + clock(last.Stage.Out.Seconds())
	if clock(late.Seconds()) != clock(last.Stage.Out.Seconds()) {
		text += " (at the latest " + clock(late.Seconds()) + ")"
	}
	if by := a.Day.Deadline; by > 0 && late <= by {
		text += ", in time for " + clock(by.Seconds())
	}
	return text + "."
}

// fewest says how good a number of loads is.
func fewest(a engine.Answer, n int) string {
	least, ok := middle(a, unit.LoadsLeast)
	switch {
	case !ok || n < 2:
		return ""
	case int(least) == n:
		return " (fewer cannot be had)"
	}
	return fmt.Sprintf(" (no fewer than %d can be had)", int(least))
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// planLines tell a plan panel by panel or load by load.
func (s style) planLines(a engine.Answer) []string {
	switch {
	case a.About == engine.Strips:
		return s.pickLines(a)
	case a.Day != nil && len(a.Day.Loads) > maxLoadLines:
		return s.pressLines(*a.Day)
	case a.Day != nil:
		return s.loadLines(*a.Day)
	}
	return nil
}

// pickLines tell several panels, those made alike in one line.
func (s style) pickLines(a engine.Answer) []string {
	picks, _ := a.Values[unit.Picks].(unit.Sets)
	if len(picks) < 2 {
		return nil
	}
	targets, _ := a.Values[unit.PickTargets].(unit.Numbers)
	rest, f := a.Values[unit.Over], unit.Over
	if a.Values.Has(unit.WedgeGap) {
		rest, f = a.Values[unit.WedgeGap], unit.WedgeGap
	}
	each, _ := rest.(unit.Triples)
	several := slices.ContainsFunc(targets, func(t float64) bool { return t != targets[0] })
	var out, alike []string
	for i, set := range picks {
		text := ""
		if several && i < len(targets) {
			text = s.stated(unit.TargetWidth, targets[i], s.fields[unit.Targets]) + ": "
		}
		text += s.pick(set)
		if i < len(each) && each[i].Mid != nil && f == unit.WedgeGap {
			text += ", " + s.show(f, *each[i].Mid) + " left for the wedge"
		} else if i < len(each) && each[i].Mid != nil {
			text += ", " + s.overBy(*each[i].Mid)
		}
		if k := slices.Index(alike, text); k >= 0 {
			out[k] = again(out[k])
			continue
		}
		alike = append(alike, text)
		out = append(out, "1 × "+text)
	}
	if len(out) > maxPlanLines {
		more := len(out) - maxPlanLines + 1
		out = append(out[:maxPlanLines-1], fmt.Sprintf("… and %d picks more", more))
	}
	return out
}

// again counts one more panel made alike.
func again(line string) string {
	n, rest, _ := strings.Cut(line, " × ")
	k, _ := strconv.Atoi(n)
	return strconv.Itoa(k+1) + " × " + rest
}

// loadLines tell each load's panels and times.
func (s style) loadLines(d engine.Day) []string {
	var out []string
	for i, l := range d.Loads {
		text := fmt.Sprintf("Load %d: %s", i+1, s.panelsOf(d, l))
		if l.Stage.Out > 0 && d.Presses > 1 {
			text += fmt.Sprintf(" in press %d", l.Stage.Press+1)
		}
		if d.Timed && l.Stage.Out > 0 {
			text += fmt.Sprintf(", lay up %s, shut %s, out %s", clock(l.Stage.LayUp.Seconds()), clock(l.Stage.Shut.Seconds()), clock(l.Stage.Out.Seconds()))
			if l.Late.Out > l.Stage.Out {
				text += " (late " + clock(l.Late.Out.Seconds()) + ")"
			}
		}
		out = append(out, text)
	}
	return out
}

// panelsOf says which panels a load has: "3 panels", or "2 of 18 in and 1 of 24
// in" where they are of several sizes.
func (s style) panelsOf(d engine.Day, l engine.DayLoad) string {
	if len(d.Sizes) == 1 {
		return counted(len(l.Panels), "panel")
	}
	counts := make([]int, len(d.Sizes))
	for _, p := range l.Panels {
		counts[p.Panel]++
	}
	var each []string
	for i, n := range counts {
		if n > 0 {
			each = append(each, fmt.Sprintf("%d of %s", n, s.sizeOf(d, i)))
		}
	}
	return listed(each, "and")
}

// sizeOf names a panel of a day by its width, or by its whole size where lengths
// differ too.
func (s style) sizeOf(d engine.Day, i int) string {
	p := d.Sizes[i]
	if !slices.ContainsFunc(d.Sizes, func(q plan.Rect) bool { return q.Length != p.Length }) {
		return s.stated(unit.PanelWidth, p.Width.Millimetres(), s.fields[unit.Targets])
	}
	return s.size(p.Width.Millimetres(), p.Length.Millimetres())
}

// size shows a panel's width and length, in mm, with the unit once.
func (s style) size(width, length float64) string {
	u := s.fields[unit.Targets]
	wide, long := s.stated(unit.PanelWidth, width, u), s.stated(unit.PanelLength, length, u)
	return withoutUnit(wide, long) + " × " + long
}

// maxPressLoads is how many loads of a press are told one by one.
const maxPressLoads = 6

// pressLines tell the loads of each press in one line.
func (s style) pressLines(d engine.Day) []string {
	presses := make([][]int, d.Presses)
	for i, l := range d.Loads {
		presses[l.Stage.Press] = append(presses[l.Stage.Press], i)
	}
	var out []string
	for i, loads := range presses {
		if len(loads) > 0 && len(out) < maxPlanLines {
			out = append(out, fmt.Sprintf("Press %d: %s", i+1, s.loadsOf(d, loads)))
		}
	}
	return out
}

// loadsOf tells the loads of one press. A day is named where it changes.
func (s style) loadsOf(d engine.Day, loads []int) string {
	var each []string
	today := 0
	for k, i := range loads {
		l := d.Loads[i]
		if k == maxPressLoads {
			each = append(each, fmt.Sprintf("… %d more", len(loads)-k))
			break
		}
		text := fmt.Sprintf("load %d (%s)", i+1, strings.TrimSuffix(strings.TrimSuffix(s.panelsOf(d, l), " panels"), " panel"))
		if d.Timed && l.Stage.Out > 0 {
			var in, out string
			in, today = dayClock(l.Stage.Shut, today)
			out, today = dayClock(l.Stage.Out, today)
			text += " in " + in + ", out " + out
		}
		each = append(each, text)
	}
	return strings.Join(each, "; ")
}

// plannedFields are the figures that headline and lines of a plan show.
var plannedFields = []unit.Field{unit.Picks, unit.WidthSum, unit.Over, unit.WedgeGap, unit.FinishTimes, unit.LoadsNeeded}
