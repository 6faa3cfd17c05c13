package engine_test

import (
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: 1000 N on a wedge of 1 in 8 with μ 0.5, 0.4 and 0.3. tan(α + φ) is 0.625 /
// 0.9375 = 0.66667, 0.525 / 0.95 = 0.55263 and 0.425 / 0.9625 = 0.44156, so N = 1000 /
// (tan(α + φ) + μ) is 857.14, 1049.72 and 1348.51 N, on 10 mm by 1 m 85.714, 104.972
// and 134.851 kPa. Squeeze-out relieves 1156 MPa · 4 · 0.05 / 250 mm = 925 kPa, more
// than there is; driven again the wedge keeps all.
func TestSide_wedgeDrivenAgain(t *testing.T) {
	said := panelOf(unit.Facts{unit.StripLength: unit.Number(1000), unit.WedgeRatio: unit.Number(8), unit.WedgeForce: unit.Number(1000)})
	for again, low := range map[string]float64{"": 0, "no": 0, "yes": 85.714} {
		if said[unit.WedgeAgain] = unit.Word(again); again == "" {
			delete(said, unit.WedgeAgain)
		}
		a := mustAnswer(t, engine.Side, said)
		wantTriple(t, a, unit.Preload, low, 104.972, 134.851, 0.001)
		if advised := hasAdvice(a, engine.ReasonDriveAgain); advised == (again == "yes") {
			t.Errorf("driven again %q: to drive it again is advised: %v", again, advised)
		}
		if s := stepOf(t, a, unit.Preload); strings.Contains(s.Formula, "low less") == (again == "yes") {
			t.Errorf("driven again %q: worked as %q", again, s.Formula)
		}
	}
}
