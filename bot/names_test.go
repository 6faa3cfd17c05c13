package bot

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"strconv"
	"testing"

	"presshand/engine/unit"
	"presshand/grammar"
)

// fields returns the fields of one block of constants.
func fields(t *testing.T, block int) []unit.Field {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "../engine/unit/field.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var out []unit.Field
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		if block--; block != -1 {
			continue
		}
		for _, s := range g.Specs {
			for _, v := range s.(*ast.ValueSpec).Values {
				text, err := strconv.Unquote(v.(*ast.BasicLit).Value)
				if err != nil {
					t.Fatal(err)
				}
				out = append(out, unit.Field(text))
			}
		}
	}
	if len(out) == 0 {
		t.Fatal("found no fields, want some")
	}
	return out
}

// What a message can say must be said back.
func TestSaid_everyField(t *testing.T) {
	for _, f := range append(fields(t, 0), unit.Wished...) {
		switch f {
		case unit.SolveFor, unit.Goal, unit.CompareWith, unit.Note, unit.Measured: // told in other words
			continue
		}
		if said[f] == "" {
			t.Errorf("%s has no words to read it back", f)
		}
	}
}

func TestDangers_everyPeril(t *testing.T) {
	text, err := os.ReadFile("../grammar/perils.go")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`kindPeril, "([^"]+)"`).FindAllSubmatch(text, -1)
	if len(found) == 0 {
		t.Fatal("found no perils, want some")
	}
	for _, m := range found {
		if _, ok := dangers[grammar.Peril(m[1])]; !ok {
			t.Errorf("peril %q has no answer", m[1])
		}
	}
}
