package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// backOn puts a part back that was taken away: "put the mat back", "bar back on".
var backOn = regexp.MustCompile(`(?i)\b(mat|pad|foam|bar|batten|caul|wedge|sled)s? (?:goes |went |is |was |comes )?(?:right )?back\b|\bback (?:on |in )?(?:with |goes |go )?(?:the|that|my|our) (mat|pad|foam|bar|batten|caul|wedge|sled)\b`)

// leftOff keeps a part off, or only asks about it.
var leftOff = regexp.MustCompile(`(?i)\b(not|don'?t|don’t|never|without|isn'?t|leave)\b|^\W*(is|was|are|should|do|does|did|will|can|could|when|why|where|who)\b`)

// partCalled are parts by other names.
var partCalled = map[string]grammar.Part{"pad": "mat", "foam": "mat", "batten": "bar"}

// putBack reads "put the mat back" of a part that the thread had before, with what was
// said of it, and a mat that a stack did not have.
func (t *turn) putBack(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || p.Command != nil {
		return p
	}
	if said := backOn.FindStringSubmatch(t.m.Text); said != nil && !leftOff.MatchString(t.m.Text) {
		name := strings.ToLower(said[1] + said[2])
		part, other := partCalled[name]
		if !other {
			part = grammar.Part(name)
		}
		p = t.measuredBack(p, part)
		p.Facts = t.again(p.Facts, part)
	}
	p = t.matInStack(p)
	if stated(p.Facts, unit.StackLayers) {
		t.before.Said = t.before.Said.without(unit.MatDenied)
	}
	return p
}

// bareOf is what a bare measure of a part is.
var bareOf = map[grammar.Part]unit.Field{"bar": unit.BarHeight, "mat": unit.MatThickness, "caul": unit.CaulThickness, "sled": unit.SledThickness}

// measuredBack gives the part that comes back the number beside it: "bar back on but 2 in".
func (t *turn) measuredBack(p grammar.Phrase, part grammar.Part) grammar.Phrase {
	f, known := bareOf[part]
	if !known || len(p.Amends) != 1 || stated(p.Facts, f) || t.before.Said.has(f) {
		return p
	}
	if fact, ok := t.held(f, p.Amends[0]); ok {
		p.Facts, p.Amends = append(p.Facts[:len(p.Facts):len(p.Facts)], fact), nil
	}
	return p
}

// again adds to facts what the thread had of a part before it was taken away.
func (t *turn) again(facts []grammar.Fact, part grammar.Part) []grammar.Fact {
	out := facts[:len(facts):len(facts)]
	for _, x := range slices.Backward(t.before.Earlier) {
		if slices.Contains(parts[part], x.Field) && !t.before.Said.has(x.Field) && !stated(out, x.Field) {
			out = append(out, grammar.Fact{Field: x.Field, Value: x.Value, Unit: named[x.Unit], Text: x.Text, Note: x.Note})
		}
	}
	if x, ok := t.earlierStack(part); ok && !stated(out, bareOf[part]) && !stated(out, unit.StackLayers) {
		out = append(out, x)
	}
	return out
}

// earlierStack is the last stack of the thread that had the part, where the one told now
// has not.
func (t *turn) earlierStack(part grammar.Part) (grammar.Fact, bool) {
	now, _ := t.before.Said.find(unit.StackLayers)
	layers, isStack := now.Value.(unit.Layers)
	if !isStack || layerOf(layers, string(part)) >= 0 {
		return grammar.Fact{}, false
	}
	for _, x := range slices.Backward(t.before.Earlier) {
		if was, ok := x.Value.(unit.Layers); ok && layerOf(was, string(part)) >= 0 && len(was) == len(layers)+1 {
			return grammar.Fact{Field: unit.StackLayers, Value: was, Unit: named[x.Unit], Text: x.Text}, true
		}
	}
	return grammar.Fact{}, false
}

func layerOf(layers unit.Layers, part string) int {
	return slices.IndexFunc(layers, func(l unit.Layer) bool { return l.Part == part })
}

// layPlace says beside which layer a part is laid: "on top of the strips", "under the caul",
// "between the strips and the caul".
var layPlace = regexp.MustCompile(`(?i)\b(on|over|above|atop|between|under|below|beneath|underneath)\s+(?:top of\s+)?(?:the |my |our |those |all )?(strips?|staves|slats|panels?|caul|sled)\b(?:\s+and\s+(?:the |my |our |those |all |top |upper )*(strips?|staves|slats|panels?|caul|sled)\b)?`)

// placeTold is where among the layers a part goes that is laid where the text says; -1 where it
// says nothing, or names a layer that is not there or there more than once. Between two layers
// it lies under the upper one.
func placeTold(text string, layers unit.Layers) int {
	said := layPlace.FindStringSubmatch(text)
	if said == nil {
		return -1
	}
	at := layerCalled(said[2], layers)
	if at < 0 {
		return -1
	}
	switch strings.ToLower(said[1]) {
	case "under", "below", "beneath", "underneath":
		return at
	case "between":
		if said[3] == "" {
			break
		}
		other := layerCalled(said[3], layers)
		if other < 0 || other == at {
			return -1
		}
		return max(at, other)
	}
	for at++; at < len(layers) && layers[at].Part == "film"; at++ {
	}
	return at
}

// layerCalled is the one layer of that name; -1 where there is none, or more.
func layerCalled(name string, layers unit.Layers) int {
	part := strings.TrimSuffix(strings.ToLower(name), "s")
	switch part {
	case "strip", "stave", "slat", "panel":
		part = "strips"
	}
	at := layerOf(layers, part)
	if at < 0 || layerOf(layers[at+1:], part) >= 0 {
		return -1
	}
	return at
}

// matInStack lays a mat that a message adds into the stack told before: where it lay,
// else under the board on top.
func (t *turn) matInStack(p grammar.Phrase) grammar.Phrase {
	x, _ := t.before.Said.find(unit.StackLayers)
	layers, isStack := x.Value.(unit.Layers)
	if !isStack || len(layers) == 0 || stated(p.Facts, unit.StackLayers) {
		return p
	}
	p, layers = t.caulInStack(p, layers)
	if layerOf(layers, "mat") >= 0 {
		return p
	}
	k := slices.IndexFunc(p.Facts, func(f grammar.Fact) bool { return f.Field == unit.MatThickness })
	if k < 0 {
		return p
	}
	f := p.Facts[k]
	n, isNumber := f.Value.(unit.Number)
	if !isNumber {
		return p
	}
	at := len(layers)
	if top := layers[at-1].Part; at > 1 && (top == "sled" || top == "caul") {
		at--
	}
	if was, ok := t.earlierStack("mat"); ok {
		old, _ := was.Value.(unit.Layers)
		at = layerOf(old, "mat")
	}
	if told := placeTold(t.m.Text, layers); told >= 0 {
		at = told
	}
	p.Facts = slices.DeleteFunc(slices.Clone(p.Facts), func(f grammar.Fact) bool { return f.Field == unit.StackLayers })
	k = slices.IndexFunc(p.Facts, func(f grammar.Fact) bool { return f.Field == unit.MatThickness })
	p.Facts[k] = grammar.Fact{Field: unit.StackLayers, Value: slices.Insert(slices.Clone(layers), at, unit.Layer{Part: "mat", Thickness: float64(n)}), Unit: f.Unit, Text: f.Text}
	return p
}

// caulInStack lays a caul that a message adds on top of the stack told before, as one
// that was taken off lay there.
func (t *turn) caulInStack(p grammar.Phrase, layers unit.Layers) (grammar.Phrase, unit.Layers) {
	k := slices.IndexFunc(p.Facts, func(f grammar.Fact) bool { return f.Field == unit.CaulThickness })
	if k < 0 || layerOf(layers, "caul") >= 0 {
		return p, layers
	}
	f := p.Facts[k]
	n, isNumber := f.Value.(unit.Number)
	if !isNumber {
		return p, layers
	}
	layers = append(slices.Clone(layers), unit.Layer{Part: "caul", Thickness: float64(n)})
	p.Facts = slices.Clone(p.Facts)
	p.Facts[k] = grammar.Fact{Field: unit.StackLayers, Value: layers, Unit: f.Unit, Text: f.Text}
	return p, layers
}
