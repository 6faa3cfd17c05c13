package bot

import (
	"fmt"
	"slices"
	"strings"

	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

// How many of a plan are drawn; more would not be legible.
const (
	maxDrawnPanels = 8
	maxDrawnBeds   = 8
)

// strips draws what each panel is made of, those made alike once, and how far
// the stock goes of one that it does not make.
func (d Drawn) strips() picture.StripLayout {
	out := picture.StripLayout{Units: d.units(), First: "bar or fence", Last: "fence"}
	out.Units.Stated = func(l unit.Length) string {
		return d.style.stated(unit.StripWidth, l.Millimetres(), d.style.fields[unit.StockPiles])
	}
	if d.Answer.Values.Has(unit.WedgeGap) { // from fence to fence
		out.First = out.Last
	}
	sets, _ := d.Answer.Values[unit.Picks].(unit.Sets)
	var numbers [][]int
	var drawn []string
	for i, set := range sets {
		p := picture.StripPanel{Target: d.pickTarget(i), Trim: d.pickTrim(), Over: d.pickRest(unit.Over, i), Wedge: d.pickRest(unit.WedgeGap, i)}
		for _, w := range set {
			p.Widths = append(p.Widths, unit.Millimetres(w))
		}
		key := fmt.Sprint(p.Target, p.Widths)
		if k := slices.Index(drawn, key); k >= 0 {
			numbers[k] = append(numbers[k], i+1)
			continue
		}
		drawn, numbers = append(drawn, key), append(numbers, []int{i + 1})
		out.Panels = append(out.Panels, p)
	}
	reach, short := d.length(unit.StockReach), d.length(unit.StockShort)
	for i, n := range numbers {
		if len(sets) > 1 || short > 0 {
			out.Panels[i].Name = numbered("Panel", n)
		}
	}
	if len(out.Panels) > maxDrawnPanels {
		out.More = len(slices.Concat(numbers[maxDrawnPanels:]...))
		out.Panels = out.Panels[:maxDrawnPanels]
	}
	if short > 0 {
		out.Panels = append(out.Panels, picture.StripPanel{
			Name: fmt.Sprintf("Panel %d: not enough", len(sets)+1), Target: reach + short, Reach: reach, Short: short,
		})
	}
	return out
}

// pickTarget is what the strips of a pick fill.
func (d Drawn) pickTarget(i int) unit.Length {
	targets, _ := d.Answer.Values[unit.PickTargets].(unit.Numbers)
	if i < len(targets) {
		return unit.Millimetres(targets[i])
	}
	return d.length(unit.TargetWidth)
}

// pickRest is a figure of a pick, of which each has its own: what is over, or
// left for the wedge.
func (d Drawn) pickRest(f unit.Field, i int) unit.Length {
	each, ok := d.Answer.Values[f].(unit.Triples)
	if one, single := d.Answer.Values[f].(unit.Triple); single {
		each, ok = unit.Triples{one}, true
	}
	if !ok || i >= len(each) || each[i].Mid == nil {
		return 0
	}
	return unit.Millimetres(*each[i].Mid)
}

// pickTrim is what is to come off every panel that has no wedge.
func (d Drawn) pickTrim() unit.Length {
	if d.Answer.Values.Has(unit.WedgeGap) {
		return 0
	}
	return d.length(unit.Trim)
}

// beds draws where the panels of each load lie, loads alike once.
func (d Drawn) beds() picture.BedPlan {
	day := d.Answer.Day
	if day == nil {
		return picture.BedPlan{}
	}
	out := picture.BedPlan{Units: d.units(), Width: day.Bed.Width, Length: day.Bed.Length, Notes: d.bedNotes(), Sizes: panelSizes(*day)}
	out.Units.Stated = func(l unit.Length) string {
		return d.style.stated(unit.PanelWidth, l.Millimetres(), d.style.fields[unit.Targets])
	}
	if out.Gap = "1 in (25 mm)"; d.style.metric { // plan.DefaultGap, as the words have it
		out.Gap = "25 mm"
	}
	if bed := d.style.bed(d.Answer.Assumed); bed != "" {
		out.Bed = strings.TrimPrefix(bed, "a bed of ") + ", as none was named"
	}
	var loads []engine.DayLoad
	var names [][]int
	for i, l := range day.Loads {
		k := slices.IndexFunc(loads, func(o engine.DayLoad) bool { return slices.Equal(o.Panels, l.Panels) })
		if k < 0 {
			k = len(loads)
			loads, names = append(loads, l), append(names, nil)
		}
		names[k] = append(names[k], i+1)
	}
	for k, l := range loads {
		beds := bedsOf(*day, l, numbered("Load", names[k]))
		if len(out.Beds)+len(beds) > maxDrawnBeds && k > 0 {
			out.More += len(names[k])
			continue
		}
		out.Beds = append(out.Beds, beds...)
	}
	return out
}

// panelSizes are what there is of each size, by letters where they are several.
func panelSizes(day engine.Day) []picture.PanelSize {
	out := make([]picture.PanelSize, len(day.Sizes))
	for i, s := range day.Sizes {
		out[i] = picture.PanelSize{Name: sizeLetter(day, i), Width: s.Width, Length: s.Length}
	}
	for _, l := range day.Loads {
		for _, p := range l.Panels {
			out[p.Panel].Count++
		}
	}
	return out
}

// sizeLetter names the panels of one size among several.
func sizeLetter(day engine.Day, i int) string {
	switch {
	case len(day.Sizes) < 2:
		return ""
	case i < 26:
		return string(rune('A' + i))
	}
	return fmt.Sprint(i + 1)
}

// bedNotes say why a load is no fuller than it is.
func (d Drawn) bedNotes() []string {
	var out []string
	for _, f := range d.Answer.Advice {
		if f.Reason == engine.ReasonGlueLimitsLoad || f.Reason == engine.ReasonRoomBetween {
			out = append(out, d.style.sentence(f, worked{question: d.Question, answer: d.Answer}))
		}
	}
	return out
}

// numbered names things by their numbers: "Load 3", "Loads 1, 2 and 4", "Loads
// 1 to 9".
func numbered(what string, numbers []int) string {
	first, last := numbers[0], numbers[len(numbers)-1]
	switch {
	case len(numbers) == 1:
		return fmt.Sprintf("%s %d", what, first)
	case len(numbers) > 2 && last-first == len(numbers)-1:
		return fmt.Sprintf("%ss %d to %d", what, first, last)
	case len(numbers) > 6:
		return fmt.Sprintf("%s %d and %d others like it", what, first, len(numbers)-1)
	}
	var each []string
	for _, n := range numbers {
		each = append(each, fmt.Sprint(n))
	}
	return what + "s " + listed(each, "and")
}

// bedsOf draws one load, a bed for each layer. The drawing's X runs along the
// bed, the plan's across it.
func bedsOf(day engine.Day, load engine.DayLoad, name string) []picture.Bed {
	var out []picture.Bed
	for _, p := range load.Panels {
		for len(out) <= p.Layer {
			out = append(out, picture.Bed{})
		}
		across, along := day.Sizes[p.Panel].Width, day.Sizes[p.Panel].Length
		if p.Turned {
			across, along = along, across
		}
		out[p.Layer].Panels = append(out[p.Layer].Panels, picture.Placed{
			Name: sizeLetter(day, p.Panel), X: p.Y, Y: p.X, Along: along, Across: across,
		})
	}
	for k := range out {
		out[k].Name = name
		if len(out) > 1 {
			out[k].Name = fmt.Sprintf("%s, layer %d", name, k+1)
		}
	}
	return out
}
