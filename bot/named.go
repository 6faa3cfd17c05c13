package bot

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"presshand/grammar"
)

var (
	// howItStands tells or asks how a load stands: "1 is good to go", "can 1 go in".
	howItStands = regexp.MustCompile(`(?i)\b(good|fine|ok|okay|ready|done|finished|pressed|pressing|go|goes|going|pull|set|off|away|next|safe|cooked|cooking|cured|cleared)\b`)
	// fitFor is said of a load before what is to be done with it: "ready to go in".
	fitFor = regexp.MustCompile(`\b(good|ok|okay|ready|safe|free|due) to\b`)
	// asking begins a question that ends without its mark.
	asking    = regexp.MustCompile(`^\W*(is|are|can|may|should|shall|does|do|has)\b`)
	digitRuns = regexp.MustCompile(`\d+`)
	// putsInstead gives a number to something: "make it 1".
	putsInstead = regexp.MustCompile(`(?i)\b(make|change|instead|no|not|sorry|actually|then|use|try|with|high|thick|wide|tall|what|how|would|could|if|and|bar|from|to)\b`)
)

// namedAgain takes a bare number that is the thread's own load, with words of how a load
// stands, for the load: "1 is done" changes none of its figures.
func (t *turn) namedAgain(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	if t.before.Load == 0 || p.Command != nil || len(p.Facts)+len(p.Drops)+len(p.Changes)+len(p.Choices)+len(p.Asks) > 0 || len(p.Amends) > 1 {
		return p, false
	}
	load := strconv.Itoa(t.before.Load)
	alone := len(p.Amends) == 1 && p.Amends[0].Text == load || len(p.Amends) == 0 && slices.Contains(p.Unused, load)
	bare := fitFor.ReplaceAllString(strings.ToLower(text), "$1")
	if !alone || !howItStands.MatchString(bare) || putsInstead.MatchString(bare) {
		return p, false
	}
	if len(digitRuns.FindAllString(text, -1)) > 1 {
		return p, false
	}
	verb := grammar.NotDone
	if strings.Contains(text, "?") || asking.MatchString(bare) {
		verb = grammar.Show
	}
	return grammar.Phrase{Command: &grammar.Command{Verb: verb, Meant: grammar.Show, Loads: []int{t.before.Load}}}, true
}

// doneFirst begins with what was done with the load that is spoken of and goes on with
// more: "its out, all joints tight", "uncheck, I read the wrong clock".
var doneFirst = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|so|and|now|it'?s|it is|they'?re|is|went|came)\s+)*(in|out|uncheck)(?: (?:it|that|now))?\s*[,;–]\s+(\S.*)$`)

// ofElse tells that what is in or out is none of the loads: "out, the pump i mean".
var ofElse = regexp.MustCompile(`(?i)^of\b|\b(?:pump|gauge|glue|power|mean|meant)\b`)

// wasAt puts right when the load that is spoken of went in or came out: "oops that was 7:26".
var wasAt = regexp.MustCompile(`(?i)^\W*(?:(?:oops|sorry|no|wait|actually|i mean)\W+)*(?:that|it) was (?:at )?(\d{1,2}:\d\d)(?: (?:actually|sorry))?\W*$`)

// timeAmended shows the load whose hour is put right: the book keeps what was told, and
// "undo" takes it back.
func (t *turn) timeAmended(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	m := wasAt.FindStringSubmatch(text)
	if m == nil || t.before.Load == 0 || p.Command != nil {
		return p, false
	}
	return grammar.Phrase{Command: &grammar.Command{Verb: grammar.Show, Loads: []int{t.before.Load}}, Unused: []string{m[1]}}, true
}

// doneAndSaid reads such a message of the thread's load.
func (t *turn) doneAndSaid(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	m := doneFirst.FindStringSubmatch(text)
	if m == nil || t.before.Load == 0 || p.Command != nil || asksByTone(strings.ToLower(text)) || !strings.EqualFold(m[1], "uncheck") && ofElse.MatchString(m[2]) {
		return p, false
	}
	named := t.bot.Parse(strconv.Itoa(t.before.Load)+" "+m[1]+", "+m[2], grammar.Habit{Metric: t.settings.Metric})
	c := named.Command
	done := []grammar.Verb{grammar.In, grammar.Out, grammar.Uncheck}
	if c == nil || !slices.Contains(done, c.Verb) || !slices.Equal(c.Loads, []int{t.before.Load}) {
		return p, false
	}
	c.Bare = false
	return named, true
}
