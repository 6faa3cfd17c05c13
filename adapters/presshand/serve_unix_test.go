//go:build unix

package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"presshand/adapters/slack/slackfake"
)

// asProgram has the test's binary be the program.
const asProgram = "PRESSHAND_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	os.Exit(m.Run())
}

// A process of its own ends well when it is told to, within the ten seconds
// that it has; else it is killed, and that is no good end.
func TestServe_signals(t *testing.T) {
	for _, sig := range []os.Signal{syscall.SIGTERM, os.Interrupt} {
		s := newServed(t, "pictures = false")
		ctx, kill := context.WithCancel(t.Context())
		defer kill()
		p := exec.CommandContext(ctx, os.Args[0], "serve", "--config", s.config)
		p.Env = append(os.Environ(), asProgram+"=1")
		p.Stderr = &s.log
		if err := p.Start(); err != nil {
			t.Fatal(err)
		}
		s.eventually("ready", s.ready)
		if got := s.ask("what is a caul"); !strings.Contains(got, "stiff board") {
			t.Errorf("answer is %q", got)
		}
		if err := p.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		late := time.AfterFunc(10*time.Second, kill)
		if err := p.Wait(); err != nil {
			t.Errorf("%v: %v\n%s", sig, err, s.log.String())
		}
		late.Stop()
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

// A store, its log and a secret are their owner's under the usual umask; a
// secret that others can read is remarked on.
func TestFiles_areTheirOwners(t *testing.T) {
	old := syscall.Umask(0o022)
	defer syscall.Umask(old)
	token := filepath.Join(t.TempDir(), "token")
	for mode, wanted := range map[os.FileMode]bool{0o644: true, 0o640: true, 0o600: false} {
		s := newServed(t, "")
		text, err := os.ReadFile(s.config)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(token, []byte(slackfake.BotToken), mode); err != nil {
			t.Fatal(err)
		}
		if err := os.Chmod(token, mode); err != nil {
			t.Fatal(err)
		}
		config := configured(t, string(text)+fmt.Sprintf("bot_token_file = %q\n", token))
		code, out, _ := ran(t, "", "check", "--config", config)
		if code != exitOK || strings.Contains(out, "note   secret: "+token+" can be read by other users") != wanted {
			t.Errorf("token %v: code %d\n%s", mode, code, out)
		}
	}
	s := newServed(t, "")
	s.start()
	defer s.end()
	c, err := readConfig(s.config)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{c.Store, c.Store + "-wal", c.Store + "-shm"} {
		if info, err := os.Stat(file); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %v, %v; want a file for its owner alone", file, info, err)
		}
	}
}
