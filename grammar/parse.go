package grammar

import (
	"strings"
)

// Parse reads a message as the shop's habit has it. It never fails: what it
// cannot place is in the phrase's Unused. Bytes that are no UTF-8 are read as U+FFFD.
func Parse(text string, habit Habit) Phrase {
	text = strings.ToValidUTF8(text, "\uFFFD")
	if p, ok := longForm(text); ok {
		return p
	}
	if p, ok := pictureSetting(text); ok {
		return p
	}
	s := scratches.Get().(*scratch)
	phrase := Phrase{Unused: []string{text}}
	if r := readMessage(text, habit, s); r != nil {
		phrase = r.phrase
		s.items, s.bound = r.items, r.bound
	}
	scratches.Put(s.wiped())
	return phrase
}

// readMessage reads a message that is neither of the long form nor a setting; nil where
// it links to the first number beyond those that are read.
func readMessage(text string, habit Habit, s *scratch) *reader {
	tokens := folded(s.tokenize(text), text)
	tree, err := parser.ParseFromLexer(peek(tokens))
	if err != nil {
		return nil
	}
	r := &s.reader
	*r = reader{text: text, habit: habit, items: items(s.items, tree, tokens), bound: s.bound}
	r.finish()
	r.read()
	r.follows()
	r.levelsUnread()
	r.leaveNone()
	return r
}

// finish fills in what the tree does not know.
func (r *reader) finish() {
	for i := range r.items {
		it := &r.items[i]
		if it.amount != nil {
			it.text = r.text[it.start:it.end]
		}
	}
	r.hearAll()
	r.tidy()
	r.inWhile()
	r.system = r.lengthSystem()
	r.unitsBeside()
}

// trimmed returns text without the marks around it.
func trimmed(s string) string { return strings.Trim(s, " \t\r\n.,;:!?–—-()") }

// textOf is what was typed from item from to item to, with a number that stands where
// another one stood as it was typed there.
func (r *reader) textOf(from, to int) string {
	var typed strings.Builder
	at := r.items[from].start
	for k := from; k <= to; k++ {
		if it := &r.items[k]; it.amount != nil && it.text != r.text[it.start:it.end] {
			typed.WriteString(r.text[at:it.start] + it.text)
			at = it.end
		}
	}
	return typed.String() + r.text[at:r.items[to].end]
}
