// Package grammar reads what people type in a press shop and turns it into a
// [Phrase]: what is asked, what is stated, and every number and meaningful word
// that it could not place. [Parse] is the one way in and never fails; [Print]
// writes a phrase in a long form that reads back the same.
//
// A message goes through these stages, a file or a few each:
//
//	scan.go      characters to scraps: words, numbers, fraction glyphs, marks
//	token.go     scraps to tokens: the longest run of words with a meaning, numbers
//	             in words, units behind numbers
//	stocklist.go a long list of strips to one token
//	tree.go      tokens to the tree of measures, by the grammar below
//	reader.go    the tree to bindings, pass by pass: structures first (stacks, stock,
//	             clocks, rates), then units that say what they are, then counts,
//	             sizes and lengths by the words around them; last the questions
//	changes.go   in a message that follows others: by how much it changes a number of
//	             its thread, which the bot works out
//	leftbehind.go last, every run of digits that stands in nothing that was kept is
//	             listed as unused; not of the long form, which keeps all
//
// The tree's grammar, kept true by a test:
//
//	MessageTree = MeasureTree* .
//	MeasureTree = AmountTree LinkedTree* .
//	AmountTree = <minus>? ((<int> <fraction>?) | <number>) <unit>? .
//	LinkedTree = <link> AmountTree .
//
// An int with a fraction is a mixed number. A number is a decimal, a fraction in
// digits or as a glyph that follows no int, lumber quarters, a
// pair such as 7:30 or 1:12, or a number in words; a link is x, by, to, or, at.
// The words, all that is none of these, are left out of the tree.
//
// The vocabulary is data: parts, directions and facts in words.go, woods and glues
// in woods.go, what a number is for in roles.go, questions in asks.go, words to
// the load book in verbs.go, dangers in perils.go, units in unitwords.go. A bare
// number takes the unit of those beside it, else the shop's habit. What two
// honest readings share is not chosen: see [Clash], [Choice] and [Refusal].
package grammar
