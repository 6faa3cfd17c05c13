//go:build goolm

package matrix

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"maunium.net/go/mautrix"
)

// Events that no program can read, amid others, hold no sync up: they go aside.
func TestSession_unreadableEvents(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	s.config.Homeserver = at
	var spoiltSyncs atomic.Int64
	g.meddle(func(w http.ResponseWriter, r *http.Request) bool {
		if !strings.HasSuffix(r.URL.Path, "/sync") {
			return false
		}
		r.Header.Del("Accept-Encoding")
		answer := httptest.NewRecorder()
		g.Handler.ServeHTTP(answer, r)
		body := answer.Body.String()
		if strings.Contains(body, `"timeline":{"`) {
			n := spoiltSyncs.Add(1)
			body = strings.ReplaceAll(body, `"events":[{`, fmt.Sprintf(`"events":[null,{"event_id":"$spoilt%d","type":5},{"origin_server_ts":"noon"},{`, n))
		}
		w.Header().Set("Content-Type", "application/json")
		w.Header().Set("Content-Length", strconv.Itoa(len(body)))
		w.WriteHeader(answer.Code)
		_, _ = w.Write([]byte(body))
		return true
	})
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	s.shut(t)
	if spoiltSyncs.Load() == 0 {
		t.Fatal("no sync was spoilt, so that nothing is tested")
	}
	st, err := openStore(t.Context(), s.config.Store)
	must(t, err)
	defer func() { must(t, st.close()) }()
	var named, unnamed int
	must(t, st.one(t.Context(), []any{&named}, `SELECT count(*) FROM aside WHERE event_id LIKE '$spoilt%'`))
	must(t, st.one(t.Context(), []any{&unnamed}, `SELECT count(*) FROM aside WHERE event_id LIKE 'unread %'`))
	if named == 0 || unnamed != 1 {
		t.Errorf("%d events with an id stand aside, and %d without; want some, and one", named, unnamed)
	}
}

// What can be read is as it would be without the rest.
func TestDecode_leavesTheRest(t *testing.T) {
	const event = `{"type":"m.room.message","event_id":"$a","origin_server_ts":1,"content":{"body":"null"}}`
	const answer = `{"next_batch":"s1","device_lists":{"changed":["@a:b"],"left":null},"rooms":{"join":{"!r":{"timeline":{"events":[%s]},"state":null},"!s":null}}}`
	clean, bad, err := decode[mautrix.RespSync]([]byte(fmt.Sprintf(answer, event+`,{"type":{}},null,7`)), "")
	must(t, err)
	want, _, err := decode[mautrix.RespSync]([]byte(fmt.Sprintf(answer, event)), "")
	must(t, err)
	got, err := json.Marshal(clean)
	must(t, err)
	wanted, err := json.Marshal(want)
	must(t, err)
	if string(got) != string(wanted) {
		t.Errorf("got  %s\nwant %s", got, wanted)
	}
	if len(bad) != 2 || bad[0].room != "!r" || len(clean.Rooms.Join) != 1 || clean.DeviceLists.Changed[0] != "@a:b" {
		t.Errorf("%d events are spoilt: %+v", len(bad), bad)
	}
	if _, _, err := decode[mautrix.RespSync]([]byte(`<html>`), ""); err == nil {
		t.Error("a page is taken for a sync")
	}
}
