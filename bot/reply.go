package bot

import (
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// A Reply answers one message: for people in Lines and Text, for machines in
// the rest, which [Reply.AppendJSON] writes. One without a line is silence.
type Reply struct {
	About    grammar.Topic
	Also     []grammar.Topic
	Read     unit.Facts // what the message and its thread said
	Assumed  unit.Facts // defaults that the answer used
	Unused   []string   // as typed
	Needs    []unit.Field
	Verdict  engine.Verdict
	Values   unit.Facts
	Checks   []Judged
	Cautions []string
	Working  []engine.Step
	Loads    []int    // loads of the book that the reply is about
	States   []string // their states
	Revision int      // the revision of a single load, 0 for none

	Lines   []Line   // the reply as people see it
	Text    string   // the same as plain text
	Drawn   []Drawn  // what a picture can be drawn of, see [Reply.Draw]
	Picture *Picture // drawn by whoever sends the reply, where wanted
}

// A Judged is a check with its sentence.
type Judged struct {
	Name    string
	Verdict engine.Verdict
	Says    string
}

// A Drawn is a question and its answer, to draw a picture of.
type Drawn struct {
	Question engine.Question
	Answer   engine.Answer
	style    style
	title    string // "" for the usual one
	caption  string // what of several things is drawn
	along    bool   // the push along the panel is asked for
}

// A Line is one line of a reply. Nothing typed by a person stands in it except
// quoted, so that it may be shown by any service as it is.
type Line struct {
	Kind LineKind
	Text string
}

// LineKind says what a line of a reply is, so that a service can dress it.
type LineKind int

const (
	Headline LineKind = iota // the verdict and the figure asked for
	Reason                   // why the verdict came out so, and what would help
	Figure                   // a further figure
	ReadAs                   // what was understood, and what was assumed
	Notice                   // what was not used, and what it would change
	Warning                  // a caution
	Question                 // what is asked back
)

func (r *Reply) say(kind LineKind, text string) {
	if text != "" && !(kind == Warning && slices.Contains(r.Lines, Line{kind, text})) {
		r.Lines = append(r.Lines, Line{kind, text})
	}
}

// finished fills in what every reply has.
func (r Reply) finished() Reply {
	if r.Verdict == "" {
		r.Verdict = engine.None
	}
	var text strings.Builder
	for i, l := range r.Lines {
		if i > 0 {
			text.WriteByte('\n')
		}
		if l.Kind == Warning {
			text.WriteString("! ")
		}
		text.WriteString(l.Text)
	}
	r.Text = text.String()
	return r
}

// note adds what was not used, each once.
func (r *Reply) note(unused ...string) {
	for _, u := range unused {
		if !containsFold(r.Unused, u) {
			r.Unused = append(r.Unused, u)
		}
	}
}

func containsFold(list []string, s string) bool {
	for _, x := range list {
		if strings.EqualFold(x, s) {
			return true
		}
	}
	return false
}

func (r *Reply) need(fs ...unit.Field) {
	for _, f := range fs {
		if !slices.Contains(r.Needs, f) {
			r.Needs = append(r.Needs, f)
		}
	}
}
