package bot

import (
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// withWishes returns what was said with the wishes gathered in one object.
func withWishes(fs unit.Facts) unit.Facts {
	wishes := unit.Facts{}
	for _, f := range unit.Wished {
		if v, ok := fs[f]; ok {
			wishes[f] = v
			delete(fs, f)
		}
	}
	if len(wishes) > 0 {
		fs[unit.Wishes] = wishes
	}
	return fs
}

// holding returns the sentence on a choice of strips with the wishes that the
// choice keeps in front of it.
func (s style) holding(says string, f engine.Finding, w worked) string {
	kept, _ := f.Figures[unit.Held].(unit.Words)
	if says == "" || len(kept) == 0 {
		return says
	}
	var each []string
	for _, k := range kept {
		field := unit.Field(k)
		if field == unit.StripCount && f.Reason == engine.ReasonStockShortOfFew {
			continue // the sentence says so
		}
		wish := s.saying(field, w.stated(field), s.fields[field])
		if field == unit.StripCount {
			wish = "at most " + wish
		}
		each = append(each, wish)
	}
	if len(each) == 0 {
		return says
	}
	return "With " + listed(each, "and") + ", " + lower(says)
}

// stated is what the thread says of f, or else the room.
func (w worked) stated(f unit.Field) unit.Value {
	if v, ok := w.question.Said[f]; ok {
		return v
	}
	return w.question.Room[f]
}

// maxOrders is how many panels laid differently are told strip by strip; the
// drawing shows all.
const maxOrders = 3

// orderLines tell how the strips lie where neighbours are to differ.
func (s style) orderLines(w worked) []string {
	picks, _ := w.answer.Values[unit.Picks].(unit.Sets)
	if w.stated(unit.Neighbours) != unit.Word("differ") {
		return nil
	}
	var out []string
	for _, set := range picks {
		line := "In this order: " + s.inARow(set)
		if len(out) < maxOrders && !slices.Contains(out, line) {
			out = append(out, line)
		}
	}
	return out
}

// inARow shows widths with their unit behind the last.
func (s style) inARow(widths []float64) string {
	var each []string
	for k, width := range widths {
		text := s.stated(unit.StripWidth, width, s.fields[unit.StockPiles])
		if k < len(widths)-1 {
			text = text[:strings.LastIndexByte(text, ' ')]
		}
		each = append(each, text)
	}
	return strings.Join(each, ", ")
}
