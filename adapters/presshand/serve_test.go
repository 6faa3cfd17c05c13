package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
)

// A served is a run of serve against a stand-in for Slack.
type served struct {
	*slackfake.Server
	t      *testing.T
	room   string
	config string
	listen string
	log    log
	stop   context.CancelFunc
	code   chan int
}

// A log is what a process writes, read while it writes.
type log struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (l *log) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

func (l *log) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}

// scopes are all that the bot's token must have.
func scopes() (names []string) {
	for _, scope := range slack.Scopes {
		names = append(names, scope.Name)
	}
	return names
}

func freeAddress(t *testing.T) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().String()
}

// newServed writes a configuration for a stand-in and sets its tokens.
func newServed(t *testing.T, more string) *served {
	t.Helper()
	s := &served{Server: slackfake.New(t, slackfake.Options{Scopes: scopes()}), t: t, listen: freeAddress(t)}
	s.room = s.Channel("press-room")
	t.Setenv(slackBotToken, slackfake.BotToken)
	t.Setenv(slackAppToken, slackfake.AppToken)
	s.config = configured(t, fmt.Sprintf("store = %q\nlisten = %q\n%s\n[slack]\napi = %q\n",
		filepath.Join(t.TempDir(), "shop.db"), s.listen, more, s.URL()))
	return s
}

func (s *served) start() {
	s.t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	s.stop, s.code = stop, make(chan int, 1)
	go func() {
		s.code <- run(ctx, []string{"serve", "--config", s.config}, streams{strings.NewReader(""), io.Discard, &s.log})
	}()
	s.eventually("ready", s.ready)
}

func (s *served) ready() bool {
	code, _ := s.get("/readyz")
	return code == http.StatusOK
}

func (s *served) get(path string) (int, string) {
	r, err := http.Get("http://" + s.listen + path)
	if err != nil {
		return 0, err.Error()
	}
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	if err != nil {
		s.t.Error(err)
	}
	return r.StatusCode, string(text)
}

func (s *served) eventually(what string, is func() bool) {
	s.t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if is() {
			return
		}
	}
	s.t.Fatalf("never: %s\n%s", what, s.log.String())
}

// end stops serving, as SIGTERM and Ctrl-C do.
func (s *served) end() {
	s.t.Helper()
	s.stop()
	if code := <-s.code; code != exitOK {
		s.t.Errorf("exit code %d, want %d\n%s", code, exitOK, s.log.String())
	}
}

// ask has someone say something to the bot and returns what it answers.
func (s *served) ask(text string) string {
	_, answer := s.askIn("", text)
	return answer
}

// askIn is ask in a thread, whose first message it returns too.
func (s *served) askIn(thread, text string) (root, answer string) {
	s.t.Helper()
	room, ana := s.room, s.User("ana")
	before := 0
	if thread != "" {
		before = len(s.Thread(room, thread))
	}
	ts := s.Say(slackfake.Saying{Channel: room, User: ana, Thread: thread, Text: slackfake.Mention + " " + text})
	root = thread
	if root == "" {
		root = ts
	}
	s.eventually("an answer to "+text, func() bool { return len(s.Thread(room, root)) > before })
	return root, s.Thread(room, root)[before].Text
}

func TestServe_slack(t *testing.T) {
	s := newServed(t, "pictures = false")
	s.start()
	if got := s.ask("25 inHg on a 4x8 xyzzy"); !strings.Contains(got, "25 inHg") {
		t.Errorf("answer is %q", got)
	}
	if code, text := s.get("/healthz"); code != http.StatusOK || text != "ok\n" {
		t.Errorf("health is %d %q", code, text)
	}
	s.eventually("the message is counted", func() bool {
		_, text := s.get("/metrics")
		return strings.Contains(text, `presshand_messages_total{adapter="slack",topic="face"} 1`) &&
			strings.Contains(text, `presshand_answer_seconds_count{adapter="slack"} 1`) &&
			strings.Contains(text, `presshand_reconnects_total{adapter="slack"} 0`)
	})
	s.end()
	if text := s.log.String(); strings.Contains(text, "4x8") || strings.Contains(text, "xyzzy") || strings.Contains(text, slackfake.BotToken) {
		t.Errorf("log tells what was said, or a token:\n%s", text)
	}
	if code, _ := s.get("/healthz"); code != 0 {
		t.Errorf("health is still told after the end: %d", code)
	}
}

// Channels do not wait for each other while Slack is slow.
func TestServe_slackSideBySide(t *testing.T) {
	s := newServed(t, "pictures = false")
	s.start()
	s.Gather("chat.postMessage", slackPosts)
	asked := map[string]string{}
	for i := range slackPosts {
		room := s.Channel(fmt.Sprint("room-", i))
		asked[room] = s.Say(slackfake.Saying{Channel: room, User: s.User("ana"), Text: slackfake.Mention + " what is a caul"})
	}
	for room, ts := range asked {
		s.eventually("an answer beside the others", func() bool { return len(s.Thread(room, ts)) == 1 })
	}
	s.end()
}

// The limit of a person counts what they said before a restart.
func TestServe_slowsDownOverARestart(t *testing.T) {
	s := newServed(t, "pictures = false\nmessages_a_minute = 2")
	s.start()
	said := []string{s.ask("25 inHg on a 4x8")}
	s.end()
	s.start()
	said = append(said, s.ask("24 inHg on a 4x8"), s.ask("23 inHg on a 4x8"))
	s.end()
	for i, want := range []string{"tons", "tons", "more than 2 messages in a minute"} {
		if !strings.Contains(said[i], want) {
			t.Errorf("message %d is answered %q, want %q in it", i+1, said[i], want)
		}
	}
}

func TestServe_failuresSayWhatToDo(t *testing.T) {
	for _, v := range []string{slackBotToken, slackAppToken, matrixPassword, matrixToken, storeAddress} {
		t.Setenv(v, "")
	}
	store := fmt.Sprintf("store = %q\n", filepath.Join(t.TempDir(), "shop.db"))
	for text, want := range map[string]string{
		store:                                "add a [slack] or a [matrix] table",
		store + "[slack]\nenabled = false\n": "add a [slack] or a [matrix] table",
		store + "[slack]\n":                  "set " + slackBotToken + " or name a file for it in the configuration; slack app token is missing: set " + slackAppToken,
		store + "[matrix]\n":                 "set " + matrixPassword,
		store + "[slack]\nbot_token_file = \"/nowhere/token\"\n":      "/nowhere/token",
		store + "[matrix]\nhomeserver = \"https://matrix.invalid\"\n": "set " + matrixPassword,
	} {
		code, out, errs := ran(t, "", "serve", "--config", configured(t, text))
		if code != exitFailed || out != "" || strings.Count(errs, "\n") != 1 || !strings.Contains(errs, want) {
			t.Errorf("%q: code %d, %q; want one line with %q", text, code, errs, want)
		}
	}
	t.Setenv(slackBotToken, "xoxb-1")
	t.Setenv(slackAppToken, "xoxp-1")
	if _, _, errs := ran(t, "", "serve", "--config", configured(t, store+"[slack]\n")); !strings.Contains(errs, "does not begin with xapp-") {
		t.Errorf("wrong app token: %q", errs)
	}
	t.Setenv(slackAppToken, "xapp-1")
	if _, _, errs := ran(t, "", "serve", "--config", configured(t, "[slack]\n")); !strings.Contains(errs, "set "+storeAddress) {
		t.Errorf("no store: %q", errs)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if _, _, errs := ran(t, "", "serve", "--config", configured(t, store+fmt.Sprintf("listen = %q\n[slack]\n", l.Addr()))); !strings.Contains(errs, "give listen another port") {
		t.Errorf("port in use: %q", errs)
	}
}

// A token that Slack refuses ends the process, with what to do.
func TestServe_tokenRefused(t *testing.T) {
	s := newServed(t, "")
	t.Setenv(slackBotToken, "xoxb-revoked")
	code, _, errs := ran(t, "", "serve", "--config", s.config)
	if code != exitFailed || !strings.Contains(errs, "make a new one") {
		t.Errorf("code %d, %q", code, errs)
	}
}

func TestCheck_slack(t *testing.T) {
	s := newServed(t, "[rooms.C01]\nunits = \"metric\"\n")
	code, out, errs := ran(t, "", "check", "--config", s.config)
	if code != exitOK || errs != "" {
		t.Errorf("code %d, %q\n%s", code, errs, out)
	}
	for _, want := range []string{"ok     store: not there yet", "ok     every room: inch, UTC", "ok     room C01: metric", "ok     slack clock: within", "ok     slack: takes the bot token", "ok     slack: opens a socket"} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q:\n%s", want, out)
		}
	}
	if n := s.Calls("chat.postMessage"); n != 0 {
		t.Errorf("%d messages are posted, want none", n)
	}
	t.Setenv(slackBotToken, "xoxb-revoked")
	code, out, errs = ran(t, "", "check", "--config", s.config)
	if code != exitFailed || strings.Count(errs, "\n") != 1 || !strings.Contains(out, "wrong  slack takes the bot token: slack refuses it") {
		t.Errorf("refused token: code %d, %q\n%s", code, errs, out)
	}
	if strings.Contains(out, "xoxb-revoked") {
		t.Error("the token is shown")
	}
}

// Each token that is missing is named, whichever they are.
func TestCheck_slackTokensMissing(t *testing.T) {
	config := configured(t, fmt.Sprintf("store = %q\n[slack]\n", filepath.Join(t.TempDir(), "shop.db")))
	const noBot, noApp = "wrong  slack: slack bot token is missing: set " + slackBotToken, "wrong  slack: slack app token is missing: set " + slackAppToken
	for _, c := range []struct {
		bot, app string
		want     []string
		last     string
	}{
		{"", "", []string{noBot, noApp}, "2 things are wrong"},
		{"", "xapp-1", []string{noBot}, "one thing is wrong"},
		{"xoxb-1", "", []string{noApp}, "one thing is wrong"},
		{"xapp-1", "xoxb-1", []string{"bot token does not begin with xoxb-", "app token does not begin with xapp-"}, "2 things are wrong"},
	} {
		t.Setenv(slackBotToken, c.bot)
		t.Setenv(slackAppToken, c.app)
		code, out, errs := ran(t, "", "check", "--config", config)
		if code != exitFailed || !strings.Contains(errs, c.last) || strings.Count(out, "wrong  slack") != len(c.want) {
			t.Errorf("bot token %q, app token %q: code %d, %q\n%s", c.bot, c.app, code, errs, out)
		}
		for _, want := range c.want {
			if !strings.Contains(out, want) {
				t.Errorf("bot token %q, app token %q: lacks %q:\n%s", c.bot, c.app, want, out)
			}
		}
	}
}

// A scope that the token lacks is named, with what it is for and what to do.
func TestCheck_slackScopeMissing(t *testing.T) {
	some := slices.DeleteFunc(scopes(), func(s string) bool { return s == "reactions:read" })
	s := slackfake.New(t, slackfake.Options{Scopes: some})
	t.Setenv(slackBotToken, slackfake.BotToken)
	t.Setenv(slackAppToken, slackfake.AppToken)
	config := configured(t, fmt.Sprintf("store = %q\n[slack]\napi = %q\n", filepath.Join(t.TempDir(), "shop.db"), s.URL()))
	code, out, errs := ran(t, "", "check", "--config", config)
	const want = "wrong  slack scope reactions:read: missing, wanted to take reactions on a load"
	if code != exitFailed || !strings.Contains(errs, "one thing is wrong") || !strings.Contains(out, want) || !strings.Contains(out, "reinstall the app") {
		t.Errorf("code %d, %q, want %q\n%s", code, errs, want, out)
	}
}

func TestCheck_tellsWhatIsWrong(t *testing.T) {
	t.Setenv(slackBotToken, "")
	t.Setenv(matrixPassword, "secret")
	text := fmt.Sprintf(`
store = "/nowhere/at/all/shop.db"
listen = "banana"
[slack]
[matrix]
homeserver = "http://127.0.0.1:1"
user = "@press:localhost"
store = %q
`, filepath.Join(t.TempDir(), "keys.db"))
	code, out, errs := ran(t, "", "check", "--config", configured(t, text))
	if code != exitFailed || strings.Count(errs, "\n") != 1 {
		t.Errorf("code %d, %q", code, errs)
	}
	for _, want := range []string{"wrong  store: folder /nowhere/at/all is not there: make it", "wrong  listen: health cannot be told", "wrong  slack: slack bot token is missing", "wrong  matrix clock: service cannot be reached", "wrong  matrix account: there are no keys"} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q:\n%s", want, out)
		}
	}
	if strings.Contains(out, "secret") {
		t.Error("the password is shown")
	}
}
