//go:build goolm

package matrix

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"maunium.net/go/mautrix/id"
)

// A set-up account starts on its store again and again, and a second set-up
// changes nothing.
func TestSetup_restartOnTheSameStore(t *testing.T) {
	s, _ := setUp(t)
	if done, err := Setup(t.Context(), s.config, false); done != (Done{}) || err != nil {
		t.Errorf("second set-up did %+v and gave %v, want nothing", done, err)
	}
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	s.start(t)
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	first := ana.answer(t, room, s.user(), root, 1)
	s.shut(t)
	missed := ana.ask(t, room, root, "make it oak")
	s.start(t)
	second := ana.answer(t, room, s.user(), root, 2)
	if missed == "" || first.Mautrix.TrustSource.DeviceID != second.Mautrix.TrustSource.DeviceID {
		t.Errorf("came back as device %s, want %s", second.Mautrix.TrustSource.DeviceID, first.Mautrix.TrustSource.DeviceID)
	}
}

// A lost store makes a new device, which the recovery key has vouched for, and
// forgets no thread that the bot takes part in.
func TestSetup_lostStoreWithRecoveryKey(t *testing.T) {
	s, key := setUp(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	s.start(t)
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	old := ana.answer(t, room, s.user(), root, 1).Mautrix.TrustSource.DeviceID
	s.shut(t)
	s.config.Store, s.config.RecoveryKey = filepath.Join(t.TempDir(), "new.db"), key
	s.start(t)
	eventually(t, func() string { // the new device is there to be written to
		_, err := ana.Crypto.(fetcher).Machine().FetchKeys(t.Context(), []id.UserID{s.user()}, true)
		must(t, err)
		devices, err := ana.Crypto.(fetcher).Machine().CryptoStore.GetDevices(t.Context(), s.user())
		must(t, err)
		for d := range devices {
			if d != old {
				return ""
			}
		}
		return "new device is not known"
	})
	ana.ask(t, room, root, "make it oak")
	e := ana.answer(t, room, s.user(), root, 2)
	if d := e.Mautrix.TrustSource.DeviceID; d == old || e.Mautrix.TrustState < id.TrustStateCrossSignedTOFU {
		t.Errorf("answered by device %s, trusted as %v; want a new one that is vouched for", d, e.Mautrix.TrustState)
	}
}

// Each failure of the set-up is an error of its own, which says what to do and
// ends the serving.
func TestServe_saysWhatToDo(t *testing.T) {
	s, key := setUp(t)
	must(t, Check(t.Context(), s.config))
	st, err := openStore(t.Context(), s.config.Store)
	must(t, err)
	_, token, err := st.login(t.Context(), s.user())
	must(t, errors.Join(err, st.close()))
	lost := filepath.Join(t.TempDir(), "new.db")
	never := newStand(t).config
	for _, c := range []struct {
		name   string
		change func(*Config)
		want   error
		says   string
	}{
		{"never set up", func(c *Config) { *c = never }, ErrNotSetUp, "presshand matrix-setup"},
		{"lost store", func(c *Config) { c.Store = lost }, ErrUnverified, "recovery key"},
		{"lost store, no recovery key", func(c *Config) { c.Store = lost }, ErrUnverified, "matrix-setup --renew"},
		{"lost store of a token", func(c *Config) { c.Store, c.Token = filepath.Join(t.TempDir(), "x.db"), token }, ErrLostDevice, "new access token, or the password"},
		{"wrong recovery key", func(c *Config) { c.Store, c.RecoveryKey = lost, wrong(key) }, ErrRecoveryKey, "last"},
		{"wrong password", func(c *Config) { c.Store, c.Password = filepath.Join(t.TempDir(), "x.db"), "guess" }, ErrLogin, "check"},
		{"old token", func(c *Config) { c.Token, c.Password = "gone", "" }, ErrToken, "new one"},
		{"another store key", func(c *Config) { c.StoreKey = "another" }, ErrStoreKey, "key"},
	} {
		t.Run(c.name, func(t *testing.T) {
			config := s.config
			c.change(&config)
			if err := Check(t.Context(), config); !errors.Is(err, c.want) {
				t.Errorf("check says %v, want %v", err, c.want)
			}
			ended := make(chan error, 1)
			go func() { ended <- Serve(t.Context(), config, newDesk(s.store, "bot", false, false)) }()
			select {
			case err := <-ended:
				if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) {
					t.Errorf("serving ended with %v, want %v", err, c.want)
				}
			case <-time.After(patienceOfTests):
				t.Fatal("serving goes on")
			}
		})
	}
}

// wrong changes the last digit of a recovery key.
func wrong(key string) string {
	last := "A"
	if strings.HasSuffix(key, last) {
		last = "B"
	}
	return key[:len(key)-1] + last
}

// An identity is replaced only when asked for; its new recovery key then holds.
func TestSetup_renew(t *testing.T) {
	s, old := setUp(t)
	s.config.Store = filepath.Join(t.TempDir(), "new.db")
	if done, err := Setup(t.Context(), s.config, false); done != (Done{}) || !errors.Is(err, ErrIdentityExists) {
		t.Fatalf("set-up on a new store did %+v and gave %v, want %v", done, err, ErrIdentityExists)
	}
	done, err := Setup(t.Context(), s.config, true)
	must(t, err)
	key := done.RecoveryKey
	if key == "" || key == old {
		t.Fatal("renewed set-up gave no new recovery key")
	}
	s.config.Store, s.config.RecoveryKey = filepath.Join(t.TempDir(), "third.db"), key
	if again, err := Setup(t.Context(), s.config, false); again != (Done{Vouched: true}) || err != nil {
		t.Errorf("set-up with the new recovery key did %+v and gave %v, want the device vouched for", again, err)
	}
	if c := s.config; c.Password != "" {
		c.Password, c.Token = "", "token"
		if _, err := Setup(t.Context(), c, false); !errors.Is(err, ErrPassword) {
			t.Errorf("set-up without a password gave %v, want %v", err, ErrPassword)
		}
	}
}
