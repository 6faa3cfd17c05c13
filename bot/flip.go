package bot

import (
	"regexp"

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
