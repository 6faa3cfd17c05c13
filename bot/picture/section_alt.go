package picture

import (
	"fmt"
	"strings"
)

// alt says in words what the section shows.
func (c CrossSection) alt() string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	u := c.Units
	say("Cross-section of the load, heights to scale. From the bed up: %s.", stackWords(c.Layers, u.length))
	if n := len(c.Widths); n > 0 {
		s := section{CrossSection: c}
		say(" %s.", s.widthText())
	}
	if bar := c.Bar; bar != nil {
		sides := "One side"
		if bar.Both {
			sides = "On both sides a"
		}
		say(" %s bar %s high and %s wide.", sides, u.length(bar.Height), u.length(bar.Width))
		if bar.Covered.Mid > 0 {
			say(" The film is kept off its inner face up to %s.", u.length(bar.Covered.Mid))
		}
		if s := (&section{CrossSection: c}); s.idle() > 0 {
			say(" %s", c.idleText())
		}
	}
	if c.Wedge != nil {
		say(" A wedge between strips and fence.")
	}
	for i, p := range c.Proud {
		say(" Level %d stands %s proud of its fence%s.", i+1, span(p.By, u.length), map[bool]string{true: ", too little"}[p.tooLittle()])
	}
	if c.Face.Mid > 0 {
		say(" Face pressure %s.", span(c.Face, u.pressure))
	}
	s := section{CrossSection: c}
	for _, k := range s.sideLines() {
		say(" %s.", k.text)
	}
	if c.Opening > 0 {
		say(" The press opens %s.", u.length(c.Opening))
	}
	return b.String()
}
