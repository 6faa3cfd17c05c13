package bot

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// restocked gives a count and a width to the stock that the thread chooses from:
// "I only have 5 3s", "plus 6 at 2", "no 3s".
func (t *turn) restocked(p grammar.Phrase) grammar.Phrase {
	t.freeOfCount(p)
	x, _ := t.before.Said.find(unit.StockPiles)
	stock, ok := x.Value.(unit.Piles)
	if !ok || p.NewStart || stated(p.Facts, unit.StockPiles) {
		for _, a := range p.Gone {
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], a.Text)
		}
		for _, row := range p.Rows {
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], row.Count.Text, row.Width.Text)
		}
		return p
	}
	p = t.narrowOnes(p, stock, x)
	piles := slices.Clone(stock)
	for _, a := range p.Gone {
		if k := pileOf(piles, t.stockWidth(a, x)); k >= 0 {
			piles = slices.Delete(piles, k, k+1)
		} else {
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], a.Text)
		}
	}
	p, corrected := t.rewidened(p, piles, x)
	changed := len(piles) < len(stock)
	for _, row := range p.Rows {
		var ok bool
		if piles, ok = t.withRow(piles, row, t.stockWidth(row.Width, x)); !ok {
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], row.Count.Text, row.Width.Text)
		}
		changed = changed || ok
	}
	count, width, told := countAndWidth(p.Facts)
	if told && width > widestOfPile { // "two of them 30 wide" are panels
		p.Facts, told = asPanels(p.Facts), false
	}
	if told {
		piles = withPile(piles, unit.Pile{Width: width, Count: count}, t.addsStock())
		p.Facts = slices.DeleteFunc(slices.Clone(p.Facts), func(f grammar.Fact) bool { return f.Field == unit.StripCount || f.Field == unit.StripWidth })
	}
	if told || corrected || changed {
		p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: unit.StockPiles, Value: piles, Unit: named[x.Unit], Text: strings.TrimSpace(t.m.Text)})
	}
	return p
}

// rewidened corrects the widths of piles in place: "the 62s are actually 60".
func (t *turn) rewidened(p grammar.Phrase, piles unit.Piles, stock Said) (grammar.Phrase, bool) {
	var rest []grammar.Amendment
	for _, a := range p.Amends {
		k := -1
		if a.Was != 0 {
			k = pileOf(piles, t.stockWidth(grammar.Amendment{Value: a.Was}, stock))
		}
		if k < 0 { // "the 8 are actually 2 1/8"
			k = slices.IndexFunc(piles, func(p unit.Pile) bool { return a.Was != 0 && float64(p.Count) == a.Was })
		}
		if k < 0 {
			rest = append(rest, a)
			continue
		}
		piles[k].Width = t.stockWidth(a, stock)
	}
	corrected := len(rest) < len(p.Amends)
	p.Amends = rest
	return p, corrected
}

// withRow returns piles with so many more or fewer of one width, or with their
// count told anew; ok is false where there are none that many can go from.
func (t *turn) withRow(piles unit.Piles, row grammar.Row, width float64) (out unit.Piles, ok bool) {
	n, k := int(row.Count.Value), pileOf(piles, width)
	switch {
	case !row.Less && k < 0 && !t.addsStock(), row.Left && (k < 0 || piles[k].Count < n):
		return piles, false
	case !row.Less:
		return withPile(piles, unit.Pile{Width: width, Count: n}, t.addsStock()), true
	case k < 0 || piles[k].Count < n:
		return piles, false
	case piles[k].Count == n:
		return slices.Delete(piles, k, k+1), true
	}
	piles[k].Count -= n
	return piles, true
}

// stockWidth is a bare width in the unit of the stock, in mm.
func (t *turn) stockWidth(a grammar.Amendment, stock Said) float64 {
	u := a.Unit
	if u.Symbol == "" {
		u = t.unitOf(stock)
	}
	n, _ := amendment(unit.StripWidth, u, a).Value.(unit.Number)
	return float64(n)
}

// countAndWidth returns the strips of one width that a message tells of.
func countAndWidth(facts []grammar.Fact) (count int, width float64, ok bool) {
	for _, f := range facts {
		n, _ := f.Value.(unit.Number)
		switch f.Field {
		case unit.StripCount:
			count = int(n)
		case unit.StripWidth:
			width = float64(n)
		}
	}
	return count, width, count > 0 && width > 0
}

// widestOfPile, in mm: what is wider is a panel and no strip; our estimate.
const widestOfPile = 300

// asPanels takes a count and a width of strips for those of panels to be made.
func asPanels(facts []grammar.Fact) []grammar.Fact {
	out := slices.Clone(facts)
	for i, f := range out {
		switch f.Field {
		case unit.StripCount:
			out[i].Field = unit.PanelCount
		case unit.StripWidth:
			out[i].Field = unit.TargetWidth
		}
	}
	return out
}

// withPile returns piles with one told anew, or with more added to it.
func withPile(piles unit.Piles, p unit.Pile, adds bool) unit.Piles {
	k := pileOf(piles, p.Width)
	switch {
	case k < 0:
		return append(piles, p)
	case adds:
		piles[k].Count += p.Count
	default:
		piles[k].Count = p.Count
	}
	return piles
}

func pileOf(piles unit.Piles, width float64) int {
	return slices.IndexFunc(piles, func(p unit.Pile) bool { return math.Abs(p.Width-width) < 0.01 })
}

// addsStock reports whether strips come to those that are there.
func (t *turn) addsStock() bool {
	words := strings.Fields(strings.ToLower(t.m.Text))
	if slices.Contains(words, "theres") || slices.Contains(words, "there's") || slices.Contains(words, "makes") {
		return false // "found another one so theres 8 at 3 1/4" tells them all
	}
	return slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains([]string{"plus", "more", "add", "another", "extra", "found", "also"}, w)
	})
}

// usesFirst is how one would have strips of a width used up before others.
var usesFirst = regexp.MustCompile(`(?i)\b(?:use|using|start with|burn|get rid of|finish|take)\b.*\bfirst\b|\buse up\b|\bget rid of\b`)

// narrowOnes reads "use the 2 1/8s first" of the narrowest strips there are.
func (t *turn) narrowOnes(p grammar.Phrase, stock unit.Piles, x Said) grammar.Phrase {
	if len(p.Amends) != 1 || !namesWidth(p.Amends[0]) || !usesFirst.MatchString(t.m.Text) || len(stock) < 2 {
		return p
	}
	width := t.stockWidth(p.Amends[0], x)
	for _, pile := range stock {
		if pile.Width < width-0.01 {
			return p
		}
	}
	p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: unit.UseFirst, Value: unit.Word("narrow"), Text: p.Amends[0].Text})
	p.Amends = nil
	return p
}

// namesWidth reports whether a bare number names strips by their width: "the 3s".
func namesWidth(a grammar.Amendment) bool {
	text := strings.TrimRight(strings.ToLower(a.Text), "'’")
	return a.Was == 0 && strings.HasSuffix(text, "s") && len(text) > 1 && strings.ContainsAny(text[:len(text)-1], digits) && a.Unit.Symbol == ""
}

// freeOfCount forgets how many strips a panel had where a thread that asked of its pressing
// is told a stock: what is chosen from it need not be as many, nor as wide.
func (t *turn) freeOfCount(p grammar.Phrase) {
	said := t.before.Said
	pressing := said.has(unit.StripThickness, unit.Vacuum, unit.BarHeight)
	if !pressing || !stated(p.Facts, unit.StockPiles) || said.has(unit.StockPiles, unit.TargetWidth, unit.Targets) || stated(p.Facts, unit.StripCount) || slices.ContainsFunc(t.before.Asks, func(w Wanted) bool { return w.About == grammar.Strips }) {
		return
	}
	t.before.Said = said.without(unit.StripCount, unit.StripWidth, unit.StripWidths)
}
