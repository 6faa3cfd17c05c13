package book

import (
	"cmp"
	"slices"
	"time"

	"presshand/engine/unit"
)

// A Query chooses loads of a room, the newest first. The zero Query chooses
// the latest ones, whatever their state.
type Query struct {
	States   []State    // any of these; empty: all
	InPress  bool       // those that lie in the press, held ones too
	Press    string     // those in the press of this name
	From, To time.Time  // open between these: posted before To, last spoken of at From or later
	Like     unit.Facts // any of glue, species, bar_height_mm and strip_thickness_mm, as Compare has it
	Bar      *bool      // with a bar, or without one
	Limit    int        // at most so many; 0 is 50, never more than 500
}

// MostLoads is the most that one query returns.
const MostLoads = 500

// Most returns how many loads the query returns at most.
func (q Query) Most() int {
	switch {
	case q.Limit <= 0:
		return 50
	case q.Limit > MostLoads:
		return MostLoads
	}
	return q.Limit
}

// Today returns the day of the time t in its own time zone, for a query.
func Today(t time.Time) (from, to time.Time) {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, t.Location()), time.Date(y, m, d+1, 0, 0, 0, 0, t.Location())
}

// Traits are what queries find a load by.
type Traits struct {
	Glue, Species  string
	Bar, Thickness *unit.Number // in mm; nil where the plan has none
}

// Traits returns what queries find the load by.
func (l Load) Traits() Traits {
	t := Traits{Glue: l.Plan.word(unit.GlueClass), Species: l.Plan.word(unit.Species)}
	if _, denied := l.Plan.Figure(unit.BarDenied); !denied {
		t.Bar = l.Plan.number(unit.BarHeight)
	}
	t.Thickness = l.Plan.number(unit.StripThickness)
	return t
}

func (p Plan) word(f unit.Field) string {
	v, _ := p.Figure(f)
	w, _ := v.(unit.Word)
	return string(w)
}

func (p Plan) number(f unit.Field) *unit.Number {
	v, _ := p.Figure(f)
	if n, ok := v.(unit.Number); ok {
		return &n
	}
	return nil
}

// Window returns what a number may be to count as like n under f: the
// tolerance of a second check.
func Window(f unit.Field, n unit.Number) (low, high unit.Number) {
	tol := unit.Number(tolerance(f, float64(n)) * (1 + 1e-9))
	return n - tol, n + tol
}

// Matches reports whether q chooses l, its limit aside.
func (q Query) Matches(l Load) bool {
	switch {
	case len(q.States) > 0 && !slices.Contains(q.States, l.State),
		q.InPress && !l.InPress(),
		q.Press != "" && l.Press != q.Press,
		!q.To.IsZero() && !l.PostedAt.Before(q.To),
		!q.From.IsZero() && l.Last().At.Before(q.From):
		return false
	}
	t := l.Traits()
	return (q.Bar == nil || *q.Bar == (t.Bar != nil)) && q.like(t)
}

func (q Query) like(t Traits) bool {
	near := func(f unit.Field, has *unit.Number) bool {
		want, asked := q.Like[f].(unit.Number)
		if !asked {
			return true
		}
		low, high := Window(f, want)
		return has != nil && *has >= low && *has <= high
	}
	glue, species := q.Like.Word(unit.GlueClass), q.Like.Word(unit.Species)
	return (glue == "" || glue == t.Glue) && (species == "" || species == t.Species) &&
		near(unit.BarHeight, t.Bar) && near(unit.StripThickness, t.Thickness)
}

// newestFirst sorts loads as queries return them.
func newestFirst(ls []Load) {
	slices.SortFunc(ls, func(a, b Load) int { return cmp.Compare(b.Number, a.Number) })
}
