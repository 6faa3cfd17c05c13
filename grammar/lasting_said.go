package grammar

import (
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// gluedHours are hours and minutes in one: "1h30", "2h15m".
var gluedHours = regexp.MustCompile(`^(\d{1,2})h(\d{2})(?:m|min)?$`)

// hoursAndMinutes joins "1 hr 30", "1 h 15 min" and "three quarters of an hour" to one time.
func (r *reader) hoursAndMinutes() {
	of := r.says("of")
	for i := 0; i < len(r.items); i++ {
		text := r.items[i].text
		if maybe := len(text) > 3 && text[0] <= '9' && (text[1]|' ' == 'h' || text[2]|' ' == 'h'); !maybe {
			// neither "1h30" nor "12h30"
		} else if m := gluedHours.FindStringSubmatch(strings.ToLower(text)); m != nil {
			h, _ := strconv.Atoi(m[1])
			n, _ := strconv.Atoi(m[2])
			if n < 60 && h <= mostHours && r.clockRole(i) == "" && !r.word(i-1, "at", "by", "till", "until", "to") && !r.is(i-1, kindRole, "start", "deadline", "hours") {
				r.lasting(i, i, new(big.Rat).SetInt64(int64(h*60+n)))
			}
			continue
		}
		am := r.items[i].amount
		if am == nil || am.value == nil {
			continue
		}
		if of && r.word(i+1, "of") && i+2 < len(r.items) && r.inHours(i+2) && am.bare() && am.float() > 0 && am.float() < 1 && r.items[i+2].amount.float() == 1 {
			r.lasting(i, i+2, new(big.Rat).Mul(am.value, big.NewRat(60, 1)))
			continue
		}
		if !r.inHours(i) || !am.value.IsInt() || i+1 >= len(r.items) {
			continue
		}
		next := r.items[i+1].amount
		if next == nil || next.value == nil || !next.value.IsInt() || next.float() < 1 || next.float() > 59 || next.link != linkNone || next.form != formInt || next.minus {
			continue
		}
		if next.unit != nil && next.unit.Symbol == "min" || next.unit == nil && next.float() >= 5 && (r.isBreak(i+2) || r.inPress(i+2)) {
			r.lasting(i, i+1, new(big.Rat).SetInt64(int64(am.float())*60+int64(next.float())))
		}
	}
}

func (r *reader) inHours(i int) bool {
	am := r.items[i].amount
	return am != nil && am.value != nil && am.unit != nil && am.unit.Symbol == "h"
}

// lasting makes one time of the items from i to last.
func (r *reader) lasting(i, last int, minutes *big.Rat) {
	u, it := unit.Minute, &r.items[i]
	link := linkNone
	if it.amount != nil {
		link = it.amount.link
	}
	it.meaning, it.brk = meaning{}, 0
	it.amount = &amount{value: minutes, form: formInt, unit: &u, unitRaw: "min", link: link}
	it.end = r.items[last].end
	it.text = r.text[it.start:it.end]
	r.items = slices.Delete(r.items, i+1, last+1)
}
