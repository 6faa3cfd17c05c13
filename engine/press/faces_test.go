package press_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// By hand, without friction or corner: 40 mm of bar turn with 40²/2 = 800 mm², faces
// meet it at 5 and 35 mm. 10 mm wide it can lean by 50 mm²: the upper face gets
// (800 − 200 ∓ 50)/30 = 18.333 or 21.667 of 40 mm, the other the rest, so at least
// 18.333/40.
func ExampleLeastShare_leaning() {
	k, err := press.LeastShare(press.Push{Covered: 0.040, Width: 0.010, Drag: 1}, press.Pair{Lower: 0.005, Upper: 0.035})
	fmt.Printf("%.4f %v\n", k, err)
	// Output: 0.4583 <nil>
}

// Different method: the film's push is summed strip by strip, the sled answers at
// one point under the bar, tried from its one edge to the other, and the two faces
// take what balances force and moment. The least of it is the share.
func TestLeastShare_balance(t *testing.T) {
	for _, c := range []struct{ h, b, r, μ, zl, zu, e float64 }{
		{31.75, 19.05, 3, 0.15, 3.175, 28.575, 0}, {28, 19.05, 0, 0.05, 3.175, 26.7, 3.75},
		{60, 12, 6, 0.3, 6, 50, 0}, {25, 40, 2, 0.1, 3, 20, 4}, {90, 5, 3, 0.2, 5, 30, 0},
	} {
		const n = 2000
		pushes, turns := -c.μ*(c.b+c.r), 0.0
		for i := range n {
			dy := (c.h - c.r) / n
			y := c.r + (float64(i)+0.5)*dy
			pushes += dy
			turns += y * dy
		}
		want := 0.5
		for i := range n + 1 {
			arm := c.b * (float64(i)/n - 0.5) // of the sled's answer, from under the bar's middle
			upper := (turns + c.b*arm - pushes*c.zl) / (c.zu - c.zl)
			want = math.Min(want, math.Min(pushes-upper, upper+c.e)/(pushes+c.e))
		}
		want = math.Max(0, want)
		mm := unit.Millimetres
		got, err := press.LeastShare(press.Push{Covered: mm(c.h), Width: mm(c.b), Corner: mm(c.r), Friction: c.μ, Drag: 1},
			press.Pair{Lower: mm(c.zl), Upper: mm(c.zu), Edge: mm(c.e)})
		if err != nil || math.Abs(got-want) > 1e-5 {
			t.Errorf("%+v: least share %g (%v), want %g", c, got, err, want)
		}
	}
}

// Law: faces that lie alike about the push share it evenly where nothing can lean,
// and the stouter the bar leans, the less the worse-off face gets.
func TestLeastShare_symmetry(t *testing.T) {
	at := press.Pair{Lower: 0.004, Upper: 0.036}
	last := 1.0
	for mm := range 60 {
		k, err := press.LeastShare(press.Push{Covered: 0.040, Width: unit.Millimetres(float64(mm)), Drag: 1}, at)
		if err != nil || mm == 0 && math.Abs(k-0.5) > 1e-12 || k > last || k > 0 && k == last {
			t.Fatalf("%d mm wide: %g after %g (%v)", mm, k, last, err)
		}
		last = k
	}
	if last != 0 {
		t.Errorf("at 59 mm %g is left, want nothing", last)
	}
	k, err := press.LeastShare(press.Push{Covered: 0.002, Width: 0.02, Corner: 0.003, Friction: 0.4, Drag: 1}, at)
	if k != 0 || err != nil {
		t.Errorf("a bar that friction holds shares %g (%v), want 0", k, err)
	}
}

func TestLeastShare_refuses(t *testing.T) {
	nan := math.NaN()
	good := press.Push{Covered: 0.04, Width: 0.02, Friction: 0.2, Drag: 1}
	for name, c := range map[string]struct {
		change func(*press.Push)
		at     press.Pair
	}{
		"no height":          {func(b *press.Push) { b.Covered = unit.Length(nan) }, press.Pair{Lower: 0.01, Upper: 0.03}},
		"negative width":     {func(b *press.Push) { b.Width = -1 }, press.Pair{Lower: 0.01, Upper: 0.03}},
		"no friction":        {func(b *press.Push) { b.Friction = nan }, press.Pair{Lower: 0.01, Upper: 0.03}},
		"faces in one plane": {func(*press.Push) {}, press.Pair{Lower: 0.03, Upper: 0.03}},
		"no place":           {func(*press.Push) {}, press.Pair{Lower: 0.01, Upper: unit.Length(nan)}},
	} {
		bar := good
		c.change(&bar)
		if _, err := press.LeastShare(bar, c.at); !errors.As(err, new(*unit.RangeError)) {
			t.Errorf("%s: %v, want a range error", name, err)
		}
	}
}
