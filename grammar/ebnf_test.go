package grammar

import (
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// MessageTree is the tree as its tags declare it, without the method that reads it.
type MessageTree messageTree

var declared = participle.MustBuild[MessageTree](participle.Lexer(definition{}), participle.UseLookahead(1))

// The grammar that the package's documentation shows is the declared one.
func TestDoc_ebnf(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(declared.String(), "\n") {
		if !strings.Contains(string(doc), "//\t"+line+"\n") {
			t.Errorf("doc.go lacks %q", line)
		}
	}
}

// Every run of up to six symbols is read as the declared grammar reads it.
func TestMessageTree_asDeclared(t *testing.T) {
	const longest = 6
	symbols := []lexer.TokenType{symMinus, symInt, symFraction, symNumber, symUnit, symLink}
	taken, refused := 0, 0
	var grow func(run symbolRun)
	grow = func(run symbolRun) {
		want, wrong := declared.ParseFromLexer(run.peek(t))
		got, err := parser.ParseFromLexer(run.peek(t))
		switch {
		case (err == nil) != (wrong == nil):
			t.Fatalf("%v: %v, declared: %v", run, err, wrong)
		case err != nil:
			refused++
		case !reflect.DeepEqual((*messageTree)(want), got):
			t.Fatalf("%v: %+v, declared: %+v", run, got, want)
		default:
			taken++
		}
		for _, s := range symbols {
			if len(run) < longest {
				grow(append(run[:len(run):len(run)], s))
			}
		}
	}
	grow(nil)
	if taken < 1000 || refused < 1000 {
		t.Errorf("%d runs were read and %d refused", taken, refused)
	}
}

// A symbolRun is fed to a parser as it stands.
type symbolRun []lexer.TokenType

func (run symbolRun) peek(t *testing.T) *lexer.PeekingLexer {
	t.Helper()
	l, err := lexer.Upgrade(&symbolFeed{run: run})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

type symbolFeed struct {
	run symbolRun
	at  int
}

func (f *symbolFeed) Next() (lexer.Token, error) {
	pos := lexer.Position{Offset: f.at}
	if f.at == len(f.run) {
		return lexer.EOFToken(pos), nil
	}
	f.at++
	return lexer.Token{Type: f.run[f.at-1], Value: string(rune('a' + f.at)), Pos: pos}, nil
}
