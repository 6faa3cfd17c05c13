package slack

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// angled is one of Slack's bracketed parts: a mention, a channel, a link. A
// bracket that a person typed comes as &lt;.
var angled = regexp.MustCompile(`<([^<>]*)>`)

// unescape undoes what Slack does to the three characters of its markup.
var unescape = strings.NewReplacer("&lt;", "<", "&gt;", ">", "&amp;", "&")

// escape keeps what is sent from being read as markup.
var escape = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")

// plain returns what a person typed: mentions are gone, a link is its label.
func plain(text string) string {
	text = angled.ReplaceAllStringFunc(text, func(part string) string {
		inside := part[1 : len(part)-1]
		target, label, labelled := strings.Cut(inside, "|")
		switch {
		case strings.HasPrefix(inside, "@"), strings.HasPrefix(inside, "#"), strings.HasPrefix(inside, "!"):
			return " "
		case labelled:
			return label
		}
		return target
	})
	return unescape.Replace(text)
}

// words returns what is said to the bot: without its name or prefix.
func (a *Slack) words(room, text string) string {
	text = strings.TrimSpace(text)
	if n := a.prefixOf(room, text); n > 0 {
		text = text[n:]
	}
	return strings.TrimSpace(plain(text))
}

// name is the bot's, which addresses it like a prefix.
const name = "presshand"

// prefixOf returns how much of a text is the word that addresses the bot with
// what follows it: "press, ", "Press:", "presshand ".
func (a *Slack) prefixOf(room, text string) int {
	for _, word := range append([]string{name}, a.Prefix(room)...) {
		word = strings.TrimRight(word, ",: ")
		if word == "" || len(text) < len(word) || !strings.EqualFold(text[:len(word)], word) {
			continue
		}
		rest := text[len(word):]
		next, size := utf8.DecodeRuneInString(rest)
		switch {
		case next == ',' || next == ':':
			return len(word) + size
		case strings.EqualFold(word, name) && unicode.IsSpace(next):
			return len(word) + size
		}
	}
	return 0
}
