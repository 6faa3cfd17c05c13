package bot_test

import (
	"math"
	"testing"
)

// Each level's strips are drawn as thick as they are said, of a range the thickest:
// 1/4 and 7/16 in are 6.35 and 11.1125 mm; with all of one range, 3/8 in is 9.525.
func TestDrawSection_ownLevel(t *testing.T) {
	for text, want := range map[string][]float64{
		"stack: sled 3/4, fence 3/8, strips 1/4, sled 3/4, fence 1/4, strips 3/8 to 7/16, mat 3/8, caul 3/4, opening 5 in, 24 inHg": {6.35, 11.1125},
		"stack: sled 3/4, strips 1/2, sled 3/4, strips 1/4 to 9/32, mat 3/8, caul 3/4, opening 5 in, 24 inHg":                       {12.7, 7.14375},
		"stack: sled 3/4, strips 5/16 to 3/8, mat 3/8, caul 3/4, opening 5 in, 24 inHg":                                             {9.525},
	} {
		_, all := drawnSVG(t, text)
		drawn := showing(all, "strips")
		if len(drawn) != len(want) {
			t.Errorf("%q: %d levels of strips drawn, want %d", text, len(drawn), len(want))
			continue
		}
		for i, s := range drawn {
			if math.Abs(s.number(t, "mm")-want[i]) > 0.001 {
				t.Errorf("%q: level %d is drawn %g mm thick, want %g", text, i+1, s.number(t, "mm"), want[i])
			}
		}
	}
}
