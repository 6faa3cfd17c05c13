package bot_test

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"presshand/bot"
)

// A conversation is what people typed in one thread, and what a careful shop hand
// takes from it, written before the grammar had read it.
type conversation struct {
	ID      string        `json:"id"`
	Units   string        `json:"units"`
	Thread  []string      `json:"thread"`
	Expect  []expectation `json:"expect"`
	Must    []string      `json:"must"`
	MustNot []string      `json:"must_not"`
}

type expectation struct {
	About     []string              `json:"about"`
	Read      map[string]any        `json:"read"`
	Needs     []string              `json:"needs"`
	UnusedHas []string              `json:"unused_has"`
	Verdict   []string              `json:"verdict"`
	Values    map[string][2]float64 `json:"values"`
}

type answer struct {
	About   string         `json:"about"`
	Also    []string       `json:"also"`
	Read    map[string]any `json:"read"`
	Unused  []string       `json:"unused"`
	Needs   []string       `json:"needs"`
	Verdict string         `json:"verdict"`
	Values  map[string]any `json:"values"`
	Text    string         `json:"text"`
}

func TestMessages(t *testing.T) {
	paths, err := filepath.Glob("../testdata/messages/*.jsonl")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no messages in testdata/messages: %v", err)
	}
	for _, path := range paths {
		for _, c := range conversations(t, path) {
			t.Run(c.ID, func(t *testing.T) { play(t, c) })
		}
	}
}

func conversations(t *testing.T, path string) []conversation {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var out []conversation
	lines := bufio.NewScanner(bytes.NewReader(b))
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var c conversation
		if err := json.Unmarshal(lines.Bytes(), &c); err != nil || len(c.Thread) != len(c.Expect) {
			t.Fatalf("%s: %v in %.80s", path, err, lines.Text())
		}
		out = append(out, c)
	}
	return out
}

func play(t *testing.T, c conversation) {
	b := bot.New(bot.NewMemory())
	b.Settings = func(string) bot.Settings { return bot.Settings{Metric: c.Units == "metric"} }
	at := time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)
	for i, text := range c.Thread {
		r, err := b.Handle(context.Background(), bot.Message{Room: "r", Thread: "t", ID: fmt.Sprint(i), From: "ana", Text: text, At: at})
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		var got answer
		if err := json.Unmarshal(r.AppendJSON(nil), &got); err != nil {
			t.Fatalf("%q: reply is no JSON: %v", text, err)
		}
		for _, wrong := range judge(c, c.Expect[i], got) {
			t.Errorf("%q: %s", text, wrong)
		}
	}
}

// loose fields may be read though an expectation does not list them: they are no
// numbers, or repeat what a stack says.
var loose = map[string]bool{
	"faces": true, "bar": true, "mat_firmness": true, "solve": true, "goal": true, "compare": true, "time": true, "title": true, "note": true,
	"measured": true, "panel_thickness_mm": true, "spread_mm": true, "layup_load_s": true, "unload_min": true, "mat": true, "surface": true, "press": true, "stack": true,
}

func judge(c conversation, want expectation, got answer) []string {
	var bad []string
	say := func(format string, args ...any) { bad = append(bad, fmt.Sprintf(format, args...)) }
	if abouts := append(got.Also, got.About); !slices.ContainsFunc(want.About, func(a string) bool { return slices.Contains(abouts, a) }) {
		say("about %v, want %v", abouts, want.About)
	}
	for k, w := range want.Read {
		if k != "note" && !fits(w, got.Read[k]) && !excused(k, w, got.Read) {
			say("%s is %v, want %v", k, got.Read[k], w)
		}
	}
	for k, g := range got.Read {
		_, number := g.(float64)
		_, listed := want.Read[k]
		if number && !listed && !loose[k] && !(k == "target_width_mm" && want.Read["panel_width_mm"] != nil) && !(want.Read["press_volume_l"] != nil && (strings.HasPrefix(k, "bed_") || k == "opening_mm")) {
			say("%s is %v, want it unread", k, g)
		}
	}
	for _, n := range want.Needs {
		if !slices.Contains(got.Needs, n) {
			say("needs %v, want %s", got.Needs, n)
		}
	}
	for _, u := range want.UnusedHas {
		if !strings.Contains(strings.ToLower(strings.Join(got.Unused, "\n")), strings.ToLower(u)) {
			say("unused %q, want %q", got.Unused, u)
		}
	}
	if len(want.Verdict) > 0 && !slices.Contains(want.Verdict, got.Verdict) {
		say("verdict %s, want %v", got.Verdict, want.Verdict)
	}
	for k, w := range want.Values {
		mid, ok := middle(got.Values[k])
		if !ok || mid < w[0]-math.Abs(w[0])*1e-3-1e-6 || mid > w[1]+math.Abs(w[1])*1e-3+1e-6 {
			say("value %s is %v, want %v", k, got.Values[k], w)
		}
	}
	for _, re := range c.MustNot {
		if regexp.MustCompile(re).MatchString(got.Text) {
			say("text has %s: %s", re, got.Text)
		}
	}
	for _, re := range c.Must {
		if !regexp.MustCompile(re).MatchString(got.Text) {
			say("text lacks %s: %s", re, got.Text)
		}
	}
	return bad
}

// excused: a thickness that a stack holds, a panel's width as the strips' target, a
// volume that a bed and a depth give.
func excused(k string, w any, read map[string]any) bool {
	switch k {
	case "strip_thickness_mm", "mat_thickness_mm", "core_thickness_mm":
		return read["stack"] != nil
	case "panel_width_mm":
		return fits(w, read["target_width_mm"])
	case "press_volume_l":
		x, _ := read["bed_width_mm"].(float64)
		y, _ := read["bed_length_mm"].(float64)
		z, _ := read["opening_mm"].(float64)
		return fits(w, x*y*z/1e6)
	}
	return false
}

func middle(v any) (float64, bool) {
	if m, ok := v.(map[string]any); ok {
		v = m["mid"]
	}
	f, ok := v.(float64)
	return f, ok
}

func fits(want, got any) bool {
	if m, ok := want.(map[string]any); ok && m["any_of"] != nil {
		return slices.ContainsFunc(m["any_of"].([]any), func(w any) bool { return w == nil && got == nil || w != nil && got != nil && alike(w, got) })
	}
	return got != nil && alike(want, got)
}

func alike(a, b any) bool {
	switch x := a.(type) {
	case float64:
		y, ok := b.(float64)
		return ok && math.Abs(x-y) <= 0.005*math.Max(math.Abs(x), math.Abs(y))+1e-9
	case string:
		y, ok := b.(string)
		return ok && strings.EqualFold(strings.TrimSpace(x), strings.TrimSpace(y))
	case []any:
		y, ok := b.([]any)
		return ok && len(x) == len(y) && alikeAll(x, y)
	case map[string]any:
		y, ok := b.(map[string]any)
		for k, v := range x {
			ok = ok && alike(v, y[k])
		}
		return ok
	}
	return a == b
}

// alikeAll compares in order, but for piles, which have none.
func alikeAll(x, y []any) bool {
	for i := range x {
		if m, ok := x[i].(map[string]any); ok && m["count"] != nil {
			if !slices.ContainsFunc(y, func(v any) bool { return alike(x[i], v) }) {
				return false
			}
			continue
		}
		if !alike(x[i], y[i]) {
			return false
		}
	}
	return true
}
