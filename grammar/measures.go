package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// attrFields says what a direction of measuring makes of a part.
var attrFields = map[string]map[string]unit.Field{
	"strip":   {"wide": unit.StripWidth, "thick": unit.StripThickness, "long": unit.StripLength, "tall": unit.StripThickness, "deep": unit.StripThickness},
	"panel":   {"wide": unit.PanelWidth, "thick": unit.PanelThickness, "long": unit.PanelLength, "tall": unit.PanelLength, "deep": unit.PanelWidth},
	"bar":     {"wide": unit.BarWidth, "thick": unit.BarWidth, "tall": unit.BarHeight, "deep": unit.BarHeight},
	"sled":    {"wide": unit.SledWidth, "thick": unit.SledThickness, "long": unit.SledLength, "tall": unit.SledThickness},
	"caul":    {"thick": unit.CaulThickness, "tall": unit.CaulThickness},
	"mat":     {"thick": unit.MatThickness, "tall": unit.MatThickness, "deep": unit.MatThickness},
	"core":    {"thick": unit.CoreThickness, "wide": unit.PanelWidth, "long": unit.PanelLength},
	"face":    {"thick": unit.StripThickness, "wide": unit.PanelWidth, "long": unit.PanelLength},
	"bed":     {"wide": unit.BedWidth, "long": unit.BedLength, "deep": unit.Opening, "tall": unit.Opening},
	"frame":   {"wide": unit.BedWidth, "long": unit.BedLength, "deep": unit.Opening, "tall": unit.Opening},
	"press":   {"wide": unit.BedWidth, "long": unit.BedLength, "deep": unit.Opening, "tall": unit.Opening},
	"opening": {"tall": unit.Opening, "deep": unit.Opening, "wide": unit.Opening},
	"bag":     {"wide": unit.BagWidth, "long": unit.BagLength},
	"gap":     {"wide": unit.Gap, "deep": unit.Gap},
	"cup":     {"deep": unit.Cup, "tall": unit.Cup},
}

// bareFields says what a part's bare measure is.
var bareFields = map[string]unit.Field{
	"bar": unit.BarHeight, "mat": unit.MatThickness, "caul": unit.CaulThickness, "sled": unit.SledThickness, "core": unit.CoreThickness,
	"opening": unit.Opening, "gap": unit.Gap, "cup": unit.Cup, "bow": unit.Bow, "tent": unit.Tent, "panel": unit.PanelWidth, "face": unit.StripThickness,
	"bag": unit.BagWidth,
}

// measures reads lengths: by what they are for, by their direction, by the part
// beside them.
func (r *reader) measures() {
	r.thinOnes()
	r.sumsTo()
	r.roleLengths()
	r.comparedParts()
	r.listedWidths()
	r.attrLengths(true)
	r.eachWide()
	r.targetWidths()
	r.nounLengths()
	r.nearRanges()
	r.attrLengths(false)
	r.looseLengths()
}

// nounForm reports whether a direction is a noun, which looks for its number on the
// right; the others are adjectives and look left.
func nounForm(word string) bool {
	switch word {
	case "hgt", "ht", "width", "widths", "thickness", "thicknesses", "length", "lengths", "height", "depth":
		return true
	}
	return false
}

// attrLengths gives each direction word its number, then its part: first where
// the part stands in the same clause, then from what went before.
func (r *reader) attrLengths(sure bool) {
	r.letters()
	if !r.means(kindAttr) {
		return
	}
	none := r.means(kindAttr, "tall") || r.says("how", "the", "layers", "levels", "tiers", "storeys", "decks", "lots", "sets", "up", "deep")
	for pass := 0; pass < 2; pass++ {
		for j := range r.items {
			if r.items[j].kind != kindAttr || r.items[j].used {
				continue
			}
			if none && r.noDirection(j) || pass == 1 && r.attrNumber(j, 0) >= 0 {
				continue
			}
			i := r.attrNumber(j, pass)
			if i < 0 {
				continue
			}
			r.attrLength(i, j, sure)
		}
	}
}

// attrsFirst: "wide 60 thick 15" says each direction before its number, from the
// one at item j on.
func (r *reader) attrsFirst(j int) bool {
	plain := func(k int) bool {
		return r.is(k, kindAttr) && !nounForm(r.items[k].word) && k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.link == linkNone && r.length(k+1)
	}
	return plain(j) && plain(j+2) && !(j > 0 && r.items[j-1].amount != nil) && !(j+4 < len(r.items) && r.is(j+4, kindAttr))
}

// attrNumber is the amount that direction word j measures. The first pass takes
// the side that the word's form wants, the second the other.
func (r *reader) attrNumber(j, pass int) int {
	assigned := j+2 < len(r.items) && (r.items[j+1].brk == '=' || r.items[j+1].brk == ':') && r.free(j+2) && !r.free(j-1)
	if assigned && pass == 1 {
		return -1
	}
	right := (assigned || nounForm(r.items[j].word) || r.is(j, kindAttr, "thickest", "thinnest")) == (pass == 0)
	if right {
		for i := j + 1; i < len(r.items) && i <= j+5; i++ {
			if r.free(i) && r.length(i) {
				if k := i + 1; k < len(r.items) && r.is(k, kindAttr) && !nounForm(r.items[k].word) && !r.items[k].used && !assigned && !r.attrsFirst(j) && !r.ownNumber(k) {
					return -1
				}
				return i
			}
			if r.is(j, kindAttr, "thickest", "thinnest") && (r.is(i, kindNoun, "strip") || r.word(i, "one")) {
				continue
			}
			if !(r.idle(i) || r.turnedOut(i) || r.items[i].brk == ':' || r.items[i].brk == '=' || r.word(i, "of", "is", "dead", "on", "bang", "exactly") || r.is(i, kindNoun, "strip", "bar", "panel", "mat")) {
				return -1
			}
		}
		return -1
	}
	i := j - 1
	for i >= 0 && (r.idle(i) || r.word(i, "and")) && r.items[i].amount == nil && !r.isBreak(i) {
		i--
	}
	if r.free(i) && r.length(i) && !r.attrsFirst(i-1) {
		return i
	}
	return -1
}

// ownNumber: in "width 48 thick 16" each direction has its number behind it.
func (r *reader) ownNumber(k int) bool {
	n := k + 1
	return n < len(r.items) && r.free(n) && r.items[n].amount.bare() && r.items[n].amount.link == linkNone && (n+1 >= len(r.items) || r.isBreak(n+1))
}

// narrowestBed, in metres: a press has none narrower.
const narrowestBed = 0.25

// widestStrip, in metres: what "need 48 wide" asks for is no strip.
const widestStrip = 0.3

func (r *reader) attrLength(i, j int, sure bool) {
	attr := r.items[j].id
	if r.word(j, "high", "up", "deep") && (r.highOf(j) || r.highAlone(j) || r.panelsDeep(i, j)) || r.word(i-1, "hes", "shes", "im", "youre") || attr == "tall" && r.allTold(i, j+1) {
		return // so many levels, a man's height, or the height of all that lies there
	}
	if i+1 < len(r.items) && r.free(i+1) && r.items[i+1].amount.link == linkTo && r.length(i+1) && j < i && r.attrField(i, j, attr, sure) == unit.StripThickness {
		r.items[j].used = true
		r.bindRange(i, unit.StripThinnest, unit.StripThickest)
		return
	}
	first := i
	for first > 0 && r.items[first].amount.link == linkTo && r.free(first-1) {
		first--
	}
	f := r.attrField(i, j, attr, sure)
	if f == "" {
		return
	}
	r.items[j].used = true
	switch {
	case first < i && f == unit.StripThickness:
		r.bindRange(first, unit.StripThinnest, unit.StripThickest)
	case first < i:
		r.items[j].used = false
	case r.items[i].amount.link == linkOr && r.free(i-1):
		r.choice(i-1, i, f)
	case f == unit.StripWidth && r.size(i) > widestStrip && r.mentions(kindNoun, "core") && !r.has(unit.PanelWidth):
		r.bind(i, unit.PanelWidth) // "oak on both sides of mdf, the board is 400 wide"
	case f == unit.PanelWidth && r.forStrips(i), f == unit.StripWidth && r.size(i) > widestStrip && (r.is(r.prev(i), kindRole, "target") || r.stripsFor(i)), f == unit.StripWidth && r.boardWanted(i),
		f == unit.PanelWidth && r.topic == Strips && r.mentions(kindRole, "trim") && !r.has(unit.TargetWidth):
		r.bind(i, unit.TargetWidth)
	default:
		if f == unit.StripWidth && r.items[i].amount.link == linkAt && r.free(i-1) && !r.has(unit.StripCount) {
			if _, ok := r.items[i-1].amount.whole(); ok {
				r.bind(i-1, unit.StripCount) // "6 @ 2 wide"
			}
		}
		if r.habit.Metric {
			r.inMetres(i, f)
		}
		r.bind(i, f)
		if fact := r.justBound(i); r.loose && fact != nil {
			fact.Loose = true
		}
	}
	r.loose = false
}

// allTold: "2 1/4 tall all together", "75 high all in", of no part of the stack.
func (r *reader) allTold(i, j int) bool {
	if from, _ := r.clause(i); r.within(from, i, kindNoun, "bar", "mat", "sled", "caul", "fence") >= 0 {
		return false
	}
	return r.word(j, "altogether", "overall", "total") || r.word(j, "all") && r.word(j+1, "together", "in", "told", "up") || r.word(j, "in") && r.word(j+1, "all", "total") && r.isBreak(j+2)
}

// attrField is what the measure at i is, in direction j.
func (r *reader) attrField(i, j int, attr string, sure bool) unit.Field {
	switch attr {
	case "thickest":
		return unit.StripThickest
	case "thinnest":
		return unit.StripThinnest
	}
	if f := r.fixedField(i, attr); f != "" {
		return f
	}
	if attr == "wide" && (r.word(j-1, "total", "overall", "whole", "combined") || r.sumBefore(i) || r.wholeThing(i)) {
		return unit.PanelWidth
	}
	if attr == "thick" && r.is(j+1, kindWood) && !r.is(r.next(j+1), kindNoun) {
		return unit.StripThickness // "a 40 mm bar on 18 thick ash"
	}
	if attr == "tall" && (r.stackHeight(i) || j == i+1 && r.word(j, "proud") && !r.mentions(kindFix) && !r.is(r.prev(i), kindNoun, "opening")) {
		return "" // how far strips stand over a fence is no part's measure
	}
	noun := r.clauseNoun(i, j, attr)
	switch {
	case attr == "deep" && r.deepJoint(i) && r.size(i) < thickestLayer && !r.is(r.next(j), kindNoun):
		return unit.StripThickness
	case noun == "panel" && attr == "tall" && r.size(i) < lowPanel && r.mentions(kindRole, "stackorder"):
		return "" // "3 panels stacked 12 high"
	case noun == "opening" && attr == "wide" && r.has(unit.StockPiles) && !r.has(unit.TargetWidth):
		return unit.TargetWidth // what strips are to fill, fence to fence
	}
	noun = r.measuredNoun(i, noun, attr, sure)
	if noun == "opening" {
		if from, _ := r.clause(i); r.ofDoor(r.within(from, i, kindNoun, "opening")) {
			return ""
		}
	}
	if noun == "bed" && (r.madeTable(i) || attr == "tall" && r.laidOnBed(i)) {
		return ""
	}
	if f, known := r.knownField(i, noun, attr); known {
		return f
	}
	if noun == "gap" && attr == "wide" && r.gapOrOpening(i, unit.Gap) == "" {
		noun = "strip" // "1/32 gap ok on 3/4 thick 2 wide 4 ft long strips"
	}
	r.loose = r.loose || noun == "strip" && attr == "deep" && r.habit.Follows
	return attrFields[noun][attr]
}

// deepJoint: "12 joints 3/4 deep" are as deep as the strips are thick.
func (r *reader) deepJoint(i int) bool {
	from, _ := r.sentence(i)
	for k := i - 1; k >= from; k-- {
		if r.is(k, kindNoun) {
			return r.items[k].id == "joint"
		}
	}
	return false
}

// measuredNoun is the part that the measure at item i goes with, where the one found
// first is none, or cannot be so big.
func (r *reader) measuredNoun(i int, noun, attr string, sure bool) string {
	if noun == "" && i > 0 && r.items[i-1].brk == '(' {
		noun = r.bracketNoun(i, attr) // "bar 38 high (19 wide)"
	}
	if noun == "" && !sure {
		from, _ := r.clause(i)
		noun = r.frameNoun(from, attr)
		r.loose = !r.mentions(kindNoun, noun)
		noun = r.bySpan(i, noun, attr)
	}
	if noun == "bed" && r.topic == Move {
		noun = "panel" // a table to sit at
	}
	if attr == "wide" && in(noun, "bed", "frame", "press", "bag") && r.size(i) < narrowestBed && (r.countKind(kindWood)+r.countKind(kindFact) > 0 || r.mentions(kindNoun, "strip") || r.solving != "" && !r.is(i+2, kindNoun, noun)) {
		noun = "strip" // "press the hump down on a 6 wide oak board"
	}
	if noun == "panel" {
		noun = r.bySpan(i, noun, attr)
	}
	if noun == "panel" && attr == "wide" && small(r.size(i)) && r.has(unit.StripCount) && !r.has(unit.StripWidth) && !r.mentions(kindNoun, "panel") {
		noun = "strip" // "count 5, 60 mm width"
	}
	return noun
}

// knownField is what the measure at item i is where the part alone does not say it.
func (r *reader) knownField(i int, noun, attr string) (f unit.Field, known bool) {
	const leastSled = 0.1 // m
	if noun == "panel" && attr == "tall" && r.topic == Move && r.size(i) < lowPanel {
		return unit.PanelWidth, true // "drawer front, 10 tall"
	}
	wideStrip := noun == "strip" && attr == "wide" && r.size(i) > widestStrip
	if wideStrip && r.size(i) > 2*widestStrip && r.mentions(kindRole, "over") && !r.has(unit.PanelWidth) {
		return unit.PanelWidth, true // "will a 1/16 overfill buckle 1/4 strips 24 wide"
	}
	if wideStrip && (r.topic == Move || r.topic == "" && r.mentions(kindFact, "sawn=quarter", "sawn=flat")) && !r.mentions(kindNoun, "strip") && !r.has(unit.PanelWidth) {
		return unit.PanelWidth, true // "cherry 24 wide quartersawn"
	}
	if noun == "panel" && attr == "thick" && r.topic != Schedule && r.topic != Stack && !r.dayPlan() && !r.has(unit.StripThickness) {
		r.loose = r.habit.Follows // in a thread of panels it is theirs
		return unit.StripThickness, true
	}
	if noun == "sled" && attr == "tall" && r.mentions(kindNoun, "bar") && !r.has(unit.BarHeight) {
		return unit.BarHeight, true // "bar's on the sled now, 1 tall"
	}
	if noun == "sled" && attr == "wide" && r.size(i) < leastSled && r.mentions(kindNoun, "bar") && !r.has(unit.BarWidth) {
		return unit.BarWidth, true // "bar beside the 3/4 sled, 1 1/2 tall, 3/4 wide"
	}
	if attr == "wide" && r.word(i-1, "by", "x") && r.is(i-2, kindAttr, "tall") && i > 2 && r.boundAt(i-3) == unit.BarHeight && !r.has(unit.BarWidth) {
		return unit.BarWidth, true // "bar's on the bed, 1 3/4 tall by 1 wide"
	}
	if noun == "bar" && attr != "tall" && attr != "deep" && r.size(i) > widestStrip && r.strangerBefore(i) {
		return "", true // "1 in bar, for a cabinet 30 wide"
	}
	return "", false
}

// sumBefore: "8 strips totalling 16 wide", "that adds up to 16 wide".
func (r *reader) sumBefore(i int) bool {
	k := i - 1
	for r.word(k, "to", "of", "at", "up", "up to", "out", "about", "a", "is", "just") {
		k--
	}
	return r.word(k, "total", "totals", "totaling", "totalling", "totalled", "totaled", "overall", "altogether", "combined", "add", "adds", "adding", "added", "summing", "sums", "come", "comes", "coming", "add up to", "adds up to", "comes to", "come to")
}

// bracketNoun is the part that a measure in brackets goes with.
func (r *reader) bracketNoun(i int, attr string) string {
	from, _ := r.clause(i - 2)
	for k := i - 2; k >= from; k-- {
		if r.is(k, kindNoun) && attrFields[r.items[k].id][attr] != "" {
			return r.items[k].id
		}
	}
	return ""
}

// forStrips reports whether a panel's width is what strips in stock must fill.
func (r *reader) forStrips(i int) bool {
	if !r.has(unit.StockPiles) {
		return false
	}
	told := slices.IndexFunc(r.bound, func(b binding) bool { return b.fact.Field == unit.TargetWidth })
	return told < 0 && !r.has(unit.TargetWidth) || told >= 0 && r.fixedBetween(r.bound[told].from, i) // "need 30 wide. sorry, 28 wide"
}
