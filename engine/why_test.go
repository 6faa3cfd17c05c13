package engine_test

import (
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// What the specification says of each source stands beside its figure: read, computed,
// common practice, from memory or an estimate.
func TestWorking_sources(t *testing.T) {
	wedge := unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10), unit.StripLength: unit.Number(1000),
		unit.WedgeRatio: unit.Number(12), unit.WedgeForce: unit.Number(900),
	}
	sprung := unit.Facts{unit.Species: unit.Word("hard maple"), unit.Sawn: unit.Word("flat"), unit.PanelWidth: unit.Number(500), unit.StripThickness: unit.Number(20), unit.Overfill: unit.Number(1)}
	dial := unit.Facts{unit.Vacuum: unit.Number(80), unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(900)}
	share := unit.Facts{unit.VacuumPercent: unit.Number(80)}
	gap := exactBar(unit.Facts{unit.Species: unit.Word("hard maple"), unit.StripLength: unit.Number(1000), unit.Gap: unit.Number(1)})
	label := unit.Facts{unit.GlueClass: unit.Word("pva"), unit.LabelClosed: unit.Number(10)}
	glue := func(class string) unit.Facts { return exactBar(unit.Facts{unit.GlueClass: unit.Word(class)}) }
	for _, c := range []struct {
		about    engine.Topic
		said     unit.Facts
		figure   unit.Field
		formula  string
		source   string
		standing engine.Standing
	}{
		{engine.Side, wedge, unit.SideFirstJoint, "p_pre", "friction holds", engine.Estimate},
		{engine.Side, wedge, unit.SideFarJoint, "p_pre", "friction holds", engine.Estimate},
		{engine.Side, wedge, unit.Preload, "tan(α + φ) + tan φ", "(from memory)", engine.Estimate},
		{engine.Side, sprung, unit.Preload, "0.8 (δ / W)", "our estimates", engine.Estimate},
		{engine.Side, sprung, unit.SideFarJoint, "p_pre", "friction holds", engine.Estimate},
		{engine.Side, sprung, unit.Rise, "√(3 W δ / 8)", "shallow arc", engine.Computed},
		{engine.Side, sprung, unit.Snap, "8.21", "derived", engine.FromMemory},
		{engine.Side, sprung, unit.Buckle, "π²", "Euler", engine.FromMemory},
		{engine.Side, glue("epoxy"), unit.GlueFull, "30 kPa", "from memory", engine.FromMemory},
		{engine.Side, glue("hot hide"), unit.GlueFull, "350 kPa", "from memory", engine.FromMemory},
		{engine.Side, glue("pva"), unit.GlueFull, "690 kPa", "our estimate", engine.Estimate},
		{engine.Side, glue("pva"), unit.GlueContact, "class", "common practice", engine.CommonPractice},
		{engine.Side, glue("pva"), unit.SideIdeal, "p H / t", "force balance", engine.Computed},
		{engine.Side, gap, unit.Closing, "6.4 E_L", "Wood Handbook Eq. 9-2", engine.FromMemory},
		{engine.Face, dial, unit.FacePressure, "± 2.54", "EN 837-1 (from memory)", engine.FromMemory},
		{engine.Face, share, unit.FacePressure, "share", "as said", engine.Computed},
		{engine.Face, dial, unit.Ambient, "0.0065 h", "ISO 2533", engine.Seen},
		{engine.Face, dial, unit.FaceForce, "p A", "definition", engine.Computed},
		{engine.Move, cherryOnPly(), unit.Cup, "Timoshenko", "from memory", engine.FromMemory},
		{engine.Glue, unit.Facts{unit.GlueClass: unit.Word("epoxy")}, unit.ClosedTime, "t20", "common practice", engine.FromMemory},
		{engine.Glue, label, unit.ClosedTime, "t20", "common practice", engine.CommonPractice},
	} {
		s := stepOf(t, mustAnswer(t, c.about, c.said), c.figure)
		if !strings.Contains(s.Formula+" "+s.Source, c.formula) || !strings.Contains(s.Source, c.source) || s.Standing != c.standing {
			t.Errorf("%s: %q, %q, %s; want %q, %q, %s", c.figure, s.Formula, s.Source, s.Standing, c.formula, c.source, c.standing)
		}
	}
}
