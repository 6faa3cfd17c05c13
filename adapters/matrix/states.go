package matrix

import (
	"context"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
	"maunium.net/go/mautrix/sqlstatestore"
)

// states keeps the rooms' state for mautrix, in which encryption is never
// turned off: from a room that passes for plain, a key would not be renewed
// when somebody is removed.
type states struct {
	*sqlstatestore.SQLStateStore
}

// SetEncryptionEvent keeps how a room is encrypted. An algorithm that nobody
// here uses leaves that as it was, or as a program does it that is told nothing.
func (s *states) SetEncryptionEvent(ctx context.Context, room id.RoomID, c *event.EncryptionEventContent) error {
	if c.Algorithm != id.AlgorithmMegolmV1 {
		if known, err := s.IsEncrypted(ctx, room); known || err != nil {
			return err
		}
		c = &event.EncryptionEventContent{Algorithm: id.AlgorithmMegolmV1}
	}
	return s.SQLStateStore.SetEncryptionEvent(ctx, room, c)
}
