package grammar

import "presshand/engine/unit"

// factors multiply what a thread has: "double the bar", "twice as many strips".
var factors = map[string]float64{"double": 2, "twice": 2, "triple": 3, "treble": 3, "half": 0.5, "halve": 0.5, "doubled": 2, "halved": 0.5}

// multiples reads a part of which a later message wants so many times as much.
func (r *reader) multiples() {
	for i := range r.items {
		by, ok := r.factorAt(i)
		if !ok {
			continue
		}
		k, attr := r.multiplied(i)
		fields := sizeFields[attr]
		if k >= 0 {
			fields = r.multipliedFields(k, attr)
			r.items[k].used = true
		}
		if len(fields) == 0 && r.items[i].amount == nil && r.onlyThat(i) {
			r.items[i].used, r.items[i].meaning = true, meaning{}
			r.phrase.Changes = append(r.phrase.Changes, Change{By: Amendment{Text: r.items[i].text, Value: by}, Times: true})
			return
		}
		if len(fields) == 0 {
			if am := r.items[i].amount; am != nil && am.unit != nil {
				am.dead = true // "10% less", of what?
			}
			continue
		}
		r.items[i].used, r.items[i].meaning = true, meaning{}
		r.phrase.Changes = append(r.phrase.Changes, Change{By: Amendment{Text: r.items[i].text, Value: by}, Times: true, Fields: fields})
		return
	}
}

// factorAt is what item i multiplies by.
func (r *reader) factorAt(i int) (float64, bool) {
	it := &r.items[i]
	if it.amount != nil && it.amount.is(unit.Proportion) {
		return r.percentMore(i)
	}
	if it.amount != nil {
		half := r.free(i) && it.amount.bare() && it.amount.form == formWords && it.amount.equals(half)
		return 0.5, half && (r.word(i+1, "the", "as", "my", "our")) && r.amountsIn(0, len(r.items)) == 1
	}
	by, ok := factors[it.word]
	return by, ok && r.amountsIn(0, len(r.items)) == 0
}

// percentMore is what "10% less", "up 5%" at item i multiplies by. Of air and wood a
// per cent changes the share itself.
func (r *reader) percentMore(i int) (float64, bool) {
	if !r.free(i) || r.amountsIn(0, len(r.items)) != 1 || r.mentions(kindAir) {
		return 0, false
	}
	share := r.items[i].amount.float() / 100
	next, more := comparatives[r.wordAt(i+1)]
	less := more && next.less || r.word(i+1, "down", "off") || r.word(i-1, "down")
	more = more || r.word(i+1, "up") || r.word(i-1, "up")
	for k := i - 1; k >= 0 && k > i-5 && !r.isBreak(k); k-- {
		if lowers, moves := movers[r.items[k].word]; moves && !r.word(i-1, "to") {
			less, more = less || lowers, true
		}
	}
	if r.word(i+1, "of") && (r.word(i+2, "the", "my", "our", "your", "that") && r.partAt(i+3) || r.partAt(i+2)) {
		by, adds := adders[r.wordAt(r.prev(i))]
		less, more = less || adds && by, more || adds // "if i lose 10% of the vacuum"
	}
	switch {
	case less:
		return 1 - share, share < 1
	case more:
		return 1 + share, true
	}
	return 0, false
}

// wordAt is the word at item i; "" where none stands there.
func (r *reader) wordAt(i int) string {
	if i < 0 || i >= len(r.items) {
		return ""
	}
	return r.items[i].word
}

// multiplied is the part that the factor at item i is of, behind it or before it,
// and the direction in which it is measured; -1 where none is.
func (r *reader) multiplied(i int) (k int, attr string) {
	k = -1
	for j := i + 1; j < len(r.items) && j <= i+5 && !r.isBreak(j); j++ {
		switch {
		case r.is(j, kindAttr):
			attr = r.items[j].id
		case r.partAt(j) || r.is(j, kindNoun, "panel", "press") || r.word(j, "force", "drive"):
			return j, attr
		case r.word(j, "as", "many", "much", "the", "my", "our", "number", "of", "it", "side", "that", "your") || r.idle(j):
		case comparatives[r.items[j].word].attr != "":
			attr = comparatives[r.items[j].word].attr
		default:
			return -1, ""
		}
	}
	for j := i - 1; j >= 0 && j >= i-4 && !r.isBreak(j); j-- {
		if r.partAt(j) {
			return j, attr
		}
	}
	return -1, attr
}

// multipliedFields are what of the part at item k can be multiplied.
func (r *reader) multipliedFields(k int, attr string) []unit.Field {
	id := r.items[k].id
	switch {
	case r.word(k, "force", "drive"):
		return []unit.Field{unit.WedgeForce}
	case r.is(k, kindVacuum):
		return []unit.Field{unit.Vacuum, unit.VacuumPercent}
	case r.is(k, kindNoun, "pump"):
		return []unit.Field{unit.PumpSpeed}
	case attr != "" && attrFields[id][attr] != "":
		return []unit.Field{attrFields[id][attr]}
	case attr == "" && countFields[id] != nil && isPlural(r.items[k].word):
		return countFields[id]
	case attr == "" && bareFields[id] != "":
		return []unit.Field{bareFields[id]}
	}
	return nil
}

// halves keeps "in half" and "half that" from being half an inch. What is ripped
// in half is half as wide.
func (r *reader) halves() {
	for i := range r.items {
		am := r.items[i].amount
		if !r.free(i) || !am.bare() || am.form != formWords || !am.equals(half) || !r.word(i-1, "in", "into") && !r.word(i+1, "that", "it", "this", "those", "of") {
			continue
		}
		if r.halfOfThat(i) {
			continue
		}
		am.dead = true
		if k := r.cutBefore(i); k >= 0 && r.habit.Follows {
			am.dead, r.items[i].used = false, true
			r.items[k].used, r.items[k].meaning = true, meaning{}
			by := r.amendment(i)
			r.phrase.Changes = append(r.phrase.Changes, Change{By: by, Times: true, Fields: []unit.Field{unit.StripWidth, unit.PanelWidth}})
		}
	}
}

// cutBefore is the word of ripping before "in half" at item i; -1 where none is.
func (r *reader) cutBefore(i int) int {
	from, _ := r.clause(i)
	for k := i - 2; k >= from && r.word(i-1, "in", "into"); k-- {
		if r.word(k, "rip", "ripped", "ripping", "saw", "sawed", "sawn", "split", "resawn") {
			return k
		}
	}
	return -1
}
