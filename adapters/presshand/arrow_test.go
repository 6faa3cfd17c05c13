package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The arrow rule, as DEVELOPERS.md tells it: which folders of ours the files of
// a folder may import. “x/...” stands for x and all below it. A folder that is
// not named here follows the nearest one above it that is.
var arrows = map[string][]string{
	"engine/unit":  {},
	"engine/wood":  {"engine/unit"},
	"engine/glue":  {"engine/unit"},
	"engine/press": {"engine/unit", "engine/wood", "engine/glue"},
	"engine/plan":  {"engine/unit", "engine/wood", "engine/glue", "engine/press"},
	"engine":       {"engine/..."},
	"grammar":      {"engine/unit", "engine/wood", "engine/glue"},
	"bot":          {"bot/...", "grammar", "engine/..."},
	// an adapter knows the bot and what is below, and itself
	"adapters":             {"bot/...", "grammar", "engine/..."},
	"adapters/sqlite":      {"bot/...", "engine/...", "adapters/sqlstore"}, // one schema under
	"adapters/postgres":    {"bot/...", "engine/...", "adapters/sqlstore"}, // both databases
	"adapters/adaptertest": {"bot/...", "engine/...", "adapters/sqlstore"}, // tests of every store
	"adapters/presshand":   {"adapters/...", "bot/...", "grammar", "engine/...", "testdata/talk"},
	"testdata/talk":        {},
}

// Which folders may import what was written elsewhere; a module that is not
// named here may be imported below adapters alone.
var foreign = map[string][]string{
	"github.com/alecthomas/participle": {"grammar"},
	"github.com/hbollon/go-edlib":      {"grammar", "adapters/presshand"},
	"github.com/go-fonts":              {"bot/picture"},
	"golang.org/x/image":               {"bot/picture"},
	"golang.org/x/tools/txtar":         {"bot/bottest"},
	"gonum.org":                        {"engine"},
	"github.com/slack-go":              {"adapters/slack"},
	"maunium.net/go/mautrix":           {"adapters/matrix"},
	"go.mau.fi/util":                   {"adapters/matrix"},
	"github.com/rs/zerolog":            {"adapters/matrix"},
	"github.com/jackc/pgx":             {"adapters/postgres", "adapters/matrix"},
	"modernc.org/sqlite":               {"adapters/sqlite", "adapters/matrix"},
	"github.com/pressly/goose":         {"adapters/sqlstore", "adapters/sqlite", "adapters/postgres"},
	"github.com/prometheus":            {"adapters/health"},
	"github.com/alecthomas/kong":       {"adapters/presshand"},
	"github.com/BurntSushi/toml":       {"adapters/presshand"},
}

// A pure engine has no use for these: no clock, no file, no log, no chance.
var impure = []string{"context", "time", "os", "io/ioutil", "log", "log/slog", "math/rand", "math/rand/v2", "crypto/rand", "net", "net/http"}

// root is the top of the repository as seen from here.
const root = "../.."

func TestArrows_pointDown(t *testing.T) {
	seen := map[string]int{}
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return err
		}
		below, err := filepath.Rel(root, file)
		if err != nil {
			return err
		}
		folder := path.Dir(filepath.ToSlash(below))
		seen[folder]++
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range parsed.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			if !mayImport(folder, name) {
				t.Errorf("%s imports %s", below, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for folder := range arrows {
		if folder != "adapters" && seen[folder] == 0 {
			t.Errorf("%s: no files", folder)
		}
	}
}

func mayImport(folder, name string) bool {
	if ours, isOurs := strings.CutPrefix(name, "presshand/"); isOurs {
		return within(ours, folder+"/...") && strings.HasPrefix(folder, "adapters/") || slices.ContainsFunc(rule(folder), func(allowed string) bool { return within(ours, allowed) })
	}
	if first, _, _ := strings.Cut(name, "/"); !strings.Contains(first, ".") {
		return !within(folder, "engine/...") || !slices.Contains(impure, name)
	}
	for module, folders := range foreign {
		if within(name, module+"/...") {
			return slices.ContainsFunc(folders, func(f string) bool { return within(folder, f+"/...") })
		}
	}
	return within(folder, "adapters/...")
}

// rule is that of the folder, or of the nearest above it.
func rule(folder string) []string {
	for ; folder != "."; folder = path.Dir(folder) {
		if allowed, ok := arrows[folder]; ok {
			return allowed
		}
	}
	return nil
}

// within reports whether a path is the pattern, or below one that ends in /...
func within(p, pattern string) bool {
	above, all := strings.CutSuffix(pattern, "/...")
	return p == above || all && strings.HasPrefix(p, above+"/")
}

// A rule that lets everything pass guards nothing.
func TestArrows_findFaults(t *testing.T) {
	for _, c := range [][2]string{
		{"engine/unit", "presshand/engine/press"},
		{"engine/press", "presshand/bot"},
		{"engine/press", "presshand/engine/plan"},
		{"engine", "time"},
		{"engine/plan", "math/rand/v2"},
		{"engine", "github.com/slack-go/slack"},
		{"grammar", "presshand/engine"},
		{"grammar", "presshand/engine/press"},
		{"grammar", "presshand/bot"},
		{"bot", "presshand/adapters/sqlite"},
		{"bot", "github.com/alecthomas/participle/v2"},
		{"bot/desk", "maunium.net/go/mautrix"},
		{"adapters/slack", "presshand/adapters/matrix"},
		{"adapters/slack", "maunium.net/go/mautrix/event"},
		{"adapters/matrix", "github.com/slack-go/slack"},
		{"adapters/terminal", "presshand/adapters/presshand"},
		{"adapters/terminal", "presshand/adapters/sqlstore"},
		{"elsewhere", "presshand/bot"},
	} {
		if mayImport(c[0], c[1]) {
			t.Errorf("%s may import %s, want not", c[0], c[1])
		}
	}
	for _, c := range [][2]string{
		{"engine/press", "math"},
		{"engine", "presshand/engine/plan"},
		{"bot/desk", "presshand/bot/book"},
		{"adapters/slack", "presshand/adapters/slack/slackfake"},
		{"adapters/matrix/homeserver", "maunium.net/go/mautrix"},
	} {
		if !mayImport(c[0], c[1]) {
			t.Errorf("%s may not import %s, want it to", c[0], c[1])
		}
	}
}
