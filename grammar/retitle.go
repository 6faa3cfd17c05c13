package grammar

import "presshand/engine/unit"

// retitled reads "rename it oak doors": no word of a title is of the load.
func (r *reader) retitled() {
	at := 0
	for r.word(at, "ok", "can", "you", "please", "and", "lets", "actually", "oh", "also") {
		at++
	}
	if !r.habit.Follows || !r.word(at, "rename", "retitle", "title", "name") || !r.word(at+1, "it", "this", "that") && !(r.word(at+1, "the") && (r.is(at+2, kindVerb, "show") || r.is(at+2, kindRole, "job"))) {
		return
	}
	from := at + 2
	for r.is(from, kindVerb, "show") || r.is(from, kindRole, "job") || r.word(from, "to", "as", "it") || from < len(r.items) && r.items[from].brk == ':' {
		from++
	}
	_, to := r.sentence(from)
	for to > from && r.word(to-1, "please", "pls", "plz", "thanks", "thx", "ta", "cheers", "then", "instead") {
		to--
	}
	if from >= to || r.isStop(from) {
		return
	}
	for k := at; k < to; k++ {
		r.items[k].used, r.items[k].meaning = true, meaning{}
	}
	r.say(from, unit.Title, unit.Word(trimmed(r.textOf(from, to-1))))
}

// titledBehind is the title that stands behind what a load is: "post this: 7 strips …,
// titled hatch lid".
func (r *reader) titledBehind(i int) string {
	for j := i + 1; j+1 < len(r.items); j++ {
		if !r.word(j, "titled", "entitled") && !(r.word(j, "title") && r.isBreak(j-1)) {
			continue
		}
		from := j + 1
		for from < len(r.items) && (r.word(from, "it", "is") || r.items[from].brk == ':') {
			from++
		}
		if from >= len(r.items) {
			return ""
		}
		_, to := r.clause(from)
		if from >= to {
			return ""
		}
		for k := j; k < to; k++ {
			r.items[k].used, r.items[k].meaning = true, meaning{}
		}
		return trimmed(r.textOf(from, to-1))
	}
	return ""
}
