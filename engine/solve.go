package engine

import (
	"fmt"
	"math"

	"presshand/engine/glue"
	"presshand/engine/unit"
)

// GoalVerdict is the goal of a verdict instead of a figure; it stands for good.
const GoalVerdict unit.Field = "verdict"

// SolveFor answers a question backwards: which value of an input gives the
// wanted figure, at the middle of every uncertain input. The answer is that of
// the question with the value put in, and holds the value itself. An empty goal
// stands for contact pressure at the far joint, or for a flat strip. Where no
// value gives the figure the answer tells the nearest that can be had. A figure of the
// face, asked for beside joints, is answered as one. Two goals are an error.
func SolveFor(q Question, field unit.Field, goal unit.Facts) (Answer, error) {
	s, err := newSolver(q, field, goal)
	if err != nil {
		return Answer{}, err
	}
	if needs, err := s.lacking(); err != nil || len(needs) > 0 {
		return Answer{About: q.About, Verdict: Ask, Needs: needs, Values: unit.Facts{}, Assumed: unit.Facts{}}, err
	}
	if whole(field) {
		return s.answer(s.solveCount())
	}
	at := s.solve()
	if s.figure == unit.WidthChange && s.want > 0 && !at.met { // so much change, which way is not said
		other := *s
		other.want = -s.want
		if back := other.solve(); back.met {
			return other.answer(back)
		}
	}
	return s.answer(at)
}

// ContactPressure returns the pressure at which the glue that was said, or the
// room's, or else the usual one makes contact: what a question solved backwards
// aims at where it names no figure.
func ContactPressure(said, room unit.Facts) unit.Pressure {
	b := &builder{q: Question{Said: said, Room: room}, a: Answer{Assumed: unit.Facts{}}}
	return glue.Contact(b.glue())
}

// A solver looks for the value of a field, in the field's own unit.
type solver struct {
	q         Question
	field     unit.Field
	figure    unit.Field
	want      float64 // in the unit of the figure
	low, high float64 // where to look
	covered   bool    // the bar counts as covered to its top
	sure      bool    // over the ranges, not at the mids
	refused   error   // why the figure could not be given last
}

// A solution is where a goal is met, or where it comes nearest.
type solution struct {
	at    float64
	met   bool
	moves bool  // the figure hangs on the field
	jump  bool  // the figure jumps over the goal here, which nothing gives exactly
	safe  bool  // at a jump: this side of it is more than enough
	every bool  // wherever it can be given the figure is enough
	ends  error // why the figure cannot be given beyond
	last  bool  // it cannot be given at any greater value
}

func newSolver(q Question, field unit.Field, goal unit.Facts) (*solver, error) {
	if len(goal) > 1 {
		return nil, fmt.Errorf("goal has %d figures, want one", len(goal))
	}
	if err := finiteFacts(goal); err != nil {
		return nil, err
	}
	q.Said = q.Said.Clone()
	for f := range goal {
		if len(q.For) == 0 && f != GoalVerdict {
			q.For = []unit.Field{f}
		}
	}
	for _, f := range overruled(q.Said, field) {
		delete(q.Said, f)
	}
	for f := range goal {
		if q.About == Side && ofFace[f] {
			q.About = Face
		}
	}
	s := &solver{q: q, field: field}
	var ok bool
	if s.low, s.high, ok = searched(field, q); !ok {
		return nil, fmt.Errorf("input is %q, want one with a number", field)
	}
	if field == unit.Vacuum {
		s.high = s.ambient()
	}
	switch field {
	case unit.BarHeight, unit.PanelWidth, unit.StripWidth, unit.StripCount:
		s.covered = !q.Said.Has(unit.Cover) && q.Said.Word(unit.BarDenied) != "none"
	}
	return s, s.aim(goal)
}

// aim takes the goal, or the usual one of the topic.
func (s *solver) aim(goal unit.Facts) error {
	for f, v := range goal {
		if f == GoalVerdict {
			s.figure = f
			return nil
		}
		n, ok := v.(unit.Number)
		if !ok {
			return fmt.Errorf("goal %s is %v, want a number", f, v)
		}
		s.figure, s.want = f, float64(n)
		return nil
	}
	switch s.q.About {
	case Flatten:
		s.figure = GoalVerdict
	case Side, Load:
		contact := ContactPressure(s.q.Said, s.q.Room)
		s.figure, s.want = unit.SideFarJoint, float64(unit.GlueContact.Number(contact.Pascals()))
	default:
		return fmt.Errorf("goal of a question about %q is missing, want a figure", s.q.About)
	}
	return nil
}

// ambient is the most vacuum that there can be, in kPa.
func (s *solver) ambient() float64 {
	pa, err := s.builder(s.q).ambient()
	if err != nil {
		return 110
	}
	return float64(unit.Ambient.Number(pa.Mid))
}

// builder returns a builder that keeps to the mids, or where the solver wants to
// be sure takes the ranges too.
func (s *solver) builder(q Question) *builder {
	q.Why = false
	b := &builder{q: q, exact: !s.sure, a: Answer{Values: unit.Facts{}, Assumed: unit.Facts{}}}
	return b
}

// with returns the question with a value put in.
func (s *solver) with(v float64) Question {
	q := s.q
	q.Said = q.Said.Clone()
	if s.field == unit.FenceThickness {
		q.Said[unit.StackLayers] = fenced(s.builder(q).layers(), v)
	} else {
		q.Said[s.field] = unit.Number(v)
	}
	if h, ok := q.Said.Number(unit.BarHeight); s.covered && ok {
		q.Said[unit.Cover] = unit.Number(h)
	} else if h, ok := q.Room.Number(unit.BarHeight); s.covered && ok {
		q.Said[unit.Cover] = unit.Number(h)
	}
	return q
}

// forward returns the wanted figure at a value; for flatness what the vacuum has
// to spare, for another verdict 1 where it is good and −1 where it is not. No
// number where the figure cannot be given.
func (s *solver) forward(v float64) float64 {
	b := s.builder(s.with(v))
	if s.refused = answererOf(s.q.About)(b); s.refused != nil {
		return nan
	}
	switch {
	case s.figure != GoalVerdict:
		return s.plain(b.mid(s.figure))
	case s.q.About == Flatten:
		return b.flatMargin()
	}
	if a, _ := b.answer(); a.Verdict == Good {
		return 1
	}
	return -1
}

// plain returns a figure without the sign that only says which way it goes.
func (s *solver) plain(v float64) float64 {
	if s.figure == unit.Cup && s.want > 0 {
		return math.Abs(v)
	}
	return v
}

// mid returns the middle of a figure given, the least where there are several
// levels, no number where it is not given.
func (b *builder) mid(f unit.Field) float64 {
	switch v := b.a.Values[f].(type) {
	case unit.Triple:
		if v.Mid != nil {
			return *v.Mid
		}
	case unit.Triples:
		least := nan
		for _, t := range v {
			if t.Mid != nil && !(*t.Mid >= least) {
				least = *t.Mid
			}
		}
		return least
	}
	return nan
}

// flatMargin is what is left of the vacuum once the strip is flat and, where a
// glue line is pressed, has its contact pressure: at the least where the ranges
// count.
func (b *builder) flatMargin() float64 {
	p, need := b.a.Values[unit.FacePressure].(unit.Triple), b.a.Values[unit.FlattenNeed].(unit.Triple)
	if p.Low == nil || need.High == nil {
		return nan
	}
	margin := *p.Low - *need.High
	if b.a.Values.Has(unit.FlattenLeft) {
		margin -= float64(unit.GlueContact.Number(float64(glue.Contact(b.glue()))))
	}
	return margin
}

// lacking returns what the question needs besides the field itself.
func (s *solver) lacking() ([]unit.Field, error) {
	answer := answererOf(s.q.About)
	if answer == nil {
		return nil, fmt.Errorf("topic is %q, want one that the engine computes", s.q.About)
	}
	b := s.builder(s.with(math.Sqrt(math.Max(s.low, 1e-3) * s.high)))
	if err := answer(b); err != nil {
		return nil, nil // out of range there, it may not be elsewhere
	}
	if b.a.Values.Has(s.figure) || s.figure == GoalVerdict && len(b.a.Checks) > 0 {
		return nil, nil
	}
	return b.a.Needs, nil
}
