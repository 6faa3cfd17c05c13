package main

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
)

func configured(t *testing.T, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "shop.toml")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

// The sample loads, and shows every key there is: those that are commented out
// are taken in too.
func TestConfig_sampleHasEveryKey(t *testing.T) {
	if _, err := readConfig("presshand.toml"); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("presshand.toml")
	if err != nil {
		t.Fatal(err)
	}
	var c config
	meta, err := toml.Decode(string(text), &c)
	if err != nil {
		t.Fatal(err)
	}
	shown := map[string]bool{}
	for _, k := range meta.Keys() {
		shown[k.String()] = true
	}
	table := ""
	for line := range strings.Lines(string(text)) {
		if name, ok := strings.CutPrefix(line, "["); ok {
			table = strings.TrimRight(strings.TrimSpace(name), "]") + "."
		}
		if rest, ok := strings.CutPrefix(line, "# "); ok {
			if key, _, ok := strings.Cut(rest, " = "); ok && !strings.Contains(key, " ") {
				shown[table+key] = true
			}
		}
	}
	for _, want := range everyKey(reflect.TypeFor[config](), "") {
		if !shown[want] {
			t.Errorf("sample lacks %s", want)
		}
	}
}

func everyKey(t reflect.Type, above string) []string {
	var out []string
	for name, f := range fields(t) {
		if f.Kind() == reflect.Pointer && f.Elem().Kind() == reflect.Struct {
			f = f.Elem()
		}
		switch {
		case f == reflect.TypeFor[map[string]room]():
			out = append(out, everyKey(f.Elem(), `rooms.C0TOPS4567.`)...)
		case f.Kind() == reflect.Struct:
			out = append(out, everyKey(f, above+name+".")...)
		default:
			out = append(out, above+name)
		}
	}
	return out
}

// What the set-up page of Matrix has one write is a configuration.
func TestConfig_matrixSetupPage(t *testing.T) {
	var text strings.Builder
	for _, block := range regexp.MustCompile("(?s)```toml\n(.*?)```").FindAllStringSubmatch(readText(t, root+"/adapters/matrix/SETUP.md"), -1) {
		text.WriteString(block[1])
	}
	c, err := readConfig(configured(t, text.String()))
	if err != nil {
		t.Fatal(err)
	}
	if !c.matrix() || c.Store == "" || c.Matrix.Store == "" || c.Matrix.Password == "" || c.Matrix.RecoveryKey == "" {
		t.Errorf("page comes to %+v, want a store and an account", c.Matrix)
	}
}

// What the sample says of defaults is so: read without it the values are the
// same. It names the time zone and the lists for show.
func TestConfig_sampleShowsTheDefaults(t *testing.T) {
	sample, err := readConfig("presshand.toml")
	if err != nil {
		t.Fatal(err)
	}
	c := usual()
	got, want := sample.rules().in("elsewhere"), c.rules().in("elsewhere")
	got.Zone = nil
	if !reflect.DeepEqual(got, want) {
		t.Errorf("room of the sample is %+v, want the default %+v", got, want)
	}
	if sample.KeepMessages != c.KeepMessages || sample.CatchUp != c.CatchUp || sample.Crowd != c.Crowd || sample.Listen != c.Listen || sample.Log != c.Log {
		t.Errorf("sample is %+v, want the default %+v", sample, c)
	}
	if time.Duration(c.KeepMessages) != 90*24*time.Hour || c.Crowd != 20 {
		t.Errorf("messages are kept %v and %d are answered a minute, want 90 days and 20", time.Duration(c.KeepMessages), c.Crowd)
	}
}

func TestConfig_refuses(t *testing.T) {
	for text, want := range map[string]string{
		"unit = \"inch\"":                                     "unit is no key: did you mean units?",
		"stroe = \"x\"":                                       "did you mean store?",
		"[slack]\nbot_token = \"x\"":                          "the keys of slack are",
		"[slack]\nbot_tokenfile = \"x\"":                      "did you mean slack.bot_token_file?",
		"[matrix]\nhomserver = \"x\"":                         "did you mean matrix.homeserver?",
		"[rooms.C01]\nown_chek = true":                        "did you mean rooms.C01.own_check?",
		"[mtrix]\nuser = \"x\"":                               "did you mean matrix?",
		"qwertyuiop = 1":                                      "the keys outside the tables are",
		"units = \"cubits\"":                                  "want inch or metric",
		"[rooms.C01]\nzone = \"Middle/Earth\"":                `rooms."C01": zone is "Middle/Earth"`,
		"prefix = [\"press,\"]":                               "want words without",
		"keep_messages = \"long\"":                            "want a time like 90d",
		"catch_up = \"-1h\"":                                  "must not be negative",
		"messages_a_minute = 0":                               "want 1 or more",
		"[log]\nlevel = \"loud\"":                             "want debug, info, warn or error",
		"[log]\nformat = \"xml\"":                             "want text or json",
		"[people]\nana = [\"U1\"]\nben = [\"U1\"]":            "under two names",
		"store = \"a\"\nstore_file = \"b\"":                   "want one",
		"store = ":                                            "line 1",
		"[slack]\nenabled = true\nxyzzyxyzzyxyzzy.deep = 1\n": "is no key",
	} {
		_, err := readConfig(configured(t, text))
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v\nwant one line with %q", text, err, want)
		}
	}
	if _, err := readConfig(filepath.Join(t.TempDir(), "none.toml")); err == nil {
		t.Error("a file that is not there was read")
	}
}

// A value of a wrong type is told by its line and key, with what is wanted.
func TestConfig_refusesTypes(t *testing.T) {
	for text, want := range map[string]string{
		"\nprefix = \"press\"":                     `line 2: prefix is a text, want a list of texts: write it like prefix = ["press"]`,
		"[slack]\nallow = \"C01\"":                 `line 2: slack.allow is a text, want a list of texts: write it like allow = ["…", "…"]`,
		"[matrix]\n\nallow = [\"a.org\", 1]":       `line 3: matrix.allow is a list with something other than texts in it, want a list of texts: write it like allow = ["example.org"]`,
		"[matrix]\nuser = [\"@press:a.org\"]":      `line 2: matrix.user is a list, want a text in quotes: write it like user = "@presshand:example.org"`,
		"messages_a_minute = \"20\"":               `line 1: messages_a_minute is a text, want a number, without quotes: write it like messages_a_minute = 20`,
		"own_check = \"no\"":                       `line 1: own_check is a text, want true or false, without quotes: write it like own_check = false`,
		"store = 1.5":                              `line 1: store is a number, want a text in quotes: write it like store = "/var/lib/presshand/presshand.db"`,
		"units = true":                             `line 1: units is true or false, want a text in quotes: write it like units = "inch"`,
		"keep_messages = [\"90d\"]":                `line 1: keep_messages is a list, want a time in quotes: write it like keep_messages = "90d"`,
		"keep_messages = 90":                       `line 1: keep_messages: got "90", want a time like 90d or 12h`,
		"[people]\nana = \"U1\"":                   `line 2: people.ana is a text, want a list of texts: write it like ana = ["U0A1B2C3D", "@ana:example.org"]`,
		"[rooms.\"!a:b.org\"]\ncheckers = \"ana\"": `line 2: rooms."!a:b.org".checkers is a text, want a list of texts`,
		"slack = true":                             `line 1: slack is true or false, want a table: write it like [slack], with its keys`,
		"people = 1":                               `people is a number, want a table`,
	} {
		_, err := readConfig(configured(t, text))
		if err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v\nwant one line with %q", text, err, want)
		}
	}
}

func TestConfig_rooms(t *testing.T) {
	c, err := readConfig(configured(t, `
units = "metric"
prefix = ["press"]
checkers = ["U1", "@ben:x.org"]
[people]
ana = ["U1", "@ana:x.org"]
[rooms.C01]
units = "inch"
zone = "America/New_York"
prefix = []
pictures = false
checkers = []
own_check = true
[slack]
allow = ["C01"]
`))
	if err != nil {
		t.Fatal(err)
	}
	r := c.rules()
	every, own := r.in("C02"), r.in("C01")
	if !every.Metric || own.Metric || own.Zone.String() != "America/New_York" || !every.pictures || own.pictures || !own.Policy.OwnCheck {
		t.Errorf("settings are %+v and %+v", every, own)
	}
	if got := every.Policy.Checkers; len(got) != 2 || got[0] != "ana" || got[1] != "@ben:x.org" {
		t.Errorf("checkers are %q, want ana, who is U1, and @ben:x.org", got)
	}
	if len(own.Policy.Checkers) != 0 || len(r.prefixes("C01")) != 0 {
		t.Errorf("room has checkers %q and prefixes %q, want none", own.Policy.Checkers, r.prefixes("C01"))
	}
	if got := r.prefixes("C02"); len(got) != 2 || got[0] != "press," || got[1] != "press:" {
		t.Errorf("prefixes are %q", got)
	}
	for id, want := range map[string]string{"U1": "ana", "@ana:x.org": "ana", "U2": "U2"} {
		if got := r.person(id, "").ID; got != want {
			t.Errorf("%s is %q, want %q", id, got, want)
		}
	}
	for room, want := range map[string]bool{"C01": true, "C02": false, "D07": true} {
		if got := r.served(room); got != want {
			t.Errorf("%s is served: %v, want %v", room, got, want)
		}
	}
}

func TestSecret_fromFileOrEnvironment(t *testing.T) {
	t.Setenv("PRESSHAND_TEST_SECRET", " from the environment\n")
	dir := t.TempDir()
	t.Setenv("PRESSHAND_TEST_FOLDER", dir)
	for name, text := range map[string]string{"full": "from a file\n", "empty": " \n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for file, want := range map[string]string{"": "from the environment", "$PRESSHAND_TEST_FOLDER/full": "from a file"} {
		if got, err := secret("PRESSHAND_TEST_SECRET", file); err != nil || got != want {
			t.Errorf("%q: %q, %v; want %q", file, got, err, want)
		}
	}
	for _, file := range []string{"$PRESSHAND_TEST_FOLDER/empty", "$PRESSHAND_TEST_FOLDER/none"} {
		if got, err := secret("PRESSHAND_TEST_SECRET", file); err == nil {
			t.Errorf("%q: %q, want an error", file, got)
		}
	}
	if _, err := needed("token", "PRESSHAND_TEST_NOT_SET", ""); err == nil || !strings.Contains(err.Error(), "PRESSHAND_TEST_NOT_SET") {
		t.Errorf("a token that is nowhere: %v, want the variable's name", err)
	}
}
