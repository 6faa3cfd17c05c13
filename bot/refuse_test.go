package bot_test

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"presshand/bot"
	"presshand/engine"
)

var update = flag.Bool("update", false, "write the first lines of the replies anew, to be read aloud")

// What must not be read is answered by one line that says why and what would
// do; testdata/refuse has the line behind ">". The grammar's own test holds
// what is refused.
func TestRefuse_saysWhatWouldDo(t *testing.T) {
	paths, err := filepath.Glob("../testdata/refuse/*/*.txt")
	if err != nil || len(paths) == 0 {
		t.Fatalf("nothing to refuse: %v", err)
	}
	for _, path := range paths {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		text, n := string(b), 0
		metric := strings.HasPrefix(text, "# metric\n")
		blocks := strings.Split(strings.TrimSpace(text), "\n\n")
		for i, block := range blocks {
			lines := slices.DeleteFunc(strings.Split(block, "\n"), func(l string) bool { return strings.HasPrefix(l, "#") })
			if len(lines) == 0 {
				continue
			}
			n++
			blocks[i] = checkRefusal(t, block, lines, metric)
		}
		if n == 0 {
			t.Errorf("%s has nothing to refuse", path)
		}
		if *update {
			if err := os.WriteFile(path, []byte(strings.Join(blocks, "\n\n")+"\n"), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// checkRefusal plays one message and returns its block with the line that was
// answered.
func checkRefusal(t *testing.T, block string, lines []string, metric bool) string {
	t.Helper()
	b := bot.New(bot.NewMemory())
	b.Settings = func(string) bot.Settings { return bot.Settings{Metric: metric} }
	r, err := b.Handle(context.Background(), bot.Message{
		Room: "shop", From: "ana", Text: lines[0], At: time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC),
	})
	if err != nil {
		t.Fatal(err)
	}
	unknown := slices.Contains(lines, "unknown")
	switch {
	case unknown && (r.About != bot.Unknown || r.Verdict != engine.None || len(r.Values) > 0):
		t.Errorf("%q: about %s, verdict %s, values %v", lines[0], r.About, r.Verdict, r.Values)
	case !unknown && (r.Verdict != engine.Ask || len(r.Needs) == 0):
		t.Errorf("%q: verdict %s, needs %v; want something asked for", lines[0], r.Verdict, r.Needs)
	}
	for _, line := range lines[1:] {
		if _, texts, ok := strings.Cut(line, ": "); ok && !strings.HasPrefix(line, ">") {
			for _, x := range strings.Split(texts, ", ") {
				if !slices.Contains(r.Unused, x) {
					t.Errorf("%q: %q is not in unused %q", lines[0], x, r.Unused)
				}
			}
		}
	}
	want, got := "", "> "+r.Lines[0].Text
	if last := lines[len(lines)-1]; strings.HasPrefix(last, ">") {
		want, block = last, strings.TrimSuffix(block, "\n"+last)
	}
	if got != want && !*update {
		t.Errorf("%q is answered\n%s\nwant\n%s", lines[0], got, want)
	}
	return block + "\n" + got
}
