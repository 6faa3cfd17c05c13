package bot

import "testing"

func TestToneOf(t *testing.T) {
	for finding, want := range map[string]findingTone{
		"good": fine, "all joints tight": fine, "no gaps": fine, "perfect, dead flat": fine, "no problem": fine, "no complaints": fine,
		"came out well": fine, "not bad": fine, "not a single gap": fine, "no gaps and no cracks": fine, "nothing wrong": fine,
		"joint 3 open 0.3 mm": bad, "squeeze-out even, one joint 0.2 mm open at the end": bad, "not good": bad, "not flat": bad,
		"good but joint 2 open": bad, "joint 4 has a hairline": bad, "no gaps but bowed": bad, "no gaps, joint 3 starved": bad, "isn’t tight": bad,
		"good except joint 2": bad, "good, had to reglue one end": bad, "pretty good, snipe on end": bad, "fine other than one end": bad, "all but joint 4": bad,
		"good, no snipe": fine, "tight, no need to reglue": fine, "good, everything went as it had to": fine, "the other end is fine": fine, "save it for later": neither, "all of it except 3": neither,
		"": neither, "meh": neither, "we'll see tomorrow": neither, "well, let's see": neither, "open? no idea": neither,
	} {
		if got := toneOf(finding); got != want {
			t.Errorf("%q sounds %d, want %d", finding, got, want)
		}
	}
}
