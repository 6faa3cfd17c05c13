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
	case Strips:
		return answerStrips
	case Schedule:
		return answerSchedule
	}
	return nil
}

// largestNumber is more than any gauge or tape shows in any unit, and small
// enough that no formula runs out of numbers.
const largestNumber = 1e12

// finiteFacts refuses numbers that no gauge or tape shows.
func finiteFacts(fs unit.Facts) error {
	for f, v := range fs {
		if n := largest(v); !(n <= largestNumber) {
			return &unit.RangeError{What: string(f), Got: n, Want: "a number that a gauge or a tape can show"}
		}
	}
	return nil
}

// largest returns the largest magnitude among the numbers that a value holds, no
// number where one of them is none.
func largest(v unit.Value) (most float64) {
	switch v := v.(type) {
	case unit.Number:
		most = math.Abs(float64(v))
	case unit.Numbers:
		for _, n := range v {
			most = math.Max(most, math.Abs(n))
		}
	case unit.Layers:
		for _, l := range v {
			most = math.Max(most, math.Abs(l.Thickness))
		}
	case unit.Piles:
		for _, p := range v {
			most = math.Max(most, math.Max(math.Abs(p.Width), math.Abs(p.Length)))
		}
	}
	return most
}

func isFinite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
