package grammar

// findStart reads "new one:", which leaves the thread's question behind.
func (r *reader) findStart() {
	i := r.afterDropping()
	for i < len(r.items) && r.word(i, "ok", "okay", "right", "and", "so", "now", "hey", "a") {
		i++
	}
	if !r.word(i, "new", "different", "next", "separate", "another") {
		return
	}
	j := i + 1
	if r.word(j, "one", "question", "job", "load", "topic", "thing") || r.is(j, kindRole, "job") || r.is(j, kindVerb, "show") {
		if j+1 < len(r.items) && (r.items[j+1].brk == ':' || r.items[j+1].brk == ',' || r.items[j+1].brk == '.' || r.items[j+1].brk == '-') {
			r.phrase.NewStart = true
			r.items[j].used = true
			r.items[j].meaning = meaning{}
		}
	}
}

// afterDropping is the item behind "scrap that." at the start of a message.
func (r *reader) afterDropping() int {
	i := 0
	for ; i < len(r.items) && i < 5; i++ {
		if i > 0 && r.isBreak(i) {
			return i + 1
		}
		if !r.is(i, kindNot) && !r.is(i, kindFix) && !r.word(i, "scrap", "forget", "that", "it", "ok", "drop", "this", "all", "never", "mind") && !r.is(i, kindVerb, "drop") {
			return 0
		}
	}
	return 0
}
