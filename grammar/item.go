package grammar

import (
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"presshand/engine/unit"
)

// A link joins an amount to the one before it.
type link uint8

const (
	linkNone  link = iota
	linkTimes      // 24 x 48
	linkTo         // 5/16 to 3/8
	linkOr         // 1 or 1 1/2
	linkAt         // 12 @ 54
)

var links = map[string]link{"x": linkTimes, "*": linkTimes, "by": linkTimes, "@": linkAt, "at": linkAt, "or": linkOr, "vs": linkOr, "versus": linkOr}

// form is how a number was written.
type form uint8

const (
	formInt form = iota
	formDecimal
	formFraction
	formMixed
	formQuarters
	formPair
	formWords
	formBad
)

// An item is an amount, a word with a meaning, another word or a mark, in the
// order of the message.
type item struct {
	meaning
	word       string // norm
	text       string
	start, end int
	taken      bool // misspelt, and taken for word
	brk        byte // one of , . / ( ) : - + or 0
	used       bool
	amount     *amount
	list       *stockList // a run of widths, or of counts and widths
}

// An amount is a number with the unit written behind it.
type amount struct {
	value   *big.Rat // nil where the number cannot be read
	pair    [2]int   // of 7:30 and 1:12
	form    form
	unit    *unit.Unit // nil for a bare number
	unitRaw string     // the unit as typed, in one spelling
	minus   bool
	plural  bool
	link    link // to the amount before
	dead    bool // a name, or denied: never bound
	ordinal bool // tells one of several apart: "joint 3"
	hearsay bool // what somebody is said to think: gives way
}

// items flattens the tree of a message, and appends it.
func items(out []item, tree *messageTree, tokens []token) []item {
	out = slices.Grow(out, len(tokens))
	at := 0
	words := func(end int) {
		for ; at < end; at++ {
			out = append(out, other(&tokens[at]))
		}
	}
	for k := range tree.Measures {
		m := &tree.Measures[k]
		first := m.First.Pos.Offset
		words(first)
		out = join(out, amountItem(&m.First, linkNone, tokens), tokens, first)
		at = m.end()
		for k := range m.Rest {
			l := &m.Rest[k]
			ln, ok := links[l.Link]
			if !ok {
				ln = linkTo
			}
			it := amountItem(&l.Amount, ln, tokens)
			if whole, part, ok := apart(it, &l.Amount, tokens); ok {
				out = append(out, whole, part)
				continue
			}
			out = append(out, it)
		}
	}
	words(len(tokens))
	return out
}

// apart takes "26x96 3/4 thick" for a size and a thickness: a fraction behind a
// foot or more, with a direction of its own, is no part of the length.
func apart(it item, a *amountTree, tokens []token) (whole, part item, ok bool) {
	at := a.Pos.Offset
	if a.Minus {
		at++
	}
	if it.amount.link != linkTimes || a.Part == "" || it.amount.value == nil || it.amount.float() < 12 {
		return it, it, false
	}
	after := at + 2
	if a.Unit != "" {
		after++
	}
	if after >= len(tokens) || tokens[after].meaning.kind != kindAttr && tokens[after].meaning.id != "core" && tokens[after].meaning.id != "strip" && tokens[after].meaning.kind != kindWood {
		return it, it, false
	}
	whole = item{start: it.start, end: tokens[at].end, amount: &amount{value: rational(a.Whole), form: formInt, link: linkTimes}}
	part = item{start: tokens[at+1].start, end: it.end, amount: &amount{value: rational(a.Part), form: formFraction, unit: it.amount.unit, unitRaw: it.amount.unitRaw}}
	return whole, part, true
}

// join adds inches to the feet before them: 6'8", 6 ft 8.
func join(out []item, it item, tokens []token, at int) []item {
	if len(out) == 0 || out[len(out)-1].amount == nil {
		return append(out, it)
	}
	ft, in := out[len(out)-1].amount, it.amount
	if ft.unit == nil || ft.unit.Symbol != "ft" || in.value == nil || ft.value == nil || in.minus || in.float() >= 12 || in.unit != nil && in.unit.Symbol != "in" {
		return append(out, it)
	}
	if behind := at + 2; in.unit != nil && behind < len(tokens) && tokens[at].symbol != symFraction {
		if in.form == formMixed {
			behind++
		}
		if behind < len(tokens) && tokens[behind].meaning.kind == kindNoun && tokens[behind].meaning.id == "bar" {
			return append(out, it) // "4 ft 1 in bar": a length and a bar
		}
	}
	if ft.link == linkTimes && upright(tokens, at, in) {
		return append(out, it) // "4x8 ft 3 in deep": a size and a depth
	}
	if in.unit == nil {
		after := at + 1
		if in.form == formMixed {
			after++
		}
		if after < len(tokens) && tokens[after].symbol != symComma && tokens[after].symbol != symBreak && tokens[after].meaning.kind != kindAttr {
			return append(out, it)
		}
	}
	total := new(big.Rat).Add(new(big.Rat).Mul(ft.value, big.NewRat(12, 1)), in.value)
	u := unit.Inch
	last := &out[len(out)-1]
	last.amount = &amount{value: total, form: in.form, unit: &u, unitRaw: "ft in", minus: ft.minus, link: ft.link}
	last.end = it.end
	return out
}

// upright reports whether a direction that no size of two numbers has, or a clear height,
// stands right behind the amount whose first token is at: "3 in deep", "4 opening".
func upright(tokens []token, at int, am *amount) bool {
	behind := at + 1
	if am.form == formMixed {
		behind++
	}
	if am.unit != nil {
		behind++
	}
	if behind >= len(tokens) {
		return false
	}
	if behind+1 < len(tokens) && tokens[behind].norm == "of" && in(tokens[behind+1].norm, "air", "space", "gap", "room", "foam", "headroom") {
		return true // "bag 3x5 ft, 2 in of air in it"
	}
	m := tokens[behind].meaning
	return m.kind == kindNoun && (m.id == "opening" || m.id == "gap") || m.kind == kindAttr && (m.id == "deep" || m.id == "tall" || m.id == "thick")
}

func other(t *token) item {
	it := item{meaning: t.meaning, word: t.norm, text: t.text, start: t.start, end: t.end, taken: t.taken, list: t.list}
	switch t.symbol {
	case symComma:
		it.brk = ','
	case symSlash:
		it.brk = '/'
	case symBreak:
		it.brk = '.'
		if t.norm == ";" || t.norm == "\n" {
			it.brk = ',' // one thing a line, or one behind the other
		}
	case symMark:
		it.brk = t.norm[0]
	case symAt:
		it.brk = '@'
	}
	return it
}

func amountItem(a *amountTree, l link, tokens []token) item {
	at := a.Pos.Offset
	first := &tokens[at]
	am := &amount{minus: a.Minus, link: l}
	if a.Minus {
		at++
	}
	am.read(a, &tokens[at])
	last := &tokens[at]
	am.plural = last.plural
	if a.Part != "" {
		at++
		last = &tokens[at]
		am.plural = last.plural
	}
	if a.Unit != "" {
		at++
		last = &tokens[at]
		am.unit, am.unitRaw = last.meaning.unit, last.norm
	}
	it := item{start: first.start, end: last.end, amount: am, word: a.Unit}
	return it
}

func (am *amount) read(a *amountTree, t *token) {
	switch t.symbol {
	case symInt:
		am.form, am.value = formInt, rational(a.Whole)
		if a.Part == "" {
			return
		}
		am.form = formMixed
		if part := rational(a.Part); part == nil || am.value == nil || part.Sign() == 0 || !proper(a.Part) {
			am.value = nil
		} else {
			am.value.Add(am.value, part)
		}
	case symDecimal:
		am.form, am.value = formDecimal, rational(a.Single)
	case symFraction:
		am.form, am.value = formFraction, rational(a.Single)
	case symQuarters:
		am.form, am.value = formQuarters, rational(a.Single)
	case symWords:
		am.form, am.value = formWords, t.value
	case symPair:
		am.form = formPair
		x, y, _ := strings.Cut(a.Single, ":")
		am.pair[0], _ = strconv.Atoi(x)
		am.pair[1], _ = strconv.Atoi(y)
	default:
		am.form = formBad
	}
}

var one, half = big.NewRat(1, 1), big.NewRat(1, 2)

// rational reads a number exactly; nil for n/0 and for more digits than any
// number of the shop has.
func rational(s string) *big.Rat {
	if len(s) > 48 {
		return nil
	}
	num, den, fraction := strings.Cut(s, "/")
	if fraction && strings.Trim(den, "0") == "" {
		return nil
	}
	if n, err := strconv.ParseUint(num, 10, 63); err == nil && !fraction {
		return new(big.Rat).SetInt64(int64(n))
	} else if d, wrong := strconv.ParseUint(den, 10, 63); err == nil && wrong == nil && num[0] != '0' && den[0] != '0' { // a leading nought is read below
		return big.NewRat(int64(n), int64(d))
	}
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		return nil
	}
	return r
}

// proper reports whether a fraction in digits is less than one.
func proper(fraction string) bool {
	num, den, _ := strings.Cut(fraction, "/")
	over, err := strconv.ParseUint(num, 10, 63)
	under, wrong := strconv.ParseUint(den, 10, 63)
	if err == nil && wrong == nil {
		return over < under
	}
	part := rational(fraction)
	return part != nil && part.Cmp(one) < 0
}

// float returns the number as written, without its unit.
func (am *amount) float() float64 {
	if am.value == nil {
		return 0
	}
	num, den := am.value.Num(), am.value.Denom()
	if num.BitLen() <= 53 && den.BitLen() <= 53 { // both are exact, so the quotient is rounded once
		return float64(num.Int64()) / float64(den.Int64())
	}
	f, _ := am.value.Float64()
	return f
}

// equals reports whether the amount is the number v, whatever its unit.
func (am *amount) equals(v *big.Rat) bool {
	return am.value != nil && v != nil && am.value.Cmp(v) == 0
}

// whole returns the number if it is a whole one without a unit.
func (am *amount) whole() (int, bool) {
	if am.value == nil || am.unit != nil || am.minus || !am.value.IsInt() || am.form == formDecimal || am.form == formQuarters {
		return 0, false
	}
	n := am.value.Num() // a number beyond what anybody counts stays unused, with all its digits
	return int(n.Int64()), n.IsInt64() && n.Int64() < math.MaxInt32
}

// is reports whether the amount has a unit of the dimension.
func (am *amount) is(d unit.Dimension) bool { return am.unit != nil && am.unit.Dimension == d }

func (am *amount) bare() bool { return am.unit == nil }

var _ lexer.Definition = definition{}
