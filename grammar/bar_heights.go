package grammar

import (
	"math"

	"presshand/engine/unit"
)

// barFromTo: "what would I gain going from a 1 inch bar to an inch and a quarter", "would
// swapping the 1 in bar for a 1 1/2 help" compare two heights.
func (r *reader) barFromTo(i int) bool {
	if r.habit.Follows || !r.is(i+1, kindNoun, "bar") || r.has(unit.BarHeight) {
		return false
	}
	from := i - 1
	for r.word(from, "a", "an", "the", "my", "our", "one") {
		from--
	}
	j := i + 2
	joined := r.word(from, "from") && r.word(j, "to") || exchanged[r.wordAt(from)] && r.word(j, "for", "with", "to", "by")
	for j++; r.word(j, "a", "an", "one"); j++ {
	}
	if !joined || !r.asksGain() || !r.free(j) || !r.length(j) || !small(r.size(j)) || r.timesAt(j+1) {
		return false
	}
	if n := r.next(j); r.is(n, kindNoun) && !r.is(n, kindNoun, "bar") || r.is(n, kindAttr) && !r.is(n, kindAttr, "tall") {
		return false
	}
	r.choice(i, j, unit.BarHeight)
	return true
}

// exchanged are the words for putting one thing in the place of another.
var exchanged = wordSet(`swap swapping swop swopping change changing trade trading replace replacing switch switching`)

// asksGain reports whether the message asks what a change brings.
func (r *reader) asksGain() bool {
	return r.wordIn("gain", "gains", "help", "helps", "worth", "difference", "better", "matter", "matters", "buy", "buys", "improve", "much") || r.mentions(kindRole, "compare")
}

// barEnough: of "does he have it right or is 1/2 inch enough", where a bar is all that was
// spoken of besides strips, the number is how high it is.
func (r *reader) barEnough(i int) bool {
	if !r.word(i-1, "is", "would", "will", "does", "isnt") || !r.word(i+1, "enough", "plenty", "ok", "okay", "do", "sufficient", "work") || !r.isBreak(r.behindEnough(i+1)) {
		return false
	}
	if r.has(unit.BarHeight) || r.solving != "" || !small(r.size(i)) || r.items[i].amount.link != linkNone || r.within(0, i, kindNoun, "bar") < 0 {
		return false
	}
	for k := 0; k < i; k++ {
		if r.is(k, kindNoun) && !r.is(k, kindNoun, "bar", "strip", "joint") {
			return false
		}
	}
	return r.has(unit.StripThickness) && r.bind(i, unit.BarHeight)
}

// behindEnough is the item behind "enough for it", "ok then" from item k on.
func (r *reader) behindEnough(k int) int {
	for k++; r.word(k, "for", "it", "that", "then", "here", "too", "now", "there"); k++ {
	}
	return k
}

// barsPiledTo: "two 3/4 bars on top of each other so it's 1 1/2 tall" tells what they come
// to, and neither how many stand on the sides nor how high one is.
func (r *reader) barsPiledTo() {
	for i := range r.items {
		n, whole := r.wholeAt(i)
		if !whole || n < 2 || n > 4 || !r.items[i].amount.bare() {
			continue
		}
		each := i + 1
		if r.is(each, kindNoun, "bar") {
			each++
		} else if !r.is(i+2, kindNoun, "bar") {
			continue
		}
		_, to := r.sentence(i)
		from, _ := r.clause(i)
		if !r.free(each) || !r.length(each) || !r.barsPiled(from, to) && r.within(from, to, kindRole, "stackorder") < 0 {
			continue
		}
		for j := each + 1; j < to; j++ {
			if r.free(j) && r.length(j) && math.Abs(r.size(j)-float64(n)*r.size(each)) < 1e-6 {
				r.bind(j, unit.BarHeight)
				if f := r.justBound(j); f != nil {
					r.items[i].used, r.items[each].used = true, true
					f.Text = r.textOf(i, j)
					r.useTall(j)
				}
				return
			}
		}
	}
}

// useTall uses up the direction behind the height at item j.
func (r *reader) useTall(j int) {
	if r.is(j+1, kindAttr, "tall") {
		r.items[j+1].used = true
	}
}

// standsUp: of "bar's 3/4 x 1 1/4, on edge so the 1 1/4 stands up" the second is the height.
func (r *reader) standsUp() {
	width := r.measureOf(unit.BarWidth)
	if width < 0 {
		return
	}
	height := r.measureOf(unit.BarHeight)
	if height < 0 {
		return
	}
	for i := range r.items {
		if !r.free(i) || !r.length(i) || !r.word(i-1, "the") {
			continue
		}
		k := i + 1
		if r.word(k, "side", "edge", "face") {
			k++
		}
		up := r.word(k, "stands", "standing", "is", "goes", "going", "points", "runs") && r.word(k+1, "up", "upright", "vertical", "tall") || r.word(k, "up", "upright", "vertical") && r.isBreak(k+1)
		v, _, ok := r.valueOf(r.items[i].amount, unit.BarHeight)
		if !up || !ok {
			continue
		}
		r.items[i].used = true
		h, w := &r.bound[height].fact, &r.bound[width].fact
		if same(w.Value, unit.Number(v)) {
			h.Value, w.Value = w.Value, h.Value
			h.Text, w.Text = w.Text, h.Text
			h.Unit, w.Unit = w.Unit, h.Unit
		} else if !same(h.Value, unit.Number(v)) {
			r.items[i].used = false
		}
		return
	}
}

// barSection: of "bar's walking up. it's 3/4 wide 1 1/2 tall" both measures are the bar's; the
// clause begins at item from.
func (r *reader) barSection(from int) bool {
	_, to := r.clause(from)
	if !r.word(from, "its", "it") || r.within(from, to, kindAttr, "tall") < 0 || r.within(from, to, kindNoun) >= 0 || r.has(unit.BarWidth) {
		return false
	}
	for k := from - 1; k >= 0; k-- {
		if r.is(k, kindNoun) {
			return r.is(k, kindNoun, "bar")
		}
	}
	return false
}
