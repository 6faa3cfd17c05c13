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
		Words   string       `parser:"  @Word"`
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
		Single string `parser:"| @Number )"`
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

// Next is the next token of the tree. A run of words is one: parsing each by
// itself took more time and memory than anything else in an answer.
func (f *feed) Next() (lexer.Token, error) {
	if f.at >= len(f.tokens) {
		return lexer.EOFToken(lexer.Position{Offset: f.at}), nil
	}
	first := f.at
	symbol := f.take()
	for symbol == symWord && f.at < len(f.tokens) && f.class(f.at) == symWord {
		f.take()
	}
	return lexer.Token{Type: symbol, Value: f.tokens[first].norm, Pos: lexer.Position{Offset: first}}, nil
}

func (f *feed) take() lexer.TokenType {
	symbol := f.class(f.at)
	if s := f.tokens[f.at].symbol; s >= symInt && s <= symBad {
		f.numbers++
	}
	f.at++
	return symbol
}

// class is the symbol of token i in the tree: what is no part of a measure is a
// word there, and a link or a sign counts only where a number follows.
func (f *feed) class(i int) lexer.TokenType {
	t := &f.tokens[i]
	numbers := f.numbers
	if t.symbol >= symInt && t.symbol <= symBad {
		numbers++
	}
	if numbers > mostNumbers {
		return symWord
	}
	switch t.symbol {
	case symInt, symUnit:
		return t.symbol
	case symFraction:
		if i > 0 && f.tokens[i-1].symbol == symInt {
			return symFraction // of a mixed number
		}
		return symNumber
	case symDecimal, symQuarters, symPair, symWords, symBad:
		return symNumber
	case symTimes, symTo, symOr, symAt:
		if f.number(i+1) && i >= 1 && f.measured(i-1) {
			return symLink
		}
	case symMinus:
		if f.number(i + 1) {
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
