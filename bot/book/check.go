package book

import (
	"cmp"
	"encoding/json"
	"math"
	"slices"

	"presshand/engine/unit"
)

// A Comparison sets one measured value beside the plan's.
type Comparison struct {
	Field     unit.Field
	Planned   unit.Value // nil where the plan has none
	Measured  unit.Value
	Tolerance unit.Number // how far they may differ; 0 for words
	Agrees    bool
}

// Known reports whether the plan has a value to compare with.
func (c Comparison) Known() bool { return c.Planned != nil }

// Compare sets what was measured beside the plan, in the order of the fields'
// names.
//
// Tolerance: lengths the larger of 2 % and 0.5 mm; a gauge 1 inHg; a count
// none; temperature 2 °C and moisture or humidity 1 % (both our estimate of
// what shop instruments read); else 2 %.
func Compare(p Plan, measured unit.Facts) []Comparison {
	fields := make([]unit.Field, 0, len(measured))
	for f := range measured {
		fields = append(fields, f)
	}
	slices.Sort(fields)
	out := make([]Comparison, 0, len(fields))
	for _, f := range fields {
		out = append(out, compare(p, f, measured[f]))
	}
	return out
}

func compare(p Plan, f unit.Field, measured unit.Value) Comparison {
	c := Comparison{Field: f, Measured: measured}
	planned, ok := planned(p, f)
	if !ok {
		return c
	}
	c.Planned = planned
	m, isNumber := measured.(unit.Number)
	if !isNumber {
		c.Agrees = equalWords(planned, measured)
		return c
	}
	for _, want := range numbers(planned) {
		tol := tolerance(f, want)
		// the last bit of a converted inch must not decide
		if math.Abs(float64(m)-want) <= tol*(1+1e-9) {
			c.Agrees = true
		}
		c.Tolerance = max(c.Tolerance, unit.Number(tol))
	}
	if low, high, ok := plannedEnds(p, f); ok && float64(m) >= low && float64(m) <= high {
		c.Agrees = true
	}
	return c
}

// planned also knows what the plan does without: a bar measured where it has
// none differs, and so does none where it has one.
func planned(p Plan, f unit.Field) (unit.Value, bool) {
	if v, ok := p.Figure(f); ok {
		return v, true
	}
	for _, by := range contrary[f] {
		if v, ok := p.Figure(by); ok {
			return v, true
		}
	}
	if whole, ok := endOf[f]; ok {
		return p.Figure(whole)
	}
	if low, high, ok := plannedEnds(p, f); ok {
		return unit.Numbers{low, high}, true
	}
	return nil, false
}

// plannedEnds returns between what a field of the plan lies where its pieces differ.
func plannedEnds(p Plan, f unit.Field) (low, high float64, ok bool) {
	for end, whole := range endOf {
		if whole != f {
			continue
		}
		v, _ := p.Figure(end)
		n := numbers(v)
		if len(n) != 1 {
			return 0, 0, false
		}
		if !ok {
			low, high = n[0], n[0]
		}
		low, high, ok = min(low, n[0]), max(high, n[0]), true
	}
	return low, high, ok
}

// endOf are the fields that are one end of how pieces differ, with what all of them
// have where they do not.
var endOf = map[unit.Field]unit.Field{
	unit.StripThickest: unit.StripThickness, unit.StripThinnest: unit.StripThickness,
	unit.WoodMoistureHigh: unit.WoodMoisture, unit.WoodMoistureLow: unit.WoodMoisture,
}

// settles reports whether measured facts take back what was found of a field: the same
// was measured again, the whole for an end, or both ends for the whole.
func settles(measured unit.Facts, f unit.Field) bool {
	if measured.Has(f) || measured.Has(endOf[f]) {
		return true
	}
	ends := 0
	for end, whole := range endOf {
		if whole == f && measured.Has(end) {
			ends++
		}
	}
	return ends == 2
}

// Covers reports whether measured facts tell of a field, be it by an end of it.
func Covers(measured unit.Facts, f unit.Field) bool {
	if measured.Has(f) || measured.Has(endOf[f]) {
		return true
	}
	for end, whole := range endOf {
		if whole == f && measured.Has(end) {
			return true
		}
	}
	return false
}

// contrary are the fields that say the opposite of a field.
var contrary = map[unit.Field][]unit.Field{
	unit.BarHeight: {unit.BarDenied}, unit.BarWidth: {unit.BarDenied}, unit.MatThickness: {unit.MatDenied},
	unit.BarDenied: {unit.BarHeight, unit.BarWidth}, unit.MatDenied: {unit.MatThickness, unit.MatFirmness, unit.MatFirm},
}

// isDenial reports whether a field says that a load lacks a part.
func isDenial(f unit.Field) bool { return f == unit.BarDenied || f == unit.MatDenied }

func equalWords(a, b unit.Value) bool {
	x, ok := a.(unit.Word)
	y, same := b.(unit.Word)
	return ok && same && x == y
}

// numbers returns what a measured number may agree with: one of several where
// the plan has several.
func numbers(v unit.Value) []float64 {
	switch v := v.(type) {
	case unit.Number:
		return []float64{float64(v)}
	case unit.Numbers:
		return v
	case unit.Triple:
		if v.Mid != nil {
			return []float64{*v.Mid}
		}
	}
	return nil
}

func tolerance(f unit.Field, planned float64) float64 {
	share := 0.02 * math.Abs(planned)
	switch f.Dimension() {
	case unit.Count:
		return 0
	case unit.Distance:
		return max(share, float64(f.Number(unit.Millimetres(0.5).Metres())))
	case unit.Warmth:
		return 2
	case unit.Proportion:
		return 1
	}
	if f == unit.Vacuum {
		return unit.InchesOfMercury(1).Kilopascals()
	}
	return share
}

// Agree reports whether all that could be compared agrees.
func Agree(cs []Comparison) bool {
	return !slices.ContainsFunc(cs, func(c Comparison) bool { return c.Known() && !c.Agrees })
}

// Differing returns the comparisons that do not agree.
func Differing(cs []Comparison) []Comparison {
	return slices.DeleteFunc(slices.Clone(cs), func(c Comparison) bool { return !c.Known() || c.Agrees })
}

// comparedNumbers counts the measured numbers that the plan has too, and the
// parts of the plan that are not there.
func comparedNumbers(cs []Comparison) int {
	known := map[unit.Field]bool{} // both ends of how pieces differ count once
	for _, c := range cs {
		if _, ok := c.Measured.(unit.Number); (ok || isDenial(c.Field)) && c.Known() {
			known[cmp.Or(endOf[c.Field], c.Field)] = true
		}
	}
	return len(known)
}

type comparisonJSON struct {
	Field     unit.Field      `json:"field"`
	Planned   json.RawMessage `json:"planned,omitempty"`
	Measured  json.RawMessage `json:"measured"`
	Tolerance unit.Number     `json:"tolerance,omitempty"`
	Agrees    bool            `json:"agrees"`
}

// MarshalJSON writes the values by their own shape.
func (c Comparison) MarshalJSON() ([]byte, error) {
	out := comparisonJSON{Field: c.Field, Tolerance: c.Tolerance, Agrees: c.Agrees}
	var err error
	if out.Measured, err = json.Marshal(c.Measured); err != nil {
		return nil, err
	}
	if c.Planned != nil {
		if out.Planned, err = json.Marshal(c.Planned); err != nil {
			return nil, err
		}
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads what MarshalJSON wrote.
func (c *Comparison) UnmarshalJSON(data []byte) error {
	var in comparisonJSON
	if err := json.Unmarshal(data, &in); err != nil {
		return err
	}
	out := Comparison{Field: in.Field, Tolerance: in.Tolerance, Agrees: in.Agrees}
	var err error
	if out.Measured, err = unit.DecodeValue(in.Measured); err != nil {
		return err
	}
	if in.Planned != nil {
		if out.Planned, err = unit.DecodeValue(in.Planned); err != nil {
			return err
		}
	}
	*c = out
	return nil
}
