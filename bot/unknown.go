package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// digits begin every number that is not written in words.
const digits = "0123456789½¼¾⅛⅜⅝⅞"

// typedNumber finds a number as typed, with what belongs to it: 6/12, 3-2,
// 7:30, 2 1/4.
var typedNumber = regexp.MustCompile(`[0-9½¼¾⅛⅜⅝⅞]+(?: [0-9]+/[0-9]+|[.,:/x-][0-9]+)*[½¼¾⅛⅜⅝⅞]?`)

// unknown nudges who says something that is none of the bot's business. No
// number of it counts as read.
func (t *turn) unknown() Reply {
	r := Reply{About: Unknown, Verdict: engine.None, Read: unit.Facts{}}
	r.note(t.phrase.Unused...)
	r.note(t.typedNumbers()...)
	if left := t.unplaced(r.Unused); left != "" {
		r.say(Question, left)
		return r
	}
	r.say(Question, t.nudge())
	return r
}

// unplaced says which number of a later message found no place in its thread; "" for
// none, and for a message with more than one or two, which is of something else.
func (t *turn) unplaced(unused []string) string {
	if t.before.empty() || t.greeting() != "" {
		return ""
	}
	var numbers []string
	for _, u := range unused {
		if strings.ContainsAny(u, digits) || spelled[strings.ToLower(u)] {
			numbers = append(numbers, quoted(u))
		}
	}
	if len(numbers) == 0 || len(numbers) > 2 || len(strings.Fields(t.m.Text)) > 14 {
		return ""
	}
	return "I could not place " + listed(numbers, "and") + " here, so nothing is changed. Say what it is of, like “the bar is …” or “strips … wide”."
}

// nudge is what is said to a message that asks nothing: one line.
func (t *turn) nudge() string {
	example := "“" + askExample(t.settings.Metric) + "”"
	switch t.greeting() {
	case thanks:
		return "You're welcome. Say what you are pressing next, like " + example + "."
	case hello:
		return "Hello. What are you pressing? Like " + example + ", or say “help”."
	}
	return "I only know about pressing wood under vacuum. Ask me something like " + example + ", or say “help”."
}

// typedNumbers are the numbers of a message of which nothing is made.
func (t *turn) typedNumbers() []string {
	var texts []string
	for _, f := range t.phrase.Facts {
		texts = append(texts, f.Text)
	}
	for _, x := range t.phrase.Refused {
		texts = append(texts, x.Text)
	}
	for _, c := range t.phrase.Clashes {
		texts = append(texts, c.Texts...)
	}
	for _, c := range t.phrase.Choices {
		for _, f := range c.Values {
			texts = append(texts, f.Text)
		}
	}
	texts = slices.DeleteFunc(texts, func(s string) bool { return !strings.ContainsAny(s, digits) })
	noted := strings.Join(append(slices.Clone(t.phrase.Unused), texts...), "\n")
	for _, n := range typedNumber.FindAllString(withoutMarkup(t.m.Text), -1) {
		if !strings.Contains(noted, n) {
			texts = append(texts, n)
		}
	}
	return texts
}

// Kinds of messages that are nothing but manners.
const (
	hello  = "hello"
	thanks = "thanks"
)

// manners are words of greeting and of thanks, and those that go with them.
var manners = map[string]string{
	"hello": hello, "hi": hello, "hey": hello, "morning": hello, "evening": hello, "afternoon": hello, "howdy": hello, "hiya": hello,
	"g'day": hello, "gday": hello, "yo": hello, "greetings": hello, "welcome": hello,
	"thanks": thanks, "thank": thanks, "thx": thanks, "ty": thanks, "cheers": thanks, "ta": thanks, "appreciated": thanks, "thankyou": thanks,
}

// besides go along with a greeting or thanks.
var besides = map[string]bool{
	"good": true, "you": true, "there": true, "all": true, "everyone": true, "everybody": true, "folks": true, "guys": true, "team": true,
	"mate": true, "boss": true, "bot": true, "press": true, "presshand": true, "very": true, "much": true, "a": true, "lot": true, "lots": true,
	"that": true, "helps": true, "helped": true, "great": true, "perfect": true, "ok": true, "okay": true, "so": true, "the": true, "for": true,
	"help": true, "your": true, "buddy": true, "pal": true, "to": true, "again": true, "nice": true, "many": true, "mates": true, "will": true, "do": true,
	"bye": true, "and": true, "got": true, "it": true, "awesome": true, "super": true, "works": true,
}

// greeting tells a message that is nothing but a greeting or thanks, "" for any
// other.
func (t *turn) greeting() string {
	words := strings.FieldsFunc(strings.ToLower(t.m.Text), func(c rune) bool {
		return strings.ContainsRune(" \t\n,.!?;:-–—()", c) || c > 0x2190
	})
	kind := ""
	for _, w := range words {
		switch k, known := manners[strings.ReplaceAll(w, "’", "'")]; {
		case known && kind == "":
			kind = k
		case !known && !besides[w]:
			return ""
		}
	}
	if kind == "" && t.phrase.Greeting {
		return hello
	}
	return kind
}
