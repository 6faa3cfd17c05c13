package book

import (
	"time"

	"presshand/engine"
	"presshand/engine/unit"
)

// An Act is what an entry does to its load.
type Act string

const (
	Post    Act = "post"
	Check   Act = "check"
	Uncheck Act = "uncheck"
	Hold    Act = "hold"
	Clear   Act = "clear"
	Correct Act = "correct"
	In      Act = "in"
	Out     Act = "out"
	Judge   Act = "judge"
	Drop    Act = "drop"
	Undo    Act = "undo"
)

// A Person is one human, whichever service they write from. ID is empty once
// the person was forgotten.
type Person struct {
	ID   string `json:"id"`
	Name string `json:"name,omitempty"`
}

// A Saying is who said something, when, and in which message.
type Saying struct {
	By    Person
	At    time.Time
	Event string // key of the message's event
}

// A Place is where a conversation is held.
type Place struct {
	Service string `json:"service,omitempty"` // which adapter serves the room
	Room    string `json:"room"`
	Thread  string `json:"thread,omitempty"`
}

// An Entry is one line of the book. It is never changed; a later entry undoes
// or corrects it.
type Entry struct {
	Room     string
	Load     int
	Seq      int // its place among the load's entries, from 1
	Revision int // the revision it speaks of
	Act      Act
	By       Person
	At       time.Time // when it was said
	Event    string    // key of the message that said it
	Detail   Detail
}

// When returns the time that the entry is about: the time stated in it, or
// else the time it was said.
func (e Entry) When() time.Time {
	if e.Detail.When != nil {
		return *e.Detail.When
	}
	return e.At
}

// A Detail holds what an entry says beyond its act. Which fields are set
// depends on the act.
type Detail struct {
	Plan     *Plan        `json:"plan,omitempty"` // post, correct
	Title    string       `json:"title,omitempty"`
	Job      string       `json:"job,omitempty"`
	GlueLot  string       `json:"glue_lot,omitempty"`
	From     int          `json:"from,omitempty"`     // post: the load it is a copy of
	Service  string       `json:"service,omitempty"`  // post
	Thread   string       `json:"thread,omitempty"`   // post
	Measured unit.Facts   `json:"measured,omitempty"` // check
	Compared []Comparison `json:"compared,omitempty"` // check
	Agrees   bool         `json:"agrees,omitempty"`   // check
	Own      bool         `json:"own,omitempty"`      // check: the room lets people check their own load
	Press    string       `json:"press,omitempty"`    // in
	Anyway   bool         `json:"anyway,omitempty"`   // in: without a valid check
	When     *time.Time   `json:"when,omitempty"`     // in, out: the time stated, if one was
	Good     bool         `json:"good,omitempty"`     // judge
	Note     string       `json:"note,omitempty"`     // the reason, or the finding, as typed
	Undoes   []int        `json:"undoes,omitempty"`   // undo: the entries taken back, by Seq
}

// A Plan is a question with its answer, frozen when it was posted.
type Plan struct {
	About    engine.Topic     `json:"about"`
	Said     unit.Facts       `json:"said"`
	Assumed  unit.Facts       `json:"assumed,omitempty"`
	Values   unit.Facts       `json:"values,omitempty"`
	Verdict  engine.Verdict   `json:"verdict"`
	Checks   []engine.Check   `json:"checks,omitempty"`
	Cautions []engine.Caution `json:"cautions,omitempty"`
}

// PlanOf freezes what was said and what the engine made of it.
func PlanOf(said unit.Facts, a engine.Answer) Plan {
	return Plan{
		About: a.About, Said: said.Clone(), Assumed: a.Assumed.Clone(), Values: a.Values.Clone(),
		Verdict: a.Verdict, Checks: a.Checks, Cautions: a.Cautions,
	}
}

// Figure returns what the plan holds under f: as said, else as assumed, else
// as computed.
func (p Plan) Figure(f unit.Field) (unit.Value, bool) {
	for _, facts := range []unit.Facts{p.Said, p.Assumed, p.Values} {
		if v, ok := facts[f]; ok {
			return v, true
		}
	}
	return nil, false
}

// Amended returns the plan's question with some facts replaced, to be worked
// out again: for a correction, or for what was measured.
func (p Plan) Amended(facts unit.Facts) unit.Facts {
	said := p.Said.Clone()
	for f, v := range facts {
		said[f] = v
	}
	return said
}
