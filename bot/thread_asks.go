package bot

import (
	"regexp"
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

// What a later question of a thread is of, where it says so by a "them" or a "that one".

var (
	// thatJoint names a joint that was spoken of.
	thatJoint = regexp.MustCompile(`(?i)\b(?:on|at|in) (?:that|the (?:worst|last|weakest|bad)) (?:one|joint)\b`)
	// topsOut tells how far a pump gets.
	topsOut = regexp.MustCompile(`(?i)\b(?:tops|topped|maxes|maxed|peaks|peaked) out\b`)
)

// ofThread keeps a question backwards with the thread's own: "how wide could I leave them"
// of boards to be pressed flat, "70 kPa on that one" of joints, and the vacuum at which a pump
// tops out from being the one that is wanted.
func (t *turn) ofThread(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || p.Command != nil {
		return p
	}
	switch t.before.Asks[0].About {
	case grammar.Flatten:
		return t.flattensAt(p)
	case grammar.Side, grammar.Load:
		return t.onThatJoint(p)
	case grammar.Pump:
		return t.toppedOut(p)
	}
	return p
}

func (t *turn) flattensAt(p grammar.Phrase) grammar.Phrase {
	sizes := map[unit.Field]unit.Field{unit.PanelWidth: unit.StripWidth, unit.StripWidth: unit.StripWidth, unit.StripThickness: unit.StripThickness}
	if len(p.Asks) != 1 || p.Asks[0].About != grammar.Side || len(p.Asks[0].Goal)+len(p.Facts) > 0 {
		return p
	}
	f, ok := sizes[p.Asks[0].Solve]
	if ok && f == unit.StripWidth && !t.before.Said.has(f) && t.before.Said.has(unit.PanelWidth) {
		f = unit.PanelWidth
	}
	if ok {
		p.Asks = slices.Clone(p.Asks)
		p.Asks[0].About, p.Asks[0].Solve = grammar.Flatten, f
	}
	return p
}

func (t *turn) onThatJoint(p grammar.Phrase) grammar.Phrase {
	if len(p.Asks) != 1 || p.Asks[0].About != grammar.Face || !thatJoint.MatchString(t.m.Text) {
		return p
	}
	fact, ok := p.Asks[0].Goal[unit.FacePressure]
	if !ok {
		return p
	}
	fact.Field = unit.SideFarJoint
	p.Asks = slices.Clone(p.Asks)
	p.Asks[0].About, p.Asks[0].Goal = grammar.Side, map[unit.Field]grammar.Fact{unit.SideFarJoint: fact}
	return p
}

func (t *turn) toppedOut(p grammar.Phrase) grammar.Phrase {
	if !topsOut.MatchString(t.m.Text) || !t.before.Said.has(unit.Vacuum) {
		return p
	}
	kept := make([]grammar.Fact, 0, len(p.Facts))
	for _, f := range p.Facts {
		if f.Field != unit.Vacuum {
			kept = append(kept, f)
			continue
		}
		p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], f.Text)
	}
	p.Facts = kept
	return p
}
