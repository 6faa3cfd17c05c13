package grammar

import (
	"io"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The tree of a message: its measures, among words that it leaves out. A message
// may hold anything; what a measure is of is decided afterwards.
type (
	messageTree struct {
		Measures []measureTree `parser:"@@*"`
	}
	measureTree struct {
		First amountTree   `parser:"@@"`
		Rest  []linkedTree `parser:"@@*"`
	}
	linkedTree struct {
		Link   string     `parser:"@Link"`
		Amount amountTree `parser:"@@"`
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

// end is the index of the token behind a measure.
func (m *measureTree) end() int {
	if n := len(m.Rest); n > 0 {
		return m.Rest[n-1].Amount.end()
	}
	return m.First.end()
}

func (a *amountTree) end() int {
	end := a.Pos.Offset + 1
	for _, there := range []bool{a.Minus, a.Part != "", a.Unit != ""} {
		if there {
			end++
		}
	}
	return end
}

var parser = participle.MustBuild[messageTree](
	participle.Lexer(definition{}),
	participle.UseLookahead(1),
)

// Parse reads the tree as its tags declare it, which a test holds it to. Without it
// three quarters of the memory that a message takes went to reflection.
func (m *messageTree) Parse(lex *lexer.PeekingLexer) error {
	for !lex.Peek().EOF() {
		var measure measureTree
		if err := measure.First.read(lex); err != nil {
			return err
		}
		for lex.Peek().Type == symLink {
			linked := linkedTree{Link: lex.Next().Value}
			if err := linked.Amount.read(lex); err != nil {
				return err
			}
			measure.Rest = append(measure.Rest, linked)
		}
		if m.Measures == nil {
			m.Measures = make([]measureTree, 0, 8) // few messages have more
		}
		m.Measures = append(m.Measures, measure)
	}
	return nil
}

func (a *amountTree) read(lex *lexer.PeekingLexer) error {
	a.Pos = lex.Peek().Pos
	a.Minus = take(lex, symMinus) != ""
	if a.Whole = take(lex, symInt); a.Whole != "" {
		a.Part = take(lex, symFraction)
	} else if a.Single = take(lex, symNumber); a.Single == "" {
		return &participle.UnexpectedTokenError{Unexpected: *lex.Peek()}
	}
	a.Unit = take(lex, symUnit)
	return nil
}

// take takes the next token if it is of the type.
func take(lex *lexer.PeekingLexer, of lexer.TokenType) string {
	if lex.Peek().Type != of {
		return ""
	}
	return lex.Next().Value
}

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

// Next is the next token of the tree. It leaves the words out: nodes for them took
// more memory than all else that reads a message.
func (f *feed) Next() (lexer.Token, error) {
	for f.at < len(f.tokens) {
		at := f.at
		if symbol := f.take(); symbol != symWord {
			return lexer.Token{Type: symbol, Value: f.tokens[at].norm, Pos: lexer.Position{Offset: at}}, nil
		}
	}
	return lexer.EOFToken(lexer.Position{Offset: f.at}), nil
}

func (f *feed) take() lexer.TokenType {
	symbol := f.class(f.at)
	if s := f.tokens[f.at].symbol; s >= symInt && s <= symBad {
		f.numbers++
	}
	f.at++
	return symbol
}

// class is the symbol of token i in the tree: what is no part of a measure counts
// as a word, and a link or a sign counts only where a number follows.
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
		if numbers < mostNumbers && f.number(i+1) && i >= 1 && f.measured(i-1) {
			return symLink
		}
	case symMinus:
		if numbers < mostNumbers && f.number(i+1) {
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
