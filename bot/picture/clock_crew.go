package picture

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
)

// A crewLabel names pieces of the crew's work of one kind.
type crewLabel struct {
	kind  string
	loads []int
	y     float64
}

func (l crewLabel) text() string {
	first, last := l.loads[0], l.loads[len(l.loads)-1]
	switch n := len(l.loads); {
	case n == 1:
		return l.kind + " " + strconv.Itoa(first)
	case last-first == n-1:
		return l.kind + " " + strconv.Itoa(first) + "–" + strconv.Itoa(last)
	}
	var each []string
	for _, n := range l.loads {
		each = append(each, strconv.Itoa(n))
	}
	return l.kind + " " + strings.Join(each, ",")
}

// Where the crew's labels stand, in points.
const (
	crewSize  = 11.5 // of their letters
	crewApart = 13
	crewNear  = 20 // how far one may stand from its bar
	crewBar   = 19
)

// drawCrew draws what the crew does, and names it beside: piece by piece, or
// what follows closely together, or else the table has it.
func (t *timetable) drawCrew() {
	x0, x1 := t.axis+3, t.axis+3+crewBar
	var labels []crewLabel
	for _, l := range t.Loads {
		u := l.Usual
		b := box{x0, t.y(u.LayUp), x1, t.y(u.LaidUp)}
		t.bar(b, skyTint, "lay-up", l, u.LayUp, u.LaidUp)
		labels = append(labels, crewLabel{"lay", []int{l.Number}, b.centre().y})
		if u.Out > u.Unload {
			b := box{x0, t.y(u.Unload), x1, t.y(u.Out)}
			t.bar(b, greenTint, "unload", l, u.Unload, u.Out)
			t.d.bars(b)
			labels = append(labels, crewLabel{"out", []int{l.Number}, b.centre().y})
		}
	}
	slices.SortStableFunc(labels, func(a, b crewLabel) int { return cmp.Compare(a.y, b.y) })
	if !t.nameCrew(labels, x1) {
		t.nameCrew(together(labels), x1)
	}
}

// together joins the labels of each kind that follow each other too closely.
func together(labels []crewLabel) []crewLabel {
	var out []crewLabel
	for i := 0; i < len(labels); {
		n := 1
		for i+n < len(labels) && labels[i+n].y-labels[i+n-1].y < crewApart {
			n++
		}
		kinds := map[string]*crewLabel{}
		var order []string
		for _, l := range labels[i : i+n] {
			if kinds[l.kind] == nil {
				kinds[l.kind] = &crewLabel{kind: l.kind}
				order = append(order, l.kind)
			}
			kinds[l.kind].loads = append(kinds[l.kind].loads, l.loads...)
		}
		middle := (labels[i].y + labels[i+n-1].y) / 2
		for k, kind := range order {
			l := *kinds[kind]
			slices.Sort(l.loads)
			l.y = middle + crewApart*(float64(k)-float64(len(order)-1)/2)
			out = append(out, l)
		}
		i += n
	}
	return out
}

// nameCrew writes labels beside the crew's bars, if each fits and comes to
// stand near its own.
func (t *timetable) nameCrew(labels []crewLabel, x float64) bool {
	wish, size := make([]float64, len(labels)), make([]float64, len(labels))
	for i, l := range labels {
		wish[i], size[i] = l.y, crewApart
	}
	at := upTo(spread(wish, size, t.top()), size, t.bottom())
	for i, l := range labels {
		wide := textWidth(l.text(), crewSize, false) > t.axis+crewColumn-x-11
		if wide || math.Abs(at[i]-wish[i]) > crewNear || at[i] < t.top()+crewApart/2.0-0.01 {
			return false
		}
	}
	for i, l := range labels {
		t.d.line(softInk, 0.8, point{x, l.y}, point{x + 7, at[i]})
		t.d.text(l.text(), point{x + 9, at[i] + 4}, left, crewSize).shows = "crew's work"
	}
	return true
}
