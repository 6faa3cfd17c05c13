package press

import "presshand/engine/unit"

// finite refuses a result that inputs too far apart have made no number, though
// each of them was one.
func finite[T ~float64](what string, v T) (T, error) {
	if v-v == 0 {
		return v, nil
	}
	return 0, &unit.RangeError{What: what, Got: float64(v), Want: "a number that a gauge or a tape can show"}
}
