package bot

import (
	"slices"
	"testing"

	"presshand/grammar"
)

func TestWishes_ofItsTopic(t *testing.T) {
	unused := []string{"narrow", "Neighbours", "noon", "please"}
	for about, want := range map[grammar.Topic][]string{
		grammar.Strips:   {quoted("narrow"), quoted("Neighbours")},
		grammar.Schedule: {quoted("noon")},
		grammar.Side:     nil,
	} {
		if got := wishes(&Reply{About: about, Unused: unused}, grammar.Phrase{}); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", about, got, want)
		}
	}
}
