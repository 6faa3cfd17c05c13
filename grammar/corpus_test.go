package grammar_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"presshand/engine/unit"
	"presshand/grammar"
)

// A meaning is what the wordings below it say: a line "= ask: side; bar height:
// 1 in" in the long form, or "= book: check 14; measured bar height: 1 in".
type meaning struct {
	phrase grammar.Phrase
	terms  []string // "term: caul": the words that are asked about
}

// A wording is one line of a corpus and what it means; " ⏎ " in it parts the
// lines of a message. Without left behind it no number of it may be unused.
type wording struct {
	at     string // file:line
	text   string
	metric bool
	means  meaning
	left   []string // the line "! 2, chapter 6" after it
}

func TestCorpus(t *testing.T) {
	for _, w := range wordings(t, "../testdata/phrases/*.txt") {
		p := grammar.Parse(w.text, grammar.Habit{Metric: w.metric})
		got, want := facets(p, p.Terms, w.means), facets(w.means.phrase, w.means.terms, w.means)
		lacks, extra := without(want, got), without(got, want)
		if len(lacks)+len(extra) > 0 {
			t.Errorf("%s %q\n\tlacks %s\n\textra %s", w.at, w.text, strings.Join(lacks, "; "), strings.Join(extra, "; "))
		}
		if wrong := w.leftWrong(p.Unused); wrong != "" {
			t.Errorf("%s %q\n\tunused %q, %s", w.at, w.text, p.Unused, wrong)
		}
	}
}

// TestCorpus_isRich holds what the corpus promises: each topic has a file of its
// own, and both habits are heard.
func TestCorpus_isRich(t *testing.T) {
	topics, metric, n := map[grammar.Topic]int{}, 0, 0
	for _, w := range wordings(t, "../testdata/phrases/*.txt") {
		n++
		if w.metric {
			metric++
		}
		for _, a := range w.means.phrase.Asks {
			topics[a.About]++
		}
	}
	for _, about := range []grammar.Topic{
		grammar.Face, grammar.Side, grammar.Flatten, grammar.Stack, grammar.Strips, grammar.Glue, grammar.Pump, grammar.Move,
		grammar.Load, grammar.Schedule, grammar.Book, grammar.Profile, grammar.Safety, grammar.Why, grammar.Words,
	} {
		if topics[about] < 10 {
			t.Errorf("%d wordings about %s, want 10 or more", topics[about], about)
		}
	}
	if n < 450 || metric < 80 {
		t.Errorf("%d wordings, %d of them metric; want 450 and 80 or more", n, metric)
	}
}

// leftWrong says what is wrong with the words that were left unused.
func (w wording) leftWrong(unused []string) string {
	all := strings.ToLower(strings.Join(unused, " | "))
	for _, l := range w.left {
		if !strings.Contains(all, strings.ToLower(l)) {
			return fmt.Sprintf("want %q in it", l)
		}
	}
	for _, u := range unused {
		expected := slices.ContainsFunc(w.left, func(l string) bool {
			return strings.Contains(strings.ToLower(u), strings.ToLower(l)) || strings.Contains(strings.ToLower(l), strings.ToLower(u))
		})
		if !expected && strings.ContainsFunc(u, unicode.IsNumber) {
			return "want no number in it"
		}
	}
	return ""
}

// facets are what a phrase asks and states, one line each, in an order of
// their own. Which figure is asked for counts where the meaning names one, and a
// topic that was only told from the facts where the meaning asks something.
func facets(p grammar.Phrase, terms []string, m meaning) []string {
	figures := slices.ContainsFunc(m.phrase.Asks, func(a grammar.Ask) bool { return len(a.For) > 0 })
	var out []string
	for _, a := range p.Asks {
		if p.Inferred && len(m.phrase.Asks) == 0 {
			continue
		}
		s := "ask " + string(a.About) + " " + string(a.Solve)
		if figures {
			s += fmt.Sprint(" figures ", slices.Compact(slices.Sorted(slices.Values(a.For))))
		}
		out = append(out, s+" "+string(a.Peril))
		for _, g := range a.Goal {
			out = append(out, "goal "+facet(g))
		}
	}
	for _, d := range p.Drops {
		out = append(out, "without "+string(d))
	}
	for _, f := range p.Facts {
		out = append(out, facet(f))
	}
	for _, c := range p.Choices {
		s := "either"
		for _, f := range c.Values {
			s += " " + facet(f)
		}
		out = append(out, s)
	}
	for _, r := range p.Refused {
		out = append(out, "refused "+string(r.Field)+" "+r.Text)
	}
	for _, c := range p.Clashes {
		out = append(out, fmt.Sprintf("clash %s %v", c.Field, c.Texts))
	}
	for _, term := range m.terms { // the words around it are kept too
		if slices.Contains(terms, term) {
			out = append(out, "term "+term)
		}
	}
	out = append(append(out, commandFacets(p.Command, m.phrase.Command)...), pictureFacets(p)...)
	slices.Sort(out)
	return out
}

// commandFacets are those of a word to the load book. That it may be a length
// counts where the meaning says so.
func commandFacets(c, means *grammar.Command) []string {
	if c == nil {
		return nil
	}
	out := []string{fmt.Sprintf("book: %s %v", c.Verb, c.Loads)}
	for _, s := range []struct{ name, value string }{
		{"note", c.Note}, {"title", c.Title}, {"time", c.Time}, {"press name", c.Press},
	} {
		if s.value != "" {
			out = append(out, s.name+" "+s.value)
		}
	}
	if c.From != 0 {
		out = append(out, fmt.Sprintf("from %d", c.From))
	}
	if c.Anyway {
		out = append(out, "anyway")
	}
	if c.Bare && means != nil && means.Bare {
		out = append(out, "bare")
	}
	for _, f := range c.Measured {
		out = append(out, "measured "+facet(f))
	}
	if c.Query != nil {
		out = append(out, fmt.Sprintf("query %+v", *c.Query))
	}
	return out
}

func facet(f grammar.Fact) string { return string(f.Field) + " " + rounded(f.Value) }

// rounded writes a value so that 1/3 of a foot and 4 in come out the same.
func rounded(v unit.Value) string {
	six := func(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
	switch v := v.(type) {
	case unit.Number:
		return six(float64(v))
	case unit.Numbers:
		var ss []string
		for _, x := range v {
			ss = append(ss, six(x))
		}
		return strings.Join(ss, ", ")
	case unit.Piles:
		var ss []string
		for _, p := range v {
			ss = append(ss, fmt.Sprintf("%d @ %s x %s", p.Count, six(p.Width), six(p.Length)))
		}
		return strings.Join(ss, ", ")
	case unit.Layers:
		var ss []string
		for _, l := range v {
			ss = append(ss, l.Part+" "+six(math.Abs(l.Thickness)))
		}
		return strings.Join(ss, ", ")
	}
	return fmt.Sprint(v)
}

// without is what a holds and b does not, counting what stands twice.
func without(a, b []string) []string {
	b = slices.Clone(b)
	var out []string
	for _, s := range a {
		if i := slices.Index(b, s); i >= 0 {
			b = slices.Delete(b, i, i+1)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// wordings reads the corpora that match a pattern.
func wordings(t *testing.T, pattern string) []wording {
	t.Helper()
	paths, err := filepath.Glob(pattern)
	if err != nil || len(paths) == 0 {
		t.Fatalf("no corpus at %s: %v", pattern, err)
	}
	var out []wording
	for _, path := range paths {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		ws := wordingsOf(t, filepath.Base(path), string(b))
		if len(ws) == 0 {
			t.Errorf("%s has no wordings", path)
		}
		out = append(out, ws...)
	}
	return out
}

func wordingsOf(t *testing.T, name, text string) []wording {
	t.Helper()
	var out []wording
	var means *meaning
	metric, mayLeave := false, false
	for i, line := range strings.Split(text, "\n") {
		at, line := fmt.Sprintf("%s:%d", name, i+1), strings.TrimSpace(line)
		switch {
		case line == "":
			continue
		case strings.HasPrefix(line, "#"):
			metric = metric || strings.TrimSpace(line[1:]) == "metric"
			continue
		case strings.HasPrefix(line, "="):
			m, err := meaningOf(line[1:])
			if err != nil {
				t.Fatalf("%s %q: %v", at, line, err)
			}
			means = &m
		case strings.HasPrefix(line, "!"):
			if !mayLeave {
				t.Fatalf("%s %q: no wording stands above it", at, line)
			}
			out[len(out)-1].left = strings.Split(strings.TrimSpace(line[1:]), ", ")
		case means == nil:
			t.Fatalf("%s %q: no meaning stands above it", at, line)
		default:
			out = append(out, wording{at: at, text: strings.ReplaceAll(line, " ⏎ ", "\n"), metric: metric, means: *means})
		}
		mayLeave = !strings.ContainsRune("=!", rune(line[0]))
	}
	return out
}

// meaningOf reads a meaning: entries "label: value" parted by semicolons.
func meaningOf(line string) (meaning, error) {
	var m meaning
	var c grammar.Command
	var plain []string
	for _, entry := range strings.Split(line, ";") {
		label, value, ok := strings.Cut(strings.TrimSpace(entry), ":")
		value = strings.TrimSpace(value)
		isCommand, err := enterCommand(&c, label, value)
		switch {
		case !ok:
			return m, fmt.Errorf("entry %q has no colon", entry)
		case err != nil:
			return m, err
		case isCommand:
		case label == "term":
			m.terms = append(m.terms, value)
		default:
			plain = append(plain, label+": "+value)
		}
	}
	if len(plain) > 0 {
		m.phrase = grammar.Parse("= "+strings.Join(plain, "; "), grammar.Habit{})
		if n := len(m.phrase.Asks) + len(m.phrase.Drops) + len(m.phrase.Facts) + len(m.phrase.Choices); n == 0 || len(m.phrase.Unused) > 0 {
			return m, fmt.Errorf("not in the long form: %q", plain)
		}
	}
	if c.Verb != "" {
		m.phrase.Command = &c
		m.phrase.Asks = append(m.phrase.Asks, grammar.Ask{About: grammar.Book})
	}
	return m, nil
}

// enterCommand takes an entry that is of a word to the load book.
func enterCommand(c *grammar.Command, label, value string) (bool, error) {
	if label == "book" {
		verb, loads, _ := strings.Cut(value, " ")
		c.Verb = grammar.Verb(verb)
		for _, n := range strings.FieldsFunc(loads, func(r rune) bool { return r == ',' || r == ' ' }) {
			load, err := strconv.Atoi(n)
			if err != nil {
				return true, fmt.Errorf("load %q is no number", n)
			}
			c.Loads = append(c.Loads, load)
		}
		return true, nil
	}
	if c.Verb == "" {
		return false, nil
	}
	if measured, ok := strings.CutPrefix(label, "measured "); ok {
		p := grammar.Parse("= "+measured+": "+value, grammar.Habit{})
		if len(p.Facts) != 1 {
			return true, fmt.Errorf("measured %q is not in the long form", measured)
		}
		c.Measured = append(c.Measured, p.Facts...)
		return true, nil
	}
	texts := map[string]*string{"note": &c.Note, "title": &c.Title, "time": &c.Time, "press name": &c.Press}
	if text, ok := texts[label]; ok {
		*text = value
		return true, nil
	}
	switch label {
	case "from":
		var err error
		c.From, err = strconv.Atoi(value)
		return true, err
	case "anyway":
		c.Anyway = true
	case "bare":
		c.Bare = true
	case "query":
		return true, enterQuery(c, value)
	default:
		return false, nil
	}
	return true, nil
}

// enterQuery takes "pressing", "today", "count", "last 5", "bar", "nobar" or a load's state.
func enterQuery(c *grammar.Command, value string) error {
	c.Query = &grammar.Query{}
	for _, part := range strings.Fields(strings.ReplaceAll(value, "last ", "last")) {
		n, last := strings.CutPrefix(part, "last")
		switch {
		case part == "any":
		case part == "pressing":
			c.Query.Pressing = true
		case part == "today":
			c.Query.Today = true
		case part == "count":
			c.Query.Count = true
		case part == "bar":
			c.Query.Bar = true
		case part == "nobar":
			c.Query.NoBar = true
		case last:
			var err error
			if c.Query.Last, err = strconv.Atoi(n); err != nil {
				return err
			}
		default:
			c.Query.State = part
		}
	}
	return nil
}

// The player sees a wording that says something else: each of these is wrong.
func TestCorpus_seesWhatIsWrong(t *testing.T) {
	right := wordingsOf(t, "right", "= ask: side; strip count: 5; strip width: 2.25 in\n5 strips 2 1/4 wide, squeeze?")
	for _, text := range []string{"4 strips 2 1/4 wide, squeeze?", "5 strips 2 wide, squeeze?", "5 strips 2 1/4 wide 1/4 thick, squeeze?", "5 strips, squeeze?", "what is a caul?"} {
		p, m := grammar.Parse(text, grammar.Habit{}), right[0].means
		if reflect.DeepEqual(facets(p, nil, m), facets(m.phrase, nil, m)) {
			t.Errorf("%q passes for %q", text, right[0].text)
		}
	}
	for left, wrong := range map[string]bool{"2": false, "3": true} {
		w := wording{left: []string{left}}
		if got := w.leftWrong([]string{"shop 2"}) != ""; got != wrong {
			t.Errorf("%q left of shop 2: wrong is %t, want %t", left, got, wrong)
		}
	}
}
