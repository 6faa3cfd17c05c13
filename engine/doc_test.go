package engine_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
)

// lookups are exported functions that look something up in a table; they need a
// comment, but have no formula.
var lookups = map[string]bool{
	"wood.Find": true, "wood.Names": true, "wood.All": true, "wood.Default": true, "wood.IsLoose": true,
	"glue.Find": true, "glue.Names": true, "glue.All": true,
	"glue.Contact": true, "glue.HangsOnWood": true, "glue.Starved": true, "glue.FilmFactor": true,
	"wood.Spread": true,
}

// Every exported function of the formulas says what it means, the formula, the
// symbols with their units, the model, what it is valid for and its source; and
// an example shows it. A look-up says what it means.
func TestFormulas_documented(t *testing.T) {
	for dir, least := range map[string]int{"press": 25, "wood": 2, "glue": 4} {
		functions, examples := exported(t, dir)
		if len(functions) < least {
			t.Errorf("%s: %d exported functions found, want %d or more", dir, len(functions), least)
		}
		for _, f := range functions {
			name := dir + "." + f.Name.Name
			for _, fault := range faults(f, lookups[name]) {
				t.Errorf("%s: %s", name, fault)
			}
			if !examples[f.Name.Name] && !lookups[name] {
				t.Errorf("%s: no example", name)
			}
		}
	}
}

// The check itself must find faults.
func TestFormulas_checkFindsFaults(t *testing.T) {
	const bare = "package p\n\n// F does it.\nfunc F(x float64) float64 { return x }\nfunc G() {}\n"
	file, err := parser.ParseFile(token.NewFileSet(), "p.go", bare, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range file.Decls {
		f := d.(*ast.FuncDecl)
		if got := faults(f, false); len(got) == 0 {
			t.Errorf("%s has no faults, want some", f.Name.Name)
		}
	}
}

// exported returns a folder's exported functions and the names that its examples
// show.
func exported(t *testing.T, dir string) (functions []*ast.FuncDecl, examples map[string]bool) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: no files (%v)", dir, err)
	}
	examples = map[string]bool{}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, text, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			if shown, ok := strings.CutPrefix(f.Name.Name, "Example"); ok && strings.HasSuffix(name, "_test.go") {
				shown, _, _ = strings.Cut(shown, "_")
				examples[shown] = true
			}
			if f.Recv == nil && f.Name.IsExported() && !strings.HasSuffix(name, "_test.go") {
				functions = append(functions, f)
			}
		}
	}
	return functions, examples
}

// faults returns what a function's comment lacks.
func faults(f *ast.FuncDecl, lookup bool) (out []string) {
	doc := f.Doc.Text()
	if !strings.HasPrefix(doc, f.Name.Name+" ") {
		return []string{"the comment does not begin with the name"}
	}
	if lookup {
		return nil
	}
	formula, symbols := blocks(doc)
	if !strings.ContainsAny(formula, "=<") {
		out = append(out, "no formula")
	}
	if symbols == "" {
		out = append(out, "no symbols with units")
	}
	for _, part := range []string{"Model: ", "Valid ", "Source: "} {
		if !strings.Contains(doc, "\n"+part) {
			out = append(out, "no "+strings.TrimSpace(part))
		}
	}
	for _, p := range symbolsOf(f) {
		if !mentions(doc, p) {
			out = append(out, "parameter "+p+" is not explained")
		}
	}
	return out
}

// blocks returns the first and the second block of indented lines.
func blocks(doc string) (formula, symbols string) {
	var all []string
	open := false
	for _, line := range strings.Split(doc, "\n") {
		indented := strings.HasPrefix(line, "\t")
		switch {
		case indented && open:
			all[len(all)-1] += "\n" + line
		case indented:
			all = append(all, line)
		}
		open = indented
	}
	if len(all) < 2 {
		return strings.Join(all, ""), ""
	}
	return all[0], all[1]
}

// symbolsOf returns the parameters that are quantities: those of package unit and
// plain numbers.
func symbolsOf(f *ast.FuncDecl) (names []string) {
	for _, field := range f.Type.Params.List {
		kind := field.Type
		if s, ok := kind.(*ast.SelectorExpr); ok {
			if pkg, ok := s.X.(*ast.Ident); !ok || pkg.Name != "unit" {
				continue
			}
		} else if id, ok := kind.(*ast.Ident); !ok || id.Name != "float64" {
			continue
		}
		for _, n := range field.Names {
			names = append(names, n.Name)
		}
	}
	return names
}

// mentions reports whether a text has a symbol as a word, alone or as an index:
// A_sled explains sled, E⊥ explains E; a long name may be there in words.
func mentions(doc, symbol string) bool {
	var spaced strings.Builder
	for _, r := range symbol {
		if unicode.IsUpper(r) {
			spaced.WriteByte(' ')
		}
		spaced.WriteRune(unicode.ToLower(r))
	}
	if phrase := spaced.String(); strings.Contains(phrase, " ") && strings.Contains(doc, strings.TrimSpace(phrase)) && len(symbol) > 1 {
		return true
	}
	words := strings.FieldsFunc(doc, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_'
	})
	for _, w := range words {
		if w == symbol || strings.HasSuffix(w, "_"+symbol) {
			return true
		}
	}
	return false
}
