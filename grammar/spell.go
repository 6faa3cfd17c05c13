package grammar

import (
	"maps"
	"strings"
)

// knownWords are all words that a wording, a number or plain talk is made of: none
// of them is misspelt. wellSpelt are those and the words that say nothing.
var (
	knownWords = buildKnownWords()
	wellSpelt  = joined(knownWords, fill, plainWords)
)

func joined(sets ...map[string]bool) map[string]bool {
	all := map[string]bool{}
	for _, set := range sets {
		maps.Copy(all, set)
	}
	return all
}

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
	for w := range manyOf {
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
		if w := slips[s.norm]; w != "" {
			s.norm = w
		}
		if s.shape != shapeWord || wellSpelt[s.norm] || t.guesses >= mostGuesses {
			continue
		}
		if bare, short := strings.CutSuffix(s.norm, "s"); short && knownWords[bare] {
			if material(bare) {
				s.norm = bare // "white oak's", "the epoxys mixed"
			}
			continue
		}
		t.guesses++
		g, ok := guess(s.norm)
		if !ok && isWord(t.scraps, i+1, "glue") {
			g, ok = guessGlue(s.norm)
		}
		if ok {
			s.norm, s.taken = g.word, true
		} else if w := swapped(s.norm); w != "" {
			s.norm, s.taken = w, true
		}
	}
}

// material reports whether a word names a wood or a glue.
func material(word string) bool {
	m, n := trade.longest([]scrap{{shape: shapeWord, norm: word}}, 0)
	return n == 1 && (m.kind == kindWood || m.kind == kindGlue)
}

// slips are plain words as they are often mistyped.
var slips = map[string]string{
	"wats": "whats", "wat": "what", "wot": "what", "wots": "whats", "whts": "whats", "wht": "what", "whta": "what", "teh": "the", "hte": "the", "nead": "need", "ned": "need", "neeed": "need",
	"wich": "which", "whch": "which", "hwo": "how", "frist": "first", "fisrt": "first", "presure": "pressure", "pressre": "pressure", "preasure": "pressure", "waxd": "waxed", "wax'd": "waxed",
	"adn": "and", "nad": "and", "fo": "of", "ot": "to", "si": "is", "taht": "that", "wiht": "with", "wih": "with", "abt": "about", "abuot": "about", "baout": "about", "mcuh": "much", "muhc": "much", "lng": "long", "wid": "wide",
}

// tradeWords are the words that wordings of the trade are made of, without those
// that are units or numbers too.
var tradeWords = buildTradeWords()

func buildTradeWords() map[string]bool {
	set := map[string]bool{}
	for _, list := range trade {
		for _, s := range list {
			for _, w := range s.words {
				_, unit := units[w]
				if _, number := wholes[w]; !unit && !number && parts[w] == 0 {
					set[w] = true
				}
			}
		}
	}
	return set
}

// swapped returns the one trade word that w is with two neighbouring letters
// swapped, a slip that hardly makes another word; "" where there is none.
func swapped(w string) string {
	if len(w) <= shortest || len(w) > mostLetters || lookalikes[w] {
		return ""
	}
	found := ""
	b := []byte(w)
	for i := 0; i+1 < len(b); i++ {
		if b[i] == b[i+1] {
			continue
		}
		b[i], b[i+1] = b[i+1], b[i]
		if tradeWords[string(b)] {
			if found != "" {
				return ""
			}
			found = string(b)
		}
		b[i], b[i+1] = b[i+1], b[i]
	}
	return found
}

// plainWords are words that neither name a wood nor matter, for telling "hoop
// pine" from "nice pine".
var plainWords = wordSet(`in of on with from and or is are use using used our have got want need for some my this these those that make real local old new wide thick long inch mm board strip sheet each piece glued pressing edge face made mostly all any more other same like it was just into onto over under than then two three four five six seven eight nine ten pressed say says called plain both ea`)

func wordSet(s string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(s) {
		set[w] = true
	}
	return set
}
