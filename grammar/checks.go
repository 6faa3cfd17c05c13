package grammar

// measuredParts: in "second check on 31: bar measured 1 1/8" the later verb is
// of the part, not of the load.
func (r *reader) measuredParts() {
	for i := range r.items {
		if r.is(i, kindVerb, string(Check)) && r.is(i-1, kindNoun) {
			r.items[i].meaning, r.items[i].word = meaning{}, "is"
		}
	}
}

// startsCheck: "checked – batten 38 mm" and "second check: bar 3/4" are checks of
// the thread's load; "check if the joints hold" is not.
func (r *reader) startsCheck(i int) bool {
	if r.opens("whats", "what", "who", "whos", "which", "is", "has", "nobody", "how") >= 0 {
		return false
	}
	switch r.items[i].word {
	case "i measured", "i checked", "measured":
		return !r.asksSomething() && !r.mentions(kindFix) && !r.mentions(kindRole, "friction") && !r.mentions(kindNoun, "joint")
	case "checked", "second check", "verified", "double checked", "rechecked", "checks out", "looks fine", "looks good", "looks ok", "re checked", "measures", "signed off":
		return !r.asksSomething()
	}
	return false
}

func (r *reader) asksSomething() bool {
	for i := range r.items {
		if r.items[i].brk == '.' && r.items[i].word == "?" {
			return true
		}
	}
	return false
}

func (r *reader) showsOnly(next int) bool {
	for j := next; j < len(r.items); j++ {
		if r.is(j, kindVerb) && !r.is(j, kindVerb, "show", "list") || r.items[j].amount != nil {
			return false
		}
	}
	return true
}
