package press_test

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// The curvatures of the reference table, worked out apart from this code; rows
// "de=0.001 h=10 mm m=… n=…".
func TestBilayerCurvature_reference(t *testing.T) {
	f, err := os.Open("../../testdata/reference/beam_plate_bilayer_checks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, line := range lines {
		if line[0] != "bilayer" || line[1] != "check" {
			continue
		}
		checked++
		var m, n float64
		for _, part := range strings.Fields(line[2]) {
			name, value, _ := strings.Cut(part, "=")
			switch v, _ := strconv.ParseFloat(value, 64); name {
			case "m":
				m = v
			case "n":
				n = v
			}
		}
		want, err := strconv.ParseFloat(line[3], 64)
		if err != nil || m == 0 || n == 0 {
			t.Fatalf("cannot read %q", line)
		}
		face := press.Ply{Thickness: unit.Millimetres(10 * m / (1 + m)), Stiffness: unit.Stiffness(n * 8e9)}
		back := press.Ply{Thickness: unit.Millimetres(10 / (1 + m)), Stiffness: 8e9}
		κ, err := press.BilayerCurvature(face, back, 0.001)
		if got := float64(κ) / 1000; err != nil || !(math.Abs(got-want) <= 1e-6*want) {
			t.Errorf("m = %g, n = %g: %.6e /mm (%v), want %.6e", m, n, got, err, want)
		}
	}
	if checked != 6 {
		t.Errorf("%d rows checked, want 6", checked)
	}
}

// A finite-element verification manual's bimetal: L 3000 mm, h 300 mm, strain
// 5e-6 · 50; the tip moves 5.625 mm = κ L²/2.
func TestBilayerCurvature_publishedBimetal(t *testing.T) {
	ply := press.Ply{Thickness: 0.15, Stiffness: 2e11}
	κ, err := press.BilayerCurvature(ply, ply, 5e-6*50)
	if tip := float64(κ) * 3000 * 3 / 2; err != nil || !(math.Abs(tip-5.625) <= 1e-9) {
		t.Errorf("tip moves %g mm (%v), want 5.625", tip, err)
	}
}

// A different method: two rods bonded together; force and moment must balance.
// Unknown are the strain e0 at the bond and κ; the stress at height z above the
// bond is E (e0 + κ z − ε), and its sum over the section, and its moment, vanish.
func TestBilayerCurvature_balance(t *testing.T) {
	for _, c := range []struct{ t1, t2, E1, E2 float64 }{
		{0.003, 0.0127, 1.6e9, 8e9}, {0.006, 0.006, 9e8, 3.5e9}, {0.02, 0.004, 7e8, 2.5e9}, {0.001, 0.019, 1e10, 2.5e9},
	} {
		const ε = 0.004
		A := c.E1*c.t1 + c.E2*c.t2
		B := (c.E1*c.t1*c.t1 - c.E2*c.t2*c.t2) / 2 // ply 1 above the bond
		D := (c.E1*c.t1*c.t1*c.t1 + c.E2*c.t2*c.t2*c.t2) / 3
		N, M := c.E1*c.t1*ε, c.E1*c.t1*c.t1*ε/2
		want := (A*M - B*N) / (A*D - B*B)
		κ, err := press.BilayerCurvature(
			press.Ply{Thickness: unit.Length(c.t1), Stiffness: unit.Stiffness(c.E1)},
			press.Ply{Thickness: unit.Length(c.t2), Stiffness: unit.Stiffness(c.E2)}, ε)
		if err != nil || !(math.Abs(float64(κ)-want) <= 1e-9*want) {
			t.Errorf("%+v: curvature %g /m (%v), balance wants %g", c, float64(κ), err, want)
		}
	}
}

// Nothing bends without a difference of strains; the sign follows it; told from
// the other ply the same bend has the other sign.
func TestBilayerCurvature_laws(t *testing.T) {
	a, b := press.Ply{Thickness: 0.004, Stiffness: 1e9}, press.Ply{Thickness: 0.012, Stiffness: 8e9}
	if κ, err := press.BilayerCurvature(a, b, 0); κ != 0 || err != nil {
		t.Errorf("no strain bends by %g (%v), want none", float64(κ), err)
	}
	up, _ := press.BilayerCurvature(a, b, 0.002)
	down, _ := press.BilayerCurvature(a, b, -0.002)
	swapped, _ := press.BilayerCurvature(b, a, -0.002)
	if up <= 0 || down != -up || !(math.Abs(float64(swapped+up)) <= 1e-12*float64(up)) {
		t.Errorf("bends %g, %g, %g; want the same up, down and, swapped, down", float64(up), float64(down), float64(swapped))
	}
}

func TestMostBent_denseSearch(t *testing.T) {
	for _, m := range []float64{0.1, 0.25, 1, 3} {
		core := press.Ply{Thickness: 0.01, Stiffness: 8e9}
		face := unit.Length(m * 0.01)
		best, at := 0.0, 0.0
		for x := -3.0; x <= 3; x += 0.0005 { // n from 1/1000 to 1000
			E := 8e9 * math.Pow(10, x)
			κ, err := press.BilayerCurvature(press.Ply{Thickness: face, Stiffness: unit.Stiffness(E)}, core, 0.001)
			if err != nil {
				t.Fatal(err)
			}
			if float64(κ) > best {
				best, at = float64(κ), E
			}
		}
		if got := float64(press.MostBent(face, core)); !(math.Abs(got/at-1) <= 0.002) {
			t.Errorf("m = %g: bent most at %g Pa, search finds %g", m, got, at)
		}
	}
}

func TestBilayerCurvature_refuses(t *testing.T) {
	ok := press.Ply{Thickness: 0.01, Stiffness: 8e9}
	nan := math.NaN()
	for _, bad := range []press.Ply{{0, 8e9}, {unit.Length(nan), 8e9}, {-1, 8e9}, {0.01, 0}, {0.01, unit.Stiffness(nan)}, {0.01, unit.Stiffness(math.Inf(1))}, {31, 8e9}} {
		for _, plies := range [][2]press.Ply{{bad, ok}, {ok, bad}} {
			var outside *unit.RangeError
			if κ, err := press.BilayerCurvature(plies[0], plies[1], 0.001); !errors.As(err, &outside) || κ != 0 {
				t.Errorf("%+v gives %g, %v; want a RangeError", plies, float64(κ), err)
			}
		}
	}
	for _, Δε := range []float64{nan, 1, math.Inf(-1)} {
		if κ, err := press.BilayerCurvature(ok, ok, Δε); err == nil || κ != 0 {
			t.Errorf("strain %g gives %g, want an error", Δε, float64(κ))
		}
	}
}

// m = 1, n = 1: κ = 1.5 Δε/h = 1.5 · 0.001/10 mm = 1.5e-4 /mm.
func ExampleBilayerCurvature_equalPlies() {
	ply := press.Ply{Thickness: unit.Millimetres(5), Stiffness: unit.Gigapascals(8)}
	κ, err := press.BilayerCurvature(ply, ply, 0.001)
	fmt.Printf("%.2e /mm %v\n", float64(κ)/1000, err)
	// Output: 1.50e-04 /mm <nil>
}

// A face half as thick as its core bends it most at four times its stiffness.
func ExampleMostBent_thinFace() {
	E := press.MostBent(unit.Millimetres(3), press.Ply{Thickness: unit.Millimetres(6), Stiffness: unit.Gigapascals(2)})
	fmt.Printf("%.1f GPa\n", E.Gigapascals())
	// Output: 8.0 GPa
}

func BenchmarkBilayerCurvature(b *testing.B) {
	ply := press.Ply{Thickness: 0.005, Stiffness: 8e9}
	for b.Loop() {
		if _, err := press.BilayerCurvature(ply, ply, 0.001); err != nil {
			b.Fatal(err)
		}
	}
}
