package engine_test

import (
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// A figure right on a limit is not failed by the last digit of a sum or of a
// change of units: 6.8 less 6, 8.3 less 6.3 and 6.15 less 6 are none of them
// exact in binary. A hundredth beyond is.
func TestCompute_onTheLimit(t *testing.T) {
	stack := func(fence, strips float64) unit.Facts {
		return unit.Facts{unit.StackLayers: unit.Layers{layer("sled", 19.05), layer("fence", fence), layer("strips", strips), layer("sled", 19.05)}}
	}
	bag := func(width float64) unit.Facts {
		return unit.Facts{
			unit.StackLayers: unit.Layers{layer("sled", 19.05), layer("strips", 6.35)},
			unit.SledWidth:   unit.Number(600.1), unit.BagWidth: unit.Number(width),
		}
	}
	uneven := func(thinnest float64) unit.Facts {
		return unit.Facts{unit.MatDenied: unit.Word("none"), unit.StripThickest: unit.Number(6.15), unit.StripThinnest: unit.Number(thinnest)}
	}
	moist := func(high float64) unit.Facts {
		return unit.Facts{unit.WoodMoistureLow: unit.Number(6.3), unit.WoodMoistureHigh: unit.Number(high)}
	}
	warm := func(celsius float64) unit.Facts {
		return unit.Facts{unit.ShopTemp: unit.Number(celsius), unit.GlueClass: unit.Word("pva")}
	}
	for _, c := range []struct {
		about engine.Topic
		said  unit.Facts
		check string
		v     engine.Verdict
		r     engine.Reason
	}{
		{engine.Stack, stack(6, 6.8), "proud of the fence", engine.Good, engine.ReasonProud},
		{engine.Stack, stack(6, 6.79), "proud of the fence", engine.Care, engine.ReasonProudLittle},
		{engine.Stack, bag(600.1 + 25.4 + 50), "bag", engine.Good, engine.ReasonBagFits},
		{engine.Stack, bag(600.09 + 25.4 + 50), "bag", engine.Stop, engine.ReasonBagSmall},
		{engine.Stack, uneven(6), "uneven strips", engine.Good, engine.ReasonEven},
		{engine.Stack, uneven(5.99), "uneven strips", engine.Stop, engine.ReasonUneven},
		{engine.Glue, moist(8.3), "even moisture", engine.Good, engine.ReasonWoodEven},
		{engine.Glue, moist(8.31), "even moisture", engine.Care, engine.ReasonWoodUneven},
		{engine.Glue, warm((50.0 - 32) / 1.8), "temperature", engine.Care, engine.ReasonMayChalk},
		{engine.Glue, warm(9.99), "temperature", engine.Stop, engine.ReasonTooCold},
	} {
		wantCheck(t, mustAnswer(t, c.about, c.said), c.check, c.v, c.r)
	}
}

// What cannot be reached is said in words, in the working too: a time that a worn
// pump never ends, a bar without friction.
func TestCompute_workingOutOfReach(t *testing.T) {
	for about, said := range map[engine.Topic]unit.Facts{
		engine.Pump: {unit.Vacuum: unit.Number(95), unit.PumpSpeed: unit.Number(2), unit.PressVolume: unit.Number(200)},
		engine.Side: exactBar(unit.Facts{unit.FrictionStated: unit.Number(0), unit.GlueClass: unit.Word("pva")}),
	} {
		found := about == engine.Side // its reach has no end, and no step
		for _, s := range mustAnswer(t, about, said).Working {
			if text := s.Numbers + s.Result; strings.Contains(text, "Inf") || strings.Contains(text, "NaN") {
				t.Errorf("%s: %s is worked as %q", about, s.Name, text)
			}
			found = found || strings.Contains(s.Result, "out of reach")
		}
		if !found {
			t.Errorf("%s: nothing is out of reach", about)
		}
	}
	_, err := engine.Compute(engine.Question{About: engine.Stack, Said: unit.Facts{
		unit.StripThickest: unit.Number(-8), unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 8)}}})
	if err == nil {
		t.Error("strips of -8 mm are stacked, want an error")
	}
}
