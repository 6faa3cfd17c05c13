package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// A countedLayer is a part of a stack with its thickness and how many of it there are:
// "2x sled 18", "strips 7/16 (x2)", "mat 1/8".
type countedLayer struct {
	noun, amount int
	count        int // the item of how many, -1 where none is told
	n            int
}

// countedLayers reads a stack told as a list of how many there are of each part: "2x sled
// 18, 2x strips 14, 1x mat 8". What there is as many of as of sleds lies on each of them.
func (r *reader) countedLayers() bool {
	if !r.means(kindNoun, "sled") || !r.means(kindNoun, "strip", "panel") {
		return false
	}
	rows := r.countedRows()
	n := map[string]int{}
	for _, c := range rows {
		part := r.partOf(c)
		if n[part] > 0 || c.count < 0 && in(part, "sled", "strips") {
			return false
		}
		n[part] = c.n
	}
	sleds, fills := n["sled"], n["strips"]
	if sleds < 2 || fills == 0 {
		return false
	}
	layers := r.countedLevels(rows, sleds, fills)
	first, last := rows[0].first(), 0
	for _, c := range rows {
		r.items[c.noun].used, r.items[c.amount].used = true, true
		if c.count >= 0 {
			r.items[c.count].used = true
			r.bound = slices.DeleteFunc(r.bound, func(b binding) bool { return b.from == c.count })
		}
		last = max(last, c.noun, c.amount, c.count)
	}
	if layers == nil {
		r.refuse(unit.StackLayers, r.textOf(first, last), "")
		return true
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.StackLayers, Value: layers, Unit: r.bareUnit(nil, unit.Distance), Text: r.textOf(first, last)}, first, false})
	return true
}

// countedLevels lays the parts on each other; nil where their numbers make no levels.
func (r *reader) countedLevels(rows []countedLayer, sleds, fills int) unit.Layers {
	var level, once unit.Layers
	between := -1
	for _, c := range rows {
		v, _, ok := r.valueOf(r.items[c.amount].amount, unit.StripThickness)
		l := unit.Layer{Part: r.partOf(c), Thickness: v}
		switch {
		case !ok || impossible(unit.StripThickness, v) != "":
			return nil
		case l.Part == "sled" && len(level)+len(once) > 0:
			return nil // told from the top
		case c.n == fills || l.Part == "sled":
			level = append(level, l)
		case c.n == fills-1 && c.n > 1 && between < 0:
			between = len(level)
			level = append(level, l)
		case c.n == 1:
			once = append(once, l)
		default:
			return nil
		}
	}
	lidded := sleds == 2*fills // "4x sled, 2x strips": each has one below and one above
	if sleds != fills && sleds != fills+1 && !lidded {
		return nil
	}
	var layers unit.Layers
	for k := range fills {
		for j, l := range level {
			if j != between || k < fills-1 {
				layers = append(layers, l)
			}
		}
		if lidded {
			layers = append(layers, level[0])
		}
	}
	if sleds > fills && !lidded {
		layers = append(layers, level[0])
	}
	return append(layers, once...)
}

// partOf is the part of a stack that a row counts.
func (r *reader) partOf(c countedLayer) string { return layerParts[r.items[c.noun].id] }

func (c countedLayer) first() int {
	if c.count >= 0 && c.count < c.noun {
		return c.count
	}
	return min(c.noun, c.amount)
}

// countedRows are the parts of a list, each with its thickness right beside it.
func (r *reader) countedRows() []countedLayer {
	var rows []countedLayer
	for i := range r.items {
		if !r.is(i, kindNoun, "sled", "strip", "panel", "mat", "caul", "fence") || r.word(i, "top") {
			continue
		}
		c := countedLayer{noun: i, amount: i + 1, n: 1}
		if !r.free(i+1) || !r.length(i+1) {
			c.amount = i - 1
		}
		if !r.free(c.amount) || !r.length(c.amount) {
			continue
		}
		c.count = r.countAround(min(c.amount, i), max(c.amount, i))
		if c.count >= 0 {
			c.n, _ = r.items[c.count].amount.whole()
		} else if r.items[c.amount].amount.link != linkNone {
			continue
		}
		rows = append(rows, c)
	}
	return rows
}

// countAround is the item of how many there are of the part that stands from one item to
// another: "2x sled 18", "2 x 18 sleds", "sled 3/4 (x2)"; -1 where none is.
func (r *reader) countAround(from, to int) int {
	at := to + 1
	for r.word(at, "x") || at < len(r.items) && r.items[at].brk == '(' {
		at++
	}
	switch {
	case r.smallCount(at) && (r.timesAt(at) || at > to+1 && r.items[at-1].brk == 'x'):
		return at
	case from > 1 && r.items[from-1].brk == 'x' && r.smallCount(from-2):
		return from - 2
	case from > 0 && r.timesAt(from) && r.smallCount(from-1):
		return from - 1
	}
	return -1
}

// smallCount reports whether the number at item i may count layers.
func (r *reader) smallCount(i int) bool {
	if i < 0 || i >= len(r.items) || r.items[i].amount == nil || r.items[i].amount.dead || r.items[i].used && r.boundAt(i) != unit.StripCount {
		return false
	}
	n, ok := r.items[i].amount.whole()
	return ok && n > 0 && n <= 12 && r.items[i].amount.bare()
}
