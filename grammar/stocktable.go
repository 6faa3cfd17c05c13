package grammar

// A table of stock has a width and a count in each row, in either order: a heading
// says which, else the column that alone has whole numbers holds the counts.

// inRows reports whether each two numbers of a run stand in a row of their own.
func inRows(run []stockEntry) bool {
	if len(run) < 4 || len(run)%2 != 0 {
		return false
	}
	for i, e := range run {
		if i > 0 && (e.parted == "\n") != (i%2 == 0) || i%2 == 1 && e.parted != "" && e.parted != "|" {
			return false
		}
	}
	return true
}

// rows takes each two numbers of a run for a width and a count; nil where nothing
// tells which is which.
func rows(tokens []token, run []stockEntry) []stockEntry {
	count := headedStock(tokens, run[0].from)
	if count < 0 {
		count = countColumn(run)
	}
	if count < 0 {
		return nil
	}
	var out []stockEntry
	for i := 0; i < len(run); i += 2 {
		n, ok := run[i+count].width.whole()
		if !ok || n < 1 {
			return nil
		}
		e := run[i+1-count]
		e.count, e.from, e.end = n, run[i].from, run[i+1].end
		out = append(out, e)
	}
	return out
}

// inTable reports whether the line before token i names more columns than a stock has.
func inTable(tokens []token, i int) bool {
	k, names := i-1, 0
	for k >= 0 && (tokens[k].symbol == symMark || tokens[k].symbol == symBreak && tokens[k].norm == "\n") {
		k--
	}
	if k < 0 || k == i-1 && tokens[k].symbol != symMark {
		return false
	}
	for ; k >= 0 && tokens[k].symbol != symBreak; k-- {
		switch tokens[k].meaning.kind {
		case kindNoun, kindAttr, kindVacuum, kindAir:
			names++
		}
	}
	return names >= leastColumns
}

// headedStock is the column of the counts by the heading before token i; -1 where there
// is none.
func headedStock(tokens []token, i int) int {
	wide, count := -1, -1
	for k := i - 1; k >= 0 && k >= i-8; k-- {
		switch t := &tokens[k]; {
		case t.meaning.kind == kindAttr && t.meaning.id == "wide":
			wide = k
		case in(t.norm, "qty", "quantity", "count", "pcs", "number", "how many", "amount", "nos", "off", "pieces"):
			count = k
		}
	}
	switch {
	case wide < 0 || count < 0:
		return -1
	case wide < count:
		return 1
	}
	return 0
}

// countColumn is the one column of whole numbers without a unit; -1 where both or
// none are.
func countColumn(run []stockEntry) int {
	whole := [2]bool{true, true}
	for i, e := range run {
		whole[i%2] = whole[i%2] && e.width.value.IsInt() && e.width.unit == nil
	}
	switch {
	case whole[0] && !whole[1]:
		return 0
	case whole[1] && !whole[0]:
		return 1
	}
	return -1
}

// tooFew reports whether tokens have fewer numbers than the shortest list has entries.
func tooFew(tokens []token, cue bool) bool {
	need := longList
	if cue {
		need = shortList
	}
	for i := range tokens {
		switch tokens[i].symbol {
		case symInt, symDecimal, symFraction:
			need--
		}
	}
	return need > 0
}
