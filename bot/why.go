package bot

import (
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// maxSteps is how many steps of the working a reply shows; the rest stand in
// its data.
const maxSteps = 8

// why shows the working of the thread's last question.
func (t *turn) why() Reply {
	if t.before.empty() {
		r := Reply{About: grammar.Why}
		r.note(t.phrase.Unused...)
		if len(t.phrase.Terms) > 0 {
			for _, line := range explained(t.phrase.Terms) {
				r.say(Headline, line)
			}
			return r
		}
		r.say(Question, "Ask me something first, like “"+askExample(t.settings.Metric)+"”; then “why” shows how I got there.")
		return r
	}
	r := t.answered(t.before, true)
	r.also(grammar.Why)
	asked := r.About
	r.About, r.Also = grammar.Why, nil
	r.also(asked)
	r.showWorking()
	return r
}

// showWorking puts the steps in the place of the figures.
func (r *Reply) showWorking() {
	var kept []Line
	for _, l := range r.Lines {
		if l.Kind == Headline || l.Kind == ReadAs || l.Kind == Question {
			kept = append(kept, l)
		}
	}
	r.Lines = nil
	for _, l := range kept {
		if l.Kind == Headline {
			r.Lines = append(r.Lines, l)
		}
	}
	for i, s := range r.Working {
		if i == maxSteps {
			break
		}
		r.say(Figure, stepSays(s))
	}
	for _, l := range kept {
		if l.Kind != Headline {
			r.Lines = append(r.Lines, l)
		}
	}
}

// stepSays writes one step: what, how, with which numbers, and from where.
func stepSays(s engine.Step) string {
	name, ok := labels[unit.Field(s.Name)]
	if !ok {
		name = s.Name
	}
	text := capital(name) + ": " + s.Formula
	if s.Numbers != "" {
		text += "; " + s.Numbers
	}
	text += " → " + s.Result
	if s.Source != "" {
		standing := standingSays[s.Standing]
		if strings.Contains(s.Source, strings.TrimPrefix(strings.TrimSuffix(standing, ", not looked up"), "; ")) {
			standing = "" // the source says so itself
		}
		text += " (" + s.Source + standing + ")"
	}
	return text + "."
}

// standingSays tells how far a source can be trusted.
var standingSays = map[engine.Standing]string{
	engine.CommonPractice: "; common practice, no source",
	engine.FromMemory:     "; from memory, not looked up",
	engine.Estimate:       "; our estimate",
}
