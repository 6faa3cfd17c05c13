package bot_test

import (
	"context"
	"encoding/json"
	"testing"
	"time"

	"presshand/bot"
)

// said plays a thread and returns the last reply's JSON.
func said(t *testing.T, texts ...string) map[string]any {
	t.Helper()
	b := bot.New(bot.NewMemory())
	var out map[string]any
	for _, text := range texts {
		r, err := b.Handle(context.Background(), bot.Message{Room: "r", Thread: "t", From: "ana", Text: text, At: time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)})
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		out = nil
		if err := json.Unmarshal(r.AppendJSON(nil), &out); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

func TestThread_measureWithoutItsPart(t *testing.T) {
	read := said(t, "got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide", "make it 30 wide")["read"].(map[string]any)
	if read["target_width_mm"] != 762.0 || read["strip_width_mm"] != nil {
		t.Errorf("read %v, want the strips to fill 762 mm", read)
	}
}

func TestThread_thicknessOfALayer(t *testing.T) {
	read := said(t, "stack: sled 3/4, fence 1/4, strips 5/16, plastic, caul 3/4, press opening 4 in", "make the strips 3/8 thick")["read"].(map[string]any)
	layers := read["stack"].([]any)
	if got := layers[2].(map[string]any)["thickness_mm"]; got != 9.525 {
		t.Errorf("strips are %v mm in the stack, want 9.525 (3/8 in)", got)
	}
}

func TestAssumed_saysWhatALooseNameWasTakenFor(t *testing.T) {
	r := said(t, "5 maple strips 2 1/4 wide 1/4 thick, 1 in bar, 25 inHg")
	if got := r["assumed"].(map[string]any)["species"]; got != "hard maple" {
		t.Errorf("assumed species %v, want hard maple", got)
	}
	r = said(t, "5 hard maple strips 2 1/4 wide 1/4 thick, 1 in bar, 25 inHg")
	if got := r["assumed"].(map[string]any)["species"]; got != nil {
		t.Errorf("assumed species %v though it was said", got)
	}
}
