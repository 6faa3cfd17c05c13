package slack

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"presshand/bot"
	"presshand/bot/book"
)

func TestPlain_markup(t *testing.T) {
	for in, want := range map[string]string{
		"<@UBOT> 5 strips":                            "5 strips",
		"&lt;1 in &amp; 2 &gt; 1":                     "<1 in & 2 > 1",
		"&lt;@U1&gt;":                                 "<@U1>", // typed, no mention
		"see <http://oak.example|oak.example> 1/4":    "see oak.example 1/4",
		"see <http://oak.example>":                    "see http://oak.example",
		"<#C1|room> <!channel> <!subteam^S1|@all> 25": "25",
		"&amp;lt;": "&lt;",
		"mail <mailto:a@b.example|a@b.example> 3 in": "mail a@b.example 3 in",
		"<tel:+1|14 in> high":                        "14 in high",
	} {
		if got := strings.TrimSpace(plain(in)); got != want {
			t.Errorf("%q reads %q, want %q", in, got, want)
		}
	}
}

func FuzzPlain_escapedComesBack(f *testing.F) {
	for _, s := range []string{"a < b", "&lt;", "<@U1>", "5 & 6 > 4", "<!channel>", "«ü»"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		sent := escape.Replace(s)
		if strings.ContainsAny(sent, "<>") {
			t.Errorf("%q is sent as %q, with markup", s, sent)
		}
		if got := plain(sent); got != s {
			t.Errorf("%q comes back as %q", s, got)
		}
	})
}

func TestPrefixOf_words(t *testing.T) {
	a := &Slack{Config: Config{}.filled()}
	for text, want := range map[string]string{
		"press, what is a caul": "what is a caul", "Press: 25 inHg": "25 inHg", "PRESS,25": "25", "presshand 25 inHg": "25 inHg",
		"presshand, 25": "25", "Presshand: 25": "25", "press the button": "press the button", "pressing 25": "pressing 25",
		"presshands 25": "presshands 25", "press": "press", "compress, 2": "compress, 2",
	} {
		if got := a.words("C1", text); got != want {
			t.Errorf("%q says %q, want %q", text, got, want)
		}
		if to := a.prefixOf("C1", text) > 0; to != (want != text) {
			t.Errorf("%q is said to the bot: %v", text, to)
		}
	}
	a.Prefix = func(string) []string { return []string{"hey press:"} }
	if a.prefixOf("C1", "hey press, 25") == 0 || a.prefixOf("C1", "press, 25") > 0 {
		t.Error("a room's own prefix does not replace the usual one")
	}
}

func sheetOf(lines int, each string) (bot.Sheet, string) {
	s := bot.Sheet{Load: 14, Revision: 2, State: book.Posted}
	var text []string
	for range lines {
		s.Lines = append(s.Lines, bot.Line{Kind: bot.Figure, Text: each})
		text = append(text, each)
	}
	return s, strings.Join(text, "\n")
}

// However long a reply is, its words are complete in the fallback up to Slack's
// limit, and its blocks within all limits or left out.
func TestDressed_withinLimits(t *testing.T) {
	for _, c := range []struct{ lines, each int }{{1, 10}, {1, 2900}, {9, 300}, {40, 200}, {60, 180}, {1, 9000}, {3, 3000}, {200, 40}, {500, 100}} {
		s, text := sheetOf(c.lines, strings.Repeat("word & ", c.each/7+1))
		blocks := dressed(s)
		raw, err := json.Marshal(blocks)
		if err != nil {
			t.Fatal(err)
		}
		if len(blocks) > 50 || len(raw) > 13200 {
			t.Errorf("%d lines of %d: %d blocks of %d bytes", c.lines, c.each, len(blocks), len(raw))
		}
		if len(text) < 5000 && len(blocks) == 0 {
			t.Errorf("%d lines of %d: no blocks", c.lines, c.each)
		}
		if len(blocks) > 0 {
			if words := strings.Count(string(raw), "word"); words != strings.Count(text, "word") {
				t.Errorf("%d lines of %d: blocks have %d words, want all %d", c.lines, c.each, words, strings.Count(text, "word"))
			}
		}
		sent := fallback(text)
		if n := utf8.RuneCountInString(sent); n > 40000 {
			t.Errorf("fallback of %d characters, want 40000 at most", n)
		}
		if utf8.RuneCountInString(text) < 30000 && plain(sent) != text {
			t.Errorf("%d lines of %d: fallback is not the whole reply", c.lines, c.each)
		}
	}
}

func TestFallback_cutsNoEntity(t *testing.T) {
	for n := maxText - 6; n < maxText+2; n++ {
		got := fallback(strings.Repeat("1", n) + "&&&&&&&&")
		if rest := strings.ReplaceAll(got, "&amp;", ""); strings.Contains(rest, "&") {
			t.Errorf("cut in the middle of an entity: …%s", got[len(got)-12:])
		}
	}
}

// Rich text shows everything as it is typed; nothing in it is read as markup.
func TestDressed_showsNoMarkup(t *testing.T) {
	s, _ := sheetOf(1, "<!channel> *b* <http://x|y>")
	raw, err := json.Marshal(dressed(s))
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(raw), "mrkdwn") {
		t.Errorf("blocks have text that Slack reads as markup: %s", raw)
	}
}

func TestButtons_bindToTheRevision(t *testing.T) {
	for state, want := range map[book.State]string{
		book.Posted: "check hold", book.Checked: "in hold", book.Pressing: "out hold", book.Held: "clear", book.Taken: "", book.Judged: "", book.Dropped: "",
	} {
		s := bot.Sheet{Load: 14, Revision: 2, State: state}
		raw, err := json.Marshal(buttons(s))
		if err != nil {
			t.Fatal(err)
		}
		var b struct {
			Elements []struct {
				ActionID string `json:"action_id"`
				Value    string
			}
		}
		if err := json.Unmarshal(raw, &b); err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, e := range b.Elements {
			got = append(got, e.ActionID)
			if e.Value != "14:2" {
				t.Errorf("button %s is bound to %q, want 14:2", e.ActionID, e.Value)
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s load offers %v, want %q", state, got, want)
		}
	}
}
