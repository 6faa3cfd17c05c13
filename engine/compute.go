package engine

import (
	"fmt"
	"math"

	"presshand/engine/unit"
)

// Compute answers a question. An input outside what a formula is valid for
// gives a [*unit.RangeError]; what is missing stands in the answer's Needs.
func Compute(q Question) (Answer, error) {
	answer := answererOf(q.About)
	if answer == nil {
		return Answer{}, fmt.Errorf("topic is %q, want one that the engine computes", q.About)
	}
	b, err := newBuilder(q)
	if err != nil {
		return Answer{}, err
	}
	if err := answer(b); err != nil {
		return Answer{}, fmt.Errorf("%s: %w", q.About, err)
	}
	return b.answer()
}

// answererOf returns what answers questions of a topic, or nil.
func answererOf(t Topic) func(*builder) error {
	switch t {
	case Glue:
		return answerGlue
	case Pump:
		return answerPump
	case Move:
		return answerMove
	case Face:
		return answerFace
	case Side:
		return answerSide
	case Flatten:
		return answerFlatten
	case Stack:
		return answerStack
	case Load:
		return answerLoad
	}
	return nil
}

// largestNumber is more than any gauge or tape shows in any unit, and small
// enough that no formula runs out of numbers.
const largestNumber = 1e12

// finiteFacts refuses numbers that no gauge or tape shows.
func finiteFacts(fs unit.Facts) error {
	for f, v := range fs {
		for _, n := range numbersOf(v) {
			if !(math.Abs(n) <= largestNumber) {
				return &unit.RangeError{What: string(f), Got: n, Want: "a number that a gauge or a tape can show"}
			}
		}
	}
	return nil
}

// numbersOf returns the numbers that a value holds.
func numbersOf(v unit.Value) (ns []float64) {
	switch v := v.(type) {
	case unit.Number:
		ns = append(ns, float64(v))
	case unit.Numbers:
		ns = append(ns, v...)
	case unit.Layers:
		for _, l := range v {
			ns = append(ns, l.Thickness)
		}
	case unit.Piles:
		for _, p := range v {
			ns = append(ns, p.Width)
		}
	}
	return ns
}

func isFinite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
