package engine_test

import (
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// checkOf returns the check of a name.
func checkOf(t *testing.T, a engine.Answer, name string) engine.Check {
	t.Helper()
	for _, c := range a.Checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %q in %v", name, a.Checks)
	return engine.Check{}
}

// A check on a range names the end that it fell for: of 3 to 10 % the 3, of 5 to
// 12 % the 5, and of 8 to 17 % the 17.
func TestMoisture_namesTheEnd(t *testing.T) {
	for ends, want := range map[[2]float64]float64{{3, 10}: 3, {5, 12}: 5, {8, 17}: 17, {7, 9}: 8} {
		a := mustAnswer(t, engine.Glue, unit.Facts{
			unit.GlueClass: unit.Word("pva"), unit.WoodMoistureLow: unit.Number(ends[0]), unit.WoodMoistureHigh: unit.Number(ends[1]),
		})
		if got, _ := checkOf(t, a, "wood moisture").Figures.Number(unit.WoodMoisture); got != want {
			t.Errorf("%v %%: names %g, want %g", ends, got, want)
		}
	}
	a := mustAnswer(t, engine.Move, unit.Facts{
		unit.PanelWidth: unit.Number(500), unit.WoodMoistureLow: unit.Number(5), unit.WoodMoistureHigh: unit.Number(9), unit.ServiceHumidity: unit.Number(50),
	})
	if got, _ := checkOf(t, a, "moisture range").Figures.Number(unit.WoodMoisture); got != 5 {
		t.Errorf("the movement is said to go from %g %%, want 5", got)
	}
}

// A dial at 71 kPa means 68.46 to 73.54: the middle makes contact, the low end may
// not.
func TestFace_mayFallShort(t *testing.T) {
	said := unit.Facts{unit.GlueClass: unit.Word("pva"), unit.Vacuum: unit.Number(71)}
	wantCheck(t, mustAnswer(t, engine.Face, said), "face", engine.Care, engine.ReasonFaceMayFall)
	said[unit.Vacuum] = unit.Number(69)
	wantCheck(t, mustAnswer(t, engine.Face, said), "face", engine.Care, engine.ReasonFaceNearContact)
}

// The moisture that the shop's air brings wood to is the wood's, the other air's is
// where it settles; a solid core is taken to have one face.
func TestMove_namesAndDefaults(t *testing.T) {
	a := mustAnswer(t, engine.Move, unit.Facts{
		unit.PanelWidth: unit.Number(500), unit.ShopHumidity: unit.Number(35), unit.ServiceHumidity: unit.Number(50),
	})
	var names []string
	for _, s := range a.Working {
		names = append(names, s.Name)
	}
	if len(names) < 2 || names[0] != string(unit.Emc) || names[1] != string(unit.WoodMoisture) {
		t.Errorf("the working names %v, want where it settles, then the wood", names)
	}
	a = mustAnswer(t, engine.Move, unit.Facts{
		unit.CoreKind: unit.Word("solid"), unit.CoreThickness: unit.Number(18), unit.StripThickness: unit.Number(6),
		unit.PanelWidth: unit.Number(500), unit.WoodMoisture: unit.Number(8), unit.ServiceHumidity: unit.Number(50),
	})
	if a.Assumed[unit.Faces] != unit.Number(1) {
		t.Errorf("assumed %v, want one face", a.Assumed)
	}
}
