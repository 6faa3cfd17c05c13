package bot

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"presshand/bot/picture"
	"presshand/engine/unit"
)

// drawnFirst answers a message and returns what its picture is made of.
func drawnFirst(t *testing.T, text string) Drawn {
	t.Helper()
	r, err := New(NewMemory()).Handle(context.Background(), Message{Room: "shop", From: "ana", Text: text})
	if err != nil || len(r.Drawn) == 0 {
		t.Fatalf("%q: %d answers with error %v, want one", text, len(r.Drawn), err)
	}
	return r.Drawn[0]
}

// mm writes a length to a hundredth of a millimetre.
func mm(l unit.Length) string { return fmt.Sprint(math.Round(l.Millimetres()*100)/100 + 0) }

func mmRange(r unit.Range[unit.Length]) string {
	if r.Low == r.High {
		return mm(r.Mid)
	}
	return mm(r.Low) + ".." + mm(r.Mid) + ".." + mm(r.High)
}

// described writes all that a section's description says of shapes, in
// millimetres; what is nothing is left out.
func described(c picture.CrossSection) string {
	var parts []string
	say := func(when bool, format string, args ...any) {
		if when {
			parts = append(parts, fmt.Sprintf(format, args...))
		}
	}
	for _, l := range c.Layers {
		say(true, "%s %s", l.Part, mm(l.Thickness))
	}
	say(c.Thinnest > 0, "thinnest %s", mm(c.Thinnest))
	if n := len(c.Widths); n > 0 {
		last := slices.IndexFunc(c.Widths, func(w unit.Length) bool { return math.Abs(float64(w-c.Widths[0])) > 1e-9 })
		if last < 0 {
			say(true, "widths %d × %s", n, mm(c.Widths[0]))
		} else {
			var ws []string
			for _, w := range c.Widths {
				ws = append(ws, mm(w))
			}
			say(true, "widths %s", strings.Join(ws, " "))
		}
	}
	say(c.Ripped, "one ripped")
	if b := c.Bar; b != nil {
		say(true, "bar %s × %s pushes %s", mm(b.Height), mm(b.Width), mmRange(b.Covered))
		say(b.Tips > 0, "tips %s", mm(b.Tips))
		say(b.Wider > 0, "wider %s", mm(b.Wider))
		say(b.OnBed, "on bed")
		say(b.Both, "both")
	}
	if w := c.Wedge; w != nil {
		say(true, "wedge %s %q", mm(w.Gap), w.Said)
	}
	if s := c.Spring; s != nil {
		say(true, "spring %s", mm(s.Over))
	}
	say(c.TwoFaces, "two faces")
	for _, p := range c.Proud {
		say(true, "proud %s %s", mmRange(p.By), signed(p.Verdict))
	}
	say(c.Height > 0, "high %s", mm(c.Height))
	say(c.Opening > 0, "opening %s %s", mm(c.Opening), signed(c.Clearance))
	say(c.Bag, "bag")
	say(c.Tent > 0, "tent %s", mm(c.Tent))
	say(c.Side, "side")
	say(c.SledAssumed, "sled assumed")
	say(c.WidthAssumed, "bar's width assumed")
	say(c.CoverSaid, "cover said")
	return strings.Join(parts, ", ")
}

func signed(v picture.Verdict) string { return [...]string{"unjudged", "good", "care", "stop"}[v] }

// describedSections are messages and what their pictures are made of, by hand: an
// inch is 25.4 mm, 3/4 are 19.05, 1/2 12.7, 3/8 9.525, 5/16 7.9375, 1/4 6.35, 1/8
// 3.175 and 1/16 1.5875 mm. The usual sled has 19 mm, the usual bar is 3/4 in wide.
var describedSections = []struct{ text, want string }{
	{ // on the sled nothing is told behind the bar: covered by the strips for sure, to its top at best
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue",
		"sled 19, strips 6.35, widths 5 × 57.15, bar 25.4 × 19.05 pushes 6.35..6.35..25.4, side, sled assumed, bar's width assumed",
	},
	{ // 1/4 + 3/4 behind the bar cover all of it; it tips from (1 + 9/16) / (2 · 7/8) = 25/28 in, 22.68 mm,
		// and would not at b² = 2·7/8·1 − 1, b = 0.866 in, 22.0 mm
		"6 strips 2 wide, 1/4 thick, 1 in bar on both sides, 3/4 caul, 25 inHg, yellow glue",
		"sled 19, strips 6.35, caul 19.05, widths 6 × 50.8, bar 25.4 × 19.05 pushes 22.68..25.4..25.4, tips 22.68, wider 22, both, side, sled assumed, bar's width assumed",
	},
	{ // wider than high; the film comes down behind it to the strips, as nothing lies on them
		"6 strips 2 wide, 1/4 thick, bar 3/4 high and 1 in wide, 1/2 sled, opening 4 in, 25 inHg, yellow glue",
		"sled 12.7, strips 6.35, widths 6 × 50.8, bar 19.05 × 25.4 pushes 6.35, high 31.75, opening 101.6 good, side",
	},
	{ // the bar ends under the strips
		"6 strips 2 wide, 1/4 thick, 1/2 in bar on the bed beside the 3/4 sled, 25 inHg, yellow glue",
		"sled 19.05, strips 6.35, widths 6 × 50.8, bar 12.7 × 19.05 pushes 6.35, on bed, side, bar's width assumed",
	},
	{
		"6 strips 2 wide, 3/4 thick, strips run 1/16 over the opening, 25 inHg, yellow glue, 48 long",
		"sled 19, strips 19.05, widths 6 × 50.8, spring 1.59, side, sled assumed",
	},
	{
		"6 strips 2 wide, 3/4 thick, no bar, 1:12 wedge driven with 200 lb, 48 long, 25 inHg, yellow glue",
		`sled 19, strips 19.05, widths 6 × 50.8, wedge 0 "1 in 12, driven with 200 lbf", side, sled assumed`,
	},
	{ // the faces lie under the bar's lowest 1/4; 3/4 + 1/4 above that are covered
		"7 strips 2 wide, 1/4 thick on 3/4 ply, both sides, 1 3/4 in bar, 25 inHg, yellow glue",
		"sled 19, strips 6.35, core 19.05, strips 6.35, widths 7 × 50.8, bar 44.45 × 19.05 pushes 31.75, two faces, side, sled assumed, bar's width assumed",
	},
	{
		"strips 2, 3, 1 1/2, 4, 2 1/4 wide, 1/2 thick, 1 in bar, 25 inHg, yellow glue",
		"sled 19, strips 12.7, widths 50.8 76.2 38.1 101.6 57.15, bar 25.4 × 19.05 pushes 12.7..12.7..25.4, side, sled assumed, bar's width assumed",
	},
	{ // it tips from (4 + 9/16) / (2 · 15/8) = 73/60 in, and would not at b² = 2·15/8·2 − 4, b = 1.871 in, 47.52 mm
		"7 strips 2 wide, 1/4 thick, 2 in bar covered to its top, 25 inHg, pva",
		"sled 19, strips 6.35, widths 7 × 50.8, bar 50.8 × 19.05 pushes 30.9..50.8..50.8, tips 30.9, wider 47.52, side, sled assumed, bar's width assumed, cover said",
	},
	{ // ten whole strips are 22 1/2 of 24 in: the eleventh has 1 1/2 in, 38.1 mm
		"panel 24 wide of 2 1/4 strips, 1/4 thick on 3/4 ply, 1 1/4 in bar, 25 inHg, pva",
		"sled 19, core 19.05, strips 6.35, widths 57.15 57.15 57.15 57.15 57.15 38.1 57.15 57.15 57.15 57.15 57.15, one ripped, bar 31.75 × 19.05 pushes 25.4, side, sled assumed, bar's width assumed",
	},
	{
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar in the bag, bag tents 1/4, 25 inHg, yellow glue",
		"sled 19, strips 6.35, widths 5 × 57.15, bar 25.4 × 19.05 pushes 6.35..6.35..25.4, bag, tent 6.35, side, sled assumed, bar's width assumed",
	},
	{ // 1/4 to 5/16; 5/16 + 3/8 + 3/4 cover the bar, which tips from (1 + 9/16) / (2 · 27/32) = 25/27 in
		// and would not at b² = 2·27/32·1 − 1, b = 0.829 in, 21.06 mm
		"5 strips 2 1/4 wide, 1/4 to 5/16 thick, 1 in bar, 3/8 mat, 3/4 caul, 25 inHg, yellow glue",
		"sled 19, strips 7.94, mat 9.53, caul 19.05, thinnest 6.35, widths 5 × 57.15, bar 25.4 × 19.05 pushes 23.52..25.4..25.4, tips 23.52, wider 21.06, side, sled assumed, bar's width assumed",
	},
	{ // 5/16 − 1/4 = 1/16 proud; 3·3/4 + 2·5/16 in and two films of 0.15 mm
		"stack: sled 3/4, fence 1/4, strips 5/16, plastic, sled 3/4, fence 1/4, strips 5/16, plastic, caul 3/4; opening 4 in",
		"sled 19.05, fence 6.35, strips 7.94, film 0.15, sled 19.05, fence 6.35, strips 7.94, film 0.15, caul 19.05, proud 1.59 good, proud 1.59 good, high 73.33, opening 101.6 good",
	},
	{ // 5/16 − 1/2 = −3/16 and 5/16 − 1/8 = 3/16; the lower fence carries: 3·3/4 + 1/2 + 5/16 in and a film
		"stack: sled 3/4, fence 1/2, strips 5/16, film, sled 3/4, fence 1/8, strips 5/16, film, caul 3/4; opening 3 in",
		"sled 19.05, fence 12.7, strips 7.94, film 0.15, sled 19.05, fence 3.18, strips 7.94, film 0.15, caul 19.05, proud -4.76 stop, proud 4.76 good, high 77.94, opening 76.2 stop",
	},
	{ // the same levels the other way up: each verdict stays with its own
		"stack: sled 3/4, fence 1/8, strips 5/16, film, sled 3/4, fence 1/2, strips 5/16, film, caul 3/4; opening 100 mm",
		"sled 19.05, fence 3.18, strips 7.94, film 0.15, sled 19.05, fence 12.7, strips 7.94, film 0.15, caul 19.05, proud 4.76 good, proud -4.76 stop, high 77.94, opening 100 good",
	},
	{ // 8 mm on a fence of 7.5 mm: too little
		"stack: sled 18 mm, fence 7.5 mm, strips 8 mm, sled 18 mm; opening 48 mm",
		"sled 18, fence 7.5, strips 8, sled 18, proud 0.5 care, high 44, opening 48 care",
	},
	{
		"stack: sled 3/4, strips 5/16, mat 1/4, caul 3/4, bar 1; opening 4 in in the bag",
		"sled 19.05, strips 7.94, mat 6.35, caul 19.05, bar 25.4, high 77.79, opening 101.6 good, bag",
	},
	{ // no vacuum, no figure for the mat, but a height: 2·3/4 + 5/16 + 3/8 in
		"stack: sled 3/4, fence 3/8, strips 5/16, mat 3/8, sled 3/4; opening 6 in",
		"sled 19.05, fence 9.53, strips 7.94, mat 9.53, sled 19.05, high 55.56, opening 152.4 good",
	},
	{
		"8 strips 50 mm wide 18 mm thick, 30 mm bar 40 mm wide, sled 15 mm, caul 12 mm, bag tents 5 mm, 0.85 bar, pva",
		"sled 15, strips 18, caul 12, widths 8 × 50, bar 30 × 40 pushes 30, bag, tent 5, side",
	},
}

// What was said comes to the drawing as it is, and what the answer worked out as
// it came out.
func TestSection_described(t *testing.T) {
	for _, c := range describedSections {
		if got := described(drawnFirst(t, c.text).section()); got != c.want {
			t.Errorf("%q is drawn of\n%s\nwant\n%s", c.text, got, c.want)
		}
	}
}
