package unit

import (
	"encoding/json"
	"maps"
)

// Facts hold what is known of a load, by the name of each field.
type Facts map[Field]Value

// A Value is one of [Number], [Word], [Numbers], [Words], [Layers], [Piles],
// [Sets], [Triple], [Triples] and [Facts].
type Value interface{ value() }

type (
	Number  float64 // in the unit that the field's name ends in
	Word    string  // a class, a kind, a clock time, a note
	Numbers []float64
	Words   []string
	Layers  []Layer // a stack, bottom first
	Piles   []Pile  // strips in stock, or panels wanted
	Sets    [][]float64
)

// A Layer is one part of a stack. Thickness is in millimetres.
type Layer struct {
	Part      string  `json:"part"`
	Thickness float64 `json:"thickness_mm,omitempty"`
}

// A Pile is so many pieces of one width, in millimetres. Panels may have a length
// each; 0 is not said.
type Pile struct {
	Width  float64 `json:"width_mm"`
	Count  int     `json:"count"`
	Length float64 `json:"length_mm,omitempty"`
}

// A Triple is a computed figure: its low end, its middle and its high end. An
// end that cannot be reached is absent.
type Triple struct {
	Low, Mid, High *float64
}

// Triples are the same figure for each of several levels or choices.
type Triples []Triple

func (Number) value()  {}
func (Word) value()    {}
func (Numbers) value() {}
func (Words) value()   {}
func (Layers) value()  {}
func (Piles) value()   {}
func (Sets) value()    {}
func (Triple) value()  {}
func (Triples) value() {}
func (Facts) value()   {}

// TripleOf returns r as a figure, without the ends that are not finite.
func TripleOf[T ~float64](r Range[T]) Triple {
	v := &[...]float64{float64(r.Low) + 0, float64(r.Mid) + 0, float64(r.High) + 0} // + 0: no negative zero
	return Triple{finite(&v[0]), finite(&v[1]), finite(&v[2])}
}

func finite(v *float64) *float64 {
	if *v-*v != 0 { // NaN and both infinities
		return nil
	}
	return v
}

// MarshalJSON writes {"low", "mid", "high"}, absent ends left out.
func (t Triple) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Low  *float64 `json:"low,omitempty"`
		Mid  *float64 `json:"mid,omitempty"`
		High *float64 `json:"high,omitempty"`
	}{t.Low, t.Mid, t.High})
}

// Number returns the number under f.
func (fs Facts) Number(f Field) (float64, bool) {
	n, ok := fs[f].(Number)
	return float64(n), ok
}

// SI returns the number under f in SI (temperatures in °C).
func (fs Facts) SI(f Field) (float64, bool) {
	n, ok := fs[f].(Number)
	if !ok {
		return 0, false
	}
	return f.SI(n), true
}

// Word returns the word under f, or "".
func (fs Facts) Word(f Field) string {
	w, _ := fs[f].(Word)
	return string(w)
}

// Has reports whether f is known.
func (fs Facts) Has(f Field) bool { _, ok := fs[f]; return ok }

// Clone returns a copy that can be changed without changing fs.
func (fs Facts) Clone() Facts {
	if fs == nil {
		return Facts{}
	}
	return maps.Clone(fs)
}
