package unit_test

import (
	"encoding/json"
	"math"
	"reflect"
	"testing"

	"presshand/engine/unit"
)

// What is kept in a store must come back as it was.
func TestFacts_comeBackFromJSON(t *testing.T) {
	mid := 2.5
	in := unit.Facts{
		unit.Vacuum:       unit.Number(84.66),
		unit.GlueClass:    unit.Word("pva"),
		unit.StripWidths:  unit.Numbers{50, 60},
		unit.FinishTimes:  unit.Words{"10:15", "11:40"},
		unit.StackLayers:  unit.Layers{{Part: "sled", Thickness: 19}, {Part: "film"}},
		unit.StockPiles:   unit.Piles{{Width: 54, Count: 12}},
		unit.Picks:        unit.Sets{{54, 54}, {76}},
		unit.FacePressure: unit.Triple{Mid: &mid},
		unit.Proud:        unit.Triples{{Low: &mid, Mid: &mid, High: &mid}},
		unit.Measured:     unit.Facts{unit.BarHeight: unit.Number(25.4)},
	}
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var out unit.Facts
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(in, out) {
		t.Errorf("came back as %#v, want %#v", out, in)
	}
}

func TestFacts_refusesWhatIsNoFact(t *testing.T) {
	for _, text := range []string{`{"vacuum_kpa": true}`, `{"stack": [true]}`, `[]`, `{"x": {"mid": "high"}}`} {
		var out unit.Facts
		if err := json.Unmarshal([]byte(text), &out); err == nil {
			t.Errorf("%s was read as %v, want an error", text, out)
		}
	}
}

// An end that is not finite is left out, and nothing is minus zero.
func TestTripleOf_writesWhatCanBeReached(t *testing.T) {
	text, err := json.Marshal(unit.TripleOf(unit.Around(math.Copysign(0, -1), 5, math.Inf(1))))
	if err != nil || string(text) != `{"low":0,"mid":5}` {
		t.Errorf("written %s (%v), want low 0, mid 5 and no high", text, err)
	}
}
