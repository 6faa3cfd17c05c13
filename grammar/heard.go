package grammar

// heard tells quickly what a message cannot hold, so that a rule about something
// else ends before it goes over the items. It may say yes to what is not there, and
// keeps what was heard when the item is read as something else or dropped.
type heard struct {
	words, ids [16]uint64 // by sound
	later      uint64     // the words of a run behind its first, by their first two letters
	kinds      uint64
}

// sound is the place of s in words or ids; words that share one sound alike.
func sound(s string) (at int, bit uint64) {
	h := uint32(len(s))
	if len(s) > 0 {
		h += uint32(s[0])<<5 ^ uint32(s[len(s)/2])<<12 ^ uint32(s[len(s)-1])<<19
	}
	h *= 0x9E3779B1 // spreads what differs in few bits
	return int(h >> 28), 1 << (h >> 22 & 63)
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
		for k := 1; k < len(it.word); k++ {
			if it.word[k-1] == ' ' {
				r.heard.later |= opening(it.word[k:])
			}
		}
	}
}

// opening is the bit of the first two letters of s among 64.
func opening(s string) uint64 {
	h := int(s[0]) * 7
	if len(s) > 1 {
		h += int(s[1])
	}
	return 1 << (h & 63)
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

// saysLater reports whether a run of words may have one behind its first that begins with
// one of ws; false is certain.
func (r *reader) saysLater(ws ...string) bool {
	for _, w := range ws {
		if r.heard.later != 0 && (len(w) < 2 || r.heard.later&opening(w) != 0) {
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
