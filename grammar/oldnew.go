package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// oldAndNew reads a value that took the place of another one in the same message.
func (r *reader) oldAndNew() {
	not, wrong, from := r.means(kindNot), r.says("wrong"), r.means(kindRole, "start") || r.says("from")
	but, was, down := r.says("but", "now", "today"), r.says("was", "were"), r.says("down", "down to")
	nearly := r.says("hair", "bit", "touch", "shade", "whisker", "tad", "just", "shy", "little", "less", "more", "smidge", "hairs")
	really, it := r.says("really", "more", "nearer", "closer", "in"), r.says("it") && r.says("is", "was")
	this := r.says("this", "today", "now", "todays", "tonight")
	for i := 0; i < len(r.items); i++ {
		if r.items[i].amount == nil {
			if not {
				r.exchangedFor(i)
			}
			continue
		}
		if wrong {
			r.saidWrong(i)
		}
		if but && was {
			r.wasNowIs(i)
		}
		if but {
			r.usualNowIs(i)
		}
		if from {
			r.wentTo(i)
		}
		if down {
			r.downTo(i)
		}
		if k := i + 1; k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.link == linkTo {
			r.workedFrom(i)
			r.rangeSettled(i)
		}
		if nearly {
			r.nearlySaid(i)
		}
		if really {
			r.reallyIs(i)
		}
		if not {
			r.exchangedFor(i)
		}
		if it {
			r.itIs(i)
		}
		if this {
			r.lastTimeThisTime(i)
		}
	}
	r.countLeft()
	r.saidOther()
}

// live reports whether item i is an amount that still counts.
func (r *reader) live(i int) bool { return r.free(i) && !r.items[i].amount.hearsay }

// alike reports whether two amounts can be of the same field.
func alike(a, b *amount) bool {
	return a.value != nil && b.value != nil && (a.unit == nil || b.unit == nil || a.unit.Dimension == b.unit.Dimension)
}

// takesPlace puts the amount at item b in the place of that at item a: the words
// around a say what both are of, unless b has words of its own.
func (r *reader) takesPlace(a, b int) {
	x, y := &r.items[a], &r.items[b]
	if !alike(x.amount, y.amount) {
		return
	}
	if n := r.next(b); !r.word(b+1, "so", "because", "cos", "since") && (r.is(n, kindNoun) && !r.startsAnew(n) || r.is(n, kindAttr)) {
		x.amount.dead = true
		y.amount.link = linkNone
		return
	}
	r.standsFor(a, b)
}

// standsFor puts the amount at item b where that at item a stood.
func (r *reader) standsFor(a, b int) {
	x, y := &r.items[a], &r.items[b]
	if !x.amount.equals(y.amount.value) {
		r.unuse(x.text)
	}
	r.phrase.Unused = slices.DeleteFunc(r.phrase.Unused, func(text string) bool { return text == y.text })
	link, plural := x.amount.link, x.amount.plural
	u, raw := x.amount.unit, x.amount.unitRaw
	am := *y.amount
	am.link, am.plural = link, plural
	if am.unit == nil {
		am.unit, am.unitRaw = u, raw
	}
	x.amount, x.text = &am, y.text
	y.used = true
}

// saidWrong: "3/8 is wrong, 7/16".
func (r *reader) saidWrong(i int) {
	if !r.live(i) || !r.word(i+1, "is", "was") || !r.word(i+2, "wrong") || i+3 >= len(r.items) || !r.isBreak(i+3) {
		return
	}
	j := r.nextLive(i+3, len(r.items))
	r.items[i].amount.dead = true
	for k := i - 1; k >= 0 && j >= 0; k-- {
		if r.live(k) && alike(r.items[k].amount, r.items[i].amount) && r.items[k].amount.equals(r.items[i].amount.value) {
			r.takesPlace(k, j)
			return
		}
	}
}

// nextLive is the first live amount of [from, to); -1 where there is none.
func (r *reader) nextLive(from, to int) int {
	for j := from; j < to && j < len(r.items); j++ {
		if r.live(j) {
			return j
		}
	}
	return -1
}

// afterBut is the first live amount behind a "but" that follows item i in its
// sentence with no other amount of the kind between; -1 where there is none.
func (r *reader) afterBut(i int) int {
	_, to := r.sentence(i)
	but := -1
	for j := i + 1; j < to && j < i+24; j++ {
		switch {
		case but < 0 && r.word(j, "but", "now", "today"):
			but = j
		case but < 0 && r.live(j):
			return -1
		case but >= 0 && r.live(j) && !r.ofElse(i, j):
			return j
		}
	}
	return -1
}

// ofElse reports whether the amount at j has words of its own that are not those of
// the amount at i.
func (r *reader) ofElse(i, j int) bool {
	if !alike(r.items[i].amount, r.items[j].amount) {
		return true
	}
	n, m := r.next(i), r.next(j)
	own := r.is(m, kindNoun) && !r.startsAnew(m) || r.is(m, kindAttr)
	return own && (n < 0 || r.items[n].id != r.items[m].id)
}

// wasNowIs: "strips were 3/8 but after planing they're 5/16".
func (r *reader) wasNowIs(i int) {
	if !r.free(i) || !r.word(i-1, "was", "were") {
		return
	}
	if j := r.afterBut(i); j >= 0 && (workings[r.items[j-1].word] || strings.HasSuffix(r.items[j-1].word, "ing") && r.word(j-2, "after")) && r.comparable(i, j) {
		r.takesPlace(i, j) // "was 18 thick but after sanding 17"
	} else if j >= 0 && r.word(j-1, "are", "theyre", "its", "is", "now") {
		r.takesPlace(i, j)
	}
}

// usual are the words for what is not so this time.
var usual = wordSet(`normally usually normal typically ordinarily`)

// usualNowIs: "normally 25 inHg but 21 today"; such a message does not tell the
// shop's habits.
func (r *reader) usualNowIs(i int) {
	if !r.live(i) {
		return
	}
	at := i - 1
	for at >= 0 && at > i-6 && r.items[at].amount == nil && !r.isStop(at) && !r.saysUsual(at) {
		at--
	}
	if at < 0 || !r.saysUsual(at) {
		return
	}
	j := r.afterBut(i)
	if j < 0 || !r.thisTime(j) {
		return
	}
	if r.is(at, kindAsk) {
		r.items[at].meaning, r.items[at].used = meaning{}, true
	}
	r.takesPlace(i, j)
}

func (r *reader) saysUsual(i int) bool {
	if usual[r.items[i].word] {
		return true
	}
	return r.is(i, kindAsk) && in(r.items[i].word, "we normally use", "we normally run", "we usually use", "we usually run")
}

// wentTo: "went from a 1 in bar to 1 1/2".
func (r *reader) wentTo(i int) {
	if am := r.items[i].amount; am != nil && am.is(unit.Proportion) && am.float() <= 30 {
		return // wood that "went from 6% to 11%" moved
	}
	from := i - 1
	for r.word(from, "a", "an", "the") {
		from--
	}
	if !r.live(i) || !r.word(from, "from") && !r.is(from, kindRole, "start") {
		return
	}
	cut := r.cutDown(from - 1)
	if !cut && !r.moved(from-1) && !(r.word(from-1, "goes", "jumps", "drops", "rises") && r.is(from-2, kindRole, "layup", "unload", "clamp")) {
		return
	}
	if n := i + 1; n < len(r.items) && r.items[n].amount != nil && r.items[n].amount.is(unit.Pressing) && r.lastsBehind(n) {
		return // "it went from 25 to 23 inHg in 8 min" is a leak
	}
	for j := i + 1; j < len(r.items) && j < i+6 && !r.isStop(j); j++ {
		if r.live(j) {
			if r.items[j].amount.link == linkTo || r.word(j-1, "to") || r.word(j-1, "a", "an", "about", "around", "like", "nearly") && r.word(j-2, "to") {
				if r.habit.Follows && r.amendsFrom(i, j) {
					return
				}
				if y := r.items[j].amount; y.bare() && r.items[i].amount.is(unit.Lasting) {
					y.unit = r.items[i].amount.unit
				}
				r.takesPlace(i, j)
				for k := from; cut && k >= from-1; k-- {
					r.items[k].meaning, r.items[k].used = meaning{kind: kindFill}, true
				}
			}
			return
		}
	}
}

// downTo: "2 presses down to 1" leaves one.
func (r *reader) downTo(i int) {
	if !r.live(i) || !r.countedAt(i) {
		return
	}
	k := r.next(i) + 1
	j := k + 1
	if r.word(k, "down") && r.word(k+1, "to") {
		j = k + 2
	} else if !r.word(k, "down to") {
		return
	}
	if n, ok := r.wholeAt(j); ok && n > 0 && r.next(j) < 0 && r.items[j].amount.bare() {
		if !r.word(k, "down") {
			r.items[k].meaning, r.items[k].used = meaning{}, true
		}
		r.takesPlace(i, j)
	}
}

// countLeft: "2 strips are cracked so only 6 left", "3 more strips, so 8", "three presses
// but one is down so 2" name the count that holds in the end.
func (r *reader) countLeft() {
	if !r.says("so", "makes", "leaves", "leaving", "left", "to", "remaining", "remain", "outstanding") {
		return
	}
	for i := range r.items {
		n, ok := r.wholeAt(i)
		if !ok || !r.sumCameTo(i) && !r.stillToDo(i) {
			continue
		}
		own := r.leftOf(r.next(i))
		field := own
		for k := i - 1; k >= 0; k-- {
			f := r.countedEarlier(k)
			if f == "" || own != "" && f != own {
				continue
			}
			if m, _ := r.wholeAt(k); !r.sumCameTo(i) && m <= n {
				continue
			}
			if field == "" {
				field = f
			}
			if field == f {
				r.items[k].amount.dead = true
			}
		}
		r.killParts(i, own)
		if field != "" && own == "" {
			r.bind(i, field)
		}
	}
}

// countedEarlier is the count that item k tells: "8 strips", "3 more panels".
func (r *reader) countedEarlier(k int) unit.Field {
	if n, ok := r.wholeAt(k); !ok || n < 1 {
		return ""
	}
	j := r.next(k)
	if r.word(j, "more", "good") {
		j = r.next(j)
	}
	return r.leftOf(j)
}

// leftOf is the count of the parts at item j, of which some can be left.
func (r *reader) leftOf(j int) unit.Field {
	switch {
	case r.is(j, kindNoun, "strip"):
		return unit.StripCount
	case r.is(j, kindNoun, "panel"):
		return unit.PanelCount
	case r.is(j, kindNoun, "press", "frame", "bag") && isPlural(r.items[j].word):
		return unit.PressCount
	}
	return ""
}

// killParts marks what a sum at item i is made of where no part is named beside it:
// "2 more came in so 12 panels", "5 done, 9 to go".
func (r *reader) killParts(i int, own unit.Field) {
	from, _ := r.sentence(i)
	for k := from; k < i; k++ {
		n, ok := r.wholeAt(k)
		if !ok || n < 1 || !r.items[k].amount.bare() {
			continue
		}
		if own != "" && r.word(k+1, "more", "extra", "came") || own == "" && r.word(k+1, "done", "pressed", "finished", "gone", "out", "already", "down", "is", "are", "broke", "ones") && r.stillToDo(i) {
			r.items[k].amount.dead = true
		}
	}
}

// stillToDo: "5 done, 9 to go", "9 left to do".
func (r *reader) stillToDo(i int) bool {
	if am := r.items[i].amount; !am.bare() || am.link != linkNone || am.form == formWords && am.float() == 1 {
		return false
	}
	k := i + 1
	for r.word(k, "still", "left", "of", "them", "more") {
		k++
	}
	switch {
	case r.word(k, "to") && r.word(k+1, "go", "do", "press", "make", "finish"):
		k += 2
	case r.word(k, "remaining", "remain", "outstanding"):
		k++
	case k > i+1 && r.word(k-1, "left"):
	default:
		return false
	}
	return r.isBreak(k)
}

func (r *reader) wholeAt(i int) (int, bool) {
	if !r.live(i) {
		return 0, false
	}
	return r.items[i].amount.whole()
}

// sumCameTo reports whether the number at item i is what a sum came to.
func (r *reader) sumCameTo(i int) bool {
	if !r.says("so", "makes", "leaves", "leaving") {
		return false
	}
	j, so := i-1, false
	for j >= 0 && (r.word(j, "only", "just", "so", "call", "it", "makes", "make", "that", "leaves", "leaving", "thats", "now", "have", "got", "we", "i", "its", "us", "me", "is", "are", "there") || r.is(j, kindRole, "target") && r.word(j, "make", "makes") || r.is(j, kindFix) && r.word(j, "call it", "make it", "make that")) {
		so = so || r.word(j, "so", "makes", "leaves", "leaving")
		j--
	}
	if !so {
		return false
	}
	end := i + 1
	for r.word(end, "left", "now", "total", "good", "ones", "altogether", "then", "told") || r.word(end, "all") && r.word(end+1, "told", "up", "together") || r.word(end, "up", "together") && r.word(end-1, "all") {
		end++
	}
	return r.isBreak(end) || r.leftOf(end) != "" && r.isBreak(end+1) && r.opensWithin(max(i-8, 0), i, "more", "extra")
}

// lastsBehind: "23 inHg in 8 min".
func (r *reader) lastsBehind(i int) bool {
	k := i + 1
	for r.word(k, "in", "over", "within", "about") || r.is(k, kindUnit, "in") || r.is(k, kindRole, "length") {
		k++
	}
	return k > i+1 && k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.is(unit.Lasting)
}
