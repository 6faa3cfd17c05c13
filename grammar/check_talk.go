package grammar

import (
	"slices"
	"strings"
)

// A check counts only where it tells what was measured: these tell of a check that was not
// made, is to come or is wished for, and of figures that come from elsewhere.
var (
	checkComing = []string{"later", "tomorrow", "tonight", "soon", "shortly", "will", "gonna", "should", "could", "would", "might", "need", "needs", "want", "wants", "wish", "hope", "hoping", "hopefully", "unless"}
	checkBare   = []string{"check", "verify", "measure", "remeasure", "recheck", "sign off"}
	whoChecks   = []string{"someone", "somebody", "anyone", "anybody", "who", "whos", "can", "could", "please", "pls", "plz", "you", "to", "lets", "must"}
	instruments = []string{"tape", "ruler", "rule", "caliper", "calipers", "calliper", "callipers", "gage", "it", "square", "micrometer", "vac", "dial", "needle", "id", "i", "we"}
	sayings     = []string{"said", "says", "say", "told", "reckons", "thinks", "claims", "claimed", "swears", "swore", "wants", "wanted", "posted", "wrote"}
	owners      = []string{"my", "his", "her", "their", "your", "another", "other", "next", "previous", "previously"}
	ownThings   = []string{"load", "loads", "one", "ones", "job", "panel", "panels", "batch"}
	pastThings  = []string{"time", "week", "month", "night", "year", "load", "one", "batch", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}
)

// notMeasured reports whether a message that was taken for a check tells of none: "not
// checked yet, bar 1", "will check bar 1 after lunch", "last time bar 1"; toCome says that
// one is to be.
func (r *reader) notMeasured() (undone, toCome bool) {
	for from := 0; from < len(r.items); {
		to := from
		for to < len(r.items) && !r.isBreak(to) {
			to++
		}
		switch {
		case r.checkDenied(from, to), r.asksAfter(from, to), r.checkedByNone(from, to):
			return true, false
		case r.checkToCome(from, to), r.beingChecked(from, to):
			return true, true
		case r.fromElsewhere(from, to) && !r.measuredBeside(from, to) && !(r.paperAt(from) && r.opensWithin(from, to, "my") && r.opensWithin(from, to, "tape", "calipers", "rule")):
			return true, false
		}
		from = to + 1
	}
	return r.checkTakenBack(), false
}

// beingChecked: "3 to be checked", "3 is being measured"; of the gauge alone it is no matter.
func (r *reader) beingChecked(from, to int) bool {
	for i := from; i < to; i++ {
		switch {
		case r.is(i, kindNoun), r.is(i, kindVacuum):
			return false
		case r.word(i, "be", "being", "getting", "get") && (r.is(i+1, kindVerb, string(Check)) || r.is(i+2, kindVerb, string(Check)) && !r.isBreak(i+1)):
			return true
		}
	}
	return false
}

// withoutMeasure are ways to look at a load that measure nothing: "checked by eye".
var withoutMeasure = []string{"eye", "eyeball", "sight", "feel", "phone", "telephone", "guess", "guessing", "memory", "heart", "ear", "video", "photo", "photos", "picture", "pictures", "text", "message", "mail", "email", "rumour", "rumor"}

// checkedByNone: "3 checked by eye", "checked over the phone".
func (r *reader) checkedByNone(from, to int) bool {
	for i := from; i < to; i++ {
		if verb := r.within(from, i, kindVerb, string(Check)); verb >= 0 && r.word(i, withoutMeasure...) && r.amountsIn(verb, i) == 0 {
			return true
		}
	}
	return false
}

// asksAfter: "bar 1, strips 1/2, is that right", "…, yes or no".
func (r *reader) asksAfter(from, to int) bool {
	for i := from; i < to; i++ {
		asks := r.word(i, "is", "are", "was", "were", "does", "do", "did", "can", "could", "should", "would", "will", "am", "isnt", "arent", "doesnt", "dont")
		opens := i == from || r.items[i-1].amount != nil || r.word(i-1, "and", "so", "but", "or", "ok", "then")
		switch {
		case r.items[i].amount != nil:
		case asks && opens && r.word(i+1, "that", "this", "it", "they", "these", "those", "i", "we", "you", "everything"):
			return true
		case r.word(i, "or") && (r.is(i+1, kindNot) || r.word(i+1, "no", "what", "wrong")) && r.isBreak(i+2):
			return true
		}
	}
	return false
}

// checker is who is said to have checked a load: "cy" of "3 checked by cy, bar 1".
func (r *reader) checker() string {
	for i := range r.items {
		if !r.word(i, "by") || !r.is(i-1, kindVerb, string(Check)) || i+1 >= len(r.items) {
			continue
		}
		k := i + 1
		for r.word(k, "the", "our", "my", "a") {
			k++
		}
		if it := &r.items[min(k, len(r.items)-1)]; k < len(r.items) && it.amount == nil && !r.isBreak(k) && !byOwnHand[it.word] && !r.is(k, kindNoun) && !r.is(k, kindVacuum) && !r.is(k, kindUnit) {
			return it.word
		}
	}
	if r.namedFirst() {
		return r.items[0].word
	}
	return ""
}

// byOwnHand is with what the one who tells it measured: "checked by tape", "by me".
var byOwnHand = wordSet(`me myself us ourselves hand tape ruler rule caliper calipers calliper callipers micrometer measuring measurement now card plan ticket drawing book numbers length width far way i gauge gage measure steel square`)

// tellsNoCheck leaves a load unchecked of which no measuring is told.
func (r *reader) tellsNoCheck(c *Command) bool {
	undone, toCome := r.notMeasured()
	if undone {
		r.leaves(c, "")
		*c = Command{Verb: NotDone, Meant: Check, Loads: c.Loads, ToCome: toCome, Then: c.Then}
	}
	return undone
}

// checkDenied: "not checked yet", "haven't measured bar 1"; but "gauge not checked" is of
// the gauge alone.
func (r *reader) checkDenied(from, to int) bool {
	for i := from; i < to; i++ {
		if r.is(i, kindNoun) || r.is(i, kindVacuum) || r.word(i, "rest") {
			return false
		}
		denied := r.is(i, kindVerb, string(Uncheck)) && (strings.HasPrefix(r.items[i].word, "not ") || r.items[i].word == "unchecked")
		if r.is(i, kindNot) || r.word(i, denialWords...) {
			for k := i + 1; k < to && k < i+4 && !r.is(k, kindNoun); k++ {
				denied = denied || r.is(k, kindVerb, string(Check)) || r.word(k, checkBare...) || r.word(k, "measured")
			}
		}
		if denied {
			return true
		}
	}
	return false
}

// checkToCome: "i'll check it later", "someone check bar 1 please", "i need a bar 1".
func (r *reader) checkToCome(from, to int) bool {
	verb := r.within(from, to, kindVerb, string(Check))
	if verb < 0 && r.amountsIn(from, to) == 0 {
		return false
	}
	bare, measured := false, r.ownMeasure(from, to)
	for i := from; i < to; i++ {
		switch {
		case r.items[i].amount != nil, measured, r.word(i, "supposed", "meant", "due"):
		case r.word(i, checkComing...), r.word(i, comingVerbs...) && r.word(i+1, "to"), r.goesToo(i):
			return true
		case r.word(i, checkBare...):
			asked := i > from && r.opensWithin(from, i, whoChecks...) || r.opens(pleas...) >= 0
			bare = bare || asked || i == from && from > 0 && i+1 < to && !r.isBreak(i+1)
		}
	}
	return bare
}

// ownMeasure reports whether a clause says that its figure was measured: "bar measured 1
// 1/4 though the card should say 1".
func (r *reader) ownMeasure(from, to int) bool {
	for i := from; i < to; i++ { // the word itself may have been read as "is"
		if it := &r.items[i]; it.amount == nil && strings.HasSuffix(strings.ToLower(r.text[it.start:it.end]), "measured") {
			return r.amountsIn(from, to) > 0
		}
	}
	return false
}

// goesToo: "'ll" stands behind item i.
func (r *reader) goesToo(i int) bool {
	behind := r.text[r.items[i].end:]
	return strings.HasPrefix(behind, "'ll") || strings.HasPrefix(behind, "’ll")
}

// fromElsewhere: "like the card says", "same as ana said", "last time", "my load has": what
// is told was read, remembered, or is of another load.
func (r *reader) fromElsewhere(from, to int) bool {
	verb := r.within(from, to, kindVerb, string(Check)) >= 0
	for i := from; i < to; i++ {
		switch {
		case r.items[i].amount != nil:
		case r.word(i, "last") && r.word(i+1, pastThings...), r.word(i, "yesterday", "last night", "the other day") && verb, r.word(i, "mine", "yours", "theirs", "hers", "planned", "yesterday's") && !r.word(i-1, "as"),
			r.word(i, "yesterday", "earlier", "previously", "before") && !verb && r.amountsIn(from, to) > 0,
			r.word(i, "used") && r.word(i+1, "to"),
			r.word(i, owners...) && (r.word(i+1, ownThings...) || r.is(i+1, kindVerb, string(Show))),
			r.word(i, sayings...) && i > from && !(r.word(i, "posted") && r.word(i-1, "as")) && !r.is(i-1, kindVacuum) && !r.is(i-1, kindNoun) && !r.word(i-1, instruments...),
			r.is(i, kindVerb, string(Copy)) && !r.word(i+1, "planned") && to-i > 1,
			r.paperAt(i) && !r.comparedWith(from, i):
			return true
		}
	}
	return false
}

// measuredBeside reports whether a check tells figures outside the clause [from, to) too,
// which then is no more than a doubt: "1 checked: bar 1 1/4 (card said 1), strips 1/2".
func (r *reader) measuredBeside(from, to int) bool {
	beside := 0
	for i := range r.items {
		if am := r.items[i].amount; am != nil && (i < from || i >= to) && !r.is(i+1, kindVerb, string(Check)) && !r.is(i-1, kindVerb, string(Check), string(Show)) {
			beside++
		}
	}
	return beside > 0 && r.within(0, len(r.items), kindVerb, string(Check)) >= 0
}

// comparedWith reports whether the paper at item i is what was measured against: "checked
// against the card", "matches the drawing".
func (r *reader) comparedWith(from, i int) bool {
	if _, to := r.clause(i); r.ownMeasure(from, to) {
		return !r.word(i-1, "like", "per", "as") && !r.word(i-2, "like", "per", "as", "from", "by")
	}
	return r.opensWithin(from, i, "against", "matches", "match", "matching", "with", "to", "agrees", "vs") || r.is(i, kindNoun)
}

// heldTo are words that put a load on hold behind something else.
var heldTo = []string{"hold", "on hold", "put on hold", "park", "pause", "freeze", "halt", "hold up", "hold off", "hold off on", "put a hold on", "stop load"}

// holdBehind takes an order to hold the load out of what stands behind a check or a
// correction: "1 checked, bar 1, strips 1/4, but hold it, mat missing". A check speaks
// against itself by it.
func (r *reader) holdBehind(c *Command, next int) {
	for i := max(next, 1); i < len(r.items); i++ {
		opens := i - 1
		put := r.word(i, "on hold") && r.opensWithin(max(i-2, 0), i, "put")
		for r.word(opens, "please", "pls", "to", "then", "now", "just", "so") || put && r.word(opens, "put", "it", "this", "that") {
			opens--
		}
		if r.verb(i) != Hold || !r.word(i, heldTo...) || !r.isBreak(opens) && !r.word(opens, "but", "and") || r.gaugeHolds(i) {
			continue
		}
		refs, end := r.references(i + 1)
		for len(refs) == 0 && r.word(end, "it", "this", "that", "one", "them") {
			end++
		}
		if !r.isBreak(end) && !r.word(end, "please", "pls", "because", "cos", "cause", "as", "since", "till", "until", "for", "now") {
			continue
		}
		said := trimmed(r.text[r.items[i].start:])
		for k := opens + 1; k < end; k++ {
			r.items[k].used = true
		}
		then := &Command{Verb: Hold, Loads: refs, Note: r.note(end)}
		if len(refs) == 0 {
			then.Loads = c.Loads
		}
		own := len(refs) == 0 || len(c.Loads) == 0 || slices.ContainsFunc(refs, func(n int) bool { return slices.Contains(c.Loads, n) })
		if c.Then = then; own && c.Verb == Check {
			c.Doubts = append(c.Doubts, said)
		}
		return
	}
}
