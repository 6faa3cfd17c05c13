package picture

import (
	"fmt"
	"strings"
)

// alt says in words what the section shows.
func (s *section) alt() string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	u := s.Units
	say("Cross-section of the load, heights to scale.")
	if w := s.verdict().word(); w != "" {
		say(" Verdict: %s.", w)
	}
	if s.Caption != "" {
		say(" %s", s.Caption)
	}
	say(" From the bed up: %s.", stackWords(s.Layers, u.length))
	if len(s.Widths) > 0 {
		say(" %s.", s.widthText())
	}
	if bar := s.Bar; bar != nil {
		sides := "A side bar"
		if bar.Both {
			sides = "On both sides a bar"
		}
		say(" %s %s high and %s wide, standing on the %s.", sides, u.length(bar.Height), u.length(bar.Width), s.barFoot())
	}
	if s.leftFence() {
		say(" Fences on both sides.")
	} else if s.fenced() && !s.bothBars() {
		say(" A fence on the far side.")
	}
	if s.Bar == nil && s.Side && !s.leftFence() {
		say(" No bar: the film pushes on the strips' own edge.")
	}
	if s.Wedge != nil {
		say(" A wedge between the strips and the %s.", s.opposite())
	}
	for _, k := range s.keyLines() {
		say(" %s.", strings.TrimSuffix(k.text, "."))
	}
	return b.String()
}

// barFoot is what the bar stands on.
func (s *section) barFoot() string {
	for _, b := range s.slabs {
		if s.foot > 0 && b.to > s.foot-hair && b.to < s.foot+hair {
			return string(b.part)
		}
	}
	return "bed"
}
