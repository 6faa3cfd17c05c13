package grammar_test

import (
	"testing"

	"presshand/grammar"
)

// A picture of one answer, or a word of another kind, is no setting.
func TestParse_noPictureSetting(t *testing.T) {
	for _, text := range []string{
		"picture please", "show the picture", "draw it", "no, show pictures", "pictures, not words", "no words only pictures",
		"pictures", "the pictures", "turn pictures", "don't turn the pictures off and on again", "5 strips 2 wide, no pictures", "pictures off in the evening",
		"we have pictures", "off", "on", "",
	} {
		if p := grammar.Parse(text, grammar.Habit{}); p.Pictures != "" {
			t.Errorf("%q turns pictures %s, want nothing of that", text, p.Pictures)
		}
	}
}

// pictureFacets are those of a wish for pictures or for none.
func pictureFacets(p grammar.Phrase) []string {
	if p.Pictures == "" {
		return nil
	}
	return []string{"pictures " + string(p.Pictures)}
}
