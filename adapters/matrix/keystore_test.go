//go:build goolm

package matrix

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// A failure of the store of keys puts no message aside: it is read once the
// store works again.
func TestSession_waitsForTheKeys(t *testing.T) {
	s, _ := setUp(t)
	var failures atomic.Int64
	s.config.Heard = func(err error) {
		if err != nil {
			failures.Add(1)
		}
	}
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	s.dealtWith(t)
	st, err := openStore(t.Context(), s.config.Store)
	must(t, err)
	defer func() { must(t, st.close()) }()
	must(t, st.exec(t.Context(), `ALTER TABLE crypto_megolm_inbound_session RENAME TO mislaid`))
	before := failures.Load()
	ana.ask(t, room, root, "make it oak")
	eventually(t, func() string {
		if failures.Load() == before {
			return "the sync goes on without the keys"
		}
		return ""
	})
	must(t, st.exec(t.Context(), `ALTER TABLE mislaid RENAME TO crypto_megolm_inbound_session`))
	ana.answer(t, room, s.user(), root, 2)
}

// Keys that cannot be got at just now end no process: neither the store key nor
// the recovery key is at fault.
func TestCheck_keysOutOfReach(t *testing.T) {
	s, _ := setUp(t)
	st, err := openStore(t.Context(), s.config.Store)
	must(t, err)
	must(t, st.exec(t.Context(), `ALTER TABLE crypto_account RENAME COLUMN account TO mislaid`))
	failed := st.exec(t.Context(), `SELECT account FROM crypto_account`)
	must(t, st.close())
	if err := Check(t.Context(), s.config); err == nil || lasting(err) || !passing(err) {
		t.Errorf("check says %v, want an error that may be gone next time", err)
	}
	if failed == nil || wrongKey(failed) {
		t.Errorf("%v is taken for a wrong recovery key", failed)
	}
}

// An event that the store of keys never gets over does not hold the sync up
// for ever.
func TestSession_givesAnEventUp(t *testing.T) {
	s := &session{cipher: broken{}, undeciphered: map[id.EventID]int{}}
	tries := 1
	for ; tries < 100; tries++ {
		_, err := s.decipher(t.Context(), &event.Event{ID: "$e"})
		if err == nil {
			t.Fatal("a broken store of keys reads an event")
		}
		if !passing(err) {
			break
		}
	}
	if tries != decipherTries {
		t.Errorf("given up after %d tries, want %d", tries, decipherTries)
	}
}

// broken is a cipher whose store fails.
type broken struct{ cipher }

func (broken) decrypt(context.Context, *event.Event) (*event.Event, error) {
	return nil, ofStore(errors.New("pickle is spoilt"))
}
