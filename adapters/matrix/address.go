package matrix

import (
	"context"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// addressed reports whether a message is meant for the bot: in a conversation
// of two, where it is mentioned or called by name or prefix, and in a thread
// that the bot takes part in. The text comes back without the address.
func (s *session) addressed(ctx context.Context, e *event.Event, c *event.MessageEventContent, root id.EventID) (text string, meant bool, err error) {
	c.RemoveReplyFallback()
	text, called := s.called(string(e.RoomID), c)
	if called {
		return text, true, nil
	}
	in, err := s.takesPart(ctx, e, root)
	if err != nil || in {
		return text, in, err
	}
	members, err := s.store.state.GetRoomJoinedOrInvitedMembers(ctx, e.RoomID)
	return text, len(members) <= 2, ofStore(err)
}

// takesPart reports whether the bot takes part in the thread that a message
// stands in. The load book remembers that too, for when the account's store was
// lost.
func (s *session) takesPart(ctx context.Context, e *event.Event, root id.EventID) (bool, error) {
	in, err := s.store.inThread(ctx, e.RoomID, root)
	if err != nil || in || root == e.ID {
		return in, err
	}
	t, err := s.book.Thread(ctx, string(e.RoomID), string(root))
	return t.Version > 0, err
}

// called takes a mention, a name or a prefix off a message.
func (s *session) called(room string, c *event.MessageEventContent) (text string, called bool) {
	me := string(s.client.UserID)
	mentioned := c.Mentions != nil && slices.Contains(c.Mentions.UserIDs, s.client.UserID) ||
		strings.Contains(c.FormattedBody, "https://matrix.to/#/"+me+`"`)
	names := []string{me, s.name, s.client.UserID.Localpart()}
	text = strings.TrimSpace(c.Body)
	if rest, ok := afterName(text, names); ok {
		return rest, true
	}
	for _, p := range s.cfg.Prefixes(room) {
		if rest, ok := cutFold(text, p); ok {
			return strings.TrimSpace(rest), true
		}
	}
	if !mentioned {
		return text, false
	}
	for _, n := range names[:2] {
		if before, after, ok := foundFold(text, n); ok {
			before = strings.TrimSuffix(before, "@")
			return strings.TrimSpace(before + after), true
		}
	}
	return text, true
}

// afterName cuts “name: …”, “name, …” and “@name …” off.
func afterName(text string, names []string) (rest string, ok bool) {
	text, at := strings.CutPrefix(text, "@")
	for _, n := range names {
		n, full := strings.CutPrefix(n, "@") // an id begins with it
		rest, ok := cutFold(text, n)
		if n == "" || !ok || full && !at {
			continue
		}
		if next, _ := utf8.DecodeRuneInString(rest); at && (rest == "" || unicode.IsSpace(next)) || next == ':' || next == ',' {
			return strings.TrimLeft(rest, ":, \t\n"), true
		}
	}
	return "", false
}

func cutFold(s, prefix string) (rest string, ok bool) {
	if len(s) < len(prefix) || !strings.EqualFold(s[:len(prefix)], prefix) {
		return s, false
	}
	return s[len(prefix):], true
}

// foundFold splits s around the first what that stands for itself.
func foundFold(s, what string) (before, after string, ok bool) {
	for i := 0; what != "" && i+len(what) <= len(s); i++ {
		if !strings.EqualFold(s[i:i+len(what)], what) {
			continue
		}
		left, _ := utf8.DecodeLastRuneInString(s[:i])
		right, _ := utf8.DecodeRuneInString(s[i+len(what):])
		if !unicode.IsLetter(left) && !unicode.IsLetter(right) && !unicode.IsDigit(left) && !unicode.IsDigit(right) {
			return s[:i], strings.TrimLeft(s[i+len(what):], ":,"), true
		}
	}
	return s, "", false
}
