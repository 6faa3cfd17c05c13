package wood_test

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"presshand/engine/unit"
	"presshand/engine/wood"
)

// rows reads a table of published numbers; its columns go by their heading.
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

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Wood Handbook FPL-GTR-190 Table 4-2, its 190 cells as printed.
func TestEquilibriumMoisture_handbookTable(t *testing.T) {
	cells := rows(t, "emc_check_values.csv")
	if len(cells) != 190 {
		t.Fatalf("table has %d cells, want 190", len(cells))
	}
	for _, cell := range cells {
		F, h := number(t, cell["temp_F"]), number(t, cell["RH_pct"])
		got, err := wood.EquilibriumMoisture(unit.Fahrenheit(F), unit.Percent(h))
		if want := number(t, cell["EMC_table_pct"]); err != nil || !(math.Abs(float64(got)-want) <= 0.1) {
			t.Errorf("%g °F and %g %%: %.2f %% (%v), table prints %g", F, h, got, err, want)
		}
	}
}

// The same equation with the constants of the Fahrenheit printing (Simpson
// 1973); the two sets were fitted apart, so they agree and are not the same.
func TestEquilibriumMoisture_fahrenheitConstants(t *testing.T) {
	for F := 30.0; F <= 130; F += 2 {
		for h := 5.0; h <= 95; h += 2.5 {
			W := 330 + 0.452*F + 0.00415*F*F
			K := 0.791 + 0.000463*F - 0.000000844*F*F
			K1 := 6.34 + 0.000775*F - 0.0000935*F*F
			K2 := 1.09 + 0.0284*F - 0.0000904*F*F
			k := K * h / 100
			want := 1800 / W * (k/(1-k) + (K1*k+2*K1*K2*k*k)/(1+K1*k+K1*K2*k*k))
			got, err := wood.EquilibriumMoisture(unit.Fahrenheit(F), unit.Percent(h))
			if err != nil || !(math.Abs(float64(got)-want) <= 0.1) {
				t.Errorf("%g °F and %g %%: %.3f %% (%v), Fahrenheit constants give %.3f", F, h, got, err, want)
			}
		}
	}
}

func TestEquilibriumMoisture_risesWithHumidity(t *testing.T) {
	for T := -1.0; T <= 55; T++ {
		last := -1.0
		for h := 0.0; h <= 100; h++ {
			M, err := wood.EquilibriumMoisture(unit.Celsius(T), unit.Percent(h))
			if err != nil || !(float64(M) > last) {
				t.Fatalf("%g °C: %.4f %% at %g %% humidity (%v), want more than the %.4f before", T, M, h, err, last)
			}
			last = float64(M)
		}
	}
}

func TestEquilibriumMoisture_dryAirDriesAll(t *testing.T) {
	if M, err := wood.EquilibriumMoisture(20, 0); M != 0 || err != nil {
		t.Errorf("bone-dry air leaves %g %% (%v), want 0", float64(M), err)
	}
}

func TestEquilibriumMoisture_refuses(t *testing.T) {
	nan := math.NaN()
	for _, in := range []struct{ T, h float64 }{{nan, 50}, {20, nan}, {-2, 50}, {56, 50}, {20, -1}, {20, 101}, {20, math.Inf(1)}} {
		M, err := wood.EquilibriumMoisture(unit.Celsius(in.T), unit.Percent(in.h))
		var outside *unit.RangeError
		if !errors.As(err, &outside) || M != 0 {
			t.Errorf("%g °C and %g %% give %g, %v; want a RangeError", in.T, in.h, float64(M), err)
		}
	}
}

// The Wood Handbook's Table 4-2 prints 9.2 % for 70 °F and 50 %.
func ExampleEquilibriumMoisture_livingRoom() {
	M, err := wood.EquilibriumMoisture(unit.Fahrenheit(70), 50)
	fmt.Printf("%.1f %% %v\n", float64(M), err)
	// Output: 9.2 % <nil>
}

func BenchmarkEquilibriumMoisture(b *testing.B) {
	for b.Loop() {
		if _, err := wood.EquilibriumMoisture(21, 45); err != nil {
			b.Fatal(err)
		}
	}
}

// Equation 4-5 by hand to four figures. At 20 °C and 50 %: W 380.2, K 0.818628, K1
// 5.9612, K2 2.6068; Kh 0.409314, K1Kh 2.440003, K1K2K²h² 2.603484; 4.734350 ·
// (0.692947 + 7.646971/6.043487) = 9.2711. At 40 °C and 80 %: W 422.2, K 0.830072, K1
// 5.41, K2 3.0692; Kh 0.664058, 3.592552, 7.322072; 4.263382 · (1.976701 +
// 18.236696/11.914624) = 14.9530. At 5 °C and 30 %: W 355.7875, K 0.808612, K1
// 6.215525, K2 2.106175; Kh 0.242584, 1.507785, 0.770361; 5.059200 · (0.320278 +
// 3.048507/3.278146) = 6.3251.
func TestEquilibriumMoisture_byHand(t *testing.T) {
	for _, c := range []struct{ celsius, humidity, want float64 }{{20, 50, 9.2711}, {40, 80, 14.9530}, {5, 30, 6.3251}} {
		got, err := wood.EquilibriumMoisture(unit.Temperature(c.celsius), unit.Percent(c.humidity))
		if err != nil || math.Abs(float64(got)-c.want) > 2e-4 {
			t.Errorf("%g °C, %g %%: %.5f (%v), want %.4f", c.celsius, c.humidity, float64(got), err, c.want)
		}
	}
}
