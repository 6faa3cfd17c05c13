package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/grammar"
)

// What is said beside a load without an order to change it.

var (
	// asksYou orders politely: "could you make it 6 strips".
	asksYou = regexp.MustCompile(`\b(?:could|would|can|will) (?:you|someone|somebody)\b`)
	// supposes tells what might be: "i think 6 strips would be better", "wish we had 28 inHg".
	supposes = regexp.MustCompile(`\b(?:wish|hope|hoping|hopefully|imagine|maybe|perhaps|might|could|would|wonder|reckon|ideally|nearly|almost|not sure|thinking (?:of|about)|(?:was|were) going to|tomorrow)\b|\bi think\b|\b(?:next|another) (?:time|load|week|month)\b`)
	// elsewhere tells of another time or load, or of what there is in the shop.
	elsewhere = regexp.MustCompile(`\b(?:had|used to|yesterday|remember(?:s|ed)?|always|usually|was (?:fine|good|ok|okay|great|enough|plenty))\b|\blast (?:time|one|load|week|month|year|night|batch)\b|\b(?:other|another|my|his|her|their|your|next) (?:one|load|job|panel)\b|\b(?:only|just|still) (?:have|has|got)\b|\bleft over\b|(?:\d|strips?|pieces?|boards?|sticks?|of them) left\b|\b(?:asked|wants|wanted|found|missing|on order|rule says|likes|loves|prefers)\b|\b(?:has|have)\b.*\b(?:too|ready)\b`)
	// gaugeReads tells what a gauge shows, which is no plan: "gauge says 24 right now".
	gaugeReads = regexp.MustCompile(`(?i)\b(?:gauge|gage|needle|dial|pump)\b[^.,;]{0,12}\b(?:says|reads?|shows|showing|reading|at)\b`)
	// ordering words make a change of what else would be a remark: "sorry, i had 6 strips".
	ordering = regexp.MustCompile(`\b(?:make|change|sorry|actually|oops|correction|wrong|instead|should|use|swap|switch)\b`)
	// forbids denies a change: "don't make it 6 strips".
	forbids = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|please|pls|plz|but|and|no|so|hey|well|just|we|you|i|guys)\W+)*(?:do not|don['’]?t|dont|never|must not|mustn['’]?t|should not|shouldn['’]?t|shouldnt|won['’]?t|can['’]?t|cannot|no need to|no reason to|not going to|not gonna)\s+(?:\w+\s+){0,2}?(?:make|change|use|set|switch|go|take|swap|put|want|need|do|add|raise|lower|turn|bring|drop)\b`)
)

// remarks reports whether a message in lower case tells or wishes something rather than
// to change the load.
func remarks(text string) bool {
	text = strings.ReplaceAll(asksYou.ReplaceAllString(text, ""), "had to ", "")
	return supposes.MatchString(text) || elsewhere.MatchString(text) && !ordering.MatchString(text)
}

// remarksBesideLoad reports whether figures are told beside the thread's load that do not
// change it.
func (t *turn) remarksBesideLoad() bool {
	return t.before.Load > 0 && t.phrase.Command == nil && len(t.phrase.Facts) > 0 && !asksByTone(strings.ToLower(t.m.Text)) && remarks(strings.ToLower(t.m.Text))
}

// forbidsChange takes an order not to change the load for what it is: nothing is done.
func (t *turn) forbidsChange() bool {
	p := &t.phrase
	if !forbids.MatchString(t.m.Text) || len(p.Facts)+len(p.Drops) > 1 || len(p.Facts)+len(p.Drops)+len(p.Amends) == 0 {
		return false
	}
	unused := slices.Clone(p.Unused)
	for _, f := range p.Facts {
		unused = append(unused, f.Text)
	}
	for _, a := range p.Amends {
		if !slices.Contains(unused, a.Text) {
			unused = append(unused, a.Text)
		}
	}
	t.phrase = grammar.Phrase{Command: &grammar.Command{Verb: grammar.NotDone, Meant: grammar.Correct}, Unused: unused}
	return true
}

// pressing are where a load lies that is pressed.
var pressing = []string{" the press", " the bag", " the frame"}

// loneVerb is what one says of a load in its own thread; "in the bag" is as good as "in".
func loneVerb(text string) (grammar.Verb, bool) {
	for _, place := range pressing {
		if before, after, found := strings.Cut(text, "in"+place); found {
			text = before + "in" + after
		}
		if before, after, found := strings.Cut(text, "out of"+place); found {
			text = before + "out" + after
		}
	}
	v, ok := loneVerbs[text]
	return v, ok
}

// nodding are words of who heard, and no more.
var nodding = []string{"ok", "okay", "k", "alright", "right", "then", "thanks", "thx", "cheers", "ta", "mate", "cool", "and", "so", ","}

// onlyNods reports whether a message is nothing but a nod.
func onlyNods(finding string) bool {
	return !slices.ContainsFunc(findingWords(finding), func(w string) bool { return !slices.Contains(nodding, w) })
}

var (
	// supposing words leave open how a load came out.
	supposing = []string{"hope", "hoping", "hopefully", "would", "could", "might", "maybe", "perhaps", "probably", "if", "wish", "unless"}
	// greeted words make a greeting or a nod of the praise before them: "good morning".
	greeted = []string{"morning", "afternoon", "evening", "night", "day", "luck", "job", "work", "idea", "lunch", "weekend", "call", "point", "question", "news"}
	// askers begin a question without its mark: "all good here, hows lunch".
	askers = []string{"hows", "how's", "how", "whats", "what's", "wheres", "where's", "whens", "when's", "whos", "who's", "when", "where", "who"}
	// lookedAt is what one did who knows how a load came out.
	lookedAt = []string{"unwrapped", "looked", "look", "seen", "checked", "unpacked", "unbagged", "inspected", "unclamped", "scraped"}
)

// leftOpen reports whether words of a finding judge nothing: they hope, ask, are of another
// time, or who says them has not seen the load.
func leftOpen(words []string, tone findingTone) bool {
	for i, w := range words {
		if tone == bad && slices.Contains(badWords, w) {
			return false // "joint 3 open, maybe too little glue"
		}
		next := ""
		if i+1 < len(words) {
			next = words[i+1]
		}
		first := i == 0 || words[i-1] == ","
		switch {
		case slices.Contains(supposing, w), first && slices.Contains(askers, w), w == "last" && (i == 0 || words[i-1] != "than") && (next == "time" || next == "one" || next == "load" || next == "week"):
			return true
		case tone == fine && (w == "here" && i > 0 && words[i-1] == "from" || slices.Contains([]string{"haven't", "havent", "hasn't", "hasnt"}, w)):
			return true
		case tone == fine && slices.Contains(deniers, w):
			behind := words[i+1 : min(i+4, len(words))]
			if slices.Contains(behind, "yet") || slices.ContainsFunc(behind, func(b string) bool { return slices.Contains(lookedAt, b) }) {
				return true
			}
		}
	}
	return false
}
