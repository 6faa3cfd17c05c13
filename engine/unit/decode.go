package unit

import (
	"encoding/json"
	"fmt"
)

// UnmarshalJSON reads facts as they were written: the shape of each value says
// which kind it is.
func (fs *Facts) UnmarshalJSON(data []byte) error {
	var raw map[Field]json.RawMessage
	if err := json.Unmarshal(data, &raw); err != nil {
		return err
	}
	if raw == nil {
		*fs = nil
		return nil
	}
	out := make(Facts, len(raw))
	for f, r := range raw {
		v, err := DecodeValue(r)
		if err != nil {
			return fmt.Errorf("field %s: %w", f, err)
		}
		out[f] = v
	}
	*fs = out
	return nil
}

// DecodeValue reads one value by the shape of its JSON.
func DecodeValue(data []byte) (Value, error) {
	switch first(data) {
	case '"':
		return decode[Word](data)
	case '[':
		return decodeList(data)
	case '{':
		return decodeObject(data)
	}
	return decode[Number](data)
}

func decodeList(data []byte) (Value, error) {
	var items []json.RawMessage
	if err := json.Unmarshal(data, &items); err != nil {
		return nil, err
	}
	if len(items) == 0 {
		return Numbers{}, nil
	}
	switch first(items[0]) {
	case '"':
		return decode[Words](data)
	case '[':
		return decode[Sets](data)
	case '{':
		return decodeRows(items[0], data)
	}
	return decode[Numbers](data)
}

// decodeRows reads a list of objects, told apart by what the first one has.
func decodeRows(row, data []byte) (Value, error) {
	var keys map[string]json.RawMessage
	if err := json.Unmarshal(row, &keys); err != nil {
		return nil, err
	}
	if _, ok := keys["part"]; ok {
		return decode[Layers](data)
	}
	if _, ok := keys["count"]; ok {
		return decode[Piles](data)
	}
	return decode[Triples](data)
}

func decodeObject(data []byte) (Value, error) {
	var keys map[string]json.RawMessage
	if err := json.Unmarshal(data, &keys); err != nil {
		return nil, err
	}
	for _, k := range []string{"mid", "low", "high"} {
		if _, ok := keys[k]; ok {
			return decode[Triple](data)
		}
	}
	return decode[Facts](data)
}

// UnmarshalJSON reads {"low", "mid", "high"}, any of them absent.
func (t *Triple) UnmarshalJSON(data []byte) error {
	var ends struct{ Low, Mid, High *float64 }
	if err := json.Unmarshal(data, &ends); err != nil {
		return err
	}
	*t = Triple(ends)
	return nil
}

func decode[T Value](data []byte) (Value, error) {
	var v T
	if err := json.Unmarshal(data, &v); err != nil {
		return nil, err
	}
	return v, nil
}

func first(data []byte) byte {
	for _, c := range data {
		switch c {
		case ' ', '\t', '\n', '\r':
			continue
		}
		return c
	}
	return 0
}
