package grammar

import (
	"io"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The tree of a message: measures among words. A message may hold anything, so
// every token has a place; what a measure is of is decided afterwards.
type (
	messageTree struct {
		Pieces []*pieceTree `parser:"@@*"`
	}
	pieceTree struct {
		Pos     lexer.Position
		Measure *measureTree `parser:"  @@"`
		Other   string       `parser:"| @( Term | Word | Unit | Comma | Break | Slash | Mark | At | Minus | Times | To | Or )"`
	}
	measureTree struct {
		First *amountTree   `parser:"@@"`
		Rest  []*linkedTree `parser:"@@*"`
	}
	linkedTree struct {
		Link   string      `parser:"@( Times | To | Or | At )"`
		Amount *amountTree `parser:"@@"`
	}
	amountTree struct {
		Pos    lexer.Position
		Minus  bool        `parser:"@Minus?"`
		Number *numberTree `parser:"@@"`
		Unit   string      `parser:"@Unit?"`
	}
	numberTree struct {
		Whole    string `parser:"  @Int"`
		Part     string `parser:"  @Fraction?"`
		Fraction string `parser:"| @Fraction"`
		Decimal  string `parser:"| @Decimal"`
		Quarters string `parser:"| @Quarters"`
		Pair     string `parser:"| @Pair"`
		Words    string `parser:"| @NumberWord"`
		Bad      string `parser:"| @Unreadable"`
	}
)

var parser = participle.MustBuild[messageTree](
	participle.Lexer(definition{}),
	participle.UseLookahead(3),
)

// definition lexes for participle. A token's Pos.Offset is its index, so that a
// node of the tree finds its tokens again.
type definition struct{}

func (definition) Symbols() map[string]lexer.TokenType { return symbolNames }

func (d definition) Lex(name string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return d.LexString(name, string(text))
}

func (definition) LexString(_, input string) (lexer.Lexer, error) {
	return &feed{tokens: tokenize(input)}, nil
}

type feed struct {
	tokens []token
	at     int
}

func (f *feed) Next() (lexer.Token, error) {
	if f.at >= len(f.tokens) {
		return lexer.EOFToken(lexer.Position{Offset: f.at}), nil
	}
	t := f.tokens[f.at]
	f.at++
	return lexer.Token{Type: t.symbol, Value: t.norm, Pos: lexer.Position{Offset: f.at - 1}}, nil
}

// peek wraps tokens that are already cut.
func peek(tokens []token) *lexer.PeekingLexer {
	l, err := lexer.Upgrade(&feed{tokens: tokens})
	if err != nil {
		panic(err) // feed never fails
	}
	return l
}
