package bot

import (
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// compose puts the answers to a thread's questions into one reply.
func (t *turn) compose(thread Thread, works []worked) Reply {
	room := t.profile.Said.facts()
	st := styleOf(t.settings.Metric, thread)
	r := Reply{Read: read(thread, room, works), Assumed: unit.Facts{}, Values: unit.Facts{}}
	for _, w := range works {
		r.also(w.want.About)
		if w.err != nil {
			r.trouble(w.err, t.settings.Metric, t.phrase.Facts...)
			continue
		}
		if t.guesses(w.answer) {
			continue
		}
		r.take(w.answer)
		d := st.drawn(w)
		d.along = along.MatchString(t.m.Text)
		r.Drawn = append(r.Drawn, d)
	}
	for f := range r.Read {
		delete(r.Assumed, f)
	}
	for f, v := range thread.Said.habits() {
		r.Assumed[f] = v
	}
	r.Verdict = overall(works)
	t.doubts(&r)
	for _, w := range works {
		if w.err == nil && !t.guesses(w.answer) {
			r.answer(st, w, max(maxFigures/len(works), minFigures))
		}
	}
	r.readBack(st, thread, t.phrase)
	r.notices(t.phrase, t.m.Text)
	for _, w := range works {
		if w.err != nil || w.answer.Verdict == engine.Ask || t.guesses(w.answer) {
			continue
		}
		if says := st.leftGoals(w); says != "" {
			r.say(Notice, says)
		}
	}
	r.warnings(thread, works)
	r.ask(st, t.phrase)
	return r
}

// guesses reports whether an answer takes a default for a field of which the
// message says something that cannot be: such an answer is not given.
func (t *turn) guesses(a engine.Answer) bool {
	for f := range a.Assumed {
		if doubted(t.phrase, f) {
			return true
		}
	}
	return false
}

// also notes one more topic.
func (r *Reply) also(about grammar.Topic) {
	switch {
	case r.About == "":
		r.About = about
	case r.About != about && !slices.Contains(r.Also, about):
		r.Also = append(r.Also, about)
	}
}

// take adds what an answer found to what the reply holds already.
func (r *Reply) take(a engine.Answer) {
	for f, v := range a.Values {
		if !r.Values.Has(f) {
			r.Values[f] = v
		}
	}
	for f, v := range a.Assumed {
		r.Assumed[f] = v
	}
	r.need(a.Needs...)
	for _, s := range a.Working {
		if !slices.Contains(r.Working, s) {
			r.Working = append(r.Working, s)
		}
	}
}

// overall is the worst verdict of the questions that could be answered.
func overall(works []worked) engine.Verdict {
	verdict, answered := engine.None, false
	for _, w := range works {
		if w.err == nil && w.answer.Verdict != engine.Ask {
			answered = true
			verdict = engine.Worst(verdict, w.answer.Verdict)
		}
	}
	if !answered {
		return engine.Ask
	}
	return verdict
}

// doubts holds the answer back where the message says two things of one field,
// or a number that cannot be.
func (t *turn) doubts(r *Reply) {
	r.note(t.phrase.Unused...)
	if len(t.lacks) > 0 {
		r.need(t.lacks...)
		r.Verdict = engine.Ask
	}
	for _, c := range t.phrase.Clashes {
		r.need(statedField(c.Field))
		r.note(c.Texts...)
		r.Verdict = engine.Ask
	}
	for _, x := range t.phrase.Refused {
		r.note(x.Text)
		if x.Field == "" {
			continue
		}
		r.need(statedField(x.Field))
		r.Verdict = engine.Ask
	}
}

// statedField is the name by which a reply reports f.
func statedField(f unit.Field) unit.Field {
	if f == unit.VacuumAbsolute || f == unit.VacuumPercent {
		return unit.Vacuum
	}
	return f
}

// maxFigures is how many lines stand between the headline and what was read.
const maxFigures = 8

// minFigures is how many of them each of several answers gets at least.
const minFigures = 3

// answer adds the lines of one answer: the headline with the figure asked for,
// what the verdict hangs on, then the other figures.
func (r *Reply) answer(st style, w worked, lines int) {
	head, used := st.headline(w)
	if head == "" {
		return
	}
	kind := Headline
	if r.Verdict == engine.Ask {
		kind = Figure
	}
	r.say(kind, verdictWord(w.answer.Verdict)+capital(head))
	most := min(maxSentences, (lines+1)/4)
	left := lines - r.judge(st, w, most) - r.advise(st, w, most)
	for _, line := range st.figureLines(w, used) {
		if left <= 0 {
			break
		}
		r.say(Figure, line)
		left--
	}
}

// maxSentences is how many lines say why, and how many advise.
const maxSentences = 2

// judge adds the checks, and says those that the verdict hangs on; it returns
// how many it said.
func (r *Reply) judge(st style, w worked, most int) (lines int) {
	for _, c := range byGravity(w.answer.Checks) {
		says := st.verdictOn(c, w)
		if says == "" || r.judged(c.Name, says) {
			continue
		}
		r.Checks = append(r.Checks, Judged{c.Name, c.Verdict, says})
		if c.Reason == engine.ReasonVacuumAboveAmbient && w.want.Solve == unit.Vacuum {
			continue // nobody said so much
		}
		if c.Reason == engine.ReasonOutOfReach && !w.answer.Values.Has(w.want.Solve) {
			continue // the headline says it
		}
		if c.Verdict == engine.None || c.Verdict == engine.Good && w.answer.Verdict != engine.Good || lines >= most && c.Verdict != engine.Stop || r.said(says) || r.said(st.sentence(c.Finding, w)) {
			continue
		}
		r.say(Reason, says)
		lines++
	}
	return lines
}

// advise adds what would help most; it returns how many lines that took.
func (r *Reply) advise(st style, w worked, most int) (lines int) {
	advice := slices.Clone(w.answer.Advice)
	slices.SortStableFunc(advice, func(a, b engine.Finding) int { return urgency[b.Reason] - urgency[a.Reason] })
	for _, f := range advice {
		if r.idle(f, w) {
			continue
		}
		if says := st.sentence(f, w); says != "" && (lines < most || mustSay(f.Reason)) && !r.said(says) {
			r.say(Reason, says)
			lines++
		}
	}
	return lines
}

// mustSay reports whether advice is told however much there is to tell.
func mustSay(r engine.Reason) bool {
	switch r {
	case engine.ReasonCrushUnknown, engine.ReasonKeepBack, engine.ReasonFrictionBound, engine.ReasonBothFaces:
		return true
	}
	return false
}

// idle reports whether advice is about something that nobody asked, or that was
// said already.
func (r *Reply) idle(f engine.Finding, w worked) bool {
	switch f.Reason {
	case engine.ReasonCrushUnknown:
		return !w.question.Said.Has(unit.Species) && !f.Figures.Has(unit.Crushing)
	case engine.ReasonFrictionBound:
		headed := slices.ContainsFunc(r.Lines, func(l Line) bool { return strings.Contains(l.Text, withoutFriction) })
		return headed || preloaded(w.answer)
	case engine.ReasonVacuumWithin:
		return !w.question.Said.Has(unit.Altitude) && !w.question.Said.Has(unit.Ambient)
	}
	return false
}

// preloaded reports whether a wedge gives a joint more than the rule does.
func preloaded(a engine.Answer) bool {
	far, ok1 := middle(a, unit.SideFarJoint)
	ideal, ok2 := middle(a, unit.SideIdeal)
	return a.Values.Has(unit.Preload) && ok1 && ok2 && far > ideal
}

// urgency ranks advice of which only the first finds room.
var urgency = map[engine.Reason]int{
	engine.ReasonOutOfReach: 9, engine.ReasonNoBearing: 9, engine.ReasonFormulaEnds: 9, engine.ReasonBarTooLow: 8, engine.ReasonBarBarely: 8, engine.ReasonBarUnderUpperFace: 8, engine.ReasonBothFaces: 8, engine.ReasonBelowContact: 8,
	engine.ReasonCoverBar: 7, engine.ReasonWiderBar: 6, engine.ReasonBarForContact: 5, engine.ReasonDriveAgain: 5,
	engine.ReasonFoamGas: 5, engine.ReasonHumpUp: 5, engine.ReasonFaceTheBack: 5, engine.ReasonSolved: 4,
	engine.ReasonHoursHeld: 6, engine.ReasonHoursOvernight: 6, engine.ReasonHoursCleared: 6, engine.ReasonNightCleared: 6, engine.ReasonStopped: 5,
	engine.ReasonFrictionBound: -1, engine.ReasonEachBarStep: -1, engine.ReasonEachVacuumStep: -1, engine.ReasonCrushUnknown: -2,
}

func (r *Reply) said(text string) bool {
	return slices.ContainsFunc(r.Lines, func(l Line) bool { return strings.HasSuffix(l.Text, text) })
}

func (r *Reply) judged(name, says string) bool {
	for _, c := range r.Checks {
		if c.Name == name && c.Says == says {
			return true
		}
	}
	return false
}

// byGravity returns checks with the worst first.
func byGravity(checks []engine.Check) []engine.Check {
	out := slices.Clone(checks)
	slices.SortStableFunc(out, func(a, b engine.Check) int { return gravity[b.Verdict] - gravity[a.Verdict] })
	return out
}

var gravity = map[engine.Verdict]int{engine.Good: 1, engine.Care: 2, engine.Ask: 2, engine.Stop: 3}

func verdictWord(v engine.Verdict) string {
	switch v {
	case engine.Good:
		return "Good. "
	case engine.Care:
		return "Take care. "
	case engine.Stop:
		return "Stop. "
	}
	return ""
}

// readBack says what was understood and what was assumed.
func (r *Reply) readBack(st style, thread Thread, p grammar.Phrase) {
	line := ""
	if said := st.understood(thread); said != "" {
		line = "Read as " + said + "."
	}
	if assumed := st.assumed(r.Assumed); assumed != "" {
		line = strings.TrimSpace(line + " Assumed " + assumed + ".")
	}
	for _, x := range p.Taken {
		line += " Took " + quoted(x.Typed) + " for " + quoted(x.As) + "."
	}
	r.say(ReadAs, strings.TrimSpace(line))
}
