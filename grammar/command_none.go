package grammar

// daysWorkTold: "6 tables 36x84, one press, they want to know when load two comes out"
// and "can I clear 3 tops a day with one bag, each 42x84" plan a day: a number of
// panels, their size and what presses them make no order to the book.
func (r *reader) daysWorkTold() bool {
	r.announced() // for the number that it sets aside
	if !r.means(kindNoun, "panel") || !r.means(kindNoun, "press", "bag", "frame") {
		return false
	}
	if at := r.opening(); at >= 0 {
		if refs, next := r.references(at); len(refs) > 0 && (r.is(next, kindVerb, string(In), string(Out)) || r.word(next, "is", "are") && r.is(next+1, kindVerb, string(In), string(Out))) {
			return false // "14 out, next 6 tables 36x84, one press"
		}
	}
	panels, sized, presses := false, false, false
	for i := range r.items {
		am := r.items[i].amount
		switch {
		case am != nil && am.link == linkTimes && i > 0 && r.items[i-1].amount != nil:
			sized = true
		case r.is(i, kindNoun, "panel") && r.countBefore(i):
			panels = true
		case r.is(i, kindNoun, "press", "bag", "frame") && r.countBefore(i):
			presses = true
		case r.is(i, kindVerb, string(Post), string(Check), string(Uncheck), string(Correct), string(Copy), string(Hold), string(Result), string(Undo)):
			return false
		}
	}
	return panels && sized && presses
}

// countBefore reports whether a number, or one of its words, stands right before item i.
func (r *reader) countBefore(i int) bool {
	return i > 0 && (r.items[i-1].amount != nil && r.items[i-1].amount.bare() || r.word(i-1, "single", "both"))
}

// picturesPosted: "I'd post a picture if I could" posts no load.
func (r *reader) picturesPosted(i int) bool {
	for r.word(i, "a", "the", "some", "my", "another", "more") {
		i++
	}
	return r.word(i, "picture", "pictures", "pic", "pics", "photo", "photos", "video", "videos", "link", "question", "drawing", "sketch", "screenshot")
}

// outdoors: "it's 28 out and 60 in here", "forecast is 35 out" tell how cold it is, where
// "out" stands at item i.
func (r *reader) outdoors(i int) bool {
	if !r.word(i, "out", "outside") || i < 2 || r.items[i-1].amount == nil {
		return false
	}
	if k := i - 2; k == r.firstWord() && r.word(k, "is") {
		return false // "is 14 out? shop is cold" asks of a load
	}
	if k := i - 2; !r.word(k, "is", "its", "was", "at", "around", "about", "only", "forecast", "like", "says", "be", "below") {
		return false
	}
	return r.opensWithin(0, len(r.items), "forecast", "weather", "heater", "heat", "heated", "cold", "freezing", "warm", "inside", "in here", "indoors", "garage") || r.within(i, len(r.items), kindAir, "shop", "temp") >= 0
}
