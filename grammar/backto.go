package grammar

import "presshand/engine/unit"

// backToTopic is what a message returns to: "back to the joints, with a 2 in bar".
func (r *reader) backToTopic() (Ask, bool) {
	if !r.habit.Follows || !r.says("back", "returning", "return") {
		return Ask{}, false
	}
	for i := range r.items {
		if !r.word(i, "back", "returning", "return") || !r.word(i+1, "to") {
			continue
		}
		k := i + 2
		for r.word(k, "the", "my", "our", "that", "those", "side") {
			k++
		}
		if r.is(k, kindNoun, "strip") && r.ends(k+1) && !r.mentions(kindRole, "target", "trim") && (r.stripsAgain(k) || r.mentions(kindNoun, "bar")) {
			return Ask{About: Side, back: true}, true
		}
		if t := r.topicAt(k); t != "" && (r.isBreak(k+1) || r.word(k+1, "with", "and", "but", "question", "thing", "then")) {
			return Ask{About: t, back: true}, true
		}
	}
	return Ask{}, false
}

// stripsAgain: of "back to the strips, make it 6" the number counts them.
func (r *reader) stripsAgain(k int) bool {
	for k++; k < len(r.items) && (r.isBreak(k) || r.is(k, kindFix) || r.word(k, "and", "but", "with", "make", "it", "that", "lets", "say", "now", "them", "there", "are", "only", "just", "try")); k++ {
	}
	n, whole := r.wholeAt(k)
	return whole && n > 1 && n < 61 && r.free(k) && r.items[k].amount.bare() && r.items[k].amount.link == linkNone && r.ends(k+1) && !r.has(unit.StripCount) && r.bind(k, unit.StripCount)
}

// topicWords are the topics that a part or a word stands for.
var topicWords = map[string]Topic{"joint": Side, "pump": Pump, "cup": Flatten, "mat": Stack, "stack": Stack, "glue": Glue, "gluing": Glue, "schedule": Schedule, "movement": Move}

// topicAt is the topic that item k stands for.
func (r *reader) topicAt(k int) Topic {
	switch {
	case k >= len(r.items) || r.items[k].amount != nil:
		return ""
	case r.is(k, kindNoun):
		return topicWords[r.items[k].id]
	}
	return topicWords[r.items[k].word]
}
