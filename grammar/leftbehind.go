package grammar

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"presshand/engine/unit"
)

// leaveNone puts among the unused every number of the message that stands in nothing
// that was kept, as where one correction takes the place of another: a number may be of
// no use, but never ignored in silence.
func (r *reader) leaveNone() {
	for at := 0; at < len(r.text); {
		c := r.text[at]
		if !isDigit(rune(c)) {
			at++
			if c == '@' || c == '<' || c == 'h' && strings.HasPrefix(r.text[at:], "ttp") {
				at += max(markup(r.text[at-1:])-1, 0)
			}
			continue
		}
		end := at
		for end < len(r.text) && isDigit(rune(r.text[end])) {
			end++
		}
		if digits := r.text[at:end]; !inWord(r.text[:at]) && !r.phrase.keeps(digits) {
			r.unuse(r.typedAt(at, end))
		}
		at = end
	}
}

// inWord reports whether what comes behind text belongs to its last word: "d3", "m³".
func inWord(text string) bool {
	last, _ := utf8.DecodeLastRuneInString(text)
	if last < utf8.RuneSelf {
		return unicode.IsLetter(last)
	}
	return unicode.IsLetter(last) || unicode.IsMark(last) || last == '²' || last == '³'
}

// typedAt is the amount that the digits from at to end are of, or the digits themselves.
func (r *reader) typedAt(at, end int) string {
	for i := range r.items {
		if it := &r.items[i]; it.amount != nil && it.start <= at && end <= it.end {
			return r.text[it.start:it.end]
		}
	}
	return r.text[at:end]
}

// keeps reports whether digits stand in what p tells of the message.
func (p *Phrase) keeps(digits string) bool {
	for i := range p.Facts {
		if wholeIn(p.Facts[i].Text, digits) {
			return true // as most do
		}
	}
	bare := strings.TrimLeft(digits, "0")
	has := func(text string) bool {
		return text != "" && (wholeIn(text, digits) || bare != "" && bare != digits && wholeIn(text, bare))
	}
	return slices.ContainsFunc(p.Unused, has) || p.anyFact(func(f Fact) bool { return has(f.Text) || slices.ContainsFunc(f.Again, has) }) ||
		p.keptAside(has) || p.Command.keeps(has) || p.anyFact(func(f Fact) bool { return valueHas(f, has) })
}

// anyFact reports whether ok holds for a fact, a goal or one of several offered.
func (p *Phrase) anyFact(ok func(Fact) bool) bool {
	if slices.ContainsFunc(p.Facts, ok) {
		return true
	}
	for _, a := range p.Asks {
		for _, f := range a.Goal {
			if ok(f) {
				return true
			}
		}
	}
	return slices.ContainsFunc(p.Choices, func(c Choice) bool { return slices.ContainsFunc(c.Values, ok) })
}

// keptAside looks into what a phrase has beside its facts.
func (p *Phrase) keptAside(has func(string) bool) bool {
	return slices.ContainsFunc(p.Refused, func(x Refusal) bool { return has(x.Text) }) ||
		slices.ContainsFunc(p.Clashes, func(c Clash) bool { return slices.ContainsFunc(c.Texts, has) }) ||
		slices.ContainsFunc(p.Amends, func(a Amendment) bool { return has(a.Text) }) ||
		slices.ContainsFunc(p.Gone, func(a Amendment) bool { return has(a.Text) }) ||
		slices.ContainsFunc(p.Changes, func(c Change) bool { return has(c.By.Text) }) ||
		slices.ContainsFunc(p.Rows, func(row Row) bool { return has(row.Count.Text) || has(row.Width.Text) }) ||
		slices.ContainsFunc(p.Taken, func(t Taken) bool { return has(t.Typed) }) ||
		slices.ContainsFunc(p.Terms, has)
}

// valueHas looks for digits in a fact's value, where another way to write it than its
// text was typed too: "2 ft wide, that's 24", "at 9:00 (0900)", "300 strips: 40 at 2, …".
func valueHas(f Fact, has func(string) bool) bool {
	switch v := f.Value.(type) {
	case unit.Word:
		return has(string(v)) || has(strings.ReplaceAll(string(v), ":", ""))
	case unit.Number:
		return has(fmt.Sprint(v)) || f.Field.Dimension() == unit.Distance && has(fmt.Sprintf("%.6g", unit.Inch.Of(f.Field.SI(v))))
	case unit.Piles:
		strips := 0
		for _, pile := range v {
			strips += pile.Count
		}
		return has(strconv.Itoa(strips)) || has(fmt.Sprint(v))
	case unit.Layers:
		alike := map[string]int{}
		for _, l := range v {
			alike[l.Part]++
		}
		return has(fmt.Sprint(alike, v))
	}
	return has(fmt.Sprint(f.Value))
}

// keeps looks into a word to the load book and those behind it.
func (c *Command) keeps(has func(string) bool) bool {
	if c == nil {
		return false
	}
	number := func(n int) bool { return has(strconv.Itoa(n)) }
	return slices.ContainsFunc([]string{c.Note, c.Title, c.Time, c.Clock, c.Press}, has) || slices.ContainsFunc(c.Doubts, has) ||
		slices.ContainsFunc(c.Loads, number) || c.From > 0 && number(c.From) || c.Query != nil && c.Query.Last > 0 && number(c.Query.Last) ||
		slices.ContainsFunc(c.Measured, func(f Fact) bool { return has(f.Text) || slices.ContainsFunc(f.Again, has) || valueHas(f, has) }) || c.Then.keeps(has)
}

// wholeIn reports whether the digits d stand in text, not as part of a longer number.
func wholeIn(text, d string) bool {
	for from := 0; ; {
		at := strings.Index(text[from:], d)
		if at < 0 {
			return false
		}
		at += from
		end := at + len(d)
		if (at == 0 || !isDigit(rune(text[at-1]))) && (end == len(text) || !isDigit(rune(text[end]))) {
			return true
		}
		from = at + 1
	}
}
