package bot_test

import (
	"encoding/xml"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"presshand/bot"
	"presshand/engine"
	"presshand/engine/unit"
)

// A shown is an element of an SVG: what it shows, its facts and its shape.
type shown map[string]string

// drawnSVG answers a message, and returns the answer and the elements of its
// drawing that show something.
func drawnSVG(t *testing.T, text string) (engine.Answer, []shown) {
	t.Helper()
	r := say(t, bot.New(bot.NewMemory()), bot.Message{From: "ana", Text: text})
	d, ok := r.Draw()
	if !ok {
		t.Fatalf("%q has no drawing, want one", text)
	}
	var svg struct {
		Elements []struct {
			Attrs []xml.Attr `xml:",any,attr"`
			Text  string     `xml:",chardata"`
		} `xml:",any"`
	}
	if err := xml.Unmarshal(d.SVG(), &svg); err != nil {
		t.Fatal(err)
	}
	var out []shown
	for _, e := range svg.Elements {
		s := shown{}
		for _, a := range e.Attrs {
			s[strings.TrimPrefix(a.Name.Local, "data-")] = a.Value
		}
		if s["shows"] != "" {
			s["text"] = e.Text
			out = append(out, s)
		}
	}
	return r.Drawn[0].Answer, out
}

func (s shown) number(t *testing.T, key string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s[key], 64)
	if err != nil {
		t.Fatalf("%s of %s is %q, want a number", key, s["shows"], s[key])
	}
	return v
}

// height is how high the shape stands on the page.
func (s shown) height(t *testing.T) float64 {
	t.Helper()
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range strings.Fields(s["points"]) {
		_, y, _ := strings.Cut(p, ",")
		v, err := strconv.ParseFloat(y, 64)
		if err != nil {
			t.Fatal(err)
		}
		low, high = min(low, v), max(high, v)
	}
	return high - low
}

// showing are the elements that show a thing.
func showing(all []shown, what string) []shown {
	return slices.DeleteFunc(slices.Clone(all), func(s shown) bool { return s["shows"] != what })
}

// The figures beside a drawing are those of the answer.
func TestDraw_figuresOfTheAnswer(t *testing.T) {
	const wedged = "got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide, wedge takes 3/8 to 3/4"
	for _, c := range []struct {
		text, shows, key string
		field            unit.Field
	}{
		{"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg", "bar covered", "mm", unit.BarCovered},
		{"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg", "face pressure", "kpa", unit.FacePressure},
		{"two sleds, base 3/4, fence 1/4, strips 5/16, film, sled 3/4, press opening 4 in", "stack height", "mm", unit.StackHeight},
		{"two sleds, base 3/4, fence 1/4, strips 5/16, film, sled 3/4, press opening 4 in", "proud", "mm", unit.Proud},
		{wedged, "width sum", "mm", unit.WidthSum},
		{wedged, "wedge gap", "mm", unit.WedgeGap},
		{"6 strips 2 wide, 1/2 thick, 1 in bar, 25 inHg, waxed sled, caul 1/2. how far does the bar reach", "reach", "mm", unit.BarReach},
	} {
		a, all := drawnSVG(t, c.text)
		v := a.Values[c.field]
		if each, ok := v.(unit.Triples); ok && len(each) > 0 {
			v = each[0]
		}
		want, ok := v.(unit.Triple)
		if !ok || want.Mid == nil {
			t.Errorf("%q: %s is %v, want a figure", c.text, c.field, a.Values[c.field])
			continue
		}
		got := showing(all, c.shows)
		if len(got) != 1 || math.Abs(got[0].number(t, c.key)-*want.Mid) > 0.001 { // written to a thousandth
			t.Errorf("%q: %s drawn %v, want one of %g", c.text, c.shows, got, *want.Mid)
		}
	}
}

// The strips stand on the page in the order of the pick, each as high as its
// share of the sum.
func TestDraw_stripsOfThePick(t *testing.T) {
	a, all := drawnSVG(t, "got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide")
	picks, _ := a.Values[unit.Picks].(unit.Sets)
	drawn := showing(all, "strip")
	if len(picks) != 1 || len(drawn) != len(picks[0]) {
		t.Fatalf("%d strips drawn for %v, want each once", len(drawn), picks)
	}
	page, sum := 0.0, 0.0
	for i, s := range drawn {
		page, sum = page+s.height(t), sum+picks[0][i]
	}
	for i, s := range drawn {
		if got, want := s.height(t), picks[0][i]*page/sum; math.Abs(got-want) > 0.03 { // coordinates are rounded to 0.01
			t.Errorf("strip %d of %g mm is %g high, want %g", i+1, picks[0][i], got, want)
		}
	}
}

// Widths stand on the cut list as they were stated, each strip and each joint is
// told, and what is over is the answer's.
func TestDraw_stripsAsStated(t *testing.T) {
	for text, want := range map[string]string{
		"got 40 at 1 1/8, 30 at 1 1/4, 20 at 1 3/8, 12 at 2 1/64; three panels 24 wide": "2 1/64 in",
		"got 14 at 62.3 mm, 9 at 80.4 mm; need 800 mm wide":                             "4 × 62.3 mm",
		"got 60 at 3/4; need 40 wide":                                                   "54 × 3/4 in",
		"got 1 at 49; need 48 wide":                                                     "1/2 in over",
		"got 3 at 2; need 48 wide":                                                      "42 1/2 in short",
	} {
		a, all := drawnSVG(t, text)
		picks, _ := a.Values[unit.Picks].(unit.Sets)
		strips, joints := 0, 0
		for _, p := range picks {
			strips, joints = strips+len(p), joints+len(p)-1
		}
		told := 0
		for _, s := range showing(all, "strip width") {
			told += int(s.number(t, "count"))
		}
		if told != strips {
			t.Errorf("%q: %d strips are told, want %d", text, told, strips)
		}
		numbered := 0
		for _, s := range showing(all, "joint") {
			first, last, run := strings.Cut(s["text"], "–")
			from, to := shown{"joint": first}.number(t, "joint"), 0.0
			if to = from; run {
				to = shown{"joint": last}.number(t, "joint")
			}
			numbered += int(to-from) + 1
		}
		if numbered != joints {
			t.Errorf("%q: %d joints are numbered, want %d", text, numbered, joints)
		}
		for i, s := range showing(all, "outcome") {
			want := a.Values[unit.Over]
			if each, ok := want.(unit.Triples); ok {
				want = each[i]
			}
			if one, ok := want.(unit.Triple); ok && math.Abs(s.number(t, "over-mm")-*one.Mid) > 0.001 {
				t.Errorf("%q: %s mm are over, want %g", text, s["over-mm"], *one.Mid)
			}
		}
		if !slices.ContainsFunc(all, func(s shown) bool { return strings.Contains(s["text"], want) }) {
			t.Errorf("%q: no label says %q", text, want)
		}
	}
}
