package grammar

import (
	"fmt"
	"strings"

	"presshand/engine/unit"
)

// pastTheHour reads "quarter past eight", "ten to three", "half past 7".
func (r *reader) pastTheHour() {
	if !r.habit.Follows && !r.mentions(kindRole, "start", "deadline") && !r.dayPlan() {
		return
	}
	for i := 2; i < len(r.items); i++ {
		if !r.free(i) {
			continue
		}
		h, ok := plainWhole(r.items[i].amount)
		if !ok || h < 1 || h > 12 || r.items[i].amount.unit != nil {
			continue
		}
		minutes, from := r.minutesBefore(i)
		if from < 0 || r.atLunch(i) {
			continue
		}
		total := h*60 + minutes
		clock := fmt.Sprintf("%02d:%02d", total/60%24, total%60)
		f, role := unit.StartTime, r.clockRole(from)
		if role == "" && clock < "05:00" {
			clock = afternoon(clock)
		}
		if role == "deadline" {
			f = unit.Deadline
			if clock < "07:00" {
				clock = afternoon(clock)
			}
		}
		r.say(i, f, unit.Word(clock))
		for k := from; k < i; k++ {
			r.items[k].used = true
		}
		b := &r.bound[len(r.bound)-1]
		b.fact.Loose = role == ""
		b.fact.Text = r.textOf(from, i)
	}
}

// noon reads "out by noon", "start at midday".
func (r *reader) noon() {
	if !r.says("noon", "midday") {
		return
	}
	for i := range r.items {
		if !r.word(i, "noon", "midday") || r.items[i].used {
			continue
		}
		role := r.clockRole(i)
		if n := i + 1; role == "" && (r.is(n, kindRole, "start", "deadline") && !r.word(n, "from", "by", "before") || r.word(n, "finish")) && r.isBreak(n+1) {
			role = "start" // "frame press, noon start, d4"
			if !r.is(n, kindRole, "start") {
				role = "deadline"
			}
			r.items[n].used = true
		}
		switch role {
		case "start":
			r.say(i, unit.StartTime, unit.Word("12:00"))
		case "deadline":
			r.say(i, unit.Deadline, unit.Word("12:00"))
		}
	}
}

// halfBefore: "half seven", "half 7" is half past six to some and half past seven
// to others.
func (r *reader) halfBefore(i int) bool {
	if r.word(i-1, "half", "quarter", "past") {
		return true
	}
	return i > 0 && r.items[i-1].amount != nil && r.items[i-1].amount.form == formWords && strings.EqualFold(r.items[i-1].text, "half")
}

// refuseHalf refuses "half seven".
func (r *reader) refuseHalf(i int) {
	r.items[i].used = true
	f, like := unit.StartTime, "6:30 or 7:30"
	if r.clockRole(i) == "deadline" {
		f, like = unit.Deadline, "15:30 or 16:30"
	}
	r.refuse(f, r.textOf(i-1, i), "a clock time such as "+like)
}

// minutesBefore reads "quarter past", "half past", "ten to" before the hour at
// item i.
func (r *reader) minutesBefore(i int) (minutes, from int) {
	sign := 0
	k := i - 1
	switch {
	case r.word(k, "past", "after"):
		sign = 1
	case r.word(k, "to", "before", "till"):
		sign = -1
	case r.items[i].amount.link == linkTo:
		sign, k = -1, i
	default:
		return 0, -1
	}
	k--
	switch {
	case r.word(k, "quarter"):
		return sign * 15, k
	case r.word(k, "half") && sign > 0:
		return 30, k
	case k >= 0 && r.items[k].amount != nil && !r.items[k].used:
		if v := r.items[k].amount; v.value != nil && v.form == formWords && v.value.Cmp(one) < 0 {
			return sign * int(v.float()*60), k
		}
		if n, ok := plainWhole(r.items[k].amount); ok && n > 0 && n < 60 && n%5 == 0 && r.clockRole(k) != "" {
			return sign * n, k
		}
	}
	return 0, -1
}
