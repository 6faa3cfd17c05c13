package grammar

import "strings"

// skipDot steps over the point of an abbreviated unit: "2 in. wide".
func (t *tokenizer) skipDot(s scrap) {
	switch s.norm {
	case "in", "ft", "lb", "lbs", "oz", "min", "mins", "hr", "hrs", "sec":
	default:
		return
	}
	if t.at+1 >= len(t.scraps) || t.scraps[t.at].norm != "." || !t.scraps[t.at].glued {
		return
	}
	if t.corrects() {
		return // "sorry, 1 in. strips 5"
	}
	if first := t.text[t.scraps[t.at+1].start]; first >= 'A' && first <= 'Z' {
		return // a new sentence
	}
	m, n := trade.longest(t.scraps, t.at+1)
	if m.id == "pump" {
		return // "we're at 7000 ft. pump does 3 cfm"
	}
	if n > 0 && m.kind == kindNoun && t.tellsOf(t.at+1+n) {
		return // "bar is 1 in. bar is 1 1/2 in"
	}
	if n > 0 && (m.kind == kindAttr || m.kind == kindNoun || m.kind == kindRole && m.id == "length") {
		t.at++
	}
}

// tellsOf reports whether a sentence about the thing before the scrap at k goes on there: "bar
// is …", "bar's 1 3/4".
func (t *tokenizer) tellsOf(k int) bool {
	if k >= len(t.scraps) {
		return false
	}
	thing := t.text[t.scraps[k-1].start:t.scraps[k-1].end]
	if strings.HasSuffix(thing, "'s") || strings.HasSuffix(thing, "’s") {
		return t.scraps[k].shape == shapeInt || t.scraps[k].shape == shapeDecimal || t.scraps[k].shape == shapeFraction
	}
	return in(t.scraps[k].norm, "is", "was", "are", "were", "has", "holds", "reads", "says", "shows", "stands", "=", ":")
}
