package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// overTurned are ways to say that a board lies the other way up.
var overTurned = regexp.MustCompile(`(?i)\b(flip|flipped|turn|turned|roll|rolled)\b.*\bover\b|\b(?:flip|flipped) (?:it|them|that|this|(?:the|my|each) (?:boards?|planks?|pieces?|slabs?|panels?))\b|\bthe other (?:side|face) up\b|\bother way up\b|\bupside down\b`)

// turnedOver reads "what if I flip it over" of a cupped board: what was up is down.
func (t *turn) turnedOver(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || p.Command != nil || stated(p.Facts, unit.CupUp) || !overTurned.MatchString(t.m.Text) {
		return p
	}
	x, ok := t.before.Said.find(unit.CupUp)
	if !ok {
		if t.before.Said.has(unit.Cup) || t.before.Said.has(unit.Bow) {
			t.lacks = append(t.lacks, unit.CupUp)
		}
		return p
	}
	side := unit.Word("hump")
	if x.Value == side {
		side = "hollow"
	}
	p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: unit.CupUp, Value: side, Text: "over"})
	return p
}

// onWhat are ways to name what is under the strips that are no word of it elsewhere:
// "and bare?", "with plastic?".
var onWhat = regexp.MustCompile(`(?i)^\W*(?:ok|okay|and|or|what about|how about|now|so|what if it'?s|if it'?s|make it|with|on|just|\W)*(bare|naked|dry|raw|unwaxed|wax|plastic|film|poly|polythene)(?: then| instead)?\W*$`)

// bedded reads "and bare?" where the thread tells what the strips lie on.
func (t *turn) bedded(p grammar.Phrase) grammar.Phrase {
	said := onWhat.FindStringSubmatch(t.m.Text)
	if said == nil || p.NewStart || p.Command != nil || len(p.Facts)+len(p.Drops) > 0 || slices.ContainsFunc(p.Asks, func(a grammar.Ask) bool { return a.About != grammar.Words }) || !t.before.Said.has(unit.SurfaceKind) {
		return p
	}
	kind := unit.Word("film")
	switch strings.ToLower(said[1]) {
	case "bare", "naked", "dry", "raw", "unwaxed":
		kind = "bare"
	case "wax":
		kind = "waxed"
	}
	p.Facts, p.Asks, p.Terms = []grammar.Fact{{Field: unit.SurfaceKind, Value: kind, Text: said[1]}}, nil, nil
	p.Unused = slices.DeleteFunc(slices.Clone(p.Unused), func(w string) bool { return strings.EqualFold(w, said[1]) })
	return p
}

// onFoot are ways to say where a bar stands that name no bar: "what if it stands on
// the sled", "and on the bed?".
var (
	onFoot   = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|and|or|so|now|but|then|what|how|about|if|say|with|make|put|move|set|have|let'?s|suppose|i|we|you|it|it'?s|that|thing|is|was|were|stands?|sits?|stood|sat|rests?|standing|sitting|resting|back|up|down|straight|right)\W+)*on (?:top of )?(?:the|my|our|that) (sled|bed|platen)(?: instead| then| itself| now| directly)*\W*$`)
	standing = regexp.MustCompile(`(?i)\b(?:stand|sit|stood|sat|rest)`)
)

// stoodOn reads "what if it stands on the sled" where the thread has a bar.
func (t *turn) stoodOn(p grammar.Phrase) grammar.Phrase {
	said := onFoot.FindStringSubmatch(t.m.Text)
	if said == nil || p.NewStart || p.Command != nil || len(p.Facts)+len(p.Drops)+len(p.Amends)+len(p.Asks) > 0 {
		return p
	}
	if !t.before.Said.has(unit.BarFoot) && !(t.before.Said.has(unit.BarHeight) && standing.MatchString(t.m.Text)) {
		return p
	}
	foot := unit.Word("bed")
	if strings.EqualFold(said[1], "sled") {
		foot = "sled"
	}
	p.Facts = []grammar.Fact{{Field: unit.BarFoot, Value: foot, Text: said[1]}}
	return p
}

// theOne goes back to one of what there were two.
var theOne = regexp.MustCompile(`(?i)^\W*(?:no |ok |okay |nah |actually |back to |and |with |make it |\W)*(?:just|only) (?:the )?one(?: side| bar)?(?: then| again| now)?\W*$`)

// single reads "just the one" of bars on both sides.
func (t *turn) single(p grammar.Phrase) grammar.Phrase {
	n, _ := t.before.Said.facts().Number(unit.BarCount)
	if n != 2 || p.Command != nil || len(p.Facts)+len(p.Changes)+len(p.Drops) > 0 || !theOne.MatchString(t.m.Text) {
		return p
	}
	p.Facts, p.Amends, p.Unused = []grammar.Fact{{Field: unit.BarCount, Value: unit.Number(1), Text: "one"}}, nil, nil
	return p
}

// sawnAgain are ways to say how the boards of a thread are sawn that are no word of it
// elsewhere: "back to flat", "make it quarter".
var sawnAgain = regexp.MustCompile(`(?i)\b(?:back to|make it|make that|go with|say|if it'?s|if it is|use) (flat|plain|quarter|qs)\b`)

// resawn reads "back to flat, 28 wide" where the thread tells how the boards are sawn.
func (t *turn) resawn(p grammar.Phrase) grammar.Phrase {
	said := sawnAgain.FindStringSubmatch(t.m.Text)
	if said == nil || p.NewStart || p.Command != nil || stated(p.Facts, unit.Sawn) || !t.before.Said.has(unit.Sawn) || t.before.Said.has(unit.Cup) {
		return p
	}
	how := unit.Word("flat")
	if strings.HasPrefix(strings.ToLower(said[1]), "q") {
		how = "quarter"
	}
	p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: unit.Sawn, Value: how, Text: said[1]})
	p.Asks = slices.DeleteFunc(slices.Clone(p.Asks), func(a grammar.Ask) bool { return a.About == grammar.Flatten })
	p.Unused = slices.DeleteFunc(slices.Clone(p.Unused), func(w string) bool { return strings.EqualFold(w, said[1]) })
	return p
}
