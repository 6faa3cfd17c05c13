package slack

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
)

// Slack's limits for one message, in characters, with something to spare.
const (
	maxText   = 39000
	maxPart   = 2800  // of one text
	maxDress  = 11000 // of all blocks; a reply that is longer goes without
	maxBlocks = 45
)

// fallback is the whole reply in plain text, for notifications, screen readers
// and clients without blocks.
func fallback(text string) string {
	text = escape.Replace(text)
	if utf8.RuneCountInString(text) <= maxText {
		return text
	}
	cut := []rune(text)[:maxText]
	return strings.TrimRight(string(cut), "&abcdefghijklmnopqrstuvwxyz") + " …"
}

// dressed returns a reply as blocks, or none where it is too long for them.
// All text stands in rich text, where Slack reads no markup.
func dressed(s bot.Sheet) []slack.Block {
	var blocks []slack.Block
	var parts []slack.RichTextElement
	size, all := 0, 0
	flush := func() {
		if len(parts) > 0 {
			blocks = append(blocks, slack.NewRichTextBlock("", parts...))
		}
		parts, size = nil, 0
	}
	for _, l := range s.Lines {
		for _, text := range split(l.Text, maxPart) {
			n := utf8.RuneCountInString(text)
			if all += n; size+n > maxPart {
				flush()
			}
			size += n
			parts = append(parts, styled(l.Kind, text))
		}
	}
	flush()
	if b := buttons(s); b != nil {
		blocks = append(blocks, b)
	}
	if all > maxDress || len(blocks) > maxBlocks {
		return nil
	}
	return blocks
}

// split cuts a text into parts of at most n characters, at spaces where it can.
func split(text string, n int) []string {
	var out []string
	for r := []rune(text); ; {
		if len(r) <= n {
			if len(r) > 0 {
				out = append(out, string(r))
			}
			return out
		}
		cut := n
		for i := n; i > n/2; i-- {
			if r[i-1] == ' ' {
				cut = i
				break
			}
		}
		out, r = append(out, string(r[:cut])), r[cut:]
	}
}

// styled dresses a line by its kind.
func styled(kind bot.LineKind, text string) slack.RichTextElement {
	style := map[bot.LineKind]*slack.RichTextSectionTextStyle{
		bot.Headline: {Bold: true}, bot.ReadAs: {Italic: true}, bot.Question: {Bold: true},
	}[kind]
	switch kind {
	case bot.Figure:
		section := slack.NewRichTextSection(slack.NewRichTextSectionTextElement(text, style))
		return slack.NewRichTextList(slack.RTEListBullet, 0, section)
	case bot.Warning:
		text = "! " + text
	}
	return slack.NewRichTextSection(slack.NewRichTextSectionTextElement(text+"\n", style))
}

// offers are the buttons of a load, by its state.
var offers = map[book.State][]string{
	book.Posted: {"check", "hold"}, book.Checked: {"in", "hold"}, book.Pressing: {"out", "hold"}, book.Held: {"clear"},
}

var labels = map[string]string{"check": "Check …", "hold": "Hold", "clear": "Clear", "in": "In", "out": "Out"}

// buttons returns what can be done with the load that a reply is about. What
// they say is bound to its revision.
func buttons(s bot.Sheet) *slack.ActionBlock {
	if s.Load == 0 || s.Private != "" || len(offers[s.State]) == 0 {
		return nil
	}
	value := fmt.Sprintf("%d:%d", s.Load, s.Revision)
	var elements []slack.BlockElement
	for i, action := range offers[s.State] {
		b := slack.NewButtonBlockElement(action, value, slack.NewTextBlockObject(slack.PlainTextType, labels[action], false, false))
		b.AccessibilityLabel = fmt.Sprintf("%s load %d", strings.TrimSuffix(labels[action], " …"), s.Load)
		if i == 0 {
			b.Style = slack.StylePrimary
		}
		elements = append(elements, b)
	}
	return slack.NewActionBlock("load", elements...)
}
