package grammar

import "presshand/engine/unit"

// layersCorrected gives a layer the thickness that takes back the one before: "strips 7/8 no
// sorry 1 inch", "strips 7/8, make that 1".
func (r *reader) layersCorrected(spans []layerSpan) {
	for k := range spans {
		s := &spans[k]
		fix := s.last() + 1
		for fix < len(r.items) && (r.items[fix].brk == ',' || r.items[fix].brk == '(' || r.items[fix].brk == '-') {
			fix++
		}
		at := fix + 1
		for r.is(at, kindFix) || r.word(at, "its", "is", "that", "a", "the") || at < len(r.items) && r.items[at].brk == ',' {
			at++
		}
		if s.amount < 0 || !r.is(fix, kindFix) || !r.free(at) || !r.length(at) || r.is(r.next(at), kindNoun) || r.is(r.next(at), kindAttr) && !r.is(r.next(at), kindAttr, "thick") {
			continue
		}
		r.items[s.amount].amount.dead = true
		r.items[fix].used = true
		s.amount = at
	}
}

// besideStrips puts a fence that is told last where it stands: "and a 7/8 fence on the
// bottom sled", "with a 3/8 fence beside the strips".
func (r *reader) besideStrips(spans []layerSpan, ls unit.Layers) unit.Layers {
	at := len(ls) - 1
	if len(spans) != len(ls) || at < 2 || ls[at].Part != "fence" || ls[0].Part != "sled" {
		return ls
	}
	j := spans[at].last() + 1
	for r.word(j, "that", "which", "is", "sits", "stands", "standing", "sitting", "screwed", "fixed", "down", "right", "next", "to", "around", "round") {
		j++
	}
	onSled := r.word(j, "on", "onto") && r.is(r.next(j), kindNoun, "sled") && (in(r.items[r.next(j)].word, "bottom sled", "lower sled", "base", "base board", "baseboard") || r.word(r.next(j)-1, "bottom", "lower", "first"))
	along := (r.word(j, "beside", "alongside", "by", "along", "against") || r.word(j-1, "to", "around", "round")) && r.is(r.next(j), kindNoun, "strip", "core") || r.word(j, "them", "those") && r.word(j-1, "to", "around", "round")
	if !onSled && !along {
		return ls
	}
	return append(unit.Layers{ls[0], ls[at]}, ls[1:at]...)
}
