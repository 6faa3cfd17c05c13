package grammar

import "math/big"

// wholes are the whole numbers that people write in words.
var wholes = map[string]int64{
	"zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
	"ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
	"seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50,
	"sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "hundred": 100, "dozen": 12,
}

// manyOf are numbers in words for strips of that width: "two of the fours".
var manyOf = map[string]int64{"twos": 2, "threes": 3, "fours": 4, "fives": 5, "sixes": 6, "sevens": 7, "nines": 9, "tens": 10}

// parts are the fractions that people write in words, by their denominator.
var parts = map[string]int64{
	"half": 2, "halves": 2, "halfs": 2, "quarter": 4, "quarters": 4, "qtr": 4, "qtrs": 4, "quater": 4, "quaters": 4, "eighth": 8, "eighths": 8, "eigth": 8, "eigths": 8,
	"sixteenth": 16, "sixteenths": 16, "thirtysecond": 32, "thirtyseconds": 32, "sixtyfourth": 64, "sixtyfourths": 64, "tenth": 10, "tenths": 10,
}

// notParts are words that make a fraction word mean something else when they
// follow it: "quarter sawn", "half past".
var notParts = map[string]bool{
	"sawn": true, "saw": true, "past": true, "seven": true, "eight": true, "nine": true, "ten": true, "six": true, "five": true, "four": true,
	"way": true, "full": true, "hour": false, "to": true, "day": true, "assed": true, "round": true, "decent": true, "empty": true, "of": true, "the": true, "done": true, "off": true, "my": true, "our": true, "his": true, "her": true, "your": true, "their": true, "these": true, "those": true, "them": true, "em": true, "us": true, "as": true, "again": true, "are": true, "were": true,
}

// wordNumber reads a number in words from scrap i and returns its value and how
// many scraps it took; 0 where there is none.
func wordNumber(scraps []scrap, i int) (*big.Rat, int) {
	at := i
	if v, n := rareNumber(scraps, i); n > 0 {
		return v, n
	}
	whole, n := wholeWords(scraps, at)
	if n == 0 {
		return fractionWords(scraps, i)
	}
	at = skipHyphen(scraps, at+n)
	if isAnd(scraps, at) {
		at++
	}
	if d, ok := denominator(scraps, i+n); ok && whole > 0 && whole < d && !isWord(scraps, i+n, "half") { // "three quarters", "five-sixteenths"
		return big.NewRat(whole, d), skipHyphen(scraps, i+n) - i + 1
	}
	if n > 0 && at > i+n-1 {
		if part, m := fractionWords(scraps, at); m > 0 && (at > i+n || isFractionOf(scraps, at)) {
			return part.Add(part, new(big.Rat).SetInt64(whole)), at + m - i
		}
		if part, m := digitPart(scraps, at); m > 0 && at > i+n && !thatOne(scraps, i) { // "one and 3/8"
			return part.Add(part, new(big.Rat).SetInt64(whole)), at + m - i
		}
		if v, m := wholeWords(scraps, at); m > 0 && at > i+n { // "two and one quarter"
			if d, ok := denominator(scraps, at+m); ok && v > 0 && v < d {
				part := big.NewRat(v, d)
				return part.Add(part, new(big.Rat).SetInt64(whole)), skipHyphen(scraps, at+m) - i + 1
			}
		}
		if d, ok := denominator(scraps, i+n); ok && whole > 0 && whole < d { // "three quarters"
			return big.NewRat(whole, d), skipHyphen(scraps, i+n) - i + 1
		}
	}
	return new(big.Rat).SetInt64(whole), n
}

// joiners stand before a number that is a measure.
var joiners = wordSet(`by is are at of was were and x`)

// thatOne reports whether the "one" at scrap i stands for a thing: "the thin one and 1/4
// bar".
func thatOne(scraps []scrap, i int) bool {
	return scraps[i].norm == "one" && i > 0 && scraps[i-1].shape == shapeWord && !joiners[scraps[i-1].norm]
}

// digitPart is the "3/8" of "an inch and 3/8".
func digitPart(scraps []scrap, i int) (*big.Rat, int) {
	if i >= len(scraps) || scraps[i].shape != shapeFraction || scraps[i].ordinal {
		return nil, 0
	}
	part, ok := new(big.Rat).SetString(scraps[i].norm)
	if !ok || part.Sign() <= 0 || part.Cmp(one) >= 0 {
		return nil, 0
	}
	return part, 1
}

func isFractionOf(scraps []scrap, at int) bool {
	return at < len(scraps) && (scraps[at].norm == "a" || scraps[at].norm == "an")
}

func denominator(scraps []scrap, at int) (int64, bool) {
	at = skipHyphen(scraps, at)
	if at >= len(scraps) || scraps[at].shape != shapeWord {
		return 0, false
	}
	d, ok := parts[scraps[at].norm]
	if ok && at+1 < len(scraps) && notParts[scraps[at+1].norm] && scraps[at+1].norm != "of" && !(scraps[at+1].norm == "to" && at+2 < len(scraps) && spareFor[scraps[at+2].norm]) {
		return 0, false
	}
	return d, ok
}

// isAnd reports whether scrap i joins a whole number to its part: "two & three quarter".
func isAnd(scraps []scrap, i int) bool {
	return i < len(scraps) && (scraps[i].norm == "and" || scraps[i].norm == "&" || scraps[i].norm == "n" || scraps[i].norm == "an" && isWord(scraps, i+1, "a"))
}

func isWord(scraps []scrap, i int, w string) bool { return i < len(scraps) && scraps[i].norm == w }

// wholeWords reads "twenty five", "a dozen", "two hundred".
func wholeWords(scraps []scrap, i int) (int64, int) {
	at := i
	if isWord(scraps, at, "a") && isWord(scraps, at+1, "couple") && at+2 < len(scraps) && scraps[at+2].shape == shapeInt {
		return 2, 2
	}
	if v, n := dozenWords(scraps, at); n > 0 {
		return v, n
	}
	if at >= len(scraps) || scraps[at].shape != shapeWord {
		return 0, 0
	}
	v, ok := wholes[scraps[at].norm]
	if !ok || v >= 100 || scraps[at].norm == "dozen" {
		return 0, 0
	}
	at = skipHyphen(scraps, at+1)
	if v >= 20 && at < len(scraps) && scraps[at].shape == shapeWord {
		if u, ok := wholes[scraps[at].norm]; ok && u > 0 && u < 10 {
			v += u
			at++
		}
	}
	if at < len(scraps) && (scraps[at].norm == "hundred" || scraps[at].norm == "dozen") {
		v *= wholes[scraps[at].norm]
		at++
	}
	if at > i+1 && scraps[at-1].norm == "hundred" {
		if rest, n := tensWords(scraps, at); n > 0 {
			return v + rest, at + n - i
		}
	}
	if at > i+1 && scraps[at-1].norm == "-" {
		at--
	}
	return v, at - i
}

// tensWords reads what follows a hundred: "and ten", "and twenty five", "sixty".
func tensWords(scraps []scrap, i int) (int64, int) {
	at := i
	and := isWord(scraps, at, "and")
	if and {
		at++
	}
	if at >= len(scraps) || scraps[at].shape != shapeWord {
		return 0, 0
	}
	v, n := wholeWords(scraps, at)
	if n == 0 || v == 0 || v >= 100 || !and && v < 20 {
		return 0, 0
	}
	if _, part := denominator(scraps, at+n); part {
		return 0, 0
	}
	return v, at + n - i
}

// dozenWords reads "a dozen", "a half dozen", "a baker's dozen" and "dozen and a half".
func dozenWords(scraps []scrap, i int) (int64, int) {
	at := i
	if isWord(scraps, at, "a") {
		at++
	}
	if isWord(scraps, at, "half") {
		end := skipHyphen(scraps, at+1)
		if isWord(scraps, end, "a") {
			end++
		}
		if isWord(scraps, end, "dozen") {
			return 6, end + 1 - i
		}
	}
	switch {
	case at == 0 && len(scraps) > 1 && isWord(scraps, at, "dozen") && !isWord(scraps, 1, "and"):
		return 12, 1
	case at > i && isWord(scraps, at, "dozen") && !(isWord(scraps, at+1, "and") && isWord(scraps, at+2, "a") && isWord(scraps, at+3, "half")):
		return 12, 2
	case isWord(scraps, at, "bakers") && isWord(scraps, at+1, "dozen"):
		return 13, at + 2 - i
	case isWord(scraps, at, "dozen") && isWord(scraps, at+1, "and") && isWord(scraps, at+2, "a") && isWord(scraps, at+3, "half"):
		return 18, at + 4 - i
	}
	return 0, 0
}

// spareFor are what a part is left for: "leave a half to trim".
var spareFor = map[string]bool{"trim": true, "spare": true, "joint": true, "clean": true, "plane": true, "square": true, "lose": true}

// outOfTrue are what a part "of" can be a measure of: "an eighth of cup".
var outOfTrue = map[string]bool{"cup": true, "bow": true, "crook": true, "gap": true, "hump": true, "trim": true, "overfill": true}

// hyphenated is fractionWords for "a-quarter".
func hyphenated(scraps []scrap, i int) (*big.Rat, int) {
	if part, n := fractionWords(scraps, i); n > 0 {
		return part, n
	}
	if isWord(scraps, i, "a") && isWord(scraps, i+1, "-") {
		if part, n := fractionWords(scraps, i+2); n > 0 {
			return part, n + 2
		}
	}
	return nil, 0
}

// fractionWords reads "half", "half an", "a quarter", "three eighths".
func fractionWords(scraps []scrap, i int) (*big.Rat, int) {
	at := i
	if isWord(scraps, at, "a") || isWord(scraps, at, "an") {
		at++
	}
	d, ok := denominator(scraps, at)
	if !ok {
		return nil, 0
	}
	if scraps[skipHyphen(scraps, at)].norm != "half" && at == i && d == 2 {
		return nil, 0
	}
	end := skipHyphen(scraps, at) + 1
	if end < len(scraps) && notParts[scraps[end].norm] {
		switch {
		case scraps[end].norm == "to" && end+1 < len(scraps) && spareFor[scraps[end+1].norm]:
		case scraps[end].norm == "to" && at > i && end+1 < len(scraps) && (wholes[scraps[end+1].norm] != 0 || scraps[end+1].shape != shapeWord):
			return big.NewRat(1, int64(d)), end - i // "a half to three quarters"
		case scraps[end].norm != "of":
			return nil, 0
		case isWord(scraps, end+1, "an") || isWord(scraps, end+1, "a"):
			end++
		case end+1 < len(scraps) && outOfTrue[scraps[end+1].norm]:
		default:
			return nil, 0
		}
	}
	if (isWord(scraps, end, "an") || isWord(scraps, end, "a")) && end+1 < len(scraps) && scraps[end+1].shape == shapeWord {
		end++ // "half an inch"
	}
	return big.NewRat(1, d), end - i
}
