package press

import (
	"math"

	"presshand/engine/unit"
)

// IdealSidePressure returns what a shop quotes for the pressure on edge joints.
//
//	p_ideal = p H / t
//
//	p        vacuum                            Pa
//	H        height of the bar                 m
//	t        thickness of the strips           m
//	p_ideal  pressure on every joint           Pa
//
// Model: the film pushes the bar over its whole height, none of it is lost to
// friction, and nothing presses the bar's inner face.
//
// Valid for p ≥ 0, H ≥ 0, t > 0; outside it the error is a [*unit.RangeError].
//
// Source: force balance of a bar on a frictionless sled.
func IdealSidePressure(p unit.Pressure, H, t unit.Length) (unit.Pressure, error) {
	if err := sideInputs(p, t, H); err != nil {
		return 0, err
	}
	return finite("side pressure", p*unit.Pressure(H/t))
}

// SureContact is how much of the strips' edge a bar must overlap to pass its push on
// (our estimate): edges are eased, beds and films are not flat.
const SureContact unit.Length = 0.003

// CoveredHeight returns the height h of a bar on which the film's push is not
// balanced by the film on the other side.
//
//	h = max(t, min(H, c))                      where H > u
//	h = t                                      where H ≤ u
//	h ≤ max(t, t + u (H − u) / a)              where H < u + a
//
//	H  height of the bar                                               m
//	c  height above the bar's foot up to which something rigid stands
//	   behind the bar and keeps the film off                           m
//	t  thickness of the strips                                         m
//	u  height of the strips' underside above the bar's foot            m
//	a  overlap that is sure to pass the push on, min(t, 3 mm)          m
//	h  covered height                                                  m
//
// Model: film lies on every face that it can reach and presses it square. Where
// the bar stands above the work with film down its inner face, that height
// pushes outward as hard as inward. A bar whose top is under the strips does not
// touch them, and their whole edge is pressed by the film itself. Of one that ends
// part-way up them no more than its own height is counted, which is less than
// [PressedHeight]; one that hardly overlaps them counts in proportion. What the film's
// tension carries over the inner corner is left out: a film draped in a
// simulation gave h = c within 2 %.
//
// Valid for H, c, u ≥ 0, t > 0; outside it the error is a [*unit.RangeError].
//
// Source: free body of the bar with its film; the overlap is our estimate.
func CoveredHeight(H, c, t, u unit.Length) (unit.Length, error) {
	if err := sideInputs(0, t, H, c, u); err != nil {
		return 0, err
	}
	h := min(H, c)
	if a := min(t, SureContact); H < u+a {
		h = min(h, t+u*(H-u)/a)
	}
	return max(t, h), nil
}

// PressedHeight returns the height f of a bar and of the strips' edge above it on
// which the film's push is not balanced by the film on the other side.
//
//	f = max(t, min(H, c) + max(0, u + t − H))   where H > u
//	f = t                                       where H ≤ u
//
//	H, c, t, u  as in [CoveredHeight]                             m
//	f           height pressed, what the contact carries or not   m
//
// Model: as [CoveredHeight]; where the bar ends part-way up the strips the film
// presses the rest of their edge by itself.
//
// Valid for H, c, u ≥ 0, t > 0; outside it the error is a [*unit.RangeError].
//
// Source: free body of the bar and the strips' edge with their film.
func PressedHeight(H, c, t, u unit.Length) (unit.Length, error) {
	if err := sideInputs(0, t, H, c, u); err != nil {
		return 0, err
	}
	if H <= u {
		return t, nil
	}
	return max(t, min(H, c)+max(0, u+t-H)), nil
}

// HoldingWidth returns the width b' of a bar that ends part-way up the strips whose
// friction the joints have to bear.
//
//	b' = min(b, [h − t + max(0, min(μ b − (f − t), d))] / μ)
//
//	b   width of the bar                           m
//	h   covered height, [CoveredHeight]            m
//	f   pressed height, [PressedHeight]            m
//	t   thickness of the strips                    m
//	d   height of their edge that the bar hides    m
//	μ   friction under the bar                     1
//	b'  width that holds back                      m
//
// Model: the film presses the edge above the bar whether the bar moves or not, so the
// joints get no less than the bare edge would: less only where friction holds the
// bar fast, by what it hides.
//
// Valid for all from 0, t > 0; outside it the error is a [*unit.RangeError].
//
// Source: force balance of the strips with a bar that moves and with one that does not.
func HoldingWidth(b, h, f, t, d unit.Length, μ float64) (unit.Length, error) {
	if err := sideInputs(0, t, b, h, f, d); err != nil {
		return 0, err
	}
	if err := unit.AtLeast("friction", μ, 0, ""); err != nil {
		return 0, err
	}
	loss := unit.Length(μ) * b
	most := max(0, h-t) + max(0, min(loss-(f-t), d))
	if loss <= most {
		return b, nil
	}
	return finite("width that holds back", most/unit.Length(μ))
}

// TippingLimit returns the greatest covered height h at which a bar still does
// not tip over the joint.
//
//	h = (H² + b²) / (2 max(z, H − z))
//
//	H  height of the bar                                        m
//	b  width of the bar                                         m
//	z  height of the strips' middle above the bar's foot        m
//	h  covered height at which tipping begins                   m
//
// Model: film pushes evenly on the outer face and on the top, the strips answer
// at their mid-height. What they do not take leans on the bar's inner edge, at
// its top where the strips stand low and at its foot where they stand high.
//
// Valid for H > 0, b ≥ 0, 0 ≤ z ≤ H; a z beyond is taken as it comes. Outside
// it the error is a [*unit.RangeError].
//
// Source: moments about the edges of the bar.
func TippingLimit(H, b, z unit.Length) (unit.Length, error) {
	if err := unit.MoreThan("height of the bar", H.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	if err := sideInputs(0, 1, b, z); err != nil {
		return 0, err
	}
	return finite("height that tips", (H*H+b*b)/(2*max(z, H-z)))
}

// A Push is a bar under film: what drives the strips and what holds it back.
type Push struct {
	Covered  unit.Length // height h that the film pushes unbalanced
	Width    unit.Length // width b that the film presses onto the sled
	Corner   unit.Length // height r that the film bridges at the bar's foot
	Friction float64     // μ under bar and strips
	Drag     float64     // faces of the strips that rub: 1, or 2 under a caul that cannot move along
}

// JointPressure returns the pressure that the joint at a distance x from the
// bar surely gets.
//
//	p_joint = max(0, p [(h − r) − μ (b + r) − k μ x]) / t
//
//	p        vacuum                                          Pa
//	h        covered height                                  m
//	r        corner that the film bridges at the bar's foot  m
//	b        width of the bar                                m
//	μ        friction under bar and strips                   1
//	k        faces of the strips that rub, 1 or 2            1
//	x        distance from the bar's inner face              m
//	t        thickness of the strips                         m
//	p_joint  pressure on the joint                           Pa
//
// Model: the vacuum that pushes the bar also presses bar and strips onto the
// sled; Coulomb friction on rigid strips, used up to its limit. It need not be,
// so the truth lies between this and p h / t.
//
// Valid for p, h, r, b, x ≥ 0, μ ≥ 0, t > 0; outside it the error is a
// [*unit.RangeError].
//
// Source: horizontal force balance of the bar and the strips up to x.
func JointPressure(p unit.Pressure, bar Push, x, t unit.Length) (unit.Pressure, error) {
	if err := sideInputs(p, t, bar.Covered, bar.Width, bar.Corner, x); err != nil {
		return 0, err
	}
	if err := bar.rubs(); err != nil {
		return 0, err
	}
	μ := unit.Length(bar.Friction)
	net := (bar.Covered - bar.Corner) - μ*(bar.Width+bar.Corner) - unit.Length(bar.Drag)*μ*x
	return finite("pressure of a joint", p*unit.Pressure(max(0, net)/t))
}

// BarReach returns the distance from the bar at which friction has used up its
// push; beyond it only a preload and a hand-tight fit hold a joint.
//
//	x_reach = max(0, [(h − r) − μ (b + r)] / (k μ))
//
//	h        covered height                                  m
//	r        corner that the film bridges at the bar's foot  m
//	b        width of the bar                                m
//	μ        friction under bar and strips                   1
//	k        faces of the strips that rub, 1 or 2            1
//	x_reach  distance from the bar's inner face              m
//
// Model: as [JointPressure].
//
// Valid for h, r, b ≥ 0, k μ > 0; outside it the error is a [*unit.RangeError].
//
// Source: zero of [JointPressure].
func BarReach(bar Push) (unit.Length, error) {
	if err := sideInputs(0, 1, bar.Covered, bar.Width, bar.Corner); err != nil {
		return 0, err
	}
	if err := bar.rubs(); err != nil {
		return 0, err
	}
	if err := unit.MoreThan("friction", bar.Friction*bar.Drag, 0, ""); err != nil {
		return 0, err
	}
	μ := unit.Length(bar.Friction)
	net := (bar.Covered - bar.Corner) - μ*(bar.Width+bar.Corner)
	return finite("reach of the bar", max(0, net/(unit.Length(bar.Drag)*μ)))
}

// BarWidthAgainstTipping returns the least width b at which a bar of covered
// height h does not tip.
//
//	b = √(max(0, 2 h max(z, H − z) − H²))
//
//	H  height of the bar                                   m
//	h  covered height                                      m
//	z  height of the strips' middle above the bar's foot   m
//	b  width of the bar                                    m
//
// Model: as [TippingLimit].
//
// Valid for H, h, z ≥ 0; outside it the error is a [*unit.RangeError].
//
// Source: [TippingLimit] solved for b.
func BarWidthAgainstTipping(H, h, z unit.Length) (unit.Length, error) {
	if err := sideInputs(0, 1, H, h, z); err != nil {
		return 0, err
	}
	return finite("width of the bar", unit.Length(math.Sqrt(max(0, float64(2*h*max(z, H-z)-H*H)))))
}

// rubs refuses a friction that cannot be.
func (bar Push) rubs() error {
	if err := unit.AtLeast("friction", bar.Friction, 0, ""); err != nil {
		return err
	}
	return unit.AtLeast("faces that rub", bar.Drag, 0, "")
}

// sideInputs refuses a vacuum or lengths below zero and strips of no thickness.
func sideInputs(p unit.Pressure, t unit.Length, lengths ...unit.Length) error {
	if err := unit.AtLeast("vacuum", p.Kilopascals(), 0, " kPa"); err != nil {
		return err
	}
	if err := unit.MoreThan("thickness of the strips", t.Millimetres(), 0, " mm"); err != nil {
		return err
	}
	for _, l := range lengths {
		if err := unit.AtLeast("length", l.Millimetres(), 0, " mm"); err != nil {
			return err
		}
	}
	return nil
}
