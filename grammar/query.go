package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// query reads a question to the load book: "what's in the press", "last five
// with epoxy", "how did 1/4 walnut with a bar go".
func (r *reader) query() bool {
	if r.asksOfOne() || r.usedOn() || r.ownCheck() || r.checkAgain() || r.asksOfGauge() || r.listsLoads() {
		return true
	}
	for i := r.within(0, len(r.items), kindVerb, "list"); i >= 0 && i < len(r.items); i++ {
		if !r.is(i, kindVerb, "list") || r.asksFigureLater(i) || r.is(i-1, kindVerb, string(Hold), string(Clear)) {
			continue // "hold all loads"
		}
		c := &Command{Verb: List, Query: &Query{}}
		switch w := r.items[i].word; {
		case w == "last":
			if r.word(i-1, "those", "these") || !r.lastLoads(i, c) {
				continue
			}
		case w == "list" || w == "when did" || w == "when is it due":
			if r.phrase.Asks != nil && w == "list" {
				continue
			}
			r.readLoads(i, c)
		case w == "how did" || w == "howd" || w == "hows" || w == "how have":
			if r.word(i+1, "you") || w == "hows" && r.amountsIn(0, i) > 2 {
				continue
			}
			if !r.word(len(r.items)-1, "go", "do", "out", "hold", "turn out") && !r.endsIn("go", "do", "out", "come out", "work", "turn", "hold", "went") && !(r.word(i+1, "we", "they", "it") && r.opensWithin(i+2, min(i+4, len(r.items)), "do", "go", "get")) {
				continue
			}
			if k := i + 2; r.word(k-1, "the", "our", "my") && r.is(k, kindVerb, "list") && r.items[k].word == "last" && r.lastLoads(k, c) {
				break // "how did the last five go"
			}
			r.readLoads(i, c)
		case w == "the book" || w == "nobody checked" || w == "noone checked" || w == "who checked" || w == "did anybody check" || w == "did anyone check" || w == "has anybody checked" || w == "has anyone checked" || w == "whos checked" || w == "who posted" || w == "who measured":
			r.readLoads(i, c)
		case in(w, "anything still in", "whats still in", "what is still in", "whats under vacuum", "what have we got in the press", "what have we got in the presses", "what have we got in the bag", "what have we got in", "what do we have in the press", "what have i got in the press", "which load is in the press", "whats cooking in the press", "whos in the press", "whats in the frame", "what is in the frame", "anything in the bag", "anything in the frame", "whats in the presses", "what is in the presses", "anything in the presses", "anything still in the press", "anything still in the presses", "anything still in the bag", "anything left in the press", "whats in the bags", "whats in the press", "what is in the press", "what is now in the press", "whats now in the press", "what is currently in the press", "whats currently in the press", "whats in the press now", "anything in the press", "whats in the bag", "what is in the bag", "in the press right now", "whats pressing", "anything pressing", "is the press empty", "is the press free", "press free", "is the bag empty", "is the bag free", "whats in press", "what is in press", "what was in"):
			if r.hasMeasures(i) || strings.HasSuffix(w, "still in") && !r.nothingAfter(i) {
				continue
			}
			c.Query.Pressing = true
		case in(w, "loads today", "todays loads", "loads for today", "what did we press", "what did we do today", "what have we done today", "what did we get done today", "what did we get through today", "what got done today", "what got pressed today", "what was pressed today", "what was done today", "what has been pressed today", "what went through today", "what have we pressed", "how many loads did", "how many did we"):
			if r.mentions(kindNoun, "panel") && r.mentions(kindRole, "start", "deadline") {
				continue
			}
			c.Query.Today = true
		case in(w, "whats posted", "whats waiting", "anything waiting", "whats unchecked", "whats not checked", "what needs checking", "needs a check",
			"whats still waiting", "what is still waiting", "whats still to check", "whats still to be checked", "whats left to check", "whats left to be checked", "what still needs checking", "what still needs a check", "whats still unchecked", "whats waiting to be checked", "whats to be checked", "anything to check", "anything left to check", "anything still to check", "anything need checking", "anything needing a check", "what have we got to check", "whats open for checking"):
			c.Query.State = "posted"
		case in(w, "whats on hold", "whats held", "anything on hold"):
			c.Query.State = "held"
		case in(w, "whats been checked", "whats checked", "what is checked", "which loads are checked", "what has been checked"):
			c.Query.State = "checked"
		case in(w, "whats out", "what came out", "whats been out", "what has been out"):
			c.Query.State = "out"
		}
		r.filters(i, c)
		r.phrase.Command = c
		r.phrase.Asks = []Ask{{About: Book}}
		return true
	}
	return false
}

// bookSpeaks: "the book says 20 mbar" is of one to read, not of the loads.
func (r *reader) bookSpeaks(i int) bool {
	return r.is(i+1, kindSay) || r.word(i+1, "is", "has", "uses", "keeps", "calls", "goes", "gives", "mentions", "talks", "claims", "wants", "recommends", "lists", "kept", "gave", "went")
}

func in(w string, ws ...string) bool {
	for _, x := range ws {
		if w == x {
			return true
		}
	}
	return false
}

func (r *reader) endsIn(ws ...string) bool {
	for i := len(r.items) - 1; i >= 0 && i > len(r.items)-7; i-- {
		if r.word(i, ws...) || r.is(i, kindVerb, "out") {
			return true
		}
	}
	return false
}

// hasMeasures reports whether amounts with units stand behind item i, which then
// is no question to the book.
func (r *reader) hasMeasures(i int) bool {
	for j := range r.items {
		if am := r.items[j].amount; j != i && am != nil && am.unit != nil {
			return true
		}
	}
	return false
}

// lastLoads reads "last five", "last 3 loads".
func (r *reader) lastLoads(i int, c *Command) bool {
	if i+1 >= len(r.items) || r.items[i+1].amount == nil {
		return false
	}
	n, ok := r.items[i+1].amount.whole()
	if !ok || n < 1 {
		return false
	}
	if j := r.next(i + 1); j >= 0 && r.is(j, kindUnit) {
		return false
	}
	c.Query.Last = n
	r.items[i+1].used = true
	return true
}

func (r *reader) readLoads(i int, c *Command) {
	for j := range r.items {
		if r.items[j].amount == nil || j < i && !r.word(j-1, "load") && !r.is(j-1, kindVerb, "show") {
			continue
		}
		if n, ok := r.loadNumber(j); ok && r.items[j].amount.unit == nil && !r.is(r.next(j), kindNoun) && !r.is(r.next(j), kindWood) && !r.is(r.next(j), kindAttr) {
			c.Loads = append(c.Loads, n)
			r.items[j].used = true
		}
	}
}

// filters reads what the loads asked for have in common.
func (r *reader) filters(i int, c *Command) {
	r.items[i].used = true
	for j := range r.items {
		switch it := &r.items[j]; {
		case it.kind == kindGlue:
			r.say(j, unit.GlueClass, unit.Word(it.id))
		case it.kind == kindWood && it.id == "": // of a wood without figures no load has the species
			r.say(j, unit.Species, unit.Word(it.word))
		case it.kind == kindWood:
			r.say(j, unit.Species, unit.Word(it.id))
		case it.word == "today":
			c.Query.Today = true
		case r.is(j, kindNoun, "bar"):
			c.Query.NoBar = r.is(j-1, kindNot) || r.word(j-1, "a", "any", "the") && r.is(j-2, kindNot)
			c.Query.Bar = !c.Query.NoBar
		}
	}
	r.pressNamed(i, c)
	r.products()
	r.measures()
}

// pressNamed reads "what's in press 2".
func (r *reader) pressNamed(i int, c *Command) {
	if !c.Query.Pressing || !strings.HasSuffix(r.items[i].word, "press") || i+1 >= len(r.items) {
		return
	}
	if nx := &r.items[i+1]; r.namesPress(i+1) || nx.amount != nil && nx.amount.bare() && nx.amount.form != formPair {
		c.Press, nx.used = nx.text, true
	}
}

// asksFigureLater reports whether a later sentence asks for what is computed:
// "announce that all loads are checked. also force on a 24x48 at 20 inHg".
func (r *reader) asksFigureLater(i int) bool {
	_, end := r.sentence(i)
	if end >= len(r.items) {
		return false
	}
	measured := false
	for k := end; k < len(r.items); k++ {
		am := r.items[k].amount
		measured = measured || am != nil && (am.is(unit.Pressing) || am.is(unit.Distance) || am.link == linkTimes)
	}
	for k := end; k < len(r.items) && measured; k++ {
		if r.is(k, kindAsk) && in(string(cue(r.items[k].id).About), "face", "side", "flatten", "glue", "pump", "move") {
			return true
		}
	}
	return false
}
