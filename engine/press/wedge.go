package press

import (
	"fmt"
	"math"

	"presshand/engine/unit"
)

// WedgeForce returns the side force N of a single-taper wedge at the moment it
// is about to move forward under the force D.
//
//	N = D / (tan(α + φ) + tan φ)
//
//	D  force that drives the wedge                      N
//	α  angle of the taper, tan α one over its run       rad
//	φ  friction angle on both faces                     rad
//	N  side force, square to the straight face          N
//
// Model: rigid weightless wedge, dry friction fully used on both faces, work
// guided square to the straight face. A hammer blow is not D.
//
// Valid for D ≥ 0, φ ≥ 0, α > 0, α + φ < 90°; outside it the error is a
// [*unit.RangeError]. Whether the wedge stays in is [WedgeHolds].
//
// Source: statics of a wedge, one force triangle for each face, as in Meriam &
// Kraige, Engineering Mechanics: Statics (from memory).
func WedgeForce(D unit.Force, α, φ unit.Angle) (unit.Force, error) {
	if err := unit.AtLeast("force on the wedge", D.Newtons(), 0, " N"); err != nil {
		return 0, err
	}
	if err := wedgeAngles(α, φ); err != nil {
		return 0, err
	}
	return finite("side force of the wedge", D/unit.Force((α+φ).Tan()+φ.Tan()))
}

// WedgeHolds reports whether a driven wedge stays in by itself.
//
//	α < 2 φ
//
//	α  angle of the taper               rad
//	φ  friction angle on both faces     rad
//
// Model: as [WedgeForce], the driving force gone.
//
// Valid for φ ≥ 0, α > 0, α + φ < 90°; outside it the error is a
// [*unit.RangeError].
//
// Source: statics of a wedge: withdrawal needs a pull where α ≤ 2 φ (from
// memory).
func WedgeHolds(α, φ unit.Angle) (bool, error) {
	if err := wedgeAngles(α, φ); err != nil {
		return false, err
	}
	return α < 2*φ, nil
}

// wedgeAngles is negated throughout so that what is no number is refused too.
func wedgeAngles(α, φ unit.Angle) error {
	if !(φ >= 0 && φ < math.Pi/2) {
		return &unit.RangeError{What: "friction angle", Got: φ.Deg(), Unit: "°", Want: "0° or more and less than 90°"}
	}
	if !(α > 0 && α+φ < math.Pi/2) {
		want := fmt.Sprintf("more than 0° and less than %.1f°", 90-φ.Deg())
		return &unit.RangeError{What: "wedge angle", Got: α.Deg(), Unit: "°", Want: want}
	}
	return nil
}

// DrivenPreload returns the pressure that a side force leaves on the joints.
//
//	p_pre = N / (t L)
//
//	N      side force of the wedge       N
//	t      thickness of the strips       m
//	L      length of the joints          m
//	p_pre  pressure on every joint       Pa
//
// Model: force spread evenly along the joint, no friction before the vacuum.
//
// Valid for N ≥ 0, t > 0, L > 0; outside it the error is a [*unit.RangeError].
//
// Source: definition of pressure.
func DrivenPreload(N unit.Force, t, L unit.Length) (unit.Pressure, error) {
	if err := unit.AtLeast("side force", N.Newtons(), 0, " N"); err != nil {
		return 0, err
	}
	if err := positive("thickness of the strips", t, "length of the joints", L); err != nil {
		return 0, err
	}
	return finite("preload", unit.Pressure(float64(N)/float64(t*L)))
}

// SqueezeOutRelief returns the preload that is lost when the joints of a panel
// close by what is squeezed out of them.
//
//	p_loss = E⊥ (n − 1) s / W
//
//	E⊥      stiffness of the strips across the grain    Pa
//	n       strips in the panel                         1
//	s       squeeze-out of one joint                    m
//	W       width of the panel                          m
//	p_loss  preload lost                                Pa
//
// Model: strips in series between fences that do not give.
//
// Valid for E⊥ ≥ 0, n ≥ 1, s ≥ 0, W > 0; outside it the error is a
// [*unit.RangeError].
//
// Source: Hooke's law; the 0.05 mm a joint that the engine takes is our estimate.
func SqueezeOutRelief(E unit.Stiffness, n float64, s, W unit.Length) (unit.Pressure, error) {
	if err := unit.AtLeast("strips", n, 1, ""); err != nil {
		return 0, err
	}
	if err := stiff(E); err != nil {
		return 0, err
	}
	if err := unit.AtLeast("squeeze-out", s.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	if err := unit.MoreThan("width of the panel", W.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	return finite("relief", unit.Pressure(float64(E)*(n-1)*float64(s/W)))
}

// OverfillPreload returns the pressure on the joints of strips that are sprung
// into an opening which they overfill.
//
//	p_pre = κ (δ / W) / (1/E⊥ + t / (W K_f))
//
//	κ      what creep leaves of the preload                    1
//	δ      overfill, strips together less the opening          m
//	W      width of the opening                                m
//	E⊥     stiffness of the strips across the grain            Pa
//	t      thickness of the strips                             m
//	K_f    stiffness of the fence for each metre of its length N/m²
//	p_pre  pressure on every joint                             Pa
//
// Model: strips and fence are springs in series; the panel lies flat.
//
// Valid for 0 ≤ κ ≤ 1, δ ≥ 0, W, E⊥, t, K_f > 0; outside it the error is a
// [*unit.RangeError].
//
// Source: Hooke's law, derived.
func OverfillPreload(κ float64, δ, W, t unit.Length, E, K_f unit.Stiffness) (unit.Pressure, error) {
	if !(κ >= 0 && κ <= 1) {
		return 0, &unit.RangeError{What: "share that creep leaves", Got: κ, Want: "from 0 to 1"}
	}
	if err := unit.AtLeast("overfill", δ.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	if err := positive("width of the opening", W, "thickness of the strips", t); err != nil {
		return 0, err
	}
	for _, e := range [...]unit.Stiffness{E, K_f} {
		if err := stiff(e); err != nil {
			return 0, err
		}
	}
	give := 1/float64(E) + float64(t)/float64(W)/float64(K_f)
	return finite("preload", unit.Pressure(κ*float64(δ/W)/give))
}

// positive refuses lengths that are not more than zero, named in pairs.
func positive(what1 string, l1 unit.Length, what2 string, l2 unit.Length) error {
	if err := unit.MoreThan(what1, l1.Millimetres(), 0, " mm"); err != nil {
		return err
	}
	return unit.MoreThan(what2, l2.Millimetres(), 0, " mm")
}

func stiff(E unit.Stiffness) error {
	return unit.MoreThan("stiffness", E.Gigapascals(), 0, " GPa")
}
