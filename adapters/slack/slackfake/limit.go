package slackfake

import (
	"encoding/json"
	"fmt"
	"unicode/utf8"
)

// Limits of Slack's documentation, in characters, but for the sum over the
// blocks of one message, which users found near 13 200.
const (
	maxText     = 40000
	maxUpdate   = 4000 // of the text of chat.update
	maxBlocks   = 50
	maxSection  = 3000
	maxSum      = 13200
	maxButton   = 75
	maxValue    = 2000
	maxElements = 25
	maxContext  = 10
	maxView     = 100
	maxTitle    = 24
	maxLabel    = 2000
	maxHint     = 150
	maxPrivate  = 3000
	maxAlt      = 1000
)

// within refuses a message that is too much for Slack.
func (s *Server) within(c call) answer {
	most := maxText
	if c.method == "chat.update" {
		most = maxUpdate
	}
	if n := utf8.RuneCountInString(c.get("text")); n > most {
		return s.over("msg_too_long", fmt.Sprintf("text of %d characters", n))
	}
	blocks := c.get("blocks")
	if c.get("text") == "" && blocks == "" {
		return s.over("no_text", "no text")
	}
	if blocks == "" {
		return nil
	}
	if c.get("text") == "" {
		s.over("", "blocks without a fallback text")
	}
	var list []map[string]any
	if json.Unmarshal([]byte(blocks), &list) != nil {
		return s.over("invalid_blocks_format", "blocks that are no list")
	}
	if len(list) > maxBlocks {
		return s.over("invalid_blocks", fmt.Sprintf("%d blocks", len(list)))
	}
	if n := utf8.RuneCountInString(TextOf(json.RawMessage(blocks))); n > maxSum {
		return s.over("msg_blocks_too_long", fmt.Sprintf("%d characters in blocks", n))
	}
	for _, b := range list {
		if wrong := tooMuch(b); wrong != "" {
			return s.over("invalid_blocks", wrong)
		}
	}
	return nil
}

// tooMuch says what a block has too much of, or "".
func tooMuch(b map[string]any) string {
	elements, _ := b["elements"].([]any)
	switch {
	case b["type"] == "actions" && len(elements) > maxElements, b["type"] == "context" && len(elements) > maxContext:
		return fmt.Sprintf("%d elements", len(elements))
	case b["type"] == "actions" && len(elements) == 0, b["type"] == "context" && len(elements) == 0:
		return "no elements"
	}
	wrong := ""
	walk(b, func(m map[string]any) {
		text, has := m["text"].(string)
		n := utf8.RuneCountInString(text)
		switch {
		case n > maxSection:
			wrong = fmt.Sprintf("text object of %d characters", n)
		case has && n == 0:
			wrong = "empty text"
		}
		if m["type"] == "button" {
			label, _ := m["text"].(map[string]any)
			words, _ := label["text"].(string)
			value, _ := m["value"].(string)
			if utf8.RuneCountInString(words) > maxButton || len(value) > maxValue {
				wrong = "button too long"
			}
		}
	})
	return wrong
}

// viewWithin refuses a view that is too much for Slack.
func (s *Server) viewWithin(raw json.RawMessage) answer {
	var v map[string]any
	if json.Unmarshal(raw, &v) != nil {
		return failed("invalid_arguments")
	}
	blocks, _ := v["blocks"].([]any)
	private, _ := v["private_metadata"].(string)
	switch {
	case len(blocks) == 0 || len(blocks) > maxView:
		return s.over("invalid_arguments", fmt.Sprintf("%d blocks in a view", len(blocks)))
	case utf8.RuneCountInString(private) > maxPrivate:
		return s.over("invalid_arguments", "private metadata too long")
	}
	for _, key := range []string{"title", "submit", "close"} {
		if m, ok := v[key].(map[string]any); ok {
			if text, _ := m["text"].(string); utf8.RuneCountInString(text) > maxTitle {
				return s.over("invalid_arguments", key+" of a view too long")
			}
		}
	}
	for _, b := range blocks {
		m, _ := b.(map[string]any)
		if wrong := tooMuch(m); wrong != "" {
			return s.over("invalid_arguments", wrong)
		}
		element, _ := m["element"].(map[string]any)
		hint, _ := element["placeholder"].(map[string]any)
		label, _ := m["label"].(map[string]any)
		said, _ := hint["text"].(string)
		name, _ := label["text"].(string)
		if utf8.RuneCountInString(said) > maxHint || utf8.RuneCountInString(name) > maxLabel {
			return s.over("invalid_arguments", "input too long")
		}
	}
	return nil
}

// over notes what overstepped a limit.
func (s *Server) over(code, what string) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.broken = append(s.broken, what)
	return failed(code)
}
