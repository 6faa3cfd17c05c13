package engine

import "presshand/engine/unit"

// A Topic is what a question is about.
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
)

// A Verdict judges a check or a whole answer.
type Verdict string

const (
	None Verdict = "none" // a plain figure, nothing to judge
	Good Verdict = "good"
	Care Verdict = "care"
	Stop Verdict = "stop"
	Ask  Verdict = "ask" // the figure asked for cannot be given yet
)

// A Question is a topic and what is known.
type Question struct {
	About Topic
	Said  unit.Facts   // stated by the message or its thread
	Room  unit.Facts   // the room's own defaults; they fill Assumed
	Why   bool         // keep the working
	For   []unit.Field // figures asked for by name, if any: what they lack is needed

	// GoOn is asked now and then while a plan is looked for. Once it says no, the
	// answer is the best found so far with its bound; nil lets it run to its end.
	GoOn func() bool
}

// An Answer is what the engine makes of a question. Its figures stand under the
// names of the contract, in the units that the names end in.
type Answer struct {
	About    Topic
	Verdict  Verdict
	Values   unit.Facts
	Assumed  unit.Facts
	Needs    []unit.Field
	Lacks    map[unit.Field][]unit.Field // figures left out, each with the fields it would take
	Checks   []Check
	Advice   []Finding // what would help, and what the figures hang on
	Cautions []Caution
	Working  []Step
	Day      *Day // what a schedule sets; nil elsewhere
}

// A Check judges one thing.
type Check struct {
	Name    string // short, for a list: "far joint"
	Verdict Verdict
	Finding
}

// A Finding is a reason with its figures, put in words elsewhere.
type Finding struct {
	Reason  Reason
	Figures unit.Facts // what the sentence needs, by field
}

// A Reason names why a check came out as it did. Each has a sentence in the
// conversation.
type Reason string

// A Caution names a danger of the load at hand. Each has a sentence in the
// conversation.
type Caution string

// A Step is the working behind one figure.
type Step struct {
	Name     string   `json:"name"`    // the figure's field
	Formula  string   `json:"formula"` // in symbols
	Numbers  string   `json:"numbers"` // with the numbers put in
	Result   string   `json:"result"`  // with its unit
	Source   string   `json:"source"`
	Standing Standing `json:"standing"`
}

// A Standing says how far a source was looked at.
type Standing = unit.Standing

// The standings of a source, see [unit.Standing].
const (
	Seen           = unit.Seen
	Computed       = unit.Computed
	CommonPractice = unit.CommonPractice
	FromMemory     = unit.FromMemory
	Estimate       = unit.Estimate
)

// Worst returns the worst of some verdicts: stop over care over good; none
// where there is nothing to judge.
func Worst(vs ...Verdict) Verdict {
	worst := None
	for _, v := range vs {
		if severity[v] > severity[worst] {
			worst = v
		}
	}
	return worst
}

var severity = map[Verdict]int{None: 0, Good: 1, Care: 2, Stop: 3}
