package grammar

import "strings"

// Dangers that are seen by who does what to which part: a child at the press, water at the
// pump, a bed that cracks, a thumb over the hose.

// grownUp is the age, in years, of who may be at a press alone.
const grownUp = 18

// seenDanger is the danger that a sentence tells; "" where none.
func (r *reader) seenDanger() Peril {
	switch {
	case r.gripped():
		return "caught"
	case r.currentAtPump():
		return "electric"
	case r.givesWay():
		return "giving way"
	case r.youngAtPress():
		return "alone"
	case r.skinOnHose():
		return "suction"
	}
	return ""
}

// young is who an age may be told of: who works with somebody older, or he and she.
var young = wordSet(`kid kids son daughter helper apprentice boy girl lad nephew niece grandson granddaughter grandkid trainee he she brother sister cousin intern student pupil neighbour neighbor`)

// runsIt is what somebody does who is in charge of a press.
var runsIt = wordSet(`run runs running operate operates operating use uses using work works working man mans manning mind minds minding watch watches watching tend tends handle handles load loads start starts switch switches turn turns`)

// youngAtPress: "can my 10 year old run the press", "my helper's 15, can he run the press
// alone"; not "the press is 10 years old and runs fine".
func (r *reader) youngAtPress() bool {
	if !r.means(kindNoun, "press", "frame", "bag", "pump") {
		return false
	}
	at := r.youngAge()
	if at < 0 {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil || !runsIt[strings.TrimSuffix(r.items[i].word, " the")] && !r.word(i, "alone with", "alone", "by himself", "by herself") {
			continue
		}
		for k := i + 1; k < len(r.items) && k <= i+4 && !r.isBreak(k); k++ {
			if r.is(k, kindNoun, "press", "frame", "bag", "pump") {
				return true
			}
		}
	}
	return false
}

// youngAge is the item of the age of somebody who is no grown-up; -1 where none is told.
func (r *reader) youngAge() int {
	for i := range r.items {
		if r.items[i].amount == nil || !r.items[i].amount.bare() {
			continue
		}
		if n, ok := r.items[i].amount.whole(); !ok || n < 2 || n >= grownUp {
			continue
		}
		k := i + 1
		for k < len(r.items) && r.items[k].brk == '-' {
			k++
		}
		if end := r.yearsOld(k); end > 0 {
			if r.agedSomebody(i, end) {
				return i
			}
			continue
		}
		who := i - 1
		for r.word(who, "is", "just", "only", "turned", "barely", "nearly") {
			who--
		}
		if said := r.wordAt(who); r.isBreak(i+1) && (who < i-1 && young[said] || who == i-1 && young[strings.TrimSuffix(said, "s")] && strings.HasSuffix(said, "s")) {
			return i
		}
	}
	return -1
}

// agedSomebody reports whether the age at item i, told up to item end, is somebody's: "my son is
// 10 years old", "a 12 yr old works"; not "the epoxy is 3 years old", "a 10 year old pump".
func (r *reader) agedSomebody(i, end int) bool {
	who := i - 1
	for r.word(who, "just", "only", "barely", "nearly", "about", "almost", "a") {
		who--
	}
	if who >= 0 && r.word(who, "is", "are", "was", "turned") && !r.isBreak(who-1) {
		return young[r.wordAt(who-1)] || r.is(who-1, kindPerson) || who > 1 && young[r.wordAt(who-2)]
	}
	if said := r.wordAt(who); who >= 0 && young[strings.TrimSuffix(said, "s")] {
		return true
	}
	if r.is(r.prev(i), kindNoun) || r.is(r.prev(i), kindWood) || r.is(r.prev(i), kindGlue) {
		return false
	}
	said := r.wordAt(end)
	return r.isBreak(end) || r.items[end].amount == nil && (young[said] || runsIt[strings.TrimSuffix(said, " the")]) || r.is(end, kindPerson) ||
		r.word(end, "can", "could", "may", "should", "is", "who", "to", "and", "at", "in", "on", "by", "alone", "with", "wants", "want", "help", "helps", "helping", "stand", "do", "be", "ok", "ok to", "safe")
}

// yearsOld is the item behind "year old", "yr-old" or "yo" at item k; 0 where it is none.
func (r *reader) yearsOld(k int) int {
	if k < len(r.items) && r.items[k].amount == nil && strings.HasPrefix(r.items[k].word, "year") && strings.Contains(r.items[k].word, "old") || r.word(k, "yo") {
		return k + 1
	}
	if !r.word(k, "year", "years", "yr", "yrs") {
		return 0
	}
	for k++; k < len(r.items) && r.items[k].brk == '-'; k++ {
	}
	if r.word(k, "old", "olds") {
		return k + 1
	}
	return 0
}

// wired is what carries current, soaks is what makes it wet.
var (
	wired  = []string{"motor", "motors", "plug", "plugs", "socket", "sockets", "outlet", "outlets", "cord", "lead", "cable", "switch", "wiring", "extension", "powerbar", "contactor"}
	soaks  = wordSet(`puddle puddles flooded flooding soaked drenched rain rained raining rains hosing hose rinse rinsing rinsed splash splashes splashed splashing drips drip dripping dripped sprayed spraying wet`)
	spills = wordSet(`spill spills spilled spilt spilling run runs ran running leak leaks leaked leaking pour pours poured pouring`)
	jolts  = wordSet(`tingle tingles tingling tingled shock shocks shocked zap zaps zapped jolt jolts`)
)

// currentAtPump: "i get a tingle off the pump", "there's a puddle under the pump", "can i
// rinse the sled at the pump while it runs"; not "water in the pump oil".
func (r *reader) currentAtPump() bool {
	pumps := r.means(kindNoun, "pump")
	if !pumps && !r.says(wired...) {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil {
			continue
		}
		pump := pumps && r.is(i, kindNoun, "pump") && !r.word(i+1, "oil", "room", "shed", "trap", "water", "exhaust", "filter", "hose", "down") && !r.word(i-1, "water", "sump")
		if !pump && !r.word(i, wired...) {
			continue
		}
		from, to := r.clause(i)
		for k := from; k < to; k++ {
			switch {
			case r.items[k].amount != nil || k == i:
			case jolts[r.items[k].word] && r.opensWithin(from, k, "i", "me", "a", "get", "got", "gets", "gives", "gave", "giving", "he", "she", "it"):
				return true
			case soaks[r.items[k].word] && !r.word(k+1, "water", "hole", "holes", "tray", "pan", "edge", "line", "loop", "guard", "leg") && !r.glueDrips(from, k) && r.wetsIt(k, i):
				return true
			case spills[r.items[k].word] && k < i && r.opensWithin(from, k, "water", "rain", "coffee", "tea", "beer", "soda", "juice") && r.word(k+1, "on", "onto", "over", "down", "all", "into", "through"),
				r.word(k, "water") && !pump && k < i && i <= k+4 && r.word(k+1, "in", "inside", "into", "got in"):
				return true
			case r.word(k, "water") && (r.word(k+1, "on", "onto", "over", "under", "around", "near", "by", "beside", "all") && k < i && !r.word(k+1, "trap") || k > i && r.word(k-1, "in", "under", "of") && r.opensWithin(i, k, "sits", "sitting", "standing", "stands", "is", "was", "lying", "inch", "inches", "pool")):
				return true
			}
		}
	}
	return false
}

// waterAtPump: "water drips on the plug", "roof leaks onto the pump" are of the shop.
func (r *reader) waterAtPump() bool {
	return (r.mentions(kindNoun, "pump") || r.wordIn("water", "puddle", "rain", "drips", "dripping")) && r.currentAtPump()
}

// glueDrips: what drips at item k is glue: "squeeze-out drips over the cord".
func (r *reader) glueDrips(from, k int) bool {
	for from > 0 && r.items[from-1].brk == '-' {
		from, _ = r.clause(from - 2)
	}
	return r.word(k, "drip", "drips", "dripping", "dripped") && !r.word(k+1, "water") && (r.within(from, k, kindGlue) >= 0 || r.opensWithin(from, k, "glue", "squeeze", "squeezeout", "squeeze out"))
}

// wetsIt reports whether the wet thing or the rinsing at item k is at the pump or plug at
// item i: "puddle under the pump", "the plug is wet".
func (r *reader) wetsIt(k, i int) bool {
	if r.word(k, "wet") {
		return k > i && r.opensWithin(i+1, k, "is", "got", "gets", "are", "all") && !r.isBreak(k-1) && (k+1 >= len(r.items) || r.isBreak(k+1))
	}
	if r.word(k, "hose") {
		return r.opensWithin(k+1, k+2, "down", "off", "it") && k < i
	}
	near := r.opensWithin(min(k, i), max(k, i), "under", "at", "by", "on", "onto", "over", "near", "beside", "around", "next", "in", "off", "down")
	return near || k > i && r.opensWithin(i+1, k, "is", "got", "gets", "was")
}

// cracks is what a part does that is about to give.
var cracks = []string{"crack", "cracks", "cracked", "cracking", "creak", "creaks", "creaking", "groan", "groans", "groaning", "splintering", "splinters"}

// givesWay: "the bed cracked when we pulled down", "i hear cracking from the frame"; not
// "crack the frame open", "the cracked board".
func (r *reader) givesWay() bool {
	if !r.says("way") && !r.says(cracks...) {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil {
			continue
		}
		said := r.items[i].word
		way := r.word(i, "giving", "gave") && r.word(i+1, "way")
		if !way && !r.word(i, cracks...) || r.worksOn(i+1) || r.within(max(i-3, 0), i, kindNoun, "strip", "panel", "joint") >= 0 {
			continue
		}
		part := r.prev(i)
		for k := 0; k < 4 && part >= 0 && !r.is(part, kindNoun); k++ {
			part = r.prev(part)
		}
		if r.carriesLoad(part) && !r.workOutOf(part) && (!r.word(i, "crack") || r.word(i-1, "a", "the")) {
			return true
		}
		for k := i + 1; k < len(r.items) && k <= i+6 && !r.isBreak(k); k++ {
			if r.word(k, "in", "from", "across", "along", "under", "through") && r.carriesLoad(r.next(k)) || said == "cracked" && k == i+1 && r.carriesLoad(k) {
				return true
			}
		}
	}
	return false
}

// worksOn reports whether it is the work that stands at item i, behind an article or a count:
// "the bed cracked a board".
func (r *reader) worksOn(i int) bool {
	for r.word(i, "a", "an", "the", "my", "our", "his", "one", "two", "another") || i < len(r.items) && r.items[i].amount != nil || r.is(i, kindWood) && r.is(i+1, kindNoun) {
		i++
	}
	return r.is(i, kindNoun, "strip", "panel", "joint") || r.is(i, kindWood)
}

// workOutOf: "the panel came out of the press cracked" tells of the panel; "the lid of the
// press" is no panel.
func (r *reader) workOutOf(part int) bool {
	at := part - 1
	for r.word(at, "the", "my", "our", "a", "vacuum") {
		at--
	}
	if r.word(at, "from", "off", "out of") || r.word(at, "of") && strings.HasSuffix(r.wordAt(at-1), "out") {
		return true
	}
	if !r.word(at, "of", "in", "under", "on", "inside") {
		return false
	}
	from, _ := r.clause(part)
	for k := from; k < at; k++ {
		if r.is(k, kindWood) || r.is(k, kindNoun, "strip", "panel", "joint") && !r.word(k, "lid", "lids") {
			return true
		}
	}
	return false
}

// machines are what has a bed or a frame, and is no press.
var machines = []string{"planer", "jointer", "lathe", "saw", "tablesaw", "bandsaw", "sander", "router", "cnc", "shaper", "truck", "trailer", "van"}

// carriesLoad reports whether the part at item i is one that the whole force of a press is on.
func (r *reader) carriesLoad(i int) bool {
	k := i + 1
	for r.word(k, "of", "the", "my", "our", "a") {
		k++
	}
	if r.word(i-1, machines...) || r.word(k, machines...) {
		return false
	}
	return r.is(i, kindNoun, "bed", "frame", "press", "reservoir") && !r.word(i, "table") || r.word(i, "lid", "lids")
}

// openEnds are what a pump sucks through.
var openEnds = []string{"hose", "hoses", "port", "ports", "inlet", "nozzle", "suction", "intake", "nipple", "spigot"}

// skins are parts of the body that get sucked on, beside hands.
var skins = wordSet(`mouth tongue lips lip cheek ear face skin`)

// skinOnHose: "can I put my thumb over the hose", "plug the port with my finger".
func (r *reader) skinOnHose() bool {
	if !r.says(openEnds...) {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil || !bodyParts[r.items[i].word] && !skins[r.items[i].word] || r.is(i, kindNoun) || r.word(i-1, "other", "one", "second", "a") && r.word(i, "hand") || r.word(i, "hand") && r.word(i+1, "tight") {
			continue
		}
		k := i + 1
		for r.word(k, "right", "flat", "held", "up") {
			k++
		}
		if r.word(k, "over", "on", "onto", "against", "across", "in", "into", "to") {
			for k++; r.word(k, "the", "a", "an", "my", "that", "end", "of", "open", "its", "vacuum", "pump", "pumps") || r.is(k, kindNoun, "pump") || r.is(k, kindVacuum); k++ {
			}
			if r.word(k, openEnds...) {
				return true
			}
		}
		if r.word(i-1, "my", "a", "your", "his", "her", "the") && r.word(i-2, "with") {
			from, _ := r.clause(i)
			for j := from; j < i; j++ {
				if r.word(j, openEnds...) && r.opensWithin(from, j, "plug", "plugging", "block", "blocking", "cover", "covering", "cap", "capping", "close", "seal", "stop", "blank") {
					return true
				}
			}
		}
	}
	return false
}

// gripped: "the bag's stuck to my glove", "the film has my sleeve"; not "glue stuck to my
// fingers".
func (r *reader) gripped() bool {
	if !r.says("my", "his", "her", "their") {
		return false
	}
	for i := 0; i+2 < len(r.items); i++ {
		if !r.is(i, kindNoun, "bag", "film", "press", "frame") {
			continue
		}
		k := i + 1
		for r.word(k, "is", "s", "has", "just", "got", "are") {
			k++
		}
		holds := k > i+1 && r.word(k-1, "has", "got")
		if r.word(k, "stuck", "grabbed", "caught", "sucked", "pinched", "grabs", "clamped") {
			k++
			holds = true
		}
		for r.word(k, "to", "on", "onto", "around") {
			k++
		}
		if holds && r.word(k, "my", "his", "her", "their") && k+1 < len(r.items) && (bodyParts[r.wordAt(k+1)] || r.word(k+1, "glove", "gloves", "sleeve", "hair", "shirt", "arm", "foot")) {
			return true
		}
	}
	return false
}
