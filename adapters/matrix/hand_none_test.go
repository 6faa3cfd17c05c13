//go:build !goolm

package matrix

import (
	"testing"

	"maunium.net/go/mautrix/id"
)

func (h *hand) equip(testing.TB, bool) {}

func (h *hand) disarm(testing.TB) {}

func (h *hand) knowsEncrypted(testing.TB, id.RoomID) {}

func (h *hand) knowsMember(testing.TB, id.RoomID, id.UserID) {}
