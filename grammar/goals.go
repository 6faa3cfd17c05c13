package grammar

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
)

// A goalFigure is a figure that a question can be solved for, with the words that
// name it before its number ("a reach of 12 in") or behind it ("1/16 proud").
type goalFigure struct {
	field  unit.Field
	about  Topic
	before string
	behind string
}

var goalFigures = []goalFigure{
	{unit.SideIdeal, Side, `(by the rule|ideal( side)?( pressure)?)`, `(ideal|by the rule)`},
	{unit.BarReach, Side, `(reach|reaches|reaching|as far as)`, `reach`},
	{unit.BarCovered, Side, `(covered height|height that pushes|pushing height)`, `(covered|that pushes)`},
	{unit.Snap, Side, `(snap(s|ping)?( flat| down)?( pressure)?)`, `(snap( pressure)?|to snap)`},
	{unit.Rise, Side, `(rises?|crown|pops? up|stands? up|humps? up|bows? up)`, `(rise|crown)`},
	{unit.Buckle, Side, `(buckl(e|es|ing)( pressure)?|lift(s|ing)?( off)?)`, `(buckling|before (it|they|the strips|strips) (lifts?|buckles?))`},
	{unit.Closing, Side, `(closing( pressure)?|(close|shut) (it|the gap|the crook))`, `(to (close|shut)|closing)`},
	{unit.SideNet, Side, `(net( side)?( pressure)?)`, `(net|left over)`},
	{unit.FlattenNeed, Flatten, `(flattening( pressure)?|takes?|needs?|need to flatten)`, `(to flatten|to go flat)`},
	{unit.Ambient, Face, `(ambient|outside|air pressure|barometer)`, `(ambient|outside|of air)`},
	{unit.Proud, Stack, `(proud( of the fence)?)`, `(standing )?proud`},
	{unit.MatLow, Stack, `(thin(nest)? (strips|ones|boards)( get| need)?)`, `(thin(nest)? (strips|ones|boards)|thin)`},
	{unit.Clearance, Stack, `(clearance|head.?room)`, `(clearance|of room|to spare|spare|head.?room)`},
	{unit.StackHeight, Stack, `(stack|(stack|total|overall) height)`, `((high )?stack|total|in all|overall)`},
	{unit.LayupPanel, Glue, `(lay.?up( time)?)`, `(lay.?up|lay (it )?up)`},
	{unit.ClosedTime, Glue, `(closed( assembly)?( time)?)`, `(closed( assembly)?( time)?|closed)`},
	{unit.OpenTime, Glue, `(open( assembly)?( time)?)`, `(open( assembly)? time)`},
	{unit.PressTime, Glue, `(press(ing)? time|clamp time)`, `(press(ing)? time|clamp time|the press|clamps)`},
	{unit.UltimateVacuum, Pump, `(ultimate( vacuum)?|best vacuum|final vacuum)`, `(ultimate|best)`},
	{unit.Hold, Pump, `(holds?|holding|lasts?|stays?)`, `(hold|holding|(after|when|once|without) the (pump|power)|without (the )?(pump|power))`},
	{unit.Emc, Move, `(emc|equilibrium( moisture)?( content)?|settles?|ends? up)`, `(emc|equilibrium)`},
	{unit.WidthChange, Move, `(shrinks?|shrinking|shrinkage|swells?|swelling|moves?|moving|movement|changes?|grows?|expands?|comes? in)`, `(movement|shrinkage|swelling|shrinking|change|of change)`},
	{unit.Cup, Move, `(cups?|cupping)`, `(cup|of cup)`},
}

// Words between a figure's name and its number, and its number and its name.
const (
	upToNumber = `(\s+(of|is|at|to|about|by|a|an|the|least|most|only|no|not|more|than|less|under|up|for|around|me|us|it|gets?|over|below))*\s*[:=]?\s*$`
	upToName   = `^\s*((of|at|on|in|the|a|an|by|for|from|to|side|worth|above|stand|stands|standing|be|pressure)\s+)*`
)

type goalPattern struct {
	goalFigure
	before, behind *regexp.Regexp
}

var goalPatterns = compileGoals()

func compileGoals() []goalPattern {
	var out []goalPattern
	for _, g := range goalFigures {
		out = append(out, goalPattern{
			g, regexp.MustCompile(`(?i)\b` + g.before + upToNumber), regexp.MustCompile(`(?i)` + upToName + g.behind + `\b`),
		})
	}
	return out
}

// freelyMeant are the figures that a quantity alone means, where one of some
// fields is looked for: grams are those of the glue, tons those of the face.
var freelyMeant = []struct {
	field  unit.Field
	about  Topic
	sought []unit.Field
}{
	{unit.FaceForce, Face, []unit.Field{unit.Vacuum, unit.PanelWidth, unit.PanelLength, unit.Altitude, unit.Ambient}},
	{unit.GlueMass, Glue, []unit.Field{unit.PanelCount, unit.StripCount, unit.PanelWidth, unit.PanelLength, unit.StripLength, unit.StripWidth, unit.StripThickness, unit.LabelSpread}},
	{unit.JointArea, Glue, []unit.Field{unit.PanelCount, unit.StripCount, unit.PanelWidth, unit.PanelLength, unit.StripLength, unit.StripWidth, unit.StripThickness}},
	{unit.Pump, Pump, []unit.Field{unit.PumpSpeed, unit.PressVolume, unit.Opening, unit.Vacuum, unit.PumpLimit, unit.Leak}},
}

// A wantedFigure is the figure that the amount at an item is of.
type wantedFigure struct {
	field      unit.Field
	about      Topic
	item       int
	start, end int // where the figure's name stands
}

// backwards reads a question of which value gives a figure that is named, or the
// only one that its quantity can mean.
func (r *reader) backwards() {
	if r.amountsIn(0, len(r.items)) == 0 {
		return // nothing is wanted
	}
	sought, span, found := r.sought()
	if !found {
		sought = r.solving
	}
	if sought == "" || r.phrase.Perils != nil || sought == unit.Vacuum && r.pushAsked() {
		return
	}
	w, named := r.wantedFigure(sought)
	if !named {
		r.refuseGoal()
		if found && (sought == unit.Cup || sought == unit.Bow) && (r.mentions(kindAsk, "flatten") || r.wordIn("flattens", "flatten", "flattened")) {
			r.solveFor(sought, span, Flatten)
		}
		if found && sought != r.solving && (sought == unit.WedgeForce || r.pressureWanted()) {
			r.solveFor(sought, span, Side)
		}
		return
	}
	r.solveFor(sought, span, w.about)
	r.dropCues(w.start, w.end)
	r.useWords(w.start, w.end)
	a := r.askFor(sought)
	v, u, _ := r.valueOf(r.items[w.item].amount, w.field)
	r.items[w.item].used = true
	a.Goal = map[unit.Field]Fact{w.field: {Field: w.field, Value: unit.Number(r.directed(w, v)), Unit: u, Text: r.items[w.item].text}}
}

// refuseGoal refuses a pressure on a joint or a face that is no number to work with.
func (r *reader) refuseGoal() {
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.form != formBad || !r.items[i].amount.is(unit.Pressing) {
			continue
		}
		if f, _ := r.figureNear(i); f != "" {
			r.items[i].used = true
			r.refuse(f, r.items[i].text, limits[unit.Pressing].want)
		}
	}
}

// directed gives a change of width its sign: what shrinks is less than nothing.
func (r *reader) directed(w wantedFigure, v float64) float64 {
	if w.field != unit.WidthChange {
		return v
	}
	name := strings.ToLower(r.text[w.start:w.end])
	if strings.Contains(name, "shrink") || strings.Contains(name, "come") || strings.Contains(strings.ToLower(r.text), "how dry") {
		return -v
	}
	return v
}

// wantedFigure finds the amount that is wanted of a figure.
func (r *reader) wantedFigure(sought unit.Field) (wantedFigure, bool) {
	for i := range r.items {
		if !r.free(i) || r.onLabel(i) {
			continue
		}
		if w, ok := r.namedFigure(i, sought); ok {
			return w, true
		}
	}
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.bare() || r.onLabel(i) {
			continue
		}
		for _, m := range freelyMeant {
			if slices.Contains(m.sought, sought) && r.fits(i, m.field) && r.plausible(m.field, sought) {
				return wantedFigure{m.field, m.about, i, 0, 0}, true
			}
		}
	}
	return wantedFigure{}, false
}

// plausible reports whether a quantity alone can mean a figure here: a force may
// be the wedge's, a time that of the press.
func (r *reader) plausible(f, sought unit.Field) bool {
	switch f {
	case unit.FaceForce:
		return !r.mentions(kindNoun, "wedge", "bar", "joint") && r.within(0, len(r.items), kindRole, "drive") < 0
	case unit.GlueMass:
		return !r.mentions(kindNoun, "wedge")
	case unit.Pump:
		return (sought != unit.Vacuum || r.saidFlow() && r.said(unit.Content)) && (r.saidFlow() || sought == unit.PumpSpeed) && !(sought == unit.Leak && r.said(unit.Leaking))
	}
	return true
}

// fits reports whether the amount at item i can be of a figure.
func (r *reader) fits(i int, f unit.Field) bool {
	am := r.items[i].amount
	if am.form == formPair || am.form == formBad || am.link == linkTimes || i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTimes {
		return false
	}
	if am.bare() && f.Dimension() != unit.Distance {
		return false
	}
	v, _, ok := r.valueOf(am, f)
	if !ok && f == unit.FaceForce && am.is(unit.Weight) && am.value != nil && in(am.unit.Symbol, "lb", "kg") && r.within(0, len(r.items), kindGlue) < 0 { // pounds of force
		u := unit.PoundF
		if am.unit.Metric {
			u = unit.KGF
		}
		am.unit = &u
		v, _, ok = r.valueOf(am, f)
	}
	return ok && impossible(f, v) == ""
}

// namedFigure tells of which figure the amount at item i is by the words around it.
func (r *reader) namedFigure(i int, sought unit.Field) (wantedFigure, bool) {
	left, right := r.around(i)
	before, behind := r.text[left:r.items[i].start], r.text[r.items[i].end:right]
	for _, p := range goalPatterns {
		if p.field == sought || !r.suits(p, sought) || !r.fits(i, p.field) {
			continue
		}
		if at := p.behind.FindStringIndex(behind); at != nil {
			return wantedFigure{p.field, p.about, i, r.items[i].end + at[0], r.items[i].end + at[1]}, true
		}
		if at := p.before.FindStringIndex(before); at != nil {
			return wantedFigure{p.field, p.about, i, left + at[0], left + at[1]}, true
		}
	}
	return wantedFigure{}, false
}

// suits reports whether a figure can be meant where the words that name it mean
// something else too.
func (r *reader) suits(p goalPattern, sought unit.Field) bool {
	switch p.field {
	case unit.Cup, unit.WidthChange, unit.Emc:
		return sought != unit.Vacuum && (p.field != unit.Cup || r.mentions(kindNoun, "core") || r.mentions(kindAir, "service"))
	case unit.FlattenNeed:
		return sought == unit.Cup || sought == unit.Bow || sought == unit.StripThickness || sought == unit.StripWidth || sought == unit.StripLength
	case unit.Hold:
		return sought == unit.Leak || sought == unit.Vacuum
	case unit.Ambient:
		return sought == unit.Altitude
	}
	return true
}

// around returns where the words around item i begin and end in the text: up to
// the next amount or mark.
func (r *reader) around(i int) (left, right int) {
	left, right = 0, len(r.text)
	for j := i - 1; j >= 0; j-- {
		if r.items[j].amount != nil || r.items[j].list != nil || r.isBreak(j) && r.items[j].brk != '-' && r.items[j].brk != ':' {
			left = r.items[j].end
			break
		}
	}
	for j := i + 1; j < len(r.items); j++ {
		if r.items[j].amount != nil || r.items[j].list != nil || r.isBreak(j) && r.items[j].brk != '-' {
			right = r.items[j].start
			break
		}
	}
	return min(left, r.items[i].start), max(right, r.items[i].end)
}

// pressureWanted reports whether a pressure stands beside a joint or a face, or
// behind a word of wanting.
func (r *reader) pressureWanted() bool {
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.is(unit.Pressing) {
			continue
		}
		if f, _ := r.figureNear(i); f != "" || r.wanted(i) && r.items[i].amount.unit.Symbol != "inHg" {
			return true
		}
	}
	return false
}

// solveFor makes the message ask for a field, in place of what the words that ask
// for it ask elsewhere.
func (r *reader) solveFor(f unit.Field, span []int, about Topic) {
	r.solving = f
	if len(span) == 2 {
		r.dropCues(span[0], span[1])
		r.useWords(span[0], span[1])
	}
	if a := r.askFor(f); a != nil {
		a.About = about
		return
	}
	for k := len(r.phrase.Asks) - 1; k >= 0; k-- { // one question is solved at a time
		if r.phrase.Asks[k].Solve != "" {
			r.phrase.Asks = append(r.phrase.Asks[:k:k], r.phrase.Asks[k+1:]...)
		}
	}
	r.phrase.Asks = append([]Ask{{About: about, Solve: f}}, r.phrase.Asks...)
}

func (r *reader) askFor(f unit.Field) *Ask {
	for k := range r.phrase.Asks {
		if r.phrase.Asks[k].Solve == f {
			return &r.phrase.Asks[k]
		}
	}
	return nil
}

// dropCues drops what the cues between two places of the text ask by themselves,
// but for the field that is solved for.
func (r *reader) dropCues(start, end int) {
	for i := range r.items {
		if r.items[i].start < end && r.items[i].end > start && r.is(i, kindAsk) && (cue(r.items[i].id).Solve == "" || cue(r.items[i].id).Solve != r.solving) {
			r.replacesCue(i)
		}
	}
}

// onLabel reports whether the sentence of item i, up to the end of its clause,
// speaks of what the container says.
func (r *reader) onLabel(i int) bool {
	if !r.means(kindRole, "label") {
		return false
	}
	from, _ := r.sentence(i)
	_, to := r.clause(i)
	for k := from; k < to; k++ {
		if r.is(k, kindRole, "label") && r.items[k].word != "can" {
			return true
		}
	}
	return false
}

// useWords marks the words between two places of the text that say nothing else.
func (r *reader) useWords(start, end int) {
	for i := range r.items {
		it := &r.items[i]
		if it.start >= end || it.end <= start || it.amount != nil || it.list != nil {
			continue
		}
		if firmness[it.word] != "" && r.solving == unit.MatFirm {
			it.word = "" // which it is is asked, not said
		}
		if it.kind == kindNone || it.kind == kindFact {
			it.used, it.meaning = true, meaning{}
		}
	}
}

// refusedTwice lists what was said of a field beside a number that cannot be: the
// field is asked for, and neither value is used.
func (r *reader) refusedTwice() {
	for _, x := range r.phrase.Refused {
		for _, f := range r.phrase.Facts {
			if f.Field == x.Field && x.Field != "" && f.Text != x.Text {
				r.unuse(f.Text)
			}
		}
	}
}

// statedFigure reports whether a pressure that no vacuum can be is told of a joint
// or a face.
func (r *reader) statedFigure(i int) bool {
	if r.solving != "" {
		return false
	}
	if f, _ := r.figureNear(i); f == "" {
		return false
	}
	v, _, ok := r.valueOf(r.items[i].amount, unit.Vacuum)
	return ok && impossible(unit.Vacuum, v) != "" && (r.has(unit.Vacuum) || r.otherPressure(i))
}

// beyondVacuum reports whether the pressure at item i is more than any vacuum's, and
// another is told that can be one or it is wanted of a joint: "I read somewhere 150 psi is needed".
func (r *reader) beyondVacuum(i int) bool {
	const least, most = 1, 101000 // Pa: plainly what a gauge shows
	cannot := func(k int) bool {
		am := r.items[k].amount
		if pa := am.unit.SI(am.float()); pa > least && pa < most {
			return false
		}
		v, _, ok := r.valueOf(am, unit.Vacuum)
		return ok && impossible(unit.Vacuum, v) != ""
	}
	if from, _ := r.clause(i); r.solving != "" || r.items[i].amount.minus || r.within(from, i, kindVacuum) >= 0 || !cannot(i) {
		return false
	}
	for k := range r.items {
		if am := r.items[k].amount; k != i && am != nil && !am.dead && !am.hearsay && am.is(unit.Pressing) && !cannot(k) && !r.barometric(k) {
			return true
		}
	}
	return r.pushWanted(i)
}
