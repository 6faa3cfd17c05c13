package bot

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"presshand/engine/unit"
)

// show returns a number held by f in the person's own unit.
func (s style) show(f unit.Field, n float64) string {
	if clocks[f] {
		return clock(n)
	}
	if f.Dimension() == unit.Lasting {
		return duration(f.SI(unit.Number(n)))
	}
	first, _ := s.units(f)
	return amount(f.SI(unit.Number(n)), first)
}

// roundedUp returns a length at the next mark of the person's tape.
func (s style) roundedUp(f unit.Field, n float64) float64 {
	first, _ := s.units(f)
	marks := map[string]float64{"in": 32, "mm": 2}[first.Symbol]
	if f.Dimension() != unit.Distance || marks == 0 {
		return n
	}
	marked := math.Ceil(first.Of(f.SI(unit.Number(n)))*marks-1e-6) / marks
	return float64(f.Number(first.SI(marked)))
}

// both returns a number held by f in the person's own unit, with the other
// system's in brackets.
func (s style) both(f unit.Field, n float64) string {
	_, second := s.units(f)
	text := s.show(f, n)
	if second.Symbol == "" || f.Dimension() == unit.Lasting {
		return text
	}
	return text + " (" + amount(f.SI(unit.Number(n)), second) + ")"
}

// triple returns a computed figure with its range, if it has one.
func (s style) triple(f unit.Field, t unit.Triple) string {
	if t.Mid == nil {
		return s.open(f, t)
	}
	if s.isNothing(f, *t.Mid) {
		return s.hardly(f, t)
	}
	text := s.both(f, *t.Mid)
	if span := s.span(f, t); span != "" {
		text += ", " + span
	}
	return text
}

// span returns the range of a figure in words, "" where there is none to see.
func (s style) span(f unit.Field, t unit.Triple) string {
	switch {
	case t.Low != nil && t.High != nil:
		low, high := s.show(f, *t.Low), s.show(f, *t.High)
		if low == high {
			return ""
		}
		return "could be " + withoutUnit(low, high) + " to " + high
	case t.Low != nil:
		return "at least " + s.show(f, *t.Low)
	case t.High != nil:
		return "at most " + s.show(f, *t.High)
	}
	return ""
}

// open is a figure whose middle cannot be reached.
func (s style) open(f unit.Field, t unit.Triple) string {
	if span := s.span(f, t); span != "" {
		return span
	}
	return "out of reach"
}

// withoutUnit drops the unit of low where high carries the same.
func withoutUnit(low, high string) string {
	i, k := strings.LastIndexByte(low, ' '), strings.LastIndexByte(high, ' ')
	if i < 0 || k < 0 || low[i:] != high[k:] || strings.ContainsFunc(low[:i], unicode.IsLetter) || strings.ContainsFunc(high[:k], unicode.IsLetter) {
		return low
	}
	return low[:i]
}

// amount shows an SI value in u, as fine as a tape or a gauge reads it.
func amount(si float64, u unit.Unit) string {
	v := u.Of(si)
	switch u.Symbol {
	case "in":
		return inches(v) + " in"
	case "mm":
		return millimetres(v) + " mm"
	case "lbf":
		if math.Abs(v) >= 2000 {
			return significant(v/2000, 3) + " tons"
		}
	case pounds:
		return significant(v, 3) + " " + pounds
	case "N":
		if math.Abs(v) >= 1000 {
			return significant(v/1000, 3) + " kN"
		}
	case "g":
		if math.Abs(v) >= 1000 {
			return significant(v/1000, 3) + " kg"
		}
	case "oz":
		if math.Abs(v) >= 32 {
			return significant(v/16, 3) + " lb"
		}
	case "°F", "°C":
		return decimals(v, 0) + " " + u.Symbol
	case "%":
		return decimals(v, boolean(math.Abs(v) < 20)) + " %"
	}
	if u.Symbol == "" {
		return significant(v, 4)
	}
	return decimals(v, places(v, u)) + " " + u.Symbol
}

// places is how many decimals of u are worth showing.
func places(v float64, u unit.Unit) int {
	v = math.Abs(v)
	switch u.Symbol {
	case "psi":
		if v < 1 {
			return 2
		}
	case "inHg":
		return 1
	case "kPa":
		if v >= 10 {
			return 0
		}
		return 1
	case "bar":
		if v < 0.1 {
			return 3
		}
		return 2
	case "ton/ft²", "inHg/min", "kPa/min", "m²":
		return 2
	case "N/mm²", "MPa":
		return 3
	case "mbar", "hPa", "mmHg", "torr", "Pa", "lb/ft²", "g/m²", "ml":
		return 0
	}
	if v >= 100 {
		return 0
	}
	return 1
}

// inches shows a computed length to the nearest 1/32 where a tape reads it.
func inches(v float64) string {
	if math.Abs(v) < 1.0/32-1e-9 && v != 0 || math.Abs(v) > 400 {
		return significant(v, 2+boolean(math.Abs(v) > 400))
	}
	return fraction(v, 32)
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// fraction writes v to the nearest 1/n, n a power of two: "2 1/4".
func fraction(v float64, n int) string {
	sign := ""
	if v < 0 {
		sign, v = "−", -v
	}
	parts := int(math.Round(v * float64(n)))
	whole, rest := parts/n, parts%n
	if rest == 0 {
		return sign + strconv.Itoa(whole)
	}
	for rest%2 == 0 {
		rest, n = rest/2, n/2
	}
	text := strconv.Itoa(rest) + "/" + strconv.Itoa(n)
	if whole > 0 {
		text = strconv.Itoa(whole) + " " + text
	}
	return sign + text
}

// millimetres shows a computed length to the nearest half where a tape reads it.
func millimetres(v float64) string {
	if math.Abs(v) < 1 {
		return significant(v, 2)
	}
	return decimals(math.Round(v*2)/2, 1)
}

// exactly shows a length as it was said, so that it can be told from another.
func exactly(si float64, u unit.Unit) string {
	v := u.Of(si)
	if u.Symbol == "in" && math.Abs(v*64-math.Round(v*64)) < 0.02 {
		return fraction(v, 64) + " in"
	}
	return decimals(v, 3) + " " + u.Symbol
}

// decimals writes v with at most n decimals and no zeros at the end.
func decimals(v float64, n int) string {
	text := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return strings.Replace(text, "-", "−", 1)
}

// significant writes v to n significant digits, never with an exponent.
func significant(v float64, n int) string {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return "0"
	}
	digits := n - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if digits < 0 {
		k := math.Pow10(-digits)
		return decimals(math.Round(v/k)*k, 0)
	}
	return decimals(v, digits)
}

// duration shows a time in the units that one would say it in.
func duration(seconds float64) string {
	switch {
	case seconds < 0:
		return "−" + duration(-seconds)
	case seconds < 90:
		return significant(seconds, 2) + " s"
	case seconds < 600:
		whole := int(math.Round(seconds/5)) * 5
		return joined(whole/60, "min", whole%60, "s")
	case seconds < 90*60:
		return decimals(seconds/60, 0) + " min"
	case seconds < 48*3600:
		whole := int(math.Round(seconds / 60))
		if seconds > 12*3600 {
			whole = int(math.Round(seconds/1800)) * 30
		}
		return joined(whole/60, "h", whole%60, "min")
	}
	return decimals(seconds/86400, 1) + " days"
}

func joined(a int, au string, b int, bu string) string {
	text := strconv.Itoa(a) + " " + au
	if b > 0 {
		text += " " + strconv.Itoa(b) + " " + bu
	}
	return text
}
