package matrix

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"sync"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

// A session is an account that is logged in, with its store open.
type session struct {
	cfg     Config
	log     *slog.Logger
	client  *mautrix.Client
	store   *store
	cipher  cipher      // nil without encryption
	inbox   Inbox       // nil during the set-up
	book    book.Reader // nil during the set-up
	name    string      // shown to people
	started time.Time
	signals chan signal
	asked   chan struct{} // into a room

	// mu is held while a sync is taken in, and while the state of a room is
	// read anew: the older of the two must not come last.
	mu    sync.Mutex
	fresh map[id.RoomID]bool // rooms whose state was read since the start

	deciphering  sync.Mutex         // for undeciphered
	undeciphered map[id.EventID]int // how often the store of keys failed on an event
}

// connect opens the store and logs in, with the token of the last time if it
// still holds.
func connect(ctx context.Context, c Config) (*session, error) {
	st, err := openStore(ctx, c.Store)
	if err != nil {
		return nil, err
	}
	s := &session{
		cfg: c, log: c.Log, store: st, started: time.Now(),
		signals: make(chan signal, 100), asked: make(chan struct{}, 1), fresh: map[id.RoomID]bool{},
		undeciphered: map[id.EventID]int{},
	}
	if s.client, err = mautrix.NewClient(c.Homeserver, id.UserID(c.User), ""); err == nil {
		s.client.Log = quietLog(c.Log)
		// Not retried in here: a request that broke off may have been carried
		// out, which the library does not look into.
		s.client.DefaultHTTPRetries = 0
		s.client.Client = &http.Client{Timeout: 2 * time.Minute}
		s.client.StateStore = st.state
		err = s.logIn(ctx)
	}
	if err != nil {
		return nil, errors.Join(err, st.close())
	}
	return s, nil
}

func (s *session) close() error {
	if s.cipher != nil {
		s.cipher.close()
	}
	return s.store.close()
}

// logIn uses the token of the configuration, else that of the last time, else
// the password: as the device of the store, so that its keys stay good.
func (s *session) logIn(ctx context.Context) error {
	device, token, err := s.store.login(ctx, s.client.UserID)
	if err != nil {
		return err
	}
	if s.cfg.Token != "" {
		token = s.cfg.Token
	}
	if token != "" {
		s.client.AccessToken = token
		who, err := s.client.Whoami(ctx)
		switch {
		case err == nil && who.UserID != s.client.UserID:
			return fmt.Errorf("access token is of %s, want %s", who.UserID, s.client.UserID)
		case err == nil:
			s.client.DeviceID = who.DeviceID
			return s.store.keepLogin(ctx, s.client.UserID, who.DeviceID, token)
		case !errors.Is(err, mautrix.MUnknownToken):
			return fmt.Errorf("homeserver does not answer: %w", err)
		case s.cfg.Password == "":
			return fmt.Errorf("%w: %w", ErrToken, err)
		}
	}
	r, err := s.client.Login(ctx, &mautrix.ReqLogin{
		Type:       mautrix.AuthTypePassword,
		Identifier: mautrix.UserIdentifier{Type: mautrix.IdentifierTypeUser, User: s.cfg.User},
		Password:   s.cfg.Password, DeviceID: device, InitialDeviceDisplayName: "presshand", StoreCredentials: true,
	})
	if err != nil {
		if errors.Is(err, mautrix.MForbidden) {
			err = fmt.Errorf("%w: %w", ErrLogin, err)
		}
		return fmt.Errorf("login of %s failed: %w", s.cfg.User, err)
	}
	return s.store.keepLogin(ctx, r.UserID, r.DeviceID, r.AccessToken)
}

// dress sets the account's name and picture where they are not as configured.
// The account works without, so a failure is only logged.
func (s *session) dress(ctx context.Context) {
	s.name = s.client.UserID.Localpart()
	if err := errors.Join(s.takeName(ctx), s.takePicture(ctx)); err != nil {
		s.log.Warn("matrix: own name or picture not set", "error", err)
	}
}

func (s *session) takeName(ctx context.Context) error {
	r, err := s.client.GetDisplayName(ctx, s.client.UserID)
	if err != nil && !errors.Is(err, mautrix.MNotFound) {
		return fmt.Errorf("own name is not to be had: %w", err)
	}
	if r != nil && r.DisplayName != "" {
		s.name = r.DisplayName
	}
	if s.cfg.Name == "" || s.cfg.Name == s.name {
		return nil
	}
	if err := s.client.SetDisplayName(ctx, s.cfg.Name); err != nil {
		return fmt.Errorf("own name cannot be set: %w", err)
	}
	s.name = s.cfg.Name
	return nil
}

// takePicture sets the account's picture, once for each picture.
func (s *session) takePicture(ctx context.Context) error {
	if len(s.cfg.Avatar) == 0 {
		return nil
	}
	sum := sha256.Sum256(s.cfg.Avatar)
	digest := hex.EncodeToString(sum[:])
	last, err := s.store.avatar(ctx, s.client.UserID)
	if err != nil || last == digest {
		return err
	}
	up, err := s.client.UploadBytes(ctx, s.cfg.Avatar, "image/png")
	if err != nil {
		return fmt.Errorf("own picture cannot be sent: %w", err)
	}
	if err := s.client.SetAvatarURL(ctx, up.ContentURI); err != nil {
		return fmt.Errorf("own picture cannot be set: %w", err)
	}
	return s.store.keepAvatar(ctx, s.client.UserID, digest)
}

// isSealed reports whether only encrypted messages may go into a room. The
// store is asked first, because it never forgets; then the homeserver, each
// time anew, because somebody may just have turned encryption on.
func (s *session) isSealed(ctx context.Context, room id.RoomID) (bool, error) {
	if sealed, err := s.store.isSealed(ctx, room); sealed || err != nil {
		return sealed, err
	}
	var c event.EncryptionEventContent
	err := s.client.StateEvent(ctx, room, event.StateEncryption, "", &c)
	switch {
	case errors.Is(err, mautrix.MNotFound):
		return false, nil
	case err != nil:
		return false, fmt.Errorf("whether the room is encrypted is not to be had: %w", err)
	}
	return true, s.store.seal(ctx, room)
}

// readState reads the state of a room once in a session, so that its members
// are known before something is encrypted for them.
func (s *session) readState(ctx context.Context, room id.RoomID) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.fresh[room] {
		return nil
	}
	if err := s.fetchState(ctx, room); err != nil {
		return fmt.Errorf("state of the room is not to be had: %w", err)
	}
	s.fresh[room] = true
	return nil
}

// fetchState reads the state of a room; members that are not in it any more
// are forgotten.
func (s *session) fetchState(ctx context.Context, room id.RoomID) error {
	events, err := fetch[[]*event.Event](ctx, s, room, nil, "rooms", room, "state")
	if err != nil {
		return err
	}
	var members []*event.Event
	for _, e := range *events {
		e.RoomID, e.Type.Class = room, event.StateEventType
		switch err := parse(e); {
		case e.StateKey == nil, err != nil:
			s.log.Warn("matrix: state of a room left out", "event", e.ID, "room", room, "type", e.Type.Type, "error", err)
		case e.Type == event.StateMember:
			members = append(members, e)
		default:
			mautrix.UpdateStateStore(ctx, s.store.state, e)
		}
	}
	return ofStore(s.store.state.ReplaceCachedMembers(ctx, room, members))
}
