package grammar

import (
	"sort"
	"strings"

	"presshand/engine/unit"
)

// mixedThick reads "5/16 and 3/8 strips mixed under a 3/8 mat": how thick the thinnest and the
// thickest strips are.
func (r *reader) mixedThick() {
	const thickestMixed, mostApart = 0.03, 1.6 // m; and how many times the thinner one
	if !r.mentions(kindNoun, "strip") || r.mentions(kindAttr, "wide") || r.mentions(kindNoun, "sled") && r.mentions(kindNoun, "caul") || !r.wordIn("mixed", "mix", "mixture", "thin", "thin ones", "thinner", "thinner ones", "thinnest") {
		return
	}
	for i := range r.items {
		k := i + 2
		if !r.free(i) || !r.free(k) || !r.word(i+1, "and", "or") || !r.length(i) || !r.length(k) || r.items[k].amount.link != linkNone {
			continue
		}
		of := i - 1
		if r.word(of, "of", "are", "at", "both") {
			of--
		}
		a, b := r.size(i), r.size(k)
		if thin, thick := min(a, b), max(a, b); thick > thickestMixed || thick > mostApart*thin || thin == thick || !r.is(of, kindNoun, "strip") && !r.is(r.next(k), kindNoun, "strip") {
			continue
		}
		if a > b {
			i, k = k, i
		}
		r.bind(i, unit.StripThinnest)
		r.bind(k, unit.StripThickest)
		return
	}
}

// someAndSome reads the least and the most of pieces that differ: thicknesses,
// or moisture where they are per cents.
func (r *reader) someAndSome() {
	var thick, wet []int
	if r.differWords() < 2 {
		return
	}
	for i := range r.items {
		if r.countsSome(i) {
			r.items[i].amount.dead = true // counts not all of them
			continue
		}
		if !r.free(i) || !r.differs(i) && !r.word(i-1, "driest", "wettest") {
			continue
		}
		if r.items[i].amount.bare() && r.items[i].amount.form != formWords && (r.mentions(kindAir, "mc") || r.percentSaid() && r.items[i].amount.form == formInt) {
			u := unit.PercentOf
			r.items[i].amount.unit = &u
		}
		if n, ok := r.spokenNumber(i + 2); ok && n == 1 && r.word(i+1, "on", "in", "for") && r.is(i+3, kindNoun, "strip") {
			r.items[i+2].used = true // "on one board"
		}
		if r.items[i].amount.is(unit.Proportion) {
			wet = append(wet, i)
		} else if r.length(i) && r.size(i) < 0.1 && (r.items[i].amount.form != formWords || r.items[i].amount.value != nil && !r.items[i].amount.value.IsInt()) {
			thick = append(thick, i)
		}
	}
	bindEnds := func(at []int, low, high unit.Field) {
		if len(at) != 2 {
			return
		}
		sort.Slice(at, func(a, b int) bool { return r.items[at[a]].amount.float() < r.items[at[b]].amount.float() })
		r.bind(at[0], low)
		r.bind(at[1], high)
	}
	most := thickestStock
	if r.mentions(kindRole, "target", "trim") {
		most = thinStock
	}
	if len(thick) == 2 && max(r.size(thick[0]), r.size(thick[1])) > most {
		for _, k := range thick {
			r.items[k].amount.dead = r.halvesSaid() > 1 // "half are 2 in and half are 2 1/2": so wide
		}
		thick = nil // widths to choose from
	}
	bindEnds(thick, unit.StripThinnest, unit.StripThickest)
	bindEnds(wet, unit.WoodMoistureLow, unit.WoodMoistureHigh)
}

// differWords counts the words that set pieces apart: one alone ("some ply") says
// nothing.
func (r *reader) differWords() int {
	n := 0
	damp, others := r.says("driest", "wettest"), r.wordIn("others", "other", "rest")
	for i := range r.items {
		am := r.items[i].amount
		if am == nil {
			if r.setsApart(i) || damp && r.word(i, "driest", "wettest") || r.items[i].kind == kindNone && strings.HasPrefix(r.items[i].word, "rest") {
				n++
			}
			continue
		}
		if others && r.countsSome(i) {
			n++
		}
		if am.form == formWords && am.equals(one) && r.is(i+1, kindNoun, "strip") && r.wordIn("other", "next", "another") {
			n += 2 // "one board … the other"
		}
	}
	return n
}

// setsApart reports whether item i is a word for a part of the pieces: "some",
// "the rest", "half my strips", "most of them".
func (r *reader) setsApart(i int) bool {
	if r.items[i].amount != nil {
		return r.countsSome(i)
	}
	switch r.items[i].word {
	case "some", "somes", "others", "other", "rest", "thin", "fat", "skinny":
		return true
	case "half":
		return r.word(i+1, "the", "of", "are", "is", "were", "my", "our", "these", "those", "em") || r.is(i+1, kindNoun, "strip")
	case "most", "couple", "few", "handful":
		return r.word(i+1, "are", "is", "were", "of")
	}
	return false
}

// countsSome: "two of them are 3/4 and the others 13/16".
func (r *reader) countsSome(i int) bool {
	if !r.word(i+1, "of") || !r.word(i+2, "them", "em", "those", "these") || !r.wordIn("others", "other", "rest") {
		return false
	}
	_, whole := r.wholeAt(i)
	return whole
}

// differs: "some are .74", "6% on some boards and 9% on others".
func (r *reader) differs(i int) bool {
	if n, ok := r.spokenNumber(i + 2); ok && n == 1 && r.word(i+1, "on", "in", "for") && r.is(i+3, kindNoun, "strip") && r.wordIn("other", "next", "another") {
		return true // "5% on one board and 9% on the next one"
	}
	for _, step := range []int{-1, 1} {
		reach := 7
		if step > 0 {
			reach = 3
		}
		for k, j := 0, i+step; k < reach && j >= 0 && j < len(r.items) && r.items[j].amount == nil && !r.isBreak(j); k, j = k+1, j+step {
			if r.is(j, kindNoun, "strip") && j > 0 && (r.word(j-1, "other") || r.items[j-1].amount != nil && r.items[j-1].amount.form == formWords && r.wordIn("other", "next", "another")) || r.word(j, "next", "second") && (r.word(j+1, "one") || r.is(j+1, kindNoun, "strip")) {
				return true
			}
			if r.setsApart(j) && (step < 0 || !r.word(j, "half")) {
				return true
			}
		}
	}
	return false
}
