package grammar

import (
	"slices"
	"strings"
)

// flatSawnThings: "a flat sawn panel" is sawn and no place to live in; "sawn: quarter"
// says how.
func (r *reader) flatSawnThings() {
	for i := 0; i+1 < len(r.items); i++ {
		if r.is(i, kindAir, "service") && strings.HasSuffix(r.items[i].word, "a flat") && r.word(i+1, "sawn", "sawed", "grain", "grained") {
			r.items[i].meaning, r.items[i].end = meaning{kind: kindFact, id: "sawn=flat"}, r.items[i+1].end
			r.items = slices.Delete(r.items, i+1, i+2)
		}
		if am := r.items[i].amount; am != nil && am.bare() && am.value != nil && am.float() == 0.25 && r.word(i+1, "sawn", "sawed") {
			r.items[i].amount, r.items[i].meaning, r.items[i].end = nil, meaning{kind: kindFact, id: "sawn=quarter"}, r.items[i+1].end
			r.items = slices.Delete(r.items, i+1, i+2)
		}
		if !r.word(i, "sawn", "cut", "grain") || !r.labels(i+1) || i+2 >= len(r.items) {
			continue
		}
		k := i + 2
		switch am := r.items[k].amount; {
		case am != nil && am.form == formWords && am.value != nil && am.float() == 0.25:
			r.items[k].amount, r.items[k].meaning, r.items[i].used = nil, meaning{kind: kindFact, id: "sawn=quarter"}, true
		case r.word(k, "flat", "plain"):
			r.items[k].meaning, r.items[i].used = meaning{kind: kindFact, id: "sawn=flat"}, true
		}
	}
}

// lightOfDay: "start when it's light" tells of no gap.
func (r *reader) lightOfDay() {
	for i := range r.items {
		if r.is(i, kindNoun, "gap") && r.word(i, "light", "daylight") && r.word(i-1, "its", "is", "gets", "first", "still") && !r.mentions(kindNoun, "joint") && !r.word(i+1, "through", "between", "in", "at") {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// humpOfOverfill: "strips run 1/16 over. how high's the hump" asks how far they rise.
func (r *reader) humpOfOverfill() {
	if !r.wordIn("over", "overfill", "overfilled") || !r.mentions(kindNoun, "opening", "fence") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "cup") && r.word(i, "hump", "crown") && !(i > 0 && r.items[i-1].amount != nil) {
			r.items[i].meaning = meaning{kind: kindAsk, id: "side:rise_mm"}
		}
	}
}

// timesOfPoly: in "closed time on poly" the poly is a glue, in "on poly" else the film.
func (r *reader) timesOfPoly() {
	if !r.mentions(kindRole, "open", "closed") || r.mentions(kindNoun, "strip", "bar", "sled") || r.mentions(kindGlue) {
		return
	}
	for i := range r.items {
		if r.is(i, kindFact, "surface=film") && r.word(i, "on poly") {
			r.items[i].meaning = meaning{kind: kindGlue, id: "polyurethane"}
		}
	}
}
