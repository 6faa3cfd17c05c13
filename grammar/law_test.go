package grammar_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"presshand/engine/unit"
	"presshand/grammar"
)

// essence is what a phrase asks and states, without how it was typed.
func essence(p grammar.Phrase) string {
	var b strings.Builder
	for _, a := range p.Asks {
		if a.About == grammar.Book {
			continue
		}
		fmt.Fprintf(&b, "%s %s %v %s", a.About, a.Solve, a.For, a.Peril)
		for _, f := range unit.Said {
			if g, ok := a.Goal[f]; ok {
				fmt.Fprintf(&b, " goal %s", value(g.Value))
			}
		}
		b.WriteByte('\n')
	}
	for _, f := range p.Facts {
		fmt.Fprintf(&b, "%s %s\n", f.Field, value(f.Value))
	}
	for _, c := range p.Choices {
		fmt.Fprintf(&b, "%s or", c.Field)
		for _, f := range c.Values {
			fmt.Fprintf(&b, " %s", value(f.Value))
		}
		b.WriteByte('\n')
	}
	fmt.Fprint(&b, p.Drops)
	return b.String()
}

func value(v unit.Value) string {
	if n, ok := v.(unit.Number); ok {
		return fmt.Sprintf("%.9g", float64(n))
	}
	return fmt.Sprint(v)
}

// checkPrint holds the law that what is printed reads back the same.
func checkPrint(t *testing.T, text string, h grammar.Habit) {
	t.Helper()
	p := grammar.Parse(text, h)
	printed := grammar.Print(p)
	if printed == "" {
		return
	}
	if got, want := essence(grammar.Parse(printed, h)), essence(p); got != want {
		t.Errorf("%q printed as %q reads back as\n%s\nwant\n%s", text, printed, got, want)
	}
}

// digits are runs of digits that no letter stands before: "d3" is a word.
var digits = regexp.MustCompile(`(?:^|[^\p{L}\p{M}0-9²³])([0-9]+)`)

// markup is a chat service's own mention or link, whose digits are no numbers.
var markup = regexp.MustCompile(`https?://[^ \t\n<>"')]*|@[A-Za-z][A-Za-z0-9_.-]*|<(?:[@#!]|http)[^> \n]*>`)

// checkNumbers holds the law that no number is left behind: every digit of the
// message stands in something that was read or in what was not used.
func checkNumbers(t *testing.T, text string, h grammar.Habit) {
	t.Helper()
	p := grammar.Parse(text, h)
	kept := recorded(p)
	for _, m := range digits.FindAllStringSubmatch(markup.ReplaceAllString(text, " "), -1) {
		d := m[1]
		if !strings.Contains(kept, d) && !strings.Contains(kept, strings.TrimLeft(d, "0")) && !strings.Contains(strings.ToLower(fmt.Sprint(p.Terms)), d) {
			t.Errorf("%q: the number %s is neither read nor in unused (%q)", text, d, kept)
		}
	}
}

// recorded is every stretch of text that a phrase keeps.
func recorded(p grammar.Phrase) string {
	out := append([]string(nil), p.Unused...)
	fact := func(f grammar.Fact) { out = append(out, told(f)...) }
	for _, f := range p.Facts {
		fact(f)
	}
	for _, a := range p.Asks {
		for _, f := range a.Goal {
			fact(f)
		}
	}
	for _, c := range p.Choices {
		for _, f := range c.Values {
			fact(f)
		}
	}
	for _, r := range p.Refused {
		out = append(out, r.Text)
	}
	for _, c := range p.Clashes {
		out = append(out, c.Texts...)
	}
	for _, a := range p.Amends {
		out = append(out, a.Text)
	}
	for _, a := range p.Gone {
		out = append(out, a.Text)
	}
	for _, c := range p.Changes {
		out = append(out, c.By.Text)
	}
	for _, row := range p.Rows {
		out = append(out, row.Count.Text, row.Width.Text)
	}
	for _, tk := range p.Taken {
		out = append(out, tk.Typed)
	}
	for c := p.Command; c != nil; c = c.Then {
		out = append(out, fmt.Sprint(c.Loads), fmt.Sprint(c.From), c.Note, c.Title, c.Time, c.Clock, c.Press)
		out = append(out, c.Doubts...)
		for _, f := range c.Measured {
			fact(f)
		}
		if c.Query != nil && c.Query.Last > 0 {
			out = append(out, fmt.Sprint(c.Query.Last))
		}
	}
	return strings.Join(out, "\n")
}

// told is every way in which a fact may have been typed.
func told(f grammar.Fact) []string {
	out := append([]string{f.Text, fmt.Sprint(f.Value)}, f.Again...)
	if ls, ok := f.Value.(unit.Layers); ok { // so many levels alike
		out = append(out, fmt.Sprint(copies(ls)))
	}
	if ps, ok := f.Value.(unit.Piles); ok { // so many strips in all
		out = append(out, fmt.Sprint(strips(ps)))
	}
	if w, ok := f.Value.(unit.Word); ok {
		out = append(out, strings.ReplaceAll(string(w), ":", "")) // a clock time said again: "0900"
	}
	if n, ok := f.Value.(unit.Number); ok && f.Field.Dimension() == unit.Distance { // said again in inches: "2 ft wide … 24"
		out = append(out, fmt.Sprintf("%.6g", unit.Inch.Of(f.Field.SI(n))))
	}
	return out
}

// copies is how many layers there are of each part.
func copies(ls unit.Layers) map[string]int {
	n := map[string]int{}
	for _, l := range ls {
		n[l.Part]++
	}
	return n
}

// strips is how many there are in all piles.
func strips(ps unit.Piles) int {
	n := 0
	for _, p := range ps {
		n += p.Count
	}
	return n
}

// checkLaws holds the laws for a message that begins a thread and for one that follows.
func checkLaws(t *testing.T, text string, metric bool) {
	t.Helper()
	checkPrint(t, text, grammar.Habit{Metric: metric})
	checkNumbers(t, text, grammar.Habit{Metric: metric})
	checkNumbers(t, text, grammar.Habit{Metric: metric, Follows: true})
}

func TestLaws(t *testing.T) {
	for _, m := range messages(t) {
		for _, metric := range []bool{false, true} {
			checkLaws(t, m, metric)
		}
	}
}

// What is no number is none in the long form either, nor are several lines one entry:
// such a message is read like any other.
func TestParse_longFormWithoutSense(t *testing.T) {
	for _, c := range []struct{ text, number string }{
		{"= stack: sled NaN, strips 19", "19"}, {"= strip widths: Inf, 3", "3"}, {"= stock: 3 @ NaN", "3"}, {"=\nmat:\nalone?\n13", "13"},
	} {
		p := grammar.Parse(c.text, grammar.Habit{})
		for _, f := range p.Facts {
			if f.Field == unit.StackLayers || f.Field == unit.StripWidths || f.Field == unit.StockPiles || f.Field == unit.MatDenied {
				t.Errorf("%q states %s %v", c.text, f.Field, f.Value)
			}
		}
		if !strings.Contains(recorded(p), c.number) {
			t.Errorf("%q: %s is neither read nor unused (%q)", c.text, c.number, recorded(p))
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, m := range messages(f) {
		f.Add(m, false)
	}
	for _, m := range []string{"1/0", "1e400", "½½", "-", "5 5 5 5", "14 in", "'\"", "x x x", "1 in 1 in 1", "<@U1>", "٣ strips", "\xff\xfe", "1:12:13", "1.2.3", "between 25 inHg 26 inHg", strings.Repeat("9", 400)} {
		f.Add(m, true)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		if len(text) > 2000 {
			return
		}
		checkLaws(t, text, metric)
	})
}
