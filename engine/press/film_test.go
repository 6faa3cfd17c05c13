package press_test

import (
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// A point of the film's path in a cross-section, x towards the panel, y up.
type point struct{ x, y float64 }

// arc appends points along a quarter circle.
func arc(path []point, cx, cy, r, from, to float64) []point {
	const n = 400
	for i := range n + 1 {
		a := (from + (to-from)*float64(i)/n) * math.Pi / 180
		path = append(path, point{cx + r*math.Cos(a), cy + r*math.Sin(a)})
	}
	return path
}

// push sums the air's pressure over the film's path, from outside the bar over
// its top to the panel, and the film's own tension p r where it is cut on the bed
// and on what it lies on inside. Sideways, towards the panel; and down.
func push(p, rFoot, rInside float64, path []point) (sideways, down float64) {
	for i := 1; i < len(path); i++ {
		dx, dy := path[i].x-path[i-1].x, path[i].y-path[i-1].y
		sideways += p * dy
		down += p * dx
	}
	return sideways - p*rFoot + p*rInside, down
}

// The film hugs a bar of height H and width b: up from the bed over a bridged
// corner of radius r, along the top, and down the inner face to what stands
// behind it at height c, over an inner corner of radius q.
func drape(H, b, c, r, q float64) []point {
	path := arc(nil, -r, r, r, 270, 360)
	path = append(path, point{0, H}, point{b, H})
	if c < H {
		path = arc(path, b+q, c+q, q, 180, 270)
	}
	return path
}

// Over its whole path the film pushes the bar by p (h − r) and presses it and
// the corner down by p (b + r), with h the covered height: bare, half covered and
// covered. An inner corner that the film bridges takes nothing away: its
// tension pulls the other way just as much more.
func TestCoveredHeight_pushOfTheFilm(t *testing.T) {
	const p, b, thick = 80e3, 0.019, 0.006
	for _, H := range []float64{0.025, 0.050} {
		for _, r := range []float64{0, 0.003} {
			for name, c := range map[string]float64{"bare": thick, "half covered": H / 2, "covered": H} {
				h, err := press.CoveredHeight(unit.Length(H), unit.Length(c), thick, 0)
				if err != nil {
					t.Fatal(err)
				}
				sideways, down := push(p, r, 0, drape(H, b, c, r, 0))
				if want := p * (float64(h) - r); math.Abs(sideways-want) > 1e-6*p*H {
					t.Errorf("%s, H %g r %g: film pushes %g N/m, want %g", name, H, r, sideways, want)
				}
				if want := p * (b + r); math.Abs(down-want) > 1e-6*p*H {
					t.Errorf("%s, H %g r %g: film presses down %g N/m, want %g", name, H, r, down, want)
				}
				if c >= H {
					continue
				}
				if rounded, _ := push(p, r, 0.002, drape(H, b, c, r, 0.002)); rounded < sideways-1e-6*p*H {
					t.Errorf("%s, H %g: an inner corner lowers the push from %g to %g N/m", name, H, sideways, rounded)
				}
			}
		}
	}
}

// A chain is a bar and strips in a row on a sled, springs between them and to the
// fence.
type chain struct {
	p, t, h, b, r, μ, w float64
	strips              int
}

const (
	chainSpring = 5e7 // N/m of each joint and of the fence, for each m of length
	chainSteps  = 400 // in which the vacuum is drawn
)

// settle draws the vacuum step by step, each body moving until friction can hold
// it, and returns the force behind each body; the last is the fence's.
func (c chain) settle() func(i int) float64 {
	x := make([]float64, c.strips+1) // displacement of the bar and the strips
	sticks := func(i int) float64 {
		if i == 0 {
			return c.μ * (c.b + c.r)
		}
		return c.μ * c.w
	}
	force := func(i int) float64 {
		if i == c.strips {
			return chainSpring * x[i]
		}
		return math.Max(0, chainSpring*(x[i]-x[i+1]))
	}
	for s := 1; s <= chainSteps; s++ {
		q := c.p * float64(s) / chainSteps
		for range 4000 {
			most := 0.0
			for i := range x {
				drive := q * (c.h - c.r)
				if i > 0 {
					drive = force(i - 1)
				}
				net, limit := drive-force(i), q*sticks(i)
				if over := math.Abs(net) - limit; over > 0 {
					x[i] += math.Copysign(over, net) / (2.5 * chainSpring)
					most = math.Max(most, over)
				}
			}
			if most < 1e-3 {
				break
			}
		}
	}
	return force
}

// What the springs of a chain carry once the vacuum is drawn, Coulomb friction
// under each body, is the pressure of the formula: with few strips and many, on
// slippery and on rough, with a bar that reaches them all and one that does not.
func TestJointPressure_simulatedChain(t *testing.T) {
	for _, c := range []chain{
		{85e3, 0.010, 0.060, 0.019, 0.003, 0.2, 0.040, 5},
		{60e3, 0.019, 0.040, 0.019, 0, 0.1, 0.055, 4},
		{90e3, 0.006, 0.025, 0.030, 0.006, 0.4, 0.025, 4},
		{80e3, 0.012, 0.100, 0.025, 0.003, 0.3, 0.030, 8},
		{70e3, 0.008, 0.030, 0.019, 0.002, 0.65, 0.020, 3},
		{85e3, 0.020, 0.050, 0.040, 0.010, 0.05, 0.080, 6},
	} {
		force := c.settle()
		bar := press.Push{Covered: unit.Length(c.h), Width: unit.Length(c.b), Corner: unit.Length(c.r), Friction: c.μ, Drag: 1}
		for i := 1; i < c.strips; i++ {
			want, err := press.JointPressure(unit.Pressure(c.p), bar, unit.Length(float64(i)*c.w), unit.Length(c.t))
			if got := force(i) / c.t; err != nil || math.Abs(got-float64(want)) > 0.02*float64(want)+10 {
				t.Errorf("%+v joint %d: chain %g Pa, formula %g (%v)", c, i, got, float64(want), err)
			}
		}
	}
}
