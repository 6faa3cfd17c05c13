package grammar

import "presshand/engine/unit"

// keptAir reads the air that somebody keeps where the panel lives: "she keeps it at 68 and
// the humidifier at 40", "they keep it 45% all year".
func (r *reader) keptAir() {
	if !r.says("keep", "keeps", "kept", "run", "runs") || r.mentions(kindGlue) || !r.mentions(kindWood) && !r.mentions(kindNoun, "panel") {
		return
	}
	for k := 1; k < len(r.items); k++ {
		if !r.word(k, "keep", "keeps", "kept", "run", "runs") || !r.word(k-1, "they", "she", "he") && !r.is(k-1, kindPerson) || r.mentions(kindAir, "shop") && !r.mentions(kindAir, "rh") {
			continue
		}
		j := k + 1
		for r.word(j, "it", "the", "house", "place", "at", "around", "about", "near", "there", "heat", "to") || r.is(j, kindAir, "service") {
			j++
		}
		if !r.live(j) || !r.free(j) || r.is(r.next(j), kindNoun) || r.is(r.next(j), kindAttr) {
			continue
		}
		am := r.items[j].amount
		low, high := 50.0, 85.0
		if r.habit.Metric {
			low, high = 10, 28
		}
		switch {
		case am.is(unit.Proportion) && am.float() >= 15:
			r.bind(j, unit.ServiceHumidity)
		case am.is(unit.Warmth), am.bare() && am.form == formInt && am.float() >= low && am.float() <= high:
			r.bind(j, unit.ServiceTemp)
		default:
			continue
		}
		r.humidifierBehind(j)
	}
}

// humidifierBehind reads the second part of "she keeps it at 68 and the humidifier at 40".
func (r *reader) humidifierBehind(i int) {
	_, to := r.sentence(i)
	for k := i + 1; k < to; k++ {
		if am := r.items[k].amount; am != nil {
			if r.free(k) && (am.bare() || am.is(unit.Proportion)) && r.humidified(k) && !r.has(unit.ServiceHumidity) {
				u := unit.PercentOf
				am.unit = &u
				r.bind(k, unit.ServiceHumidity)
			}
			return
		}
	}
}

// leftShopAt: "came out of my shop at 8%", "left here at 9%" and "flat sawn, 7% now, condo
// runs 30%" tell the wood's moisture.
func (r *reader) leftShopAt(i int) bool {
	am := r.items[i].amount
	if am.float() > 16 || r.has(unit.WoodMoisture) || r.is(r.next(i), kindAir, "rh") {
		return false
	}
	from, _ := r.clause(i)
	if from == i && (r.topic == Move && r.word(i+1, "now", "today") || r.mentions(kindAir, "service") && r.word(i+1, "here")) && r.isBreak(i+2) {
		return true
	}
	return r.within(from, i, kindAir, "shop") >= 0 && (r.word(i-1, "at") || am.link == linkAt) && (r.opensWithin(from, i, "left", "came", "leaves", "out", "comes") || r.within(from, i, kindVerb) >= 0)
}

// monthsSwing: "what'll a 26 in pine panel do from August, 12%, to February, 6%" tells the
// moisture that it has; the other the answer has no use for.
func (r *reader) monthsSwing() {
	if !r.percentSaid() || r.has(unit.WoodMoisture) || !r.mentions(kindWood) && !r.mentions(kindNoun, "panel", "strip") {
		return
	}
	var two []int
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.is(unit.Proportion) {
			continue
		}
		j := i - 1
		for j >= 0 && (r.items[j].brk == ',' || r.items[j].brk == '(' || r.word(j, "at", "is", "its")) {
			j--
		}
		if r.items[i].amount.float() > 20 || !months[r.wordAt(j)] {
			return
		}
		two = append(two, i)
	}
	if len(two) != 2 {
		return
	}
	r.bind(two[0], unit.WoodMoisture)
	r.items[two[1]].amount.dead = true
	if !r.asksFor(Move) && !r.asksFor(Side) && !r.asksFor(Schedule) {
		r.phrase.Asks = []Ask{{About: Move, question: true}}
		r.topic = Move
	}
}

// months are the times of a year that wood swings between.
var months = wordSet(`january february march april may june july august september october november december jan feb mar apr jun jul aug sep sept oct nov dec summer winter spring fall autumn`)

// madeAt: "glued at 7, lives at 60% rh" and "we glued it up at 8" tell how wet the wood was.
func (r *reader) madeAt(i int) bool {
	if v := r.items[i].amount.float(); v < 4 || v > 20 || !r.word(i-1, "at", "up at") || r.next(i) >= 0 || !r.mentions(kindAir, "service") {
		return false
	}
	k := i - 2
	for r.word(k, "it", "them", "up", "this", "these", "that", "those", "together") {
		k--
	}
	return r.word(k, "glued", "pressed", "dried", "made", "built", "assembled", "planed")
}

// theirAir: in "her humidistat says 22% and it's 68 in there" both are of where the work
// lives.
func (r *reader) theirAir() {
	for k := 1; k < len(r.items) && r.says("her", "his", "their"); k++ {
		damp := r.is(k, kindAir, "rh") && !r.word(k, "rh")
		warm := r.is(k, kindAir, "temp") && r.word(k, "thermometer", "thermostat")
		if r.word(k-1, "her", "his", "their") && (damp || warm) && r.mentions(kindWood) && !r.mentions(kindGlue) {
			r.items[k-1].meaning = meaning{kind: kindAir, id: "service"}
			r.hear(k - 1)
		}
	}
	if !r.mentions(kindAir, "service") {
		return
	}
	low, high := r.bareWarmth()
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || !r.inThere(i) || am.float() < low || am.float() > high || !r.word(i-1, "its", "is", "at", "about", "around") {
			continue
		}
		u := r.bareUnit(am, unit.Warmth)
		am.unit, am.unitRaw = &u, u.Symbol
	}
}

// inThere: "68 in there", whose "in" may have been read with the number.
func (r *reader) inThere(i int) bool {
	am := r.items[i].amount
	return am.bare() && r.word(i+1, "in") && r.word(i+2, "there") || am.unitRaw == "in" && r.word(i+1, "there")
}

// ofARoom reports whether the number at item i is how damp the air is: "office is 28 rh".
func (r *reader) ofARoom(i int) bool {
	from, to := r.window(i)
	return r.is(r.next(i), kindAir, "rh") || r.within(from, to, kindAir, "service", "shop") >= 0
}
