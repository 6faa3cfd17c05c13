package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

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
		{"entries and messages are blanked", []string{"forget", "--store", other, "--person", "ana"}},
		{"No loads", []string{"loads", "--store", other, "--room", "elsewhere"}},
	} {
		if code, out, errs := ran(t, "", c.args...); code != exitOK || errs != "" || !strings.Contains(out, c.want) {
			t.Errorf("%v: code %d, %q, %q; want %q", c.args, code, out, errs, c.want)
		}
	}
	if _, out, _ := ran(t, "", "export", "--store", other, "--format", "json"); strings.Contains(out, s.User("ana")) {
		t.Errorf("who was forgotten is exported: %s", out)
	}
	if code, _, errs := ran(t, "", "forget", "--config", s.config, "--person", s.User("ana")); code != exitOK {
		t.Errorf("forgetting by a service's id: code %d, %q", code, errs)
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
		"backup is damaged or not one of": {"restore", "--store", none, store},
		"“presshand backup” wrote":        {"restore", "--store", none, store},
		"backup cannot be read":           {"restore", "--store", filepath.Join(dir, "new.db"), none + ".backup"},
		"is not there yet with --store":   {"restore", "--store", store, backup},
		"nothing of \"nobody\" is kept":   {"forget", "--store", store, "--person", "nobody"},
		"U0A1B2C3D on Slack":              {"forget", "--store", store, "--person", "nobody"},
		"--person":                        {"forget", "--store", store},
		"--format":                        {"export", "--store", store, "--format", "xml"},
		"is not there: make it":           {"restore", "--store", filepath.Join(dir, "no", "shop.db"), backup},
		"configuration cannot be read":    {"loads", "--config", none},
	} {
		code, _, errs := ran(t, "", args...)
		if code == exitOK || strings.Count(errs, "\n") != 1 || !strings.Contains(errs, want) {
			t.Errorf("%v: code %d, %q; want a failure in one line with %q", args, code, errs, want)
		}
		if _, err := os.Stat(none); err == nil {
			t.Fatalf("%v: made a store that was not there", args)
		}
	}
}

// A standard output that takes nothing is told as that, not as the store's
// failure.
func TestKept_outputIsFull(t *testing.T) {
	store := filepath.Join(t.TempDir(), "shop.db")
	if code, _, errs := ran(t, "25 inHg on a 4x8", "ask", "--in", "text", "--thread", "--store", store); code != exitOK {
		t.Fatal(errs)
	}
	for _, args := range [][]string{{"loads"}, {"export"}, {"export", "--format", "json"}, {"backup", "-"}} {
		var errs strings.Builder
		code := run(t.Context(), append(args, "--store", store), streams{strings.NewReader(""), full{}, &errs})
		if code != exitFailed || !strings.Contains(errs.String(), "standard output cannot be written: no space") || strings.Contains(errs.String(), "--store") {
			t.Errorf("%v: code %d, %q", args, code, errs.String())
		}
	}
}

// full takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space") }
