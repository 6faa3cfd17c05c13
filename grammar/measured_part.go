package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Which part a measure with a direction is of.

// clauseNoun is the part that a measure with a direction belongs to: the noun
// right behind it, else the last one before it in the clause, where that part has
// such a direction; "" where there is none.
func (r *reader) clauseNoun(i, j int, attr string) string {
	behind := i
	if j > i {
		behind = j
	}
	k := r.nextNear(behind)
	for r.is(k, kindWood) || r.is(k, kindFact) && !strings.HasPrefix(r.items[k].word, "on ") || r.is(k, kindAttr) && r.items[k].used {
		k = r.next(k)
	}
	if k >= 0 && r.is(k, kindNoun) && attrFields[r.items[k].id][attr] != "" && !r.ownsNumber(k) && !r.startsAnew(k) {
		return r.items[k].id
	}
	from, _ := r.clause(i)
	if r.ofStack(i) {
		if attr == "wide" || attr == "long" {
			return "panel"
		}
		return "stack" // how high it is, no part says
	}
	for k := min(i, j) - 1; k >= from; k-- {
		if r.boundAt(k) == unit.StripCount {
			return "strip" // "7 of them 3 wide"
		}
		if attr == "tall" && r.word(k, "pile", "heap") {
			return "stack" // "the whole pile is 3 tall"
		}
		if r.is(k, kindWood) && attrFields["strip"][attr] != "" && r.topic != Move {
			return r.woodMeasure(attr)
		}
		if !r.is(k, kindNoun) {
			continue
		}
		if r.is(k, kindNoun, "mat", "caul") && r.next(k) == i && (attr == "wide" || attr == "long") && !r.mentions(kindNoun, "strip", "panel") {
			return "stack" // "mat 2 in wide" is of no strip
		}
		if r.is(k, kindNoun, "bar", "mat", "caul") && k+1 != i && r.ownsNumber(k) && attr != "tall" && !r.has(attrFields["strip"][attr]) && r.mentions(kindNoun, "strip") {
			continue // run on: "five staves bar 1 inch 3/4 thick"
		}
		if r.is(k, kindNoun, "bar") && !isPlural(r.items[k].word) && attr != "tall" && (r.word(i-1, "theyre") || r.word(i-1, "are") && r.word(i-2, "they")) {
			return "strip" // "will a 1 1/2 bar press em if they're 3/4 thick"
		}
		if r.is(k, kindNoun, "bar") && k > 0 && (r.ownsNumber(k) || r.items[k-1].amount != nil) && (attr == "wide" || attr == "thick") && r.word(i-1, "on", "against", "onto") {
			return "strip" // "a 1 1/4 bar on 3/4 thick, 2 in strips"
		}
		if attrFields[r.items[k].id][attr] != "" && (attr == "deep" || !r.lainThere(k, from)) {
			return r.items[k].id
		}
	}
	return ""
}

// lainThere: of "a bar on the bed 2 in tall" and "three panels on the bed, all 20 wide" the
// press at item k is only where the thing lies that is measured.
func (r *reader) lainThere(k, from int) bool {
	if !r.is(k, kindNoun, "bed", "frame", "press", "bag") || !r.word(k-1, "the", "our", "my") || !r.word(k-2, "on", "in", "inside", "into", "onto", "across") {
		return false
	}
	j := k - 3
	for j > from && (r.word(j, "stands", "sits", "standing", "sitting", "lying", "laid", "is", "are", "down", "out", "right", "up") || r.is(j, kindWood)) {
		j--
	}
	return j >= from && r.is(j, kindNoun, "bar", "panel")
}

// ofStack reports whether the measure at item i is of a stack as a whole, which is
// to go into something: "the stack is 40 wide and 3 tall, does it fit in the bag".
func (r *reader) ofStack(i int) bool {
	if !r.means(kindRole, "stackorder") {
		return false
	}
	s, _ := r.sentence(i)
	k := i - 1
	for k >= s && r.items[k].kind != kindNoun && !r.is(k, kindRole, "stackorder") {
		k--
	}
	return k >= s && r.is(k, kindRole, "stackorder") && (r.mentions(kindNoun, "bag", "frame", "press", "opening") || r.mentions(kindAsk, "stack"))
}

// equated reports whether a sign gives the noun at item k its number: "bar=1.5", "bar
// height = 1.5".
func (r *reader) equated(k int) bool {
	sign := k + 1
	if r.is(sign, kindAttr) {
		sign++
	}
	return sign+1 < len(r.items) && r.items[sign].brk == '=' && r.items[sign+1].amount != nil && r.length(sign+1)
}

// ownsNumber reports whether a noun has a measure of its own behind it.
func (r *reader) ownsNumber(k int) bool {
	if r.equated(k) {
		return true
	}
	n := r.next(k)
	return n == k+1 && r.items[n].amount != nil && r.length(n) && !r.is(r.next(n), kindAttr) && !r.is(r.next(n), kindNoun)
}

// barStandsAt: of "bar stands off the sled on the bed, 1 3/4 high" the bed at item k is only
// where the bar has its foot.
func (r *reader) barStandsAt(k int) bool {
	j := k - 1
	for r.word(j, "the", "our", "my") {
		j--
	}
	from, _ := r.clause(k)
	return r.is(k, kindNoun, "bed", "frame", "press", "sled") && r.word(j, "on", "onto") && r.is(r.within(from, j, kindNoun), kindNoun, "bar")
}

// rubsOn: of "friction about 0.15 on the bed, 3/8 thick, 30 long" the bed at item k is only
// what the strips slide on.
func (r *reader) rubsOn(k int) bool {
	from, _ := r.clause(k)
	return r.is(k, kindNoun, "bed", "sled", "frame", "press") && r.word(k-1, "the", "our", "my") && r.word(k-2, "on") && r.within(from, k, kindRole, "friction") >= 0
}

// frameNoun is the part that earlier clauses were about. An accessory gives way
// to the strips where their own measure is still missing.
func (r *reader) frameNoun(from int, attr string) string {
	if attr == "wide" && r.barSection(from) {
		return "bar"
	}
	if attr == "wide" && r.has(unit.StockPiles) {
		return "panel"
	}
	last := ""
	for k := from - 1; k >= 0; k-- {
		if r.is(k, kindNoun) && attrFields[r.items[k].id][attr] != "" && !r.ofEachPanel(k) && !r.rubsOn(k) && !((r.word(from, "all", "each", "both") || attr == "tall" && r.word(from, "so")) && r.lainThere(k, 0)) {
			if r.is(k, kindNoun, "bar") && attr == "thick" && from >= 2 && r.otherSaid(k, from-1) {
				break // "1 in bar, 25 inHg, 3/8 thick" is of the strips again
			}
			last = r.items[k].id
			if attr == "tall" && r.barStandsAt(k) {
				last = "bar"
			}
			break
		}
	}
	def := r.defaultNoun(attr)
	if last == "panel" && r.byPanel {
		return "strip"
	}
	if last == "" {
		return def
	}
	if f := attrFields[last][attr]; last == "panel" && (r.has(f) || attr == "thick" && r.topic != Schedule && r.topic != Stack) && r.mentions(kindNoun, "strip") {
		return "strip"
	}
	if last == "panel" && r.topic == Flatten {
		return "strip"
	}
	if last == "mat" && attr == "thick" && r.within(0, from, kindNoun, "strip") < 0 && !r.has(unit.MatThickness) {
		return last
	}
	switch last {
	case "strip", "panel", "core", "bag", "bed", "frame":
		return last
	}
	if f := attrFields[last][attr]; r.has(f) || (r.mentions(kindNoun, "strip") || def == "strip") && !r.stripsHave(attr) && attr != "tall" && attr != "deep" {
		return def
	}
	return last
}

// metricSleds: "18 thick on 19 sleds" has sleds of 19 mm, not so many.
func (r *reader) metricSleds(i, n int) bool {
	return r.habit.Metric && r.items[i].amount.bare() && r.items[i].amount.form == formInt && n >= 9 && r.word(i-1, "on") && r.is(i+1, kindNoun, "sled") && i > 1
}

// wholeThing: "whole thing 20 wide" is the panel.
func (r *reader) wholeThing(i int) bool {
	from, _ := r.clause(i)
	if r.within(from, i, kindNoun) >= 0 {
		return false
	}
	for k := from; k < i; k++ {
		if strings.HasPrefix(r.items[k].word, "whole") || r.word(k, "entire") {
			return true
		}
	}
	return false
}
