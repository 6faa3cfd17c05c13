package grammar_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"presshand/engine/unit"
	"presshand/grammar"
)

// A refusal is a message of testdata/refuse and the lines below it, which say
// what of it must not be read:
//
//	refused strip thickness: 1/0     a number that cannot be, as typed
//	clash bar height: 1 in, 3/4 in   one field, two values
//	unused: 7                        left where it stands
//	unknown                          nothing of ours
//
// The line "> …", the reply's first, is the bot's to hold.
type refusal struct {
	at, text string
	metric   bool
	wants    []string
}

func TestRefuse(t *testing.T) {
	for _, r := range refusals(t, "../testdata/refuse/*/*.txt") {
		p := grammar.Parse(r.text, grammar.Habit{Metric: r.metric})
		for _, want := range r.wants {
			if wrong := refuses(p, want); wrong != "" {
				t.Errorf("%s %q\n\twant %s; %s", r.at, r.text, want, wrong)
			}
		}
	}
}

// refuses says what is wrong with the phrase where a line wants something
// refused.
func refuses(p grammar.Phrase, want string) string {
	kind, texts, _ := strings.Cut(want, ":")
	kind, name, _ := strings.Cut(kind, " ")
	list := strings.Split(strings.TrimSpace(texts), ", ")
	switch kind {
	case "refused":
		if i := slices.IndexFunc(p.Refused, func(r grammar.Refusal) bool { return labelOf(r.Field) == name }); i < 0 || p.Refused[i].Text != list[0] || p.Refused[i].Want == "" {
			return fmt.Sprintf("refused %+v", p.Refused)
		}
	case "clash":
		if i := slices.IndexFunc(p.Clashes, func(c grammar.Clash) bool { return labelOf(c.Field) == name }); i < 0 || !slices.Equal(p.Clashes[i].Texts, list) {
			return fmt.Sprintf("clashes %+v", p.Clashes)
		}
	case "unused":
		for _, x := range list {
			if !slices.Contains(p.Unused, x) {
				return fmt.Sprintf("unused %q", p.Unused)
			}
		}
	case "unknown":
		if len(p.Asks) > 0 || p.Command != nil {
			return fmt.Sprintf("asks %v, command %v", p.Asks, p.Command)
		}
	default:
		return "no such line"
	}
	if got := strings.TrimPrefix(grammar.Print(p), "= "); name != "" && (strings.HasPrefix(got, name+": ") || strings.Contains(got, "; "+name+": ")) {
		return "read as " + got
	}
	return ""
}

// labelOf is a field's label in the long form.
func labelOf(f unit.Field) string {
	var v unit.Value = unit.Number(1)
	if f.Dimension() == unit.Text {
		v = unit.Word("x")
	}
	name, _, _ := strings.Cut(strings.TrimPrefix(grammar.Print(grammar.Phrase{Facts: []grammar.Fact{{Field: f, Value: v}}}), "= "), ":")
	return name
}

// refusals reads the refusals that match a pattern.
func refusals(t *testing.T, pattern string) []refusal {
	t.Helper()
	paths, err := filepath.Glob(pattern)
	if err != nil || len(paths) == 0 {
		t.Fatalf("nothing to refuse at %s: %v", pattern, err)
	}
	var out []refusal
	for _, path := range paths {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		had, metric := len(out), false
		for _, block := range strings.Split(string(b), "\n\n") {
			r := refusal{at: filepath.Base(filepath.Dir(path)) + "/" + filepath.Base(path)}
			for _, line := range strings.Split(strings.TrimSpace(block), "\n") {
				switch {
				case strings.HasPrefix(line, "#"):
					metric = metric || strings.TrimSpace(line[1:]) == "metric"
				case line == "" || strings.HasPrefix(line, ">"):
				case r.text == "":
					r.text = line
				default:
					r.wants = append(r.wants, line)
				}
			}
			if r.metric = metric; r.text != "" {
				out = append(out, r)
			}
			if r.text != "" && len(r.wants) == 0 {
				t.Errorf("%s %q: nothing is wanted", r.at, r.text)
			}
		}
		if len(out) == had {
			t.Errorf("%s has nothing to refuse", path)
		}
	}
	return out
}
