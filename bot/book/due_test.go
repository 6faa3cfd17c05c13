package book_test

import (
	"reflect"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine/unit"
)

// The plan gives 60 to 120 min; the load goes in six minutes past noon and
// comes out at 100 past.
func TestLoad_Reminders(t *testing.T) {
	day := 24 * time.Hour
	in, out := noon.Add(6*time.Minute), noon.Add(100*time.Minute)
	type due map[book.Kind]time.Time
	for way, want := range map[string]due{
		"posted": {}, "checked": {}, "held posted": {}, "judged": {}, "dropped": {},
		"pressing":      {book.TimeUp: in.Add(2 * time.Hour), book.AskResult: in.Add(2*time.Hour + day)},
		"held pressing": {book.TimeUp: in.Add(2 * time.Hour), book.AskResult: in.Add(2*time.Hour + day)},
		"out":           {book.AskResult: out.Add(day)},
	} {
		path, ok := ways[way]
		if !ok {
			t.Fatalf("no way to %q", way)
		}
		got := due{}
		for _, r := range after(t, fields(path)...).Reminders() {
			got[r.Kind] = r.Due
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %v, want %v", way, got, want)
		}
	}
}

func TestLoad_Reminders_keys(t *testing.T) {
	key := func(names ...string) string { return after(t, names...).Reminders()[0].Key }
	first := key("check", "in")
	if held := key("check", "in", "hold", "clear"); held != first {
		t.Errorf("key changes with a hold from %q to %q, and would be said twice", first, held)
	}
	if again := key("check", "in", "undo", "in"); again == first {
		t.Errorf("key %q is the same for going in again, and would not be said", again)
	}
}

func TestPlan_PressTime(t *testing.T) {
	mid := 45.0
	for name, c := range map[string]struct {
		value          unit.Value
		low, mid, high time.Duration
		ok             bool
	}{
		"range":     {triple(60, 90, 120), time.Hour, 90 * time.Minute, 2 * time.Hour, true},
		"number":    {unit.Number(45), 45 * time.Minute, 45 * time.Minute, 45 * time.Minute, true},
		"only mid":  {unit.Triple{Mid: &mid}, 45 * time.Minute, 45 * time.Minute, 45 * time.Minute, true},
		"no middle": {unit.Triple{Low: &mid}, 0, 0, 0, false},
		"none":      {nil, 0, 0, 0, false},
	} {
		p := book.Plan{Values: unit.Facts{}}
		if c.value != nil {
			p.Values[unit.PressTime] = c.value
		}
		low, mid, high, ok := p.PressTime()
		if low != c.low || mid != c.mid || high != c.high || ok != c.ok {
			t.Errorf("%s: %v %v %v %v, want %v %v %v %v", name, low, mid, high, ok, c.low, c.mid, c.high, c.ok)
		}
	}
	said := book.Plan{Said: unit.Facts{unit.PressTime: unit.Number(30)}}
	if _, mid, _, ok := said.PressTime(); !ok || mid != 30*time.Minute {
		t.Errorf("a press time that was said gives %v, want 30m", mid)
	}
}

// A load without a press time is asked for its result a day after it went in.
func TestLoad_Reminders_untimed(t *testing.T) {
	p := walnut()
	delete(p.Values, unit.PressTime)
	l, err := book.Fold([]book.Entry{book.Posting{Plan: p, Place: book.Place{Room: "joinery"}}.Entry(by(ann, 0), 14)})
	if err != nil {
		t.Fatal(err)
	}
	got := apply(t, l, "anyway").Reminders()
	if len(got) != 1 || got[0].Kind != book.AskResult || !got[0].Due.Equal(noon.Add(24*time.Hour+6*time.Minute)) {
		t.Errorf("got %+v, want the result asked for a day after six past noon", got)
	}
}
