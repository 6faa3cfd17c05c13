package grammar

import "strings"

// knownWords are all words that a wording, a number or plain talk is made of: none
// of them is misspelt.
var knownWords = buildKnownWords()

func buildKnownWords() map[string]bool {
	set := map[string]bool{}
	for _, l := range []lexicon{trade, units} {
		for _, list := range l {
			for _, s := range list {
				for _, w := range s.words {
					set[w] = true
				}
			}
		}
	}
	for w := range wholes {
		set[w] = true
	}
	for w := range parts {
		set[w] = true
	}
	return set
}

// spell puts the trade word in the place of one that misspells it, so that a
// wording of several words is found too: "how much vacum".
func (t *tokenizer) spell() {
	for i := range t.scraps {
		s := &t.scraps[i]
		if s.shape != shapeWord || fill[s.norm] || plainWords[s.norm] || knownWords[s.norm] || t.guesses >= mostGuesses {
			continue
		}
		if bare, short := strings.CutSuffix(s.norm, "s"); short && knownWords[bare] {
			continue
		}
		t.guesses++
		g, ok := guess(s.norm)
		if !ok && isWord(t.scraps, i+1, "glue") {
			g, ok = guessGlue(s.norm)
		}
		if ok {
			s.norm, s.taken = g.word, true
		}
	}
}
