package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// ran runs the command and returns what it did.
func ran(t *testing.T, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run(context.Background(), args, streams{strings.NewReader(stdin), &out, &errs})
	return code, out.String(), errs.String()
}

type reply struct {
	About, Verdict, Text string
	Read                 map[string]any
	Needs                []string
}

func replies(t *testing.T, out string) []reply {
	t.Helper()
	var all []reply
	for line := range strings.Lines(out) {
		var r reply
		if err := json.Unmarshal([]byte(line), &r); err != nil {
			t.Fatalf("reply %q is no JSON: %v", line, err)
		}
		all = append(all, r)
	}
	return all
}

func TestAsk_exitCodes(t *testing.T) {
	for _, c := range []struct {
		question string
		code     int
	}{
		{"how many tons on a 4x8 at 25 inHg", exitOK},
		{"what size breaker for a table saw", exitUnknown},
	} {
		code, out, errs := ran(t, "", "ask", c.question)
		if code != c.code || out == "" || errs != "" {
			t.Errorf("%q: code %d, stdout %q, stderr %q; want code %d and a reply", c.question, code, out, errs, c.code)
		}
	}
}

// 25 inHg is 25 × 3.386389 = 84.66 kPa, NIST SP 811.
func TestAsk_json(t *testing.T) {
	code, out, _ := ran(t, "25 inHg on a 4x8\n\n  \nwhat size breaker for a table saw\n", "ask", "--json")
	got := replies(t, out)
	if code != exitOK || len(got) != 2 {
		t.Fatalf("code %d and %d replies, want %d and 2:\n%s", code, len(got), exitOK, out)
	}
	if p, _ := got[0].Read["vacuum_kpa"].(float64); got[0].About != "face" || p < 84.65 || p > 84.67 {
		t.Errorf("first reply is about %s with vacuum %v, want face and 84.66", got[0].About, got[0].Read["vacuum_kpa"])
	}
	if got[1].About != "unknown" || got[1].Verdict != "none" {
		t.Errorf("second reply is about %s, %s, want unknown, none", got[1].About, got[1].Verdict)
	}
}

func TestAsk_linesOfOneThread(t *testing.T) {
	in := "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg\nmake it oak\n"
	for _, c := range []struct {
		args   []string
		strips bool
	}{{[]string{"ask", "--json", "--thread"}, true}, {[]string{"ask", "--json"}, false}} {
		_, out, _ := ran(t, in, c.args...)
		got := replies(t, out)
		if len(got) != 2 {
			t.Fatalf("%v: %d replies, want 2", c.args, len(got))
		}
		if _, has := got[1].Read["strip_count"]; has != c.strips {
			t.Errorf("%v: second reply has strip_count: %v, want %v", c.args, has, c.strips)
		}
	}
}

func TestAsk_inJSON(t *testing.T) {
	in := strings.Join([]string{
		`{"room":"a","thread":"1","from":"ana","text":"5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg","at":"2026-03-04T07:00:00Z"}`,
		`{"room":"a","thread":"2","from":"ana","text":"make it oak"}`,
		`{"room":"a","thread":"1","from":"ben","text":"make it\noak"}`,
		`{"text":""}`,
		`not json`,
		`[1, 2]`,
		`null`,
		`{"text": 7}`,
		`{"at": "yesterday", "text": "hello"}`,
		`{}`,
	}, "\n")
	code, out, errs := ran(t, in, "ask", "--json", "--in", "json")
	got := replies(t, out)
	if code != exitOK || errs != "" || len(got) != 10 {
		t.Fatalf("code %d, stderr %q, %d replies; want %d, none, 10", code, errs, len(got), exitOK)
	}
	if _, has := got[1].Read["strip_count"]; has {
		t.Error("another thread knows the first thread's strips")
	}
	if n, _ := got[2].Read["strip_count"].(float64); n != 5 {
		t.Errorf("the same thread has strip_count %v, want 5", got[2].Read["strip_count"])
	}
	for i, r := range got[3:] {
		if r.About != "unknown" || r.Text == "" {
			t.Errorf("reply %d is about %q, %q; want unknown and a line of text", i+3, r.About, r.Text)
		}
	}
}

// A reply must be there before the next line is sent.
func TestAsk_streams(t *testing.T) {
	in, feed := io.Pipe()
	got, out := io.Pipe()
	done := make(chan int, 1)
	go func() {
		done <- run(context.Background(), []string{"ask"}, streams{in, out, io.Discard})
		out.Close()
	}()
	lines := bufio.NewReader(got)
	for _, q := range []string{"25 inHg on a 4x8", "what is a caul"} {
		if _, err := io.WriteString(feed, q+"\n"); err != nil {
			t.Fatal(err)
		}
		if line, err := lines.ReadString('\n'); err != nil || line == "" {
			t.Fatalf("after %q: %q, %v; want a reply", q, line, err)
		}
		go io.CopyN(io.Discard, lines, 0)
		for lines.Buffered() > 0 {
			if _, err := lines.ReadByte(); err != nil {
				t.Fatal(err)
			}
		}
	}
	feed.Close()
	go io.Copy(io.Discard, lines)
	if code := <-done; code != exitOK {
		t.Errorf("exit code %d, want %d", code, exitOK)
	}
}

func TestAsk_keepsInAStore(t *testing.T) {
	store := filepath.Join(t.TempDir(), "shop.db")
	in := `{"room":"a","thread":"1","from":"ana","text":"5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg"}`
	if code, _, errs := ran(t, in, "ask", "--json", "--in", "json", "--store", store); code != exitOK {
		t.Fatalf("exit code %d: %s", code, errs)
	}
	_, out, _ := ran(t, `{"room":"a","thread":"1","from":"ben","text":"make it oak"}`, "ask", "--json", "--in", "json", "--store", store)
	got := replies(t, out)
	if len(got) != 1 || got[0].Read["strip_count"] != 5.0 || got[0].Read["species"] != "red oak" {
		t.Errorf("after a restart the thread reads %v, want 5 strips of red oak", got)
	}
}

func TestAsk_picture(t *testing.T) {
	for name, begins := range map[string]string{"load.svg": "<svg", "load.png": "\x89PNG"} {
		file := filepath.Join(t.TempDir(), name)
		code, _, errs := ran(t, "", "ask", "--picture", file, "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg")
		if code != exitOK {
			t.Fatalf("%s: code %d, %s", name, code, errs)
		}
		data, err := os.ReadFile(file)
		if err != nil || !strings.Contains(string(data[:min(200, len(data))]), begins) {
			t.Errorf("%s holds %.40q (%v), want a drawing", name, data, err)
		}
	}
}

// What the name does not say is refused before anything is answered; what is
// no question of the trade is said by the exit code as ever.
func TestAsk_pictureRefused(t *testing.T) {
	for _, c := range []struct {
		file, question string
		code           int
		answered       bool
	}{
		{"load.gif", "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg", exitFailed, false},
		{"load.png", "what size breaker for a table saw", exitUnknown, true},
		{"load.png", "what is a caul", exitFailed, true},
	} {
		file := filepath.Join(t.TempDir(), c.file)
		for _, args := range [][]string{{"ask", "--picture", file, c.question}, {"ask", "--picture", file}} {
			code, out, _ := ran(t, c.question, args...)
			if want := c.code; len(args) == 4 && code != want || (out != "") != c.answered {
				t.Errorf("%s for %q: code %d, answered %q; want %d, answered: %v", c.file, c.question, code, out, want, c.answered)
			}
		}
		if _, err := os.Stat(file); err == nil {
			t.Errorf("%s is written for %q", c.file, c.question)
		}
	}
}

// A drawing takes the place of an earlier one whole or not at all.
func TestAsk_pictureReplaced(t *testing.T) {
	folder := t.TempDir()
	file, kept := filepath.Join(folder, "load.svg"), filepath.Join(folder, "kept.svg")
	if err := errors.Join(os.WriteFile(file, []byte("old"), 0o640), os.Link(file, kept)); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := ran(t, "", "ask", "--picture", file, "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg"); code != exitOK {
		t.Fatalf("code %d, %s", code, errs)
	}
	if old, err := os.ReadFile(kept); err != nil || string(old) != "old" {
		t.Errorf("the old file holds %.20q (%v): it was written over", old, err)
	}
	was, err := os.Stat(file)
	if err != nil || was.Mode().Perm() != 0o640 {
		t.Errorf("mode is %v (%v), want the old one's", was.Mode(), err)
	}
	names, err := filepath.Glob(filepath.Join(folder, ".*"))
	if err != nil || len(names) > 0 {
		t.Errorf("left beside it: %v (%v)", names, err)
	}
}

// The last drawing is that of the last answer that has one, however many have
// none or come before.
func TestAsk_pictureOfTheLast(t *testing.T) {
	const bar, strips = "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg\n", "got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide\n"
	for name, c := range map[string]struct{ in, title string }{
		"the later":       {bar + strips, "Strips"},
		"before words":    {strips + bar + strings.Repeat("what is a caul\n", 3), "section"},
		"before many":     {bar + strings.Repeat("how wide can I go with a 1 in bar\n", 2*maxSketches), "section"},
		"after very many": {strings.Repeat(bar, 2*maxSketches+1) + strips, "Strips"},
	} {
		file := filepath.Join(t.TempDir(), "load.svg")
		if code, _, errs := ran(t, c.in, "ask", "--picture", file); code != exitOK {
			t.Fatalf("%s: code %d, %s", name, code, errs)
		}
		data, err := os.ReadFile(file)
		title, _, _ := strings.Cut(string(data[strings.Index(string(data), "<title"):]), "</title>")
		if err != nil || !strings.Contains(title, c.title) {
			t.Errorf("%s: drawn is %q (%v), want %s", name, title, err, c.title)
		}
	}
}

func TestRun_failuresAreOneLine(t *testing.T) {
	file := filepath.Join(t.TempDir(), "note.txt")
	if err := os.WriteFile(file, []byte("this is not a store, only a note of some length\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"ask", "--nonsense"},
		{"ask", "--units", "cubits", "25 inHg"},
		{"ask", "--in", "xml"},
		{"ask", "--store", filepath.Join(t.TempDir(), "no", "such", "folder", "x.db"), "25 inHg"},
		{"ask", "--store", file, "25 inHg"},
		{"ask", "--picture", filepath.Join(t.TempDir(), "x.svg"), "what is a caul"},
		{"ask", "--picture", filepath.Join(t.TempDir(), "x.gif"), "5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg"},
	} {
		code, _, errs := ran(t, "", args...)
		if code == exitOK || strings.Count(errs, "\n") != 1 || !strings.HasPrefix(errs, "presshand: ") {
			t.Errorf("%v: code %d, stderr %q; want a failure in one line", args, code, errs)
		}
	}
}

func TestRun_version(t *testing.T) {
	code, out, _ := ran(t, "", "--version")
	if form := regexp.MustCompile(`^presshand \S+ \(commit \S+(, changed since)?, with(out)? Matrix encryption\)\n$`); code != exitOK || !form.MatchString(out) {
		t.Errorf("code %d, %q; want version and commit", code, out)
	}
}
