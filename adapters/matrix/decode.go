package matrix

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"net/http"
	"strconv"
	"strings"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// fetch asks the homeserver for something with events in it. Those that cannot
// be read go aside: they would come again and again.
func fetch[T any](ctx context.Context, s *session, room id.RoomID, query map[string]string, path ...any) (*T, error) {
	url := s.client.BuildURLWithQuery(append(mautrix.ClientURLPath{"v3"}, path...), query)
	data, err := s.client.MakeFullRequest(ctx, mautrix.FullRequest{Method: http.MethodGet, URL: url, MaxAttempts: 1})
	if err != nil {
		return nil, err
	}
	out, bad, err := decode[T](data, room)
	if err != nil {
		return nil, err
	}
	for _, b := range bad {
		err = errors.Join(err, s.aside(ctx, b.event(), "event cannot be read: "+b.err.Error()))
	}
	return out, err
}

// messages reads a room backwards.
func (s *session) messages(ctx context.Context, room id.RoomID, from, to string) (*mautrix.RespMessages, error) {
	query := map[string]string{"dir": string(mautrix.DirectionBackward), "limit": strconv.Itoa(gapPage)}
	if from != "" {
		query["from"] = from
	}
	if to != "" {
		query["to"] = to
	}
	return fetch[mautrix.RespMessages](ctx, s, room, query, "rooms", room, "messages")
}

// A spoilt is an event that cannot be read.
type spoilt struct {
	room id.RoomID
	raw  json.RawMessage
	err  error
}

// event returns what can be told of it, under a name of its own.
func (s spoilt) event() *event.Event {
	var rest struct {
		ID   string `json:"event_id"`
		Type string `json:"type"`
	}
	_ = json.Unmarshal(s.raw, &rest) // it was in vain already
	if rest.ID == "" {
		sum := sha256.Sum256(s.raw)
		rest.ID = "unread " + hex.EncodeToString(sum[:8])
	}
	return &event.Event{ID: id.EventID(rest.ID), RoomID: s.room, Type: event.Type{Type: rest.Type}}
}

// decode reads an answer of a homeserver, without the events in it that cannot
// be read. What is null is left out too.
func decode[T any](data []byte, room id.RoomID) (*T, []spoilt, error) {
	out := new(T)
	if err := json.Unmarshal(data, out); err == nil && !bytes.Contains(data, []byte("null")) {
		return out, nil, nil
	}
	var c cleaning
	var clean json.RawMessage
	if bytes.HasPrefix(bytes.TrimSpace(data), []byte("[")) {
		clean = c.events(room, data)
	} else {
		clean = c.object(room, data)
	}
	out = new(T)
	return out, c.bad, json.Unmarshal(clean, out)
}

// A cleaning collects what cannot be read.
type cleaning struct{ bad []spoilt }

// object cleans the lists of events in a JSON object.
func (c *cleaning) object(room id.RoomID, raw json.RawMessage) json.RawMessage {
	var members map[string]json.RawMessage
	if json.Unmarshal(raw, &members) != nil {
		return raw
	}
	for name, value := range members {
		within := room
		if strings.HasPrefix(name, "!") {
			within = id.RoomID(name)
		}
		switch {
		case string(value) == "null":
			delete(members, name)
		case value[0] == '{':
			members[name] = c.object(within, value)
		case value[0] == '[' && (name == "events" || name == "chunk" || name == "state"):
			members[name] = c.events(room, value)
		}
	}
	return marshalled(members, raw)
}

func (c *cleaning) events(room id.RoomID, raw json.RawMessage) json.RawMessage {
	var list []json.RawMessage
	if json.Unmarshal(raw, &list) != nil {
		return raw
	}
	good := list[:0]
	for _, e := range list {
		switch err := json.Unmarshal(e, &event.Event{}); {
		case string(e) == "null":
		case err != nil:
			c.bad = append(c.bad, spoilt{room, e, err})
		default:
			good = append(good, e)
		}
	}
	return marshalled(good, raw)
}

// marshalled is JSON of what was read from raw.
func marshalled(v any, raw json.RawMessage) json.RawMessage {
	b, err := json.Marshal(v)
	if err != nil {
		return raw
	}
	return b
}
