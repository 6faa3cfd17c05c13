package grammar

import "strings"

// wordMarks tell which words a message has, so that a rule about words that it lacks need not
// look at each item. They may say yes to a word that is not there, never no to one that is.
type wordMarks [16]uint64

// A hint is the marks of some words.
type hint []uint16

// hintOf is the hint of words parted by bars: "bar|caul|each other".
func hintOf(words string) hint {
	var h hint
	for w := range strings.SplitSeq(words, "|") {
		h = append(h, markOf(w))
	}
	return h
}

// rewritten are the words that rules put in the place of what was typed.
var rewritten = hintOf("work|vac|lift the hold|is|panels|panel|strips|strip|pieces|bar|boat|cup|width|in|per|for|one|=")

func markOf(word string) uint16 {
	sum := uint32(2166136261) // FNV-1a
	for i := 0; i < len(word); i++ {
		sum = (sum ^ uint32(word[i])) * 16777619
	}
	return uint16((sum ^ sum>>16) % uint32(len(wordMarks{})*64))
}

func (m *wordMarks) set(at uint16) { m[at/64] |= 1 << (at % 64) }

// markWords notes the words of the message.
func (r *reader) markWords() {
	for _, at := range rewritten {
		r.marks.set(at)
	}
	for i := range r.items {
		r.marks.set(markOf(r.items[i].word))
	}
}

// mayHave reports whether the message may have one of the words.
func (r *reader) mayHave(h hint) bool {
	for _, at := range h {
		if r.marks[at/64]&(1<<(at%64)) != 0 {
			return true
		}
	}
	return false
}
