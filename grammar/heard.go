package grammar

import "strings"

// heard tells quickly what a message cannot hold, so that a rule about something
// else ends before it goes over the items. It may say yes to what is not there, and
// keeps what was heard when the item is read as something else or dropped.
type heard struct {
	words, ids [4]uint64 // by sound
	kinds      uint64
	later      uint64 // how the words behind the first of an item begin
}

// sound is the bit of s among 256; words that share one sound alike.
func sound(s string) (at int, bit uint64) {
	h := len(s) * 11
	if len(s) > 0 {
		h += int(s[0]) ^ int(s[len(s)-1])<<3 ^ int(s[len(s)/2])<<5
	}
	return h >> 6 & 3, 1 << (h & 63)
}

// start is the bit of how s, which is not empty, begins.
func start(s string) uint64 {
	second := byte(0)
	if len(s) > 1 {
		second = s[1]
	}
	return 1 << ((s[0]*7 ^ second) & 63)
}

// hear notes the word and the meaning of item i; to be called where an item gets
// another.
func (r *reader) hear(i int) {
	it := &r.items[i]
	r.heard.kinds |= 1 << it.kind
	at, bit := sound(it.id)
	r.heard.ids[at] |= bit
	if it.amount == nil {
		at, bit = sound(it.word)
		r.heard.words[at] |= bit
		for rest := it.word; ; {
			if _, rest, _ = strings.Cut(rest, " "); rest == "" {
				break
			}
			r.heard.later |= start(rest)
		}
	}
}

// hearAll notes all items. An item that has lost its meaning or its word, or was
// made a fill word, counts as heard from the start.
func (r *reader) hearAll() {
	at, bit := sound("")
	r.heard.words[at] |= bit
	r.heard.ids[at] |= bit
	r.heard.kinds |= 1<<kindNone | 1<<kindFill
	for i := range r.items {
		r.hear(i)
	}
}

// says reports whether an item may be one of the words, as word has it; false is
// certain.
//
//go:noinline
func (r *reader) says(ws ...string) bool {
	for _, w := range ws {
		if at, bit := sound(w); r.heard.words[at]&bit != 0 {
			return true
		}
	}
	return false
}

// saysInRun is says for the words of an item from its second on; as laterWord has it,
// the last may go on.
func (r *reader) saysInRun(ws ...string) bool {
	if r.heard.later == 0 {
		return false
	}
	for _, w := range ws {
		if len(w) == 1 || r.heard.later&start(w) != 0 {
			return true
		}
	}
	return false
}

// means reports whether an item may have the meaning, as is has it; false is certain.
//
//go:noinline
func (r *reader) means(k kind, ids ...string) bool {
	if r.heard.kinds&(1<<k) == 0 {
		return false
	}
	for _, id := range ids {
		if at, bit := sound(id); r.heard.ids[at]&bit != 0 {
			return true
		}
	}
	return len(ids) == 0
}
