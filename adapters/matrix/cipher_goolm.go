//go:build goolm

package matrix

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"

	"go.mau.fi/util/dbutil"
	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/crypto"
	"maunium.net/go/mautrix/crypto/olm"
	"maunium.net/go/mautrix/crypto/ssss"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// Encrypts says whether the program was built with encryption.
const Encrypts = true

// machine is the cipher of mautrix, with keys and states in the account's store.
type machine struct {
	*crypto.OlmMachine
	members func(ctx context.Context, room id.RoomID) ([]id.UserID, error)
}

// newCipher returns the cipher of an account that is set up: its device is
// vouched for by the account's identity.
func newCipher(ctx context.Context, s *session) (cipher, error) {
	m, err := openMachine(ctx, s)
	if err != nil {
		return nil, err
	}
	has, verified, err := m.GetOwnVerificationStatus(ctx)
	switch {
	case err != nil:
		return nil, fmt.Errorf("own identity is not to be had: %w", err)
	case verified:
		return m, nil
	case !has:
		return nil, ErrNotSetUp
	case s.cfg.RecoveryKey == "":
		return nil, ErrUnverified
	}
	if err := m.recover(ctx, s.cfg.RecoveryKey); err != nil {
		return nil, err
	}
	s.log.Info("matrix: device is new and was vouched for with the recovery key", "device", s.client.DeviceID)
	return m, nil
}

// recover has the account's identity vouch for this device.
func (m *machine) recover(ctx context.Context, key string) error {
	err := m.VerifyWithRecoveryKey(ctx, key)
	if wrongKey(err) {
		return fmt.Errorf("%w: %w", ErrRecoveryKey, err)
	}
	return err
}

// wrongKey reports whether a recovery key is at fault, rather than the store
// or the homeserver.
func wrongKey(err error) bool {
	return isAny(err,
		ssss.ErrInvalidRecoveryKey, ssss.ErrIncorrectSSSSKey, ssss.ErrKeyDataMACMismatch, ssss.ErrNotEncryptedForKey,
		ssss.ErrCorruptedKeyMetadata, ssss.ErrNoDefaultKeyID)
}

// openMachine loads the keys of the session's device, or makes them.
func openMachine(ctx context.Context, s *session) (*machine, error) {
	keys := crypto.NewSQLCryptoStore(s.store.db, dbutil.NoopLogger, s.cfg.User, s.client.DeviceID, s.cfg.storeKey())
	if err := keys.DB.Upgrade(ctx); err != nil {
		return nil, fmt.Errorf("store of keys cannot be used: %w", err)
	}
	if stored, err := keys.FindDeviceID(ctx); err != nil {
		return nil, ofStore(err)
	} else if stored != "" && stored != s.client.DeviceID {
		return nil, fmt.Errorf("%w (store has device %s, homeserver %s)", ErrStoreMismatch, stored, s.client.DeviceID)
	}
	m := &machine{crypto.NewOlmMachine(s.client, &s.client.Log, keys, s.store.state), s.store.state.GetRoomJoinedOrInvitedMembers}
	m.IgnorePostDecryptionParseErrors = true // who gets the event parses it
	if err := s.opens(ctx, keys); err != nil {
		return nil, err
	}
	if err := m.Load(ctx); err != nil {
		return nil, ofStore(err)
	}
	err := m.publish(ctx)
	if errors.Is(err, ErrStoreMismatch) && s.cfg.Token != "" && !m.GetAccount().Shared {
		return nil, ErrLostDevice
	}
	return m, err
}

// opens tries the store key on the device's own keys, if they are there.
func (s *session) opens(ctx context.Context, keys *crypto.SQLCryptoStore) error {
	var pickled []byte
	if err := s.store.one(ctx, []any{&pickled}, `SELECT account FROM crypto_account WHERE account_id = $1`, keys.AccountID); err != nil {
		return err
	}
	if pickled == nil {
		return nil
	}
	if err := olm.NewBlankAccount().Unpickle(pickled, keys.PickleKey); err != nil {
		return fmt.Errorf("%w: %w", ErrStoreKey, err)
	}
	return nil
}

// publish sees to it that the homeserver has the device's keys.
func (m *machine) publish(ctx context.Context) error {
	user, device := m.Client.UserID, m.Client.DeviceID
	r, err := m.Client.QueryKeys(ctx, &mautrix.ReqQueryKeys{DeviceKeys: map[id.UserID]mautrix.DeviceIDList{user: {device}}})
	if err != nil {
		return fmt.Errorf("own keys are not to be had: %w", err)
	}
	account := m.GetAccount()
	theirs, there := r.DeviceKeys[user][device]
	switch there = there && len(theirs.Keys) > 0; {
	case there && theirs.Keys.GetEd25519(device) != account.SigningKey():
		return ErrStoreMismatch
	case !there && account.Shared:
		return ErrStoreMismatch
	case there && !account.Shared: // killed between the upload and noting it
		account.Shared = true
		return ofStore(m.CryptoStore.PutAccount(ctx, account))
	case !there:
		// kept first, so that a process killed after the upload has the same keys again
		if err := m.CryptoStore.PutAccount(ctx, account); err != nil {
			return ofStore(err)
		}
		return m.ShareKeys(ctx, -1)
	}
	return nil
}

func (m *machine) sync(ctx context.Context, r *mautrix.RespSync, since string) {
	m.ProcessSyncResponse(ctx, r, since)
}

func (m *machine) state(ctx context.Context, e *event.Event) {
	switch e.Type {
	case event.StateMember:
		m.HandleMemberEvent(ctx, e)
	case event.StateHistoryVisibility:
		m.HandleHistoryVisibility(ctx, e)
	}
}

func (m *machine) encrypt(ctx context.Context, room id.RoomID, t event.Type, content any) (*event.EncryptedEventContent, error) {
	c, err := m.EncryptMegolmEvent(ctx, room, t, content)
	if !crypto.IsShareError(err) {
		return c, err
	}
	users, err := m.members(ctx, room)
	if err != nil {
		return nil, ofStore(err)
	}
	if err := m.ShareGroupSession(ctx, room, users); err != nil {
		return nil, fmt.Errorf("key of the room cannot be shared: %w", err)
	}
	return m.EncryptMegolmEvent(ctx, room, t, content)
}

func (m *machine) decrypt(ctx context.Context, e *event.Event) (*event.Event, error) {
	clear, err := m.DecryptMegolmEvent(ctx, e)
	switch {
	case err == nil:
		return clear, nil
	case isAny(err, crypto.ErrNoSessionFound, crypto.ErrGroupSessionWithheld, olm.ErrUnknownMessageIndex):
		return nil, errNoKey
	case refusal(err):
		return nil, err
	}
	return nil, ofStore(err)
}

// refusal reports whether an event is at fault that cannot be decrypted: it
// will not be better next time.
func refusal(err error) bool {
	var noJSON *json.SyntaxError
	var otherJSON *json.UnmarshalTypeError
	var noBase64 base64.CorruptInputError
	return errors.As(err, &noJSON) || errors.As(err, &otherJSON) || errors.As(err, &noBase64) || isAny(err,
		crypto.ErrIncorrectEncryptedContentType, crypto.ErrUnsupportedAlgorithm, crypto.ErrCorruptedMegolmPayload,
		crypto.ErrDuplicateMessageIndex, crypto.ErrWrongRoom, crypto.ErrDeviceKeyMismatch,
		olm.ErrBadMAC, olm.ErrBadSignature, olm.ErrBadMessageFormat, olm.ErrWrongProtocolVersion, olm.ErrEmptyInput,
		olm.ErrInputToSmall, olm.ErrBadInput, olm.ErrMsgIndexTooHigh)
}

func (m *machine) ask(ctx context.Context, e *event.Event) {
	c := e.Content.AsEncrypted()
	device := c.DeviceID //lint:ignore SA1019 programs still fill it in, and all devices are asked where it is missing
	if device == "" {
		device = "*"
	}
	users := map[id.UserID][]id.DeviceID{e.Sender: {device}, m.Client.UserID: {"*"}}
	if err := m.SendRoomKeyRequest(ctx, e.RoomID, c.SenderKey, c.SessionID, "", users); err != nil {
		m.Log.Warn().Err(err).Msg("key of a message could not be asked for")
	}
}

func (m *machine) close() { m.Destroy() }
