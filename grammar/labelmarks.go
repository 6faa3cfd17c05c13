package grammar

import (
	"slices"
	"strings"
)

// labelMarks reads the marks of lists that machines write, "{"bar": 1.5}", "bar_height=1.5",
// "bar -> 1 1/2", "w:2-1/4 t:3/4" and a stroke between a name and its number, as
// "bar = 1.5".
func (r *reader) labelMarks() {
	quoted := strings.Contains(r.text, "\":")
	colons := r.gluedColons()
	if !quoted && colons < 2 && !r.says("|", "_", ">") {
		return
	}
	out := make([]item, 0, len(r.items))
	for i := 0; i < len(r.items); i++ {
		it := r.items[i]
		named := i > 0 && r.items[i-1].amount == nil && r.items[i-1].brk == 0
		switch next := i + 1; {
		case it.amount != nil:
		case quoted && (it.brk == '"' || it.brk == '{' || it.brk == '}'),
			it.brk == '_' && named && next < len(r.items) && r.items[next].amount == nil && it.start == r.items[i-1].end && it.end == r.items[next].start:
			continue
		case (it.brk == '-' || it.brk == '=') && next+1 < len(r.items) && r.items[next].brk == '>' && named && r.items[next+1].amount != nil && !r.arrowBefore(out):
			it.brk, it.word, it.end = '=', "=", r.items[next].end
			i++
		case it.brk == ':' && colons > 1 && named && r.gluedColon(i):
			it.brk, it.word = '=', "="
		case it.brk == '|' && r.nameAndNumber(i):
			it.brk, it.word = '=', "="
		}
		out = append(out, it)
	}
	r.items = out
	r.hearAll()
}

// arrowBefore reports whether a number stands right before the name at the end of
// out: "sled 3/4 -> strips 5/16" tells an order.
func (r *reader) arrowBefore(out []item) bool {
	for k := len(out) - 1; k >= 0 && k >= len(out)-3; k-- {
		if out[k].brk == '>' {
			return true
		}
	}
	return false
}

// gluedColon reports whether the colon at item i joins a name to its number: "w:2".
func (r *reader) gluedColon(i int) bool {
	return i > 0 && i+1 < len(r.items) && r.items[i-1].amount == nil && r.items[i+1].amount != nil && r.items[i-1].end == r.items[i].start && r.items[i].end == r.items[i+1].start
}

func (r *reader) gluedColons() int {
	if !r.says(":") {
		return 0
	}
	n := 0
	for i := range r.items {
		if r.items[i].brk == ':' && r.gluedColon(i) {
			n++
		}
	}
	return n
}

// nameAndNumber reports whether the stroke at item i parts the name from the number of
// a line that has but these.
func (r *reader) nameAndNumber(i int) bool {
	newline := func(k int) bool { return k < 0 || k >= len(r.items) || r.items[k].word == "\n" }
	end := i + 2
	if end <= len(r.items) && !newline(end) && r.items[end].brk == '|' {
		end++
	}
	if i+1 >= len(r.items) || r.items[i+1].amount == nil || !newline(end) {
		return false
	}
	for k := i - 1; !newline(k); k-- {
		if it := &r.items[k]; it.amount != nil || it.brk == '|' && !newline(k-1) {
			return false
		}
	}
	return i > 0 && !newline(i-1)
}

// plainBrackets takes the brackets off a lone measure right behind its part: "bar (1 1/4),
// then 6 strips".
func (r *reader) plainBrackets() {
	for i := 1; i+2 < len(r.items); i++ {
		if r.items[i].brk == '(' && r.items[i+2].brk == ')' && r.items[i+1].amount != nil && layerParts[r.items[i-1].id] != "" && r.is(i-1, kindNoun) && !r.is(i-1, kindNoun, "panel") && r.length(i+1) && (!r.is(i-1, kindNoun, "strip") || r.isFraction(i+1)) {
			r.items = slices.Delete(r.items, i+2, i+3)
			r.items = slices.Delete(r.items, i, i+1)
		}
	}
}
