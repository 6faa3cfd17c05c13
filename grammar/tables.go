package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// A table has names in its first line and a number under each in the next, parted by
// strokes, tabs or wide gaps. A row is read as "name: number"; where rows differ it is
// asked which is meant.

// mostRows is of how many rows one is asked about.
const mostRows = 4

// leastColumns tells a table from a heading over a list of stock.
const leastColumns = 3

// A cell is the items [from, to) of one column in one line.
type cell struct{ from, to int }

// tables reads the rows of a table.
func (r *reader) tables() {
	if r.stockTables(); !r.says("\n") || r.has(unit.StockPiles) {
		return
	}
	lines := r.lines()
	for k := 0; k+1 < len(lines); k++ {
		if r.amountsIn(lines[k].from, lines[k].to) > 0 || lines[k].to-lines[k].from < leastColumns {
			continue
		}
		row := k + 1
		for row < len(lines) && r.ruled(lines[row]) {
			row++
		}
		if row >= len(lines) || r.amountsIn(lines[row].from, lines[row].to) < leastColumns {
			continue
		}
		heads, cells := r.cells(lines[k]), r.cells(lines[row])
		if len(heads) != len(cells) || len(heads) < leastColumns {
			continue
		}
		for n := 0; n < mostRows && row < len(lines) && len(cells) == len(heads); n++ {
			r.tableRow(heads, cells)
			if row++; row < len(lines) {
				cells = r.cells(lines[row])
			}
		}
		return
	}
}

// lines are the lines of a message of several.
func (r *reader) lines() []cell {
	var out []cell
	from := 0
	for i := range r.items {
		if r.items[i].brk != 0 && r.items[i].word == "\n" {
			out = append(out, cell{from, i})
			from = i + 1
		}
	}
	if out == nil {
		return nil
	}
	return append(out, cell{from, len(r.items)})
}

// ruled reports whether a line is drawn: "|---|---|".
func (r *reader) ruled(line cell) bool {
	for i := line.from; i < line.to; i++ {
		if b := r.items[i].brk; r.items[i].amount != nil || b != '|' && b != '-' && b != '=' && b != '+' && b != ':' && b != '_' && r.items[i].word != "-" {
			return false
		}
	}
	return true
}

// cells parts a line by its strokes, else by its semicolons, else by tabs and wide
// gaps; where there are none each name and each number is a cell.
func (r *reader) cells(line cell) []cell {
	parted := ""
	for i := line.from; i < line.to; i++ {
		switch {
		case r.items[i].brk == '|':
			parted = "|"
		case r.items[i].word == ";" && parted != "|":
			parted = ";"
		case parted == "" && i > line.from && wideGap(r.text[r.items[i-1].end:r.items[i].start]):
			parted = " "
		}
	}
	var out []cell
	from := line.from
	for i := line.from; i <= line.to; i++ {
		gap := i < line.to && i > from && (parted == " " && wideGap(r.text[r.items[i-1].end:r.items[i].start]) || parted == "")
		mark := i < line.to && (parted == "|" && r.items[i].brk == '|' || parted == ";" && r.items[i].word == ";")
		if i < line.to && !gap && !mark {
			continue
		}
		if i > from {
			out = append(out, cell{from, i})
		}
		if from = i; mark {
			from++
		}
	}
	return out
}

// wideGap reports whether what stands between two items parts columns.
func wideGap(s string) bool { return strings.Contains(s, "\t") || strings.Contains(s, "  ") }

// tableRow binds each number to what its column's name says.
func (r *reader) tableRow(heads, cells []cell) {
	known := 0
	fields := make([]unit.Field, len(heads))
	for k, h := range heads {
		if fields[k] = r.headed(h); fields[k] != "" {
			known++
		}
	}
	if known < leastColumns || r.mentions(kindRole, "target") {
		return
	}
	for k, c := range cells {
		i := c.from
		if !r.free(i) || r.amountsIn(c.from, c.to) != 1 {
			continue
		}
		if fields[k] == "" {
			r.items[i].amount.dead = true // of a column that no load has
			continue
		}
		am := r.items[i].amount
		if u := r.within(heads[k].from, heads[k].to, kindUnit); u >= 0 && am.unit == nil && r.items[u].unit.Dimension == fields[k].Dimension() {
			am.unit = r.items[u].unit
		}
		if _, whole := am.whole(); fields[k].Dimension() == unit.Count && !whole {
			continue
		}
		am.link = linkNone
		r.bind(i, fields[k])
		for j := heads[k].from; j < heads[k].to; j++ {
			r.items[j].used = true
		}
	}
}

// headed is what a column's name says that its numbers are; "" where it says nothing.
func (r *reader) headed(h cell) unit.Field {
	noun, attr := "", ""
	for i := h.from; i < h.to; i++ {
		it := &r.items[i]
		switch {
		case it.kind == kindNoun && noun == "":
			if noun = it.id; h.to-h.from == 1 && isPlural(it.word) && countFields[noun] != nil && noun != "bar" {
				return countFields[noun][0]
			}
		case it.kind == kindAttr:
			attr = it.id
		case shortAttr(it.word) != "":
			attr = shortAttr(it.word)
		case it.kind == kindVacuum, it.kind == kindUnit && it.unit.Dimension == unit.Pressing && noun == "":
			return unit.Vacuum
		case it.kind == kindAir && (it.id == "temp" || it.id == "shop"):
			return unit.ShopTemp
		case it.kind == kindRole && it.id == "name" && strings.HasPrefix(it.word, "n"), r.word(i, "qty", "quantity", "count", "number", "num", "no", "no.", "nr", "n", "pcs", "off"), it.brk == '#':
			if noun == "panel" {
				return unit.PanelCount
			}
			return unit.StripCount
		}
	}
	if attr == "" {
		return map[string]unit.Field{"bar": unit.BarHeight, "mat": unit.MatThickness, "caul": unit.CaulThickness, "sled": unit.SledThickness, "opening": unit.Opening}[noun]
	}
	if noun == "" {
		noun = "strip"
		if attr == "tall" {
			return ""
		}
	}
	return attrFields[noun][attr]
}
