package bot

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// A worked is one question with what came of it.
type worked struct {
	want     Wanted
	question engine.Question
	answer   engine.Answer
	goal     unit.Facts      // what was solved for
	choice   *Alternative    // what was compared
	rivals   []engine.Answer // one for each value of it
	err      error
}

// figures answers what the engine computes: the thread's question, amended by
// the message.
func (t *turn) figures() (Reply, error) {
	thread := t.before.amended(t.phrase)
	if len(thread.Asks) == 0 {
		about := topicOf(thread.Said, thread.Compare)
		if about == "" {
			about = refusedTopic(t.phrase)
		}
		if about == "" {
			return t.adrift(thread)
		}
		thread.Asks = []Wanted{{About: about}}
	}
	if t.plansAnew() {
		thread.Load = 0
	}
	r := t.answered(thread, t.asks(grammar.Why))
	if t.remarksBesideLoad() {
		r.say(Question, fmt.Sprintf("Load %d stays as it is; to change it say it plainly, like “make it …”.", t.before.Load))
	}
	thread.Pending, thread.Warned = pending(r.Needs, t.phrase.Clashes), r.warned(thread.Warned)
	if err := t.keep(thread); err != nil {
		return Reply{}, err
	}
	for _, w := range t.phrase.Asks {
		if !computed(w.About) && w.About != grammar.Book {
			r.also(w.About)
		}
	}
	if t.asks(grammar.Words) {
		for _, line := range explained(t.phrase.Terms) {
			r.say(Notice, line)
		}
	}
	return r, nil
}

// plansAnew reports whether a message in a load's thread describes another load as a whole;
// what follows is said of that one.
func (t *turn) plansAnew() bool {
	return t.before.Load > 0 && (t.phrase.NewStart || len(t.phrase.Facts) >= wholeQuestion && !asksByTone(strings.ToLower(t.m.Text)))
}

// refusedTopic infers a topic from numbers that could not be taken.
func refusedTopic(p grammar.Phrase) grammar.Topic {
	var s Statement
	for _, r := range p.Refused {
		s = append(s, Said{Field: r.Field})
	}
	for _, c := range p.Clashes {
		s = append(s, Said{Field: c.Field})
	}
	return topicOf(s, nil)
}

// adrift answers a message that states something but leaves open what is asked.
func (t *turn) adrift(thread Thread) (Reply, error) {
	st := styleOf(t.settings.Metric, thread)
	said := st.understood(thread)
	if said == "" || t.strange() {
		return t.unknown(), nil
	}
	r := Reply{About: grammar.Load, Verdict: engine.Ask, Read: read(thread, t.profile.Said.facts(), nil), Values: unit.Facts{}}
	t.doubts(&r)
	if a, err := t.bot.Engine.Compute(engine.Question{About: engine.Load, Said: thread.Said.facts(), Room: t.profile.Said.facts()}); err == nil {
		r.need(slices.DeleteFunc(slices.Clone(a.Needs), func(f unit.Field) bool { return thread.Said.has(f) })...)
	}
	for _, f := range []unit.Field{unit.StripThickness, unit.Vacuum} {
		if len(r.Needs) == 0 && !thread.Said.has(f) {
			r.need(f)
		}
	}
	r.say(Headline, "I read "+said+". What do you want to know about it? For example: “side pressure”, “how much glue”, “press time”.")
	for _, c := range t.phrase.Clashes {
		r.say(Question, clashSays(c))
	}
	for _, x := range t.phrase.Refused {
		r.say(Question, cannotBe(x))
	}
	r.notices(t.phrase, t.m.Text)
	thread.Pending = pending(r.Needs, nil)
	return r, t.keep(thread)
}

// strange reports whether a message names nothing of the trade beside its
// measures: "bundles of shingle for a 20x30 roof".
func (t *turn) strange() bool {
	for _, f := range t.phrase.Facts {
		switch f.Field {
		case unit.PanelWidth, unit.PanelLength, unit.StripLength, unit.StripWidth, unit.StripThickness, unit.ShopTemp, unit.Altitude,
			unit.StartTime, unit.AtTime, unit.Note, unit.StructuralUse, unit.PanelCount, unit.PanelThickness:
		default:
			return false
		}
	}
	words := 0
	for _, u := range t.phrase.Unused {
		if !strings.ContainsAny(u, digits) {
			words++
		}
	}
	return words > 0
}

// answered works a thread's questions out.
func (t *turn) answered(thread Thread, why bool) Reply {
	room := t.profile.Said.facts()
	thread.Said = thread.covered()
	said := thread.Said.facts()
	works := make([]worked, 0, len(thread.Asks))
	for _, w := range thread.Asks {
		q := engine.Question{About: engine.Topic(w.About), For: w.For, Said: said, Room: thread.Said.yielding(room), Why: why, GoOn: t.goOn}
		if thread.lacksBar(w, room) {
			q.Said = thread.Said.with(Said{Field: unit.BarCount, Value: unit.Number(1)}).facts()
		}
		works = append(works, t.bot.work(q, w, thread.Compare))
	}
	return t.compose(thread, works)
}

// work answers one question: for each alternative, backwards, or plainly.
func (b *Bot) work(q engine.Question, w Wanted, compare []Alternative) worked {
	done := worked{want: w, question: q}
	if len(compare) > 0 {
		return b.compare(done, compare[0])
	}
	if w.Solve != "" {
		if solved, ok := b.solve(done); ok {
			return solved
		}
	}
	done.answer, done.err = b.Engine.Compute(q)
	return done
}

// solve answers backwards. It declines where the field asked for is what the
// question gives forwards anyway, or where nothing says what it should reach.
func (b *Bot) solve(w worked) (worked, bool) {
	w.goal = firstGoal(w.question.About, w.want.Goal)
	if len(w.goal) == 0 {
		w.goal = usualGoal(w.question, w.want.Solve)
		if w.goal.Has(unit.UltimateVacuum) { // it is what is to be held, not what has to be passed
			w.question.Said = w.question.Said.Clone()
			delete(w.question.Said, unit.Vacuum)
		}
	}
	if len(w.goal) == 0 || w.goal.Has(w.want.Solve) || isFigure(w.question.About, w.want.Solve) {
		w.goal = nil
		return w, false
	}
	w.answer, w.err = b.Engine.SolveFor(w.question, w.want.Solve, w.goal)
	if about := w.answer.About; about != "" {
		w.question.About, w.want.About = about, grammar.Topic(about)
	}
	return w, true
}

// firstGoal is the one of several goals that the topic is asked for first: one input
// cannot be made to give two figures.
func firstGoal(about engine.Topic, goal unit.Facts) unit.Facts {
	if len(goal) < 2 {
		return goal
	}
	for _, f := range append(slices.Clone(figuresOf[about]), slices.Sorted(maps.Keys(goal))...) {
		if goal.Has(f) {
			return unit.Facts{f: goal[f]}
		}
	}
	return nil
}

// usualGoal is what a field is solved for when no figure is named: that the glue
// makes contact where it gets least, that the work lies flat or fits, that the
// pump holds what it is to hold, that the wood does not move.
func usualGoal(q engine.Question, sought unit.Field) unit.Facts {
	contact := unit.GlueContact.Number(engine.ContactPressure(q.Said, q.Room).Pascals())
	good := unit.Facts{engine.GoalVerdict: unit.Word(engine.Good)}
	switch q.About {
	case engine.Flatten:
		return good
	case engine.Side, engine.Load:
		if sought == unit.Gap {
			return unit.Facts{unit.SideNet: contact}
		}
		return unit.Facts{unit.SideFarJoint: contact}
	case engine.Stack:
		switch sought {
		case unit.MatThickness, unit.MatFirm, unit.ThicknessSpread:
			return unit.Facts{unit.MatLow: contact}
		case unit.Opening:
			return good
		}
	case engine.Pump:
		v, said := q.Said[unit.Vacuum].(unit.Number)
		if said && (sought == unit.Leak || q.Said.Has(unit.Leak) && (sought == unit.PumpSpeed || sought == unit.PressVolume)) {
			return unit.Facts{unit.UltimateVacuum: v}
		}
	case engine.Move:
		mc, said := q.Said[unit.WoodMoisture].(unit.Number)
		if said && sought == unit.ServiceHumidity {
			return unit.Facts{unit.Emc: mc}
		}
	}
	return nil
}

// isFigure reports whether f is what a topic computes rather than what is stated:
// a cup is a figure of how wood moves, and stated where it is flattened.
func isFigure(about engine.Topic, f unit.Field) bool {
	return f != unit.Opening && f != unit.LayupPanel && f != unit.PressTime && slices.Contains(figuresOf[about], f)
}

// read returns what a thread said, as the reply reports it: every vacuum as a
// difference to the air, wishes together, what is solved for and what is compared.
func read(thread Thread, room unit.Facts, works []worked) unit.Facts {
	out := withWishes(thread.Said.facts())
	if out.Has(unit.VacuumAbsolute) || out.Has(unit.VacuumPercent) {
		if p, ok := engine.StatedVacuum(out, room); ok {
			out[unit.Vacuum] = unit.Vacuum.Number(p.Pascals())
		}
		delete(out, unit.VacuumAbsolute)
		delete(out, unit.VacuumPercent)
	}
	for _, w := range works {
		if w.goal != nil && !out.Has(unit.SolveFor) {
			out[unit.SolveFor] = unit.Word(w.want.Solve)
			out[unit.Goal] = w.goal
			if len(w.want.Goal) > 0 {
				out[unit.Goal] = w.want.Goal
			}
		}
	}
	for _, a := range thread.Compare {
		c, _ := out[unit.CompareWith].(unit.Facts)
		c = c.Clone()
		c[a.Field] = a.list()
		out[unit.CompareWith] = c
		delete(out, a.Field)
	}
	return out
}
