package grammar

import "math/big"

// noughts are the ways of saying the nought before a point.
var noughts = wordSet(`nought naught zero oh o nil`)

// pointWords reads decimals in words: "nought point eight five", "point eight two",
// "one point two five", "zero point eighty five".
func pointWords(scraps []scrap, i int) (*big.Rat, int) {
	whole, at := int64(0), i
	switch {
	case at >= len(scraps):
		return nil, 0
	case isWord(scraps, at, "point"):
	case noughts[scraps[at].norm]:
		at++
	case scraps[at].shape == shapeWord && wholes[scraps[at].norm] > 0:
		v, n := wholeWords(scraps, at)
		if n == 0 {
			return nil, 0
		}
		whole, at = v, at+n
	}
	if !isWord(scraps, at, "point") {
		return nil, 0
	}
	digits, scale, n := int64(0), int64(1), 0
	at++
	if tens, taken := wholeWords(scraps, at); taken > 0 && tens > 9 && tens < 100 {
		return big.NewRat(100*whole+tens, 100), at + taken - i // "point eighty five"
	}
	for ; at < len(scraps) && n < 4; at, n = at+1, n+1 {
		v, digit := wholes[scraps[at].norm]
		if !noughts[scraps[at].norm] && !(digit && v < 10) {
			break
		}
		digits, scale = 10*digits+v, 10*scale
	}
	if scale == 1 {
		return nil, 0
	}
	return big.NewRat(scale*whole+digits, scale), at - i
}
