package bot

import (
	"encoding/json"

	"presshand/engine/unit"
	"presshand/grammar"
)

// A Said is one thing that a thread or a room's profile states.
type Said struct {
	Field unit.Field
	Value unit.Value
	Unit  string // the symbol of the unit that the person wrote
	Text  string // as typed
	Note  string // a habit that was applied
}

// A Statement is all that is stated, each field at most once, in the order in
// which it was first said.
type Statement []Said

func saidOf(f grammar.Fact) Said {
	return Said{Field: f.Field, Value: f.Value, Unit: f.Unit.Symbol, Text: f.Text, Note: f.Note}
}

func (s Statement) find(f unit.Field) (Said, bool) {
	for _, x := range s {
		if x.Field == f {
			return x, true
		}
	}
	return Said{}, false
}

func (s Statement) has(fs ...unit.Field) bool {
	for _, f := range fs {
		if _, ok := s.find(f); ok {
			return true
		}
	}
	return false
}

// with returns s with x in the place of what was said of its field.
func (s Statement) with(x Said) Statement {
	for i := range s {
		if s[i].Field == x.Field {
			out := append(Statement(nil), s...)
			out[i] = x
			return out
		}
	}
	return append(s[:len(s):len(s)], x)
}

// put is with for a statement that nobody else holds.
func (s *Statement) put(x Said) {
	for i := range *s {
		if (*s)[i].Field == x.Field {
			(*s)[i] = x
			return
		}
	}
	*s = append(*s, x)
}

// without returns s without some fields.
func (s Statement) without(fs ...unit.Field) Statement {
	if !s.has(fs...) {
		return s
	}
	out := make(Statement, 0, len(s))
next:
	for _, x := range s {
		for _, f := range fs {
			if x.Field == f {
				continue next
			}
		}
		out = append(out, x)
	}
	return out
}

// facts returns what is stated, for the engine.
func (s Statement) facts() unit.Facts {
	fs := make(unit.Facts, len(s))
	for _, x := range s {
		fs[x.Field] = x.Value
	}
	return fs
}

// UnmarshalJSON reads a Said back, its value by the shape of its JSON.
func (x *Said) UnmarshalJSON(data []byte) error {
	var raw struct {
		Field            unit.Field
		Value            json.RawMessage
		Unit, Text, Note string
	}
	if err := json.Unmarshal(data, &raw); err != nil {
		return err
	}
	*x = Said{Field: raw.Field, Unit: raw.Unit, Text: raw.Text, Note: raw.Note}
	if len(raw.Value) == 0 {
		return nil
	}
	v, err := unit.DecodeValue(raw.Value)
	x.Value = v
	return err
}
