package grammar

import (
	"math/big"

	"presshand/engine/unit"
)

// tooManyInches is more than any panel has.
var tooManyInches = big.NewRat(150, 1)

// madeIn reports whether the "in" before scrap i says what a size is made in, by the strips
// or the wood that follow: "450 x 900 in 60 mm strips", "600 x 1200 in 20 mm thick oak".
func (t *tokenizer) madeIn(i int) bool {
	const reach = 6
	if !t.afterNumber() || t.scraps[t.at].glued || !t.numberAt(i) {
		return false
	}
	v := t.last().value
	if v == nil {
		v = rational(t.last().norm)
	}
	if v == nil || v.Cmp(tooManyInches) < 0 {
		return false
	}
	for i++; t.numberAt(i); i++ {
	}
	if m, n := units.longest(t.scraps, min(i, len(t.scraps)-1)); n > 0 && m.unit.Dimension == unit.Distance {
		i += n
	}
	for k := i; k < len(t.scraps) && k < i+reach && t.scraps[k].shape == shapeWord; k++ {
		w, _ := trade.longest(t.scraps, k)
		switch {
		case w.kind == kindWood, w.kind == kindWoodSort, w.kind == kindNoun && w.id == "strip":
			return true
		case w.kind != kindAttr && !isWord(t.scraps, k, "thick"):
			return false
		}
	}
	return false
}

// inAboutSoLong: "from 25 to 20 in about quarter of an hour" tells no inches.
func (t *tokenizer) inAboutSoLong(i int) bool {
	if !in(scrapNorm(t.scraps, i), "about", "around", "roughly", "under", "maybe", "nearly", "like") {
		return false
	}
	for k := i + 1; k < i+6 && k < len(t.scraps) && t.scraps[k].shape != shapeBreak; k++ {
		if t.scraps[k].shape == shapeWord {
			if m, n := units.longest(t.scraps, k); n > 0 {
				return m.unit.Dimension == unit.Lasting
			}
		}
	}
	return false
}
