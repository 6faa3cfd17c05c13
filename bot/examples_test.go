package bot

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/grammar"
)

// answersWell fails unless a reply answers: it asks nothing back and leaves
// nothing unread.
func answersWell(t *testing.T, said string, metric bool, r Reply) {
	t.Helper()
	if r.About == Unknown || len(r.Unused) > 0 || len(r.Needs) > 0 || r.Verdict == engine.Ask {
		t.Errorf("%q (metric %v) is about %s, unread %q, needs %v, verdict %s: %s", said, metric, r.About, r.Unused, r.Needs, r.Verdict, r.Text)
	}
}

func TestExamples_areAnswered(t *testing.T) {
	for _, metric := range []bool{false, true} {
		all := append(Examples(metric), loadExample(metric), askExample(metric), setupExample(metric))
		if len(all) < 8 {
			t.Errorf("%d examples, want 8 or more", len(all))
		}
		for _, said := range all {
			answersWell(t, said, metric, replies(t, metric, ana, said)[0])
		}
		check := CheckExample(1, metric)
		told := replies(t, metric, twoPeople, loadExample(metric), "post it", check)
		if r := told[2]; r.About != grammar.Book || len(r.Unused) > 0 || strings.Contains(r.Text, "not checked") {
			t.Errorf("%q is about %s, unread %q: %s", check, r.About, r.Unused, r.Text)
		}
	}
}

// inchUnits are those that a room of millimetres is not to be shown.
var inchUnits = regexp.MustCompile(`\b(?:in|inHg|psi|cfm|ft)\b|\d/\d`)

// What the bot tells people to say works as it is told, in the room's units.
func TestExamples_inReplies(t *testing.T) {
	for _, metric := range []bool{false, true} {
		load := loadExample(metric)
		for _, talk := range [][]string{
			{"hi"}, {"thanks"}, {"who won the match last night"}, {"why"}, {"our setup"}, {"post it"}, {"checked"}, {"load 7"},
			{setupExample(metric)}, {"5 strips"}, {load, "post it", "1 checked, gauge 25"}, {load, "post it", "1 in"},
		} {
			r := replies(t, metric, twoPeople, talk...)[len(talk)-1]
			found := quotedExample.FindAllStringSubmatch(r.Text, -1)
			if len(found) == 0 {
				t.Errorf("%q (metric %v) quotes nothing: %s", talk, metric, r.Text)
			}
			for _, q := range found {
				said := strings.Replace(q[1], "14 ", "1 ", 1)
				before := []string{load}
				if strings.HasPrefix(said, "1 ") { // to load 1
					before = append(before, "post it")
				}
				answersWell(t, said, metric, replies(t, metric, twoPeople, append(before, said)...)[len(before)])
				if metric && inchUnits.MatchString(strings.NewReplacer(" in anyway", "", "1 in", "").Replace(said)) {
					t.Errorf("%q shows %q in a room of millimetres", talk, said)
				}
			}
		}
	}
}

// Each example of an answer to what is missing says that, and nothing else.
func TestExamples_ofWhatIsMissing(t *testing.T) {
	for f, w := range wants {
		for metric, said := range map[bool]string{false: w.inch, true: w.metric} {
			p := grammar.Parse(said, grammar.Habit{Metric: metric})
			if len(p.Facts) == 0 && len(p.Choices) == 0 && p.Command == nil || len(p.Unused)+len(p.Refused)+len(p.Clashes) > 0 {
				t.Errorf("%s: %q (metric %v) reads as %v, unread %q", f, said, metric, p.Facts, p.Unused)
			}
			r := replies(t, metric, ana, loadExample(metric), said)[1]
			if r.About == Unknown || len(r.Unused) > 0 {
				t.Errorf("%s: %q (metric %v) is about %s, unread %q: %s", f, said, metric, r.About, r.Unused, r.Text)
			}
		}
	}
}

// Trouble shows what would do in the units of the room.
func TestTrouble_inTheRoomsUnits(t *testing.T) {
	for metric, want := range map[bool]string{false: "25 inHg", true: "0.85 bar"} {
		var r Reply
		r.trouble(book.ErrNone, metric)
		too := refusal(&book.RefusedError{Why: book.TooFew, Load: book.Load{Number: 3}}, metric)
		if !strings.Contains(r.finished().Text, want) || !strings.Contains(too, CheckExample(3, metric)) {
			t.Errorf("metric %v: %s and %s", metric, r.Text, too)
		}
	}
	if slices.Equal(Examples(false), Examples(true)) {
		t.Error("examples are the same in both units")
	}
}
