package grammar

import "presshand/engine/unit"

// mostUneven is by how much of it one strip may be thicker or thinner than the others;
// common practice, no source.
const mostUneven = 0.3

// exceptOne reads how thick strips are of which one is not like the others: "all .260
// except one that's .245".
func (r *reader) exceptOne() {
	if !r.says("except", "except for", "other than", "but", "apart from", "save") || !r.mentions(kindNoun, "strip") || r.mentions(kindAttr, "wide", "long") {
		return
	}
	for i := range r.items {
		one := i + 1
		if r.is(one, kindAttr, "thick") {
			one++
		}
		for r.isBreak(one) && one < len(r.items) {
			one++
		}
		if !r.free(i) || !(r.is(one, kindNot) && r.word(one, "except", "except for", "other than") || r.word(one, "but", "apart from", "save")) {
			continue
		}
		if one++; !r.free(one) || !r.items[one].amount.bare() || r.items[one].amount.float() != 1 {
			continue
		}
		other := one + 1
		for r.word(other, "that", "thats", "is", "its", "at", "of", "which", "whos", "measures", "comes", "in") || r.is(other, kindNoun, "strip") {
			other++
		}
		if !r.free(other) || !r.unevenBy(i, other) {
			continue
		}
		thick, thin := i, other
		if r.size(thick) < r.size(thin) {
			thick, thin = thin, thick
		}
		if r.bind(thick, unit.StripThickest) && r.bind(thin, unit.StripThinnest) {
			r.items[one].used = true
			if hasDigit(r.items[one].text) {
				r.unuse(r.items[one].text)
			}
		}
		return
	}
}

// unevenBy reports whether two numbers can be of strips that were to be equally thick.
func (r *reader) unevenBy(i, other int) bool {
	if !r.length(i) || !r.length(other) || r.items[i].amount.value == nil || r.items[other].amount.value == nil {
		return false
	}
	a, b := r.size(i), r.size(other)
	return a > 0 && b > 0 && a != b && max(a, b) < 0.1 && max(a, b)-min(a, b) < mostUneven*max(a, b)
}
