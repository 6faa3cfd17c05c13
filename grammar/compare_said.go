package grammar

import "presshand/engine/unit"

// comparedLoosely reads what is offered for a comparison in words of its own.
func (r *reader) comparedLoosely() {
	or := r.says("or") || r.means(kindRole, "compare")
	if or {
		r.oneOrBothSides()
	}
	r.enoughOrWait()
	r.lostBetween()
	if r.means(kindFact, "sawn=quarter") {
		r.sawnApart()
	}
	if or || r.says("over", "instead of", "rather than", "instead", "rather") {
		r.eitherReading()
	}
}

// oneOrBothSides: "bars both sides or just the one?", "bar on one side or both?" offers one
// bar and two.
func (r *reader) oneOrBothSides() {
	if !r.says("or") && !r.means(kindRole, "compare") || !r.mentions(kindNoun, "bar") || r.mentions(kindNoun, "face", "core", "panel") {
		return
	}
	for i := 1; i+1 < len(r.items); i++ {
		if !r.word(i, "or") && !r.is(i, kindRole, "compare") {
			continue
		}
		a, b := r.sidesBefore(i), r.sidesBehind(i)
		if a == 0 || b == 0 || a == b {
			continue
		}
		from, to := r.clause(i)
		for k := from; k < to; k++ {
			if r.is(k, kindFact, "faces=2", "faces=1") {
				r.items[k].meaning, r.items[k].used = meaning{}, true
			} else if am := r.items[k].amount; am != nil && am.bare() && am.form == formWords && am.equals(one) {
				r.items[k].used = true
			}
		}
		r.items[i].used = true
		r.phrase.Choices = append(r.phrase.Choices, Choice{unit.BarCount, []Fact{
			{Field: unit.BarCount, Value: unit.Number(float64(a)), Text: "bars"}, {Field: unit.BarCount, Value: unit.Number(float64(b)), Text: "bars"},
		}})
		return
	}
}

// sidesBefore is on how many sides the words right before item i put a bar; 0 where they
// do not tell.
func (r *reader) sidesBefore(i int) int {
	switch {
	case r.is(i-1, kindFact, "faces=2"), r.word(i-1, "both"):
		return 2
	case r.is(i-1, kindFact, "faces=1"), r.word(i-1, "side") && (r.one(i-2) || r.word(i-2, "one")), r.one(i-1) || r.word(i-1, "one"):
		return 1
	}
	return 0
}

// sidesBehind is sidesBefore for the words behind item i.
func (r *reader) sidesBehind(i int) int {
	i++
	for r.word(i, "just", "only", "on", "is", "the", "do", "i", "need", "would") {
		i++
	}
	switch {
	case r.is(i, kindFact, "faces=2"), r.word(i, "both") && (r.isBreak(i+1) || r.word(i+1, "sides")):
		return 2
	case r.is(i, kindFact, "faces=1"), (r.one(i) || r.word(i, "one")) && (r.isBreak(i+1) || r.word(i+1, "side", "enough")):
		return 1
	}
	return 0
}

// shownByGauge reports whether the number at item i may be what a gauge shows, in inches.
func (r *reader) shownByGauge(i int) bool {
	if !r.free(i) || r.habit.Metric {
		return false
	}
	am := r.items[i].amount
	return am.float() >= 10 && am.float() <= 30 && (am.bare() || am.unit.Symbol == "in" || am.is(unit.Pressing)) && am.form != formPair && !r.is(r.next(i), kindAttr) && (!r.is(r.next(i), kindNoun) || r.isBreak(i+1))
}

// offerVacuum offers the vacuums at two items, in the order of the message.
func (r *reader) offerVacuum(a, b int) {
	for _, k := range [...]int{a, b} {
		if am := r.items[k].amount; !am.is(unit.Pressing) {
			u := unit.InHg
			am.unit = &u
		}
	}
	r.choice(a, b, unit.Vacuum)
}

// enoughOrWait: "is 20 inches enough or do I need to wait till it says 25".
func (r *reader) enoughOrWait() {
	if !r.says("enough", "ok", "okay", "fine", "plenty") {
		return
	}
	for k := 1; k < len(r.items); k++ {
		if !r.word(k, "enough", "ok", "okay", "fine", "plenty") || !r.shownByGauge(k-1) {
			continue
		}
		_, to := r.sentence(k)
		for j := k + 2; j < to; j++ {
			if r.items[j].amount == nil {
				continue
			}
			waits := r.is(j-1, kindSay) || r.word(j-1, "hits", "reads", "to", "for", "till", "until", "reaches", "shows", "at", "gets") || r.is(j-1, kindVacuum)
			if waits && r.shownByGauge(j) && r.opensWithin(k+1, j, "wait", "or", "hold", "till", "until", "keep") && r.items[j].amount.float() > r.items[k-1].amount.float() {
				for m := k; m < j; m++ {
					if r.is(m, kindFix) || r.is(m, kindRole, "compare", "target") {
						r.items[m].meaning, r.items[m].used = meaning{}, true
					}
				}
				r.offerVacuum(k-1, j)
			}
			return
		}
	}
}

// lostBetween: "how much do I lose going from 26 to 20 on a 24x36, in lbs" compares the
// push at both.
func (r *reader) lostBetween() {
	if !r.linked(linkTo) {
		return
	}
	if r.opens("lose", "gain", "losing", "gaining", "give", "giving", "difference", "change") < 0 && !r.wordIn("lose", "gain") || r.mentions(kindNoun, "leak", "pump") || r.said(unit.Lasting) {
		return
	}
	for i := 1; i+1 < len(r.items); i++ {
		j := i + 1
		if !r.shownByGauge(i) || !r.shownByGauge(j) || r.items[j].amount.link != linkTo || r.timesAt(j+1) || !r.word(i-1, "from") && !r.is(i-1, kindRole, "start") {
			continue
		}
		if !r.mentions(kindVacuum) && !r.pressureSaid() && !r.forceSaid() {
			return
		}
		r.items[i-1].meaning, r.items[i-1].used = meaning{}, true
		r.offerVacuum(i, j)
		if !r.asksFor(Side) && !r.asksFor(Flatten) {
			r.phrase.Asks = []Ask{{About: Face, question: true}}
			r.topic = Face
		}
		return
	}
}

// linked reports whether an amount of the message is joined so to the one before it.
func (r *reader) linked(l link) bool {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.link == l {
			return true
		}
	}
	return false
}

// forceSaid reports whether a force is asked for by its unit: "in lbs", "how many tons".
func (r *reader) forceSaid() bool {
	for i := range r.items {
		if r.is(i, kindUnit) && (r.items[i].unit.Dimension == unit.Pushing || r.items[i].unit.Dimension == unit.Weight) || r.word(i, "tons", "pounds") {
			return true
		}
	}
	return false
}

// gaugeWentUp: "gauge went 25 to 25.7 by itself".
func (r *reader) gaugeWentUp(i int) bool {
	j := i + 1
	if !r.live(i) || j >= len(r.items) || !r.live(j) || r.items[j].amount.link != linkTo || !r.shownByGauge(i) || !r.shownByGauge(j) {
		return false
	}
	return r.items[j].amount.float() > r.items[i].amount.float() && r.word(i-1, "went", "crept", "rose", "climbed", "up", "jumped") && r.is(i-2, kindVacuum, "gauge")
}

// sawnApart: of "30 in of flat cherry or 30 in of quartered beech" each is sawn another way,
// and neither way is both's.
func (r *reader) sawnApart() {
	if !r.means(kindFact, "sawn=quarter") {
		return
	}
	flat, quarter := -1, -1
	for i := 0; i+1 < len(r.items); i++ {
		if !r.is(i+1, kindWood) {
			continue
		}
		switch {
		case r.is(i, kindFact, "sawn=flat"), r.word(i, "flat", "plain"):
			flat = i
		case r.is(i, kindFact, "sawn=quarter"):
			quarter = i
		}
	}
	if flat < 0 || quarter < 0 || r.items[flat+1].id == r.items[quarter+1].id {
		return
	}
	for _, k := range [...]int{flat, quarter} {
		r.items[k].meaning = meaning{kind: kindWoodSort}
		r.hear(k)
		r.unuse(r.items[k].text)
	}
}

// ratedAsOld: in "old one 3.5 CFM took 6 minutes. New one's 8" the new one at item k has its
// number j in the old one's unit.
func (r *reader) ratedAsOld(k, j int) {
	for i := 1; i < k; i++ {
		am := r.items[i].amount
		if am == nil || am.unit == nil || am.is(unit.Lasting) || !r.opensWithin(max(0, i-5), i, "old") {
			continue
		}
		if r.items[j].amount.bare() {
			r.items[j].amount.unit, r.items[j].amount.unitRaw = am.unit, am.unitRaw
		}
		am.dead = true
		return
	}
}
