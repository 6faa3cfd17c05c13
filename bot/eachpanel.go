package bot

import (
	"strconv"

	"presshand/engine/unit"
)

// panelsTold is how many panels the force on one is told of; 0 where the face is that
// of a sled or a bed.
func (w worked) panelsTold() int {
	n, _ := w.stated(unit.PanelCount).(unit.Number)
	wide := w.question.Said.Has(unit.PanelWidth) || w.question.Said.Has(unit.StripWidth) || w.question.Said.Has(unit.StripWidths)
	if n < 2 || !wide {
		return 0
	}
	return int(n)
}

// onEach tells the force on one panel and on all of them together: "On each panel 4.72
// tons (41.9 kN), could be 4.57 to 4.86 tons; on all 6 together 28.3 tons (252 kN)".
func (s style) onEach(f unit.Field, v unit.Value, w worked) string {
	one, ok := v.(unit.Triple)
	n := w.panelsTold()
	if f != unit.FaceForce || !ok || n == 0 || one.Mid == nil {
		return ""
	}
	return "On each panel " + s.triple(f, one) + "; on all " + strconv.Itoa(n) + " together " + s.both(f, float64(n)**one.Mid)
}
