package grammar

import (
	"time"

	"presshand/engine/unit"
)

// A Phrase is what a message says: what it asks, what it states, and every
// number and meaningful word that it could not place.
type Phrase struct {
	Asks      []Ask       // in the order asked; empty when only facts are stated
	Facts     []Fact      // at most one for each field
	Drops     []Part      // what the message takes away: "without the mat"
	Command   *Command    // a word to the load book
	Unused    []string    // as typed
	Refused   []Refusal   // numbers that cannot be
	Clashes   []Clash     // two different values for one field
	Taken     []Taken     // misspelt trade words and what they were taken for
	Choices   []Choice    // alternatives to compare
	Perils    []Peril     // dangers that are mentioned, asked about or not
	In        []unit.Unit // units that the answer is wanted in
	Terms     []string    // words whose meaning is asked
	Greeting  bool        // nothing but a greeting or thanks
	Reset     bool        // the room's own defaults are to be forgotten
	Pictures  Pictures    // drawings are turned on or off in the room; "" where nothing is said of it
	NewStart  bool        // the message begins a new question: "new one:", "plan:"
	Amends    []Amendment // bare numbers for what the thread said last
	Changes   []Change    // numbers by which the thread's own change
	Rows      []Row       // strips that the thread has more or fewer of: "found 4 more of the 2s"
	Gone      []Amendment // widths of strips that there are none of any more: "no 3s"
	Moved     *Mistaken   // what was told last is of something else: "the bar not the panel"
	Gains     []Part      // parts that a later message adds without a measure: "and with a wedge"
	Inferred  bool        // the topic was told from the facts, not asked
	Covered   bool        // the bar is covered to its top, and no height was said with it
	Uncovered bool        // film gets down behind the bar, and no thickness was said with it
	BarStands bool        // a bar is there, and nothing was said of how big it is
	Negated   []string    // "not", "except", "unless" with what they touch, where unread
}

// Topic is what a message asks about, by the contract's names.
type Topic string

const (
	Face     Topic = "face"
	Side     Topic = "side"
	Flatten  Topic = "flatten"
	Stack    Topic = "stack"
	Strips   Topic = "strips"
	Glue     Topic = "glue"
	Pump     Topic = "pump"
	Move     Topic = "move"
	Load     Topic = "load"
	Schedule Topic = "schedule"
	Book     Topic = "book"
	Profile  Topic = "profile"
	Safety   Topic = "safety"
	Why      Topic = "why"
	Words    Topic = "words"
)

// An Ask is one question.
type Ask struct {
	About Topic
	Solve unit.Field          // the field asked for, or ""
	Goal  map[unit.Field]Fact // the wanted figures; empty: the usual goal
	For   []unit.Field        // figures asked by name: side_far_joint_kpa, pump_s
	Peril Peril               // for safety: which danger

	Guessed bool // nothing said which topic; a thread has its own

	question bool // a cue that begins with how, what or when
	weak     bool // told by a common word only
	idle     bool // told by a word of the calendar: "today"
	second   bool // a question phrase of its own behind "and" or a question mark
	back     bool // the message goes back to it: "back to the joints"
}

// A Peril is a danger that a message asks about.
type Peril string

// A Fact is one field and what was said of it.
type Fact struct {
	Field unit.Field
	Value unit.Value // in the field's own unit
	Unit  unit.Unit  // as written or, for a bare number, as the shop's habit has it
	Text  string     // as typed
	Loose bool       // the part was not named: "30 wide"; the thread may know better
	Note  string     // a habit that was applied: "nominal 1x6 is 3/4 × 5 1/2 in"
	Again []string   // other numbers of the message that tell the same, as typed: "25 inHg, that's 12.3 psi"
}

// An Amendment is a bare number behind "make that": it replaces the last number
// of the thread that it could be.
type Amendment struct {
	Text  string
	Value float64
	Unit  unit.Unit    // zero for a number without one
	Of    []unit.Field // what a word beside it says that it is of: "thicker, 1/2"
	Layer string       // the part of a stack that it is of: "make the fence 5"
	One   bool         // it is of a thing that was spoken of: "the 2 in one"
	Was   float64      // the number whose place it takes: "6 not 4"; 0 where none is said
}

// A Part is something a load can have or lack: "mat", "bar", "wedge".
type Part string

// A Choice offers several values for one field.
type Choice struct {
	Field  unit.Field
	Values []Fact
}

// A Refusal is a number that cannot be what the message makes of it.
type Refusal struct {
	Field unit.Field
	Text  string // as typed
	Want  string // what could be
}

// A Clash is one field with two different values and no word of correction.
type Clash struct {
	Field unit.Field
	Texts []string
}

// A Taken is a misspelt trade word and the word it was taken for.
type Taken struct{ Typed, As string }

// A Command is a word to the load book.
type Command struct {
	Verb     Verb
	Loads    []int
	From     int      // the load copied from: "15 same as 14"
	Measured []Fact   // what a second person measured
	Doubts   []string // clauses of a check that were not understood or tell a fault, as typed
	Unclear  []string // those of the Doubts that are only not understood
	By       string   // who is said to have checked: "3 checked by cy"
	Note     string   // the reason of a hold, the finding of a result, as typed
	Title    string
	Time     string        // "10:15", or ":30" of the hour that was last: "half past"
	Half     bool          // Time may as well be twelve hours later: "1:50"
	Ago      time.Duration // before the message, where no Time is told: "ten minutes ago"
	Clock    string        // the time as typed: "2:05 pm"
	Press    string        // the press's name
	Anyway   bool
	Bare     bool // nothing but "14 in": a load if there is one, else a length
	Meant    Verb // of Show and NotDone: what was asked about, denied or is to come
	ToCome   bool // of NotDone: a plan, "14 out tomorrow"
	Lacks    Lack // of NotDone: what was not told
	History  bool // of Show: all that was done to the load
	Query    *Query
	Then     *Command // a second one in the same message: "2 out and 3 in"
}

// A Verb is what is to be done in the load book.
type Verb string

const (
	Post    Verb = "post"
	Check   Verb = "check"
	Uncheck Verb = "uncheck"
	Hold    Verb = "hold"
	Clear   Verb = "clear"
	In      Verb = "in"
	Out     Verb = "out"
	Result  Verb = "result"
	Correct Verb = "correct"
	Copy    Verb = "copy"
	Drop    Verb = "drop"
	Undo    Verb = "undo"
	Show    Verb = "show"    // one load
	List    Verb = "list"    // what's in the press, loads today, last five
	NotDone Verb = "notdone" // "23 is NOT checked", "14 out tomorrow": nothing changes
)

// A Lack is what an order lacks to be done.
type Lack string

const (
	LacksWhich Lack = "which" // "drop 1 or 2"
	LacksRest  Lack = "rest"  // "all but 1 out": of all loads but the named
	LacksWhen  Lack = "when"  // "1 out yesterday"
	LacksSense Lack = "sense" // "1 in the way", "1 was out but i put it back"
)

// A Query chooses loads from the book.
type Query struct {
	Pressing bool
	Today    bool
	Last     int
	State    string
	Result   string // "good" or "bad"
	Span     string // "yesterday", "this week", "last week", "this month", "last month"
	Count    bool   // how many there are is what is asked
	Bar      bool   // those with a side bar
	NoBar    bool   // those without one
}
