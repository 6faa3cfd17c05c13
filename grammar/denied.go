package grammar

import "presshand/engine/unit"

// partNames are the parts that a message can take away.
var partNames = map[string]Part{
	"bar": "bar", "mat": "mat", "wedge": "wedge", "caul": "caul", "film": "film", "fence": "fence", "core": "core", "gap": "gap", "pump": "pump", "leak": "leak", "sled": "sled", "tent": "tent", "cup": "cup", "bow": "bow", "glue": "glue", "species": "species",
}

// parts reads what is denied: "no bar", "without the mat", "forget the wedge".
func (r *reader) parts() {
	r.leftOff()
	if !r.means(kindNot) && !r.says("drop", "lose", "strike", "scratch", "nix", "kill", "omit", "delete") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNot) && !r.word(i, "drop", "lose") && !r.crossesOut(i) {
			continue
		}
		j := i + 1
		for j < len(r.items) && (r.word(j, "the", "a", "an", "any", "that", "about", "side", "this", "with", "using", "more", "have", "got", "own", "use", "even", "got a", "put") || r.is(j, kindNot) || r.items[j].kind == kindWoodSort || j > i+1 && r.items[j].amount != nil && r.items[j].amount.dead && !r.isBreak(j) || j == i+1 && r.word(i, "dont", "didnt", "doesnt") && r.word(j, "need", "want")) {
			j++
		}
		if !r.is(i, kindNot) && (!r.is(j, kindNoun) && !r.is(j, kindRole, "trim") || !r.word(i+1, "the") || r.word(j+1, "to", "by", "down") && r.amountsIn(j, len(r.items)) > 0) {
			continue // "drop the bar to 30"
		}
		if r.word(j, "glue") || r.is(j, kindGlue) && in(r.items[i].word, "forget", "drop", "never mind", "ignore", "scrap", "forget about") {
			r.items[i].used, r.items[j].used = true, true
			r.phrase.Drops = append(r.phrase.Drops, "glue")
			continue
		}
		if r.is(j, kindRole, "trim") && (r.items[i].word == "no" || r.word(j-1, "any", "need") || leaving[r.items[i].word] || in(r.items[i].word, leavingOut...)) {
			r.items[i].used = true
			r.say(j, unit.Trim, unit.Number(0))
			continue
		}
		if r.denies(i, j) || r.otherPress(i, j) {
			continue
		}
		if j < len(r.items) && !r.items[i].used && r.meaningful(j) && in(r.items[i].word, "except", "except for", "excluding", "other than", "without", "no", "not", "instead of", "rather than") {
			if r.items[i].word == "no" && (r.isBreak(i+1) || i == 0) || r.items[i].word == "not" && (r.is(j, kindAsk) || r.idle(j)) {
				continue
			}
			if c := r.phrase.Command; c != nil && c.Verb == Copy && r.items[j].used && in(r.items[i].word, "except", "except for", "other than", "excluding") {
				continue // "same as 14 except epoxy"
			}
			r.phrase.Negated = append(r.phrase.Negated, r.textOf(i, j))
		}
	}
}

// crossesOut: "strike the bar", "take the bar off the list", where nothing is struck
// with a force.
func (r *reader) crossesOut(i int) bool {
	return r.habit.Follows && r.word(i, "strike", "scratch", "nix", "kill", "omit", "delete") && !r.said(unit.Pushing) && !r.is(i+2, kindNoun, "wedge")
}

// otherPress: "forget the bag, run two frames" leaves the one press for the other.
func (r *reader) otherPress(i, j int) bool {
	if !r.is(j, kindNoun, "bag", "frame") || !in(r.items[i].word, "forget", "scrap", "ditch", "skip", "never mind", "forget about", "ignore", "not using", "instead of", "rather than") {
		return false
	}
	other := map[string]string{"bag": "frame", "frame": "bag"}[r.items[j].id]
	if !r.mentions(kindNoun, other) {
		return false
	}
	r.items[i].used, r.items[j].used = true, true
	return true
}

func (r *reader) meaningful(j int) bool {
	it := &r.items[j]
	return it.amount != nil || it.kind != kindNone && it.kind != kindFill && it.kind != kindWoodSort || it.brk == 0 && !fill[it.word]
}

func (r *reader) denies(i, j int) bool {
	if j >= len(r.items) || !r.is(j, kindNoun) {
		return false
	}
	id := r.items[j].id
	part, ok := partNames[id]
	if !ok || in(r.items[i].word, "not", "dont", "cant", "wont", "isnt", "doesnt", "cannot", "never", "except", "except for", "other than", "havent", "didnt", "wasnt", "arent", "hasnt", "not using") && !in(r.items[i].word, "not using") && !r.word(i+1, "have", "got", "own", "use") {
		return false
	}
	if r.is(j+1, kindNot) && in(r.items[j+1].word, "except", "except for", "other than") && r.within(j+2, len(r.items), kindNoun, id) >= 0 {
		r.items[i].used, r.items[j].used, r.items[j+1].used = true, true, true
		return true // "no mat except a 1/4 foam one"
	}
	r.items[i].used, r.items[j].used = true, true
	if id == "bar" && r.onOtherSide(j+1) || r.has(unit.StackLayers) && r.onTopBehind(j) {
		return true // of the stack that is told here, none was laid on top
	}
	if in(r.items[i].word, "instead of", "rather than") && r.otherOfKind(i, j) {
		return true // "ply instead of mdf"
	}
	r.phrase.Drops = append(r.phrase.Drops, part)
	switch part {
	case "bar":
		if in(r.items[i].word, "no", "without", "w o", "w/o", "sans", "none", "zero", "not using") || r.word(i+1, "have", "got", "own", "use") {
			r.say(j, unit.BarDenied, unit.Word("none"))
		}
	case "mat":
		r.say(j, unit.MatDenied, unit.Word("none"))
	case "gap":
		if r.items[i].word == "no" {
			r.say(j, unit.Gap, unit.Number(0))
		}
	}
	return true
}

// findFixes notes where the message corrects itself.
func (r *reader) findFixes() {
	well, er, not := r.says("well"), r.says("er", "err", "erm", "um", "uh", "ah", "eh"), r.means(kindNot)
	if !well && !er && !not && !r.means(kindFix) {
		return
	}
	for i := range r.items {
		if r.items[i].amount != nil {
			continue
		}
		if r.is(i, kindFix) && in(r.items[i].word, "i mean", "i meant") && r.isBreak(i+1) && i > 0 && r.items[i-1].amount == nil && !r.isBreak(i-1) {
			r.items[i].meaning = meaning{kind: kindFill} // "they vary by 1/32. strips i mean, 1/4 nominal"
		}
		if well && r.word(i, "well") && r.isBreak(i-1) && i+1 < len(r.items) && r.items[i+1].amount != nil && r.amountBefore(i) && !r.spreadBehind(i) {
			r.items[i].kind = kindFix // "12 strips, well 11"
			r.hear(i)
		}
		if er && r.hesitates(i) {
			r.items[i].kind = kindFix
			r.hear(i)
		}
		if !not {
			continue
		}
		if r.renamed(i) {
			r.items[i].kind, r.items[i+1].used = kindFix, true
			r.hear(i)
		} else if r.saidAgain(i) {
			r.items[i].kind = kindFix
			r.hear(i)
		}
		if r.is(i, kindNot) && r.items[i].word == "no" && i+1 < len(r.items) && (r.isBreak(i+1) || r.items[i+1].amount != nil) && i > 0 {
			j := i + 1
			for j < len(r.items) && r.isBreak(j) {
				j++
			}
			if j < len(r.items) && (r.items[j].amount != nil || r.is(j, kindFix)) && r.amountBefore(i) {
				r.items[i].kind = kindFix
				r.hear(i)
			}
		}
	}
}

// hesitates: "bar is 1 inch.. er, 1 1/8" says a measure again, better.
func (r *reader) hesitates(i int) bool {
	if !r.word(i, "er", "err", "erm", "um", "uh", "ah", "eh") || r.isBreak(i) {
		return false
	}
	from, to := i-1, i+1
	for from >= 0 && (r.isBreak(from) || r.is(from, kindNoun) && from >= i-2) {
		from--
	}
	for to < len(r.items) && r.items[to].brk == ',' || r.isStop(to) && to < i+4 {
		to++
	}
	return from >= 0 && r.items[from].amount != nil && to < len(r.items) && r.items[to].amount != nil && r.isBreak(to+1) && alike(r.items[from].amount, r.items[to].amount)
}

// renamed: "bar one inch no bar one and a quarter" says the part again with
// another measure.
func (r *reader) renamed(i int) bool {
	if !r.is(i, kindNot) || r.items[i].word != "no" || !r.is(i+1, kindNoun, "bar", "mat", "core", "caul", "sled") || i+2 >= len(r.items) || r.items[i+2].amount == nil || i < 1 || r.items[i-1].amount == nil {
		return false
	}
	from, _ := r.clause(i)
	return r.within(from, i, kindNoun, r.items[i+1].id) >= 0
}

func (r *reader) amountBefore(i int) bool {
	for j := i - 1; j >= 0; j-- {
		if r.items[j].amount != nil {
			return true
		}
	}
	return false
}

// fixes gives a bare number behind "sorry" or "make that" to the field that was
// read last before it.
func (r *reader) fixes() {
	for i := range r.items {
		if r.items[i].kind != kindFix {
			continue
		}
		j := i + 1
		for j < len(r.items) && j <= i+8 && r.items[j].amount == nil && (r.items[j].kind == kindNone || r.is(j, kindFix) || r.is(j, kindFill) || r.is(j, kindVerb, "check") || r.is(j, kindSay) || r.is(j, kindPerson)) {
			j++
		}
		if !r.free(j) || r.is(r.next(j), kindNoun) || r.is(r.next(j), kindAttr) {
			continue
		}
		if r.goalAgain(j) {
			continue
		}
		r.unitBefore(i, j)
		if last := r.lastBefore(i, j); last >= 0 {
			r.bind(j, r.bound[last].fact.Field)
		}
	}
	r.itsNow()
	r.bareReply()
}

// unitBefore gives a bare number that corrects another its unit: "20 gal, no wait
// 25".
func (r *reader) unitBefore(i, j int) {
	for k := i - 1; k >= 0 && !r.isStop(k); k-- {
		am := r.items[k].amount
		if am == nil {
			continue
		}
		if am.unit != nil && am.unit.Dimension == unit.Content && r.items[j].amount.bare() {
			u := *am.unit
			r.items[j].amount.unit = &u
		}
		return
	}
}

// itsNow reads "i could only find 7 so its 7": a bare number behind "its" is for
// the count that was spoken of.
func (r *reader) itsNow() {
	if !r.says("again", "its", "is", "now") {
		return
	}
	for i := range r.items {
		if r.free(i) && r.word(i-1, "so", "to") && r.word(i+1, "again") {
			if k := r.lastBefore(i, i); k >= 0 {
				r.items[i+1].meaning = meaning{kind: kindFix} // "well 8 but one had a knot so 7 again"
				r.hear(i + 1)
				r.bind(i, r.bound[k].fact.Field)
				r.fixedAt = append(r.fixedAt, i)
				continue
			}
		}
		if !r.free(i) || !r.word(i-1, "its", "is", "now") || r.next(i) >= 0 {
			continue
		}
		k := r.lastBefore(i, i)
		if k < 0 || !r.bound[k].weak || r.bound[k].fact.Field.Dimension() != unit.Count && !(r.word(i-1, "now") || r.word(i-2, "now")) {
			continue
		}
		r.bind(i, r.bound[k].fact.Field)
		for j := r.bound[k].from; j < i; j++ { // the same number said twice
			if r.free(j) && r.items[j].amount.equals(r.items[i].amount.value) {
				r.items[j].used = true
			}
		}
	}
}

// inPlaceOfBare reads two bare numbers of a later message of which the one takes
// the other's place: "it's nearer 6 than 4", "6 not 4", "24 instead of 30".
func (r *reader) inPlaceOfBare() {
	for i := range r.items {
		j := i + 1
		for r.word(j, "than", "rather", "and") {
			j++
		}
		switch {
		case r.is(j, kindNot) && in(r.items[j].word, "not", "instead of", "rather than"):
			j++
		case j > i+1 && r.comparative(i-1):
		default:
			continue
		}
		if !r.free(i) || j >= len(r.items) || r.items[j].amount == nil || r.items[j].used || j+1 < len(r.items) && !r.isBreak(j+1) || r.items[i].amount.value == nil || r.items[j].amount.value == nil || !r.items[j].amount.bare() {
			continue
		}
		a := r.amendment(i)
		a.Was = r.items[j].amount.float()
		a.Of = r.partBefore(i)
		r.items[i].used, r.items[j].used = true, true
		r.unuse(r.items[j].text)
		r.phrase.Amends = append(r.phrase.Amends, a)
	}
}

// comparative reports whether item i, past "to" and "like", says that one number
// holds rather than another.
func (r *reader) comparative(i int) bool {
	for r.word(i, "to", "like") {
		i--
	}
	return r.word(i, "nearer", "closer", "more")
}

// lastBefore is the binding that stands last before item i and could hold the
// amount at j.
func (r *reader) lastBefore(i, j int) int {
	best := -1
	counted := r.recounted(i, j)
	for k, b := range r.bound {
		if counted && b.fact.Field.Dimension() != unit.Count {
			continue
		}
		if b.from >= i || best >= 0 && r.bound[best].from >= b.from {
			continue
		}
		if _, ok := b.fact.Value.(unit.Number); !ok {
			continue
		}
		if _, _, ok := r.valueOf(r.items[j].amount, b.fact.Field); !ok {
			continue
		}
		if b.fact.Field.Dimension() == unit.Count {
			if _, whole := r.items[j].amount.whole(); !whole {
				continue
			}
		}
		best = k
	}
	return best
}

// recounted: "no wait i counted again its 7" corrects a count.
func (r *reader) recounted(i, j int) bool {
	for k := i; k < j; k++ {
		if r.word(k, "count", "counted", "recounted", "counting", "miscounted") {
			return true
		}
	}
	return false
}

// amendment is a bare number for whatever the thread said last: "make that 24".
func (r *reader) amendment(j int) Amendment {
	it := &r.items[j]
	a := Amendment{Text: it.text, Value: it.amount.float()}
	if it.amount.unit != nil {
		a.Unit = *it.amount.unit
	}
	if a.Of = r.comparedBefore(j); a.Of == nil && r.habit.Follows {
		a.Of = r.ofWhat(j)
	}
	a.Layer, a.One = r.layerBeside(j), r.word(j+1, "one")
	return a
}

// ofWhat are the fields that words beside the number at item j say that it is of.
func (r *reader) ofWhat(j int) []unit.Field {
	if f := r.hinted(j); f != nil {
		return f
	}
	switch length := r.length(j); {
	case r.orderedBy(j) && length && r.size(j) > leastFenced:
		return []unit.Field{unit.PanelCount, unit.TargetWidth} // "customer wants 36 now"
	case r.orderedBy(j):
		return []unit.Field{unit.PanelCount} // "customer wants two now"
	case r.severalGoIn(j) && !r.word(j-1, "been", "was"): // "had been 9 going in" is of what it was then
		return []unit.Field{unit.PanelCount}
	case r.waitedFor(j):
		return []unit.Field{unit.ShopTemp, unit.ServiceTemp}
	case length && r.is(r.prev(j), kindRole, "target"):
		return []unit.Field{unit.TargetWidth} // "and if I only need 30"
	case r.word(j-1, "at", "to") && r.word(j-2, "glued", "dried", "kilned", "made") && r.next(j) < 0:
		r.items[j-2].used = true
		return []unit.Field{unit.WoodMoisture} // "glued at 10"
	case r.is(r.prev(j), kindNoun, "pump") && r.word(j-1, "a", "an"):
		return []unit.Field{unit.PumpSpeed} // "pump's a 10 now"
	case r.word(j-1, "at", "was", "is", "were") && r.whenGlued(j):
		return []unit.Field{unit.WoodMoisture}
	case length && r.betweenFences(j):
		return []unit.Field{unit.TargetWidth, unit.PanelWidth}
	case length && r.word(j-1, "a", "an") && r.next(j) < 0 && small(r.size(j)):
		return []unit.Field{unit.BarHeight} // "with a 2 in?"
	}
	return nil
}

// whenGlued: "if it was at 10 when I glued it" speaks of how wet the wood was.
func (r *reader) whenGlued(j int) bool {
	if !r.word(j+1, "when", "as", "while", "going") {
		return false
	}
	_, to := r.clause(j)
	return r.word(j+1, "going") && r.word(j+2, "in", "into") || r.opensWithin(j+2, to, "glued", "glue", "pressed", "press", "made", "built", "laid")
}
