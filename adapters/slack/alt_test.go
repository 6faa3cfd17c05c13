package slack

import (
	"strings"
	"testing"
)

// Slack refuses more than 1000 characters; what is left ends with a sentence.
func TestAltText_short(t *testing.T) {
	if got := altText("A bed."); got != "A bed." {
		t.Errorf("short words become %q", got)
	}
	for _, sentence := range []string{"Load 1 is out at 09:34. ", "Übermaß. ", strings.Repeat("x", 5000)} {
		got := altText(strings.Repeat(sentence, 200))
		if n := len([]rune(got)); n > 1000 || n < 950 || !strings.HasSuffix(got, " The rest is left out.") {
			t.Errorf("%.9q… becomes %d characters, ending %q", sentence, n, got[len(got)-40:])
		}
		if strings.Contains(sentence, ". ") && !strings.HasSuffix(got, ". The rest is left out.") {
			t.Errorf("%q breaks a sentence", got[len(got)-60:])
		}
	}
}
