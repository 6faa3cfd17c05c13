package bot

import (
	"fmt"
	"slices"

	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

// How many of a plan are drawn; more would not be legible.
const (
	maxDrawnPanels = 8
	maxDrawnBeds   = 8
)

// strips draws what each panel is made of, those made alike once.
func (d Drawn) strips() picture.StripLayout {
	out := picture.StripLayout{Units: d.units()}
	sets, _ := d.Answer.Values[unit.Picks].(unit.Sets)
	var counts []int
	var drawn []string
	for i, set := range sets {
		p := picture.StripPanel{Target: d.pickTarget(i), Wedge: d.pickGap(i)}
		for _, w := range set {
			p.Widths = append(p.Widths, unit.Millimetres(w))
		}
		key := fmt.Sprint(p.Target, p.Widths)
		if k := slices.Index(drawn, key); k >= 0 {
			counts[k]++
			continue
		}
		if len(drawn) < maxDrawnPanels {
			drawn, counts = append(drawn, key), append(counts, 1)
			out.Panels = append(out.Panels, p)
		}
	}
	for i, n := range counts {
		if n > 1 {
			out.Panels[i].Name = fmt.Sprintf("%d panels like this", n)
		}
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

// pickGap is what a pick leaves for the wedge.
func (d Drawn) pickGap(i int) unit.Length {
	if gaps, ok := d.Answer.Values[unit.WedgeGap].(unit.Triples); ok {
		if i < len(gaps) && gaps[i].Mid != nil {
			return unit.Millimetres(*gaps[i].Mid)
		}
		return 0
	}
	return d.length(unit.WedgeGap)
}

// beds draws where the panels of each load lie, loads alike once.
func (d Drawn) beds() picture.BedPlan {
	day := d.Answer.Day
	if day == nil {
		return picture.BedPlan{}
	}
	out := picture.BedPlan{Units: d.units(), Width: day.Bed.Width, Length: day.Bed.Length}
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
		for _, b := range bedsOf(*day, l, loadsNamed(names[k])) {
			if len(out.Beds) < maxDrawnBeds {
				out.Beds = append(out.Beds, b)
			}
		}
	}
	return out
}

// loadsNamed names loads by their numbers: "Load 3", "Loads 1, 2 and 4", "Loads
// 1 to 9".
func loadsNamed(numbers []int) string {
	first, last := numbers[0], numbers[len(numbers)-1]
	switch {
	case len(numbers) == 1:
		return fmt.Sprintf("Load %d", first)
	case len(numbers) > 2 && last-first == len(numbers)-1:
		return fmt.Sprintf("Loads %d to %d", first, last)
	case len(numbers) > 6:
		return fmt.Sprintf("Load %d and %d others like it", first, len(numbers)-1)
	}
	var each []string
	for _, n := range numbers {
		each = append(each, fmt.Sprint(n))
	}
	return "Loads " + listed(each, "and")
}

// bedsOf draws one load, a bed for each layer. The drawing's X runs along the
// bed, the plan's across it.
func bedsOf(day engine.Day, load engine.DayLoad, name string) []picture.Bed {
	var out []picture.Bed
	for i, p := range load.Panels {
		for len(out) <= p.Layer {
			out = append(out, picture.Bed{})
		}
		across, along := day.Sizes[p.Panel].Width, day.Sizes[p.Panel].Length
		if p.Turned {
			across, along = along, across
		}
		out[p.Layer].Panels = append(out[p.Layer].Panels, picture.Placed{
			Name: fmt.Sprint(i + 1), X: p.Y, Y: p.X, Along: along, Across: across,
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
