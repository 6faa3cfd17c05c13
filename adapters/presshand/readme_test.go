package main

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"presshand/bot"
	"presshand/bot/bottest"
	"presshand/testdata/talk"
)

var update = flag.Bool("update", false, "write what the bot says now into README.md")

const readme = root + "/README.md"

func readText(t *testing.T, file string) string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var (
	conversation = regexp.MustCompile("(?s)(<!-- scene: ([a-z-]+) -->\n```\n)(.*?)(\n```\n)")
	somebodySays = regexp.MustCompile(`(?m)^(\d\d:\d\d) (\w+): (.*)$`)
)

// The conversation in the README is a scene of testdata/talk, some turns of it
// left out, and each reply is what the bot says now.
func TestReadme_conversation(t *testing.T) {
	text := readText(t, readme)
	found := conversation.FindStringSubmatch(text)
	if found == nil {
		t.Fatal("README has no conversation")
	}
	said := somebodySays.FindAllString(found[3], -1)
	if len(said) < 3 {
		t.Fatalf("conversation has %d turns, want 3 or more", len(said))
	}
	want := strings.Join(retold(t, found[2], said), "\n\n")
	if found[3] == want {
		return
	}
	if !*update {
		t.Fatalf("conversation is not what the bot says; “go test -tags goolm ./adapters/presshand -run Readme -update” writes\n%s", want)
	}
	if err := os.WriteFile(readme, []byte(strings.Replace(text, found[3], want, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
}

// retold plays a scene and returns some turns of it with their replies.
func retold(t *testing.T, name string, said []string) []string {
	t.Helper()
	text, err := talk.Scenes.ReadFile(name + ".txtar")
	if err != nil {
		t.Fatal(err)
	}
	scene, err := bottest.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	err = bottest.Perform(t.Context(), scene, func(turn bottest.Turn, r bot.Reply) error {
		line := turn.Message.At.Format("15:04") + " " + turn.Message.From + ": " + turn.Message.Text
		if len(out) < len(said) && line == said[len(out)] {
			out = append(out, line+"\n"+indented(shortened(r.Text)))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) != len(said) {
		t.Fatalf("scene %s does not have %q", name, said[len(out)])
	}
	return out
}

// shortened leaves the middle of a long reply out: two lines at its start and
// what it was read as stay.
func shortened(text string) string {
	lines := strings.Split(text, "\n")
	if len(lines) <= 4 {
		return text
	}
	out := append(lines[:2:2], "…")
	for _, l := range lines[2:] {
		if strings.HasPrefix(l, "Read as ") {
			out = append(out, l, "…")
		}
	}
	return strings.Join(out, "\n")
}

var row = regexp.MustCompile(`(?m)^\| [^|]+ \| ([^|]+) \|$`)

// Each example under “What to ask” is answered, with nothing left unread and
// nothing asked back.
func TestReadme_examples(t *testing.T) {
	_, section, found := strings.Cut(readText(t, readme), "\n## What to ask\n")
	section, _, ended := strings.Cut(section, "\n## ")
	if !found || !ended {
		t.Fatal("README has no section “What to ask”")
	}
	rows := row.FindAllStringSubmatch(section, -1)
	if len(rows) < 10 {
		t.Fatalf("README has %d examples, want 10 or more", len(rows))
	}
	for _, r := range rows[1:] { // the first is the table's head
		tried(t, r[1])
	}
	for _, q := range regexp.MustCompile(`“([^”]+)”`).FindAllStringSubmatch(section, -1) {
		said := strings.Join(strings.Fields(q[1]), " ")
		tried(t, "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue", said)
	}
}

// What the set-up pages and Slack's own hint show is answered too, in the units
// that it is written in.
func TestSetUp_examples(t *testing.T) {
	for file, shown := range map[string]string{
		"adapters/slack/SETUP.md": `(?m)^> (.+)$`, "adapters/matrix/SETUP.md": `(?m)^> (.+)$`, "adapters/slack/manifest.yaml": `usage_hint: "help \| (.+)"`,
	} {
		found := regexp.MustCompile(shown).FindAllStringSubmatch(readText(t, filepath.Join(root, file)), -1)
		if len(found) == 0 {
			t.Errorf("%s shows nothing to ask", file)
		}
		for _, m := range found {
			units := "inch"
			if regexp.MustCompile(`\b(mm|kPa|mbar)\b`).MatchString(m[1]) {
				units = "metric"
			}
			triedIn(t, units, m[1])
		}
	}
}

func tried(t *testing.T, texts ...string) {
	t.Helper()
	triedIn(t, "inch", texts...)
}

// triedIn has the bot answer messages in a thread, in a shop's units, and looks at the last reply.
func triedIn(t *testing.T, units string, texts ...string) {
	t.Helper()
	_, out, errs := ran(t, strings.Join(texts, "\n"), "ask", "--json", "--thread", "--units", units)
	all := replies(t, out)
	if errs != "" || len(all) != len(texts) {
		t.Fatalf("%q: %d replies, %s", texts, len(all), errs)
	}
	r := all[len(all)-1]
	if r.About == "unknown" || r.Verdict == "ask" || len(r.Needs) > 0 || strings.Contains(out[strings.LastIndex(out, `"about"`):], `"unused":["`) {
		t.Errorf("%q: about %s, verdict %s, needs %v: %s", texts, r.About, r.Verdict, r.Needs, r.Text)
	}
}

// Each command line that the README shows runs, but for those that serve or
// need a file that is not there.
func TestReadme_commandLines(t *testing.T) {
	text := readText(t, readme)
	t.Chdir(t.TempDir())
	count := 0
	for _, line := range regexp.MustCompile(`(?m)^presshand (ask .*)$`).FindAllStringSubmatch(text, -1) {
		count++
		if code, out, errs := ran(t, "", words(line[1])...); code != exitOK || out == "" {
			t.Errorf("%s: code %d, %s", line[0], code, errs)
		}
	}
	if count < 3 {
		t.Errorf("README shows %d command lines, want 3 or more", count)
	}
}

// words splits a command line as a shell does, as far as the README needs it.
func words(line string) []string {
	var out []string
	for _, w := range regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(line, -1) {
		out = append(out, strings.Trim(w, `"`))
	}
	return out
}

// Each command that the program has is in the README, and each in the README
// is there.
func TestReadme_commands(t *testing.T) {
	_, help, _ := ran(t, "", "--help")
	text := readText(t, readme)
	names := regexp.MustCompile(`(?m)^  ([a-z][a-z-]+) .*\[`).FindAllStringSubmatch(help, -1)
	if len(names) < 10 {
		t.Fatalf("help shows %d commands, want 10 or more:\n%s", len(names), help)
	}
	for _, n := range names {
		if n[1] != "chat" && !strings.Contains(text, "| `presshand "+n[1]) {
			t.Errorf("README lacks the command %s", n[1])
		}
	}
	for _, m := range regexp.MustCompile("(?m)^\\| `presshand ([a-z][a-z-]+)").FindAllStringSubmatch(text, -1) {
		if !strings.Contains(help, "\n  "+m[1]+" ") {
			t.Errorf("README has %s, which is no command", m[1])
		}
	}
}

// What the documents link to is there.
func TestReadme_links(t *testing.T) {
	for _, file := range []string{"README.md", "DEVELOPERS.md", "adapters/slack/SETUP.md", "adapters/matrix/SETUP.md"} {
		for _, m := range regexp.MustCompile(`\]\(([^)#:]+)\)`).FindAllStringSubmatch(readText(t, filepath.Join(root, file)), -1) {
			if _, err := os.Stat(filepath.Join(root, filepath.Dir(file), m[1])); err != nil {
				t.Errorf("%s links to %s: %v", file, m[1], err)
			}
		}
	}
}

// Every module that the program is built from stands in DEVELOPERS.md with its
// licence.
func TestDevelopers_namesModules(t *testing.T) {
	mod, text := readText(t, root+"/go.mod"), readText(t, root+"/DEVELOPERS.md")
	modules := regexp.MustCompile(`(?m)^\t(\S+) v\S+`).FindAllStringSubmatch(mod, -1)
	if len(modules) < 20 {
		t.Fatalf("go.mod has %d modules, want 20 or more", len(modules))
	}
	for _, m := range modules {
		if !strings.Contains(text, "| "+m[1]+" |") {
			t.Errorf("DEVELOPERS.md lacks %s", m[1])
		}
	}
}
