package bot

import (
	"regexp"
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

var (
	// tankWord names what adds to the room of a press.
	tankWord = regexp.MustCompile(`(?i)\b(tanks?|reservoirs?|receivers?|canisters?|cylinders?)\b`)
	// pumpOnly is how far a pump gets and no further: "the pump only gets to 0.88".
	pumpOnly = regexp.MustCompile(`(?i)\bpump(?:'s| is)?(?: will| can| could| would)?(?: only| just)(?: ever)? (?:gets?|goes|go|does|do|manages?|makes?|reach(?:es)?|pulls?|hits?|good for|comes?|pulling|getting|doing)(?: up)?(?: to| down to)? (-?(?:0?[.,]\d+|[1-9]\d+(?:[.,]\d+)?)\b)(\s?(?:"|in\b|inch(?:es)?\b)(?:\s?hg\b)?)?`)
	// fallsTo asks when a press that leaks is down to a reading.
	fallsTo = regexp.MustCompile(`(?i)\b(?:how long|when|how soon|how many min\w*)\b.*\b(?:hits?|reach(?:es)?|gets? to|at|on|down to|falls?|drops?|sinks?|below|under|lost|gone|left)\b`)
	// leftAlone says that nothing pumps meanwhile.
	leftAlone = regexp.MustCompile(`(?i)\bpump(?:'s| is)? (?:off|stopped|dead)|pump (?:stops|dies|quits|shut)|\b(?:off|without|no|kill|stop|shut) (?:the )?pump\b|\bvalve|\b(?:falls?|drops?|sinks?)\b|\b(?:it|gauge|vacuum)(?:'s| is|s)? down to\b`)
)

// besideTank leaves unused the size of a tank that stands beside a frame or a bag: it
// adds to their room, and no field has both.
func (t *turn) besideTank(p grammar.Phrase) grammar.Phrase {
	room := t.before.Said.has(unit.BedWidth, unit.BedLength, unit.BagWidth, unit.BagLength) && !p.NewStart
	for _, f := range p.Facts {
		room = room || f.Field == unit.BedWidth || f.Field == unit.BedLength || f.Field == unit.BagWidth || f.Field == unit.BagLength
	}
	if !room || !tankWord.MatchString(t.m.Text) {
		return p
	}
	return unusing(p, unit.PressVolume)
}

// endOfHold leaves unused the reading at which a leak is to end: "how long until it is
// down to 0.6 bar with the pump off" starts at the vacuum of its thread.
func (t *turn) endOfHold(p grammar.Phrase) grammar.Phrase {
	if !t.before.Said.has(unit.Leak) || !t.before.Said.has(unit.Vacuum) || p.NewStart || p.Command != nil || stated(p.Facts, unit.Leak) || !fallsTo.MatchString(t.m.Text) {
		return p
	}
	if t.before.Said.has(unit.PumpSpeed) && !leftAlone.MatchString(t.m.Text) {
		return p
	}
	for _, a := range p.Amends { // "when does it drop to 0.5"
		p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], a.Text)
	}
	p.Amends = nil
	return unusing(p, unit.Vacuum)
}

// unusing returns p with what it states of a field left unused.
func unusing(p grammar.Phrase, f unit.Field) grammar.Phrase {
	if !stated(p.Facts, f) {
		return p
	}
	p.Facts, p.Unused = slices.Clone(p.Facts), slices.Clone(p.Unused)
	for _, x := range p.Facts {
		if x.Field == f {
			p.Unused = append(p.Unused, x.Text)
		}
	}
	p.Facts = slices.DeleteFunc(p.Facts, func(x grammar.Fact) bool { return x.Field == f })
	return p
}
