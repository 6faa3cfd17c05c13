package grammar

// Numbers of what is told beside the work: the bag's own thickness, the boards that the
// strips came out of, fasteners, the table that is made.

var apronWord = wordSet(`apron aprons skirt skirts skirting`)

// fastens reports whether a word is of a fastener.
func fastens(w string) bool {
	switch w {
	case "screw", "screws", "nail", "nails", "brad", "brads", "staple", "staples", "bolt", "bolts", "lag", "lags", "rivet", "rivets", "pin", "pins", "pegs", "dowel", "dowels":
		return true
	}
	return false
}

// killAside marks them.
func (r *reader) killAside() {
	part := r.means(kindNoun, "bag", "film", "joint")
	stacked := part && r.mentions(kindNoun, "sled", "caul", "mat")
	table := r.opens("leg", "legs", "apron", "aprons", "skirt", "chairs") >= 0
	long, mils := r.means(kindAttr, "long"), r.says("mil", "mils", "mill", "gauge", "micron", "microns")
	for k := range r.items {
		switch it := &r.items[k]; {
		case it.amount != nil:
			if r.timesAt(k + 1) {
				r.cutOutOf(k)
			}
			if mils {
				r.milsOf(k)
			}
		case part && r.is(k, kindNoun, "bag"), part && r.is(k, kindNoun, "film") && !stacked:
			r.ownSize(k, "thick")
		case part && r.is(k, kindNoun, "joint") && !(isPlural(r.items[k].word) && r.free(k-1)):
			r.ownSize(k, "deep")
		case long && fastens(it.word):
			r.fastener(k)
		case table && apronWord[it.word] && r.mentions(kindNoun, "strip"):
			r.apron(k)
		case table && r.is(k, kindNoun, "bed") && r.word(k, "table", "tables") && !r.pumping():
			r.tableMade(k)
		}
	}
}

// ownSize marks what the part at item k measures in a direction that is of no use:
// "film 1/32 thick", "glue joint is 5/16 deep".
func (r *reader) ownSize(k int, attr string) {
	i := k + 1
	for r.word(i, "is", "are", "thats", "about", "only") {
		i++
	}
	if r.live(i) && r.length(i) && r.items[i].amount.link == linkNone && r.is(i+1, kindAttr, attr) && !r.is(r.next(i+1), kindNoun) {
		r.items[i].amount.dead = true
		r.idleDirections(i+1, i+2)
	}
}

// milsOf marks the thickness of "a 30 mil bag".
func (r *reader) milsOf(i int) {
	n := i + 1
	if !r.live(i) || !r.items[i].amount.bare() || !r.word(n, "mil", "mils", "mill", "gauge", "micron", "microns") {
		return
	}
	for n++; r.word(n, "thick", "vinyl", "poly", "polyurethane", "pvc", "urethane", "clear", "vacuum", "plastic"); n++ {
	}
	if r.is(n, kindNoun, "bag") || r.is(n, kindVacuum) && r.is(n+1, kindNoun, "bag") {
		r.items[i].amount.dead = true
	}
}

// cutOutOf marks the boards that strips came out of: "resawn from 8/4 x 10 ft maple".
func (r *reader) cutOutOf(i int) {
	if !r.live(i) || r.items[i].amount.form != formQuarters && !r.quarterText(i) || !r.word(i-1, "from", "of", "out of", "off") {
		return
	}
	r.items[i].amount.dead = true
	for i++; r.live(i) && r.items[i].amount.link == linkTimes; i++ {
		r.items[i].amount.dead = true
	}
}

// quarterText: "8/4" is what boards are sawn to.
func (r *reader) quarterText(i int) bool {
	am := r.items[i].amount
	n := len(r.items[i].text)
	return am.form == formFraction && am.bare() && n > 2 && r.items[i].text[n-2:] == "/4" && am.float() > 1
}

// fastener marks how long those at item k are where a clause of its own says so:
// "screws every 6 in, 2 in long".
func (r *reader) fastener(k int) {
	from, to := r.clause(k)
	i := to + 1
	if r.within(from, to, kindNoun) >= 0 || to >= len(r.items) || r.items[to].brk != ',' || !r.live(i) || !r.length(i) || !r.is(i+1, kindAttr, "long") || !r.isBreak(i+2) {
		return
	}
	r.items[i].amount.dead = true
	r.idleDirections(i+1, i+2)
}

// apron marks the one under a table's top, and its size: "legs 29 tall, apron 4 in".
func (r *reader) apron(k int) {
	r.items[k].meaning = meaning{}
	i := k + 1
	for r.word(i, "is", "are", "of") {
		i++
	}
	for ; r.live(i) && r.length(i); i++ {
		r.items[i].amount.dead = true
		if r.is(i+1, kindAttr) {
			r.idleDirections(i+1, i+2)
			return
		}
	}
}

// tableMade marks how big the table with legs is: "table is 30x72, legs 29 tall".
func (r *reader) tableMade(k int) {
	i := k + 1
	for r.word(i, "is", "will", "be", "its", "ll", "about", "measures") {
		i++
	}
	if !r.timesAt(i+1) || !r.live(i) || !r.live(i+1) || r.is(r.next(i+1), kindNoun) {
		return
	}
	r.items[i].amount.dead, r.items[i+1].amount.dead = true, true
	r.items[k].meaning = meaning{}
}
