package grammar

import (
	"bufio"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"presshand/engine/unit"
)

func TestWholeIn(t *testing.T) {
	for _, c := range []struct {
		text, digits string
		want         bool
	}{
		{"22", "2", false}, {"155 mm", "5", false}, {"100", "0", false}, {"122", "2", false}, {"12", "2", false}, {"2", "2", true},
		{"22 2", "2", true}, {"2 1/4", "4", true}, {"12.25", "25", true}, {"", "2", false},
	} {
		if got := wholeIn(c.text, c.digits); got != c.want {
			t.Errorf("wholeIn(%q, %q) = %v", c.text, c.digits, got)
		}
	}
}

func TestInWord(t *testing.T) {
	for text, want := range map[string]bool{"": false, "d": true, "bar ": false, "m³": true, "1/": false, "é": true, "\uFFFD": false} {
		if got := inWord(text); got != want {
			t.Errorf("inWord(%q) = %v", text, got)
		}
	}
}

// What the rules set aside without saying so, the net catches: no rule may count on it.
func TestLeaveNone_hasNothingToCatch(t *testing.T) {
	tried := 0
	for _, m := range threads(t) {
		for _, h := range []Habit{{}, {Metric: true}, {Follows: true}, {Metric: true, Follows: true}} {
			if longMark == m[:min(1, len(m))] {
				continue
			}
			tokens := folded(tokenize(m), m)
			tree, err := parser.ParseFromLexer(peek(tokens))
			if err != nil {
				t.Fatal(err)
			}
			r := &reader{text: m, habit: h, items: items(nil, tree, tokens)}
			r.finish()
			r.read()
			r.follows()
			before := slices.Clone(r.phrase.Unused)
			r.leaveNone()
			if now := r.phrase.Unused; len(now) > len(before) {
				t.Errorf("%q (%+v): only the net keeps %q", m, h, now[len(before):])
			}
			tried++
		}
	}
	if tried < 40000 {
		t.Errorf("only %d readings tried", tried)
	}
}

// threads are all messages of testdata/messages.
func threads(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../testdata/messages/*.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, name := range files {
		f, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		lines := bufio.NewScanner(f)
		lines.Buffer(nil, 1<<20)
		for lines.Scan() {
			var c struct{ Thread []string }
			if err := json.Unmarshal(lines.Bytes(), &c); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			all = append(all, c.Thread...)
		}
		if err := lines.Err(); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// What tells a fact again goes with that fact: it is of use where the fact is, and unused
// where that is.
func TestParse_again(t *testing.T) {
	for text, want := range map[string]struct {
		field         unit.Field
		again, unused []string
	}{
		"25 inHg, that's 12.3 psi":                     {unit.Vacuum, []string{"12.3 psi"}, nil},
		`7 strips, 3/4 thick, 0.75 thick`:              {unit.StripThickness, []string{"0.75"}, nil},
		`7 strips, 3/4 thick, 0.75 thick, no 1" thick`: {unit.StripThickness, nil, []string{"3/4", "0.75"}},
		"panel 24 in wide, 610 mm wide, 48 long":       {unit.PanelWidth, []string{"610 mm"}, nil},
		"5 strips 2 in wide and 2 in wide, 25 inHg":    {unit.StripWidth, nil, nil},
	} {
		p := Parse(text, Habit{})
		at := slices.IndexFunc(p.Facts, func(f Fact) bool { return f.Field == want.field })
		if at < 0 {
			t.Errorf("%q: no %s in %v", text, want.field, p.Facts)
			continue
		}
		if !slices.Equal(p.Facts[at].Again, want.again) || !slices.Equal(p.Unused, want.unused) {
			t.Errorf("%q: again %q, unused %q; want %q, %q", text, p.Facts[at].Again, p.Unused, want.again, want.unused)
		}
	}
}
