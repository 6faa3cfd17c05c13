package bot

import (
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
)

// betterHeadline says which of several values is better, and by how much.
func (s style) betterHeadline(w worked) (string, []unit.Field) {
	best, told := better(w.rivals)
	m := telling(w.rivals)
	field, values := w.compared()
	if len(values) == 0 {
		return "", nil
	}
	if _, computed := middle(w.rivals[best], m.field); !told && !computed {
		if w.rivals[best].Verdict == engine.Ask {
			return "", nil // what is missing is asked for
		}
		return "what was told does not tell " + listed(s.each(field, values), "and") + " apart.", nil
	}
	if !told {
		return "no difference between " + listed(s.each(field, values), "and") + ".", nil
	}
	text := s.plainChoice(field, values[best]) + " is better"
	second := 0
	if best == 0 {
		second = 1
	}
	x, okX := middle(w.rivals[best], m.field)
	y, okY := middle(w.rivals[second], m.field)
	if okX && okY {
		text += ": " + place(m.field) + " " + s.both(m.field, x) + " against " + s.both(m.field, y) +
			" with " + s.plainChoice(field, values[second])
	}
	return text + ".", []unit.Field{m.field}
}

func (w worked) compared() (unit.Field, []unit.Value) {
	if w.choice == nil {
		return "", nil
	}
	var out []unit.Value
	for _, x := range w.choice.Values {
		out = append(out, x.Value)
	}
	return w.choice.Field, out
}

func (s style) each(f unit.Field, values []unit.Value) []string {
	var out []string
	for _, v := range values {
		out = append(out, s.plainChoice(f, v))
	}
	return out
}

// plainChoice shows one of the values compared.
func (s style) plainChoice(f unit.Field, v unit.Value) string {
	text := s.plain(f, v, s.fields[f])
	if _, word := v.(unit.Word); !word && labels[f] != "" {
		return labels[f] + " " + text
	}
	return text
}

// row sets the figures of the values compared beside each other.
func (s style) row(f unit.Field, v unit.Value, w worked) string {
	figures, ok := v.(unit.Triples)
	field, values := w.compared()
	if !ok || len(values) != len(figures) || labels[f] == "" {
		return ""
	}
	var each []string
	for i, t := range figures {
		each = append(each, s.plain(field, values[i], s.fields[field])+": "+s.triple(f, t))
	}
	return labels[f] + " – " + strings.Join(each, "; ")
}
