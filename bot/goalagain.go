package bot

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// goalAgain takes a pressure that no vacuum can have, or that a message would
// settle for, for what the thread's backwards question is to reach: "I'd settle
// for 30 psi".
func (t *turn) goalAgain(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || len(p.Choices)+len(p.Drops) > 0 || p.Command != nil {
		return p
	}
	w := t.before.Asks[0]
	if len(p.Asks) > 0 && !onJointAgain(w, p) {
		return p
	}
	if ask, ok := inOtherTime(w, p); ok {
		p.Amends, p.Asks = nil, []grammar.Ask{ask}
		return p
	}
	text := wantedPressure(p, strings.Contains(strings.ToLower(t.m.Text), "settle for"))
	if len(p.Facts)+len(p.Refused) == 0 && len(p.Amends) == 1 && forAnother.MatchString(t.m.Text) && !t.atVacuum(w, p.Amends[0]) {
		text = t.barePressure(p.Amends[0])
	}
	if w.Solve == "" || text == "" || w.About != grammar.Side && w.About != grammar.Load {
		return p
	}
	asked := t.bot.Parse("what bar for "+text+" at the far joint", grammar.Habit{Metric: t.settings.Metric}).Asks
	if len(asked) == 0 {
		return p
	}
	goal, ok := asked[0].Goal[unit.SideFarJoint]
	if !ok {
		return p
	}
	field := unit.SideFarJoint
	if firstGoal(engine.Topic(w.About), w.Goal).Has(unit.SideFirstJoint) && len(p.Asks) == 0 || len(p.Asks) == 1 && p.Asks[0].For[0] == unit.SideFirstJoint {
		field = unit.SideFirstJoint
	}
	goal.Field, goal.Text = field, text
	p.Amends = nil
	p.Facts, p.Refused = slices.DeleteFunc(slices.Clone(p.Facts), isVacuum), nil
	p.Asks = []grammar.Ask{{About: w.About, Solve: w.Solve, Goal: map[unit.Field]grammar.Fact{field: goal}}}
	return p
}

// atVacuum: "at 22" is nearer to the 25 inHg of the thread than to the 40 psi that are
// wanted.
func (t *turn) atVacuum(w Wanted, a grammar.Amendment) bool {
	x, _ := t.before.Said.find(unit.Vacuum)
	old, isNumber := x.Value.(unit.Number)
	if !isNumber || a.Unit.Symbol != "" || a.Value <= 0 || !atWord.MatchString(t.m.Text) {
		return false
	}
	off := math.Abs(math.Log(a.Value / writtenIn(t.unitOf(x), unit.Vacuum, old)))
	goal := unit.PSI
	if t.settings.Metric {
		goal = unit.KPa
	}
	for f, v := range w.Goal {
		if n, ok := v.(unit.Number); ok && f.Dimension() == unit.Pressing && math.Abs(math.Log(a.Value/writtenIn(goal, f, n))) <= off {
			return false
		}
	}
	return true
}

var atWord = regexp.MustCompile(`(?i)\bat\b`)

// onJointAgain: "and for 40 psi on the last joint" names again what is asked for.
func onJointAgain(w Wanted, p grammar.Phrase) bool {
	if len(p.Asks) != 1 || w.Solve == "" || len(p.Refused) != 1 || len(p.Facts) > 0 {
		return false
	}
	a := p.Asks[0]
	return a.About == grammar.Side && a.Solve == "" && len(a.For) == 1 && (a.For[0] == unit.SideFarJoint || a.For[0] == unit.SideFirstJoint)
}

// inOtherTime asks a backwards question again for another time: "3 min is fine".
func inOtherTime(w Wanted, p grammar.Phrase) (grammar.Ask, bool) {
	if w.Solve == "" || len(w.Goal) != 1 || len(p.Amends) != 1 || len(p.Facts)+len(p.Refused)+len(p.Changes) > 0 {
		return grammar.Ask{}, false
	}
	a := p.Amends[0]
	for f := range w.Goal {
		if f.Dimension() == unit.Lasting && a.Unit.Dimension == unit.Lasting && a.Value > 0 {
			return grammar.Ask{About: w.About, Solve: w.Solve, For: w.For, Goal: map[unit.Field]grammar.Fact{f: amendment(f, a.Unit, a)}}, true
		}
	}
	return grammar.Ask{}, false
}

// forAnother asks a backwards question again for another figure.
var forAnother = regexp.MustCompile(`(?i)^\W*(ok |okay |and |or |then |now |what about |how about |so )*(for|at|to get) [\d.,/ ]+\W*$`)

// barePressure is a bare number as a pressure of the kind that the shop writes.
func (t *turn) barePressure(a grammar.Amendment) string {
	if a.Unit.Symbol != "" {
		return a.Text
	}
	if t.settings.Metric {
		return a.Text + " kPa"
	}
	return a.Text + " psi"
}

func isVacuum(f grammar.Fact) bool { return f.Field == unit.Vacuum }

// wantedPressure is the one pressure that a message states and that is not the
// vacuum, as typed; empty where there is none.
func wantedPressure(p grammar.Phrase, settles bool) string {
	if len(p.Facts) == 0 && len(p.Refused) == 1 && p.Refused[0].Field == unit.Vacuum {
		return p.Refused[0].Text
	}
	if settles && len(p.Facts) == 1 && isVacuum(p.Facts[0]) {
		return p.Facts[0].Text
	}
	return ""
}
