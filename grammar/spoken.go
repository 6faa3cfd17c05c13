package grammar

import (
	"math/big"
	"slices"

	"presshand/engine/unit"
)

// spokenTimes joins clock times that are spoken in two numbers: "start at seven
// thirty", "out at two forty pm".
func (r *reader) spokenTimes() {
	r.hourAndMinutes()
	r.hoursAndMinutes()
	for i := 0; i+1 < len(r.items); i++ {
		if am := r.items[i].amount; am == nil || am.form != formWords {
			continue
		}
		hour, okH := r.spokenNumber(i)
		if !okH || hour < 1 || hour > 12 {
			continue
		}
		minute, okM := r.spokenNumber(i + 1)
		if !okM || minute < 5 || minute > 59 || r.namesThing(i+1) {
			continue
		}
		today := minute%5 == 0 && r.word(i-1, "its", "is", "at") && r.is(i-2, kindAsk, "schedule") && r.word(i-2, "today", "tomorrow") && r.mentions(kindNoun, "panel")
		if r.daySuffix(i+1) == "" && r.clockRole(i) == "" && !today {
			continue
		}
		it, next := &r.items[i], &r.items[i+1]
		it.amount.form, it.amount.pair = formPair, [2]int{hour, minute}
		it.end, it.text = next.end, r.text[it.start:next.end]
		r.items = append(r.items[:i+1], r.items[i+2:]...)
	}
}

// spokenHundreds joins the sizes that a metric shop speaks as a clock: "seven sixty by
// nineteen eighty" are 760 by 1980 mm.
func (r *reader) spokenHundreds() {
	if !r.habit.Metric {
		return
	}
	for i := 0; i+1 < len(r.items); i++ {
		a, b := r.items[i].amount, r.items[i+1].amount
		if a == nil || b == nil || !r.free(i) || !r.free(i+1) || a.form != formWords || b.form != formWords || !a.bare() || b.unit != nil && b.unit.Symbol != "mm" || b.link != linkNone {
			continue
		}
		hundreds, okA := plainWhole(a)
		tens, okB := plainWhole(b)
		if !okA || !okB || hundreds < 1 || hundreds > 30 || tens < 10 || tens > 99 || a.link != linkTimes && !r.timesAt(i+2) {
			continue
		}
		a.value = big.NewRat(int64(100*hundreds+tens), 1)
		a.unit, a.unitRaw = b.unit, b.unitRaw
		r.items[i].end, r.items[i].text = r.items[i+1].end, r.text[r.items[i].start:r.items[i+1].end]
		r.items = append(r.items[:i+1], r.items[i+2:]...)
	}
}

// spokenNumber returns the whole number in words at item i.
func (r *reader) spokenNumber(i int) (int, bool) {
	if !r.free(i) || r.items[i].amount.form != formWords || !r.items[i].amount.bare() || r.items[i].amount.link != linkNone {
		return 0, false
	}
	return plainWhole(r.items[i].amount)
}

// bookTimes joins the clock times of a load's going in or coming out that are
// told by the hour before or behind them: "14 in at ten to seven".
func (r *reader) bookTimes() {
	if !r.opensWithLoad() {
		return
	}
	for i := 2; i < len(r.items); i++ {
		if !r.free(i) || r.items[i].amount.unit != nil {
			continue
		}
		h, ok := plainWhole(r.items[i].amount)
		if !ok || h < 1 || h > 12 {
			continue
		}
		minutes, from := r.minutesBefore(i)
		if k := i - 1; from < 0 && r.items[i].amount.link == linkTo && r.free(k) {
			if n, whole := plainWhole(r.items[k].amount); whole && n < 60 && n%5 == 0 {
				minutes, from = -n, k
			}
		}
		if k := i - 2; from < 0 && r.word(i-1, "past", "after") && r.free(k) {
			if n, whole := plainWhole(r.items[k].amount); whole && n < 60 && n%5 == 0 {
				minutes, from = n, k // "14 went in at ten past nine"
			}
		}
		if from < 1 || !r.word(from-1, "at") && (r.items[from].amount == nil || r.items[from].amount.link != linkAt) {
			continue
		}
		total := h*60 + minutes
		it := &r.items[from]
		it.meaning, it.word, it.brk = meaning{}, "", 0
		it.amount = &amount{form: formPair, pair: [2]int{total / 60, total % 60}}
		it.end, it.text = r.items[i].end, r.text[it.start:r.items[i].end]
		r.items = append(r.items[:from+1], r.items[i+1:]...)
	}
}

// opensWithLoad: "14 in …", "14 came out …".
func (r *reader) opensWithLoad() bool {
	i := r.firstWord()
	if r.is(i, kindVerb, "show") {
		i++
	}
	if i >= len(r.items) || r.items[i].amount == nil {
		return false
	}
	_, ok := r.loadNumber(i)
	return ok && (r.items[i].amount.unit != nil || r.within(i, min(i+4, len(r.items)), kindVerb, "in", "out") >= 0)
}

// hourAndMinutes joins "an hour and ten", "2 hours and 15" to one time.
func (r *reader) hourAndMinutes() {
	if !r.says("and") {
		return
	}
	for i := 0; i+2 < len(r.items); i++ {
		hours := r.items[i].amount
		if hours == nil || hours.unit == nil || hours.unit.Symbol != "h" || hours.value == nil || !hours.value.IsInt() || !r.word(i+1, "and") {
			continue
		}
		n, ok := r.spokenNumber(i + 2)
		if !ok || n < 5 || n > 59 || !r.items[i+2].amount.bare() || !r.isBreak(i+3) && !r.inPress(i+3) && !r.word(i+3, "each", "for", "under", "per") {
			continue
		}
		u, next := unit.Minute, &r.items[i+2]
		it := &r.items[i]
		it.amount = &amount{value: new(big.Rat).SetInt64(int64(hours.float())*60 + int64(n)), form: formInt, unit: &u, unitRaw: "min", link: hours.link}
		it.end, it.text = next.end, r.text[it.start:next.end]
		r.items = slices.Delete(r.items, i+1, i+3)
	}
}
