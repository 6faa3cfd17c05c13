package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// findAsks reads the cues of what is asked. Which of them count is settled when
// the facts are known.
func (r *reader) findAsks() {
	opens := r.opensUnderVacuum()
	r.cuesByContext()
	remembers, hurries := r.says("remember", "we always"), r.says("before")
	for i := range r.items {
		switch it := &r.items[i]; {
		// what is behind this case is of a danger, a cue, "what does" or the two words above
		case it.kind == kindPeril && r.nobodyKnows(i), it.kind != kindPeril && it.kind != kindAsk && it.word != "what does" && !(remembers && r.reminisces(i)) && !(hurries && r.onlyHurries(i)):
		case it.kind == kindPeril:
			r.peril(i)
		case opens && strings.HasPrefix(it.word, "before the vacuum"), r.partAlways(i), r.differsFromBar(i):
		case r.is(i, kindAsk, "profile") && r.ourPart(i) != "":
			it.meaning = meaning{kind: kindNoun, id: r.ourPart(i)} // "will it fit? our bag is 54 wide"
			r.hear(i)
		case it.word == "our shop is" && r.is(i, kindAsk, "profile") && (r.mentions(kindAir, "service") && r.mentions(kindAsk, "move", "move:emc_pct", "move:cup_mm") || i > 0 && (r.asksSomething() || r.opens("how") > i || r.asksHowLong())):
			it.meaning = meaning{kind: kindAir, id: "shop"} // "epoxy, our shop is 16 degrees. how long?"
			r.hear(i)
		case r.settlesPump(i):
			it.used, r.phrase.Asks = true, append(r.phrase.Asks, Ask{About: Pump, For: []unit.Field{unit.UltimateVacuum}, question: true})
		case r.asksNoWord(i), r.asksNothing(i), r.reminisces(i), r.onlyHurries(i), r.is(i, kindAsk, "profile") && r.is(i+1, kindRole, "trim"): // "default trim"
			it.meaning, it.used = meaning{}, true
		case it.kind == kindAsk && it.id == "words" && it.word == "what does" && r.figureLater(i) && r.opens("mean", "stand", "stands", "do") < 0:
			it.meaning = meaning{kind: kindFill} // "what does it top out at"
		case it.kind == kindAsk && !(it.word == "rush" && r.word(i-1, "no")) && !(it.word == "remember" && (r.is(i-1, kindNot) || r.word(i-1, "cant", "dont", "didnt", "cannot", "not", "to"))) && !(it.word == "setup" && (r.is(i-1, kindNoun) || r.word(i-1, "the", "this", "that", "same", "identical", "similar"))) && !(strings.HasSuffix(it.word, "setup") && r.word(i-1, "is", "does", "will", "check", "would")):
			if r.abandoned(i) {
				continue
			}
			a := r.askAt(i)
			r.phrase.Asks = append(r.phrase.Asks, a)
			if a.Solve != "" && r.solving == "" {
				r.solving = a.Solve
			}
		}
	}
	r.phrase.Asks = append(r.phrase.Asks, r.askedInWords(opens)...)
	r.askedBesides()
	r.worstFirst()
}

// askedInWords is what words apart ask together, in the order of the answers.
func (r *reader) askedInWords(opens bool) (asks []Ask) {
	ask := func(a Ask) { asks = append(asks, a) }
	how, lasting := r.says("how", "how many"), r.said(unit.Lasting)
	if r.means(kindNoun, "wedge") && r.releasesWedge() {
		ask(Ask{About: Safety, Peril: "wedge release"})
	}
	if opens {
		ask(Ask{About: Safety, Peril: "opening"})
	}
	if how && r.howLongIn() && !r.asksFor(Glue) && !r.asksFor(Pump) {
		ask(Ask{About: Glue, For: []unit.Field{unit.PressTime}, question: true})
	}
	if (r.means(kindNoun, "gap") || r.means(kindFact, "faces=2")) && r.roomToMove() || r.means(kindAir, "rh") && r.seasonsSwing() {
		ask(Ask{About: Move, question: true})
	}
	if r.howLongTo() {
		ask(Ask{About: Pump, question: true})
	}
	if r.alwaysOurs() {
		ask(Ask{About: Profile, weak: true})
	}
	if r.goesInPress() || r.clears() {
		ask(Ask{About: Stack})
	}
	if r.getsFlat() {
		ask(Ask{About: Flatten})
	}
	if r.convertsPressure() && !r.asksFor(Face) {
		ask(Ask{About: Face})
	}
	if lasting && r.asksTimeEnough() {
		ask(Ask{About: Glue, question: true})
	}
	if r.glueSought() {
		ask(Ask{About: Glue, For: []unit.Field{unit.GlueMass}, question: true})
	}
	if lasting && r.asksPressTime() {
		ask(Ask{About: Glue, For: []unit.Field{unit.PressTime}, question: true})
	}
	if r.doneWhen() {
		ask(Ask{About: Schedule, question: true})
	}
	if how && r.howManyByTime() {
		ask(Ask{About: Schedule, For: []unit.Field{unit.PanelCount}, question: true})
	}
	if how && r.fitOnBed() {
		ask(Ask{About: Schedule, For: []unit.Field{unit.PanelCount}, question: true})
	}
	if r.amountsIn(0, len(r.items)) == 0 && (r.termAlone() || r.whatsThat() || r.asksMeanings()) && !r.asksFor(Why) && !r.asksFor(Words) {
		ask(Ask{About: Words})
	}
	return asks
}

// askedBesides adds what is asked without a cue of its own.
func (r *reader) askedBesides() {
	if a, ok := r.backToTopic(); ok {
		r.phrase.Asks = append(r.phrase.Asks, a)
	}
	if f := r.timeWanted(); f != "" {
		r.phrase.Asks = append(r.phrase.Asks, Ask{About: Glue, For: []unit.Field{f}})
	}
	if r.forceWanted() && !r.asksFor(Face) && !r.mentions(kindNoun, "bar", "wedge", "joint") && r.within(0, len(r.items), kindGlue) < 0 && (r.pressureSaid() || r.mentions(kindVacuum)) {
		r.phrase.Asks = append(r.phrase.Asks, Ask{About: Face})
	}
	if r.solving == "" {
		r.phrase.Asks = append(r.phrase.Asks, r.looselySolved()...)
	}
}

// peril notes the danger that item i names, and asks about it where it threatens.
func (r *reader) peril(i int) {
	it := &r.items[i]
	if strings.HasPrefix(it.word, "nobody") && !r.wordIn("running", "unattended", "on") && !r.mentions(kindNoun, "pump", "press", "bag", "frame") && !r.mentions(kindVacuum) {
		return
	}
	if it.word == "reach in" && r.word(i+1, "the") && r.word(i+2, "end", "long", "first") {
		return // what is reached in the end
	}
	if it.id == "reach in" && i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.is(unit.Lasting) {
		return // so much vacuum in so long a time
	}
	if it.word == "reach in" && r.pushReaches(i) {
		return
	}
	if in(it.word, "bucket", "buckets", "pail") && !r.emptied(i) {
		return
	}
	if r.wedgeLeft(i) || r.kidsAlone(i) || r.glovesAside(i) || r.kidElsewhere(i) || in(it.word, "acrylic", "plexi", "perspex", "lexan", "polycarb", "polycarbonate") && r.is(i+1, kindNoun, "bar", "caul", "sled", "fence", "wedge") {
		return // an acrylic bar holds no vacuum
	}
	if in(it.word, "polycarbonate", "polycarbonate window", "viewing window") && r.glazes(i) {
		it.meaning = meaning{}
		return
	}
	if it.word == "glass" && r.glassThing(i) || strings.HasPrefix(it.word, "too hot") && !r.mentions(kindNoun, "pump") && !r.wordIn("motor", "motors") {
		return
	}
	r.phrase.Perils = append(r.phrase.Perils, Peril(it.id))
	if r.threatens(it.id) || strings.HasPrefix(it.word, "suck on") {
		r.phrase.Asks = append(r.phrase.Asks, Ask{About: Safety, Peril: Peril(it.id)})
	}
}

// wedgeLeft: "pull the wedge. 8 strips" in a thread goes on without the wedge.
func (r *reader) wedgeLeft(i int) bool {
	if !r.habit.Follows || !in(r.items[i].word, "pull the wedge", "release the wedge") || r.asksSomething() || r.amountsIn(0, len(r.items)) == 0 || r.mentions(kindVacuum) || r.pressureSaid() {
		return false
	}
	r.items[i].meaning, r.items[i].used = meaning{}, true
	r.phrase.Drops = append(r.phrase.Drops, partNames["wedge"])
	return true
}

// glueAlone: "epoxy, 8 strips 1/2 thick 48 long, how much" asks of the glue, as nothing
// is told of what presses.
func (r *reader) glueAlone(i int) bool {
	return r.isBreak(i-1) && r.isBreak(i+1) && r.mentions(kindGlue) && !r.mentions(kindVacuum) && !r.pressureSaid() && !r.mentions(kindNoun, "bar", "wedge", "pump", "leak")
}

// askAt is what the cue at item i asks, in the light of what else is said.
func (r *reader) askAt(i int) Ask {
	it := &r.items[i]
	a := cue(it.id)
	a.weak = weak(it.word) && !(it.word == "how much" && (r.is(r.next(i), kindGlue) || r.word(i+1, "glue", "adhesive", "resin") || r.glueAlone(i)))
	a.idle = in(it.word, "today", "tomorrow", "day", "shift", "hours", "overnight", "what time", "how late")
	a.question = strings.HasPrefix(it.word, "how") || strings.HasPrefix(it.word, "what") || strings.HasPrefix(it.word, "when") ||
		strings.HasPrefix(it.word, "time to ") && !r.word(i-1, "its", "is", "was", "about") && !r.pullsPanel(i)
	if in(it.word, "plan", "plan for", "plan the", "planning") && r.plansDay(i) {
		a = Ask{About: Schedule}
	}
	if about := r.pressureAsked(i); about != "" && a.About == Glue {
		return Ask{About: about, question: true} // "how much psi is that on the wood"
	}
	if a.weak && a.About == Schedule && r.whenDone(i) {
		a.weak, a.question = false, true
	}
	a.second = !a.weak && (a.About == Pump || a.About == Glue) && a.question && i > 0 && (r.word(i-1, "and", "also", "then") || r.isStop(i-1))
	switch {
	case a.About == Glue && a.weak && it.word == "how much" && (r.mentions(kindAsk, "move", "move:cup_mm") && !r.mentions(kindGlue) && !r.wordIn("glue") || r.swellsLater(i)):
		return Ask{About: Move, question: true} // "how much would a 32 in slab move"
	case a.About == Face && in(it.word, "how many lbs", "how many pounds", "how many kilos") && r.mentions(kindGlue) && !r.mentions(kindVacuum) && !r.pressureSaid():
		return Ask{About: Glue, For: []unit.Field{unit.GlueMass}, question: true}
	case a.About == Pump && strings.HasPrefix(it.word, "how long") && r.pullsPanel(i):
		return Ask{About: Glue, For: []unit.Field{unit.PressTime}, question: true} // "how long til I can pull the panel"
	case it.word == "how long for" && r.pumpInClause(i):
		return Ask{About: Pump, question: true} // "how long for a 5 cfm pump to get a frame to 24 inHg"
	case a.About == Pump && strings.HasPrefix(it.word, "how long") && r.glueWorks(i) != "":
		return Ask{About: Glue, For: []unit.Field{r.glueWorks(i)}, question: true}
	case a.About == Glue && len(a.For) == 1 && in(it.word, "how many kilos", "how many kilogram", "how many kilograms", "how many kilogrammes", "how many kg", "how many lbs", "how many pounds", "how much weight") && r.pushesLater(i):
		return Ask{About: Face, question: true}
	case strings.HasPrefix(it.word, "how far") && a.About == Side && !r.mentions(kindNoun, "bar") && r.mentions(kindAsk, "move"):
		return Ask{About: Move, question: true} // "how far will a 30 wide ash top move"
	case it.word == "how far does a" && !r.mentions(kindNoun, "bar") && r.within(i, len(r.items), kindGlue) >= 0:
		return Ask{About: Glue, For: []unit.Field{unit.GlueMass}, question: true} // "how far does a gallon of pva go"
	case a.About == Strips && in(it.word, "do i have enough") && (r.glueAt(i+1) || r.glueAt(i+2)):
		return Ask{About: Glue, For: []unit.Field{unit.GlueMass}, question: true}
	case len(a.For) == 1 && a.For[0] == unit.Hold && in(it.word, "how long have i got", "how long have we got") && (r.within(0, len(r.items), kindGlue) >= 0 || r.mentions(kindRole, "spread", "layup")) && !r.pumpStops() && !r.mentions(kindNoun, "leak") && (!r.mentions(kindVacuum) || r.untilVacuum()) && !r.pressureSaid():
		return Ask{About: Glue, For: []unit.Field{unit.ClosedTime}, question: true}
	case len(a.For) == 1 && a.For[0] == unit.Ambient && r.pumping() && (r.saidFlow() || r.mentions(kindNoun, "leak")):
		return Ask{About: Pump}
	case a.About == Face && in(it.word, "pushing on", "pushing down") && (r.is(r.prev(i), kindNoun, "bar") || r.onJoints(i)):
		return Ask{About: Side}
	case it.word == "press down" && a.About == Face && r.within(0, i, kindAsk, "pump") >= 0 && r.word(i-1, "the", "my", "our", "whole", "empty", "this", "that"):
		return Ask{About: Pump} // "how long to pull the press down to 25"
	case it.word == "take it out" && r.mentions(kindNoun, "cup", "bow") && (r.pressureSaid() || r.mentions(kindVacuum)):
		return Ask{About: Flatten}
	}
	return r.askInstead(i, a)
}

// askInstead is what a question backwards, or of a figure, asks where the message speaks of
// something else: "how wide will it be in winter".
func (r *reader) askInstead(i int, a Ask) Ask {
	it := &r.items[i]
	switch {
	case a.About == Glue && r.gluesUnder(i):
		return Ask{About: Side, question: true} // "can I glue 8 slats … with a 40 mm bar and 0.8 bar"
	case a.Solve == unit.Cup && r.mentions(kindNoun, "core", "face") && (r.mentions(kindAir, "service", "rh", "mc") || r.percentSaid()) && !r.mentions(kindVacuum) && !r.pressureSaid():
		return Ask{About: Move, For: []unit.Field{unit.Cup}, question: true} // of a face on a core
	case a.Solve == unit.Cup && r.mentions(kindAir, "service") && r.percentSaid() && !r.pressureSaid():
		return Ask{About: Move, For: []unit.Field{unit.Cup}, question: true}
	case a.Solve == unit.Overfill && r.layersTold() >= 3 && r.is(r.next(i), kindNoun, "fence"):
		return Ask{About: Stack, question: true}
	case len(a.For) == 1 && a.For[0] == unit.UltimateVacuum && r.mentions(kindAir, "mc") && !r.mentions(kindNoun, "pump", "leak"):
		return Ask{About: Move, For: []unit.Field{unit.Emc}, question: true} // "what moisture do they end up at"
	case (a.About == Why && strings.HasPrefix(it.word, "where does") || len(a.For) == 1 && a.For[0] == unit.UltimateVacuum) && r.settlesWood():
		return Ask{About: Move, For: []unit.Field{unit.Emc}, question: true} // "where does oak settle at 45% rh"
	case a.Solve == unit.Gap && r.mentions(kindAir, "service") && r.percentSaid():
		return Ask{About: Move} // room for it to move in
	case a.Solve == unit.PanelWidth && (r.mentions(kindAir, "service") || r.percentSaid()) && !r.mentions(kindNoun, "bar"):
		return Ask{About: Move, question: true} // "how wide will it be in winter"
	case a.Solve == unit.Vacuum && (r.is(r.next(i), kindAsk, "face") || r.pushesNow(i)):
		return Ask{About: Face} // "how many kPa on the face"
	case a.Solve == unit.PanelWidth && r.makesStrips(i+1):
		return Ask{About: Side, Solve: unit.StripWidth}
	case a.Solve == unit.Vacuum && r.pressureOn(i), a.Solve == unit.BarHeight && r.betterOf(i), it.word == "how hard" && r.barPushes(i),
		it.word == "how hard" && (r.mentions(kindNoun, "joint") || r.opensWithin(i, min(i+8, len(r.items)), "last joint", "far joint", "first joint", "middle joint") || r.mentions(kindNoun, "bar") && r.opensWithin(i, min(i+4, len(r.items)), "squeezing", "squeeze") || r.mentions(kindNoun, "bar") && r.opensWithin(i, min(i+8, len(r.items)), "together")):
		return Ask{About: Side}
	}
	return a
}

// untilVacuum: "between spreading and vacuum", "until it's under vacuum".
func (r *reader) untilVacuum() bool {
	for i := range r.items {
		if !r.is(i, kindVacuum) {
			continue
		}
		for j := i - 1; ; j-- {
			if r.word(j, "and", "to", "till", "until", "before", "til") {
				break
			}
			if !r.word(j, "the", "under", "its", "i", "we", "full", "pulling", "im", "is", "have", "need", "must") {
				return false
			}
		}
	}
	return true
}

// settlesWood reports whether what settles is a wood, in air of some humidity.
func (r *reader) settlesWood() bool {
	return r.mentions(kindWood) && r.mentions(kindAir, "rh") && !r.mentions(kindAir, "mc") && r.percentSaid() && !r.mentions(kindNoun, "pump", "leak", "bag", "press", "frame", "bar") && !r.mentions(kindVacuum) && r.wordIn("settle", "settle at", "level off", "end up at", "level out", "come to rest")
}

// pumpStops reports whether the pump is spoken of otherwise than as what the glue
// has to be closed for: "from first bead to pump on".
func (r *reader) pumpStops() bool {
	for i := range r.items {
		j := i - 1
		for r.word(j, "the", "my", "our") {
			j--
		}
		if r.is(i, kindNoun, "pump") && !r.word(j, "to", "till", "until", "before", "til") && !r.word(i+1, "on", "runs", "goes", "starts") {
			return true
		}
	}
	return false
}

// weekdays name a day that is planned.
var weekdays = wordSet(`monday tuesday wednesday thursday friday saturday sunday mon tue tues wed weds thu thur thurs fri sat sun tomorrow todays tomorrows mondays tuesdays wednesdays thursdays fridays saturdays`)

// plansDay: "Tues plan: 16 panels", "plan for Friday".
func (r *reader) plansDay(i int) bool {
	for r.word(i+1, "for", "the", "on", "is") {
		i++
	}
	from := i
	for r.word(from-1, "for", "the", "is", "plan") || r.is(from-1, kindAsk) {
		from--
	}
	return r.mentions(kindNoun, "panel") && (from > 0 && weekdays[r.items[from-1].word] || i+1 < len(r.items) && weekdays[r.items[i+1].word])
}

// guessTopic tells what the message is about before its numbers are read, for
// what a bare number may be: by the words that only one topic uses, else by the
// first cue.
func (r *reader) guessTopic() {
	flat := r.mentions(kindNoun, "cup", "bow") && (r.mentions(kindVacuum) || r.mentions(kindAsk, "flatten", "flatten:solve=cup_mm") || r.pressureSaid() || r.solving == unit.Vacuum)
	service := r.mentions(kindAir, "service") && (r.mentions(kindAir, "rh", "mc") || r.percentSaid())
	switch {
	case flat && !service && !r.mentions(kindNoun, "bar"):
		r.topic = Flatten
	case service, r.mentions(kindAsk, "move", "move:emc_pct", "move:cup_mm") && !r.mentions(kindNoun, "bar", "pump"):
		r.topic = Move
	case r.asksFor(Profile) && !r.asksSomething():
		r.topic = Profile
	case r.pumping() && !r.mentions(kindNoun, "bar", "wedge") && !(r.asksFor(Face) && !r.saidFlow()):
		r.topic = Pump
	case r.mentions(kindAsk, "schedule") && (r.mentions(kindRole, "start", "deadline") || r.mentions(kindNoun, "panel") && !r.mentions(kindNoun, "bar")):
		r.topic = Schedule
	default:
		for _, a := range r.phrase.Asks {
			if a.About != "" && a.About != Load && !((a.About == Strips || a.About == Schedule && a.weak) && r.mentions(kindNoun, "bar")) && !(a.About == Pump && r.mentions(kindNoun, "wedge")) {
				r.topic = a.About
				break
			}
		}
	}
}

// asksFor reports whether a cue named the topic.
func (r *reader) asksFor(t Topic) bool {
	for i := range r.phrase.Asks {
		if r.phrase.Asks[i].About == t {
			return true
		}
	}
	return false
}

func (r *reader) saidFlow() bool { return r.said(unit.Pumping) || r.said(unit.Leaking) }

func (r *reader) pressureSaid() bool { return r.said(unit.Pressing) }

func (r *reader) percentSaid() bool { return r.said(unit.Proportion) }

func (r *reader) said(d unit.Dimension) bool {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.is(d) {
			return true
		}
	}
	return false
}

// opens returns where one of the words stands in the message; -1 where none does.
func (r *reader) opens(ws ...string) int {
	if !r.says(ws...) {
		return -1
	}
	for i := range r.items {
		if r.word(i, ws...) {
			return i
		}
	}
	return -1
}

func (r *reader) countKind(k kind) int {
	n := 0
	for i := range r.items {
		if r.items[i].kind == k {
			n++
		}
	}
	return n
}

func cue(id string) Ask {
	topic, what, _ := strings.Cut(id, ":")
	if strings.HasPrefix(topic, "solve=") {
		topic, what = "", topic
	}
	a := Ask{About: Topic(topic)}
	switch {
	case strings.HasPrefix(what, "solve="):
		a.Solve = unit.Field(strings.TrimPrefix(what, "solve="))
	case what != "":
		a.For = []unit.Field{unit.Field(what)}
	}
	return a
}
