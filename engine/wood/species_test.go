package wood_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"presshand/engine/unit"
	"presshand/engine/wood"
)

// The table against the published values that it was made from, column by column.
func TestAll_publishedValues(t *testing.T) {
	published := rows(t, "wood.csv")
	if got := len(wood.All()); got != len(published) {
		t.Errorf("table has %d woods, want %d", got, len(published))
	}
	for _, row := range published {
		s, ok := wood.Find(row["name"])
		if !ok || s.Name != row["name"] || string(s.Group) != row["group"] {
			t.Errorf("%s: found %v, %q, %q", row["name"], ok, s.Name, s.Group)
			continue
		}
		crush := 0.0 // MPa; Table 5-5b has no such column
		if row["comp_perp_mpa"] != "" {
			crush = number(t, row["comp_perp_mpa"])
		}
		for _, v := range []struct {
			name      string
			got, want float64
		}{
			{"specific gravity", s.SpecificGravity, number(t, row["sg_12"])},
			{"E_L", s.Along.Gigapascals(), number(t, row["e_l_gpa"])},
			{"E_T/E_L", s.RatioTangential, number(t, row["et_el"])},
			{"E_R/E_L", s.RatioRadial, number(t, row["er_el"])},
			{"C_R", float64(s.Radial), number(t, row["c_r"])},
			{"C_T", float64(s.Tangential), number(t, row["c_t"])},
			{"crushing strength", s.Crush.Kilopascals() / 1000, crush},
		} {
			if !(math.Abs(v.got-v.want) <= 1e-9*math.Abs(v.want)) {
				t.Errorf("%s: %s is %g, want %g", s.Name, v.name, v.got, v.want)
			}
		}
		for _, also := range strings.Split(row["also"], ";") {
			if also == "" {
				continue
			}
			if by, ok := wood.Find(also); !ok || by.Name != s.Name {
				t.Errorf("%q finds %q, want %q", also, by.Name, s.Name)
			}
		}
	}
}

func TestAll_standings(t *testing.T) {
	known := []unit.Standing{unit.Seen, unit.Computed, unit.CommonPractice, unit.FromMemory, unit.Estimate}
	for _, s := range wood.All() {
		for _, standing := range []unit.Standing{s.StrengthStanding, s.RatioStanding, s.MovementStanding} {
			if !slices.Contains(known, standing) {
				t.Errorf("%s: standing is %q, want one of %q", s.Name, standing, known)
			}
		}
	}
	for name, want := range map[string]unit.Standing{
		"walnut": unit.Seen, "longleaf pine": unit.FromMemory, "beech": unit.Computed, "white pine": unit.FromMemory,
	} {
		if s, _ := wood.Find(name); s.RatioStanding != want {
			t.Errorf("ratios of %s are %q, want %q", name, s.RatioStanding, want)
		}
	}
}

// C = 1/(3000/S − 20) ties movement to the shrinkage S from green to ovendry, in
// per cent, for single domestic species; Wood Handbook ch. 13. S: Table 4-3, of
// sapele Table 4-4. It does not hold for the rows of a group of species.
func TestMovement_handbookIdentity(t *testing.T) {
	for _, w := range []struct {
		name               string
		radial, tangential float64
	}{
		{"cherry", 3.7, 7.1}, {"hard maple", 4.8, 9.9}, {"walnut", 5.5, 7.8}, {"yellow birch", 7.3, 9.5}, {"sapele", 4.6, 7.4},
	} {
		s, ok := wood.Find(w.name)
		if !ok {
			t.Fatalf("no %s in the table", w.name)
		}
		for _, d := range []struct {
			S float64
			C wood.Movement
		}{{w.radial, s.Radial}, {w.tangential, s.Tangential}} {
			if want := 1 / (3000/d.S - 20); !(math.Abs(float64(d.C)-want) <= 0.5e-5) { // printed to five places
				t.Errorf("%s: shrinkage %g %% means %.5f, table has %.5f", w.name, d.S, want, float64(d.C))
			}
		}
	}
}

func TestFind_wholeNamesOnly(t *testing.T) {
	for _, name := range []string{"hoop pine", "tassie oak", "blackbutt", "", " ", "mapl", "oak red", "silky oak", "hardwood"} {
		if s, ok := wood.Find(name); ok {
			t.Errorf("%q finds %q, want nothing", name, s.Name)
		}
	}
}

func TestFind_spelling(t *testing.T) {
	for name, want := range map[string]string{
		"Sugar  Maple": "hard maple", "DOUG FIR": "douglas-fir", "douglas‑fir": "douglas-fir", "western red-cedar": "western redcedar",
		"yellow-poplar": "poplar", "black walnut": "walnut",
	} {
		if s, ok := wood.Find(name); !ok || s.Name != want {
			t.Errorf("%q finds %q, want %q", name, s.Name, want)
		}
	}
}

// No name may stand for two woods: the later row would win without a word.
func TestNames_unambiguous(t *testing.T) {
	owner := map[string]string{}
	for _, s := range wood.All() {
		for _, name := range slices.Concat([]string{s.Name}, s.Also, s.Loosely) {
			if other, taken := owner[name]; taken {
				t.Errorf("%q is both %s and %s", name, other, s.Name)
			}
			owner[name] = s.Name
		}
	}
	names := wood.Names()
	for name, want := range owner {
		if names[name] != want {
			t.Errorf("Names has %q for %q, want %q", names[name], name, want)
		}
	}
	for name, want := range names {
		if s, ok := wood.Find(name); !ok || s.Name != want {
			t.Errorf("Names has %q for %q, Find has %q", want, name, s.Name)
		}
	}
}

func TestIsLoose_widerNames(t *testing.T) {
	for name, want := range map[string]bool{"maple": true, "Oak": true, "fir": true, "hard maple": false, "walnut": false, "no wood": false} {
		if got := wood.IsLoose(name); got != want {
			t.Errorf("%q is loose: %v, want %v", name, got, want)
		}
	}
}

// The default's ratios are the mean of the hardwoods that have ratios of their
// own, African mahogany left out; its movement is the mean of all hardwoods.
func TestDefault_groupMean(t *testing.T) {
	var et, er, n, cr, ct, all float64
	for _, row := range rows(t, "wood.csv") {
		if row["group"] != "hardwood" {
			continue
		}
		cr, ct, all = cr+number(t, row["c_r"]), ct+number(t, row["c_t"]), all+1
		if row["ratios_seen"] == "yes" && row["name"] != "african mahogany" {
			et, er, n = et+number(t, row["et_el"]), er+number(t, row["er_el"]), n+1
		}
	}
	if n != 12 || all != 23 {
		t.Fatalf("%g hardwoods with ratios of %g, want 12 of 23", n, all)
	}
	d := wood.Default()
	for _, v := range []struct{ got, want, within float64 }{
		{d.RatioTangential, et / n, 0.0005}, {d.RatioRadial, er / n, 0.0005},
		{float64(d.Radial), cr / all, 1e-12}, {float64(d.Tangential), ct / all, 1e-12},
		{d.Along.Gigapascals(), 12.5, 1e-12}, {d.SpecificGravity, 0.60, 1e-12},
	} {
		if !(math.Abs(v.got-v.want) <= v.within) {
			t.Errorf("default has %g, want %g", v.got, v.want)
		}
	}
}

// By hand, cherry: E_T = 11.3 · 0.086 = 0.9718 and E_R = 11.3 · 0.197 = 2.2261
// GPa. Flat sawn 0.78 and 1.22 times the one; the cut unsaid, rings at 45° are
// the softest: 0.78 · 0.6 · 0.9718 = 0.4548, mean 1.5990, 1.22 · 2.2261 = 2.7158.
func TestSpecies_across(t *testing.T) {
	cherry, _ := wood.Find("cherry")
	fir, _ := wood.Find("douglas-fir")
	for _, c := range []struct {
		s              wood.Species
		cut            wood.Cut
		low, mid, high float64
	}{
		{cherry, wood.Flat, 0.7580, 0.9718, 1.1856},
		{cherry, wood.Quarter, 1.7364, 2.2261, 2.7158},
		{cherry, wood.Unsaid, 0.4548, 1.5990, 2.7158},
		{fir, wood.Unsaid, 0.1442, 0.8726, 1.2270}, // 14.79 · 0.050 = 0.7395 and · 0.068 = 1.0057; a softwood: 0.25
	} {
		r := c.s.Across(c.cut)
		for _, v := range [][2]float64{{r.Low.Gigapascals(), c.low}, {r.Mid.Gigapascals(), c.mid}, {r.High.Gigapascals(), c.high}} {
			if !(math.Abs(v[0]-v[1]) <= 1e-4) {
				t.Errorf("%s %q: %.4f GPa, want %.4f", c.s.Name, c.cut, v[0], v[1])
			}
		}
	}
}

func TestSpecies_rangesInOrder(t *testing.T) {
	for _, s := range append(wood.All(), wood.Default()) {
		for _, cut := range []wood.Cut{wood.Unsaid, wood.Flat, wood.Quarter} {
			if r := s.Across(cut); !(0 < r.Low && r.Low < r.Mid && r.Mid < r.High) {
				t.Errorf("%s %q: stiffness %v out of order", s.Name, cut, r)
			}
			if r := s.Moves(cut); !(0 < r.Low && r.Low <= r.Mid && r.Mid <= r.High) {
				t.Errorf("%s %q: movement %v out of order", s.Name, cut, r)
			}
		}
		if r := s.AlongRange(); !(r.Low == 0.78*s.Along && r.Mid == s.Along && r.High == 1.22*s.Along) {
			t.Errorf("%s: stiffness along is %v, want 0.78, 1 and 1.22 of %v", s.Name, r, s.Along)
		}
	}
}

func ExampleFind_alias() {
	s, ok := wood.Find("rock maple")
	fmt.Println(s.Name, s.Group, ok)
	_, ok = wood.Find("hoop pine")
	fmt.Println(ok)
	// Output:
	// hard maple hardwood true
	// false
}
