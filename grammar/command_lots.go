package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// lots reads "glue lot A12" and "job 4412" where the last item of one may stand.
func (r *reader) lots(mayEnd func(i int) bool) {
	if !r.means(kindRole, "lot", "job") {
		return
	}
	for i := range r.items {
		f := unit.GlueLot
		switch {
		case r.is(i, kindRole, "lot"):
		case r.is(i, kindRole, "job"):
			f = unit.Job
		default:
			continue
		}
		j := i + 1
		for j < len(r.items) && (r.items[j].brk == '#' || r.items[j].brk == ':' || r.word(j, "number", "no", "nr", "is", "to", "its", "was")) {
			j++
		}
		if j < len(r.items) && r.items[j].amount != nil && (r.items[j].amount.is(unit.Proportion) || r.items[j].amount.is(unit.Warmth) || r.items[j].amount.is(unit.Pressing)) {
			continue // "kiln ticket 8%"
		}
		if r.items[i].used || j >= len(r.items) || r.items[j].used || r.items[j].brk != 0 || r.isFraction(j) || r.items[j].amount == nil && !hasDigit(r.items[j].text) && (r.items[j].kind != kindNone || r.word(j-1, "to", "its", "was") || f == unit.GlueLot && smallWords[r.items[j].word] && (j+1 >= len(r.items) || r.items[j+1].start > r.items[j].end)) {
			continue
		}
		end := j
		for end+1 < len(r.items) && r.items[end+1].start == r.items[end].end && !r.isStop(end+1) && r.items[end+1].brk != ',' && r.items[end+1].brk != ':' {
			end++
		}
		letters := end > j && hasDigit(r.items[j].text) && r.isBreak(end+1) // "lot 77B"
		if !letters && !mayEnd(end) {
			continue
		}
		for k := i; k <= end; k++ {
			r.items[k].used = true
		}
		name := withMarks(r.textOf(j, end))
		r.say(j, f, unit.Word(name))
		r.bound[len(r.bound)-1].fact.Text = name // all of it, where two names clash
	}
}

// smallWords name no lot: "the lot of glue is out of date".
var smallWords = wordSet(`of to for is was are on in at by from with the a an and but so or it its that this these those has had will when if because since`)

func anywhere(int) bool { return true }

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }
