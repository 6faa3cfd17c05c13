package bot_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"presshand/bot"
	"presshand/engine/unit"
)

const (
	plainBar = "6 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"
	bothBars = "6 strips 2 wide, 1/4 thick, 1 in bar on both sides, 3/4 caul, 25 inHg, yellow glue"
	lowBar   = "6 strips 2 wide, 1/4 thick, 1/2 in bar on the bed beside the 3/4 sled, 25 inHg, yellow glue"
	sprung   = "6 strips 2 wide, 3/4 thick, strips run 1/16 over the opening, 25 inHg, yellow glue, 48 long"
	wedgedIn = "6 strips 2 wide, 3/4 thick, no bar, 1:12 wedge driven with 200 lb, 48 long, 25 inHg, yellow glue"
	twoFaced = "7 strips 2 wide, 1/4 thick on 3/4 ply, both sides, 1 3/4 in bar, 25 inHg, yellow glue"
	several  = "strips 2, 3, 1 1/2, 4, 2 1/4 wide, 1/2 thick, 1 in bar, 25 inHg, yellow glue"
	many     = "41 strips 1 wide, 1/4 thick, 1 in bar, 25 inHg, pva"
	tips     = "7 strips 2 wide, 1/4 thick, 2 in bar covered to its top, 25 inHg, pva"
	stacked  = "stack: sled 3/4, fence 1/4, strips 5/16, plastic, sled 3/4, fence 1/4, strips 5/16, plastic, caul 3/4; opening 4 in"
	barLast  = "stack: sled 3/4, strips 5/16, mat 1/4, caul 3/4, bar 1; opening 4 in in the bag"
)

// Every figure in the section is the answer's own.
func TestDrawSection_figuresOfTheAnswer(t *testing.T) {
	for _, c := range []struct {
		text, shows, key string
		field            unit.Field
	}{
		{plainBar, "side first", "kpa", unit.SideFirstJoint},
		{plainBar, "side far", "kpa", unit.SideFarJoint},
		{plainBar, "first joint figure", "kpa", unit.SideFirstJoint},
		{plainBar, "need", "kpa", unit.GlueContact},
		{bothBars, "side far", "kpa", unit.SideFarJoint},
		{bothBars, "far joint figure", "kpa", unit.SideFarJoint},
		{bothBars, "bar covered", "mm", unit.BarCovered},
		{lowBar, "side first", "kpa", unit.SideFirstJoint},
		{sprung, "preload", "kpa", unit.Preload},
		{sprung, "rise", "mm", unit.Rise},
		{sprung, "snap", "kpa", unit.Snap},
		{wedgedIn, "preload", "kpa", unit.Preload},
		{twoFaced, "bar covered", "mm", unit.BarCovered},
		{several, "side far", "kpa", unit.SideFarJoint},
		{many, "side far", "kpa", unit.SideFarJoint},
		{tips, "bar covered", "mm", unit.BarCovered},
		{stacked, "clearance height", "mm", unit.Clearance},
		{stacked, "stack height", "mm", unit.StackHeight},
		{barLast, "stack height", "mm", unit.StackHeight},
	} {
		a, all := drawnSVG(t, c.text)
		want, ok := a.Values[c.field].(unit.Triple)
		got := showing(all, c.shows)
		if !ok || want.Mid == nil || len(got) != 1 || math.Abs(got[0].number(t, c.key)-*want.Mid) > 0.001 {
			t.Errorf("%q: %s drawn %v, want one of %v", c.text, c.shows, got, a.Values[c.field])
		}
	}
}

// What of the bar is hatched is its height less what pushes of it, by hand in
// inches: of 1 3/4 beside two faces of 1/4 on a core of 3/4 it is 1/2.
func TestDrawSection_idleBar(t *testing.T) {
	for text, want := range map[string]float64{plainBar: 0.75, bothBars: 0, lowBar: 0.5, twoFaced: 0.5, several: 0.5, tips: 0} {
		_, all := drawnSVG(t, text)
		got := 0.0
		for _, s := range showing(all, "bar idle") {
			got = s.number(t, "mm") / 25.4
		}
		if math.Abs(got-want) > 1e-4 {
			t.Errorf("%q: %g in of the bar is hatched, want %g", text, got, want)
		}
	}
}

// What a picture says beside its figures, in its alt text and its title.
func TestDrawSection_words(t *testing.T) {
	for text, wants := range map[string][]string{
		plainBar: {"Verdict: take care", "Side, joint 5: 0 psi", "The glue needs 10.2 psi", "Assumed: sled 3/4 in; a fence on the far side"},
		bothBars: {"joints 1 and 5", "Side, joint 3: "},
		lowBar:   {"the bar ends under the strips and does nothing", "standing on the bed"},
		sprung:   {"Fences on both sides", "Fences press every joint: 120 psi", "the middle rises 17/32 in", "hold it down", "lies down flat under 7.4 psi"},
		wedgedIn: {"A wedge between the strips and the fence", "Wedge 1 in 12, driven with 200 lbf"},
		twoFaced: {"strips 1/4 in, core 3/4 in, strips 1/4 in", "Side figures are for one face, with its half of the bar's push"},
		several:  {"From the bar: 2 in, 3 in, 1 1/2 in, 4 in, 2 1/4 in", "5 strips, together 12 3/4 in", "joint 4: "},
		many:     {"41 strips of 1 in = 41 in", "Side, joint 40: "},
		tips:     {"The bar may tip: "},
		barLast:  {"Stack 3 1/16 in high"},
		"6 strips 2 wide, 3/4 thick, 1/2 in bar, 25 inHg, yellow glue":                                     {"the bar, and film on the strips' own edge above it, 1/4 in"},
		"6 strips 2 wide, 3/4 thick, no bar, 25 inHg, yellow glue":                                         {"No bar: the film pushes on the strips' own edge", "A fence on the far side"},
		"5 strips 2 1/4 wide, 1/2 thick, 1 in bar, 25 inHg, yellow glue, press opening 1 1/2 in":           {"opening 1 1/2 in: too high by 1/4 in"},
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 29.5 inHg, yellow glue, 95F":                            {"Verdict: stop"},
		"what bar for 50 psi at the far joint, 6 strips 2 wide, 1/2 thick, 25 inHg, yellow glue":           {"lay a caul or sled there, up to 4 5/16 in on the bar (assumed)", "4 5/16 in (2 3/8–4 5/16 in)"},
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar in the bag, bag tents 1/4, 25 inHg, yellow glue":         {"up to 1/4 in high: there it does not push"},
		"1 in or 1 1/2 bar? 5 strips 2 1/4 wide, 1/2 thick, 25 inHg, yellow glue":                          {"Drawn: bar height 1 1/2 in, better than bar height 1 in", "1 in of the bar does nothing"},
		"5 strips 57.15 mm wide, 6.35 mm thick, 25.4 mm bar, 84.7 kPa, pva":                                {"strips 6.35 mm", "5 strips of 57.15 mm", "bar 25.4 mm high", "6.35 mm (6.35–25.4 mm) pushes"},
		"stack: sled 3/4, fence 1/4, strips 1/64, film, caul 3/4; opening 4 in":                            {"strips 1/64 in", "The fence stands 1/4 in higher than the work"},
		"stack: sled 3/4, fence 1/4, strips 5/16, bar 1 in, film, sled 3/4; opening 4 in":                  {"A side bar 1 in high and 3/4 in wide, standing on the sled", "Assumed: bar 3/4 in wide"},
		"stack: sled 3/4, fence 3/8, strips 5/16, mat 3/8, sled 3/4; opening 6 in; 25 inHg":                {"Mat: 3/8 in, under the vacuum about 1/4 in"},
		"5 strips 2 1/4 wide, 1/4 to 5/16 thick, 1 in bar, 3/8 mat, 3/4 caul, 25 inHg, yellow glue":        {"the thinnest, 1/4 in"},
		"stack: sled 1/2, fence 1/4, strips 1/4, film, sled 1/2, fence 1/4, strips 1/4, film, caul 1/2":    {"Levels 1–2: not proud of the fence"},
		"panel 24 wide of 2 1/4 strips, 1/4 thick on 3/4 ply, 1 1/4 in bar, 25 inHg, pva, strips 2 1/4 in": {"10 strips of 2 1/4 in and one narrower = 24 in"},
	} {
		d, ok := say(t, bot.New(bot.NewMemory()), bot.Message{From: "ana", Text: text}).Draw()
		if !ok {
			t.Errorf("%q has no drawing, want one", text)
			continue
		}
		for _, w := range wants {
			if !strings.Contains(d.Alt, w) {
				t.Errorf("%q: alt %q lacks %q", text, d.Alt, w)
			}
		}
	}
}

// A stack is drawn as high as it is worked out: on the page from the bed to the
// highest part, by the scale that the sled has.
func TestDrawSection_heightOfTheAnswer(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	tried := 0
	for range 60 {
		text, bar := "stack: ", false
		for i := range 1 + r.IntN(3) {
			text += fmt.Sprintf("sled %d mm, ", 12+r.IntN(12))
			if r.IntN(2) == 0 {
				text += fmt.Sprintf("fence %d mm, ", 4+r.IntN(10))
			}
			text += fmt.Sprintf("strips %d mm, ", 6+r.IntN(8))
			if i == 0 && r.IntN(3) == 0 {
				text, bar = text+fmt.Sprintf("bar %d mm, ", 10+r.IntN(40)), true
			}
			if r.IntN(2) == 0 {
				text += "film, "
			}
		}
		text += fmt.Sprintf("caul %d mm; opening 200 mm", 12+r.IntN(12))
		a, all := drawnSVG(t, text)
		want, ok := a.Values[unit.StackHeight].(unit.Triple)
		if !ok {
			continue
		}
		tried++
		top, scale := math.Inf(1), 0.0
		for _, s := range all {
			if slices.Contains([]string{"sled", "strips", "caul", "bar", "fence"}, s["shows"]) {
				top = min(top, s.top(t))
			}
			if s["shows"] == "sled" && scale == 0 {
				scale = s.height(t) / s.number(t, "mm")
			}
		}
		bed := showing(all, "bed")[0].top(t)
		if got := (bed - top) / scale; math.Abs(got-*want.Mid) > 0.05 { // coordinates are rounded to 0.01
			t.Errorf("%q (bar %v) is drawn %g mm high, want %g", text, bar, got, *want.Mid)
		}
	}
	if tried < 40 {
		t.Errorf("%d stacks tried, want most of 60", tried)
	}
}

// top is the highest place of a shape on the page.
func (s shown) top(t *testing.T) float64 {
	t.Helper()
	low := math.Inf(1)
	for _, p := range strings.Fields(s["points"]) {
		_, y, _ := strings.Cut(p, ",")
		v, err := strconv.ParseFloat(y, 64)
		if err != nil {
			t.Fatal(err)
		}
		low = min(low, v)
	}
	return low
}

// What a second person measured is drawn under the load's number.
func TestDrawSection_loadAsMeasured(t *testing.T) {
	b := bot.New(bot.NewMemory())
	say(t, b, bot.Message{From: "ana", Thread: "1", ID: "1", Text: plainBar})
	say(t, b, bot.Message{From: "ana", Thread: "1", ID: "2", Text: "post it"})
	d, ok := say(t, b, bot.Message{From: "ben", Thread: "1", ID: "3", Text: "1 checked, bar 3/4 in, strips 1/4, gauge 25"}).Draw()
	if !ok || d.Title != "Load 1, as measured: take care" || !strings.Contains(d.Alt, "bar 3/4 in high") {
		t.Errorf("a drawing %v: %+v, want load 1 with the measured bar", ok, d)
	}
}
