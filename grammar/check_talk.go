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
		case r.checkDenied(from, to):
			return true, false
		case r.checkToCome(from, to):
			return true, true
		case r.fromElsewhere(from, to):
			return true, false
		}
		from = to + 1
	}
	return false, false
}

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
		case r.word(i, "last") && r.word(i+1, pastThings...), r.word(i, "mine", "yours", "theirs", "hers", "planned", "yesterday's"),
			r.word(i, "yesterday", "earlier", "previously", "before") && !verb && r.amountsIn(from, to) > 0,
			r.word(i, "used") && r.word(i+1, "to"),
			r.word(i, owners...) && (r.word(i+1, ownThings...) || r.is(i+1, kindVerb, string(Show))),
			r.word(i, sayings...) && i > from && !r.is(i-1, kindVacuum) && !r.is(i-1, kindNoun) && !r.word(i-1, instruments...),
			r.is(i, kindVerb, string(Copy)) && !r.word(i+1, "planned") && to-i > 1,
			r.paperAt(i) && !r.comparedWith(from, i):
			return true
		}
	}
	return false
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
