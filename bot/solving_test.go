package bot_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"presshand/bot"
	"presshand/engine"
	"presshand/engine/unit"
)

// backwards are questions in words of which value of an input gives a figure, with
// that input and that figure.
var backwards = []struct {
	asks   string
	sought unit.Field
	figure unit.Field
}{
	{"what bar for 50 psi at the far joint, 4 strips 1 1/2 wide 3/8 thick at 25 inHg", unit.BarHeight, unit.SideFarJoint},
	{"what bar for 60 psi at the first joint, 4 strips 1 1/2 wide 3/8 thick at 25 inHg", unit.BarHeight, unit.SideFirstJoint},
	{"what bar for an ideal side pressure of 60 psi, 5 strips 2 wide 1/4 thick, 25 inHg", unit.BarHeight, unit.SideIdeal},
	{"what bar for a reach of 12 in, 5 strips 2 in wide 1/2 thick, 25 inHg", unit.BarHeight, unit.BarReach},
	{"how wide a bar for 30 psi at the far joint, 5 strips 2 wide 1/2 thick, bar 4 in high covered to 4 in, 25 inHg", unit.BarWidth, unit.SideFarJoint},
	{"what bar width for a reach of 14 in, 5 strips 2 wide 1/2 thick, bar 4 in high covered to 4 in, 25 inHg", unit.BarWidth, unit.BarReach},
	{"how high must the bar be covered for 30 psi at the far joint, 5 strips 2 wide 1/2 thick, bar 4 in high, 25 inHg", unit.Cover, unit.SideFarJoint},
	{"how wide can the strips be for 50 psi at the far joint, 5 strips 1/2 thick, bar 4 in high covered to 4 in, 25 inHg", unit.StripWidth, unit.SideFarJoint},
	{"max strip width for 80 psi at the first joint, 5 strips 1/2 thick, bar 4 in high covered to 4 in, 25 inHg", unit.StripWidth, unit.SideFirstJoint},
	{"how thick can the strips be for 60 psi by the rule, 5 strips 2 wide, 1 1/2 bar, 25 inHg", unit.StripThickness, unit.SideIdeal},
	{"how wide can i go for 20 psi at the far joint, strips 2 wide 1/2 thick, 3 in bar, 25 inHg", unit.PanelWidth, unit.SideFarJoint},
	{"what friction for 50 psi at the far joint, 5 strips 2 wide 1/2 thick, bar 4 in high covered to 4 in, 25 inHg", unit.FrictionStated, unit.SideFarJoint},
	{"what tent for 50 psi at the far joint, 5 strips 2 wide 1/2 thick, bar 4 in high covered to 4 in, 25 inHg", unit.Tent, unit.SideFarJoint},
	{"what caul for 20 psi at the far joint, 3 strips 2 wide 1/2 thick, bar 4 in high, 25 inHg", unit.CaulThickness, unit.SideFarJoint},
	{"how thick a core for 50 psi at the far joint, 3 strips 2 wide 1/4 thick, bar 3 in high, 25 inHg", unit.CoreThickness, unit.SideFarJoint},
	{"how thick a sled for 50 psi at the far joint, 3 strips 2 wide 1/4 thick, bar 3 in high on the bed beside the sled, 25 inHg", unit.SledThickness, unit.SideFarJoint},
	{"how much vacuum for 30 psi at the far joint, 5 strips 2 wide 1/2 thick, bar 4 in high covered to 4 in", unit.Vacuum, unit.SideFarJoint},
	{"how much crook for a closing pressure of 5 psi, 3 strips 3 wide 3/4 thick 36 long, 2 in bar, 25 inHg", unit.Gap, unit.Closing},
	{"how long can the strips be for a closing pressure of 10 psi, 1/32 crook, 3 strips 3 wide 3/4 thick, 2 in bar, 25 inHg", unit.StripLength, unit.Closing},
	{"what drive force for 60 psi from the wedge, 1:10 wedge, 5 strips 2 wide 3/4 thick 36 long", unit.WedgeForce, unit.Preload},
	{"what taper for 8 psi from the wedge, driven with 200 lb, 5 strips 2 in wide 3/8 thick 40 long", unit.WedgeRatio, unit.Preload},
	{"how long can the strips be for 40 psi of preload, 1:8 wedge driven with 250 lb, 5 strips 2 wide 3/4 thick", unit.StripLength, unit.Preload},
	{"how much overfill for a preload of 30 psi, 24 wide panel 3/4 thick", unit.Overfill, unit.Preload},
	{"how much overfill for a rise of 12 mm, 1/2 thick strips, panel 24 wide", unit.Overfill, unit.Rise},
	{"how thick must the strips be for 5 psi of buckling, 4 strips 3 wide, 1/16 over the opening", unit.StripThickness, unit.Buckle},
	{"how wide can the strips be for 1 psi before they lift, 4 strips 3/8 thick hard maple, 1/16 over the opening", unit.StripWidth, unit.Buckle},
	{"how much vacuum for 20 tons on a 4x8", unit.Vacuum, unit.FaceForce},
	{"how much vacuum for 0.7 tons per square foot on the face", unit.Vacuum, unit.FaceTonsPerSquareFoot},
	{"how much vacuum for 10 psi on the face", unit.Vacuum, unit.FacePressure},
	{"how long a panel for 25 tons at 25 inHg, 4 ft wide", unit.PanelLength, unit.FaceForce},
	{"how wide can the panel be for 20 tons at 25 inHg, 8 ft long", unit.PanelWidth, unit.FaceForce},
	{"what altitude for an ambient of 85 kPa", unit.Altitude, unit.Ambient},
	{"how thick can the strips be for 5 psi to flatten, 1/8 cup, red oak 5 wide hump up", unit.StripThickness, unit.FlattenNeed},
	{"how much cup for 9 psi to flatten, 1/4 thick red oak 5 wide hump up", unit.Cup, unit.FlattenNeed},
	{"what fence for 1/16 proud: sled 3/4, fence, strips 5/16, sled 3/4", unit.FenceThickness, unit.Proud},
	{"how thick must the strips be to stand 1 mm proud: sled 3/4, fence 1/4, strips, sled 3/4", unit.StripThickness, unit.Proud},
	{"how thick a mat for 10 psi on the thin strips, they vary by 1/32, 24 inHg", unit.MatThickness, unit.MatLow},
	{"how firm a mat for 8 psi on the thin strips, 1/4 mat, strips vary by 1/32, 24 inHg", unit.MatFirm, unit.MatLow},
	{"how uneven can the strips be for 10 psi on the thin strips, 1/4 mat, 24 inHg", unit.ThicknessSpread, unit.MatLow},
	{"how much vacuum for 9 psi on the thin strips, 1/4 mat, strips vary by 1/32", unit.Vacuum, unit.MatLow},
	{"what spread for 400 g of pva, 4 panels 24x48 of 6 strips 3/4 thick", unit.LabelSpread, unit.GlueMass},
	{"how warm for 12 min closed time with pva", unit.ShopTemp, unit.ClosedTime},
	{"what temperature for 40 min press time with pva", unit.ShopTemp, unit.PressTime},
	{"what pump to pull a 5x10 frame 4 in deep to 25 inHg in 3 min", unit.PumpSpeed, unit.Pump},
	{"how big a chamber can 5 cfm pull to 25 inHg in 2 min", unit.PressVolume, unit.Pump},
	{"how deep a frame can 5 cfm pull to 25 inHg in 2 min, 4x8 bed", unit.Opening, unit.Pump},
	{"what vacuum can 5 cfm reach in 60 s on 80 gal", unit.Vacuum, unit.Pump},
	{"what pump for 26 inHg ultimate, 60 gal, leaks 0.5 inHg/min", unit.PumpSpeed, unit.UltimateVacuum},
	{"what pump limit for an ultimate vacuum of 27 inHg, 5 cfm, 60 gal", unit.PumpLimit, unit.UltimateVacuum},
	{"how much leak can a 5 cfm pump hold at 25 inHg on 60 gal", unit.Leak, unit.UltimateVacuum},
	{"how much leak can I have to hold 20 min at 25 inHg, 80 gal, pva", unit.Leak, unit.Hold},
	{"what rh for 8% emc at 70F", unit.ServiceHumidity, unit.Emc},
	{"what house temperature for 7% emc at 40% rh", unit.ServiceTemp, unit.Emc},
	{"how dry can the house get for 1/8 of shrinkage, 24 wide hard maple flat sawn at 8% mc, 70f", unit.ServiceHumidity, unit.WidthChange},
	{"how dry should the wood be for 1/16 of shrinkage, 24 wide hard maple flat sawn, house at 35% 70f", unit.WoodMoisture, unit.WidthChange},
	{"what rh for 1/16 of swelling, 24 wide hard maple flat sawn at 6% mc, house at 70f", unit.ServiceHumidity, unit.WidthChange},
	{"how wide a panel for 1/8 of movement, hard maple flat sawn at 8% mc, house at 35% 70f", unit.PanelWidth, unit.WidthChange},
	{"what core thickness for 1/32 of cup, 24 wide 1/8 hard maple face on mdf at 8% mc, house at 35% 70f", unit.CoreThickness, unit.Cup},
}

// hear is one message in a room of its own.
func hear(t *testing.T, text string) bot.Reply {
	t.Helper()
	r, err := bot.New(bot.NewMemory()).Handle(context.Background(), bot.Message{
		Room: "r", Thread: "t", ID: "1", From: "ana", Text: text, At: time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC),
	})
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return r
}

// middleOf is the middle of a figure, the least of several levels.
func middleOf(v unit.Value) float64 {
	switch v := v.(type) {
	case unit.Triple:
		if v.Mid != nil {
			return *v.Mid
		}
	case unit.Triples:
		least := math.Inf(1)
		for _, x := range v {
			least = math.Min(least, middleOf(x))
		}
		return least
	}
	return math.NaN()
}

// The value that a question gets, put back forwards, gives the figure wanted within
// 0.1 %; no number of the question is left over.
func TestBackwards_putBack(t *testing.T) {
	for _, c := range backwards {
		r := hear(t, c.asks)
		goal, _ := r.Read[unit.Goal].(unit.Facts)
		want, named := goal.Number(c.figure)
		if r.Read.Word(unit.SolveFor) != string(c.sought) || !named {
			t.Errorf("%q is solved for %v from %v, want %s from %s", c.asks, r.Read[unit.SolveFor], goal, c.sought, c.figure)
			continue
		}
		if strings.ContainsAny(strings.Join(r.Unused, " "), "0123456789") {
			t.Errorf("%q leaves %q", c.asks, r.Unused)
		}
		value := middleOf(r.Values[c.sought])
		said := r.Read.Clone()
		delete(said, unit.SolveFor)
		delete(said, unit.Goal)
		if cover, ok := r.Assumed[unit.Cover]; ok {
			said[unit.Cover] = cover
		}
		if layers, ok := said[unit.StackLayers].(unit.Layers); ok && c.sought == unit.FenceThickness {
			for i := range layers {
				if layers[i].Part == "fence" {
					layers[i].Thickness = value
				}
			}
		} else {
			said[c.sought] = unit.Number(value)
		}
		a, err := engine.Compute(engine.Question{About: engine.Topic(r.About), Said: said, For: []unit.Field{c.figure}})
		if got := middleOf(a.Values[c.figure]); err != nil || !(math.Abs(math.Abs(got)-math.Abs(want)) <= 1e-3*math.Abs(want)) {
			t.Errorf("%q: %s of %g gives %s %g (%v), want %g", c.asks, c.sought, value, c.figure, got, err, want)
		}
	}
}

// The same in words: the value goes into a question forwards.
func TestBackwards_inWords(t *testing.T) {
	for i, c := range []struct {
		asks, forwards string
		sought, figure unit.Field
	}{
		{"how thick a core for 50 psi at the far joint, 3 strips 2 wide 1/4 thick, bar 3 in high, 25 inHg",
			"side pressure on the far joint of 3 strips 2 wide 1/4 thick on a %.9f mm core, bar 3 in high, 25 inHg", unit.CoreThickness, unit.SideFarJoint},
		{"what taper for 8 psi from the wedge, driven with 200 lb, 5 strips 2 in wide 3/8 thick 40 long",
			"preload of a 1:%.9f wedge driven with 200 lb, 5 strips 2 in wide 3/8 thick 40 long", unit.WedgeRatio, unit.Preload},
		{"how much overfill for a rise of 12 mm, 1/2 thick strips, panel 24 wide",
			"how much does it rise, strips %.9f mm over the opening, 1/2 thick strips, panel 24 wide", unit.Overfill, unit.Rise},
		{"how much vacuum for 20 tons on a 4x8", "how many tons on a 4x8 at %.9f kPa", unit.Vacuum, unit.FaceForce},
		{"how big a chamber can 5 cfm pull to 25 inHg in 2 min", "how long for 5 cfm to pull %.9f l to 25 inHg", unit.PressVolume, unit.Pump},
		{"what rh for 8% emc at 70F", "what emc at %.9f%% rh and 70F", unit.ServiceHumidity, unit.Emc},
		{"how wide a bar for 30 psi at the far joint, 5 strips 2 wide 1/2 thick, bar 4 in high covered to 4 in, 25 inHg",
			"far joint of 5 strips 2 wide 1/2 thick, bar 4 in high and %.9f mm wide covered to 4 in, 25 inHg", unit.BarWidth, unit.SideFarJoint},
		{"how thick a mat for 10 psi on the thin strips, they vary by 1/32, 24 inHg",
			"%.9f mm mat, strips vary by 1/32, 24 inHg, do the thin ones get pressed", unit.MatThickness, unit.MatLow},
		{"how much leak can I have to hold 20 min at 25 inHg, 80 gal, pva",
			"how long will it hold at 25 inHg on 80 gal with a leak of %.9f kPa/min when the power goes, pva", unit.Leak, unit.Hold},
	} {
		r := hear(t, c.asks)
		goal, _ := r.Read[unit.Goal].(unit.Facts)
		want, _ := goal.Number(c.figure)
		text := fmt.Sprintf(c.forwards, middleOf(r.Values[c.sought]))
		back := hear(t, text)
		if got := middleOf(back.Values[c.figure]); !(math.Abs(got-want) <= 1e-3*math.Abs(want)) {
			t.Errorf("%d %q: %s %g, want %g; read %v, needs %v", i, text, c.figure, got, want, back.Read, back.Needs)
		}
	}
}

// What the engine refuses stands in unused as it was typed, is no longer read and is
// asked for: an overfill of more than a tenth of the opening, and 900 mbar left where
// the air at 2000 m has no more than 795.
func TestRefused_asTyped(t *testing.T) {
	for text, want := range map[string]struct {
		field unit.Field
		typed string
	}{
		"strips run 5 in over the opening, panel 12 in wide, 3/4 thick, what squeeze": {unit.Overfill, "5 in"},
		"900 mbar abs at 2000 m, how many tons on a 4x8":                              {unit.Vacuum, "900 mbar"},
	} {
		r := hear(t, text)
		if r.Read.Has(want.field) || len(r.Needs) != 1 || r.Needs[0] != want.field || len(r.Unused) != 1 || r.Unused[0] != want.typed {
			t.Errorf("%q: read %v, needs %v, unused %q; want %s asked for and %q unused", text, r.Read, r.Needs, r.Unused, want.field, want.typed)
		}
	}
}

// The working stands among the values.
func TestWhy_workingAmongValues(t *testing.T) {
	b := bot.New(bot.NewMemory())
	var r bot.Reply
	for i, text := range []string{"how many tons on a 4x8 at 25 inHg", "why"} {
		var err error
		if r, err = b.Handle(context.Background(), bot.Message{Room: "r", Thread: "t", ID: fmt.Sprint(i), From: "ana", Text: text, At: time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)}); err != nil {
			t.Fatal(err)
		}
	}
	var got struct {
		Values struct{ Working []engine.Step }
	}
	if err := json.Unmarshal(r.AppendJSON(nil), &got); err != nil || len(got.Values.Working) < 3 || got.Values.Working[0].Formula == "" {
		t.Errorf("working %v (%v), want the steps", got.Values.Working, err)
	}
}

// One input cannot give two figures: the first of the topic is met, the other is named.
func TestBackwards_twoGoals(t *testing.T) {
	const left = "40 psi (276 kPa) at the first joint"
	for _, asks := range []string{
		"how tall a bar for 15 psi on the last joint and 40 psi on the first joint, 6 strips 3/4 thick, 3 wide, 25 inHg",
		"how tall a bar for 40 psi on the first joint and 15 psi on the last joint, 6 strips 3/4 thick, 3 wide, 25 inHg",
	} {
		for range 20 { // in whatever order a map gives the two
			r := hear(t, asks)
			if !strings.Contains(r.Text, "for 15 psi") || !strings.Contains(r.Text, "one figure at a time") || !strings.Contains(r.Text, left) {
				t.Fatalf("%q: want the far joint solved for and the other figure named:\n%s", asks, r.Text)
			}
			if goal, _ := r.Read[unit.Goal].(unit.Facts); len(goal) != 2 {
				t.Fatalf("%q: read the goal %v, want both", asks, goal)
			}
		}
	}
}
