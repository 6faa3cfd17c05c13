package grammar

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What an item is at the end was heard, however often it was read anew.
func TestHeard(t *testing.T) {
	texts := messageTexts(t)
	habits := []Habit{{}, {Metric: true}, {Follows: true}}
	for n, text := range texts {
		r := readMessage(text, habits[n%len(habits)], new(scratch))
		if r == nil {
			continue
		}
		for i, it := range r.items {
			if !r.means(it.kind, it.id) {
				t.Errorf("%q: item %d means %v %q, which was not heard", text, i, it.kind, it.id)
			}
			if it.amount == nil && !r.says(it.word) {
				t.Errorf("%q: item %d is %q, which was not heard", text, i, it.word)
			}
			if _, later, run := strings.Cut(it.word, " "); run && it.amount == nil && !r.saysLater(later) {
				t.Errorf("%q: item %d is %q, of which %q was not heard", text, i, it.word, later)
			}
		}
	}
	t.Logf("%d messages", len(texts))
}

// messageTexts are the kept messages and the wordings of the corpora.
func messageTexts(t *testing.T) []string {
	t.Helper()
	var texts []string
	for _, of := range []string{"messages/*.jsonl", "phrases/*.txt"} {
		files, err := filepath.Glob(filepath.Join("../testdata", of))
		if err != nil || len(files) == 0 {
			t.Fatalf("no %s: %v", of, err)
		}
		for _, file := range files {
			content, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			for line := range strings.Lines(string(content)) {
				m := struct{ Thread []string }{[]string{strings.ReplaceAll(strings.TrimSpace(line), " ⏎ ", "\n")}}
				_ = json.Unmarshal([]byte(line), &m) // a wording stays as it is
				texts = append(texts, m.Thread...)
			}
		}
	}
	return texts
}
