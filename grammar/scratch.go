package grammar

import "sync"

// A scratch is what a message is cut up on. It is used again for the next one, since
// making it anew took as long as a tenth of the reading.
type scratch struct {
	scraps []scrap
	tokens []token
	items  []item
	bound  []binding
	reader reader
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// wiped keeps no text of the message that was read.
func (s *scratch) wiped() *scratch {
	clear(s.scraps[:cap(s.scraps)])
	clear(s.tokens[:cap(s.tokens)])
	clear(s.items[:cap(s.items)])
	clear(s.bound[:cap(s.bound)])
	s.scraps, s.tokens, s.items, s.bound = s.scraps[:0], s.tokens[:0], s.items[:0], s.bound[:0]
	s.reader = reader{}
	return s
}

// tokenize cuts a message into tokens; they stand until the scratch is wiped.
func (s *scratch) tokenize(text string) []token {
	s.scraps = scanOn(s.scraps, text)
	t := &tokenizer{text: text, scraps: unhesitant(dictatedMarks(s.scraps)), tokens: s.tokens}
	t.spell()
	for t.at < len(t.scraps) {
		t.next()
	}
	s.tokens = t.tokens
	return s.tokens
}
