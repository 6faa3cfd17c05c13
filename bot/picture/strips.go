package picture

import (
	"errors"
	"fmt"
	"strings"

	"presshand/engine/unit"
)

// A StripLayout shows the strips of each panel as they will lie, seen from
// above, the first at the top.
type StripLayout struct {
	Title       string
	Note        string
	Panels      []StripPanel
	More        int    // panels made differently that are not drawn
	First, Last string // what the first and the last strip lie against, if it is known
	Units       Units
}

// A StripPanel is one panel's strips in their order; or, of one that the stock
// does not make, how far it goes.
type StripPanel struct {
	Name   string
	Widths []unit.Length
	Target unit.Length // what they must fill; zero: not said
	Trim   unit.Length // what is to come off beyond it
	Over   unit.Length // what is left over beyond both
	Wedge  unit.Length // the gap that a wedge fills after the last; zero: none
	Reach  unit.Length // without strips: how wide a panel they make
	Short  unit.Length // without strips: what that lacks
}

// Draw lays the strips out. It fails without a strip, and on widths that
// cannot be.
func (s StripLayout) Draw() (*Drawing, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	d := &Drawing{Alt: s.alt()}
	scale := s.scale()
	y := d.heading(or(s.Title, "Strips as they will lie"), s.note(scale))
	columns, w := s.columns()
	for i := 0; i < len(s.Panels); i += columns {
		bottom := y
		for j := i; j < min(i+columns, len(s.Panels)); j++ {
			x := margin + float64(j-i)*(w+columnGap)
			bottom = max(bottom, s.drawPanel(d, s.Panels[j], box{x, y, x + w, 0}, scale))
		}
		y = bottom + 14
	}
	if s.More > 0 {
		y += 12
		d.text(s.others(), point{margin, y}, left, textSize).shows = "panels not drawn"
		y += 12
	}
	return d.finish(y), nil
}

func (s StripLayout) check() error {
	if len(s.Panels) == 0 {
		return errors.New("strip layout has no panel, want one at least")
	}
	for _, p := range s.Panels {
		if len(p.Widths) == 0 && p.Short <= 0 {
			return errors.New("panel has no strip, want one at least")
		}
		all := append([]unit.Length{p.Target, p.Trim, p.Over, p.Wedge, p.Reach, p.Short}, p.Widths...)
		if err := usable("strip", all...); err != nil {
			return err
		}
	}
	return nil
}

func (s StripLayout) others() string {
	if s.More == 1 {
		return "1 panel more, made differently, is not drawn."
	}
	return fmt.Sprintf("%d panels more, made differently, are not drawn.", s.More)
}

// note says what is to scale.
func (s StripLayout) note(scale float64) string {
	if s.Note != "" {
		return s.Note
	}
	note := "Widths to scale, joints numbered."
	for _, p := range s.Panels {
		if p.Wedge > 0 && p.wedgeHeight(scale) > p.Wedge.Metres()*scale+0.01 {
			note = "Widths to scale, only the wedge's gap is drawn larger. Joints numbered."
		}
	}
	return note
}

const (
	columnGap    = 14
	rowHeight    = 18  // points that a label takes
	leastStrip   = 3   // points that a strip should have to be seen
	leastWedge   = 22  // points that a wedge should have to be seen
	leastBoard   = 38  // points along a strip
	usualPanel   = 240 // points
	tallestPanel = 700 // points; above it narrow strips shrink
)

// columns returns how many panels go side by side, and how wide each may be.
func (s StripLayout) columns() (int, float64) {
	const page = Width - 2*margin
	half := (page - columnGap) / 2.0
	if len(s.Panels) < 2 {
		return 1, page
	}
	for _, p := range s.Panels {
		if p.gutter()+s.labelRoom(p)+leastBoard > half {
			return 1, page
		}
	}
	return 2, half
}

// scale returns points to the metre: room for the labels of the panel that
// needs most, within a page that is not endless.
func (s StripLayout) scale() float64 {
	narrow, most, scale := largest, unit.Length(0), 0.0
	for _, p := range s.Panels {
		for _, w := range p.Widths {
			if w > 0 {
				narrow = min(narrow, w)
			}
		}
		whole := p.whole()
		most = max(most, whole)
		if whole > 0 {
			scale = max(scale, rowHeight*float64(len(p.runs()))/whole.Metres())
		}
	}
	if most <= 0 {
		return 1000
	}
	return min(max(scale, usualPanel/most.Metres(), leastStrip/narrow.Metres()), tallestPanel/most.Metres(), 1200)
}

// whole is all that is drawn of a panel to scale.
func (p StripPanel) whole() unit.Length {
	if len(p.Widths) == 0 {
		return p.Reach + p.Short
	}
	return p.sum() + p.Wedge
}

func (p StripPanel) sum() unit.Length {
	sum := unit.Length(0)
	for _, w := range p.Widths {
		sum += w
	}
	return sum
}

func (p StripPanel) wedgeHeight(scale float64) float64 {
	return max(p.Wedge.Metres()*scale, leastWedge)
}

// A run is strips of one width next to each other that have one label.
type run struct {
	first, n int
	width    unit.Length
}

// leastRun is how many alike in a row are told together.
const leastRun = 4

func (p StripPanel) runs() []run {
	var out []run
	for i := 0; i < len(p.Widths); {
		n := 1
		for i+n < len(p.Widths) && whole(p.Widths[i+n]-p.Widths[i]) == 0 {
			n++
		}
		if n < leastRun {
			n = 1
		}
		out = append(out, run{i, n, p.Widths[i]})
		i += n
	}
	return out
}

func (s StripLayout) alt() string {
	var b strings.Builder
	b.WriteString("Strips as they will lie, joints numbered from the first.")
	if s.First != "" && s.Last != "" {
		fmt.Fprintf(&b, " First comes the %s, last the %s.", clean(s.First), clean(s.Last))
	}
	for i, p := range s.Panels {
		fmt.Fprintf(&b, " %s: ", or(clean(p.Name), fmt.Sprintf("Panel %d", i+1)))
		for j, r := range p.runs() {
			if j > 0 {
				b.WriteString(", ")
			}
			b.WriteString(s.runText(r))
		}
		if len(p.Widths) > 0 {
			fmt.Fprintf(&b, "; together %s", s.Units.stated(p.sum()))
		}
		if p.Wedge > 0 {
			fmt.Fprintf(&b, ", wedge in a gap of %s", s.Units.length(p.Wedge))
		}
		if told := s.outcome(p); told != "" {
			if len(p.Widths) > 0 {
				b.WriteString(", ")
			}
			b.WriteString(told)
		}
		b.WriteByte('.')
	}
	if s.More > 0 {
		b.WriteString(" " + s.others())
	}
	return b.String()
}

func (s StripLayout) runText(r run) string {
	if r.n > 1 {
		return fmt.Sprintf("%d × %s", r.n, s.Units.stated(r.width))
	}
	return s.Units.stated(r.width)
}

// outcome says how the strips answer what was wanted.
func (s StripLayout) outcome(p StripPanel) string {
	u := s.Units
	nothing := func(l unit.Length) bool { return u.length(l) == u.length(0) }
	switch {
	case len(p.Widths) == 0:
		return fmt.Sprintf("wanted %s, the pile makes up to %s, %s short", u.stated(p.Target), u.length(p.Reach), u.length(p.Short))
	case p.Target == 0:
		return ""
	case p.Wedge > 0:
		return "wanted " + u.stated(p.Target) + " with the wedge"
	case p.Trim == 0 && nothing(p.Over):
		return "fills the " + u.stated(p.Target) + " wanted"
	case p.Trim == 0:
		return fmt.Sprintf("wanted %s, %s over", u.stated(p.Target), u.length(p.Over))
	case nothing(p.Over):
		return fmt.Sprintf("wanted %s and %s to trim, nothing over", u.stated(p.Target), u.length(p.Trim))
	}
	return fmt.Sprintf("wanted %s and %s to trim, %s over", u.stated(p.Target), u.length(p.Trim), u.length(p.Over))
}
