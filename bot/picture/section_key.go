package picture

import (
	"fmt"
	"strings"

	"presshand/engine/unit"
)

// keyLines explain the signs and state the figures with their ranges. The alt
// text says the same lines.
func (s *section) keyLines() []keyLine {
	ks := append(s.filmLines(), s.sideLines()...)
	ks = append(ks, s.preloadLines()...)
	ks = append(ks, s.barLines()...)
	ks = append(ks, s.stackLines()...)
	if text := s.assumedText(); text != "" {
		ks = append(ks, keyLine{text: text})
	}
	for i, k := range ks { // bold where the whole of it stays on one line
		ks[i].strong = k.strong && textWidth(k.text, textSize, true) <= Width-2*margin-26
	}
	return ks
}

func (s *section) filmLines() []keyLine {
	film := "Film"
	if s.Bag {
		film = "Bag"
	}
	k := keyLine{sign: filmSign, text: film + ", pressed on all that it reaches"}
	if s.Face.Mid > 0 {
		k.text, k.strong = film+" presses with "+span(s.Face, s.Units.pressure), true
	}
	ks := []keyLine{k}
	for i, b := range s.slabs {
		if b.part == Film && i < len(s.slabs)-1 {
			ks = append(ks, keyLine{sign: sheetSign, text: "Film between the layers"})
			break
		}
	}
	if s.Tent > 0 {
		ks = append(ks, keyLine{sign: tentSign, shows: "tent", facts: []fact{measure("mm", s.Tent)},
			text: "The film bridges corners, up to " + s.Units.length(s.Tent) + " high: there it does not push"})
	}
	return ks
}

// sideLines state what the joints get, also where that is nothing.
func (s *section) sideLines() []keyLine {
	var ks []keyLine
	line := func(name string, p unit.Range[unit.Pressure], shows string) {
		sign := jointSign
		if p.Mid <= 0 {
			sign = noJointSign
		}
		ks = append(ks, keyLine{sign: sign, strong: true, text: "Side, " + name + ": " + span(p, s.Units.pressure),
			shows: shows, facts: []fact{kilopascals("kpa", p.Mid)}})
	}
	near, far := s.nearAndFar[0], s.nearAndFar[1]
	switch {
	case !s.Side:
		return nil
	case len(s.Widths) == 1:
		line("on the edges", s.First, "side first")
	case len(s.Widths) == 0:
		line("first joint", s.First, "side first")
		line("far joint", s.Far, "side far")
	default:
		line(jointWords(near), s.First, "side first")
		if len(far) > 0 {
			line(jointWords(far), s.Far, "side far")
		}
	}
	if s.Need > 0 {
		ks = append(ks, keyLine{text: "The glue needs " + s.Units.pressure(s.Need) + " at each joint", shows: "need", facts: []fact{kilopascals("kpa", s.Need)}})
	}
	return ks
}

func jointWords(joints []int) string {
	if len(joints) == 1 {
		return "joint " + jointNumbers(joints, "")
	}
	return "joints " + jointNumbers(joints, " and ")
}

func jointNumbers(joints []int, between string) string {
	var ns []string
	for _, j := range joints {
		ns = append(ns, fmt.Sprint(j))
	}
	return strings.Join(ns, between)
}

// preloadLines tell what wedge and fences do before and under the vacuum.
func (s *section) preloadLines() []keyLine {
	var ks []keyLine
	if w := s.Wedge; w != nil {
		if s.Preload.Mid > 0 && s.Spring == nil {
			ks = append(ks, keyLine{sign: fenceSign, strong: true, text: "Wedge, every joint: " + span(s.Preload, s.Units.pressure),
				shows: "preload", facts: []fact{kilopascals("kpa", s.Preload.Mid)}})
		}
		text := "Wedge " + w.Said + "; the " + s.opposite() + " pushes back"
		if w.Said == "" {
			text = "The " + s.opposite() + " pushes back on the wedge"
		}
		ks = append(ks, keyLine{sign: fenceSign, text: text})
	}
	sp := s.Spring
	if sp == nil {
		return ks
	}
	if s.Preload.Mid > 0 {
		ks = append(ks, keyLine{sign: fenceSign, strong: true, text: "Fences press every joint: " + span(s.Preload, s.Units.pressure),
			shows: "preload", facts: []fact{kilopascals("kpa", s.Preload.Mid)}})
	}
	text := "Strips " + s.Units.length(sp.Over) + " wider than the opening"
	if sp.Rise.Mid > 0 {
		text += ": the middle rises " + span(sp.Rise, s.Units.length) + " before the vacuum; hold it down"
	}
	ks = append(ks, keyLine{sign: riseSign, text: text})
	if sp.Snap.Mid > 0 {
		ks = append(ks, keyLine{sign: riseSign, text: "It lies down flat under " + span(sp.Snap, s.Units.pressure), shows: "snap", facts: []fact{kilopascals("kpa", sp.Snap.Mid)}})
	}
	return ks
}

// opposite is what a wedge is driven against.
func (s *section) opposite() string {
	if s.bothBars() {
		return "bar"
	}
	return "fence"
}

// barLines tell how much of the bar pushes, and why not more.
func (s *section) barLines() []keyLine {
	var ks []keyLine
	say := func(sign func(*Drawing, box), format string, args ...any) {
		ks = append(ks, keyLine{sign: sign, text: fmt.Sprintf(format, args...)})
	}
	b, u := s.Bar, s.Units
	if b == nil {
		return nil
	}
	covered := span(b.Covered, u.length)
	_, onEdge := s.pushing()
	switch idle := s.idle(); {
	case s.tooLow() && s.foot > 0 && s.foot >= s.levels[s.work].under+s.levels[s.work].strips-hair:
		say(hatchSign, "Hatched: the bar stands above the strips and does nothing")
	case s.tooLow() && b.Covered.Mid <= 0:
		say(hatchSign, "Hatched: the bar ends under the strips and does nothing")
	case s.tooLow():
		say(hatchSign, "Hatched: the bar ends under the strips and does nothing; film pushes on the strips' own edge, %s", covered)
	case idle > 0:
		say(hatchSign, "Hatched: %s of the bar does nothing, with film on both its faces; %s pushes", u.length(idle), covered)
	case onEdge.length() > 0:
		say(pushSign, "%s pushes: the bar, and film on the strips' own edge above it, %s", covered, u.length(onEdge.length()))
	case b.Covered.Mid > 0:
		say(pushSign, "%s of the bar pushes", covered)
	}
	if b.Tips > 0 {
		text := "The bar may tip: " + u.length(b.Tips) + " of it counts then"
		if b.Wider > 0 {
			text += "; " + u.length(b.Wider) + " wide it would not"
		}
		say(careSign, "%s", text)
	}
	if s.TwoFaces {
		say(nil, "Side figures are for one face, with its half of the bar's push; the bar presses both")
	}
	if c, ok := s.cover(); ok {
		h := u.length(c.to - s.foot)
		if s.CoverSaid {
			say(coverSign, "Dashed: what keeps the film off the bar up to %s; nobody said what it is", h)
		} else {
			say(coverSign, "Dashed: lay a caul or sled there, up to %s on the bar (assumed)", h)
		}
	}
	switch {
	case s.several() && s.Side:
		say(nil, "The figures take the bar on level %d", s.work+1)
	case s.several():
		say(nil, "The bar is drawn on level %d alone", s.work+1)
	}
	return ks
}

// stackLines tell how the work stands to its fences and to the lid.
func (s *section) stackLines() []keyLine {
	ks := s.proudLines()
	for i, b := range s.slabs {
		if b.squashed > 0 {
			where := ""
			if s.several() {
				where = fmt.Sprintf(" of level %d", s.levelOf(i))
			}
			ks = append(ks, keyLine{sign: matSign, text: fmt.Sprintf("Mat%s: %s, under the vacuum about %s", where, s.Units.length(b.to-b.from), s.Units.length(b.squashed-b.from))})
		}
	}
	if s.Thinnest > 0 {
		ks = append(ks, keyLine{text: "Dashed in the strips: the thinnest, " + s.Units.length(s.Thinnest)})
	}
	if list := s.widthList(); list != "" {
		from := "From the left: "
		if s.Bar != nil {
			from = "From the bar: "
		}
		ks = append(ks, keyLine{text: from + list})
	}
	return append(ks, s.heightLine())
}

func (s *section) levelOf(slab int) int { return s.slabs[slab].level + 1 }

// proudLines warn where the work stands too little above a fence; levels alike
// share a line.
func (s *section) proudLines() []keyLine {
	var ks []keyLine
	first, last := 0, 0
	text, v := "", Unjudged
	flush := func() {
		if text == "" {
			return
		}
		where := ""
		switch {
		case s.several() && last > first:
			where = fmt.Sprintf("Levels %d–%d: ", first, last)
		case s.several():
			where = fmt.Sprintf("Level %d: ", first)
		}
		ks = append(ks, keyLine{sign: verdictSign(v), text: sentence(where + text), strong: v != Good, colour: verdictInk(v), shows: "proud " + or(v.word(), "figure")})
	}
	for i, l := range s.levels {
		if l.proud == nil || s.bothBars() {
			continue
		}
		now, verdict := s.proudText(*l.proud), l.proud.verdict()
		if now == text && verdict == v && last == i {
			last = i + 1
			continue
		}
		flush()
		text, v, first, last = now, verdict, i+1, i+1
	}
	flush()
	return ks
}

func (s *section) proudText(p Proud) string {
	by := span(p.By, s.Units.length)
	switch p.verdict() {
	case Stop:
		if p.By.Mid < -hair {
			return "the fence stands " + s.Units.length(-p.By.Mid) + " higher than the work and carries the load"
		}
		return "not proud of the fence, which carries the load"
	case Care:
		return "only " + by + " proud of the fence, too little"
	}
	return by + " proud of the fence"
}

func (s *section) heightLine() keyLine {
	h := s.stackHeight()
	k := keyLine{sign: heightSign, shows: "stack height", facts: []fact{measure("mm", h)}, text: "Stack " + s.Units.length(h) + " high"}
	unnamed := s.Height == 0 && s.SledAssumed
	if sled := s.levels[0].base; unnamed && s.Opening <= 0 { // only what was said
		k.shows, k.facts, k.text = "height over the sled", []fact{measure("mm", h-sled)}, s.Units.length(h-sled)+" high over the sled"
	}
	if s.Bar != nil && s.barTop() > s.height+hair {
		k.text += ", to the top of the bar"
	}
	if s.Opening <= 0 {
		return k
	}
	if unnamed {
		k.text += ", with the assumed sled"
	}
	left := s.Opening - h
	k.text += "; opening " + s.Units.length(s.Opening)
	switch v := s.clearance(); {
	case left < -hair:
		k.text += ": too high by " + s.Units.length(-left)
	case v == Care:
		k.text += ": only " + s.Units.length(left) + " to spare"
	default:
		k.text += ": " + s.Units.length(left) + " to spare"
	}
	if v := s.clearance(); v == Care || v == Stop {
		k.sign, k.colour, k.strong = verdictSign(v), redInk, true
	}
	return k
}

// assumedText lists what nobody said and was drawn all the same.
func (s *section) assumedText() string {
	var each []string
	if s.SledAssumed {
		for _, b := range s.slabs {
			if b.part == Sled {
				each = append(each, "sled "+s.Units.length(b.to-b.from))
				break
			}
		}
	}
	for _, l := range s.levels {
		if l.guessed && l.fence > 0 {
			each = append(each, map[bool]string{false: "a fence on the far side", true: "fences on both sides"}[s.leftFence()]+", how high is not said")
		}
	}
	if s.Bar != nil && s.WidthAssumed {
		each = append(each, "bar "+s.Units.length(s.Bar.Width)+" wide")
	}
	if s.Wedge != nil && s.Wedge.Gap == 0 {
		each = append(each, "the wedge's width")
	}
	if s.Ripped {
		each = append(each, "which strip is narrower")
	}
	if len(each) == 0 {
		return ""
	}
	return "* Assumed: " + strings.Join(each, "; ")
}

// sentence begins s with a capital.
func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
