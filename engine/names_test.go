package engine_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Every reason and every caution is a name of words and hyphens, its own, with a
// comment, and given somewhere.
func TestNames_reasonsAndCautions(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("no files (%v)", err)
	}
	declared, uses, values := map[string]bool{}, map[string]int{}, map[string]string{}
	kebab := regexp.MustCompile(`^[a-z]+(-[a-z0-9]+)*$`)
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.Ident:
				uses[n.Name]++
			case *ast.ValueSpec:
				kind, ok := n.Type.(*ast.Ident)
				if !ok || kind.Name != "Reason" && kind.Name != "Caution" || len(n.Values) == 0 {
					return true
				}
				id := n.Names[0].Name
				text, _ := strconv.Unquote(n.Values[0].(*ast.BasicLit).Value)
				if !strings.HasPrefix(n.Doc.Text(), id+": ") {
					t.Errorf("%s has no comment that begins with its name", id)
				}
				if !kebab.MatchString(text) || values[text] != "" {
					t.Errorf("%s is %q, want words and hyphens of its own (%s)", id, text, values[text])
				}
				declared[id], values[text] = true, id
			}
			return true
		})
	}
	if len(declared) < 60 {
		t.Fatalf("%d reasons and cautions found, want 60 or more", len(declared))
	}
	for id := range declared {
		if uses[id] < 2 {
			t.Errorf("%s is never given", id)
		}
	}
}
