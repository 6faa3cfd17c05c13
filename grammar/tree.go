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
		Words   []string     `parser:"  @Word+"`
		Measure *measureTree `parser:"| @@"`
	}
	measureTree struct {
		First *amountTree   `parser:"@@"`
		Rest  []*linkedTree `parser:"@@*"`
	}
	linkedTree struct {
		Link   string      `parser:"@Link"`
		Amount *amountTree `parser:"@@"`
	}
	amountTree struct {
		Pos    lexer.Position
		Minus  bool   `parser:"@Minus?"`
		Whole  string `parser:"( @Int"`
		Part   string `parser:"  @Fraction?"`
		Single string `parser:"| @( Fraction | Number ) )"`
		Unit   string `parser:"@Unit?"`
	}
)

var parser = participle.MustBuild[messageTree](
	participle.Lexer(definition{}),
	participle.UseLookahead(1),
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
	tokens  []token
	at      int
	numbers int
}

// mostNumbers is how many numbers of one message are read. More are no shop talk:
// they are words, and listed as unused.
const mostNumbers = 80

func (f *feed) Next() (lexer.Token, error) {
	if f.at >= len(f.tokens) {
		return lexer.EOFToken(lexer.Position{Offset: f.at}), nil
	}
	t := &f.tokens[f.at]
	f.at++
	return lexer.Token{Type: f.class(t), Value: t.norm, Pos: lexer.Position{Offset: f.at - 1}}, nil
}

// class is the symbol of a token in the tree: what is no part of a measure is a
// word there, and a link or a sign counts only where a number follows.
func (f *feed) class(t *token) lexer.TokenType {
	if t.symbol >= symInt && t.symbol <= symBad {
		f.numbers++
	}
	if f.numbers > mostNumbers {
		return symWord
	}
	switch t.symbol {
	case symInt, symFraction, symUnit:
		return t.symbol
	case symDecimal, symQuarters, symPair, symWords, symBad:
		return symNumber
	case symTimes, symTo, symOr, symAt:
		if f.number(f.at) && f.at >= 2 && f.measured(f.at-2) {
			return symLink
		}
	case symMinus:
		if f.number(f.at) {
			return symMinus
		}
	}
	return symWord
}

// number reports whether the token at i begins an amount.
func (f *feed) number(i int) bool {
	if i < len(f.tokens) && f.tokens[i].symbol == symMinus {
		i++
	}
	return i < len(f.tokens) && f.tokens[i].symbol >= symInt && f.tokens[i].symbol <= symBad
}

// measured reports whether the token at i can end an amount.
func (f *feed) measured(i int) bool {
	s := f.tokens[i].symbol
	return s >= symInt && s <= symUnit
}

// peek wraps tokens that are already cut.
func peek(tokens []token) *lexer.PeekingLexer {
	l, err := lexer.Upgrade(&feed{tokens: tokens})
	if err != nil {
		panic(err) // feed never fails
	}
	return l
}
