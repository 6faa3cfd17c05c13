package bot

import (
	"testing"

	"presshand/engine/unit"
	"presshand/grammar"
)

// What a bare number states: first what was asked for, then one of the values
// compared, then something later than before; a count only if it is whole.
func TestTurn_meantBy(t *testing.T) {
	inch := func(v float64) unit.Number { return unit.Number(v * 25.4) }
	said := Statement{
		{Field: unit.StripCount, Value: unit.Number(5)},
		{Field: unit.StripThickness, Value: inch(0.25), Unit: "in"},
		{Field: unit.BarHeight, Value: inch(1), Unit: "in"},
		{Field: unit.ShopTemp, Value: unit.Number((40. - 32) / 1.8), Unit: "°F"},
		{Field: unit.Vacuum, Value: unit.Number(25 * 3.386389), Unit: "inHg"},
	}
	latest := []unit.Field{unit.StripCount, unit.StripThickness, unit.BarHeight, unit.ShopTemp, unit.Vacuum}
	presses := []Alternative{{Field: unit.PressCount, Values: Statement{{Field: unit.PressCount, Value: unit.Number(1)}, {Field: unit.PressCount, Value: unit.Number(2)}}}}
	for _, c := range []struct {
		name  string
		text  string
		a     grammar.Amendment
		asked []unit.Field
		more  []Alternative
		want  unit.Field // "" for nothing
		value unit.Number
	}{
		{"the width asked for", "oh 2 and a quarter", grammar.Amendment{Value: 2.25}, []unit.Field{unit.StripWidth}, nil, unit.StripWidth, inch(2.25)},
		{"the second thing asked for", "25", grammar.Amendment{Value: 25}, []unit.Field{unit.StripThickness, unit.Vacuum}, nil, unit.Vacuum, 25 * 3.386389},
		{"inches of a gauge", "25 inches", grammar.Amendment{Value: 25, Unit: unit.Inch}, []unit.Field{unit.Vacuum}, nil, unit.Vacuum, 25 * 3.386389},
		{"per cent of vacuum", "80%", grammar.Amendment{Value: 80, Unit: unit.PercentOf}, []unit.Field{unit.Vacuum}, nil, unit.VacuumPercent, 80},
		{"a fraction is no count", "5 1/2", grammar.Amendment{Value: 5.5}, []unit.Field{unit.StripCount}, nil, "", 0},
		{"a correction looks back first", "make that 6", grammar.Amendment{Value: 6}, []unit.Field{unit.StripWidth}, nil, unit.StripCount, 6},
		{"one of two compared", "two it is", grammar.Amendment{Value: 2}, nil, presses, unit.PressCount, 2},
		{"nothing that it could be", "make that 4000", grammar.Amendment{Value: 4000}, []unit.Field{unit.StripWidth}, nil, "", 0},
		{"degrees as they are written", "then 60", grammar.Amendment{Value: 60}, nil, nil, unit.ShopTemp, (60. - 32) / 1.8},
		{"another kind of unit", "18 °C", grammar.Amendment{Value: 18, Unit: unit.DegC}, []unit.Field{unit.StripWidth}, nil, "", 0},
	} {
		b := New(NewMemory())
		turn := &turn{bot: b, m: Message{Text: c.text}, before: Thread{Said: said, Latest: latest, Compare: c.more, Pending: pending(c.asked, nil)}}
		got, ok := turn.meantBy(c.a)
		if ok != (c.want != "") || got.Field != c.want {
			t.Errorf("%s: %q is taken for %q, want %q", c.name, c.text, got.Field, c.want)
			continue
		}
		if n, _ := got.Value.(unit.Number); ok && (n-c.value > 1e-3 || c.value-n > 1e-3) {
			t.Errorf("%s: %q is %v, want %v", c.name, c.text, got.Value, c.value)
		}
	}
}

// A bare number in a thread that has a load and no question is read as well.
func TestTurn_meantBy_nothingAsked(t *testing.T) {
	said := Statement{
		{Field: unit.StripWidth, Value: unit.Number(50.8), Unit: "in"},
		{Field: unit.BarHeight, Value: unit.Number(31.75), Unit: "in"},
	}
	turn := &turn{bot: New(NewMemory()), m: Message{Text: "2 1/4 then"}, before: Thread{Said: said, Latest: []unit.Field{unit.StripWidth, unit.BarHeight}}}
	got, ok := turn.meantBy(grammar.Amendment{Value: 2.25})
	if !ok || got.Field != unit.StripWidth {
		t.Errorf("2 1/4 states %q (%v), want %q", got.Field, ok, unit.StripWidth)
	}
}
