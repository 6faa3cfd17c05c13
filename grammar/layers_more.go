package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// layingWords may stand among layers in a sentence that lays them on those before.
var layingWords = wordSet(`over on top of onto above that it this them these those everything all lot whole a an the my our is are comes come goes go sits sit lies lie laid put lay we i have has theres there its which with and then next plus also finally last by another to one single for at in up thats being`)

// goesOnLaying reports whether the sentence from item from on lays further layers on those
// told before, and does nothing else: "Over that the mat, which is 6, and an 18 caul on top."
func (r *reader) goesOnLaying(from int) bool {
	nouns, thick := 0, 0
	i := from
	for ; i < len(r.items) && !r.isStop(i) && r.items[i].brk != '\n' && r.items[i].brk != ';'; i++ {
		it := &r.items[i]
		switch {
		case it.brk == '?', it.brk == '!', r.word(i, "other", "others", "enough", "spare", "old"):
			return false
		case it.amount != nil:
			if !r.free(i) || !r.length(i) || it.amount.link != linkNone || it.amount.plural || it.amount.minus {
				return false
			}
			thick++
		case r.is(i, kindNoun, "film"):
		case r.is(i, kindNoun, "fence", "strip") && r.within(from, i, kindNoun, "sled", "core", "caul") < 0:
			return false // "…, sled 3/4. fence is 5/16" tells of a level below
		case r.is(i, kindNoun, "sled", "mat", "caul", "core", "strip", "fence"):
			if r.next(i) == i+1 && r.items[i+1].amount != nil && r.is(r.next(i+1), kindNoun) && thick < nouns {
				return false // "sled 2 mat": whose number it is stays open
			}
			nouns++
		case r.word(i, "top"), r.isBreak(i), r.idle(i), layingWords[it.word], firmness[it.word] != "", r.is(i, kindWood), r.is(i, kindAttr, "thick"):
		default:
			return false
		}
	}
	return nouns > 0 && nouns == thick && nouns < 8
}

// moreWouldFit is the layer that may come on top of those before item i, with its last item:
// "do i have room for a 1/2 caul"; at is 0 where there is none.
func (r *reader) moreWouldFit(i int) (l unit.Layer, at int) {
	for k := i + 1; k+1 < len(r.items); k++ {
		if !r.roomAsked(k) {
			continue
		}
		for !r.word(k+1, "for") {
			k++
		}
		j := k + 2
		for r.word(j, "a", "an", "one", "another", "my", "the") || r.one(j) {
			j++
		}
		n := r.next(j)
		part := ""
		if r.is(n, kindNoun, "caul", "mat", "sled") {
			part = layerParts[r.items[n].id]
		}
		if part == "" || !r.free(j) || !r.length(j) {
			return l, 0
		}
		v, _, ok := r.valueOf(r.items[j].amount, unit.StripThickness)
		if !ok || impossible(unit.StripThickness, v) != "" {
			return l, 0
		}
		r.items[j].used, r.items[n].used = true, true
		return unit.Layer{Part: part, Thickness: v}, max(j, n)
	}
	return l, 0
}

// downwards reports whether layers are told from the top: "stack top to bottom: caul, mat".
func (r *reader) downwards() bool {
	for i := range r.items {
		if r.is(i, kindRole, "stackorder") && strings.Contains(r.items[i].word, "top ") {
			return true
		}
	}
	return false
}

// levelsCounted reports whether a message tells of several levels.
func (r *reader) levelsCounted() bool {
	n, _ := r.levelCount()
	return n > 1
}

// roomAsked: "room for a 3/4 caul", "any room left for a cover caul" from item i on.
func (r *reader) roomAsked(i int) bool {
	if !r.word(i, "room", "space", "room left", "space left") {
		return false
	}
	return r.word(i+1, "for") || r.word(i+1, "left", "there", "still", "enough", "on top") && r.word(i+2, "for")
}

// thicker gives a layer the thicker end of the range at item i.
func (r *reader) thicker(s layerSpan, i int) layerSpan {
	s.amount, s.differ = i+1, i+1
	if r.size(i) > r.size(i+1) {
		s.amount = i
	}
	return s
}

// rangeAt: "5/16 to 3/8" from item i on.
func (r *reader) rangeAt(i, to int) bool {
	return i+1 < to && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTo && r.free(i+1) && r.length(i+1)
}
