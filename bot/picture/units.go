package picture

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// Units say how the person who asked reads figures. A field left out gives
// millimetres, kilopascals and the 24-hour clock.
type Units struct {
	Length   func(unit.Length) string
	Stated   func(unit.Length) string // a length that was stated, as it was; as Length where left out
	Pressure func(unit.Pressure) string
	Clock    func(unit.Time) string // since midnight; over 24 h is the next day

	LengthAxis, PressureAxis unit.Unit // what a chart's axes count in
}

func (u Units) length(l unit.Length) string {
	l = whole(l)
	if u.Length != nil {
		return u.Length(l)
	}
	return trimmed(l.Millimetres(), 1) + " mm"
}

func (u Units) stated(l unit.Length) string {
	if u.Stated == nil {
		return u.length(l)
	}
	return u.Stated(whole(l))
}

// whole rounds to a nanometre, which leaves nothing of what is left over from
// taking lengths from each other that are equal.
func whole(l unit.Length) unit.Length { return unit.Length(math.Round(float64(l)*1e9)/1e9) + 0 }

func (u Units) pressure(p unit.Pressure) string {
	if u.Pressure != nil {
		return u.Pressure(p)
	}
	return trimmed(p.Kilopascals(), 0) + " kPa"
}

func (u Units) clock(t unit.Time) string {
	if u.Clock != nil {
		return u.Clock(t)
	}
	minutes := int(math.Round(t.Minutes()))
	s := fmt.Sprintf("%02d:%02d", minutes/60%24, minutes%60)
	if day := minutes / (24 * 60); day > 0 {
		s += fmt.Sprintf(" +%d d", day)
	}
	return s
}

func (u Units) lengthAxis() unit.Unit {
	if u.LengthAxis.Factor == 0 {
		return unit.MM
	}
	return u.LengthAxis
}

func (u Units) pressureAxis() unit.Unit {
	if u.PressureAxis.Factor == 0 {
		return unit.KPa
	}
	return u.PressureAxis
}

func trimmed(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// span writes a range: its middle, with the ends in brackets where they read
// differently.
func span[T ~float64](r unit.Range[T], write func(T) string) string {
	mid := write(r.Mid)
	low, high := end(r.Low, write), end(r.High, write)
	if !finite(float64(r.Mid)) {
		mid = "no figure"
	}
	if low == mid && high == mid {
		return mid
	}
	return mid + " (" + ends(low, high) + ")"
}

func end[T ~float64](v T, write func(T) string) string {
	if !finite(float64(v)) {
		return ""
	}
	return write(v)
}

// ends joins the two ends of a range, the unit said once.
func ends(low, high string) string {
	switch {
	case low == "":
		return "up to " + high
	case high == "":
		return "from " + low
	}
	if i := strings.LastIndexByte(low, ' '); i >= 0 && strings.HasSuffix(high, low[i:]) {
		low = low[:i]
	}
	return low + "–" + high
}

func finite(v float64) bool { return v-v == 0 }

// measure is a fact about a length: millimetres to a micrometre.
func measure(key string, l unit.Length) fact {
	return fact{key, trimmed(l.Millimetres(), 3)}
}

func kilopascals(key string, p unit.Pressure) fact {
	return fact{key, trimmed(p.Kilopascals(), 3)}
}
