package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
)

// A served is a run of serve against a stand-in for Slack.
type served struct {
	*slackfake.Server
	t      *testing.T
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
	s.eventually("ready", func() bool { code, _ := s.get("/readyz"); return code == http.StatusOK })
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
	room, ana := s.Channel("press-room"), s.User("ana")
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

// What SIGHUP brings in holds from then on; a file that is wrong changes
// nothing.
func TestServe_reloads(t *testing.T) {
	s := newServed(t, "pictures = false")
	s.start()
	text, err := os.ReadFile(s.config)
	if err != nil {
		t.Fatal(err)
	}
	hang := func(text string, says string) {
		t.Helper()
		if err := os.WriteFile(s.config, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := syscall.Kill(os.Getpid(), syscall.SIGHUP); err != nil {
			t.Fatal(err)
		}
		s.eventually(says, func() bool { return strings.Contains(s.log.String(), says) })
	}
	if got := s.ask("units"); !strings.Contains(got, "inches and °F") {
		t.Errorf("before: %q", got)
	}
	hang("units = \"cubits\"\n"+string(text), "configuration not taken in")
	if got := s.ask("units"); !strings.Contains(got, "inches and °F") {
		t.Errorf("after a wrong file: %q", got)
	}
	hang("units = \"metric\"\n"+string(text), "are read anew")
	if got := s.ask("units"); !strings.Contains(got, "millimetres and °C") {
		t.Errorf("after: %q", got)
	}
	s.end()
}

// A store outlives the process: what was posted is listed, exported and backed
// up, restored elsewhere, and who posted it is forgotten.
func TestServe_keeps(t *testing.T) {
	s := newServed(t, "pictures = false\n[people]\nana = [\"UANA\"]\n")
	s.start()
	root, _ := s.askIn("", "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue")
	if _, got := s.askIn(root, "post it as walnut tops"); !strings.Contains(got, "oad 1") {
		t.Fatalf("posting: %q", got)
	}
	s.end()
	backup, other := filepath.Join(t.TempDir(), "shop.backup"), filepath.Join(t.TempDir(), "other.db")
	for _, c := range []struct {
		want string
		args []string
	}{
		{"walnut tops", []string{"loads", "--config", s.config}},
		{"room,load,entry", []string{"export", "--config", s.config}},
		{"walnut tops", []string{"export", "--config", s.config, "--format", "csv"}},
		{`"title":"walnut tops"`, []string{"export", "--config", s.config, "--format", "json"}},
		{"is backed up in " + backup, []string{"backup", "--config", s.config, backup}},
		{"is backed up in " + backup, []string{"backup", "--config", s.config, backup}}, // replaces it
		{`{"backup":"presshand"`, []string{"backup", "--config", s.config, "-"}},
		{"is filled", []string{"restore", "--store", other, backup}},
		{"walnut tops", []string{"loads", "--store", other}},
		{"entries and messages are blanked", []string{"forget", "--store", other, "--person", s.User("ana")}},
		{"No loads", []string{"loads", "--store", other, "--room", "elsewhere"}},
	} {
		if code, out, errs := ran(t, "", c.args...); code != exitOK || errs != "" || !strings.Contains(out, c.want) {
			t.Errorf("%v: code %d, %q, %q; want %q", c.args, code, out, errs, c.want)
		}
	}
	if _, out, _ := ran(t, "", "export", "--store", other, "--format", "json"); strings.Contains(out, s.User("ana")) {
		t.Errorf("who was forgotten is exported: %s", out)
	}
	if info, err := os.Stat(backup); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("backup is %v (%v), want it for its owner alone", info.Mode(), err)
	}
}

func TestKept_failures(t *testing.T) {
	dir := t.TempDir()
	store, none := filepath.Join(dir, "shop.db"), filepath.Join(dir, "none.db")
	if code, _, errs := ran(t, "25 inHg on a 4x8", "ask", "--in", "text", "--thread", "--store", store); code != exitOK {
		t.Fatal(errs)
	}
	backup := filepath.Join(dir, "backup")
	if code, _, errs := ran(t, "", "backup", "--store", store, backup); code != exitOK {
		t.Fatal(errs)
	}
	for want, args := range map[string][]string{
		"there is no store at":            {"loads", "--store", none},
		"name the right one with --store": {"export", "--store", none},
		"would replace the store itself":  {"backup", "--store", store, store},
		"cannot be written":               {"backup", "--store", store, filepath.Join(dir, "no", "folder")},
		"“presshand backup” wrote":        {"restore", "--store", none, store},
		"backup cannot be read":           {"restore", "--store", filepath.Join(dir, "new.db"), none + ".backup"},
		"is not there yet with --store":   {"restore", "--store", store, backup},
		"nothing of \"nobody\" is kept":   {"forget", "--store", store, "--person", "nobody"},
		"--person":                        {"forget", "--store", store},
		"--format":                        {"export", "--store", store, "--format", "xml"},
		"configuration cannot be read":    {"loads", "--config", none},
	} {
		code, _, errs := ran(t, "", args...)
		if code == exitOK || strings.Count(errs, "\n") != 1 || !strings.Contains(errs, want) {
			t.Errorf("%v: code %d, %q; want a failure in one line with %q", args, code, errs, want)
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
		store + "[slack]\n":                  "set " + slackBotToken,
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

func TestCheck_tellsWhatIsWrong(t *testing.T) {
	t.Setenv(slackBotToken, "")
	t.Setenv(matrixPassword, "secret")
	text := `
store = "/nowhere/at/all/shop.db"
[slack]
[matrix]
homeserver = "http://127.0.0.1:1"
user = "@press:localhost"
store = "/nowhere/at/all/keys.db"
`
	code, out, errs := ran(t, "", "check", "--config", configured(t, text))
	if code != exitFailed || strings.Count(errs, "\n") != 1 {
		t.Errorf("code %d, %q", code, errs)
	}
	for _, want := range []string{"wrong  store:", "wrong  slack: slack bot token is missing", "wrong  matrix clock: service cannot be reached", "wrong  matrix account: there are no keys"} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q:\n%s", want, out)
		}
	}
	if strings.Contains(out, "secret") {
		t.Error("the password is shown")
	}
}
