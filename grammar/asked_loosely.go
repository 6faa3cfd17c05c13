package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Questions that no fixed wording asks.

// handled is what one does to a panel that is out of the press.
var handled = wordSet(`plane sand machine unclamp cut handle mill joint rout scrape stress unwrap demould demold rip trim work`)

// pullsPanel: what is pulled behind item i is the work, out of the press.
func (r *reader) pullsPanel(i int) bool {
	for j := i + 1; j < len(r.items) && j <= i+5 && !r.isBreak(j); j++ {
		if handled[r.items[j].word] && r.items[j].amount == nil && r.word(j-1, "can", "could", "should", "to", "i", "we", "ok", "safely") && !r.mentions(kindNoun, "pump") && !r.pressureSaid() && !r.saidFlow() {
			r.items[j].used = true
			return true // "how long til I can plane it"
		}
		if (r.is(j, kindVacuum, "pull") || r.word(j, "take", "open")) && (r.is(r.next(j), kindNoun, "panel", "strip") || r.word(j+1, "it", "them", "these") && r.opensWithin(j, len(r.items), "out")) {
			return true
		}
	}
	return false
}

// glueDoes are what a glue does in the open, and what it does in the press.
var glueDoes = map[string]unit.Field{
	"skin": unit.ClosedTime, "skins": unit.ClosedTime, "skinned": unit.ClosedTime, "tacks": unit.ClosedTime, "grabs": unit.ClosedTime, "skin over": unit.ClosedTime, "skins over": unit.ClosedTime, "go off": unit.ClosedTime, "goes off": unit.ClosedTime,
	"sets": unit.PressTime, "cures": unit.PressTime, "cured": unit.PressTime, "dries": unit.PressTime, "hardens": unit.PressTime, "bites": unit.PressTime,
}

// glueWorks is the time that "how long till it skins", "until the epoxy sets" asks for;
// "" where it asks for none.
func (r *reader) glueWorks(i int) unit.Field {
	for j := i + 1; j < len(r.items) && j <= i+4 && !r.isBreak(j); j++ {
		if f := glueDoes[r.items[j].word]; f != "" && r.items[j].amount == nil {
			return f
		}
		if r.word(j, "goes", "kicks", "went") && r.word(j+1, "off") {
			return unit.ClosedTime
		}
		if r.items[j].amount != nil || r.is(j, kindNoun) {
			return ""
		}
	}
	return ""
}

// onlyHurries: "somebody answer before this skins over" says why it is urgent, and asks
// nothing of the glue.
func (r *reader) onlyHurries(i int) bool {
	if !r.says("before") || glueDoes[r.items[i].word] != unit.ClosedTime || !r.opensWithin(max(i-4, 0), i, "before") {
		return false
	}
	from, to := r.clause(i)
	return !r.opensWithin(from, to, "how", "time", "long", "can", "will", "enough", "possible", "make", "get", "close")
}

// howLongIn: "how long does it gotta stay in the press".
func (r *reader) howLongIn() bool {
	if !r.says("how") || !r.means(kindAttr, "long") {
		return false
	}
	for i := range r.items {
		if !r.word(i, "how") || !r.is(i+1, kindAttr, "long") {
			continue
		}
		if r.is(i-1, kindRole, "clamp") && r.habit.Follows {
			return true // "leave it in how long with PUR"
		}
		for j := i + 2; j < len(r.items) && j <= i+9 && !r.isBreak(j); j++ {
			if r.items[j].amount != nil {
				break
			}
			if r.word(j, "stay", "sit", "leave", "keep", "stays") || r.is(j, kindRole, "clamp") || r.is(j, kindNoun, "press", "bag", "frame") && r.word(j-1, "the", "a", "in") && (r.word(j-1, "in") || r.word(j-2, "in")) {
				return true
			}
		}
	}
	return false
}

// howLongTo: "how long does it take to pull it down to 22 inHg" is of the pump,
// whatever is pulled.
func (r *reader) howLongTo() bool {
	if !r.says("how", "minutes", "seconds") {
		return false
	}
	long := false
	for i := range r.items {
		long = long || r.word(i, "how") && r.is(i+1, kindAttr, "long") || (r.word(i, "how") && r.word(i+1, "many")) && r.is(i+2, kindUnit) && r.items[i+2].unit.Dimension == unit.Lasting || r.word(i, "minutes", "seconds")
		if am := r.items[i].amount; long && am != nil && am.is(unit.Pressing) && (i > 0 && r.items[i-1].amount == nil && strings.HasSuffix(r.items[i-1].word, "to") || am.link == linkTo) && !r.mentions(kindNoun, "bar", "joint") {
			return true
		}
	}
	return long && r.mentions(kindNoun, "pump") && r.said(unit.Content) && r.pressureSaid() // "pump, volume 300 l, want 0.8 bar, how long"
}

// timeWanted reads "press time?" with no time said.
func (r *reader) timeWanted() unit.Field {
	if !r.means(kindRole, "open", "closed", "clamp") || !r.asksSomething() && r.opens("whats", "what", "wats", "tell") < 0 && r.within(0, len(r.items), kindGlue) < 0 || r.said(unit.Lasting) || r.mentions(kindRole, "label") {
		return ""
	}
	for i := range r.items {
		if !r.is(i, kindRole, "open", "closed", "clamp") || !strings.Contains(r.items[i].word, "time") {
			continue
		}
		if r.items[i].id == "clamp" {
			return unit.PressTime
		}
		return unit.ClosedTime
	}
	return ""
}

// onJoints: "is anything pushing on the joints" names edge joints behind item i, as nothing
// is laid on a core.
func (r *reader) onJoints(i int) bool {
	return r.is(r.next(i), kindNoun, "joint") && !r.mentions(kindNoun, "core", "face")
}

// gluesUnder reports whether the "can I glue" at item i asks whether strips hold by a bar and a
// vacuum, as nothing is told of glue, air or wet wood.
func (r *reader) gluesUnder(i int) bool {
	return in(r.items[i].word, "can i glue", "can we glue", "ok to glue", "okay to glue", "safe to glue") && r.mentions(kindNoun, "strip") && r.mentions(kindNoun, "bar") && r.pressureSaid() &&
		!r.mentions(kindGlue) && !r.mentions(kindAir) && !r.percentSaid() && !r.said(unit.Warmth)
}

// forceWanted reports whether an answer in tons, pounds or newtons is asked for.
func (r *reader) forceWanted() bool {
	if !r.means(kindUnit) {
		return false
	}
	for i := range r.items {
		it := &r.items[i]
		if it.kind == kindUnit && it.amount == nil && (it.unit.Dimension == unit.Pushing || it.unit.Symbol == "lb" || it.unit.Symbol == "ton/ft²") {
			return true
		}
	}
	return false
}

// releasesWedge reports whether a wedge is to be struck or pulled under vacuum.
func (r *reader) releasesWedge() bool {
	return r.mentions(kindNoun, "wedge") && r.wordIn("knock", "hammer", "hit", "pry", "pull", "tap", "bash", "knocking", "hammering", "hitting", "prying", "pulling", "tapping", "loosen", "loosening", "remove", "removing", "slacken") &&
		(r.wordIn("while", "still", "under") || r.wordIn("before") && r.wordIn("letting", "let", "release", "releasing", "vent", "venting", "bleed", "breaking")) &&
		(r.mentions(kindVacuum) || r.pressureSaid()) && (r.asksSomething() || r.wordIn("yes") && r.mentions(kindNot))
}

// whatsThat reads "whats a caul" in a few words and without a number.
func (r *reader) whatsThat() bool {
	i := r.opens("whats", "wats", "whatis")
	if i < 0 || r.amountsIn(0, len(r.items)) > 0 || r.endOf(i) >= 8 && (len(r.items) >= 16 || !r.mentions(kindPerson)) {
		return false
	}
	n := r.next(i)
	if r.word(n, "over") {
		return false // "whats left over"
	}
	return r.is(n, kindNoun) || r.is(n, kindRole) || r.is(n, kindFact) && strings.HasPrefix(r.items[n].id, "cup_up")
}

// termAlone reads "caul??" and "explain caul".
func (r *reader) termAlone() bool {
	if len(r.items) > 5 || r.amountsIn(0, len(r.items)) > 0 || !r.asksSomething() && r.opens("explain") < 0 && !r.mentions(kindAsk, "why") {
		return false
	}
	nouns := 0
	for i := range r.items {
		switch {
		case r.habit.Follows && r.is(i, kindNoun, "core") && r.items[i].word != "core" && r.items[i].word != "substrate":
			return false // "mdf?" is another core
		case r.is(i, kindNoun):
			nouns++
		case r.items[i].brk != 0, r.idle(i), r.word(i, "explain", "why"):
		default:
			return false
		}
	}
	return nouns == 1 && !(r.mentions(kindAsk, "why") && r.opens("explain") < 0)
}

// endOf is where the sentence of item i ends.
func (r *reader) endOf(i int) int {
	_, to := r.sentence(i)
	return to
}

// pushesLater: "how many kilos is that pushing down" weighs no glue.
func (r *reader) pushesLater(i int) bool {
	_, to := r.sentence(i)
	for k := i + 1; k < to; k++ {
		if r.is(k, kindAsk, "face") {
			return true
		}
	}
	return false
}

// convertsPressure: "what psi is 21 inHg" asks for what presses, whatever else is asked.
func (r *reader) convertsPressure() bool {
	if !r.means(kindUnit) {
		return false
	}
	for i := range r.items {
		k := i + 2
		if !r.is(i, kindUnit) || r.items[i].amount != nil || r.items[i].unit.Dimension != unit.Pressing || !r.word(i-1, "what", "many") || !r.word(i+1, "is", "are", "does") {
			continue
		}
		for r.word(k, "a", "the", "about") {
			k++
		}
		if k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.is(unit.Pressing) {
			return true
		}
	}
	return false
}

// figureLater reports whether the clause of item i goes on to a figure by its name.
func (r *reader) figureLater(i int) bool {
	_, to := r.clause(i)
	for k := i + 1; k < to; k++ {
		if r.is(k, kindAsk) && len(cue(r.items[k].id).For) > 0 {
			return true
		}
	}
	return false
}

// figureCue reports whether item i asks for a figure by its name.
func (r *reader) figureCue(i int) bool {
	return r.is(i, kindAsk) && len(cue(r.items[i].id).For) > 0 && r.word(i+1, "get", "gets", "see", "feel", "have", "end")
}

// asksNoWord: "what does the middle joint get then" and "what's a good temp" have the
// cue of a question for a word's meaning, and want a figure.
func (r *reader) asksNoWord(i int) bool {
	it := &r.items[i]
	if it.word == "what does" && r.habit.Follows && r.wordIn("get", "gets", "see", "sees", "come", "take") && !r.wordIn("mean", "stand") {
		return true // "what does the last joint get"
	}
	if it.kind != kindAsk || it.id != "words" {
		return false
	}
	if it.word == "what does" && r.live(i+1) {
		return true // "what does 20 inches make on a 24x30 panel"
	}
	if it.word == "what does" && r.habit.Follows && (r.figureCue(i+1) || r.word(i+1, "the") && r.figureCue(i+2)) {
		return true
	}
	return r.word(i+1, "good", "decent", "typical", "safe", "reasonable", "fair", "nice", "proper", "normal", "better", "best", "stronger", "safer", "easier", "cheaper", "quicker", "faster", "worse", "preferable", "nicer")
}

// pumpCopes: "will the pump manage that? want 24 inHg" names the pump within its cue.
func (r *reader) pumpCopes() bool {
	for i := range r.items {
		if r.is(i, kindAsk, "pump") && strings.HasPrefix(r.items[i].word, "pump ") && !strings.HasSuffix(r.items[i].word, " down") {
			return true
		}
	}
	return false
}

// asksNothing: "mean of 12 tests" asks for no word, "5 strips with our usual bar" tells
// no default.
func (r *reader) asksNothing(i int) bool {
	if r.is(i, kindAsk, "words") && r.word(i, "mean") {
		return r.word(i+1, "of") || r.word(i-1, "the", "a") && r.word(i+1, "is", "value")
	}
	if r.is(i, kindAsk) && r.word(i, "thin ones") && (r.word(i-1, "the") && r.word(i-2, "theyre", "theyll", "these", "those", "used", "using") || r.word(i-2, "are", "be") && r.word(i-3, "they", "these", "those", "strips")) {
		return true // "they're the thin ones, 1/4"
	}
	if r.habit.Follows && r.is(i, kindAsk, "glue") && r.word(i, "glue it", "glue these") && r.word(i+1, "at") && i+2 < len(r.items) && r.opensWithin(0, i, "if") {
		return r.items[i+2].amount != nil && r.items[i+2].amount.is(unit.Proportion) // "what if i glue it at 11%"
	}
	return r.is(i, kindAsk) && strings.HasPrefix(r.items[i].word, "our usual") && r.is(i+1, kindNoun) && r.word(i-1, "with", "on", "using", "and", "at", "under", "in", "plus")
}

// killHelp takes the meaning of a plea from a "help" that is a verb: "does it help if I wax
// the sled".
func (r *reader) killHelp() {
	if !r.says("help") {
		return
	}
	for i := range r.items {
		if r.is(i, kindAsk) && r.items[i].word == "help" && r.word(i+1, "if", "to", "when", "that", "any", "much") {
			r.items[i].meaning = meaning{}
		}
	}
}

// pumpInClause reports whether a pump is what the question at item i is of.
func (r *reader) pumpInClause(i int) bool {
	_, to := r.clause(i)
	return r.within(i, to, kindNoun, "pump") >= 0
}

// wordIn reports whether one of the words stands in the message, if only as a later word of
// a run.
func (r *reader) wordIn(ws ...string) bool {
	if !r.says(ws...) && !r.saysLater(ws...) {
		return false
	}
	for i := range r.items {
		said := r.items[i].word
		if r.items[i].amount != nil {
			continue
		}
		run := strings.Contains(said, " ")
		for _, w := range ws {
			if said == w || run && laterWord(said, w) {
				return true
			}
		}
	}
	return false
}

// glueNamed: "how much glue for 7 joints" is of glue, whatever else is told.
func (r *reader) glueNamed() bool {
	for i := range r.items {
		if r.is(i, kindAsk, "glue:glue_g") && (strings.Contains(r.items[i].word, "glue") || r.word(i+1, "glue") || r.is(i+1, kindGlue)) {
			return true
		}
	}
	return false
}

// laterWord reports whether a word of a run, save its first, begins with w.
func laterWord(run, w string) bool {
	for i := 0; i+1+len(w) <= len(run); i++ {
		if run[i] == ' ' && run[i+1:i+1+len(w)] == w {
			return true
		}
	}
	return false
}
