package bot

import (
	"math"
	"testing"

	"presshand/engine/unit"
)

// What several messages of a thread come to. Numbers are by hand: in inches times
// 25.4, in inHg times 3.386389.
func TestHandle_afterSeveral(t *testing.T) {
	metricAsk := "7 strips 40 mm wide, 12 mm thick, 30 mm bar, 80 kPa, far joint"
	dayAsk := "10 panels 24x48, one press, start 7:30, pva, 68F. when are we done"
	for _, c := range []struct {
		texts []string
		field unit.Field
		want  float64
	}{
		{[]string{sideAsk, "make it 2 1/2 wide", "i meant the bar"}, unit.BarWidth, 2.5 * 25.4},
		{[]string{sideAsk, "make it 2 1/2 wide", "i meant the bar"}, unit.StripWidth, 2 * 25.4},
		{[]string{sideAsk, "make it 1/2 thick", "width, not thickness"}, unit.StripThickness, 3.0 / 8 * 25.4},
		{[]string{flatAsk, "sorry thats a bow not a cup"}, unit.Bow, 25.4 / 8},
		{[]string{flatAsk, "bow not cup, 6 ft long"}, unit.Bow, 25.4 / 8},
		{[]string{flatAsk, "what if i plane it down to half inch first"}, unit.StripThickness, 12.7},
		{[]string{sideAsk, "2 of them are cracked"}, unit.StripCount, 4},
		{[]string{sideAsk, "without 2 of them"}, unit.StripCount, 4},
		{[]string{sideAsk, "lose 3 inches of vacuum"}, unit.Vacuum, 22 * 3.386389},
		{[]string{sideAsk, "add 2 inHg"}, unit.Vacuum, 27 * 3.386389},
		{[]string{sideAsk, "if we lose 10% of the vacuum"}, unit.Vacuum, 22.5 * 3.386389},
		{[]string{sideAsk, "bars on both sides", "lose one of them again"}, unit.BarCount, 1},
		{[]string{sideAsk, "bars on both sides", "just the one"}, unit.BarCount, 1},
		{[]string{sideAsk, "and a 2 in bar", "half of that"}, unit.BarHeight, 25.4},
		{[]string{sideAsk, "without the bar", "put the bar back"}, unit.BarHeight, 25.4},
		{[]string{sideAsk, "without the bar", "bar back on but 2 in"}, unit.BarHeight, 2 * 25.4},
		{[]string{sideAsk + ", bar is 2 in", "the 2 in one"}, unit.BarHeight, 2 * 25.4},
		{[]string{"does it fit the bag, 48 in wide and 8 ft long, sled 24 x 60", "what about a 30 in bag", "and a 26 in one?"}, unit.BagWidth, 26 * 25.4},
		{[]string{metricAsk, "and 20 thick?"}, unit.StripThickness, 20},
		{[]string{metricAsk, "make it 60 wide"}, unit.StripWidth, 60},
		{[]string{metricAsk, "3/4 thick"}, unit.StripThickness, 19.05},
		{[]string{"9 strips 3 wide 1 thick 48 long, pva, how much glue", "for ten of them?"}, unit.PanelCount, 10},
		{[]string{"power's out, gauge at 24, losing 1 inHg every 5 min. how long", "its more like 1 every 2 min"}, unit.Leak, 3.386389 / 2},
		{[]string{sideAsk, "and with a caul", "3/4"}, unit.CaulThickness, 19.05},
		{[]string{sideAsk, "with a 2 in bar", "what about without it", "put it back"}, unit.BarHeight, 2 * 25.4},
		{[]string{stockAsk, "make it 42 between the fences"}, unit.TargetWidth, 42 * 25.4},
		{[]string{moveAsk, "55% in summer"}, unit.ServiceHumidity, 55},
		{[]string{moveAsk, "55 in summer", "10 mc"}, unit.ServiceHumidity, 35},
		{[]string{sideAsk, "with a 2 in bar", "swap the bar for a 2 1/2 inch one"}, unit.BarHeight, 2.5 * 25.4},
		{[]string{sideAsk, "with a 2 in bar", "take 1/8 off the bar"}, unit.BarHeight, 1.875 * 25.4},
		{[]string{sideAsk, "1/2 in stock"}, unit.StripThickness, 12.7},
		{[]string{sideAsk, "with a 2 in bar", "a wider bar, 1 1/4"}, unit.BarWidth, 1.25 * 25.4},
		{[]string{sideAsk, "with 3/4 ply on top as a caul"}, unit.CaulThickness, 19.05},
		{[]string{sideAsk, "with a 3/4 mdf caul"}, unit.CaulThickness, 19.05},
		{[]string{sideAsk, "strips come off the planer at 5/16"}, unit.StripThickness, 25.4 * 5 / 16},
		{[]string{sideAsk, "1/8 less thickness on em, 1/4"}, unit.StripThickness, 6.35},
		{[]string{sideAsk, "what bar for 40 psi at the far joint", "at 22"}, unit.Vacuum, 22 * 3.386389},
		{[]string{"3/8 soft foam mat, strips run 1/4 to 9/32, 24 inHg", "medium mat?", "a half inch one"}, unit.MatThickness, 12.7},
		{[]string{"does it fit the bag, 48 in wide and 8 ft long, sled 24 x 60", "a shorter bag, 6 ft"}, unit.BagLength, 72 * 25.4},
		{[]string{dayAsk, "with two presses", "make it 3 presses"}, unit.PressCount, 3},
	} {
		r := answerTo(t, Settings{}, c.texts...)
		if got, ok := r.Read.Number(c.field); !ok || math.Abs(float64(got)-c.want) > 0.01 {
			t.Errorf("%q: %s is %v, want %.6g", c.texts, c.field, r.Read[c.field], c.want)
		}
	}
	for then, want := range map[string]unit.Word{
		"start half an hour earlier": "07:00", "and an hour later?": "08:30", "push the start back 45 min": "08:15", "start at 8": "08:00",
	} {
		if r := answerTo(t, Settings{}, dayAsk, then); r.Read[unit.StartTime] != want {
			t.Errorf("%q: start is %v, want %s", then, r.Read[unit.StartTime], want)
		}
	}
}

// What a later message must leave as it is.
func TestHandle_notAgain(t *testing.T) {
	for _, c := range []struct {
		texts []string
		field unit.Field
	}{
		{[]string{sideAsk, "2 of them are thinner"}, unit.StripThinnest},
		{[]string{pumpAsk, "and if its 60 gal more"}, unit.PressVolume},
		{[]string{stockAsk, "use the 3s up first"}, unit.PanelCount},
		{[]string{moveAsk, "55 in summer"}, unit.LoadNumber},
		{[]string{sideAsk, "is it the bar not the panel?"}, unit.PanelWidth},
		{[]string{"10 panels 24x48, start 7:30, pva, 68F, two presses. when done", "make it 12"}, unit.StripCount},
	} {
		if r := answerTo(t, Settings{}, c.texts...); r.Read.Has(c.field) {
			t.Errorf("%q: %s is %v, want nothing", c.texts, c.field, r.Read[c.field])
		}
	}
}
