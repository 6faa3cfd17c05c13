package grammar

import (
	"slices"
	"strings"
)

// Questions to the book in free order are known by their words: all of them are
// in a table, and one says what is looked for.

// ofOneWords are what a question about one load is made of, ofOneCues those that
// tell it from other questions.
var (
	ofOneWords = strings.Fields(`when what who how is was will are has have did does be been the of to with for on at load a it yet now please tell me us about whats whens hows
		full times good come came out go gone get got in long longer much time more till until story does which what whose we use used glued under made from can could may be press bag frame`)
	ofOneCues = strings.Fields(`alright okay pass passed fail failed history log happened happening happens done ready due up finished finish finishes over waiting wait waits left remaining record job jobs lot batch glue title customer note notes doing plan planned`)
)

// asksOfOne reads "when is 1 done", "history of 14", "what is 14 waiting for".
func (r *reader) asksOfOne() bool {
	if r.amountsIn(0, len(r.items)) != 1 {
		return false
	}
	load, cue := 0, ""
	for i := range r.items {
		if am := r.items[i].amount; am != nil {
			n, ok := r.loadNumber(i)
			if !ok || am.unit != nil || r.is(i+1, kindAttr) || r.is(i-1, kindRole, "lot", "job") || r.word(i-1, "batch") {
				return false
			}
			load = n
		}
	}
	if load == 0 {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil {
			continue
		}
		for _, w := range r.wordsOf(i) {
			switch {
			case slices.Contains(ofOneCues, w):
				cue = w
			case !slices.Contains(ofOneWords, w):
				return false
			}
		}
	}
	first := r.firstWord()
	may := r.word(first, "can", "could", "may")
	if cue == "" && ((may || r.word(first, "when")) && r.wordIn("come", "go", "be") && r.wordIn("out", "come out", "out of the press", "out of the bag") || r.wordIn("how") && r.wordIn("long") && r.wordIn("been")) {
		cue = "out" // "can 1 come out yet", "when does 1 come out", "how long has 1 been in"
	}
	asks := first < len(r.items) && (may || slices.Contains(questionWords, r.wordsOf(first)[0]) || r.asksSomething())
	history := slices.Contains([]string{"history", "log", "record", "happened"}, cue)
	if cue == "" || !asks && !history {
		return false
	}
	for i := range r.items {
		r.items[i].used = true
	}
	r.phrase.Command = &Command{Verb: Show, Loads: []int{load}, History: history}
	r.phrase.Asks = []Ask{{About: Book}}
	return true
}

// wordsOf are the words of item i; it has at least one, if an empty one.
func (r *reader) wordsOf(i int) []string {
	if r.items[i].brk != 0 && r.items[i].amount == nil {
		return []string{"the"} // a mark says nothing
	}
	if words := strings.Fields(r.items[i].word); len(words) > 0 {
		return words
	}
	return []string{""}
}

// listWords are what a question for several loads is made of beside [lookedFor],
// woods, glues, a job and a lot.
var listWords = strings.Fields(`which what whats how many are were was have has had is the loads results ones any all show me list us of for with on in a second we did do so far used use
	using from number no open still yet press went go gone that there our and or to at been be got`)

// lookedFor are words that say which loads are meant, with how they set a query.
var lookedFor = map[string]func(*Query){
	"waiting": posted, "unchecked": posted, "posted": posted, "need": posted, "needs": posted, "needing": posted,
	"check":    func(*Query) {},
	"checked":  func(q *Query) { q.State = "checked" },
	"hold":     func(q *Query) { q.State = "held" },
	"held":     func(q *Query) { q.State = "held" },
	"pressing": func(q *Query) { q.Pressing = true },
	"bad":      bad, "failed": bad, "poor": bad, "wrong": bad, "delaminated": bad,
	"good": good, "fine": good, "well": good,
	"yesterday": func(q *Query) { q.Span = "yesterday" }, "yesterdays": func(q *Query) { q.Span = "yesterday" },
	"few": func(*Query) {}, "couple": func(*Query) {}, "recent": func(*Query) {}, "latest": func(*Query) {},
	"today": func(q *Query) { q.Today = true },
	"week":  func(q *Query) { q.Span = "this week" },
	"month": func(q *Query) { q.Span = "this month" },
}

func posted(q *Query) { q.State = "posted" }
func bad(q *Query)    { q.Result = "bad" }
func good(q *Query)   { q.Result = "good" }

// listsLoads reads "which loads were bad", "loads for job 212", "how many loads
// are waiting for a check".
func (r *reader) listsLoads() bool {
	if !r.says("loads", "results") && !r.saysLater("loads", "results") {
		return false
	}
	if i := r.firstWord(); r.is(i, kindVerb, string(Hold), string(Clear)) && r.word(i+1, "all loads", "all the loads", "open loads") {
		return false // "hold all loads"
	}
	q := &Query{}
	found, named := false, false
	for i := 0; i < len(r.items); i++ {
		it := &r.items[i]
		switch {
		case r.is(i, kindRole, "lot", "job") && i+1 < len(r.items):
			found = true
			i = r.nameEnd(i)
			continue
		case it.amount != nil:
			return false
		case it.kind == kindWood, it.kind == kindGlue:
			found = found || r.word(i-1, "with", "using", "in", "of") && in(r.wordsOf(r.firstWord())[0], "show", "list", "which", "loads", "last")
			continue
		}
		for _, w := range r.wordsOf(i) {
			set, looked := lookedFor[w]
			switch {
			case looked:
				set(q)
				found = true
			case w == "last" || w == "this" || w == "past":
			case !slices.Contains(listWords, w):
				return false
			}
			named = named || w == "loads" || w == "results"
		}
	}
	if r.inPressSaid() {
		q.Pressing, found = true, true
	}
	if !(found || r.allLoads()) || !named || r.asksToPlan() {
		return false
	}
	if r.opens("last") >= 0 && q.Span != "" {
		q.Span = strings.Replace(q.Span, "this", "last", 1)
	}
	q.Count = r.wordsOf(r.firstWord())[0] == "how"
	r.lots(anywhere)
	c := &Command{Verb: List, Query: q}
	for i := range r.items {
		r.filters(i, c)
	}
	r.phrase.Command = c
	r.phrase.Asks = []Ask{{About: Book}}
	return true
}

// allLoads: "loads", "all the loads", "show me the open loads".
func (r *reader) allLoads() bool {
	for i := range r.items {
		for _, w := range r.wordsOf(i) {
			if !in(w, "loads", "all", "the", "our", "my", "open", "show", "me", "list", "see", "please", "pls") {
				return false
			}
		}
	}
	return true
}

// nameEnd is the last item of the job or lot that is named behind item i.
func (r *reader) nameEnd(i int) int {
	j := i + 1
	for j+1 < len(r.items) && (r.items[j].brk == '#' || r.items[j].brk == ':' || r.word(j, "number", "no", "nr", "is")) {
		j++
	}
	for j+1 < len(r.items) && r.items[j+1].start == r.items[j].end && !r.isStop(j+1) && r.items[j+1].brk != ',' {
		j++
	}
	return j
}

// inPressSaid: "how many loads are in the press".
func (r *reader) inPressSaid() bool {
	for i := range r.items {
		words := r.wordsOf(i)
		if words[len(words)-1] == "press" && (r.word(i-1, "the") && (r.word(i-2, "in") || r.is(i-2, kindUnit, "in")) || slices.Contains(words, "in")) {
			return true
		}
	}
	return false
}

// asksToPlan: "how many loads today" is a day to plan, not the book's.
func (r *reader) asksToPlan() bool {
	words := 0
	for i := range r.items {
		words += len(r.wordsOf(i))
	}
	return words <= 4 && r.wordsOf(r.firstWord())[0] == "how" && r.opens("week", "month", "yesterday") < 0
}
