package glue_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"presshand/engine/glue"
	"presshand/engine/unit"
)

func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s has %d lines, %v; want a heading and rows", name, len(lines), err)
	}
	var all []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, heading := range lines[0] {
			row[heading] = line[i]
		}
		all = append(all, row)
	}
	return all
}

// The table against the compiled values that it was made from, column by column.
func TestAll_publishedValues(t *testing.T) {
	published := rows(t, "glue.csv")
	if got := len(glue.All()); got != len(published) {
		t.Errorf("table has %d classes, want %d", got, len(published))
	}
	for _, row := range published {
		c, ok := glue.Find(row["class"])
		if !ok || c.Name != row["class"] || c.WaterBased != (row["water_based"] == "yes") {
			t.Errorf("%s: found %v, %q, water based %v", row["class"], ok, c.Name, c.WaterBased)
			continue
		}
		for _, v := range []struct {
			column string
			got    float64
		}{
			{"spread_low_gm2", float64(c.Spread.Low) * 1000}, {"spread_mid_gm2", float64(c.Spread.Mid) * 1000}, {"spread_high_gm2", float64(c.Spread.High) * 1000},
			{"open_min_low", c.Open.Low.Minutes()}, {"open_min_high", c.Open.High.Minutes()},
			{"closed_min_low", c.Closed.Low.Minutes()}, {"closed_min_mid", c.Closed.Mid.Minutes()}, {"closed_min_high", c.Closed.High.Minutes()},
			{"press_min_low", c.Press.Low.Minutes()}, {"press_min_mid", c.Press.Mid.Minutes()}, {"press_min_high", c.Press.High.Minutes()},
			{"min_temp_c", c.Lowest.Celsius()}, {"gap_max_mm", c.Gap.Millimetres()},
		} {
			want, err := strconv.ParseFloat(row[v.column], 64)
			if err != nil || !(math.Abs(v.got-want) <= 1e-9*want) {
				t.Errorf("%s: %s is %g, want %g (%v)", c.Name, v.column, v.got, want, err)
			}
		}
		for _, also := range strings.Split(row["also"], ";") {
			if by, ok := glue.Find(also); also != "" && (!ok || by.Name != c.Name) {
				t.Errorf("%q finds %q, want %q", also, by.Name, c.Name)
			}
		}
	}
}

func TestAll_standings(t *testing.T) {
	known := []unit.Standing{unit.Seen, unit.FromMemory, unit.Estimate}
	for _, c := range glue.All() {
		for _, s := range []unit.Standing{c.SpreadStanding, c.OpenStanding, c.ClosedStanding, c.PressStanding, c.LowestStanding, c.GapStanding} {
			if !slices.Contains(known, s) {
				t.Errorf("%s: standing is %q, want one of %q", c.Name, s, known)
			}
		}
	}
	pva, _ := glue.Find("pva")
	mu, _ := glue.Find("melamine-urea")
	if pva.PressStanding != unit.Seen || mu.ClosedStanding != unit.FromMemory {
		t.Errorf("press of pva %q, closed of melamine-urea %q; want seen, from memory", pva.PressStanding, mu.ClosedStanding)
	}
}

// No name may stand for two classes: the later row would win without a word.
func TestNames_unambiguous(t *testing.T) {
	owner := map[string]string{}
	for _, c := range glue.All() {
		for _, name := range append([]string{c.Name}, c.Also...) {
			if other, taken := owner[name]; taken {
				t.Errorf("%q is both %s and %s", name, other, c.Name)
			}
			owner[name] = c.Name
		}
	}
	names := glue.Names()
	for name, want := range owner {
		if names[name] != want {
			t.Errorf("Names has %q for %q, want %q", names[name], name, want)
		}
	}
	for name, want := range names {
		if c, ok := glue.Find(name); !ok || c.Name != want {
			t.Errorf("Names has %q for %q, Find has %q", want, name, c.Name)
		}
	}
}

func TestFind_wholeNames(t *testing.T) {
	for name, want := range map[string]string{
		"Yellow Glue": "aliphatic", "type II PVA": "pva", "D4": "crosslinked-pva", "carpenter’s glue": "aliphatic",
		"hide glue": "hot-hide", "liquid hide glue": "liquid-hide", "uf powder": "urea-formaldehyde",
		"hot melt": "", "glue": "", "": "", "super glue": "",
	} {
		if c, ok := glue.Find(name); ok != (want != "") || c.Name != want {
			t.Errorf("%q finds %q, want %q", name, c.Name, want)
		}
	}
}

func TestAll_inOrder(t *testing.T) {
	for _, c := range glue.All() {
		if s := c.Spread; !(0 < s.Low && s.Low <= s.Mid && s.Mid <= s.High) {
			t.Errorf("%s: spread %v out of order", c.Name, s)
		}
		for _, r := range []unit.Range[unit.Time]{c.Open, c.Closed, c.Press} {
			if !(0 < r.Low && r.Low <= r.Mid && r.Mid <= r.High) {
				t.Errorf("%s: times %v out of order", c.Name, r)
			}
		}
	}
}

// Advice for clamps, 100 psi of softwood and 175 psi of hardwood: 690 and 1205
// kPa; half way, at 0.515, half way: 947.5 kPa.
func TestFull_line(t *testing.T) {
	pva, _ := glue.Find("pva")
	for G, want := range map[float64]float64{0.1: 690, 0.40: 690, 0.515: 947.5, 0.63: 1205, 0.9: 1205, 0: 690, math.NaN(): 690, math.Inf(1): 1205} {
		if got := glue.Full(pva, G).Kilopascals(); !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("specific gravity %g wants %g kPa, want %g", G, got, want)
		}
	}
	if low, high := unit.PoundsPerSquareInch(100).Kilopascals(), unit.PoundsPerSquareInch(175).Kilopascals(); math.Abs(low-690) > 1 || math.Abs(high-1205) > 2 {
		t.Errorf("100 and 175 psi are %.0f and %.0f kPa, want about 690 and 1205", low, high)
	}
}

func TestContact_neverAboveFull(t *testing.T) {
	for _, c := range glue.All() {
		for G := 0.05; G < 1.3; G += 0.01 {
			if contact, full := glue.Contact(c), glue.Full(c, G); !(0 < contact && contact < full) {
				t.Errorf("%s at %.2f: contact %g kPa, full %g", c.Name, G, contact.Kilopascals(), full.Kilopascals())
			}
		}
	}
}

// Ten degrees colder, twice the time, between 10 and 35 °C; outside, no more.
func TestTemperatureFactor_laws(t *testing.T) {
	pva, _ := glue.Find("pva")
	at := func(T float64) float64 {
		k, err := glue.TemperatureFactor(pva, unit.Celsius(T))
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	for T := 20.0; T <= 35; T += 0.5 {
		if cold, warm := at(T-10), at(T); !(math.Abs(cold/warm-2) <= 1e-12) {
			t.Errorf("from %g to %g °C the time goes by %g, want 2", T, T-10, cold/warm)
		}
	}
	if at(20) != 1 || at(-300) != at(10) || at(1e9) != at(35) || at(math.Inf(1)) != at(35) {
		t.Errorf("factors %g, %g, %g; want 1, that of 10 °C, that of 35 °C", at(20), at(-300), at(1e9))
	}
	if k, err := glue.TemperatureFactor(pva, unit.Temperature(math.NaN())); err == nil || k != 0 {
		t.Errorf("no number gives %g, want an error", k)
	}
	hide, _ := glue.Find("hot-hide")
	for T := 0.0; T < 40; T++ {
		if k, err := glue.TemperatureFactor(hide, unit.Celsius(T)); k != 1 || err != nil {
			t.Errorf("hot hide at %g °C goes by %g, want 1", T, k)
		}
	}
}

func TestFilmFactor_waterOnly(t *testing.T) {
	for _, c := range glue.All() {
		edge, face := glue.FilmFactor(c, false), glue.FilmFactor(c, true)
		switch {
		case !c.WaterBased && (edge != unit.Exactly(1.0) || face != edge):
			t.Errorf("%s has no water to keep in, goes by %v and %v", c.Name, edge, face)
		case c.WaterBased && (edge != unit.Around(1.0, 1.5, 2.0) || face != unit.Around(2.0, 3.0, 4.0)):
			t.Errorf("%s goes by %v and %v, want 1, 1.5, 2 and 2, 3, 4", c.Name, edge, face)
		}
	}
}

func TestAmount_refuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, x := range []float64{nan, inf, -1, 0, 31} {
		l := unit.Length(x)
		for name, call := range map[string]func() (unit.Area, error){
			"thickness":   func() (unit.Area, error) { return glue.EdgeArea(1, 5, l, 1) },
			"length":      func() (unit.Area, error) { return glue.EdgeArea(1, 5, 0.02, l) },
			"width":       func() (unit.Area, error) { return glue.FaceArea(1, 1, l, 1) },
			"face length": func() (unit.Area, error) { return glue.FaceArea(1, 1, 1, l) },
		} {
			if a, err := call(); err == nil || a != 0 {
				t.Errorf("%s of %g gives %g m², want an error", name, x, float64(a))
			}
		}
		if x != 31 {
			if m, err := glue.Mass(unit.Spread(x), 1); err == nil || m != 0 {
				t.Errorf("spread of %g gives %g kg, want an error", x, float64(m))
			}
		}
	}
	for _, A := range []float64{nan, inf, -1} {
		if m, err := glue.Mass(0.2, unit.Area(A)); err == nil || m != 0 {
			t.Errorf("area of %g gives %g kg, want an error", A, float64(m))
		}
	}
	for name, call := range map[string]func() (unit.Area, error){
		"no panel":    func() (unit.Area, error) { return glue.EdgeArea(0, 5, 0.02, 1) },
		"no strip":    func() (unit.Area, error) { return glue.EdgeArea(1, 0, 0.02, 1) },
		"three faces": func() (unit.Area, error) { return glue.FaceArea(1, 3, 1, 1) },
		"no load":     func() (unit.Area, error) { return glue.FaceArea(0, 1, 1, 1) },
	} {
		if a, err := call(); err == nil || a != 0 {
			t.Errorf("%s gives %g m², want an error", name, float64(a))
		}
	}
}

func ExampleFind_alias() {
	c, ok := glue.Find("yellow glue")
	fmt.Println(c.Name, c.WaterBased, ok)
	// Output: aliphatic true true
}

// Eight panels of eleven strips, 19.05 mm thick, 1219.2 mm long: 8 · 10 · 0.01905
// · 1.2192 = 1.858 m².
func ExampleEdgeArea_eightPanels() {
	A, err := glue.EdgeArea(8, 11, unit.Millimetres(19.05), unit.Millimetres(1219.2))
	fmt.Printf("%.3f m² %v\n", A.SquareMetres(), err)
	// Output: 1.858 m² <nil>
}

// Two panels of 0.6 by 2 m with a face on both sides: 2 · 2 · 1.2 = 4.8 m².
func ExampleFaceArea_bothSides() {
	A, err := glue.FaceArea(2, 2, unit.Metres(0.6), unit.Metres(2))
	fmt.Printf("%.1f m² %v\n", A.SquareMetres(), err)
	// Output: 4.8 m² <nil>
}

// 175 g/m² on 2 m² and a tenth more: 385 g.
func ExampleMass_tenthMore() {
	m, err := glue.Mass(unit.GramsPerSquareMetre(175), unit.SquareMetres(2))
	fmt.Printf("%.0f g %v\n", m.Grams(), err)
	// Output: 385 g <nil>
}

// At 10 °C everything takes twice as long as at 20 °C.
func ExampleTemperatureFactor_coldShop() {
	c, _ := glue.Find("pva")
	k, err := glue.TemperatureFactor(c, unit.Celsius(10))
	fmt.Println(k, err)
	// Output: 2 <nil>
}

func ExampleFilmFactor_veneer() {
	c, _ := glue.Find("pva")
	fmt.Println(glue.FilmFactor(c, true))
	// Output: {2 3 4}
}

// Half way between 0.40 and 0.63, half way between 690 and 1205 kPa.
func ExampleFull_halfWay() {
	c, _ := glue.Find("pva")
	fmt.Printf("%.1f kPa\n", glue.Full(c, 0.515).Kilopascals())
	// Output: 947.5 kPa
}

func ExampleContact_epoxy() {
	c, _ := glue.Find("epoxy")
	fmt.Println(glue.Contact(c).Kilopascals(), "kPa")
	// Output: 10 kPa
}

func ExampleStarved_epoxy() {
	c, _ := glue.Find("epoxy")
	p, known := glue.Starved(c)
	fmt.Println(p.Kilopascals(), "kPa", known)
	// Output: 350 kPa true
}

func BenchmarkMass(b *testing.B) {
	for b.Loop() {
		if _, err := glue.Mass(0.175, 2); err != nil {
			b.Fatal(err)
		}
	}
}
