package bot

import (
	"fmt"
	"regexp"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// lostShare is what part of the planned vacuum a gauge may lack before it is taken for lost:
// more than gauges differ; our estimate.
const lostShare = 0.1

// gaugeFell tells of a gauge that went down, or of a pump that stopped: "gauge is down to
// 15", "pump tripped, its at 0.6".
var gaugeFell = regexp.MustCompile(`(?i)\b(?:gauge|gage|needle|dial|vacuum|vac|it)\b[^.?!,;]{0,16}\b(?:down to|dropped to|fell to|fallen to|only at|only reads|lost)\b|\bpump\b[^.?!,;]{0,12}\b(?:tripped|died|quit|stopped|off|dead)\b`)

// vacuumLost answers a gauge that shows less than a load in the press was planned with.
func (t *turn) vacuumLost(l book.Load) (Reply, bool) {
	text := strings.ToLower(t.m.Text)
	if !l.InPress() || len(t.phrase.Facts) != 1 || t.phrase.Facts[0].Field != unit.Vacuum || asksByTone(text) || ordering.MatchString(text) || !gaugeReads.MatchString(text) && !gaugeFell.MatchString(text) {
		return Reply{}, false
	}
	shown, isNumber := t.phrase.Facts[0].Value.(unit.Number)
	planned, told := l.Plan.Said[unit.Vacuum].(unit.Number)
	if !isNumber || !told || float64(shown) > (1-lostShare)*float64(planned) {
		return Reply{}, false
	}
	st := t.styleOfPlan(l.Plan)
	r := Reply{About: grammar.Book, Verdict: engine.Stop, Values: unit.Facts{}}
	r.Read = read(Thread{Said: Statement(nil).stating(t.phrase.Facts)}, nil, nil)
	r.note(t.phrase.Unused...)
	r.loads(l)
	r.say(Headline, fmt.Sprintf("%s%s is in the press with %s; it was planned with %s. Nothing is changed in the book.", verdictWord(engine.Stop), entitled(l), st.both(unit.Vacuum, float64(shown)), st.both(unit.Vacuum, float64(planned))))
	r.say(Reason, "Look at once at the pump, the vent, the hose, the seal and the film. The joints get less than the plan counts on, and one that opens as the glue stiffens stays open.")
	r.say(Question, fmt.Sprintf("“hold %d: vacuum lost” writes it down.", l.Number))
	return r, true
}
