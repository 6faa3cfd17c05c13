package bot

import (
	"fmt"
	"math"
	"slices"
	"time"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// entitled names a load: "Load 14 “walnut tops”".
func entitled(l book.Load) string {
	text := fmt.Sprintf("Load %d", l.Number)
	if l.Title != "" {
		text += " " + quoted(l.Title)
	}
	if l.Revision > 1 {
		text += fmt.Sprintf(", revision %d", l.Revision)
	}
	return text
}

// stateSays tells a load's state.
var stateSays = map[book.State]string{
	book.Posted: "posted, waiting for its second check", book.Checked: "checked", book.Held: "on hold",
	book.Pressing: "in the press", book.Taken: "out, no result yet", book.Judged: "done", book.Dropped: "dropped",
}

func (t *turn) saysState(r *Reply, l book.Load) {
	r.say(Headline, entitled(l)+": "+stateSays[l.State]+".")
}

func (t *turn) saysDropped(r *Reply, l book.Load) {
	t.saysState(r, l)
	if !l.InAt.IsZero() && l.OutAt.IsZero() {
		r.say(Warning, fmt.Sprintf("By the book it went in at %s and did not come out; I call its time no more. “undo” brings it back.", clockFrom(t.m.At, l.InAt)))
	}
}

func (t *turn) saysUnchecked(r *Reply, l book.Load) {
	r.say(Headline, entitled(l)+": the check is withdrawn. It waits for a second check again.")
}

func (t *turn) saysHeld(r *Reply, l book.Load) {
	text := entitled(l) + " is on hold"
	if l.HeldFor != "" {
		text += ": " + quoted(l.HeldFor)
	}
	r.say(Headline, text+".")
	if l.HeldFrom == book.Pressing {
		r.say(Reason, "It lies in the press and its clock runs on.")
	}
	r.say(Figure, fmt.Sprintf("“clear %d” puts it back where it was.", l.Number))
}

func (t *turn) saysIn(r *Reply, l book.Load) {
	text := fmt.Sprintf("%s went in at %s", entitled(l), clockFrom(t.m.At, l.InAt))
	if l.Press != "" {
		text += ", press " + quoted(l.Press)
	}
	r.say(Headline, text+".")
	if l.Anyway {
		r.say(Reason, "It went in without a valid second check; that stands in the book.")
	}
	if l.Plan.Verdict == engine.Stop {
		r.say(Warning, "By its figures: "+verdictSays[engine.Stop]+". "+t.headlineOf(l.Plan))
	}
	if low, mid, high, ok := l.Plan.PressTime(); ok {
		text := "Usually done at " + clockFrom(l.InAt, l.InAt.Add(mid))
		if low != high {
			text += fmt.Sprintf(", could be %s to %s; I call when the latest is up", clockFrom(l.InAt, l.InAt.Add(low)), clockFrom(l.InAt, l.InAt.Add(high)))
		}
		r.say(Figure, text+".")
	}
	r.say(Warning, cautionHands)
}

const cautionHands = "Hands out while it pulls down; it does not stop for fingers."

func (t *turn) saysOut(r *Reply, l book.Load) {
	r.say(Headline, fmt.Sprintf("%s came out at %s after %s.", entitled(l), clockFrom(t.m.At, l.OutAt), duration(l.Pressed(t.m.At).Seconds())))
	if low, _, _, ok := l.Plan.PressTime(); ok && l.Pressed(t.m.At) < low {
		r.say(Reason, fmt.Sprintf("That is early: the glue takes %s at least. Leave it in clamps and do not work it yet.", duration(low.Seconds())))
	}
	if then := t.phrase.Command.Then; then != nil && then.Verb == grammar.Result {
		return
	}
	if note := t.phrase.Command.Note; note != "" && toneOf(note) != neither {
		r.note(note)
		r.say(Reason, quoted(note)+" is not written down as its result yet.") // "1 out, good, all tight"
	}
	r.say(Question, fmt.Sprintf("How did it come out? Like “%d result: good” or “%d result: joint 3 open”.", l.Number, l.Number))
}

// asksForVerdict asks about a result that tells neither good nor bad.
func (t *turn) asksForVerdict(r *Reply, l book.Load, finding string) {
	r.Verdict = engine.Ask
	r.loads(l)
	r.say(Question, fmt.Sprintf("Is %s good or bad? Say it like “%d result: good” or “%d result: joint 3 open”; nothing is written down yet.", quoted(finding), l.Number, l.Number))
}

func (t *turn) saysJudged(r *Reply, l book.Load) {
	text := entitled(l) + ": result " + quoted(l.Finding)
	if l.Good {
		r.say(Headline, text+". Good work.")
		return
	}
	r.say(Headline, text+".")
	st := t.styleOfPlan(l.Plan)
	causes := slices.DeleteFunc(book.Causes(l), func(c book.Cause) bool { return c.Margin > ample })
	if len(causes) == 0 {
		r.say(Reason, "The load's own figures do not say why. Look at the glue line: dry, starved or open?")
		return
	}
	r.say(Reason, "Likely causes by this load's own figures, the likeliest first:")
	for i, c := range causes {
		if i == 4 {
			break
		}
		if says := st.fill(causeSays[c.Reason], c.Figures, l.Plan.Values, l.Plan.Said, l.Plan.Assumed); says != "" {
			r.say(Figure, says)
		}
	}
}

// ample is the margin above which something is no likely cause; our estimate.
const ample = 0.5

// causeSays tells what can have spoilt a joint, with the load's own numbers.
var causeSays = map[book.CauseReason]string{
	book.FarJointUnderContact: "The far joint may have got {side_far_joint_kpa.low}; the glue needs {glue_min_kpa}.",
	book.ClosingTooHard:       "Closing the gap takes {closing_kpa} of the {side_far_joint_kpa} at the far joint.",
	book.OpenTimeOverrun:      "Lay-up takes {layup_load_s}; the glue can be too stiff after {closed_time_s.low}.",
	book.ColdShop:             "A cold shop: {shop_temp_c}, and the glue wants {min_temp_c} at least.",
	book.ProudTooSmall:        "The work stood only {proud_mm} proud; the fence may have taken the load.",
	book.UnevenWithoutMat:     "Strips that differ by {spread_mm} without a mat: the thin ones got little.",
	book.OutTooEarly:          "It came out early, after {press_time_min}; the glue takes {label_press_min} at least.",
}

func clockOf(at time.Time) string { return at.Format("15:04") }

// clockFrom shows a time with its day where that is not the day of from.
func clockFrom(from, at time.Time) string {
	at = at.In(from.Location())
	y, m, d := from.Date()
	switch days := int(time.Date(at.Year(), at.Month(), at.Day(), 0, 0, 0, 0, time.UTC).Sub(time.Date(y, m, d, 0, 0, 0, 0, time.UTC)).Hours() / 24); days {
	case 0:
		return clockOf(at)
	case 1:
		return clockOf(at) + " the next day"
	}
	return at.Format("15:04 on 2 January")
}

// card tells how a load stands. What was planned is shown only once it was
// checked, or to who planned it: the second check is independent.
func (t *turn) card(r *Reply, l book.Load) {
	text := entitled(l) + ": " + stateSays[l.State]
	switch {
	case l.State == book.Held && l.HeldFor != "":
		text += " (" + quoted(l.HeldFor) + ")"
	case l.State == book.Pressing:
		text += t.pressingTimes(l)
	case l.State == book.Dropped:
		text += " by " + callOf(l.Last().By)
	case l.State == book.Judged:
		text += ", result " + quoted(l.Finding)
	}
	r.say(Headline, text+".")
	who := "Posted by " + callOf(l.Poster)
	if l.HasValidCheck() {
		who += ", checked by " + callOf(l.Check.By)
		if l.Check.Own {
			who += " (their own load)"
		}
	}
	r.say(Figure, who+".")
	st := t.styleOfPlan(l.Plan)
	if isUnchecked(l) && t.m.From != l.Poster.ID && t.m.From != l.Author.ID {
		r.say(Figure, "To measure: "+toMeasure(l.Plan)+".")
		return
	}
	r.say(ReadAs, "Planned: "+st.understood(Thread{Said: statementOf(l.Plan.Said)})+".")
}

// pressingTimes tells since when a load lies in the press and till when.
func (t *turn) pressingTimes(l book.Load) string {
	text := " since " + clockFrom(t.m.At, l.InAt)
	if up, ok := l.UpAt(); ok {
		text += ", done by " + clockFrom(t.m.At, up)
	}
	return text
}

// styleOfPlan tells from the round numbers of a plan which units it was
// written in; the book keeps all of them alike.
func (t *turn) styleOfPlan(p book.Plan) style {
	inch, metric := 0, 0
	for f, v := range p.Said {
		n, ok := v.(unit.Number)
		if !ok || f.Dimension() != unit.Distance {
			continue
		}
		mm := f.SI(n) * 1000
		switch {
		case near(mm/25.4*32, 0.01) && !near(mm, 0.01):
			inch++
		case near(mm*2, 0.01):
			metric++
		}
	}
	return styleOf(metric > inch || metric == inch && t.settings.Metric, Thread{})
}

// near reports whether v is a whole number but for off.
func near(v, off float64) bool { return math.Abs(v-math.Round(v)) < off }

// toMeasure names what the second person can measure of a plan.
func toMeasure(p book.Plan) string {
	var out []string
	for _, m := range measurable {
		if book.Covers(p.Said, m.field) {
			out = append(out, m.name)
		}
	}
	if len(out) == 0 {
		return "strips, bar and gauge"
	}
	return listed(out, "and")
}

// A measuredPart is a field that a tape, a gauge or a meter reads, and its name.
type measuredPart struct {
	field unit.Field
	name  string
}

var measurable = []measuredPart{
	{unit.BarHeight, "bar height"}, {unit.StripThickness, "strip thickness"}, {unit.StripWidth, "strip width"},
	{unit.StripCount, "number of strips"}, {unit.Vacuum, "gauge"}, {unit.VacuumPercent, "gauge"}, {unit.VacuumAbsolute, "gauge"},
	{unit.BarWidth, "bar width"}, {unit.MatThickness, "mat"}, {unit.CoreThickness, "core"}, {unit.SledThickness, "sled"},
	{unit.Opening, "press opening"}, {unit.ShopTemp, "shop temperature"}, {unit.WoodMoisture, "wood moisture"},
}
