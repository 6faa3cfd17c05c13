package grammar

import "presshand/engine/unit"

// Numbers that were, were meant to be or are denied, beside the one that holds.

// killClaims reads what gives way to a number behind it.
func (r *reader) killClaims() {
	r.deniedFirst()
	but := r.says("but", "though", "however", "yet", "only", "really", "actually")
	now := r.says("now", "today", "currently") || r.means(kindAsk, "schedule")
	old := r.says("old", "previous", "former", "last", "original", "first")
	rough := r.says("before", "prior", "rough", "roughsawn", "sawn", "raw", "unplaned", "unsurfaced", "nominal", "nominally", "originally") ||
		r.says("off", "from", "out") && r.says("saw", "mill", "bandsaw", "sawmill", "tablesaw")
	to := r.says("to", "down to")
	for i := range r.items {
		if !r.live(i) {
			continue
		}
		if rough {
			r.roughFirst(i)
		}
		if to {
			r.workedTo(i)
		}
		if but {
			r.claimedButRead(i)
		}
		if now {
			r.earlierNow(i)
		}
		if old {
			r.hadNowHas(i)
		}
		if to {
			r.trimmedTo(i)
		}
	}
	r.newOne()
	r.oldOneHad()
	r.otherDays()
	r.weatherTold()
	r.airOutside()
	r.heightOfElse()
	r.killBounds()
}

// newOne: "we had a 26 in wide sled, built a new one 30 wide" leaves the second.
func (r *reader) newOne() {
	if !r.says("new") || !r.says("one", "ones") {
		return
	}
	for k := range r.items {
		if !r.word(k, "new") || !r.word(k+1, "one", "ones") {
			continue
		}
		j := k + 2
		for r.word(j, "is", "thats", "at", "a", "its") {
			j++
		}
		from, _ := r.sentence(k)
		if !r.live(j) || r.is(r.next(j), kindNoun) {
			continue
		}
		if k > 0 && r.isStop(k-1) && r.opensWithin(0, k, "old") {
			from = 0
			r.ratedAsOld(k, j)
		}
		for i := k - 1; i > from; i-- {
			if !r.live(i) || !alike(r.items[i].amount, r.items[j].amount) {
				continue
			}
			if r.opensWithin(max(from, i-4), i, "had", "was", "were", "old", "used", "previous", "broke") {
				r.idleDirections(j+1, j+2)
				r.takesPlace(i, j)
			}
			break
		}
	}
}

// deniedFirst: "not 2 wide, 2 1/4" and "the bar isn't 1 in it's 1 1/4" put the second
// in the place of the first.
func (r *reader) deniedFirst() {
	if !r.means(kindNot, "not") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNot, "not") || !in(r.items[i].word, "not", "isnt", "arent", "wasnt", "werent", "aint") {
			continue
		}
		if p := i - 1; r.items[i].word == "not" && !(r.isStop(p) || r.word(p, "its", "is", "are", "theyre", "thats", "was", "were")) {
			continue // "a 3/4 bar, not 1, 25 inHg"
		}
		j := i + 1
		for r.word(j, "a", "the", "at", "on", "just", "really", "actually") {
			j++
		}
		if !r.free(j) || r.items[j].amount.link != linkNone {
			continue
		}
		if k := r.saidInstead(j); k >= 0 {
			r.items[i].meaning, r.items[i].used = meaning{}, true
			r.takesPlace(j, k)
		}
	}
}

// saidInstead is the number without words of its own that is said instead of the
// denied one at item j; -1 where none is.
func (r *reader) saidInstead(j int) int {
	k := j + 1
	if r.is(k, kindAttr) || r.is(k, kindNoun) {
		k++
	}
	told := false
	for k < len(r.items) && k <= j+7 && r.items[k].amount == nil {
		switch {
		case r.word(k, "its", "theyre", "but", "is", "are", "thats", "only", "actually", "more", "closer", "nearer") || r.is(k, kindFix):
			told = true
		case told && r.word(k, "a", "an", "like", "to", "about", "just"):
		case r.isBreak(k) && r.items[k].brk != '?' && r.items[k].brk != '/':
		default:
			return -1
		}
		k++
	}
	if !r.live(k) || r.items[k].amount.link != linkNone || !r.endsAlone(k) || !told && !r.isBreak(k-1) {
		return -1
	}
	a, b := r.items[j].amount, r.items[k].amount
	if !alike(a, b) || a.bare() && !b.bare() && !b.is(unit.Distance) && !r.is(r.prev(j), kindVacuum) {
		return -1
	}
	return k
}

// endsAlone reports whether nothing but "now" and the like stands behind item k in its
// clause: the "5" of "5 of them" counts.
func (r *reader) endsAlone(k int) bool {
	k++
	for r.word(k, "now", "today", "actually", "instead", "though", "then", "really") {
		k++
	}
	return k >= len(r.items) || r.isBreak(k)
}

// rawWords tell how a piece was before it was worked.
var rawWords = wordSet(`rough roughsawn sawn raw unplaned unsurfaced nominal nominally originally`)

// roughFirst: "2 5/8 off the saw but 2 1/2 wide after jointing" leaves the second.
func (r *reader) roughFirst(i int) {
	if !r.live(i) || !r.length(i) || r.items[i].amount.form == formQuarters {
		return
	}
	k := i + 1
	if r.is(k, kindAttr) {
		k++
	}
	switch {
	case r.word(k, "off", "from", "out") && r.opensWithin(k+1, min(k+4, len(r.items)), "saw", "mill", "bandsaw", "sawmill", "tablesaw"):
	case r.word(k, "before", "prior") && k+1 < len(r.items) && (shapes(r.items[k+1].word) || r.word(k+1, "i", "we", "they", "it", "the", "to")) && r.shapedWithin(k+1, k+5):
	case k < len(r.items) && rawWords[r.items[k].word] && r.items[k].amount == nil && r.shapedWithin(k+1, k+14):
	default:
		return
	}
	_, to := r.sentence(i)
	for j := k; j < to && j < k+14; j++ {
		if r.live(j) && r.length(j) {
			if !r.is(r.next(j), kindNoun) && r.size(j) < r.size(i) && r.size(j) > 0.6*r.size(i) {
				r.items[i].amount.dead = true
				r.idleDirections(i+1, i+2)
			}
			return
		}
	}
}

// workedTo: "started at 1/2 thick, sanded down to 7/16" and "ripped at 2 1/4, jointed to
// 2 1/8" put what it was worked to in the place of what it was.
func (r *reader) workedTo(j int) {
	k := j - 1
	if !r.word(k, "to", "down to") || !r.live(j) || !r.length(j) || r.items[j].amount.link != linkNone || !r.endsAlone(j) {
		return
	}
	for k--; r.word(k, "down", "em", "them", "it", "back"); k-- {
	}
	if k < 0 || r.items[k].amount != nil || !shapes(r.items[k].word) || in(r.items[k].word, "finished", "net", "clean") {
		return
	}
	from, _ := r.sentence(j)
	for i := k - 1; i >= from; i-- {
		if !r.live(i) || !r.length(i) {
			continue
		}
		if most, least := r.size(i), 0.6*r.size(i); r.size(j) < most && r.size(j) > least && r.items[i].amount.form != formQuarters && r.items[i].amount.link == linkNone {
			r.takesPlace(i, j)
		}
		return
	}
}

// shapes reports whether a word is one of working wood down.
func shapes(w string) bool {
	return workings[w] || in(w, "planing", "jointing", "jointed", "joined", "milling", "surfacing", "sanding", "dressing", "machining", "machined", "thicknessing", "skimming", "finished", "net", "clean", "flattening", "flattened", "planer", "jointer", "sander")
}

func (r *reader) shapedWithin(from, to int) bool {
	for k := from; k < to && k < len(r.items); k++ {
		if r.items[k].amount == nil && shapes(r.items[k].word) {
			return true
		}
	}
	return false
}

// meters read what is so.
var meters = wordSet(`meter thermometer hygrometer gauge dial calipers caliper callipers micrometer mic tape manometer probe sensor scale rule`)

// supposed tell what should be so.
var supposed = wordSet(`sold listed spec specs specced print plan plans calls supposed advertised marked labelled labeled billed stamped rated invoiced quoted thermostat thermostats sign ticket tag nominal ordered claimed meant supposedly nominally allegedly forecast drawing`)

// claimedButRead: "sold as 10% but my meter says 17%", "thermostat's set to 70 but the
// thermometer says 52F", "I asked for 5 strips but they cut 6".
func (r *reader) claimedButRead(i int) {
	if !r.live(i) || r.items[i].amount.form == formPair {
		return
	}
	from, to := r.sentence(i)
	claim, order := false, false
	for k := i - 1; k >= from && k > i-7 && r.items[k].amount == nil; k-- {
		claim = claim || supposed[r.items[k].word]
		order = order || r.word(k, "asked", "ordered", "wanted", "planned", "paid", "expected", "supposed", "meant", "told")
	}
	if !claim && !order {
		return
	}
	but := -1
	for j := i + 1; j < to && j < i+16; j++ {
		switch {
		case r.word(j, "but", "though", "however", "yet", "only", "really", "actually"):
			but = j
		case !r.live(j):
		case but < 0 || !alike(r.items[i].amount, r.items[j].amount) || r.is(r.next(j), kindNoun) && !r.is(r.next(i), kindNoun) || r.is(r.next(j), kindAttr):
			return
		case claim && r.metered(but, j) || order && r.delivered(but, j):
			r.holdsInstead(i, j)
			return
		}
	}
}

// holdsInstead lets the amount at item j count for that at item i, whose words it takes
// where it has none of its own.
func (r *reader) holdsInstead(i, j int) {
	n := r.next(j)
	if !r.is(n, kindNoun) && !r.is(n, kindAttr) && (r.is(r.next(i), kindNoun) || r.is(r.next(i), kindAttr) || r.is(i-1, kindNoun) || r.is(i-2, kindNoun) && r.idle(i-1)) {
		r.takesPlace(i, j)
		return
	}
	x := r.items[i].amount
	x.dead = true
	if am := r.items[j].amount; am.bare() && x.unit != nil {
		u := *x.unit
		am.unit, am.unitRaw = &u, x.unitRaw
	}
}

// metered reports whether something that measures, or "it measures", stands between
// items from and j.
func (r *reader) metered(from, j int) bool {
	for k := from; k < j; k++ {
		if r.items[k].amount == nil && (meters[r.items[k].word] || r.is(k, kindVacuum, "gauge") || r.is(k, kindVerb, "check") || r.word(k, "measures", "measured", "measure", "reads", "mikes", "miked", "mike", "mics", "mic", "meters", "actually", "really", "came") || r.is(k, kindVacuum, "pull") && in(r.items[k].word, "reads", "reading", "shows", "pulls")) {
			return true
		}
	}
	return false
}

// delivered: "but they cut", "but there's only".
func (r *reader) delivered(from, j int) bool {
	for k := from; k < j; k++ {
		if r.word(k, "cut", "sent", "gave", "made", "got", "brought", "delivered", "theres", "came", "have", "milled", "ended", "are", "is", "its", "theyre", "turned") {
			return true
		}
	}
	return false
}

// earlierNow: "gauge was at 26 this morning, 23 now" and "yesterday 26 inHg, today only
// 23" leave the second, where nobody asks how fast it went.
func (r *reader) earlierNow(i int) {
	if !r.live(i) || r.items[i].amount.link != linkNone {
		return
	}
	to := min(i+6, len(r.items))
	past := r.word(i-1, "yesterday") || r.is(i+3, kindRole, "ago") || r.is(i+2, kindRole, "ago")
	for k := i + 1; k < to && k < i+4 && !r.isBreak(k); k++ {
		past = past || r.word(k, "yesterday", "earlier", "originally") || r.word(k, "this", "last") && r.word(k+1, "morning", "week", "night", "time", "month", "year")
	}
	if !past || r.mentions(kindNoun, "leak", "pump") || r.mentions(kindAir, "barometer") {
		return
	}
	_, end := r.sentence(i)
	for j := i + 1; j < end && j < i+14; j++ {
		if !r.live(j) {
			continue
		}
		if n := r.next(j); alike(r.items[i].amount, r.items[j].amount) && (n < 0 || r.word(j+1, "now", "today")) && (r.opensWithin(i, min(j+2, len(r.items)), "now", "today", "currently") || r.sinceThen(i, j)) {
			r.quietToday(i, j)
			r.takesPlace(i, j)
			for k := max(i-2, 0); k < i; k++ {
				if r.word(k, "was", "were", "read", "showed", "said") {
					r.items[k].word = "is"
					r.hear(k)
				}
			}
		}
		return
	}
}

// sinceThen: "today only 23", where the day's name asks for no plan.
func (r *reader) sinceThen(i, j int) bool {
	k := r.within(i, j, kindAsk, "schedule")
	return k >= 0 && in(r.items[k].word, "today", "tonight")
}

func (r *reader) quietToday(i, j int) {
	if k := r.within(i, j, kindAsk, "schedule"); k >= 0 {
		r.items[k].meaning, r.items[k].used = meaning{}, true
	}
}

// hadNowHas: "old press had 3 in opening, the new one is 4 in" leaves the second; so
// does "my last bag was 54 wide" beside the one at hand.
func (r *reader) hadNowHas(i int) {
	if !r.live(i) {
		return
	}
	from, to := r.clause(i)
	k := i - 1
	for k > from && r.items[k].amount == nil && !(r.is(k, kindNoun) && r.word(k-1, "old", "previous", "former", "last", "original", "first")) {
		k--
	}
	if k <= from-1 || !r.word(k-1, "old", "previous", "former", "last", "original", "first") || !r.is(k, kindNoun) || r.is(k, kindNoun, "strip", "panel", "joint") {
		return
	}
	past := false
	for j := k + 1; j < i; j++ {
		past = past || r.word(j, "had", "was", "were", "pulled", "ran", "did", "held", "took") || r.is(j, kindSay) && in(r.items[j].word, "ran", "used", "did") || r.is(j, kindVacuum, "pull") && r.items[j].word == "pulled"
	}
	if !past {
		return
	}
	_, end := r.sentence(i)
	for j := to; j < end && j < i+14; j++ {
		if r.live(j) {
			if r.word(j-1, "is", "has", "are", "does") && r.opensWithin(to, j, "new", "this", "ours", "one", "now") && alike(r.items[i].amount, r.items[j].amount) {
				r.takesPlace(i, j)
				return
			}
			break
		}
	}
	r.items[i].amount.hearsay = true
}

// trimmedTo: of "goes in at 25 x 49 and gets trimmed to 24 x 48" the press sees the
// first.
func (r *reader) trimmedTo(i int) {
	if !r.word(i-1, "to") || !r.live(i) || !r.word(i-2, "trimmed", "cut", "squared", "sawn", "down", "trims", "finishes", "finished") {
		return
	}
	j := i + 1
	if !r.timesAt(j) || !r.live(j) {
		return
	}
	if r.habit.Follows && r.word(i-2, "trimmed", "squared") {
		r.items[i].amount.dead, r.items[j].amount.dead = true, true // when it is out again
		return
	}
	sizes := 0
	for k := 1; k < i; k++ {
		if r.timesAt(k) && r.live(k) && r.live(k-1) && r.size(k) >= r.size(j) && r.size(k) < 1.3*r.size(j) && r.size(k-1) < 1.5*r.size(i) {
			sizes++
		}
	}
	if sizes == 1 {
		r.items[i].amount.dead, r.items[j].amount.dead = true, true
	}
}
