package bot

import (
	"context"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"presshand/engine"
	"presshand/grammar"
)

var quotedExample = regexp.MustCompile(`“([^”]+)”`)

// replies has a bot answer messages in one thread, the ones after the first by
// whoever is to say them.
func replies(t *testing.T, metric bool, who func(text string) string, texts ...string) []Reply {
	t.Helper()
	b := New(NewMemory())
	b.Settings = func(string) Settings { return Settings{Metric: metric} }
	at := time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)
	var out []Reply
	for i, text := range texts {
		r, err := b.Handle(context.Background(), Message{
			Room: "shop", Thread: "1", From: who(text), Text: text, At: at.Add(time.Duration(i) * 20 * time.Minute),
		})
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, r)
	}
	return out
}

func ana(string) string { return "ana" }

// Ben makes the second check, ana does the rest.
func twoPeople(text string) string {
	if strings.Contains(text, "checked") {
		return "ben"
	}
	return "ana"
}

// Each example of a help is answered about its topic, with nothing missing and
// nothing unread.
func TestHelp_examplesAreAnswered(t *testing.T) {
	for _, metric := range []bool{false, true} {
		for _, h := range helps {
			examples := h.examples(metric)
			if len(examples) == 0 {
				t.Errorf("help %s has no examples", h.name)
			}
			texts, first := examples, 0
			if h.about == grammar.Book {
				texts, first = append(helps[0].examples(metric)[:1:1], examples...), 1
			}
			for i, r := range replies(t, metric, twoPeople, texts...)[first:] {
				if r.About != h.about && !slices.Contains(r.Also, h.about) {
					t.Errorf("%q is about %s, want %s", examples[i], r.About, h.about)
				}
				if len(r.Unused) > 0 || len(r.Needs) > 0 || r.Verdict == engine.Ask {
					t.Errorf("%q: unread %q, needs %v, verdict %s: %s", examples[i], r.Unused, r.Needs, r.Verdict, r.Text)
				}
			}
		}
	}
}

// “help side” tells about side pressure, and shows what the test above tries.
func TestHelp_eachTopic(t *testing.T) {
	for _, metric := range []bool{false, true} {
		for _, h := range helps {
			r := replies(t, metric, ana, "help "+h.name)[0]
			if want := strings.Join(h.lines(metric), "\n"); r.About != grammar.Words || r.Text != want {
				t.Errorf("help %s (metric %v) is about %s: %s\nwant %s", h.name, metric, r.About, r.Text, want)
			}
		}
	}
}

// What help and words quote works as it is quoted.
func TestHelp_quotesWork(t *testing.T) {
	for _, say := range []string{"help", "words"} {
		for _, metric := range []bool{false, true} {
			text := replies(t, metric, ana, say)[0].Text
			found := quotedExample.FindAllStringSubmatch(text, -1)
			if len(found) == 0 {
				t.Errorf("%s quotes nothing: %s", say, text)
			}
			for _, q := range found {
				r := replies(t, metric, ana, helps[0].examples(metric)[0], q[1])[1]
				if r.About == Unknown || len(r.Unused) > 0 || r.Verdict == engine.Ask {
					t.Errorf("%s quotes %q, which is about %s, verdict %s, unread %q", say, q[1], r.About, r.Verdict, r.Unused)
				}
			}
		}
	}
}

// Each word that is listed is explained when asked for.
func TestWords_listedAreExplained(t *testing.T) {
	if len(glossary) < 50 {
		t.Fatalf("%d words are explained, want 50 or more", len(glossary))
	}
	for word, says := range glossary {
		r := replies(t, false, ana, "what is "+word)[0]
		if r.About != grammar.Words || !strings.Contains(r.Text, says) {
			t.Errorf("what is %s: about %s, %q", word, r.About, r.Text)
		}
	}
	for synonym, word := range synonyms {
		if _, ok := glossary[word]; !ok {
			t.Errorf("%q leads to %q, which is not explained", synonym, word)
		}
	}
}
