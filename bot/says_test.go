package bot

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"presshand/engine"
)

// constants returns the values of the engine's string constants of a type.
func constants(t *testing.T, typeName string) []string {
	t.Helper()
	files, err := filepath.Glob("../engine/*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("found %d files of the engine (%v), want some", len(files), err)
	}
	var out []string
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok {
				return true
			}
			if id, ok := spec.Type.(*ast.Ident); !ok || id.Name != typeName {
				return true
			}
			for _, v := range spec.Values {
				if lit, ok := v.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					text, err := strconv.Unquote(lit.Value)
					if err != nil {
						t.Fatal(err)
					}
					out = append(out, text)
				}
			}
			return true
		})
	}
	if len(out) == 0 {
		t.Fatalf("found no constants of type %s, want some", typeName)
	}
	return out
}

func TestReasonSays_everyReason(t *testing.T) {
	for _, r := range constants(t, "Reason") {
		says := reasonSays[engine.Reason(r)]
		if says == "" {
			t.Errorf("reason %q has no sentence", r)
		}
		sentenceOK(t, r, says)
	}
}

func TestCautionSays_everyCaution(t *testing.T) {
	for _, c := range constants(t, "Caution") {
		says := cautionSays[engine.Caution(c)]
		if says == "" {
			t.Errorf("caution %q has no sentence", c)
		}
		sentenceOK(t, c, says)
	}
}

// sentenceOK wants a sentence to end like one and its brackets to pair up.
func sentenceOK(t *testing.T, name, says string) {
	t.Helper()
	if says != "" && !strings.HasSuffix(strings.TrimSuffix(says, "]"), ".") {
		t.Errorf("%s says %q, want a full stop at the end", name, says)
	}
	for _, pair := range []string{"{}", "[]"} {
		if strings.Count(says, pair[:1]) != strings.Count(says, pair[1:]) {
			t.Errorf("%s says %q, want %s in pairs", name, says, pair)
		}
	}
}
