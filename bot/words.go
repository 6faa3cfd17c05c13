package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

const unitsSays = "I take inches, feet, mm, cm and m; fractions like 2 1/4; inHg, psi, kPa, bar, mbar and mmHg; °F and °C; cfm and l/min; oz, g, lb and kg. Bare numbers follow this shop's habit"

// words explains trade words, the units, or the bot itself.
func (t *turn) words() Reply {
	r := Reply{About: grammar.Words, Verdict: engine.None, Read: unit.Facts{}}
	lines, plain := t.plainly()
	if !plain {
		terms, foreign := t.termsAsked()
		if foreign {
			return t.unknown()
		}
		lines = explained(terms)
		r.note(t.phrase.Unused...)
	}
	for i, line := range lines {
		kind := Figure
		if i == 0 {
			kind = Headline
		}
		switch line {
		case helpSays(false):
			line = helpSays(t.settings.Metric)
		case unitsSays:
			habit := "inches and °F."
			if t.settings.Metric {
				habit = "millimetres and °C."
			}
			line += ": " + habit
		}
		r.say(kind, line)
	}
	return r
}

// cueOfWords begins a question for a word, and is none itself.
var cueOfWords = regexp.MustCompile(`^(what|whats|meaning|means?|define) ?(is|are|does|do|of|the|an?|mean|means)?\b`)

// termsAsked are the terms to explain; where the message has but the cue of such a
// question, the words that nobody here knows. It is foreign where one comes with a
// number: "what is the meaning of life and is it 42".
func (t *turn) termsAsked() (terms []string, foreign bool) {
	for _, term := range t.phrase.Terms {
		if _, known := explain(term); known || !cueOfWords.MatchString(strings.ToLower(term)) {
			terms = append(terms, term)
		}
	}
	if len(terms) > 0 || len(t.phrase.Terms) == 0 {
		return terms, false
	}
	numbers := 0
	for _, u := range t.phrase.Unused {
		if strings.Contains(u, "/") {
			return t.phrase.Terms, false // "what does 4/4 even mean"
		}
		if strings.ContainsAny(u, digits) {
			numbers++
		} else if !strings.Contains(u, " ") {
			terms = append(terms, u)
		}
	}
	if len(terms) == 0 {
		return t.phrase.Terms, false
	}
	alone := len(terms) == 1 && numbers == 1 && len(t.phrase.Facts) == 0
	return terms, alone && t.before.empty()
}

// explains answers what a word means, and remembers that it did.
func (t *turn) explains() (Reply, error) {
	thread := t.before
	thread.Means = true
	return t.words(), t.keep(thread)
}

// asksAnother asks for the meaning of one more word: "and a sled?".
var asksAnother = regexp.MustCompile(`^(?:ok |okay |so )?(?:and|what about|how about|or) (?:an? |the )?([a-z' -]+?)\s*[?.!]*$`)

// asksMeaning is a message that asks what one thing means.
var asksMeaning = regexp.MustCompile(`^(?:what(?:['’]?s| is| are)|define|explain|meaning of) (?:an? |the )?(.+?)\s*[?.!]*$|^what (?:does|do) (?:an? |the )?(.+?) mean\s*[?.!]*$`)

// asksVerdict asks what a verdict means, in one of the many ways that people do.
var asksVerdict = regexp.MustCompile(`^(?:(?:and|but|ok|so|well) )?(?:what(?:['’]?s| is| are| does| do| did)?|define|explain|tell me|(?:the )?meaning of|when (?:you|it) says?|does)` +
	`(?: (?:the|catch|meaning|of|with|about|do|does|did|you|u|it|by|mean|means|meant|when|says?|even|actually|exactly|behind|a|verdict|is|that))*` +
	` (good|take care|care|stop)(?:(?: (?:even|actually|exactly|really|here|then|now))* (?:means?|stands? for|what does (?:it|that) mean|what do you mean)(?: here| then| exactly| now)?)?\s*$`)

// verdictAsked reports whether a message asks for nothing but what a verdict means: "whats the
// catch with take care", "meaning of good".
func verdictAsked(plain string) bool {
	if len(plain) > 60 || !strings.Contains(plain, "good") && !strings.Contains(plain, "care") && !strings.Contains(plain, "stop") {
		return false
	}
	bare := strings.Join(strings.Fields(unquoted.Replace(plain)), " ")
	return asksVerdict.MatchString(bare) && (strings.Contains(bare, "mean") || strings.Contains(bare, "catch") || strings.Contains(bare, "care") || strings.HasPrefix(bare, "define") || strings.HasPrefix(bare, "explain"))
}

// unquoted takes away the marks that are put around a word and behind a question.
var unquoted = strings.NewReplacer("'", "", "’", "", `"`, "", "“", "", "”", "", "?", "", "!", "", ".", "", ",", "", "*", "", "`", "")

// plainly returns the lines of a message that asks for help on a topic, or
// what one word means, and nothing else.
func (t *turn) plainly() ([]string, bool) {
	if h, ok := helpFor(t.m.Text); ok {
		return h.lines(t.settings.Metric), true
	}
	plain := strings.ToLower(strings.Join(strings.Fields(t.m.Text), " "))
	if another := asksAnother.FindStringSubmatch(plain); another != nil && t.before.Means && len(t.phrase.Facts)+len(t.phrase.Drops) == 0 {
		says, ok := lookUp(another[1])
		return []string{says}, ok
	}
	if verdictAsked(plain) {
		says, ok := lookUp("verdict")
		return []string{says}, ok
	}
	found := asksMeaning.FindStringSubmatch(plain)
	if found == nil || !t.before.empty() && (!t.asks(grammar.Words) || t.meansFigure()) {
		return nil, false
	}
	says, ok := lookUp(found[1] + found[2])
	return []string{says}, ok
}

var asksFigure = regexp.MustCompile(`(?i)^what(?:['’]?s| is| are) the (.+?)\s*[?.!]*$`)

// meansFigure takes "what is the side pressure" in a thread for a question about
// the thread's figure: its meaning is "what is side pressure".
func (t *turn) meansFigure() bool {
	found := asksFigure.FindStringSubmatch(strings.TrimSpace(t.m.Text))
	if found == nil {
		return false
	}
	asks := t.bot.Parse(found[1]+"?", grammar.Habit{Metric: t.settings.Metric}).Asks
	if len(asks) == 0 || !computed(asks[0].About) {
		return false
	}
	t.phrase.Asks, t.phrase.Terms = asks, nil
	return true
}

// explained returns a sentence for each term, for help where there is none.
func explained(terms []string) []string {
	var out, unknown []string
	for _, term := range terms {
		line, ok := explain(term)
		switch {
		case !ok:
			unknown = append(unknown, line)
		case !containsFold(out, line):
			out = append(out, line)
		}
	}
	switch {
	case len(out) > 0:
		return out
	case len(unknown) > 0:
		return unknown
	}
	return []string{helpSays(false)}
}

// explain returns what a term means; ok is false where it is not known.
func explain(term string) (says string, ok bool) {
	key := strings.ToLower(strings.TrimSpace(term))
	words := strings.Fields(strings.NewReplacer("?", " ", ",", " ", ".", " ").Replace(key))
	switch {
	case key == "" || slices.Contains(words, "help"):
		return helpSays(false), true
	case key == "words" || key == "glossary":
		return wordsSays(), true
	case slices.Contains(words, "units") || slices.Contains(words, "unit") || strings.HasSuffix(key, "you take"):
		return unitsSays, true
	}
	if s, ok := lookUp(key); ok {
		return s, true
	}
	// a whole question may stand here: explain each word of the trade in it,
	// the longest first
	var out []string
	for n := min(3, len(words)); n > 0; n-- {
		for i := 0; i+n <= len(words); i++ {
			if s, ok := lookUp(strings.Join(words[i:i+n], " ")); ok && !slices.Contains(out, s) {
				out = append(out, s)
				words = slices.Delete(words, i, i+n)
			}
		}
	}
	if len(out) == 0 && asksOfBot.MatchString(key) {
		return helpSays(false), true
	}
	if len(out) == 0 {
		return "I do not know the word " + quoted(term) + ".", false
	}
	return strings.Join(out, "\n"), true
}

// asksOfBot asks what the bot can do.
var asksOfBot = regexp.MustCompile(`^(what|how) (all )?(can|do|does|could) (you|u|ya|this|the bot|i)\b`)

func lookUp(key string) (string, bool) {
	for _, k := range []string{key, strings.TrimSuffix(key, "s"), key + "s", strings.ReplaceAll(key, " ", "-"), strings.ReplaceAll(key, "-", " ")} {
		if s, ok := glossary[k]; ok {
			return s, true
		}
	}
	s, ok := glossary[synonyms[key]]
	return s, ok
}
