package engine_test

import (
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// One strip has no joint to judge, with a bar or a wedge; what else there is, the
// face on a core, is judged as ever: 80 kPa is more than the 70 of contact. Two strips
// have one.
func TestSide_oneStrip(t *testing.T) {
	wedge := unit.Facts{unit.StripLength: unit.Number(900), unit.WedgeRatio: unit.Number(8), unit.WedgeForce: unit.Number(1000), unit.Gap: unit.Number(0)}
	for name, c := range map[string]struct {
		more unit.Facts
		v    engine.Verdict
	}{"bar": {nil, engine.None}, "wedge": {wedge, engine.Good}, "core": {unit.Facts{unit.CoreThickness: unit.Number(18)}, engine.Good}} {
		said := exactBar(c.more)
		said[unit.StripCount] = unit.Number(1)
		a := mustAnswer(t, engine.Side, said)
		t.Log(name)
		wantCheck(t, a, "joints", engine.None, engine.ReasonNoJoint)
		wantCheck(t, a, "far joint", "", "")
		if a.Verdict != c.v || len(a.Needs) > 0 || a.Values.Has(unit.SideFarJoint) || a.Values.Has(unit.SideNet) || hasAdvice(a, engine.ReasonFrictionBound) {
			t.Errorf("%s, needs %v, advice %v, values %v; want %s and no joint", a.Verdict, a.Needs, a.Advice, a.Values, c.v)
		}
	}
	said := exactBar(nil)
	said[unit.StripCount] = unit.Number(2)
	if a := mustAnswer(t, engine.Side, said); !a.Values.Has(unit.SideFarJoint) {
		t.Errorf("two strips have no joint: %v", a.Checks)
	}
}
