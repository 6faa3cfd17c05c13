package bot

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"presshand/engine/unit"
)

const (
	sideAsk  = "6 strips 2 wide 3/8 thick, 1 in bar, 25 inHg"
	pumpAsk  = "8 cfm pump on a 4x8 frame 4 in deep to 25 inHg"
	stockAsk = "got 12 at 2 1/8, 9 at 3, need 40 wide"
	moveAsk  = "30 wide maple 8% in the shop, house at 35% rh 70f"
	barAsk   = "what bar do i need for 7 strips 1 3/4 wide 3/8 thick 25 inHg"
	flatAsk  = "flatten a board 8 wide 3/4 thick cup 1/8 24 inHg"
	planAsk  = "14 panels 24 x 30, pva at 65F, start 7:30, 2 presses"
	stackAsk = "sled 3/4, strips 5/16, mat 1/4, sled 3/4, opening 4 in, does it fit"
)

// What a follow-up changes of the thread's question. Numbers are by hand: in inches
// times 25.4, in inHg times 3.386389.
var followUps = []struct {
	first, then string
	field       unit.Field
	want        float64
}{
	{sideAsk, "add 2 more strips", unit.StripCount, 8},
	{sideAsk, "take out 2 strips", unit.StripCount, 4},
	{sideAsk, "take 2 strips out", unit.StripCount, 4},
	{sideAsk, "2 strips more", unit.StripCount, 8},
	{sideAsk, "two more and a taller bar", unit.StripCount, 8},
	{sideAsk, "minus 2 strips", unit.StripCount, 4},
	{sideAsk, "with 2 bars more pressure?", unit.BarCount, 2},
	{sideAsk, "bump up the vacuum by 2", unit.Vacuum, 27 * 3.386389},
	{sideAsk, "take 1/4 off the bar", unit.BarHeight, 0.75 * 25.4},
	{sideAsk, "another strip", unit.StripCount, 7},
	{sideAsk, "what about 8 strips", unit.StripCount, 8},
	{sideAsk, "3 inches less vacuum", unit.Vacuum, 22 * 3.386389},
	{sideAsk, "lower vacuum like 20", unit.Vacuum, 20 * 3.386389},
	{sideAsk, "drop the vacuum to 22", unit.Vacuum, 22 * 3.386389},
	{sideAsk, "what if the vacuum drops 3 inches", unit.Vacuum, 22 * 3.386389},
	{sideAsk, "bump the bar half an inch", unit.BarHeight, 1.5 * 25.4},
	{sideAsk, "what if the bar is half an inch lower", unit.BarHeight, 0.5 * 25.4},
	{sideAsk, "raise the bar to 2", unit.BarHeight, 2 * 25.4},
	{sideAsk, "another half inch on the bar", unit.BarHeight, 1.5 * 25.4},
	{sideAsk, "how about an inch and a half", unit.BarHeight, 1.5 * 25.4},
	{sideAsk, "no the bar is 1 1/4", unit.BarHeight, 1.25 * 25.4},
	{sideAsk, "make that 2 1/4", unit.StripWidth, 2.25 * 25.4},
	{sideAsk, "thicker, 1/2", unit.StripThickness, 0.5 * 25.4},
	{sideAsk, "and thinner like 5/16", unit.StripThickness, 0.3125 * 25.4},
	{sideAsk + ", 2 bars", "one on each side", unit.BarCount, 2},
	{sideAsk, "double the bar", unit.BarHeight, 2 * 25.4},
	{sideAsk, "10% less vacuum", unit.Vacuum, 22.5 * 3.386389},
	{sideAsk, "drop the vacuum 20%", unit.Vacuum, 20 * 3.386389},
	{sideAsk, "bar 50% taller", unit.BarHeight, 1.5 * 25.4},
	{sideAsk, "with a 1 in core under", unit.CoreThickness, 25.4},
	{sideAsk, "what if one strip is 1/32 crooked", unit.Gap, 25.4 / 32},
	{sideAsk, "one of them is 1/32 fat", unit.ThicknessSpread, 25.4 / 32},
	{sideAsk, "gauge has dropped to 22", unit.Vacuum, 22 * 3.386389},
	{stackAsk, "does it fit 3", unit.Opening, 3 * 25.4},
	{planAsk, "and by lunch it's 78", unit.ShopTemp, (78 - 32) / 1.8},
	{sideAsk, "with a caul on top 1 in", unit.CaulThickness, 25.4},
	{pumpAsk, "panel 3/4 thick 36x80 inside", unit.PanelThickness, 0.75 * 25.4},
	{sideAsk, "what if the bar were twice as tall", unit.BarHeight, 2 * 25.4},
	{sideAsk, "and twice as many strips", unit.StripCount, 12},
	{sideAsk, "half the strips", unit.StripCount, 3},
	{sideAsk, "half the vacuum", unit.Vacuum, 12.5 * 3.386389},
	{sideAsk, "and strips twice as thick", unit.StripThickness, 0.75 * 25.4},
	{sideAsk, "and if they were twice as thick", unit.StripThickness, 0.75 * 25.4},
	{planAsk, "half as many panels", unit.PanelCount, 7},
	{planAsk, "no. 2 press is down, so just the one", unit.PressCount, 1},
	{sideAsk, "leave it at 25 but give me a 1 1/2 bar", unit.BarHeight, 1.5 * 25.4},
	{stockAsk, "and for two panels 22 wide instead?", unit.TargetWidth, 22 * 25.4},
	{planAsk, "add 4 panels", unit.PanelCount, 18},
	{planAsk, "drop 3 panels", unit.PanelCount, 11},
	{planAsk, "10 degrees colder", unit.ShopTemp, (55. - 32) / 1.8},
	{barAsk, "I have a 1 1/2, will that do", unit.BarHeight, 1.5 * 25.4},
	{barAsk, "what does a 2 in give me", unit.BarHeight, 2 * 25.4},
	{pumpAsk, "and for 5x10", unit.BedWidth, 5 * 304.8},
	{pumpAsk, "to 20", unit.Vacuum, 20 * 3.386389},
	{flatAsk, "rip them in half", unit.StripWidth, 4 * 25.4},
	{flatAsk, "would it if I ripped it in half", unit.StripThickness, 0.75 * 25.4},
	{flatAsk, "plane 1/8 off", unit.StripThickness, 0.625 * 25.4},
	{flatAsk, "2 inches narrower", unit.StripWidth, 6 * 25.4},
	{moveAsk, "what at 50% rh", unit.ServiceHumidity, 50},
	{moveAsk, "humidity 50", unit.ServiceHumidity, 50},
	{moveAsk, "and the shop at 50% rh", unit.ShopHumidity, 50},
	{"face pressure at 25 inHg", "barometer is 29.4", unit.Ambient, 29.4 * 3.386389},
	{"face pressure at 25 inHg", "barometer is 29.4", unit.Vacuum, 25 * 3.386389},
	{"face pressure at 90%, barometer 29.2", "barometer went up to 29.9", unit.Ambient, 29.9 * 3.386389},
	{"face pressure at 90%, barometer 29.2", "barometer went up to 29.9", unit.Vacuum, 0.9 * 29.9 * 3.386389},
	{"face pressure at 25 inHg on a 24x48 panel", "and two of those", unit.PanelCount, 2},
	{pumpAsk + ", 5280 ft", "with an 8 cfm pump and a 1 cfm leak", unit.PumpSpeed, 8 * 0.4719474},
	{sideAsk, "and a 2 in", unit.BarHeight, 2 * 25.4},
	{moveAsk, "glued at 10", unit.WoodMoisture, 10},
	{stockAsk, "what about 44", unit.TargetWidth, 44 * 25.4},
	{stockAsk, "opening 38", unit.TargetWidth, 38 * 25.4},
	{stackAsk, "the press opening is 5", unit.Opening, 5 * 25.4},
	{sideAsk + ", wedge 1:12", "200 lb", unit.WedgeForce, 200 * 4.4482216},
	{sideAsk + ", wedge 1:12 driven with 200 lb", "half the force", unit.WedgeForce, 100 * 4.4482216},
}

func TestHandle_followUps(t *testing.T) {
	for _, c := range followUps {
		r := answerTo(t, Settings{}, c.first, c.then)
		if got, ok := r.Read.Number(c.field); !ok || math.Abs(got-c.want) > 1e-3*c.want {
			t.Errorf("%q, then %q: %s is %g, want %g (read %v, unused %v)", c.first, c.then, c.field, got, c.want, r.Read, r.Unused)
		}
	}
	r := answerTo(t, Settings{Metric: true}, "6 strips 50 wide 10 thick, 25 mm bar, 80 kPa", "bar 10 higher")
	if got, _ := r.Read.Number(unit.BarHeight); math.Abs(got-35) > 1e-6 {
		t.Errorf("a bar of 25 mm, 10 higher, is %g, want 35", got)
	}
}

// What a follow-up cannot change is asked for or left unused.
func TestHandle_followUpsThatAreNot(t *testing.T) {
	for _, c := range []struct {
		first, then string
		unused      string
		need        unit.Field
	}{
		{barAsk, "add 2 panels", "2", unit.PanelCount},
		{sideAsk, "take out 8 strips", "8", unit.StripCount},
		{"5 strips 2 wide 3/8 thick, 1 in bar, 25 inHg", "half the strips", "half", unit.StripCount},
		{sideAsk, "double the vacuum", "double", unit.Vacuum},
		{sideAsk, "20 percent less", "20 percent", ""},
		{sideAsk, "raise the vacuum by 10", "10", unit.Vacuum},
		{sideAsk, "i want 20 psi more at the far joint", "20 psi", ""},
		{planAsk, "leave them in 30 min longer", "30 min", unit.PressTime},
		{sideAsk, "and with a wedge", "", unit.WedgeRatio},
		{pumpAsk, "two pumps", "two", ""},
		{stackAsk, "what about three sleds", "three", ""},
		{flatAsk, "half that", "half", ""},
		{stockAsk, "no 4s", "4s", ""},
		{sideAsk, "20 of 70, miscounted", "70", ""},
		{sideAsk, "2 of the strips are split", "2", ""},
		{sideAsk, "medium?", "medium", ""},
		{pumpAsk, "with a 1 cfm leak", "1 cfm", ""},
		{planAsk, "8 cracked", "8", ""},
		{stockAsk, "one of the 3s has a knot", "3s", ""},
		{stackAsk, "film 6 mil", "6", ""},
		{sideAsk, "its snurfle 3", "3", ""},
		{sideAsk, "somebody dropped 1 on the floor", "1", ""},
	} {
		r := answerTo(t, Settings{}, c.first, c.then)
		if c.unused != "" && !strings.Contains(strings.Join(r.Unused, " "), c.unused) {
			t.Errorf("%q, then %q: unused %q, want %q", c.first, c.then, r.Unused, c.unused)
		}
		if c.need != "" && (len(r.Needs) == 0 || r.Needs[0] != c.need) {
			t.Errorf("%q, then %q: needs %v, want %s", c.first, c.then, r.Needs, c.need)
		}
	}
	if r := answerTo(t, Settings{}, sideAsk, "no the bar is 1 1/4"); r.Read.Has(unit.BarDenied) {
		t.Errorf("a bar said again is denied: %v", r.Read)
	}
}

func TestHandle_stockOfTheThread(t *testing.T) {
	for then, want := range map[string]string{
		"I only have 5 3s": "12 of 54.0, 5 of 76.2",
		"plus 6 at 2":      "12 of 54.0, 9 of 76.2, 6 of 50.8",
		"and 4 more at 3":  "12 of 54.0, 13 of 76.2",
		"no 3s":            "12 of 54.0",

		"found 4 more of the 3s":                 "12 of 54.0, 13 of 76.2",
		"7 of 3, miscounted":                     "12 of 54.0, 7 of 76.2",
		"add 6 of 2":                             "12 of 54.0, 9 of 76.2, 6 of 50.8",
		"two of the 3s are split, so 7 of those": "12 of 54.0, 7 of 76.2",
		"lost 2 of the 3s":                       "12 of 54.0, 7 of 76.2",
		"drop the 2 1/8s":                        "9 of 76.2",
		"lost 2 of the 3s and 5 of the 2 1/8s":   "7 of 54.0, 7 of 76.2",
	} {
		r := answerTo(t, Settings{}, stockAsk, then)
		piles, _ := r.Read[unit.StockPiles].(unit.Piles)
		var got []string
		for _, p := range piles {
			got = append(got, fmt.Sprintf("%d of %.1f", p.Count, p.Width))
		}
		if s := strings.Join(got, ", "); s != want || r.Read.Has(unit.StripCount) || r.Read.Has(unit.StripWidth) {
			t.Errorf("%q: stock is %s, want %s (read %v)", then, s, want, r.Read)
		}
	}
}

// One layer of a stack that was told before is told anew; the others stay.
func TestHandle_layerOfTheThread(t *testing.T) {
	const first = "stack: sled 3/4, fence 1/4, strips 5/16, sled 3/4. opening 4 in, ok?"
	for then, want := range map[string]string{
		"make the fence 1/2":   "sled 19.1, fence 12.7, strips 7.9, sled 19.1",
		"with a 3/8 fence":     "sled 19.1, fence 9.5, strips 7.9, sled 19.1",
		"the top sled is 1/2":  "sled 19.1, fence 6.3, strips 7.9, sled 12.7",
		"bottom sled is 1 in":  "sled 25.4, fence 6.3, strips 7.9, sled 19.1",
		"no top sled":          "sled 19.1, fence 6.3, strips 7.9",
		"and the strips 3/8":   "sled 19.1, fence 6.3, strips 9.5, sled 19.1",
		"sleds are 1/2 though": "sled 12.7, fence 6.3, strips 7.9, sled 12.7",
	} {
		r := answerTo(t, Settings{}, first, then)
		layers, _ := r.Read[unit.StackLayers].(unit.Layers)
		var got []string
		for _, l := range layers {
			got = append(got, fmt.Sprintf("%s %.1f", l.Part, l.Thickness))
		}
		if s := strings.Join(got, ", "); s != want {
			t.Errorf("%q: stack is %s, want %s", then, s, want)
		}
	}
}

// A later message asks the backwards question of its thread for another time.
func TestHandle_anotherTime(t *testing.T) {
	r := answerTo(t, Settings{}, "5x5 frame 4 in deep, what size pump gets me to 25 inHg in 2 min?", "3 min is fine")
	goal, _ := r.Read[unit.Goal].(unit.Facts)
	if got, _ := goal.Number(unit.Pump); got != 180 {
		t.Errorf("the goal is %v, want 180 s", goal)
	}
}

// Of two goals the one that was worked for is the one that is changed.
func TestHandle_anotherOfTwoGoals(t *testing.T) {
	r := answerTo(t, Settings{}, "how tall a bar for 15 psi on the last joint and 40 psi on the first joint, 6 strips 3/4 thick, 3 wide, 25 inHg", "i would settle for 10 psi")
	if !strings.Contains(r.Text, "for 10 psi (69 kPa) at the far joint") {
		t.Errorf("want the bar for 10 psi at the far joint:\n%s", r.Text)
	}
}

// answerTo plays messages of one thread and returns the last reply.
func answerTo(t *testing.T, s Settings, texts ...string) (r Reply) {
	t.Helper()
	b := New(NewMemory())
	b.Settings = func(string) Settings { return s }
	for _, text := range texts {
		var err error
		if r, err = b.Handle(context.Background(), Message{Room: "shop", Thread: "1", From: "ana", Text: text}); err != nil {
			t.Fatal(err)
		}
	}
	return r
}
