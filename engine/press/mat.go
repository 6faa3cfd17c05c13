package press

import (
	"math"

	"presshand/engine/unit"
)

// MatStress returns the pressure σ at which a mat is squashed by the share ε.
//
//	σ = 3 σ25 ε / (1 − ε)
//
//	σ25  pressure at a quarter squash               Pa
//	ε    squash as a share of the thickness         1
//	σ    pressure; 0 where ε is below 0             Pa
//
// Model: foam, felt or rubber that stiffens as it fills; no creep, no gas kept
// in by a vacuum. Closed cells keep theirs in an evacuated press, squash less
// and bulge sideways.
//
// Valid for σ25 > 0, ε < 1; fits within 7 % from 25 to 60 % squash. Outside the
// signs the error is a [*unit.RangeError].
//
// Source: fitted to a published data sheet of a closed-cell polyethylene foam of
// 33 kg/m³, 40, 75, 115, 175 kPa at 25, 40, 50, 60 %, EN ISO 3386-1.
func MatStress(σ25 unit.Pressure, ε float64) (unit.Pressure, error) {
	if err := firm(σ25); err != nil {
		return 0, err
	}
	if !(ε < 1 && ε-ε == 0) {
		return 0, &unit.RangeError{What: "squash", Got: ε, Want: "less than 1"}
	}
	return finite("pressure on the mat", 3*σ25*unit.Pressure(max(0, ε)/(1-max(0, ε))))
}

// A Mat lies under a rigid sled or caul, on strips of two thicknesses.
type Mat struct {
	Thickness unit.Length   // m, as bought
	Firmness  unit.Pressure // σ25, at a quarter squash
	Spread    unit.Length   // d, thickest strips less thinnest
	Thin      float64       // φ, share of the area that is thin strips
}

// MatSquash returns how far the tallest strips squash a mat.
//
//	(1 − φ) σ(s/m) + φ σ((s − d)/m) = p
//
//	φ  share of thin strips                    1
//	m  thickness of the mat                    m
//	d  thickest strips less thinnest           m
//	p  pressure from above                     Pa
//	s  squash over the tallest strips          m
//
// Model: rigid sled that stays level, strips of two thicknesses, each part of
// the mat by itself after [MatStress].
//
// Valid for m > 0, d ≥ 0, 0 ≤ φ < 1, p ≥ 0; outside it the error is a
// [*unit.RangeError].
//
// Source: force balance, solved in closed form.
func MatSquash(p unit.Pressure, mat Mat) (unit.Length, error) {
	if err := matInputs(p, mat); err != nil {
		return 0, err
	}
	// k and q, together 1, are the shares of p and of 3 σ25 in their sum.
	sum := p + 3*mat.Firmness
	k, q := float64(p/sum), float64(3*mat.Firmness/sum)
	D, φ := float64(mat.Spread/mat.Thickness), mat.Thin
	if e := k / ((1-φ)*q + k); e <= D { // the thin strips are not touched yet
		return finite("squash of the mat", unit.Length(e)*mat.Thickness)
	}
	// (1 − φ) e/(1 − e) + φ (e − D)/(1 − e + D) = k/q is e² − B e + C = 0.
	B, C := q*(1+D)+k*(2+D), q*φ*D+k*(1+D)
	e := min(1, 2*C/(B+math.Sqrt(max(0, B*B-4*C))))
	return finite("squash of the mat", unit.Length(e)*mat.Thickness)
}

// MostHandedOn returns the firmness σ25 of a mat with which [MatLow] is greatest.
//
//	σ25 = p / (3 [(1 − φ) (1 + D)/(1 − D) + φ (1 − D)/(1 + D)])
//
//	p  pressure on the sled          Pa
//	φ  share of thin strips          1
//	D  d/m, the spread of thickness over the mat's  1
//	σ25  pressure at a quarter squash  Pa
//
// Model: as [MatLow]. A softer mat is squashed flat by the tall strips before the
// thin ones feel it, a firmer one does not reach down to them.
//
// Valid for p ≥ 0, 0 ≤ D < 1, 0 ≤ φ < 1; it returns NaN or zero elsewhere.
//
// Source: derived; p_low = p / ((1 − φ) B/A + φ) with A and B the squash over what
// is left of it for thin and tall, and B/A is least where the tall are squashed
// by (1 + D)/2 of the mat.
func MostHandedOn(p unit.Pressure, mat Mat) unit.Pressure {
	D, φ := float64(mat.Spread/mat.Thickness), mat.Thin
	k := (1 + D) / (1 - D)
	return p / unit.Pressure(3*((1-φ)*k+φ/k))
}

// MatLow returns the pressure that a mat hands on to the thinnest strips.
//
//	p_low = σ((s − d)/m)
//
//	s      squash over the tallest strips under the pressure p   m
//	d      thickest strips less thinnest         m
//	m      thickness of the mat                  m
//	p_low  pressure on the thinnest strips       Pa
//
// Model: as [MatSquash].
//
// Valid as [MatSquash]; outside it the error is a [*unit.RangeError].
//
// Source: [MatStress] at what [MatSquash] leaves for the thin strips.
func MatLow(p unit.Pressure, mat Mat) (unit.Pressure, error) {
	s, err := MatSquash(p, mat)
	if err != nil {
		return 0, err
	}
	return MatStress(mat.Firmness, float64((s-mat.Spread)/mat.Thickness))
}

func matInputs(p unit.Pressure, mat Mat) error {
	if err := unit.AtLeast("pressure", p.Kilopascals(), 0, " kPa"); err != nil {
		return err
	}
	if err := firm(mat.Firmness); err != nil {
		return err
	}
	if err := unit.MoreThan("thickness of the mat", mat.Thickness.Millimetres(), 0, " mm"); err != nil {
		return err
	}
	if err := unit.AtLeast("spread of thickness", mat.Spread.Millimetres(), 0, " mm"); err != nil {
		return err
	}
	if !(mat.Thin >= 0 && mat.Thin < 1) {
		return &unit.RangeError{What: "share of thin strips", Got: mat.Thin, Want: "0 or more and less than 1"}
	}
	return nil
}

func firm(σ25 unit.Pressure) error {
	return unit.MoreThan("firmness of the mat", σ25.Kilopascals(), 0, " kPa")
}
