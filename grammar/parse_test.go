package grammar_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"presshand/engine/unit"
	"presshand/grammar"
)

// read returns what a message states, by field.
func read(t *testing.T, text string, metric bool) map[unit.Field]unit.Value {
	t.Helper()
	facts := map[unit.Field]unit.Value{}
	for _, f := range grammar.Parse(text, grammar.Habit{Metric: metric}).Facts {
		facts[f.Field] = f.Value
	}
	return facts
}

func near(a, b unit.Value) bool {
	x, okX := a.(unit.Number)
	y, okY := b.(unit.Number)
	if okX && okY {
		return math.Abs(float64(x-y)) <= 1e-9*math.Max(math.Abs(float64(x)), math.Abs(float64(y)))
	}
	return reflect.DeepEqual(a, b)
}

// One inch is 25.4 mm and one conventional inch of mercury 3.386389 kPa (NIST
// SP 811); the fractions are worked by hand.
func TestParse_numbers(t *testing.T) {
	for _, c := range []struct {
		text  string
		field unit.Field
		want  float64
	}{
		{"bar 2 1/4", unit.BarHeight, 57.15},
		{"bar 2-1/4", unit.BarHeight, 57.15},
		{"bar 2¼", unit.BarHeight, 57.15},
		{"bar 2.25", unit.BarHeight, 57.15},
		{`2 1/4" bar`, unit.BarHeight, 57.15},
		{"two and a quarter inch bar", unit.BarHeight, 57.15},
		{"2 and a quarter inch bar", unit.BarHeight, 57.15},
		{"inch and a half bar", unit.BarHeight, 38.1},
		{"half inch bar", unit.BarHeight, 12.7},
		{"three quarter inch bar", unit.BarHeight, 19.05},
		{".290 thick strips", unit.StripThickness, 7.366},
		{"bar 38 mm", unit.BarHeight, 38},
		{"bar 3,5 cm", unit.BarHeight, 35},
		{`strips 6'8" long`, unit.StripLength, 2032},
		{"strips 6 ft 8 long", unit.StripLength, 2032},
		{"pulling 25 inHg", unit.Vacuum, 84.659725},
		{`25"Hg`, unit.Vacuum, 84.659725},
		{"gauge says 25", unit.Vacuum, 84.659725},
		{"-0.85 bar", unit.Vacuum, 85},
		{"0,85 bar", unit.Vacuum, 85},
		{"0.08 N/mm²", unit.Vacuum, 80},
		{"thickness varies by a 64th", unit.ThicknessSpread, 0.396875},
		{"we're at 5,280 ft", unit.Altitude, 1609.344},
	} {
		got := read(t, c.text, false)
		if !near(got[c.field], unit.Number(c.want)) {
			t.Errorf("%q: %s is %v, want %g (all: %v)", c.text, c.field, got[c.field], c.want, got)
		}
	}
}

func TestParse_impossibleNumbersAreRefused(t *testing.T) {
	for _, c := range []struct {
		text  string
		field unit.Field
	}{
		{"5 strips 1/0 thick", unit.StripThickness},
		{"strip width is -3 in", unit.StripWidth},
		{"0 strips 2 wide", unit.StripCount},
		{"strips 2000 ft long, 5 strips", unit.StripLength},
		{"pulling 40 inHg", unit.Vacuum},
	} {
		p := grammar.Parse(c.text, grammar.Habit{})
		found := false
		for _, r := range p.Refused {
			found = found || r.Field == c.field && r.Want != ""
		}
		for _, f := range p.Facts {
			if f.Field == c.field {
				t.Errorf("%q: took %v for %s", c.text, f.Value, c.field)
			}
		}
		if !found {
			t.Errorf("%q: %s not refused: %+v", c.text, c.field, p.Refused)
		}
	}
}

func TestParse_laterNumberCounts(t *testing.T) {
	for text, want := range map[string]float64{
		"5 strips, sorry 6":                         6,
		"5 strips, no wait, 6 strips":               6,
		"5 strips 2 wide, make that 6 strips":       6,
		"8 strips, I mean 9, 2 1/4 wide, 1/4 thick": 9,
	} {
		p := grammar.Parse(text, grammar.Habit{})
		if got := read(t, text, false)[unit.StripCount]; !near(got, unit.Number(want)) {
			t.Errorf("%q: strip count %v, want %g", text, got, want)
		}
		if len(p.Unused) == 0 {
			t.Errorf("%q: the number that was corrected is not in unused", text)
		}
	}
}

func TestParse_twoValuesAreNotChosenFrom(t *testing.T) {
	p := grammar.Parse("5 strips 2 1/4 wide, 1 in bar, 3/4 in bar, 25 inHg", grammar.Habit{})
	if len(p.Clashes) != 1 || p.Clashes[0].Field != unit.BarHeight {
		t.Fatalf("clashes %+v, want one of the bar", p.Clashes)
	}
	if got, ok := read(t, "5 strips 2 1/4 wide, 1 in bar, 3/4 in bar, 25 inHg", false)[unit.BarHeight]; ok {
		t.Errorf("bar %v was chosen", got)
	}
}

func TestParse_alternativesAreCompared(t *testing.T) {
	for _, text := range []string{"5 strips 2 wide, 1 or 1 1/2 bar?", "1 in bar or 1 1/2 bar? 5 strips 2 wide", "a 1 inch bar or a 1½? 5 strips 2 wide"} {
		p := grammar.Parse(text, grammar.Habit{})
		if len(p.Choices) != 1 || p.Choices[0].Field != unit.BarHeight || len(p.Choices[0].Values) != 2 {
			t.Errorf("%q: choices %+v", text, p.Choices)
			continue
		}
		if a, b := p.Choices[0].Values[0].Value, p.Choices[0].Values[1].Value; !near(a, unit.Number(25.4)) || !near(b, unit.Number(38.1)) {
			t.Errorf("%q: %v and %v", text, a, b)
		}
	}
}

func TestParse_woodThatTheTableLacks(t *testing.T) {
	for _, text := range []string{"5 hoop pine strips 2 wide", "tassie oak strips 2 wide", "bog oak, 2 wide strips"} {
		p := grammar.Parse(text, grammar.Habit{})
		for _, f := range p.Facts {
			if f.Field == unit.Species {
				t.Errorf("%q: taken for %v", text, f.Value)
			}
		}
		if len(p.Unused) == 0 {
			t.Errorf("%q: the wood is not in unused", text)
		}
	}
}

func TestParse_misspeltTradeWords(t *testing.T) {
	for text, want := range map[string]unit.Value{"walnutt strips": unit.Word("walnut"), "mahogony strips": unit.Word("mahogany")} {
		p := grammar.Parse(text, grammar.Habit{})
		if got := read(t, text, false)[unit.Species]; got != want || len(p.Taken) != 1 {
			t.Errorf("%q: %v, taken %v", text, got, p.Taken)
		}
	}
}

// messages are every line of the corpora, as seeds and for the laws.
func messages(t testing.TB) []string {
	t.Helper()
	paths, err := filepath.Glob("../testdata/phrases/*.txt")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no corpus in testdata/phrases: %v", err)
	}
	var out []string
	for _, p := range paths {
		b, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(string(b), "\n") {
			if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "=") {
				out = append(out, line)
			}
		}
	}
	return out
}

func TestParse_noonIsAClockTime(t *testing.T) {
	for text, want := range map[string]unit.Facts{
		"14 panels 24x48, start 7:30, out by noon":              {unit.StartTime: unit.Word("07:30"), unit.Deadline: unit.Word("12:00")},
		"14 panels 24x48, start at noon":                        {unit.StartTime: unit.Word("12:00")},
		"14 panels 24x48, has to be out before midday, start 7": {unit.StartTime: unit.Word("07:00"), unit.Deadline: unit.Word("12:00")},
	} {
		got := read(t, text, false)
		for f, v := range want {
			if got[f] != v {
				t.Errorf("%q: %s is %v, want %v", text, f, got[f], v)
			}
		}
	}
}

// A most of strips beside a stock is how many may be taken, not a width.
func TestParse_mostStripsOfAStock(t *testing.T) {
	got := read(t, "got 12 at 2 1/8, 9 at 3; need 30 wide, at most 15 strips", false)
	if got[unit.StripCount] != unit.Number(15) || got[unit.StripWidth] != nil {
		t.Errorf("strips %v, width %v; want 15 and no width", got[unit.StripCount], got[unit.StripWidth])
	}
}

// A stock of hundreds is taken whole: one by one, strips of one width together,
// or as counts and widths.
func TestParse_longStock(t *testing.T) {
	var ones, piles []string
	for i := range 300 {
		ones = append(ones, fmt.Sprint(42+3*(i%20)))
		piles = append(piles, fmt.Sprintf("%d @ %d 1/4", 1+i%9, 2+i%3))
	}
	for text, want := range map[string]struct{ piles, strips int }{
		"need 1200 mm wide, widths " + strings.Join(ones, " ") + " mm":               {20, 300},
		"300 strips, all in mm: " + strings.Join(ones, ", ") + "\nneed 1200 mm wide": {20, 300},
		"need 48 wide from " + strings.Join(piles, ", "):                             {300, 300 / 9 * 45},
		"rack:\n" + strings.Join(piles, "\n") + "\nneed 48 wide":                     {300, 300 / 9 * 45},
	} {
		p := grammar.Parse(text, grammar.Habit{})
		got := read(t, text, false)
		stock, _ := got[unit.StockPiles].(unit.Piles)
		n := 0
		for _, s := range stock {
			n += s.Count
		}
		if len(stock) != want.piles || n < want.strips || n > want.strips+9 || got[unit.StripCount] != nil || got[unit.TargetWidth] == nil || len(p.Unused) > 0 {
			t.Errorf("%.40q: %d strips in %d piles, unused %.40q; want %d in %d", text, n, len(stock), p.Unused, want.strips, want.piles)
		}
	}
}

// Numbers in a row are no stock where they are told to be something else, or
// nothing.
func TestParse_rowsThatAreNoStock(t *testing.T) {
	for _, text := range []string{
		"my lottery numbers are 4 8 15 16 23 42 1 2 3 5 7",
		"thicknesses .74 .75 .76 .74 .73 .75 .76 .77 .74 .75",
		"5 strips 42, 45, 48, 51 and 60 mm wide, 6 mm thick, 25 mm bar, 0.85 bar",
	} {
		if s := read(t, text, false)[unit.StockPiles]; s != nil {
			t.Errorf("%q: stock %v, want none", text, s)
		}
	}
}
