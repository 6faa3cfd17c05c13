package grammar

import (
	"os"
	"strings"
	"testing"
)

// The grammar that the package's documentation shows is the parser's own.
func TestDoc_ebnf(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(parser.String(), "\n") {
		if !strings.Contains(string(doc), "//\t"+line+"\n") {
			t.Errorf("doc.go lacks %q", line)
		}
	}
}
