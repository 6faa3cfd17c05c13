package grammar

// onOneOrOther: "6.5 on one board", "10 on the other".
func (r *reader) onOneOrOther(i int) bool {
	if !r.word(i+1, "on", "for", "in", "at") {
		return false
	}
	n := i + 2
	if n < len(r.items) && r.items[n].amount != nil {
		v := r.items[n].amount
		return v.form == formWords && v.value != nil && v.value.Cmp(one) == 0
	}
	return r.word(n, "one", "another", "some") || r.word(n, "the", "a") && r.word(n+1, "other", "others", "next", "rest", "first", "second")
}

// humidified: "if they humidify the house to 40".
func (r *reader) humidified(i int) bool {
	v := r.items[i].amount.float()
	if v < 10 || v > 90 || !r.word(i-1, "to", "at") {
		return false
	}
	from, _ := r.clause(i)
	k := r.within(from, i, kindAir, "rh")
	return k >= 0 && humidifies[r.items[k].word] && r.amountsIn(k, i) == 0
}

// humidifies are words for making air moister or drier.
var humidifies = wordSet(`humidify humidifies humidified humidifying humidifier humidifiers humidistat dehumidify dehumidifies dehumidified dehumidifying dehumidifier dehumidifiers dehu`)

// woodReads: "and the wood reads 12", "boards read 9" tell what the moisture meter
// shows.
func (r *reader) woodReads(i, p int) bool {
	v := r.items[i].amount.float()
	if v < 4 || v > 30 || p < 1 || r.is(r.next(i), kindNoun) || r.is(r.next(i), kindAttr) || r.items[i].amount.link != linkNone || r.mentions(kindVacuum, "gauge", "vacuum") {
		return false
	}
	if !(r.is(p, kindVacuum, "pull") && r.word(p, "reads", "reading", "shows", "showing")) && !r.word(i-1, "read", "tested", "metered", "test", "tests") {
		return false
	}
	k := i - 2
	if r.is(p, kindVacuum) {
		k = p - 1
	}
	for r.word(k, "is", "are", "still", "now", "all", "both", "just") {
		k--
	}
	return r.is(k, kindWood) || r.is(k, kindWoodSort) || r.is(k, kindNoun, "strip") || r.word(k, "wood", "timber", "lumber")
}

// waitedFor: "what if I wait til its 50", "once it warms up to 65" are of the air.
func (r *reader) waitedFor(j int) bool {
	k := j - 1
	for r.word(k, "about", "around", "over", "under", "above", "below", "like", "at", "to") {
		k--
	}
	switch {
	case r.word(k, "warms", "warmed", "heats", "cools", "cooled", "warm up", "warms up", "cools off", "cools down"), r.word(k, "up", "down", "off") && r.word(k-1, "warms", "warmed", "heats", "cools", "cooled", "warm", "cool"):
		return true
	case r.word(k, "its", "is", "hits", "gets", "reaches"):
		return r.opensWithin(max(k-4, 0), k, "til", "till", "until", "when", "once", "before") && r.next(j) < 0
	}
	return false
}

// inHumidity: a floor "in Darwin style humidity" is told where it lives.
func (r *reader) inHumidity() bool {
	if r.mentions(kindAir, "shop") {
		return false
	}
	for i := range r.items {
		if !r.is(i, kindAir, "rh") || r.word(i, "rh", "humid") {
			continue
		}
		for k := i - 1; k >= 0 && k >= i-4 && !r.isBreak(k) && r.items[k].amount == nil; k-- {
			if r.word(k, "in", "into") && k > 0 && !r.isBreak(k-1) || r.is(k, kindUnit, "in") && k > 0 {
				return true
			}
		}
	}
	return false
}
