package bot

import "testing"

func TestToneOf(t *testing.T) {
	for finding, want := range map[string]findingTone{
		"good": fine, "all joints tight": fine, "no gaps": fine, "perfect, dead flat": fine, "no problem": fine, "no complaints": fine,
		"came out well": fine, "not bad": fine, "not a single gap": fine, "no gaps and no cracks": fine, "nothing wrong": fine,
		"joint 3 open 0.3 mm": bad, "squeeze-out even, one joint 0.2 mm open at the end": bad, "not good": bad, "not flat": bad,
		"good but joint 2 open": bad, "joint 4 has a hairline": bad, "no gaps but bowed": bad, "no gaps, joint 3 starved": bad, "isn’t tight": bad,
		"": neither, "meh": neither, "we'll see tomorrow": neither, "well, let's see": neither, "open? no idea": neither,
	} {
		if got := toneOf(finding); got != want {
			t.Errorf("%q sounds %d, want %d", finding, got, want)
		}
	}
}
