package grammar

import "testing"

// What a pattern finds has the words that it is looked for by.
func TestSought_near(t *testing.T) {
	found := 0
	for _, text := range messageTexts(t) {
		text = folds(text)
		for at := range text {
			if at > 0 && text[at-1] != ' ' || !opensSought(text[at:]) {
				continue
			}
			for k := range soughtPatterns {
				p := &soughtPatterns[k]
				if !p.re.MatchString(text[at:]) {
					continue
				}
				found++
				if !p.mayStand(text[at:]) {
					t.Errorf("%q: %v is sought without its words", text, p.field)
				}
			}
		}
	}
	if found == 0 {
		t.Error("nothing is sought in any message")
	}
}
