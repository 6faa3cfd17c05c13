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
		if len(fields) == 0 {
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
	if it.amount != nil {
		half := r.free(i) && it.amount.bare() && it.amount.form == formWords && it.amount.value.Cmp(half) == 0
		return 0.5, half && (r.word(i+1, "the", "as", "my", "our")) && r.amountsIn(0, len(r.items)) == 1
	}
	by, ok := factors[it.word]
	return by, ok && r.amountsIn(0, len(r.items)) == 0
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
		case r.word(j, "as", "many", "much", "the", "my", "our", "number", "of", "it", "side") || r.idle(j):
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
		return []unit.Field{unit.Vacuum}
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
