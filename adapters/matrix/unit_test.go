package matrix

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
	"presshand/engine/unit"
)

func someone(t testing.TB) *session {
	t.Helper()
	c, err := mautrix.NewClient("http://127.0.0.1", "@presshand:example.org", "")
	must(t, err)
	config := Config{Homeserver: "http://127.0.0.1", User: "@presshand:example.org", Password: "x", Store: "x"}
	return &session{cfg: checkedConfig(t, config), client: c, name: "Press Hand"}
}

func checkedConfig(t testing.TB, c Config) Config {
	t.Helper()
	must(t, c.check())
	return c
}

func TestCalled_address(t *testing.T) {
	s := someone(t)
	mention := &event.Mentions{UserIDs: []id.UserID{s.client.UserID}}
	for _, c := range []struct {
		body     string
		mentions *event.Mentions
		html     string
		want     string
		called   bool
	}{
		{body: "press, 25 inHg", want: "25 inHg", called: true},
		{body: "Press: 25 inHg", want: "25 inHg", called: true},
		{body: "press 25 inHg", want: "press 25 inHg"},
		{body: "presses, 25", want: "presses, 25"},
		{body: "Press Hand: 25 inHg", want: "25 inHg", called: true},
		{body: "press hand, 25 inHg", want: "25 inHg", called: true},
		{body: "@presshand 25 inHg", want: "25 inHg", called: true},
		{body: "@presshand:example.org: 25 inHg", want: "25 inHg", called: true},
		{body: "@presshanding 25", want: "@presshanding 25"},
		{body: "hey Press Hand 25 inHg", mentions: mention, want: "hey  25 inHg", called: true},
		{body: "hey Press Hand 25 inHg", want: "hey Press Hand 25 inHg"},
		{body: "25 inHg", html: `<a href="https://matrix.to/#/@presshand:example.org">you</a> 25 inHg`, want: "25 inHg", called: true},
		{body: "25 inHg", html: `<a href="https://matrix.to/#/@presshand:example.organ">you</a>`, want: "25 inHg"},
		{body: "", mentions: mention, want: "", called: true},
	} {
		text, called := s.called("!r:example.org", &event.MessageEventContent{Body: c.body, Mentions: c.mentions, FormattedBody: c.html})
		if text != c.want || called != c.called {
			t.Errorf("%q: %q, called %v; want %q, %v", c.body, text, called, c.want, c.called)
		}
	}
}

// No reaction stands for a check with measured values.
func TestGestures_checkNothing(t *testing.T) {
	for sign, phrase := range gestures {
		if strings.Contains(phrase, "check") {
			t.Errorf("%s stands for %q", sign, phrase)
		}
	}
	for sign, want := range map[string]string{"✋🏽": "hold %d", "▶️": "clear %d", "✔️": "%d looks fine", "🎉": ""} {
		if got, ok := gestureOf(sign); got != want || ok != (want != "") {
			t.Errorf("%s stands for %q (%v), want %q", sign, got, ok, want)
		}
	}
}

// Whatever stands in a line, the HTML shows it as text.
func TestHTMLOf_escapes(t *testing.T) {
	got := htmlOf(bot.Sheet{Lines: []bot.Line{
		{Kind: bot.Headline, Text: `<b>"5"</b> & more`}, {Kind: bot.Figure, Text: "a"}, {Kind: bot.Figure, Text: "b"},
		{Kind: bot.ReadAs, Text: "Read as 5"}, {Kind: bot.Warning, Text: "hot"}, {Kind: bot.Figure, Text: "c"},
	}})
	const want = "<p><strong>&lt;b&gt;&#34;5&#34;&lt;/b&gt; &amp; more</strong></p><ul><li>a</li><li>b</li></ul>" +
		"<p><em>Read as 5</em></p><p>⚠️ hot</p><ul><li>c</li></ul>"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// A text that is too long is cut at a rune: 3 bytes of “é” leave one whole.
func TestShortened_runes(t *testing.T) {
	for text, want := range map[string]string{"abc": "abc", "abcd": "abc…", "éé": "é…"} {
		if got := shortened(text, 3); got != want {
			t.Errorf("%q is shortened to %q, want %q", text, got, want)
		}
	}
}

// A configuration that cannot work is refused with what is wrong with it.
func TestOpen_refusesConfig(t *testing.T) {
	good := Config{Homeserver: "https://matrix.example.org", User: "@presshand:example.org", Password: "x", Store: "x.db"}
	for says, change := range map[string]func(*Config){
		"homeserver": func(c *Config) { c.Homeserver = "matrix.example.org" },
		"user":       func(c *Config) { c.User = "presshand" },
		"password":   func(c *Config) { c.Password = "" },
		"store":      func(c *Config) { c.Store = "" },
	} {
		c := good
		change(&c)
		if _, err := Open(c, nil, nil); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: error is %v, want one that names it", says, err)
		}
	}
	if _, err := Open(good, nil, nil); err != nil {
		t.Errorf("good configuration is refused: %v", err)
	}
}

// A reply does not wait for an account that is not served any more: the
// process could not end meanwhile.
func TestSend_over(t *testing.T) {
	a, err := Open(Config{Homeserver: "https://matrix.example.org", User: "@presshand:example.org", Password: "x", Store: "x.db"}, nil, nil)
	must(t, err)
	over := make(chan struct{})
	close(over)
	var wait *desk.WaitError
	if _, err := (serving{a, over}).Send(t.Context(), book.Outgoing{}); !errors.As(err, &wait) {
		t.Errorf("error is %v, want one that has the reply sent again", err)
	}
}

// shelf is a load book with one load.
type shelf struct {
	book.Reader
	load book.Load
}

func (s shelf) Load(context.Context, string, int) (book.Load, error) { return s.load, nil }

// A reminder has a pill for whom it is for, and mentions nobody else.
func TestNotice_reminderPing(t *testing.T) {
	s := someone(t)
	st, err := openStore(t.Context(), t.TempDir()+"/matrix.db")
	must(t, err)
	defer func() { must(t, st.close()) }()
	s.store = st
	const room = "!r:example.org"
	must(t, st.state.SetMember(t.Context(), room, "@ben:example.org", &event.MemberEventContent{Membership: event.MembershipJoin, Displayname: "Ben <1>"}))
	l, err := book.Load{}.Apply(book.Posting{Plan: book.Plan{Said: unit.Facts{}}, Place: book.Place{Room: room}}.Entry(
		book.Saying{By: book.Person{ID: "@ben:example.org"}, At: time.Unix(0, 0)}, 1))
	must(t, err)
	s.book = shelf{load: l}
	o := book.Outgoing{Place: book.Place{Room: room}, Text: "time is up"}
	c, err := s.notice(t.Context(), o, bot.Sheet{Load: 1, Lines: []bot.Line{{Text: "time is up"}}})
	must(t, err)
	const pill = `<a href="https://matrix.to/#/@ben:example.org">Ben &lt;1&gt;</a>: `
	if !strings.HasPrefix(c.FormattedBody, pill) || c.Body != "Ben <1>: time is up" || len(c.Mentions.UserIDs) != 1 || c.Mentions.UserIDs[0] != "@ben:example.org" {
		t.Errorf("body %q, HTML %q, mentions %v", c.Body, c.FormattedBody, c.Mentions.UserIDs)
	}
	o.Event = "e"
	if c, err := s.notice(t.Context(), o, bot.Sheet{Load: 1}); err != nil || len(c.Mentions.UserIDs) > 0 {
		t.Errorf("an answer mentions %v (%v), want nobody", c.Mentions.UserIDs, err)
	}
}
