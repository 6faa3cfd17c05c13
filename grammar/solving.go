package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// soughtFields are what "how … a …" asks for, by the adjective and the part.
var soughtFields = map[string]map[string]unit.Field{
	"tall":  {"bar": unit.BarHeight, "opening": unit.Opening},
	"wide":  {"bar": unit.BarWidth, "panel": unit.PanelWidth, "strip": unit.StripWidth},
	"thick": {"strip": unit.StripThickness, "mat": unit.MatThickness, "caul": unit.CaulThickness, "core": unit.CoreThickness},
	"big":   {"bar": unit.BarHeight, "pump": unit.PumpSpeed, "leak": unit.Leak, "gap": unit.Gap, "cup": unit.Cup, "bow": unit.Bow},
	"steep": {"wedge": unit.WedgeRatio},
}

// soughtTopics are the topics of the fields that only one topic looks for.
var soughtTopics = map[unit.Field]Topic{
	unit.BarHeight: Side, unit.BarWidth: Side, unit.PanelWidth: Side, unit.StripWidth: Side, unit.CaulThickness: Side, unit.WedgeRatio: Side, unit.Gap: Side,
	unit.MatThickness: Stack, unit.Opening: Stack, unit.PumpSpeed: Pump, unit.Leak: Pump, unit.Cup: Flatten, unit.Bow: Flatten,
}

// adjectives are the words that ask how much of something there has to be.
var adjectives = map[string]string{
	"tall": "tall", "high": "tall", "wide": "wide", "broad": "wide", "thick": "thick", "thin": "thick",
	"big": "big", "large": "big", "small": "big", "little": "big", "weak": "big", "low": "tall", "narrow": "wide", "strong": "big", "powerful": "big", "bad": "big", "steep": "steep",
}

// soughtSize reads "how wide of a panel can I go", "how high must be the batten":
// "how", an adjective, a part and a word of what can or must be.
func (r *reader) soughtSize() []Ask {
	if !r.says("how") && !r.means(kindAsk) {
		return nil
	}
	for i := range r.items {
		adj, after := r.howMuchOf(i)
		if adj == "" {
			continue
		}
		modal := false
		for j := after; j < len(r.items) && j <= after+7 && !r.isStop(j) && r.items[j].amount == nil; j++ {
			modal = modal || r.word(j, "must", "should", "can", "could", "may", "need", "needs", "do", "does", "would", "has", "shall") || r.is(j, kindRole, "target")
			if !r.is(j, kindNoun) {
				continue
			}
			f := soughtFields[adj][r.items[j].id]
			if f == "" || !modal && !r.modalBehind(j) || r.ownsNumber(j) || r.is(j+1, kindNoun) {
				break
			}
			r.replacesCue(i)
			return []Ask{{About: soughtTopics[f], Solve: f}}
		}
	}
	return nil
}

// looselySolved is what a message looks for in no fixed wording.
func (r *reader) looselySolved() []Ask {
	asks := r.loosely()
	if asks == nil {
		asks = r.soughtSize()
	}
	if asks == nil {
		asks = r.soughtByWords()
	}
	if len(asks) > 0 {
		r.solving = asks[0].Solve
	}
	return asks
}

// soughtByWords reads "how many inches do I have to pull to flatten …" and, of a
// bar that is spoken of, "how tall for 70 psi".
func (r *reader) soughtByWords() []Ask {
	switch {
	case r.vacuumSought():
		return []Ask{{Solve: unit.Vacuum}}
	case r.thicknessSought():
		return []Ask{{About: Flatten, Solve: unit.StripThickness}}
	}
	how, forIt := r.says("how", "how far", "how much"), r.says("for", "to")
	pressed := forIt && r.pressureSaid() && (r.mentions(kindNoun, "bar") || r.habit.Follows) && !r.mentions(kindNoun, "strip", "mat", "panel")
	if !how && !forIt && !r.says("number") {
		return nil
	}
	for i := range r.items {
		if how && r.word(i, "how") && r.word(i+1, "many") && r.is(i+2, kindUnit) && r.saysPull(i+3) {
			r.items[i+2].used = true
			return []Ask{{Solve: unit.Vacuum}}
		}
		if how && r.barToStand(i) {
			return []Ask{{About: Side, Solve: unit.BarHeight}}
		}
		if r.mostStrips(i) {
			r.items[i].used = true
			return []Ask{{About: Side, Solve: unit.StripCount}}
		}
		if forIt && r.vacuumFor(i) {
			r.items[i].used = true
			return []Ask{{Solve: unit.Vacuum}}
		}
		if adj, after := r.howMuchOf(i); pressed && adj == "tall" && r.word(r.pastMust(after), "for", "to") {
			r.replacesCue(i)
			return []Ask{{About: Side, Solve: unit.BarHeight}}
		}
	}
	return nil
}

// barToStand: "how far should the bar stick up over the strips", "it has to stand how much
// higher than the strips" of a bar.
func (r *reader) barToStand(i int) bool {
	if !r.word(i, "how far", "how much") && !(r.word(i, "how") && r.word(i+1, "far", "much")) {
		return false
	}
	from, to := r.sentence(i)
	bar := r.within(from, to, kindNoun, "bar")
	if bar < 0 || r.ownsNumber(bar) || !r.opensWithin(from, to, "stick", "sticks", "stand", "stands", "sit", "be", "have", "has") {
		return false
	}
	for k := i; k < to; k++ {
		if r.word(k, "above", "above the", "over", "over the", "past", "proud", "proud of", "higher", "higher than", "taller", "taller than") {
			return r.next(k) != bar // not "how far must the sled stick out over the bar"
		}
	}
	return false
}

// pastMust is the item behind "would it have to be" from item j on, which names no part.
func (r *reader) pastMust(j int) int {
	if !r.word(j, "would", "should", "must", "will", "does", "do", "can", "has") || !r.word(j+1, "it", "that", "this", "one", "i", "we") {
		return j
	}
	k := j + 2
	for r.word(k, "have", "need", "go", "stand", "be", "want", "then", "make", "it") || r.word(k, "to") && r.word(k+1, "be", "go", "stand", "have", "make") || r.is(k, kindRole, "target") {
		k++
	}
	return k
}

// mostStrips: "max number of 45 mm strips".
func (r *reader) mostStrips(i int) bool {
	if !r.word(i, "max", "maximum", "largest", "biggest", "highest", "greatest") || !r.word(i+1, "number") {
		return false
	}
	k := i + 2
	for k < len(r.items) && k < i+7 && (r.word(k, "of", "wide") || r.free(k) && r.length(k) || r.is(k, kindAttr) || r.is(k, kindWood)) {
		k++
	}
	return r.is(k, kindNoun, "strip")
}

// vacuumFor: "vac for 25 psi at the far joint?", "9 psi minimum. inHg for that?".
func (r *reader) vacuumFor(i int) bool {
	if !r.word(i+1, "for", "to") || i > 0 && !r.isBreak(i-1) && !r.idle(i-1) || i > 0 && r.items[i-1].amount != nil {
		return false
	}
	if r.is(i, kindUnit) && r.items[i].unit.Dimension == unit.Pressing {
		return r.word(i+2, "that", "this", "it") && r.pressureSaid()
	}
	j := i + 2
	for r.word(j, "get", "reach", "have", "about", "around", "say") {
		j++
	}
	return r.is(i, kindVacuum, "vacuum") && r.free(j) && r.items[j].amount.is(unit.Pressing)
}

// saysPull reports whether pulling is spoken of right behind item i.
func (r *reader) saysPull(i int) bool {
	for j := i; j < len(r.items) && j <= i+6 && !r.isBreak(j); j++ {
		if r.is(j, kindVacuum, "pull", "vacuum") {
			return true
		}
	}
	return false
}

// replacesCue drops what the item i alone asks: "how high" is no rise where the
// bar's height is sought.
func (r *reader) replacesCue(i int) {
	if !r.is(i, kindAsk) {
		return
	}
	alone := cue(r.items[i].id)
	r.phrase.Asks = slices.DeleteFunc(r.phrase.Asks, func(a Ask) bool {
		return a.About == alone.About && a.Solve == alone.Solve && slices.Equal(a.For, alone.For)
	})
}

// howMuchOf returns the adjective of a "how …" at item i, and the item after it.
func (r *reader) howMuchOf(i int) (adj string, after int) {
	if r.word(i, "how") && i+1 < len(r.items) {
		return adjectives[r.items[i+1].word], i + 2
	}
	if r.is(i, kindAsk) {
		if rest, ok := strings.CutPrefix(r.items[i].word, "how "); ok {
			return adjectives[rest], i + 1
		}
	}
	return "", 0
}

// modalBehind reports whether a word of what can or must be stands behind item j.
func (r *reader) modalBehind(j int) bool {
	for k := j + 1; k < len(r.items) && k <= j+4 && !r.isStop(k); k++ {
		if r.word(k, "must", "should", "can", "could", "may", "need", "needed", "do", "would", "shall", "to", "gotta", "hafta", "oughta") {
			return true
		}
	}
	return false
}

// makesStrips: behind "how wide can I" the words "make the strips" tell what is to be wide.
func (r *reader) makesStrips(i int) bool {
	if r.word(i, "i", "we", "you") {
		i++
	}
	if !r.word(i, "make", "have", "cut", "rip", "get", "use", "run") && !r.is(i, kindRole, "target") {
		return false
	}
	for i++; r.word(i, "the", "my", "our", "these", "those", "each", "its"); i++ {
	}
	return r.is(i, kindNoun, "strip") && isPlural(r.items[i].word)
}

// barPushes: "how hard does a 3/4 bar push on the far joint" asks for no load on the face.
func (r *reader) barPushes(i int) bool {
	_, end := r.sentence(i)
	at := r.within(i, end, kindNoun, "bar")
	return at >= 0 && r.opensWithin(at, end, "last joint", "far joint", "first joint", "middle joint", "far edge", "joints")
}
