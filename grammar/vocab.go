package grammar

import (
	"maps"
	"slices"
	"strings"

	"presshand/engine/glue"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// A meaning is what a word or a run of words stands for.
type meaning struct {
	kind kind
	id   string
	unit *unit.Unit // of a kindUnit; shared, never changed
}

// lexicon finds the longest run of words with a meaning.
type lexicon map[string][]spelling

type spelling struct {
	words   []string
	meaning meaning
}

var (
	trade = buildTrade()
	units = buildUnits()
	fill  = buildFill()
)

func buildTrade() lexicon {
	l := lexicon{}
	for _, table := range [][]entry{vocabulary, cupEntries(), bodyEntries(), vesselEntries(), roles, asks, outageEntries(), verbs, perils, woods, glues} {
		for _, e := range table {
			l.learn(e.said, meaning{kind: e.kind, id: e.id})
		}
	}
	for _, name := range slices.Sorted(maps.Keys(wood.Names())) {
		l.learn(name, meaning{kind: kindWood, id: wood.Names()[name]})
	}
	for _, name := range slices.Sorted(maps.Keys(glue.Names())) {
		l.learn(name, meaning{kind: kindGlue, id: glue.Names()[name]})
	}
	return l
}

func buildUnits() lexicon {
	l := lexicon{}
	for i := range unitWords {
		u := &unitWords[i]
		l.learn(u.said, meaning{kind: kindUnit, id: u.unit.Symbol, unit: &u.unit})
	}
	return l
}

func buildFill() map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(fillers) {
		set[w] = true
	}
	return set
}

// learn adds wordings parted by commas. The longer wording of a first word is
// tried first; of two that are the same the earlier one stands.
func (l lexicon) learn(said string, m meaning) {
	for _, wording := range strings.Split(said, ",") {
		words := splitWording(wording)
		if len(words) == 0 || l.has(words) {
			continue
		}
		list := append(l[words[0]], spelling{words, m})
		for i := len(list) - 1; i > 0 && len(list[i].words) > len(list[i-1].words); i-- {
			list[i], list[i-1] = list[i-1], list[i]
		}
		l[words[0]] = list
	}
}

func (l lexicon) has(words []string) bool {
	return slices.ContainsFunc(l[words[0]], func(s spelling) bool { return slices.Equal(s.words, words) })
}

// splitWording cuts a wording the way that a message is scanned.
func splitWording(wording string) []string {
	var words []string
	for _, s := range scan(wording) {
		words = append(words, s.norm)
	}
	return words
}

// longest returns the meaning of the longest run of scraps from i and its
// length; 0 where there is none.
func (l lexicon) longest(scraps []scrap, i int) (meaning, int) {
	if i >= len(scraps) {
		return meaning{}, 0
	}
next:
	for _, s := range l[scraps[i].norm] {
		at := i
		for k, w := range s.words {
			if k > 0 {
				at = skipHyphen(scraps, at+1)
			}
			if at >= len(scraps) || scraps[at].norm != w || scraps[at].shape == shapeInt && k > 0 && len(s.words) == 1 {
				continue next
			}
		}
		return s.meaning, at - i + 1
	}
	return meaning{}, 0
}

// skipHyphen steps over a hyphen between two words: "flat-sawn".
func skipHyphen(scraps []scrap, at int) int {
	if at+1 < len(scraps) && scraps[at].norm == "-" && scraps[at].glued && scraps[at+1].glued {
		return at + 1
	}
	return at
}
