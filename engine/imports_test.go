package engine_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// below says which packages of ours each folder of the engine may import.
var below = map[string][]string{
	"unit": {}, "wood": {"unit"}, "glue": {"unit"}, "press": {"unit", "wood", "glue"},
	"plan": {"unit", "wood", "glue", "press"}, ".": {"unit", "wood", "glue", "press", "plan"},
}

// outside are packages that a pure engine has no use for.
var outside = []string{"context", "time", "os", "log", "log/slog", "math/rand", "math/rand/v2", "crypto/rand", "net", "net/http", "io/ioutil"}

// The engine's folders import downwards only, and nothing that reads a clock, a
// file, a log or chance.
func TestImports_pointDown(t *testing.T) {
	seen := map[string]int{}
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		folder := filepath.Dir(path)
		seen[folder]++
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			if !allowed(folder, name) {
				t.Errorf("%s imports %s", path, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for folder := range below {
		if seen[folder] == 0 {
			t.Errorf("%s: no files", folder)
		}
	}
}

func allowed(folder, name string) bool {
	for _, bad := range outside {
		if name == bad {
			return false
		}
	}
	ours, isOurs := strings.CutPrefix(name, "presshand/engine/")
	if !isOurs {
		return !strings.HasPrefix(name, "presshand/")
	}
	for _, ok := range below[folder] {
		if ours == ok {
			return true
		}
	}
	return false
}

func TestImports_checkFindsFaults(t *testing.T) {
	for folder, name := range map[string]string{"unit": "presshand/engine/press", "press": "presshand/bot", ".": "time"} {
		if allowed(folder, name) {
			t.Errorf("%s may import %s, want not", folder, name)
		}
	}
}
