package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// A pasted table of stock has a heading and rows of as many cells, parted by tabs or
// bars.

// A row of a table is where its cells begin and end in the text.
type row [][2]int

// cellsOf cuts the line [from, to) of text at each tab or bar; fewer than three cells
// are no table's.
func cellsOf(text string, from, to int) row {
	cut := byte('|')
	if strings.IndexByte(text[from:to], '\t') >= 0 {
		cut = '\t'
	}
	var cells row
	at := from
	for i := from; i <= to; i++ {
		if i < to && text[i] != cut {
			continue
		}
		if cell := strings.TrimSpace(text[at:i]); cell != "" || at > from && i < to {
			cells = append(cells, [2]int{at, i})
		}
		at = i + 1
	}
	if len(cells) < 3 {
		return nil
	}
	return cells
}

// table finds a heading without a number and the rows below it.
func table(text string) (head row, rows []row) {
	if !strings.Contains(text, "\n") || !strings.ContainsAny(text, "\t|") {
		return nil, nil
	}
	for at := 0; at < len(text); {
		to := at + strings.IndexByte(text[at:]+"\n", '\n')
		cells := cellsOf(text, at, to)
		line := text[at:to]
		switch {
		case head != nil && len(cells) == len(head) && strings.ContainsAny(line, "0123456789"):
			rows = append(rows, cells)
		case head != nil && strings.Trim(line, " |-:\t\r+") == "": // a rule
		case len(rows) > 0:
			return head, rows
		case len(cells) > 0 && !strings.ContainsAny(line, "0123456789"):
			head = cells
		default:
			head = nil
		}
		at = to + 1
	}
	if len(rows) == 0 {
		return nil, nil
	}
	return head, rows
}

// stockTables reads a table of several rows that have a width and a count each for
// what is in stock.
func (r *reader) stockTables() {
	head, rows := table(r.text)
	if head == nil {
		return
	}
	fields := make([]unit.Field, len(head))
	for c, cell := range head {
		fields[c] = r.columnOf(cell)
	}
	width, count := -1, -1
	for c, f := range fields {
		switch f {
		case unit.StripWidth:
			width = c
		case unit.StripCount:
			count = c
		}
	}
	if width >= 0 && count >= 0 && len(rows) > 1 && !r.mentions(kindNoun, "bar") {
		r.stockTable(head, rows, width, count)
	}
}

// columnOf is what the column under a heading's cell holds; "" for what no load has.
func (r *reader) columnOf(cell [2]int) unit.Field {
	f := unit.Field("")
	for i := range r.items {
		if r.items[i].start < cell[0] || r.items[i].end > cell[1] || r.items[i].brk != 0 {
			continue
		}
		switch {
		case r.is(i, kindAttr, "wide"):
			return unit.StripWidth
		case r.is(i, kindAttr, "thick"):
			return unit.StripThickness
		case r.is(i, kindAttr, "long"):
			return unit.StripLength
		case r.is(i, kindNoun, "bar"):
			return unit.BarHeight
		case r.is(i, kindVacuum):
			return unit.Vacuum
		case r.is(i, kindRole, "job"):
			return unit.Job
		case r.word(i, "qty", "quantity", "count", "nos", "number", "pcs", "n") || r.is(i, kindNoun, "strip"):
			f = unit.StripCount
		}
	}
	return f
}

// amountIn is the one free amount of a cell; -1 where there is none or more.
func (r *reader) amountIn(cell [2]int) int {
	at := -1
	for i := range r.items {
		if r.items[i].start >= cell[0] && r.items[i].end <= cell[1] && r.items[i].amount != nil {
			if at >= 0 || !r.free(i) {
				return -1
			}
			at = i
		}
	}
	return at
}

// unitOf gives the bare amount of a cell the unit that stands in its heading.
func (r *reader) unitOf(head, cell [2]int) {
	i := r.amountIn(cell)
	for k := range r.items {
		if i >= 0 && r.items[i].amount.bare() && r.items[k].start >= head[0] && r.items[k].end <= head[1] && r.items[k].kind == kindUnit {
			r.items[i].amount.unit, r.items[i].amount.unitRaw = r.items[k].unit, r.items[k].word
		}
	}
}

// quietCells keeps the words of a heading from looking for numbers.
func (r *reader) quietCells(head row) {
	for i := range r.items {
		if it := &r.items[i]; it.start >= head[0][0] && it.end <= head[len(head)-1][1] && it.amount == nil {
			it.used = true
			if it.kind != kindNoun || it.id != "bar" && it.id != "strip" {
				it.meaning = meaning{}
			}
		}
	}
}

// stockTable binds each row as a pile; a cell under another heading stays unread.
func (r *reader) stockTable(head row, rows []row, width, count int) {
	var piles unit.Piles
	var taken []int
	for _, cells := range rows {
		r.unitOf(head[width], cells[width])
		w, n := r.amountIn(cells[width]), r.amountIn(cells[count])
		if w < 0 || n < 0 {
			return
		}
		v, _, ok := r.valueOf(r.items[w].amount, unit.StripWidth)
		c, whole := r.items[n].amount.whole()
		if !ok || !whole || c < 1 || c > mostOfAPile || impossible(unit.StripWidth, v) != "" {
			return
		}
		piles = append(piles, unit.Pile{Width: v, Count: c})
		taken = append(taken, w, n)
	}
	for _, cells := range rows {
		for i := range r.items {
			if r.items[i].start >= cells[0][0] && r.items[i].end <= cells[len(cells)-1][1] && r.items[i].amount != nil {
				r.items[i].amount.dead = true
			}
		}
	}
	for _, i := range taken {
		r.items[i].used = true
	}
	r.quietCells(head)
	text := r.text[rows[0][0][0]:rows[len(rows)-1][len(head)-1][1]]
	r.bound = append(r.bound, binding{Fact{Field: unit.StockPiles, Value: piles, Unit: r.bareUnit(nil, unit.Distance), Text: text}, taken[0], false})
}
