package matrix

import (
	"context"
	"errors"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// A cipher reads and writes encrypted messages. A program built without
// encryption has none.
type cipher interface {
	// sync takes in what a sync brings of keys and devices.
	sync(ctx context.Context, r *mautrix.RespSync, since string)
	// state takes in who may read a room.
	state(ctx context.Context, e *event.Event)
	encrypt(ctx context.Context, room id.RoomID, t event.Type, content any) (*event.EncryptedEventContent, error)
	// decrypt returns errNoKey while the key has not arrived.
	decrypt(ctx context.Context, e *event.Event) (*event.Event, error)
	// ask asks the sender's devices for the key of an event.
	ask(ctx context.Context, e *event.Event)
	close()
}

// A Done is what a set-up did.
type Done struct {
	RecoveryKey string // of the identity that it made; "" if it made none
	Vouched     bool   // the identity that there was vouches for a new device now
}

var (
	errNoKey = errors.New("key of the message has not arrived")
	// ErrNoEncryption says that the program was built without encryption.
	ErrNoEncryption = errors.New("room is encrypted, and this program was built without Matrix encryption; build it with -tags goolm")
	// ErrNotSetUp says that the account has no identity that vouches for it yet.
	ErrNotSetUp = errors.New("account was never set up for encryption; run “presshand matrix-setup” once")
	// ErrUnverified says that the store was lost, and what to do.
	ErrUnverified = errors.New("this device is not vouched for, because its store is new or was lost; give the recovery key " +
		"that “presshand matrix-setup” printed, or run “presshand matrix-setup --renew” to make a new identity, which people will be told of")
	// ErrStoreMismatch says that the store and the homeserver know different keys.
	ErrStoreMismatch = errors.New("keys in the store are not those that the homeserver has for this device; " +
		"restore the store that belongs to it, or move this one away to begin as a new device with the recovery key")
	// ErrLostDevice says that the device of an access token cannot be gone on with.
	ErrLostDevice = errors.New("keys of the access token's device were lost with the store; " +
		"give a new access token, or the password instead, to begin as a new device with the recovery key")
	// ErrIdentityExists says that a set-up would replace an identity.
	ErrIdentityExists = errors.New("account has an identity already; give its recovery key, " +
		"or run “presshand matrix-setup --renew” to make a new one, which people will be told of")
	// ErrRecoveryKey says that the recovery key is a wrong one.
	ErrRecoveryKey = errors.New("recovery key does not open the account's identity; give the one that the last “presshand matrix-setup” printed")
	// ErrStoreKey says that the keys in the store are encrypted with another key.
	ErrStoreKey = errors.New("keys in the store cannot be read; give the store key that they were written with")
	// ErrToken says that the access token does not hold any more.
	ErrToken = errors.New("access token is refused; give a new one, or the password")
	// ErrLogin says that the password is a wrong one.
	ErrLogin = errors.New("homeserver refuses the name or the password; check both")
	// ErrPassword says that the set-up lacks the password.
	ErrPassword = errors.New("set-up needs the account's password, which the homeserver asks for")
)
