package bot

import (
	"regexp"
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

// anotherPart lays one more part on a stack: "and a second caul on top".
var anotherPart = regexp.MustCompile(`(?i)\b(?:a second|2nd|another|one more|an extra|an additional)\s+(?:\w+\s+)?(?:caul|mat|sled|layer|level|film|sheet|plate|board)\b`)

// anotherLayer asks for the whole stack where one more part is laid on that of the thread: as
// it was it does not answer for it.
func (t *turn) anotherLayer(p grammar.Phrase) grammar.Phrase {
	part := anotherPart.FindString(t.m.Text)
	if part == "" && t.morePanelsInStack(p) {
		part, p.Changes = t.m.Text, nil
	}
	if part == "" || p.NewStart || p.Command != nil || !t.before.Said.has(unit.StackLayers) || stated(p.Facts, unit.StackLayers) || len(p.Drops)+len(p.Changes)+len(p.Choices) > 0 {
		return p
	}
	for _, f := range p.Facts {
		p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], f.Text)
	}
	p.Refused = append(p.Refused[:len(p.Refused):len(p.Refused)], grammar.Refusal{Field: unit.StackLayers, Text: part})
	p.Facts, p.Amends, p.Asks, p.Inferred = nil, nil, nil, false
	return p
}

// morePanelsInStack reports whether a message changes how many panels there are, where every
// one of them is a layer of the thread's stack: "add a panel".
func (t *turn) morePanelsInStack(p grammar.Phrase) bool {
	x, _ := t.before.Said.find(unit.StackLayers)
	layers, _ := x.Value.(unit.Layers)
	panels := 0
	for _, l := range layers {
		if l.Part == "strips" {
			panels++
		}
	}
	n, told := t.before.Said.find(unit.PanelCount)
	if count, _ := n.Value.(unit.Number); !told || panels < 1 || int(count) != panels {
		return false
	}
	return stated(p.Facts, unit.PanelCount) || slices.ContainsFunc(p.Changes, func(c grammar.Change) bool { return slices.Contains(c.Fields, unit.PanelCount) })
}
