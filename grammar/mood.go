package grammar

import (
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// Only who states or orders something changes the book. These words open a
// question to it.
var (
	questionWords = []string{"is", "are", "was", "were", "has", "did", "does", "when", "why", "who", "where", "which", "what", "how", "whether",
		"should", "shall", "may", "might", "isnt", "arent", "wasnt", "hasnt", "didnt", "doesnt", "whats", "whens", "whos", "whys", "wheres", "hows", "wonder", "wondering"}
	// helpers ask of somebody and order without one: "do we hold 14", "do hold 14".
	helpers = []string{"do", "have", "had", "can", "could", "would", "will"}
	helped  = []string{"i", "we", "you", "anyone", "anybody", "someone", "somebody", "it", "he", "she", "they"}
	// addressed turn a question into a request: "can you take 14 out".
	addressed = []string{"you", "someone", "somebody", "anyone", "anybody", "ya", "u"}
	pleas     = []string{"please", "pls", "plz"}
	greetings = []string{"ok", "okay", "so", "hey", "hi", "and", "but", "well", "oh", "um", "press", "morning", "guys", "right", "also", "then", "just", "hello", "yo", "tell", "me", "remind", "ping", "us", "let", "know"}
)

// These say of a load what is still to come.
var (
	comingWords = []string{"tomorrow", "tonight", "soon", "shortly", "later", "will", "gonna", "might", "may", "maybe", "perhaps", "almost", "nearly", "hopefully", "eventually", "once", "until", "till", "unless", "should", "could", "would", "if", "when"}
	comingVerbs = []string{"going", "about", "plan", "planning", "want", "wants", "need", "needs", "ready", "supposed", "due", "hoping", "hope", "try", "trying", "aim", "aiming", "meant"} // with "to" behind
	wishing     = []string{"lets", "wanna", "gotta", "hafta", "id like to"}                                                                                                                 // with a word of moving a load behind
	whiles      = []string{"bit", "moment", "minute", "min", "sec", "second", "while", "few", "hour", "couple"}
)

// denialWords deny a verb as well as the words of [kindNot] do.
var denialWords = []string{"shouldnt", "couldnt", "wouldnt", "mustnt", "neednt", "nobody", "noone"}

// mood leaves a load as it is where the message asks about it, denies what
// would change it, or tells what is still to come.
func (r *reader) mood() {
	c := r.phrase.Command
	if c == nil || c.Verb == Show || c.Verb == List || c.Verb == NotDone {
		return
	}
	end := r.commandEnd(c)
	switch {
	case r.asksOfLoads(end):
		r.leaves(c, c.Note)
		*c = Command{Verb: Show, Meant: c.Verb, Loads: c.Loads, Bare: c.Bare}
		if c.Meant == Post || c.Meant == Undo || c.Meant == Copy {
			for _, n := range c.Loads {
				r.unuse(strconv.Itoa(n))
			}
			*c = Command{Verb: NotDone, Meant: c.Meant}
		}
	case r.deniesVerb(end):
		r.leaves(c, "")
		*c = Command{Verb: NotDone, Meant: c.Verb, Loads: c.Loads, Note: c.Note}
	case c.Verb == Check && r.tellsNoCheck(c):
	case r.unsure(c, end) != "":
		lacks := r.unsure(c, end)
		r.leaves(c, "")
		*c = Command{Verb: NotDone, Meant: c.Verb, Loads: c.Loads, Note: c.Note, Lacks: lacks, Bare: c.Bare}
		if i := r.itemFrom(c.Note); lacks == LacksWhich && c.Note != "" && r.orderBehindOr(i) {
			r.leaves(c, c.Note)
			c.Note = "" // of "drop 1 or drop 2" no part is an order
		}
	case c.Verb != Correct && c.Verb != Copy && (r.isToCome(end) || r.awaits(c) || r.putOff(c) || r.asksSomebody(c)):
		if c.Verb == Result { // "hope 1 came out good": the finding is no second order
			r.leaves(c, c.Note)
			c.Note = ""
		}
		r.leaves(c, "")
		*c = Command{Verb: NotDone, Meant: c.Verb, Loads: c.Loads, Note: c.Note, ToCome: true}
	}
}

// leaves puts what a command said beside its loads among the unused; that of a
// note only where it has a number.
func (r *reader) leaves(c *Command, note string) {
	for _, f := range c.Measured {
		r.unuse(f.Text)
	}
	r.unuse(c.Clock)
	r.unuse(c.Press)
	if hasDigit(c.Title) {
		r.unuse(c.Title)
	}
	if hasDigit(note) {
		r.unuse(note)
	}
	if c.From > 0 {
		r.unuse(strconv.Itoa(c.From))
	}
	r.phrase.Unused = distinct(r.phrase.Unused)
}

// follows reads a second command in what would be the note of the first: "2 out
// and 3 in".
func (r *reader) follows() {
	c := r.phrase.Command
	if c != nil && c.Verb == Undo && hasDigit(c.Note) {
		r.unuse(c.Note) // "undo that, it was 2"
	}
	if c == nil || c.Note == "" || r.splits(c) || !slices.Contains([]Verb{In, Out, Hold, Clear, Drop, Uncheck, NotDone}, c.Verb) {
		return
	}
	text := c.Note
	for _, joint := range []string{"and ", "then ", "also ", "& ", "+ "} {
		text = strings.TrimPrefix(text, joint)
	}
	if r.onlyThese(c) {
		return
	}
	if c.Verb == Out && r.stillIn(r.itemFrom(c.Note)) {
		r.unuse(text) // "30 and 31 came out, 32 is still in"
		c.Note = ""
		return
	}
	if r.nothingLeft(c) {
		*c = Command{Verb: NotDone, Meant: c.Verb, Loads: c.Loads}
		return
	}
	if len(r.spared(c)) > 0 {
		r.sparedApart(c)
		return
	}
	noted := c.Verb != In && c.Verb != Out && c.Verb != NotDone // there a reason follows, which may name loads
	text = r.orderAnew(c, text)
	p := Parse(text, r.habit)
	if p.Command != nil && p.Command.Verb == Result && len(p.Command.Loads) == 0 {
		p.Command.Loads = c.Loads // "14 out, result good"
	}
	switch {
	case r.undoesOrder(c, p.Command):
		for _, n := range c.Loads {
			if !slices.Contains(loadsOf(p.Command), n) {
				r.unuse(strconv.Itoa(n))
			}
		}
		r.phrase.Unused = distinct(append(r.phrase.Unused, p.Unused...))
		r.phrase.Command = p.Command
	case p.Command != nil && len(p.Command.Loads) > 0 && (!(noted && text == c.Note) || p.Command.Verb == c.Verb && p.Command.Note == ""):
		unread := slices.DeleteFunc(r.phrase.Unused, func(u string) bool { return strings.Contains(text, u) })
		r.phrase.Unused = distinct(append(unread, p.Unused...))
		r.phrase.Refused = append(r.phrase.Refused, p.Refused...)
		c.Then, c.Note = r.underCondition(c, p.Command), ""
	case r.turnsBack(c):
		if hasDigit(text) {
			r.phrase.Unused = distinct(append(r.phrase.Unused, text))
		}
		*c = Command{Verb: NotDone, Meant: c.Verb, Loads: c.Loads, Lacks: LacksSense}
	case (c.Verb == In || c.Verb == Out) && hasDigit(text): // "14 out, then 15"
		r.phrase.Unused = distinct(append(r.phrase.Unused, text))
	}
}

// nothingLeft reports whether an order is called off as soon as it is given: "drop 15. no
// wait", "clear 14, no dont".
func (r *reader) nothingLeft(c *Command) bool {
	return c.Verb != NotDone && r.takesBackIn(r.itemFrom(c.Note), c.Verb)
}

// orderAnew is the order in what stands behind another: of "hold 15, no hold 16".
func (r *reader) orderAnew(c *Command, text string) string {
	const no = "no "
	if !strings.HasPrefix(strings.ToLower(text), no) {
		return text
	}
	p := Parse(text[len(no):], r.habit)
	if p.Command == nil || p.Command.Verb != c.Verb || len(p.Command.Loads) == 0 {
		return text
	}
	return text[len(no):]
}

// undoesOrder reports whether the second of two commands undoes the first at once: "drop
// 15. wait no don't drop 15, drop 16", "hold 15, no, hold 16".
func (r *reader) undoesOrder(c, next *Command) bool {
	if next == nil || len(next.Loads) == 0 {
		return false
	}
	if next.Verb == NotDone && next.Meant == c.Verb && !next.ToCome {
		return slices.Equal(next.Loads, c.Loads)
	}
	from := strings.LastIndex(r.text, c.Note)
	i := slices.IndexFunc(r.items, func(it item) bool { return it.start >= from })
	return next.Verb == c.Verb && (r.is(i, kindFix) || r.word(i, "no", "nope"))
}

// loadsOf are the loads that a chain of commands names.
func loadsOf(c *Command) []int {
	var out []int
	for ; c != nil; c = c.Then {
		out = append(out, c.Loads...)
	}
	return out
}

// commandEnd is the item behind the command itself: its verb, its loads and, of
// a going in or out, the rest of that clause, which is no note there.
func (r *reader) commandEnd(c *Command) int {
	end, verb := 0, false
	wanted := slices.Clone(c.Loads)
	for i := range r.noteStart(c) {
		switch {
		case r.items[i].amount != nil:
			n, ok := r.loadNumber(i)
			if at := slices.Index(wanted, n); ok && at >= 0 {
				wanted, end = slices.Delete(wanted, at, at+1), i+1
			}
		case !verb && r.verb(i) == c.Verb:
			verb, end = true, i+1
		}
	}
	if c.Verb == In || c.Verb == Out {
		for end < len(r.items) && !r.isBreak(end) {
			end++
		}
	}
	return end
}

// noteStart is the item that a command's note begins at.
func (r *reader) noteStart(c *Command) int {
	if c.Note == "" || c.Verb == In || c.Verb == Out {
		return len(r.items)
	}
	from := strings.LastIndex(r.text, c.Note)
	i := 0
	for i < len(r.items) && r.items[i].start < from {
		i++
	}
	return i
}

// asksOfLoads reports whether a command of the items up to end is a question.
func (r *reader) asksOfLoads(end int) bool {
	i := r.firstWord()
	if i >= len(r.items) {
		return false
	}
	open, _, _ := strings.Cut(r.items[i].word, " ")
	next := r.wordAfter(i)
	switch {
	case r.items[i].amount != nil, r.is(i, kindVerb) && r.verb(i) != List && r.verb(i) != Show:
	case open == "what" && next == "a": // "what a mess, hold 14"
		return false
	case slices.Contains(questionWords, open):
		return true
	case slices.Contains(helpers, open) && slices.Contains(addressed, next), open == "could" && next == "we":
		return false
	case slices.Contains(helpers, open) && (slices.Contains(helped, next) || open == "will" && r.amountsIn(i, min(i+3, len(r.items))) > 0):
		return r.opens(pleas...) < 0
	}
	return r.asksWithMark(end) && r.opens(pleas...) < 0
}

// firstWord is the first item that neither greets nor parts.
func (r *reader) firstWord() int {
	i := 0
	for i < len(r.items) && (r.items[i].amount == nil && r.items[i].brk != 0 || r.is(i, kindPerson) || r.word(i, greetings...)) {
		i++
	}
	return i
}

func (r *reader) wordAfter(i int) string {
	if words := strings.Fields(r.items[i].word); len(words) > 1 {
		return words[1]
	}
	if i+1 < len(r.items) {
		next, _, _ := strings.Cut(r.items[i+1].word, " ")
		return next
	}
	return ""
}

// asksWithMark reports whether a question mark stands at the end of the message
// or right behind the command: "1 checked? bar 1 in".
func (r *reader) asksWithMark(end int) bool {
	last := len(r.items) - 1
	for last > 0 && r.items[last].brk == '.' && !r.marksQuestion(last) {
		last--
	}
	return r.marksQuestion(last) || r.marksQuestion(end)
}

func (r *reader) marksQuestion(i int) bool {
	return i >= 0 && i < len(r.items) && r.items[i].amount == nil && strings.Contains(r.items[i].word, "?")
}

// deniesVerb reports whether a command of the items up to end is denied: "don't
// take 14 out", "no need to hold 14".
func (r *reader) deniesVerb(end int) bool {
	for i := range min(end, len(r.items)) {
		switch {
		case r.word(i, "no") && r.word(i+1, "need"), r.word(i, denialWords...):
			return true
		case r.is(i, kindNot, "not") && !r.isBreak(i+1) && !r.sparesBehind(i):
			return true
		}
	}
	return false
}

// isToCome reports whether a command of the items up to end is a plan: "14 out
// tomorrow", "14 in in 10 minutes", "we'll drop 14".
func (r *reader) isToCome(end int) bool {
	if r.word(r.firstWord(), "before", "after", "while") {
		return true
	}
	for i := range min(end, len(r.items)) {
		word := r.items[i].word
		switch {
		case r.items[i].amount != nil:
		case slices.Contains(comingWords, word):
			return !r.requests()
		case r.word(i+1, "to") && slices.Contains(comingVerbs, word), r.word(i, "hope", "hoping", "wish", "wishing", "praying"), r.letsMove(i), r.before(i):
			return true
		case strings.HasPrefix(r.text[r.items[i].end:], "'ll"), strings.HasPrefix(r.text[r.items[i].end:], "’ll"):
			return true
		case r.phrase.Command.Ago > 0:
		case word == "in" && r.lasts(i+1), word == "in" && r.word(i+1, "a", "another") && r.lasts(i+2):
			return true
		}
	}
	return false
}

// letsMove reports whether item i begins an intention to move a load: "lets get 1 in".
func (r *reader) letsMove(i int) bool {
	if v := r.phrase.Command.Verb; v != In && v != Out || !r.word(i, wishing...) && !(r.word(i, "us") && r.word(i-1, "let")) {
		return false
	}
	return r.word(i+1, "get", "put", "have", "slide", "load", "take", "pull", "try", "see", "stick")
}

// before reports whether an order at item i names what is to come before it: "get 1 in
// before lunch".
func (r *reader) before(i int) bool {
	c := r.phrase.Command
	note := strings.ToLower(c.Note)
	return c.Verb == In && i == r.firstWord() && r.word(i, "get", "slide") && (strings.HasPrefix(note, "before ") || strings.HasPrefix(note, "by "))
}

// requests reports whether the message asks somebody to do something.
func (r *reader) requests() bool {
	i := r.firstWord()
	return i < len(r.items) && r.word(i, helpers...) && (slices.Contains(addressed, r.wordAfter(i)) || r.wordAfter(i) == "we")
}

// lasts reports whether item i is a length of time.
func (r *reader) lasts(i int) bool {
	if i >= len(r.items) {
		return false
	}
	if am := r.items[i].amount; am != nil {
		return am.unit != nil && am.unit.Dimension == unit.Lasting
	}
	return r.word(i, whiles...)
}
