//go:build unix

package main

import (
	"os"
	"strings"
	"syscall"
	"testing"
)

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
