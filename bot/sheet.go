package bot

import (
	"encoding/json"
	"fmt"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/grammar"
)

// A Sheet is a reply as an outbox keeps it for the service that shows it: the
// body of a [book.Outgoing], whose Text is the same in plain text.
type Sheet struct {
	Lines    []Line         `json:"lines,omitempty"`
	About    grammar.Topic  `json:"about,omitempty"`
	Unread   int            `json:"unread,omitempty"` // how many words and numbers were not used
	Verdict  engine.Verdict `json:"verdict,omitempty"`
	Load     int            `json:"load,omitempty"`     // the single load that it is about, or 0
	Revision int            `json:"revision,omitempty"` // of that load
	State    book.State     `json:"state,omitempty"`    // of that load
	Picture  *Picture       `json:"picture,omitempty"`  // nothing else stands in the sheet then
	Withdraw bool           `json:"withdraw,omitempty"` // take away what it replaces, a picture; nothing else stands in the sheet then
	Private  string         `json:"private,omitempty"`  // for this person alone, by the service's id, where the service can
	Acted    bool           `json:"acted,omitempty"`    // the message wrote in the load book
	Before   *book.Thread   `json:"before,omitempty"`   // the thread before the message, where the message changed it
}

// SheetOf reads the body of something to be sent. Without one it is a sheet of
// the text.
func SheetOf(o book.Outgoing) (Sheet, error) {
	if len(o.Body) == 0 {
		return Sheet{Lines: []Line{{Text: o.Text}}}, nil
	}
	var s Sheet
	if err := json.Unmarshal(o.Body, &s); err != nil {
		return Sheet{}, fmt.Errorf("body of reply %q cannot be read: %w", o.Key, err)
	}
	return s, nil
}

// sheet is what a service needs of a reply.
func (r Reply) sheet() Sheet {
	s := Sheet{Lines: r.Lines, About: r.About, Unread: len(r.Unused), Verdict: r.Verdict}
	if len(r.Loads) == 1 && len(r.States) == 1 {
		s.Load, s.Revision, s.State = r.Loads[0], r.Revision, book.State(r.States[0])
	}
	return s
}

// sheetFor keeps what comes to nothing between the bot and who made a gesture
// or gave a command.
func (r Reply) sheetFor(g Gesture) Sheet {
	s := r.sheet()
	if r.Verdict == engine.Ask || r.About == Unknown {
		s.Private = g.User
	}
	return s
}

func (s Sheet) body() (json.RawMessage, error) {
	b, err := json.Marshal(s)
	if err != nil {
		return nil, fmt.Errorf("reply cannot be kept: %w", err)
	}
	return b, nil
}

// A Gesture is what a button, a form or a reaction adds to the words that it
// stands for, and a command to its words: the Extra of a [book.Event].
type Gesture struct {
	Load     int    `json:"load,omitempty"`     // what it was bound to
	Revision int    `json:"revision,omitempty"` // a later one takes its meaning away
	User     string `json:"user,omitempty"`     // the service's id of who made it; a refusal or a question is for them alone
}

// gesture reads what a service added to an event.
func gesture(e book.Event) (Gesture, error) {
	var g Gesture
	if len(e.Extra) == 0 {
		return g, nil
	}
	if err := json.Unmarshal(e.Extra, &g); err != nil {
		return g, fmt.Errorf("extra of event cannot be read: %w", err)
	}
	return g, nil
}
