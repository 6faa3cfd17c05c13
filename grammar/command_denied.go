package grammar

// Orders that are denied before a plain verb: nothing is done.

// carrying and marking are what is done to a load in the shop and in the book.
var (
	carrying = wordSet(`take bring carry move let have wheel roll lift`)
	marking  = wordSet(`mark count log list call enter show tick put record down`)
)

// forbidsPlainly reads "don't take 26 in yet", "don't let 26 go in", "don't mark 27 as checked".
func (r *reader) forbidsPlainly() bool {
	not := r.within(0, len(r.items), kindNot, "not")
	if not < 0 || !r.word(not, "dont", "never", "not") || r.word(not, "not") && !r.word(not-1, "do", "must", "should", "shall", "to", "lets") || r.asksSomething() || !r.quiet(0, not) {
		return false
	}
	verb := not + 1
	for r.word(verb, "anyone", "anybody", "you", "please", "ever", "just", "yet") {
		verb++
	}
	word := r.wordAt(verb)
	if verb >= len(r.items) || r.items[verb].amount != nil || !carrying[word] && !marking[word] {
		return false
	}
	refs, next := r.references(verb + 1)
	if len(refs) == 0 || next >= len(r.items) {
		return false
	}
	for r.word(next, "go", "come", "be", "back", "down", "as", "for", "being", "up") {
		next++
	}
	meant := Verb("")
	switch {
	case next >= len(r.items):
	case r.items[next].amount != nil && r.items[next].amount.unitRaw == "in", r.is(next, kindUnit, "in"), r.word(next, "in"), r.is(next, kindVerb, string(In)):
		meant = In
	case (r.is(next, kindVerb, string(Out)) || r.word(next, "come out")) && !r.word(next+1, "of"):
		meant = Out
	case r.is(next, kindVerb, string(Check), string(Clear), string(Hold)) && marking[word]:
		meant = r.verb(next)
	}
	if meant == "" || !r.endsOrder(next+1) && !r.is(next+1, kindNoun, "press", "bag", "frame") && !r.word(next+1, "there") {
		return false
	}
	r.close(&Command{Verb: NotDone, Meant: meant, Loads: refs}, next+1)
	return true
}
