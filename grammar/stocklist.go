package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// A stock may be a list of hundreds of widths, "42 45 48 51 … mm", or of counts
// and widths, "12 @ 2 1/4, 8 @ 2 1/2, …". Such a run is folded into one token
// before the tree is built: it is read in one go, and its numbers do not count
// among those that may mean anything.

// A stockList is such a run.
type stockList struct {
	entries []stockEntry
	counted bool       // counts and widths; else each is one strip
	unit    *unit.Unit // of its bare widths; nil where nothing says
}

// A stockEntry is so many strips of a width.
type stockEntry struct {
	count  int
	width  amount
	from   int    // its first token
	end    int    // the token after it
	text   string // as typed
	parted string // what parts it from the entry before
}

// From so many entries on a run is a list by itself. Shorter ones are where the
// message chooses strips and says that these are widths.
const (
	longList  = 10
	longPiles = 12
	shortList = 3
)

// folded returns tokens with each run of a stock as one of them.
func folded(tokens []token, text string) []token {
	cue := stockCue(tokens)
	if tooFew(tokens, cue) {
		return tokens
	}
	var out []token
	done := 0
	if head, _ := table(text); head != nil {
		return tokens // its columns have names
	}
	for i := 0; i < len(tokens); {
		run := entriesFrom(tokens, i)
		if len(run) == 0 {
			i++
			continue
		}
		end := run[len(run)-1].end
		if l, last := listOf(tokens, run, cue); l != nil {
			l.quote(tokens, text)
			first := tokens[run[0].from]
			t := token{symbol: symTerm, start: first.start, end: tokens[last-1].end, meaning: meaning{kind: kindStock}, list: l}
			t.text = text[t.start:t.end]
			out = append(append(out, tokens[done:run[0].from]...), t)
			done, end = last, last
		}
		i = end
	}
	if done == 0 {
		return tokens
	}
	return append(out, tokens[done:]...)
}

// quote keeps each entry as typed.
func (l *stockList) quote(tokens []token, text string) {
	for i := range l.entries {
		e := &l.entries[i]
		e.text = text[tokens[e.from].start:tokens[e.end-1].end]
	}
}

// stockCue reports whether a message chooses strips and says nothing of pressing
// them.
func stockCue(tokens []token) bool {
	cue := false
	for i := range tokens {
		switch m := tokens[i].meaning; {
		case m.kind == kindRole && (m.id == "target" || m.id == "trim"), m.kind == kindAsk && strings.HasPrefix(m.id, "strips"):
			cue = true
		case m.kind == kindVacuum, m.kind == kindNoun && m.id == "bar", m.kind == kindUnit && m.unit.Dimension == unit.Pressing:
			return false
		}
	}
	return cue
}

// entriesFrom returns the entries from token i on that only commas, "and", new
// lines and the like part, all with a count or all without.
func entriesFrom(tokens []token, i int) []stockEntry {
	if i > 0 && tokens[i-1].symbol >= symMinus && tokens[i-1].symbol <= symAt {
		return nil
	}
	var run []stockEntry
	parted := ""
	for {
		e, ok := entryAt(tokens, i)
		if !ok || len(run) > 0 && (e.count > 0) != (run[0].count > 0) {
			return run
		}
		e.parted = parted
		run = append(run, e)
		i, parted = parting(tokens, e.end)
	}
}

// parting returns the token after what parts two entries, and that in one
// spelling.
func parting(tokens []token, i int) (next int, parted string) {
	for ; i < len(tokens); i++ {
		t := &tokens[i]
		switch {
		case t.symbol == symComma, t.symbol == symSlash, t.symbol == symBreak && (t.norm == "\n" || t.norm == ";"),
			t.symbol == symMark && (t.norm == "+" || t.norm == "&" || t.norm == "|"):
			parted = t.norm
		case t.norm == "and" && t.symbol != symTo:
		default:
			return i, parted
		}
	}
	return i, parted
}

// entryAt reads "42", "2 1/4 in", "12 @ 2 1/4", "12 pcs of 54 mm".
func entryAt(tokens []token, i int) (stockEntry, bool) {
	first, j := amountAt(tokens, i)
	if j == i {
		return stockEntry{}, false
	}
	e := stockEntry{width: first, from: i, end: j}
	n, whole := first.whole()
	k, joined := joinedTo(tokens, j)
	if !joined {
		return e, !linked(tokens, j)
	}
	width, end := amountAt(tokens, k)
	if !whole || n < 1 || end == k || linked(tokens, end) {
		return stockEntry{}, false
	}
	if end < len(tokens) && tokens[end].meaning.kind == kindAttr && tokens[end].meaning.id == "wide" {
		end++
	}
	e.count, e.width, e.end = n, width, end
	return e, true
}

// joinedTo returns the token after what joins a count to its width.
func joinedTo(tokens []token, i int) (next int, joined bool) {
	for k := i; k < len(tokens) && k < i+4; k++ {
		t := &tokens[k]
		switch {
		case t.symbol == symAt, t.symbol == symTimes:
			return k + 1, true
		case t.norm == "of", t.norm == "off", t.norm == "at", t.norm == "@", t.norm == "x":
			joined = true
		case t.meaning.kind == kindNoun && t.meaning.id == "strip":
		default:
			return k, joined && k > i
		}
	}
	return i, false
}

// linked reports whether the amount before token i goes on: 24 x 48, 5/16 to 3/8.
func linked(tokens []token, i int) bool {
	return i < len(tokens) && tokens[i].symbol >= symTimes && tokens[i].symbol <= symAt
}

// amountAt reads a length from token i on and returns the token after it; i
// where there is none.
func amountAt(tokens []token, i int) (amount, int) {
	var am amount
	if i >= len(tokens) || tokens[i].plural {
		return am, i
	}
	j := i + 1
	switch tokens[i].symbol {
	case symInt:
		am.form, am.value = formInt, rational(tokens[i].norm)
		if j < len(tokens) && tokens[j].symbol == symFraction && !tokens[j].plural {
			part := rational(tokens[j].norm)
			if part == nil || am.value == nil || part.Cmp(one) >= 0 {
				return am, i
			}
			am.form = formMixed
			am.value.Add(am.value, part)
			j++
		}
	case symDecimal:
		am.form, am.value = formDecimal, rational(tokens[i].norm)
	case symFraction:
		am.form, am.value = formFraction, rational(tokens[i].norm)
	}
	if am.value == nil {
		return am, i
	}
	if j < len(tokens) && tokens[j].symbol == symUnit {
		u := tokens[j].meaning.unit
		if u.Dimension != unit.Distance {
			return am, i
		}
		am.unit, am.unitRaw = u, tokens[j].norm
		j++
	}
	return am, j
}

// listOf makes a list of a run where it is one, and returns the token after it.
func listOf(tokens []token, run []stockEntry, cue bool) (*stockList, int) {
	l := &stockList{counted: run[0].count > 0}
	if !l.counted {
		run = withoutTarget(tokens, run)
	}
	l.entries, l.unit = run, unitOf(tokens, run)
	paired := !l.counted && len(run) >= 2*shortList && (inPairs(run) || pairedByMarks(run) && len(run) >= longList)
	if columns := !l.counted && cue && inRows(run); columns {
		if l.entries = rows(tokens, run); l.entries == nil {
			return nil, 0
		}
		l.counted = true
		return l, run[len(run)-1].end
	}
	switch {
	case !l.counted && inTable(tokens, run[0].from):
		return nil, 0
	case l.counted && len(run) < longPiles, len(run) < shortList, otherwise(tokens, run):
		return nil, 0
	case !l.counted && countsOn(run):
		return nil, 0
	case !l.counted && len(run) < longList && !(cue && (paired || !inPairs(run) && (l.unit != nil || saidWidths(tokens, run) || mostlyBroken(run)))):
		return nil, 0
	case paired && !l.pair():
		return nil, 0
	}
	return l, run[len(run)-1].end
}

// withoutTarget drops a last number that is not of the list: "42 45 48, 1200
// wide".
func withoutTarget(tokens []token, run []stockEntry) []stockEntry {
	n := len(run)
	if n <= shortList || run[n-1].end >= len(tokens) {
		return run
	}
	next := tokens[run[n-1].end].meaning
	if next.kind != kindAttr && !(next.kind == kindNoun && next.id == "panel") {
		return run
	}
	most := 0.0
	for _, e := range run[:n-1] {
		most = max(most, e.width.float())
	}
	if from := run[n-1].from; tokens[from-1].norm == "and" && tokens[run[n-1].end].meaning.kind == kindAttr && run[n-1].width.float() <= 1.5*most {
		return run // "3 1/2, 3 1/2 and 4 1/4 wide"
	}
	if run[n-1].parted != run[n-2].parted || run[n-1].width.float() > 3*most {
		return run[:n-1]
	}
	return run
}

// otherwise reports whether a direction beside a run says that it is of no widths:
// "thicknesses .74 .75 .76 …".
func otherwise(tokens []token, run []stockEntry) bool {
	other := func(i int) bool {
		return i >= 0 && i < len(tokens) && tokens[i].meaning.kind == kindAttr && tokens[i].meaning.id != "wide"
	}
	from := run[0].from
	return other(run[len(run)-1].end) || other(from-1) || other(from-2)
}

// countsOn reports whether a run is 1, 2, 3 and so on: nobody's widths.
func countsOn(run []stockEntry) bool {
	for i, e := range run {
		if n, whole := e.width.whole(); !whole || n != i+1 || e.width.unit != nil {
			return false
		}
	}
	return true
}

// saidWidths reports whether a word beside a run says that it is of widths.
func saidWidths(tokens []token, run []stockEntry) bool {
	last := run[len(run)-1]
	wide := func(m meaning) bool {
		return m.kind == kindAttr && m.id == "wide" || m.kind == kindNoun && m.id == "strip"
	}
	if last.end < len(tokens) && wide(tokens[last.end].meaning) {
		return true
	}
	for i := run[0].from - 1; i >= 0 && i >= run[0].from-3; i-- {
		if wide(tokens[i].meaning) {
			return true
		}
	}
	return false
}

// mostlyBroken reports whether most of a run's numbers are broken ones, which are no
// counts: "got 2 1/2, 3, 3 1/4, 2 3/4".
func mostlyBroken(run []stockEntry) bool {
	broken := 0
	for _, e := range run {
		if !e.width.value.IsInt() {
			broken++
		}
	}
	return len(run) > shortList && 2*broken >= len(run)
}

// farApart is how many times the widths of a run of counts and widths are at least
// as large as the counts, or the other way round.
const farApart = 1.7

// inPairs reports whether each second number of a run is of another size than
// those between: counts and widths.
func inPairs(run []stockEntry) bool {
	if len(run)%2 != 0 {
		return false
	}
	lows, highs := [2]float64{1e12, 1e12}, [2]float64{}
	broken := [2]bool{}
	for i, e := range run {
		v := e.width.float()
		lows[i%2], highs[i%2] = min(lows[i%2], v), max(highs[i%2], v)
		broken[i%2] = broken[i%2] || !e.width.value.IsInt() || i%2 == 0 && e.width.unit != nil
	}
	if broken[0] {
		return false
	}
	return broken[1] || lows[1] > farApart*highs[0] || lows[0] > farApart*highs[1]
}

// pairedByMarks reports whether a mark stands between each two numbers and none
// within them: "12 54, 9 76, 7 95".
func pairedByMarks(run []stockEntry) bool {
	if len(run)%2 != 0 {
		return false
	}
	for i, e := range run {
		if i > 0 && (e.parted == "") != (i%2 == 1) {
			return false
		}
	}
	return true
}

// pair takes each two numbers for a count and a width.
func (l *stockList) pair() bool {
	var out []stockEntry
	for i := 0; i+1 < len(l.entries); i += 2 {
		n, ok := l.entries[i].width.whole()
		if !ok || n < 1 {
			return false
		}
		e := l.entries[i+1]
		e.count, e.from = n, l.entries[i].from
		out = append(out, e)
	}
	l.entries, l.counted = out, true
	return true
}

// unitOf returns the unit of a run's bare widths: that of the others, or one
// named beside it ("widths in mm: 42 45 …").
func unitOf(tokens []token, run []stockEntry) *unit.Unit {
	var found *unit.Unit
	for i := range run {
		if u := run[i].width.unit; u != nil {
			if found != nil && found.Symbol != u.Symbol {
				return nil
			}
			found = u
		}
	}
	if found != nil {
		return found
	}
	end := run[len(run)-1].end
	for _, i := range []int{run[0].from - 1, run[0].from - 2, run[0].from - 3, end, end + 1, end + 2} {
		if i < 0 || i >= len(tokens) {
			continue
		}
		if m := &tokens[i].meaning; m.kind == kindUnit && m.unit.Dimension == unit.Distance && tokens[i].norm != "in" && tokens[i].symbol != symUnit {
			return m.unit
		}
	}
	return nil
}
