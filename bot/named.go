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
