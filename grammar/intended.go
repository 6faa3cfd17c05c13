package grammar

// papers say what a load is to be, not what it is.
var papers = wordSet(`card ticket drawing print sheet plan plans order spec specs cutlist list docket worksheet blueprint paper paperwork job design model`)

// killIntended marks what a load was meant to be where the message tells what it is:
// "bar 1 1/4, supposed to be 1", "drawing says 1 in bar but it's 1 1/4".
func (r *reader) killIntended() {
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.value == nil || r.isBreak(i-1) {
			continue
		}
		at := r.intendedFrom(i)
		if at < 0 {
			continue
		}
		if j := r.actualBehind(i); j >= 0 {
			r.unhear(i, j)
			r.takesPlace(i, j)
		} else if k := r.actualBefore(at); k >= 0 && r.intendedFrom(k) < 0 && !r.word(at, "asked", "aimed", "aiming", "shooting", "wanted") && r.comparable(k, i) {
			r.items[i].amount.dead = true
			for ; at < i; at++ {
				if r.is(at, kindFix) {
					r.items[at].meaning, r.items[at].used = meaning{}, true
				}
			}
		}
	}
}

// comparable reports whether two amounts can be what was meant of one thing and what it is:
// they are as far apart as work goes wrong, three times at most.
func (r *reader) comparable(k, i int) bool {
	a, b := r.items[k].amount, r.items[i].amount
	const furthest = 3
	return alike(a, b) && (a.unit == nil) == (b.unit == nil) && a.float() < furthest*b.float() && b.float() < furthest*a.float()
}

// unhear lets what is so be no hearsay.
func (r *reader) unhear(i, j int) {
	for k := i; k <= j; k++ {
		if am := r.items[k].amount; am != nil {
			am.hearsay = false
		}
	}
}

// intendedFrom is where the words before item i begin that make it what was meant to
// be; -1 where there are none.
func (r *reader) intendedFrom(i int) int {
	k := i - 1
	for r.word(k, "a", "an", "the", "at", "about") {
		k--
	}
	if r.isBreak(k) || r.items[k].amount != nil {
		return -1
	}
	switch {
	case r.word(k-1, "to") && r.word(k, "be", "been", "have", "read", "say") && (r.word(k-2, "supposed", "meant", "ought")):
		return k - 2
	case r.word(k-1, "have") && r.word(k, "been", "read", "said") && r.word(k-2, "should"):
		return k - 2
	case r.word(k, "should be", "should say") && (r.paperAt(k-1) || r.mentions(kindVerb, string(Check)) && !r.word(k-1, "that", "it", "this")):
		return k
	case r.is(k, kindSay) && r.paperAt(k-1), r.word(k, "is", "was", "shows", "has", "had", "showed") && r.paperAt(k-1) && !r.is(k-1, kindNoun):
		return k - 1
	case r.word(k, "for") && r.word(k-1, "calls", "called") && r.paperAt(k-2):
		return k - 2
	case r.word(k-1, "to") && r.word(k, "use", "do", "make", "run", "have") && (r.word(k-2, "going", "gonna", "planning", "hoping", "meaning", "wanted", "meant", "intended")) && r.word(k-3, "was", "were", "i", "we", "had"):
		return k - 2
	case r.word(k, "for") && r.word(k-1, "asked", "aimed", "aiming", "shooting"):
		return k - 1
	case r.word(k, "nominal", "nominally", "wanted", "ordered", "specified", "specced"):
		return k
	}
	return -1
}

func (r *reader) paperAt(k int) bool {
	return k >= 0 && r.items[k].amount == nil && papers[lastWord(r.items[k].word)]
}

// actualBehind is the amount that item i, which was meant, turned out as: "but it's 1
// 1/4", "only getting 22"; -1 where there is none.
func (r *reader) actualBehind(i int) int {
	_, to := r.sentence(i)
	turned := false
	own := r.next(i)
	for j := i + 1; j < to && j < i+12; j++ {
		switch {
		case r.word(j, "but", "actual", "actually", "got", "getting", "found", "find", "measures", "measured", "came", "only", "though") || r.is(j, kindFix) && r.word(j, "actually", "is actually", "are actually"):
			turned = true
		case r.items[j].amount != nil:
			if turned && r.live(j) && !r.ofElse(i, j) && r.intendedFrom(j) < 0 {
				return j
			}
			return -1
		case r.is(j, kindNoun) && j != own && !(j == own+1 && r.is(own, kindAttr)) && !(own >= 0 && r.items[own].id == r.items[j].id) && !r.is(j+1, kindNoun):
			return -1
		case r.is(j, kindAttr) && j != own && j != own+1:
			return -1
		}
	}
	return -1
}

// actualBefore is the amount that stands right before item at, past a break and small
// words; -1 where there is none.
func (r *reader) actualBefore(at int) int {
	for k := at - 1; k >= 0 && k >= at-7; k-- {
		switch {
		case r.live(k):
			return k
		case r.items[k].amount != nil:
			return -1
		case r.isBreak(k) && r.items[k].brk != ',' && r.items[k].brk != '(' && r.items[k].brk != '-', r.is(k, kindGlue), r.is(k, kindWood):
			return -1
		case r.is(k, kindNoun) && !(k > 0 && r.items[k-1].amount != nil):
			return -1
		}
	}
	return -1
}
