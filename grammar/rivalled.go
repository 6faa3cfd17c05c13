package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// turns are words behind which a number may take the place of one that stands before:
// "wanted 30 wide but I'm short on stock, so 24 it is".
var turns = wordSet(`but so really actually now instead rather became becomes had used wanted meant didnt not call say ended after before until only turned really well though however this mine ours today`)

// rivalled asks which holds where a number that nothing could place stands behind a word
// by which it may take the place of one that was read.
func (r *reader) rivalled() {
	if r.phrase.Command != nil || r.habit.Follows {
		return
	}
	r.pilesDoubted()
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.value == nil || r.items[i].amount.hearsay || r.items[i].amount.form == formPair || r.one(i) || !r.takesTurn(i) {
			continue
		}
		if b := r.rivalOf(i); b >= 0 {
			r.leaveOpen(r.bound[b].fact, r.items[i].text)
			r.items[i].used = true
		}
	}
}

// rivalOf is the reading that the number at item i may be meant instead of; -1 where there
// is none.
func (r *reader) rivalOf(i int) int {
	best := -1
	for k := range r.bound {
		b := &r.bound[k]
		if v, number := b.fact.Value.(unit.Number); !number || v <= 0 || b.from >= i || b.weak || best >= 0 && b.from < r.bound[best].from {
			continue
		}
		if r.mayReplace(i, b) && r.turnsBetween(b.from, i) {
			best = k
		}
	}
	return best
}

// mayReplace reports whether the number at item i can be another value of what was read.
func (r *reader) mayReplace(i int, b *binding) bool {
	am := r.items[i].amount
	was := r.items[b.from].amount
	if was == nil || !alike(am, was) || !slices.ContainsFunc(r.phrase.Facts, func(f Fact) bool { return f.Field == b.fact.Field && f.Text == b.fact.Text }) {
		return false
	}
	if _, whole := am.whole(); !whole && b.fact.Field.Dimension() == unit.Plain {
		return false
	}
	v, _, ok := r.valueOf(am, b.fact.Field)
	if !ok || impossible(b.fact.Field, v) != "" {
		return false
	}
	const apart = 2.5
	x, y := v, float64(b.fact.Value.(unit.Number))
	return x < apart*y && y < apart*x && !same(unit.Number(x), unit.Number(y))
}

// turnsBetween reports whether a word of turns stands before item to, in one sentence
// with item from.
func (r *reader) turnsBetween(from, to int) bool {
	turned := false
	for k := to - 1; k > from; k-- {
		if r.isStop(k) || r.items[k].brk == '?' || r.items[k].brk == '\n' {
			return false
		}
		turned = turned || r.items[k].amount == nil && turns[r.items[k].word]
	}
	for k := from - 1; k >= max(from-4, 0) && !turned && !r.isStop(k); k-- {
		turned = r.items[k].amount == nil && turns[r.items[k].word]
	}
	return turned
}

// besideTurns are words that may stand right before a number that takes the place of
// another one.
var besideTurns = wordSet(`a an the at to it its is are be about like only just say theyre mine ours we for by of on around roughly got`)

// takesTurn reports whether the words beside item i let it be a value of its own.
func (r *reader) takesTurn(i int) bool {
	if p := i - 1; p < 0 || r.items[p].amount != nil || !r.isBreak(p) && !besideTurns[r.items[p].word] && !turns[r.items[p].word] && !r.is(p, kindFix) {
		return false
	}
	if r.word(i-1, "is") && r.one(i-2) {
		return false // "most of it at 9%, one is 12"
	}
	return !r.word(i+1, "of", "others", "other", "on", "are", "is", "in") && !r.unknown(i+1) && !r.word(i-1, "on")
}

// leaveOpen takes back what was read for a field, which is asked for.
func (r *reader) leaveOpen(f Fact, other string) {
	r.phrase.Facts = slices.DeleteFunc(r.phrase.Facts, func(x Fact) bool { return x.Field == f.Field })
	r.phrase.Clashes = append(r.phrase.Clashes, Clash{Field: f.Field, Texts: []string{f.Text, other}})
	r.unuse(f.Text)
	r.unuse(other)
}

// pilesDoubted asks for the strips anew where a number is left among them: "5x 70, 9x 55 and
// 4x 48. no, of the 70 are six" may be told wrong, or read wrong.
func (r *reader) pilesDoubted() {
	for k := range r.bound {
		b := &r.bound[k]
		if b.fact.Field != unit.StockPiles {
			continue
		}
		if i := r.leftAmong(b); i >= 0 {
			r.leaveOpen(b.fact, r.items[i].text)
			r.items[i].used = true
		}
		return
	}
}

// leftAmong is the number that nothing could place in the sentence of the piles told last,
// or in the next where that corrects them; -1 where there is none.
func (r *reader) leftAmong(b *binding) int {
	end := b.from
	for end < len(r.items) && r.items[end].start < r.items[b.from].start+len(b.fact.Text) {
		end++
	}
	_, to := r.sentence(max(end-1, b.from))
	if r.word(to+1, "no", "sorry", "wait") || r.is(to+1, kindFix) {
		_, to = r.sentence(to + 1)
	}
	for i := b.from + 1; i < to && i < len(r.items); i++ {
		am := r.items[i].amount
		if !r.free(i) || !am.bare() || am.value == nil || am.plural || am.hearsay || am.form == formPair || r.one(i) {
			continue
		}
		if !strings.HasPrefix(r.text[r.items[i].end:], " of ") && !r.word(i+2, "no", "sorry") && !r.word(i-1, "so", "no", "wait", "really", "actually") {
			return i
		}
	}
	return -1
}
