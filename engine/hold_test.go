package engine_test

import (
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: 2 kPa in 5 min is 0.4 kPa/min. An absolute 22 kPa is a vacuum of 77.325,
// 79.325 and 81.325 kPa give or take the weather: (79.325 − 70)/0.4 min = 1398.75 s
// above the 70 kPa of PVA, 1098.75 s and 1698.75 s at the ends.
func TestHold_absoluteTarget(t *testing.T) {
	a := mustAnswer(t, engine.Pump, unit.Facts{
		unit.PumpSpeed: unit.Number(50), unit.PumpLimit: unit.Number(1), unit.PressVolume: unit.Number(160),
		unit.VacuumAbsolute: unit.Number(22), unit.Leak: unit.Number(0.4),
	})
	wantTriple(t, a, unit.Hold, 1098.75, 1398.75, 1698.75, 1e-6)
}

// By hand: a pump of 1 l/s on 100 l that rise 18 kPa a minute, 30 Pa/s · 0.1 m³ = 30 Pa·m³/s: at
// 0.85 of its speed the floor is 1 + 35.294 kPa, and 100 − 36.294 = 63.706 kPa are
// under the 70 kPa of PVA, under the 90 asked for: it holds nothing. With epoxy, 10
// kPa: 53.706/18 min = 179.02 s, at 0.7 of the speed (100 − 1 − 42.857 − 10)/0.3 =
// 153.81 s, at the rated 59/0.3 = 196.67 s.
func TestHold_pumpThatCannot(t *testing.T) {
	said := unit.Facts{
		unit.Ambient: unit.Number(100), unit.PumpSpeed: unit.Number(1), unit.PumpLimit: unit.Number(1), unit.PressVolume: unit.Number(100),
		unit.Vacuum: unit.Number(90), unit.Leak: unit.Number(18),
	}
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Hold, 0, 0, 0, 1e-9)
	said[unit.GlueClass] = unit.Word("epoxy")
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Hold, 153.81, 179.02, 196.67, 0.01)
}

// 1220 × 2440 × 76.2 mm are 226.83 l; a sled of 609.6 × 1219.2 × 19.05 mm in it takes
// 14.16.
func TestPump_sledInThePress(t *testing.T) {
	a := mustAnswer(t, engine.Pump, unit.Facts{
		unit.PumpSpeed: unit.Number(2), unit.Vacuum: unit.Number(80), unit.Opening: unit.Number(76.2), unit.BedWidth: unit.Number(1220), unit.BedLength: unit.Number(2440),
		unit.SledWidth: unit.Number(609.6), unit.SledLength: unit.Number(1219.2), unit.SledThickness: unit.Number(19.05),
	})
	wantTriple(t, a, unit.PressVolume, 212.67, 212.67, 212.67, 0.01)
}

// What is left once the limit is said is the share of the rating, common practice.
func TestPump_standing(t *testing.T) {
	said := unit.Facts{unit.PumpSpeed: unit.Number(2), unit.Vacuum: unit.Number(80), unit.PressVolume: unit.Number(200)}
	wantStanding(t, mustAnswer(t, engine.Pump, said), unit.Pump, engine.Estimate)
	said[unit.PumpLimit] = unit.Number(1)
	wantStanding(t, mustAnswer(t, engine.Pump, said), unit.Pump, engine.CommonPractice)
	wantStanding(t, mustAnswer(t, engine.Pump, said), unit.UltimateVacuum, engine.CommonPractice)
}

// wantStanding fails unless the working of a figure stands so.
func wantStanding(t *testing.T, a engine.Answer, f unit.Field, want engine.Standing) {
	t.Helper()
	for _, s := range a.Working {
		if s.Name == string(f) {
			if s.Standing != want {
				t.Errorf("%s stands as %s, want %s", f, s.Standing, want)
			}
			return
		}
	}
	t.Errorf("no working of %s", f)
}
