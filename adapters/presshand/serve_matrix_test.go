//go:build goolm

package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/adapters/matrix/homeserver"
)

// An account is set up, checked and served by the commands alone, and answers
// in a room that it was invited to.
func TestServe_matrix(t *testing.T) {
	server, err := homeserver.Start(t.Context(), "../../testdata/matrix/dendrite.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer server.Stop()
	press, err := server.Register(t.Context(), "press", "secret-of-press")
	if err != nil {
		t.Fatal(err)
	}
	t.Setenv(matrixPassword, "secret-of-press")
	dir := t.TempDir()
	text := fmt.Sprintf(`
store = %q
listen = ""
pictures = false
[matrix]
homeserver = %q
user = %q
store = %q
allow = ["localhost"]
`, filepath.Join(dir, "shop.db"), server.URL, press.UserID, filepath.Join(dir, "keys.db"))
	config := configured(t, text)
	if code, out, _ := ran(t, "", "check", "--config", config); code != exitFailed || !strings.Contains(out, "run “presshand matrix-setup” once") {
		t.Errorf("check before the set-up: code %d\n%s", code, out)
	}
	code, out, errs := ran(t, "", "matrix-setup", "--config", config)
	if code != exitOK || !strings.Contains(out, "told only now") {
		t.Fatalf("set-up: code %d, %q, %q", code, out, errs)
	}
	key := recoveryKey(t, out)
	if code, out, errs = ran(t, "", "matrix-setup", "--config", config); code != exitOK || !strings.Contains(out, "Nothing was changed") {
		t.Errorf("second set-up: code %d, %q, %q", code, out, errs)
	}
	if strings.Contains(out+errs, key) {
		t.Error("second set-up tells the recovery key again")
	}
	if code, out, errs = ran(t, "", "check", "--config", config); code != exitOK {
		t.Errorf("check: code %d, %q\n%s", code, errs, out)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan int, 1)
	var said log
	go func() {
		ended <- run(ctx, []string{"serve", "--config", config}, streams{strings.NewReader(""), io.Discard, &said})
	}()
	ana, err := server.Register(t.Context(), "ana", "secret-of-ana")
	if err != nil {
		t.Fatal(err)
	}
	if got := answered(t, ana, press.UserID, "what is a caul"); !strings.Contains(got, "caul is a stiff board") {
		t.Errorf("answer is %q\n%s", got, said.String())
	}
	stop()
	if code := <-ended; code != exitOK {
		t.Errorf("exit code %d\n%s", code, said.String())
	}
	if strings.Contains(said.String(), "secret-of-press") || strings.Contains(said.String(), "stiff board") || strings.Contains(said.String(), key) {
		t.Errorf("log tells a secret:\n%s", said.String())
	}
	recoversLostStore(t, configured(t, strings.Replace(text, "keys.db", "new.db", 1)), key)
}

// recoversLostStore sets up anew from the recovery key what lost its key store.
func recoversLostStore(t *testing.T, lost, key string) {
	t.Helper()
	if code, out, _ := ran(t, "", "check", "--config", lost); code != exitFailed || !strings.Contains(out, "matrix-setup") {
		t.Errorf("check of a lost store: code %d\n%s", code, out)
	}
	t.Setenv(matrixRecoveryKey, key)
	if code, out, errs := ran(t, "", "check", "--config", lost); code != exitOK || strings.Contains(out, "matrix-setup") {
		t.Errorf("check of a lost store with its recovery key: code %d, %q\n%s", code, errs, out)
	}
	if code, out, errs := ran(t, "", "matrix-setup", "--config", lost); code != exitOK || !strings.Contains(out, "was vouched for") || strings.Contains(out, "Nothing was changed") {
		t.Errorf("set-up of a lost store with its recovery key: code %d, %q, %q", code, out, errs)
	}
}

// recoveryKey returns the recovery key that a set-up printed, once: 12 groups
// of four letters and digits.
func recoveryKey(t *testing.T, out string) string {
	t.Helper()
	found := regexp.MustCompile(`(?m)^    (\w{4}(?: \w{4}){11})$`).FindAllStringSubmatch(out, -1)
	if len(found) != 1 || strings.Count(out, found[0][1]) != 1 {
		t.Fatalf("set-up printed %d recovery keys, want one:\n%s", len(found), out)
	}
	return found[0][1]
}

// answered asks the bot something in a direct room and waits for its reply.
func answered(t *testing.T, ana *mautrix.Client, press id.UserID, text string) string {
	t.Helper()
	ctx, done := context.WithTimeout(t.Context(), time.Minute)
	defer done()
	room, err := ana.CreateRoom(ctx, &mautrix.ReqCreateRoom{Invite: []id.UserID{press}, IsDirect: true, Preset: "trusted_private_chat"})
	if err != nil {
		t.Fatal(err)
	}
	reply := make(chan string, 1)
	syncer := ana.Syncer.(*mautrix.DefaultSyncer)
	asked := false
	syncer.OnEventType(event.StateMember, func(ctx context.Context, e *event.Event) {
		if id.UserID(e.GetStateKey()) != press || e.Content.AsMember().Membership != event.MembershipJoin || asked {
			return
		}
		asked = true
		if _, err := ana.SendText(ctx, room.RoomID, text); err != nil {
			t.Error(err)
		}
	})
	syncer.OnEventType(event.EventMessage, func(_ context.Context, e *event.Event) {
		if e.Sender == press {
			select {
			case reply <- e.Content.AsMessage().Body:
			default:
			}
		}
	})
	go func() { _ = ana.SyncWithContext(ctx) }() // ends with ctx
	select {
	case body := <-reply:
		return body
	case <-ctx.Done():
		return "nothing within a minute"
	}
}
