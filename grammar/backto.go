package grammar

// backToTopic is what a message returns to: "back to the joints, with a 2 in bar".
func (r *reader) backToTopic() (Ask, bool) {
	for i := range r.items {
		if !r.habit.Follows || !r.word(i, "back", "returning", "return") || !r.word(i+1, "to") {
			continue
		}
		k := i + 2
		for r.word(k, "the", "my", "our", "that", "those", "side") {
			k++
		}
		if t := topicNouns[r.nounAt(k)]; t != "" && (r.isBreak(k+1) || r.word(k+1, "with", "and", "but", "question", "thing", "then")) {
			return Ask{About: t}, true
		}
	}
	return Ask{}, false
}

// topicNouns are the topics that a part stands for.
var topicNouns = map[string]Topic{"joint": Side, "pump": Pump, "mat": Stack, "cup": Flatten}

func (r *reader) nounAt(k int) string {
	if r.is(k, kindNoun) {
		return r.items[k].id
	}
	return ""
}
