package bot

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"unicode/utf8"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// AppendJSON appends the reply for machines, as one line without its end.
// Numbers that are not finite are left out.
func (r Reply) AppendJSON(b []byte) []byte {
	b = append(b, `{"about":`...)
	b = quote(b, string(r.About))
	if len(r.Also) > 0 {
		b = append(b, `,"also":`...)
		b = list(b, r.Also, func(b []byte, t grammar.Topic) []byte { return quote(b, string(t)) })
	}
	b = append(b, `,"read":`...)
	b = facts(b, r.Read)
	b = append(b, `,"assumed":`...)
	b = facts(b, r.Assumed)
	b = append(b, `,"unused":`...)
	b = list(b, r.Unused, quote)
	b = append(b, `,"needs":`...)
	b = list(b, r.Needs, func(b []byte, f unit.Field) []byte { return quote(b, string(f)) })
	b = append(b, `,"verdict":`...)
	b = quote(b, string(r.Verdict))
	b = append(b, `,"values":`...)
	b = r.appendValues(b)
	b = append(b, `,"checks":`...)
	b = list(b, r.Checks, check)
	b = append(b, `,"cautions":`...)
	b = list(b, r.Cautions, quote)
	b = r.appendWorking(b, ',')
	b = r.appendLoads(b)
	b = append(b, `,"text":`...)
	b = quote(b, r.Text)
	return append(b, '}')
}

// appendValues appends the figures, and the working as the last of them.
func (r Reply) appendValues(b []byte) []byte {
	b = facts(b, r.Values)
	if len(r.Working) == 0 {
		return b
	}
	b = b[:len(b)-1] // the brace
	if b[len(b)-1] != '{' {
		b = append(b, ',')
	}
	return append(r.appendWorking(b, 0), '}')
}

// appendWorking appends the steps, if there are any, behind a mark; 0 is none. They
// stand among the values, as the contract has it, and beside them, where earlier
// readers found them.
func (r Reply) appendWorking(b []byte, mark byte) []byte {
	if len(r.Working) == 0 {
		return b
	}
	if mark != 0 {
		b = append(b, mark)
	}
	b = append(b, `"working":`...)
	return list(b, r.Working, step)
}

// MarshalJSON writes what AppendJSON appends.
func (r Reply) MarshalJSON() ([]byte, error) { return r.AppendJSON(nil), nil }

func (r Reply) appendLoads(b []byte) []byte {
	switch len(r.Loads) {
	case 0:
		return b
	case 1:
		b = append(b, `,"load":`...)
		b = strconv.AppendInt(b, int64(r.Loads[0]), 10)
		b = append(b, `,"state":`...)
		b = quote(b, r.States[0])
	default:
		b = append(b, `,"load":`...)
		b = list(b, r.Loads, func(b []byte, n int) []byte { return strconv.AppendInt(b, int64(n), 10) })
		b = append(b, `,"state":`...)
		b = list(b, r.States, quote)
	}
	if r.Revision > 0 {
		b = append(b, `,"revision":`...)
		b = strconv.AppendInt(b, int64(r.Revision), 10)
	}
	return b
}

func check(b []byte, c Judged) []byte {
	b = append(b, `{"name":`...)
	b = quote(b, c.Name)
	b = append(b, `,"verdict":`...)
	b = quote(b, string(c.Verdict))
	b = append(b, `,"says":`...)
	b = quote(b, c.Says)
	return append(b, '}')
}

func step(b []byte, s engine.Step) []byte {
	for i, x := range [...]struct{ name, text string }{
		{`"name":`, s.Name}, {`"formula":`, s.Formula}, {`"numbers":`, s.Numbers},
		{`"result":`, s.Result}, {`"source":`, s.Source}, {`"standing":`, string(s.Standing)},
	} {
		b = append(b, "{,"[min(i, 1)])
		b = append(b, x.name...)
		b = quote(b, x.text)
	}
	return append(b, '}')
}

// facts appends fs in the order of their names.
func facts(b []byte, fs unit.Facts) []byte {
	names := make([]unit.Field, 0, len(fs))
	for f := range fs {
		names = append(names, f)
	}
	slices.Sort(names)
	b = append(b, '{')
	for _, f := range names {
		if n, ok := fs[f].(unit.Number); fs[f] == nil || ok && !isFinite(float64(n)) {
			continue
		}
		if b[len(b)-1] != '{' {
			b = append(b, ',')
		}
		b = quote(b, string(f))
		b = append(b, ':')
		b = value(b, fs[f])
	}
	return append(b, '}')
}

func value(b []byte, v unit.Value) []byte {
	switch v := v.(type) {
	case unit.Number:
		return number(b, float64(v))
	case unit.Word:
		return quote(b, string(v))
	case unit.Numbers:
		return list(b, v, number)
	case unit.Words:
		return list(b, v, quote)
	case unit.Layers:
		return list(b, v, layer)
	case unit.Piles:
		return list(b, v, pile)
	case unit.Sets:
		return list(b, v, func(b []byte, set []float64) []byte { return list(b, set, number) })
	case unit.Triple:
		return triple(b, v)
	case unit.Triples:
		return list(b, v, triple)
	case unit.Facts:
		return facts(b, v)
	}
	return append(b, `null`...)
}

func layer(b []byte, l unit.Layer) []byte {
	b = append(b, `{"part":`...)
	b = quote(b, l.Part)
	if l.Thickness != 0 {
		b = append(b, `,"thickness_mm":`...)
		b = number(b, l.Thickness)
	}
	return append(b, '}')
}

func pile(b []byte, p unit.Pile) []byte {
	b = append(b, `{"width_mm":`...)
	b = number(b, p.Width)
	b = append(b, `,"count":`...)
	b = strconv.AppendInt(b, int64(p.Count), 10)
	if p.Length > 0 {
		b = append(b, `,"length_mm":`...)
		b = number(b, p.Length)
	}
	return append(b, '}')
}

func triple(b []byte, t unit.Triple) []byte {
	b = append(b, '{')
	for _, end := range [...]struct {
		name string
		v    *float64
	}{{`"low":`, t.Low}, {`"mid":`, t.Mid}, {`"high":`, t.High}} {
		if end.v == nil || !isFinite(*end.v) {
			continue
		}
		if b[len(b)-1] != '{' {
			b = append(b, ',')
		}
		b = append(b, end.name...)
		b = number(b, *end.v)
	}
	return append(b, '}')
}

func list[T any](b []byte, items []T, each func([]byte, T) []byte) []byte {
	b = append(b, '[')
	for i, x := range items {
		if i > 0 {
			b = append(b, ',')
		}
		b = each(b, x)
	}
	return append(b, ']')
}

// number appends v to nine significant digits: enough for any gauge, and
// without the last bit of a converted inch.
func number(b []byte, v float64) []byte {
	if !isFinite(v) {
		return append(b, `null`...)
	}
	if v == 0 {
		return append(b, '0')
	}
	digits := max(0, 8-int(math.Floor(math.Log10(math.Abs(v)))))
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', min(digits, 30), 64)
	if !slices.Contains(b[start:], '.') {
		return b
	}
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	if b[len(b)-1] == '.' {
		b = b[:len(b)-1]
	}
	return b
}

func isFinite(v float64) bool { return v-v == 0 }

// quote appends s as a JSON string.
func quote(b []byte, s string) []byte {
	plain := true
	for i := 0; i < len(s); i++ {
		if c := s[i]; c < ' ' || c == '"' || c == '\\' || c == 0x7f {
			plain = false
			break
		}
	}
	if plain && utf8.ValidString(s) {
		b = append(b, '"')
		b = append(b, s...)
		return append(b, '"')
	}
	text, err := json.Marshal(s)
	if err != nil { // not for a string
		return append(b, `""`...)
	}
	return append(b, text...)
}
