package bot_test

import (
	"fmt"
	"maps"
	"math"
	"strings"
	"testing"

	"presshand/bot"
	"presshand/engine"
	"presshand/engine/unit"
)

// full is the full minute that the words have too.
func full(t unit.Time) float64 { return math.Ceil(t.Minutes() - 1e-6) }

// Each piece of a load's way stands in the drawing from and to when the answer
// has it, as usual and late, and in the table.
func TestDraw_clockOfTheDay(t *testing.T) {
	for _, text := range []string{
		"14 panels 24x48, two presses, start 7:30, pva at 65f",
		"24 panels 24x48, two presses, start 7:30, pva at 65f, has to be out by 4",
		"2 panels 40x90, one press, start 14:00, resorcinol at 60F",
		"12 panels 24x48, two presses, start 7:30, layup 2 min, leave it in 2 hours, has to be out by 12:00",
	} {
		a, all := drawnSVG(t, text)
		if a.Day == nil || len(a.Day.Loads) < 2 {
			t.Fatalf("%q: no day of several loads", text)
		}
		for i, l := range a.Day.Loads {
			name := fmt.Sprintf("Load %d", i+1)
			u, late := l.Stage, l.Late
			for what, want := range map[string][2]unit.Time{
				"lay-up": {u.LayUp, u.LaidUp}, "press": {u.Shut, u.Due}, "waits": {u.Due, u.Unloading}, "unload": {u.Unloading, u.Out},
				"unload in press": {u.Unloading, u.Out}, "late": {late.Shut, late.Out},
			} {
				wantBar(t, text, all, what, name, want)
			}
			for key, want := range map[string]unit.Time{"lay-up-min": u.LayUp, "in-min": u.Shut, "out-min": u.Out, "late-min": late.Out} {
				if got := in(showing(all, "table"), name, key); got != nil && got.number(t, key) != full(want) || got == nil && key != "late-min" {
					t.Errorf("%q: the table has %v for %s of %s, want minute %g", text, got, key, name, full(want))
				}
			}
		}
	}
}

// in finds the element of a load that has a key.
func in(all []shown, load, key string) shown {
	for _, s := range all {
		if _, ok := s[key]; ok && s["load"] == load {
			return s
		}
	}
	return nil
}

func wantBar(t *testing.T, text string, all []shown, what, load string, want [2]unit.Time) {
	t.Helper()
	got := in(showing(all, what), load, "from-min")
	if got == nil {
		none := len(showing(all, what)) == 0 // nothing of the kind, as where no load takes longer
		if full(want[0]) < full(want[1]) && !(none && what == "late") {
			t.Errorf("%q: %s of %s is not drawn", text, what, load)
		}
		return
	}
	if got.number(t, "from-min") != full(want[0]) || got.number(t, "to-min") != full(want[1]) {
		t.Errorf("%q: %s of %s is drawn from %s to %s min, want %g to %g", text, what, load, got["from-min"], got["to-min"], full(want[0]), full(want[1]))
	}
}

// A deadline says how many loads miss it, as usual and at the worst, and by how
// much.
func TestDraw_deadline(t *testing.T) {
	for text, says := range map[string]string{
		"24 panels 24x48, two presses, start 7:30, pva at 65f, has to be out by 4":                           "missed: load 8 by 5 min",
		"9 panels 600 x 900 mm, two presses, start 07:00, pva at 18C, has to be out by 16:00":                "Deadline 16:00 holds, all out by 14:38 at the latest",
		"12 panels 24x48, two presses, start 7:30, layup 2 min, leave it in 2 hours, has to be out by 12:00": "missed: load 3 by 12 min, load 4 by 33 min",
	} {
		a, all := drawnSVG(t, text)
		told := showing(all, "deadline kept")
		if len(told) != 1 || !strings.Contains(altOf(t, text), says) {
			t.Errorf("%q: the deadline is told %v, want %q in the alt text", text, told, says)
			continue
		}
		usual, late := 0, 0
		for _, l := range a.Day.Loads {
			if l.Stage.Out > a.Day.Deadline {
				usual++
			}
			if l.Late.Out > a.Day.Deadline {
				late++
			}
		}
		if told[0].number(t, "loads-late") != float64(usual) || told[0].number(t, "loads-late-at-worst") != float64(late) {
			t.Errorf("%q: %v, want %d and %d loads late", text, told[0], usual, late)
		}
		if missed := len(showing(all, "warning")) > 0; missed != (a.Verdict == engine.Stop) {
			t.Errorf("%q: warned %v with the verdict %s", text, missed, a.Verdict)
		}
	}
}

// altOf is the alt text of a message's drawing.
func altOf(t *testing.T, text string) string {
	t.Helper()
	d, _ := say(t, bot.New(bot.NewMemory()), bot.Message{From: "ana", Text: text}).Draw()
	return d.Alt
}

// Under the clock every panel of a bed lies where the answer has it, by the
// letter of its size; loads alike are drawn once.
func TestDraw_bedsOfTheDay(t *testing.T) {
	for _, text := range []string{
		"4 panels 18 by 30 and 3 panels 24 by 48, start 7:30, one press, pva",
		"14 panels 24x48, two presses, start 7:30, pva at 65f",
		"5 panels of 24x48 and 2 panels 30x60 and 3 panels 12x20, two presses, start 7:30, epoxy at 75F",
		"300 panels 12x12, two presses, start 7:00, pva",
	} {
		a, all := drawnSVG(t, text)
		want := map[string]bool{}
		for _, l := range a.Day.Loads {
			for _, p := range l.Panels {
				size := a.Day.Sizes[p.Panel]
				across, along := size.Width, size.Length
				if p.Turned {
					across, along = along, across
				}
				name := ""
				if len(a.Day.Sizes) > 1 {
					name = string(rune('A' + p.Panel))
				}
				want[fmt.Sprintf("%s %.2f %.2f %.2f %.2f", name, p.Y.Millimetres(), p.X.Millimetres(), along.Millimetres(), across.Millimetres())] = true
			}
		}
		got := map[string]bool{}
		for _, s := range showing(all, "panel") {
			got[fmt.Sprintf("%s %.2f %.2f %.2f %.2f", s["name"], s.number(t, "x-mm"), s.number(t, "y-mm"), s.number(t, "along-mm"), s.number(t, "across-mm"))] = true
		}
		if !maps.Equal(got, want) {
			t.Errorf("%q: panels lie at %v, want %v", text, got, want)
		}
		if sizes := showing(all, "size"); len(sizes) != len(a.Day.Sizes) {
			t.Errorf("%q: %d sizes in the key, want %d", text, len(sizes), len(a.Day.Sizes))
		}
		clock := strings.Contains(altOf(t, text), "The day's clock")
		if few := len(a.Day.Loads) <= 24; clock != few {
			t.Errorf("%q: %d loads on the clock: %v, want %v", text, len(a.Day.Loads), clock, few)
		}
	}
}
