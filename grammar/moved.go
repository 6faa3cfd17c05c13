package grammar

import "presshand/engine/unit"

// A Mistaken says that what was told last is of another part, or in another direction:
// "the bar not the panel", "sorry thats a cup not a bow", "width, not thickness".
type Mistaken struct {
	To, From       string // parts; From is "" where it was not named
	Along, Instead string // directions, likewise
}

// movable are the parts that what was said of one can be meant of another.
var movable = []string{"strip", "panel", "bar", "mat", "caul", "sled", "core", "gap", "cup", "bow", "opening", "bag", "bed", "frame", "press", "face"}

// moves reads a message without a number that says what the last one was of.
func (r *reader) moves() {
	if r.amountsIn(0, len(r.items)) > 0 || len(r.items) > 14 {
		return
	}
	var m Mistaken
	denied, meant, wonders, named := false, false, false, 0
	for i := range r.items {
		switch {
		case r.is(i, kindNoun, movable...):
			named++
			m.name(&m.To, &m.From, r.items[i].id, denied)
			denied = false
		case r.is(i, kindAttr):
			named++
			m.name(&m.Along, &m.Instead, r.items[i].id, denied)
			denied = false
		case r.is(i, kindNot) && in(r.items[i].word, "not", "isnt", "wasnt", "no"):
			denied = denied || i > 0 || r.items[i].word != "no" || !r.isBreak(i+1)
		case r.is(i, kindFix):
			meant = meant || in(r.items[i].word, "i mean", "i meant", "meant", "sorry", "my mistake", "wait", "oops", "whoops", "my bad")
		case r.items[i].brk == '?':
			wonders = true
		case r.word(i, "i", "is", "was", "its", "thats", "it", "that", "for", "of", "on", "a", "an", "the", "my", "our", "said", "this", "mean", "side", "one", "should", "be"), r.is(i, kindFill), r.isBreak(i), r.idle(i):
		default:
			return
		}
	}
	to, from := m.To+m.Along, m.From+m.Instead
	if to == "" || wonders && !meant || named > 2 || to == from || r.has(unit.Gap) || m.To != "" && m.Along != "" || from == "" && (!meant || named > 1) || (m.From != "") != (m.To != "") && from != "" {
		return
	}
	r.phrase.Moved = &m
}

// name notes a part or a direction, and whether it was not that.
func (m *Mistaken) name(to, from *string, id string, denied bool) {
	if denied {
		*from = id
		return
	}
	*to = id
}

// directions of measuring, the likeliest first.
var directions = []string{"wide", "thick", "long", "tall", "deep"}

// Of reports whether f is of the part or in the direction that was named wrongly.
func (m *Mistaken) Of(f unit.Field) bool {
	for _, noun := range movable {
		for _, attr := range directions {
			if attrFields[noun][attr] == f && (noun == m.From || attr == m.Instead) {
				return true
			}
		}
		if bareFields[noun] == f && noun == m.From {
			return true
		}
	}
	return false
}

// Field is what f becomes where it is of the part, or in the direction, that was
// meant; "" where nothing is known of it.
func (m *Mistaken) Field(f unit.Field) unit.Field {
	for _, noun := range movable {
		for _, attr := range directions {
			if attrFields[noun][attr] != f {
				continue
			}
			if m.Along != "" {
				if g := attrFields[noun][m.Along]; g != "" && g != f {
					return g
				}
			} else if g := attrFields[m.To][attr]; g != "" {
				return g
			}
		}
	}
	return bareFields[m.To]
}
