package slack

import (
	"encoding/json"
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
	maxUpdate = 4000  // of the words of a message that is changed; Slack refuses more
	maxPart   = 2800  // of one text
	maxDress  = 12000 // of all blocks as they are sent
	maxBlocks = 45
)

// fallback is the whole reply in plain text, for notifications, screen readers
// and clients without blocks.
func fallback(text string) string { return shortened(escape.Replace(text), maxText) }

// shortened cuts an escaped text to at most n characters, and through no
// escape.
func shortened(text string, n int) string {
	if utf8.RuneCountInString(text) <= n {
		return text
	}
	cut := string([]rune(text)[:n-2])
	if i := strings.LastIndexByte(cut, '&'); i >= 0 && !strings.Contains(cut[i:], ";") {
		cut = cut[:i]
	}
	return cut + " …"
}

// dressed returns a reply as blocks: in rich text, where Slack reads no markup;
// a long one in plain text; one that is too long for blocks without.
func dressed(s bot.Sheet) []slack.Block {
	for _, dress := range []func([]bot.Line) []slack.Block{rich, simple} {
		blocks := dress(s.Lines)
		if b := buttons(s); b != nil {
			blocks = append(blocks, b)
		}
		if raw, err := json.Marshal(blocks); err == nil && len(raw) <= maxDress && len(blocks) <= maxBlocks {
			return blocks
		}
	}
	return nil
}

// rich dresses lines by their kinds.
func rich(lines []bot.Line) []slack.Block {
	var blocks []slack.Block
	var parts []slack.RichTextElement
	size := 0
	for _, l := range lines {
		for _, text := range split(l.Text, maxPart) {
			n := utf8.RuneCountInString(text)
			if size+n > maxPart {
				blocks, parts, size = append(blocks, slack.NewRichTextBlock("", parts...)), nil, 0
			}
			size += n
			list, ok := lastList(parts)
			if ok && l.Kind == bot.Figure {
				list.Elements = append(list.Elements, section(text, nil))
				continue
			}
			parts = append(parts, styled(l.Kind, text))
		}
	}
	if len(parts) > 0 {
		blocks = append(blocks, slack.NewRichTextBlock("", parts...))
	}
	return blocks
}

func lastList(parts []slack.RichTextElement) (*slack.RichTextList, bool) {
	if len(parts) == 0 {
		return nil, false
	}
	list, ok := parts[len(parts)-1].(*slack.RichTextList)
	return list, ok
}

// simple sets lines below each other.
func simple(lines []bot.Line) []slack.Block {
	var all []string
	for _, l := range lines {
		all = append(all, l.Text)
	}
	var blocks []slack.Block
	for _, text := range split(strings.Join(all, "\n"), maxPart) {
		blocks = append(blocks, slack.NewSectionBlock(words(text), nil, nil))
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
	switch kind {
	case bot.Headline, bot.Question:
		return section(text+"\n", &slack.RichTextSectionTextStyle{Bold: true})
	case bot.ReadAs:
		return section(text+"\n", &slack.RichTextSectionTextStyle{Italic: true})
	case bot.Figure:
		return slack.NewRichTextList(slack.RTEListBullet, 0, section(text, nil))
	case bot.Warning:
		text = "! " + text
	}
	return section(text+"\n", nil)
}

func section(text string, style *slack.RichTextSectionTextStyle) *slack.RichTextSection {
	return slack.NewRichTextSection(slack.NewRichTextSectionTextElement(text, style))
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
