//go:build goolm

package matrix

import (
	"fmt"
	"path/filepath"
	"testing"

	"go.mau.fi/util/dbutil"
	"maunium.net/go/mautrix/crypto"
	"maunium.net/go/mautrix/crypto/cryptohelper"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// equip gives a hand keys, and an identity that vouches for them if wanted.
func (h *hand) equip(t testing.TB, vouched bool) {
	t.Helper()
	db, err := dbutil.NewWithDialect("file:"+filepath.Join(t.TempDir(), "hand.db")+
		"?_txlock=immediate&_pragma=journal_mode(WAL)&_pragma=synchronous(OFF)&_pragma=busy_timeout(5000)", "sqlite")
	must(t, err)
	helper, err := cryptohelper.NewCryptoHelper(h.Client, []byte("hand"), db)
	must(t, err)
	must(t, helper.Init(t.Context()))
	h.Crypto = helper
	if !vouched {
		return
	}
	m := helper.Machine()
	_, _, err = m.GenerateAndUploadCrossSigningKeysWithPassword(t.Context(), password, "")
	must(t, err)
	must(t, m.SignOwnDevice(t.Context(), m.OwnIdentity()))
	must(t, m.SignOwnMasterKey(t.Context()))
}

func (h *hand) disarm(t testing.TB) {
	if err := h.Crypto.(*cryptohelper.CryptoHelper).Close(); err != nil {
		t.Error(err)
	}
}

// knowsMember waits until the hand's program knows who is in a room.
func (h *hand) knowsMember(t testing.TB, room id.RoomID, user id.UserID) {
	t.Helper()
	eventually(t, func() string {
		if m, err := h.StateStore.GetMember(t.Context(), room, user); err != nil || m.Membership != event.MembershipJoin {
			return fmt.Sprintf("the program of %s does not know that %s is in the room (%v)", h.word, user, err)
		}
		return ""
	})
}

// knowsEncrypted waits until the hand's program knows that a room is encrypted.
func (h *hand) knowsEncrypted(t testing.TB, room id.RoomID) {
	t.Helper()
	eventually(t, func() string {
		if yes, err := h.StateStore.IsEncrypted(t.Context(), room); err != nil || !yes {
			return "the hand's program does not know that the room is encrypted"
		}
		return ""
	})
}

// A fetcher is a program that knows devices.
type fetcher interface{ Machine() *crypto.OlmMachine }
