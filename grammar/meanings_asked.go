package grammar

// What parts are for and how they differ, asked without "what is a".

// asksMeanings: "whats the fence for", "is the fence the same as the side bar", "what's the
// point of a mat"; not "what is the bar for 6 strips".
func (r *reader) asksMeanings() bool {
	if r.amountsIn(0, len(r.items)) > 0 || r.mentions(kindVerb, string(Show)) {
		return false
	}
	for i := range r.items {
		switch {
		case r.items[i].amount != nil || r.items[i].kind != kindNone && !r.is(i, kindAsk, "words"):
		case r.word(i, "what", "whats", "what is", "what are", "whats the", "what does", "what do"):
			if r.purposeAt(i + 1) {
				return true
			}
		case r.word(i, "is", "are"):
			if r.comparesParts(i + 1) {
				return true
			}
		}
	}
	return false
}

// purposeAt reports whether a part and what it is for stand at item i: "the fence for",
// "the point of a mat".
func (r *reader) purposeAt(i int) bool {
	for r.word(i, "is", "are", "the", "a", "an", "that", "this") {
		i++
	}
	if r.word(i, "point", "purpose", "use", "job") && r.word(i+1, "of") {
		k := i + 2
		for r.word(k, "the", "a", "an", "having", "using") {
			k++
		}
		return r.is(k, kindNoun) && (r.isBreak(k+1) || r.word(k+1, "and", "anyway"))
	}
	return r.is(i, kindNoun) && r.word(i+1, "for") && (r.isBreak(i+2) || r.word(i+2, "and", "anyway", "exactly", "then"))
}

// comparesParts reports whether two parts are asked apart from item i on: "the fence the same
// as the side bar", "that different from a caul".
func (r *reader) comparesParts(i int) bool {
	for r.word(i, "the", "a", "an") {
		i++
	}
	if !r.is(i, kindNoun) && !(r.word(i, "that", "it", "they", "this") && r.within(0, i, kindNoun) >= 0) {
		return false
	}
	i++
	for r.word(i, "the", "just", "really", "any", "basically") {
		i++
	}
	switch {
	case r.is(i, kindVerb, string(Copy)) && r.word(i, "same as"), r.word(i, "different") && r.word(i+1, "from", "to", "than"):
	case r.word(i, "same", "different") && r.word(i+1, "thing") && r.word(i+2, "as", "from", "to", "than"):
		i++
	case r.differsFromBar(i + 1):
		return true
	default:
		return false
	}
	for i++; r.word(i, "as", "from", "to", "than", "the", "a", "an"); i++ {
	}
	return r.is(i, kindNoun) && (r.isBreak(i+1) || i+1 >= len(r.items))
}

// differsFromBar: in "different from the side bar" nothing presses from the side.
func (r *reader) differsFromBar(i int) bool {
	if !r.is(i, kindAsk) || !r.word(i, "from the side") || !r.word(i-1, "different", "differ", "differs") || !r.is(i+1, kindNoun, "bar") {
		return false
	}
	r.items[i].used = true
	return true
}
