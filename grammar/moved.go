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

// moves reads a message, or a clause of it, without a number that says what the last
// one was of.
func (r *reader) moves() {
	if len(r.items) > 24 {
		return
	}
	if r.amountsIn(0, len(r.items)) == 0 {
		r.phrase.Moved = r.move(0, len(r.items))
		return
	}
	for from := 0; from < len(r.items); from++ {
		_, to := r.clause(from)
		if m := r.move(from, to); m != nil && m.From+m.Instead != "" && r.amountsIn(from, to) == 0 {
			r.phrase.Moved = m
			return
		}
		from = to
	}
}

// move is what items [from, to) say that the last message was of; nil where they say
// anything else.
func (r *reader) move(from, to int) *Mistaken {
	var m Mistaken
	denied, meant, wonders, named := false, false, to < len(r.items) && r.items[to].brk == '?', 0
	for i := from; i < to; i++ {
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
		case r.word(i, "thats", "its") && r.word(i+1, "the"):
			meant = true
		case r.word(i, "i", "is", "was", "its", "thats", "it", "that", "for", "of", "on", "a", "an", "the", "my", "our", "said", "this", "mean", "side", "one", "should", "be"), r.is(i, kindFill), r.isBreak(i), r.idle(i):
		default:
			return nil
		}
	}
	meantFor, instead := m.To+m.Along, m.From+m.Instead
	switch {
	case meantFor == "", meantFor == instead, m.To != "" && m.Along != "", wonders && !meant, named > 2:
		return nil
	case instead == "":
		if !meant || named > 1 {
			return nil
		}
	case (m.From != "") != (m.To != ""):
		return nil
	}
	return &m
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

// offThe: "and half an inch off the width".
func (r *reader) offThe(i int) bool {
	return r.word(i+1, "off") && r.word(i+2, "the", "my", "our") && (r.is(i+3, kindAttr) && nounForm(r.items[i+3].word) || r.is(i+3, kindNoun, "bar", "mat", "caul") || r.is(i+3, kindVacuum)) && r.isBreak(i+4) && r.boundOnlyBy(i)
}

// boundOnlyBy reports whether no verb of standing makes the number at item i a
// distance: "the bar is 2 inches off the bed".
func (r *reader) boundOnlyBy(i int) bool {
	from, _ := r.clause(i)
	return !r.opensWithin(from, i, "is", "stands", "sits", "are", "its")
}
