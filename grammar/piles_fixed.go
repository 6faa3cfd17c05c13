package grammar

import (
	"math"
	"strconv"

	"presshand/engine/unit"
)

// correctPiles takes "the 50s are actually 45" and "skip the 3s".
func (r *reader) correctPiles(ps unit.Piles) unit.Piles {
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.plural && !(r.onesBehind(i) && r.length(i)) && r.someSpoiled(i) < 0 {
			continue
		}
		old, _, _ := r.valueOf(r.items[i].amount, unit.StripWidth)
		at := -1
		for k := range ps {
			if math.Abs(ps[k].Width-old) < 1e-6 {
				at = k
			}
		}
		if at < 0 {
			continue
		}
		if j := r.correctedTo(i); j >= 0 {
			if v, _, ok := r.valueOf(r.items[j].amount, unit.StripWidth); ok && impossible(unit.StripWidth, v) == "" {
				ps[at].Width = v
				r.rewidth = append(r.rewidth, r.items[j].text)
				r.items[j].used = true
			}
			continue
		}
		if n, k := r.countAgain(i); k >= 0 {
			r.unuse(strconv.Itoa(ps[at].Count))
			ps[at].Count = n
			r.items[k].used, r.items[i].used = true, true
			continue
		}
		if k := r.leftOfThose(i); k >= 0 { // "two of the 3s have a knot so call it 3 of those"
			if n, _ := r.items[k].amount.whole(); n < ps[at].Count {
				r.unuse(strconv.Itoa(ps[at].Count))
				ps[at].Count = n
				r.items[k].used, r.items[i].used = true, true
			}
			continue
		}
		if k := r.someSpoiled(i); k >= 0 {
			if n, _ := plainWhole(r.items[k].amount); n < ps[at].Count {
				r.unuse(strconv.Itoa(ps[at].Count))
				r.unuse(r.textOf(k, i))
				ps[at].Count -= n
				r.items[k].used, r.items[i].used = true, true
				continue
			}
		}
		if r.excluded(i) || r.gone(i) {
			ps = append(ps[:at], ps[at+1:]...)
		}
	}
	return ps
}

// countAgain finds the count that corrects that of the pile named at item i:
// "sorry, only 2 of the 4s".
func (r *reader) countAgain(i int) (n, at int) {
	j := i - 1
	for r.word(j, "the", "of", "those") {
		j--
	}
	if j == i-1 || !r.free(j) || !r.word(j+1, "of") {
		return 0, -1
	}
	n, ok := r.items[j].amount.whole()
	if !ok || n < 1 || !r.word(j-1, "only", "just") && r.within(r.afterStop(j), j, kindFix) < 0 {
		return 0, -1
	}
	return n, j
}

func (r *reader) correctedTo(i int) int {
	for j := i + 1; j < len(r.items) && j <= i+6; j++ {
		if r.free(j) {
			return j
		}
		if !(r.idle(j) || r.is(j, kindFix)) {
			return -1
		}
	}
	return -1
}

// someSpoiled is the count of "2 of the 3s are cracked", whose width is item i; -1 where
// it is not of some of a pile.
func (r *reader) someSpoiled(i int) int {
	k := i - 1
	for r.word(k, "the", "those", "my", "our") {
		k--
	}
	if !r.word(k, "of") || k < 1 || !r.free(k-1) || !r.spoiled(i) && !r.gone(i) {
		return -1
	}
	if n, ok := plainWhole(r.items[k-1].amount); !ok || n < 1 {
		return -1
	}
	return k - 1
}

// gone: "the 90s are gone", "the 4s are for another job".
func (r *reader) gone(i int) bool {
	for j := i + 1; j < len(r.items) && j < i+5; j++ {
		if r.word(j, "gone", "taken", "used", "sold", "out", "rotten", "spoken", "junk", "split", "cracked", "warped", "ruined", "rejects", "toast") || r.is(j, kindVerb, "out") || r.promised(j) {
			return true
		}
	}
	return false
}

func (r *reader) excluded(i int) bool {
	for j := i - 1; j >= 0 && j >= i-4 && !r.isBreak(j); j-- {
		if r.is(j, kindNot) || r.word(j, "skip", "avoid", "spare", "drop", "scrap", "ditch", "toss", "dump", "bin", "lose", "remove", "scratch", "sold", "lost", "take out", "leave out") {
			if r.reluctant(j) {
				return false
			}
			r.items[j].used = true
			return true
		}
	}
	return false
}

// countFixed is the count that stands alone behind the pile found at k and corrects
// its own: "five at three inches, no six, and eleven at …", "two at 4 but one has a
// knot so call it one"; 0 where there is none.
func (r *reader) countFixed(found []pile, k int) int {
	p := found[k]
	to := len(r.items)
	if k+1 < len(found) {
		to = min(found[k+1].count, found[k+1].width)
	} else if stop := r.within(p.width, to, kindRole, "target", "trim"); stop >= 0 {
		to = stop
	}
	from := max(p.count, p.width) + 1
	for i := from; i < to && !(r.isStop(i) && i > from); i++ {
		if am := r.items[i].amount; am != nil && am.plural {
			return 0 // "the 60s are actually 58"
		}
		n, ok := r.wholeAt(i)
		if !ok || !r.free(i) || n < 1 || !r.items[i].amount.bare() || r.items[i].amount.link != linkNone || i+1 < len(r.items) && !r.isBreak(i+1) && !r.word(i+1, "of", "and", "now", "left", "good", "are") {
			continue
		}
		if r.word(i+1, "of") && !r.word(i+2, "them", "those", "these") || i+1 < len(r.items) && r.items[i+1].amount != nil {
			continue
		}
		called := r.word(i-1, "it") && r.word(i-2, "call", "make") || r.word(i-1, "its", "count", "really", "only", "effectively") && r.word(i-2, "so") || r.leftNow(i)
		if r.word(i-1, "should be") && r.word(i-2, "it", "that", "top") {
			return 0 // "12 at 2, 10 at 3, it should be 38"
		}
		if !called && !r.is(i-1, kindFix) && !(r.isBreak(i-1) && r.is(i-2, kindFix)) {
			continue
		}
		r.unuse(r.items[p.count].text)
		r.items[i].used = true
		r.reasons(from, i)
		return n
	}
	return 0
}

// reasons uses up the numbers of [from, to) that say why a pile is smaller: "40 at 2,
// about 8 have knots so count 32".
func (r *reader) reasons(from, to int) {
	for j := from; j < to; j++ {
		if r.free(j) && r.items[j].amount.bare() {
			r.unuse(r.items[j].text)
			r.items[j].used = true
		}
	}
}

// leftNow: "12 at 2 1/8 but 2 of those are split so 10", "had 20 at 2, only 15 now".
func (r *reader) leftNow(i int) bool {
	behind := r.word(i+1, "now", "left", "good") || r.word(i+1, "are") && (r.word(i+2, "good", "usable", "sound", "ok", "okay", "fine", "clean", "clear") || r.word(i+2, "any") && r.word(i+3, "good", "use"))
	if r.word(i-1, "so", "leaves", "leaving", "makes", "thats") || r.word(i-1, "me", "us") && r.word(i-2, "leaves", "leaving") {
		return true
	}
	return behind && r.word(i-1, "only", "just", "have", "got", "is", "are", "its", "theres")
}

// ofEach reads "3 1/4 and 2 1/2 ones, like 10 of each".
func (r *reader) ofEach() []pile {
	if !r.says("of") || !r.says("each", "both") && !r.means(kindRole, "in a row") {
		return nil
	}
	for i := range r.items {
		n, whole := r.wholeAt(i)
		if whole && r.items[i].amount.bare() && r.free(i) && n > 0 {
			if found := r.eachOf(i); len(found) > 1 {
				return found
			}
		}
		if !whole || n < 1 || !r.free(i) || !r.items[i].amount.bare() || !r.word(i+1, "of") || !r.word(i+2, "each", "both") {
			continue
		}
		var found []pile
	back:
		for k := i - 1; k >= 0 && !r.isStop(k); k-- {
			switch {
			case r.items[k].amount != nil && r.is(k+1, kindNoun, "strip") && in(r.items[k+1].word, "stock", "stuff", "lumber", "timber", "material"):
				break back // "3/4 stock, 3 1/4 and 2 1/2 wide, 10 of each"
			case r.free(k) && r.length(k) && r.size(k) < widestStrip:
				found = append(found, pile{i, k})
			case r.items[k].amount == nil && (r.isBreak(k) || r.idle(k) || r.is(k, kindNoun, "strip") || r.is(k, kindAttr, "wide") || r.word(k, "and", "ones")):
			default:
				break back
			}
		}
		if len(found) > 1 {
			return inOrder(found)
		}
	}
	return nil
}

// eachOf: "3 each of 1 1/2, 2, 2 1/2 and 3" are so many of all of them.
func (r *reader) eachOf(i int) []pile {
	if !r.word(i+1, "each") && !r.is(i+1, kindRole, "in a row") || !r.word(i+2, "of") {
		return nil
	}
	var found []pile
	for k := i + 3; k < len(r.items); k++ {
		switch {
		case r.free(k) && r.length(k) && r.size(k) < widestStrip:
			found = append(found, pile{i, k})
		case r.items[k].amount == nil && !r.isStop(k) && (r.items[k].brk == ',' || r.word(k, "and", "the") || r.is(k, kindAttr, "wide")):
		default:
			return found
		}
	}
	return found
}
