package bot

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// someAre sets pieces apart by two bare numbers: "some are 8 and some are 12".
var someAre = regexp.MustCompile(`(?i)\b(?:some|half|most|one|ones|others?|rest|few|couple|board|piece|driest|low)\b[^.;\d]*(\d+(?:[.,]\d+)?)\b[^;\d]*\b(?:some|half|one|ones|others?|rest|another|few|couple|wettest|high)\b[^.;\d]*(\d+(?:[.,]\d+)?)\b[^\d]*$`)

// noMoisture are words beside numbers that are lengths or times.
var noMoisture = regexp.MustCompile(`(?i)\d ?(in|inch|inches|mm|cm|ft|"|am|pm|o'?clock|min|h|hrs?)\b|\d ?"|\b(wide|thick|long|glued|pressed|started|went in|came out)\b`)

// wetApart reads "some are 8 and some are 12" of wood whose moisture was told last: no
// pieces of one panel are so thick one and so another.
func (t *turn) wetApart(p grammar.Phrase) grammar.Phrase {
	last := []unit.Field{unit.WoodMoisture, unit.WoodMoistureLow, unit.WoodMoistureHigh}
	if t.before.empty() || p.NewStart || p.Command != nil || len(p.Facts)+len(p.Choices)+len(p.Changes) > 0 || !slices.ContainsFunc(t.before.Latest, func(f unit.Field) bool { return slices.Contains(last, f) }) {
		return p
	}
	said := someAre.FindStringSubmatch(t.m.Text)
	if said == nil || noMoisture.MatchString(t.m.Text) {
		return p
	}
	var facts []grammar.Fact
	for _, text := range said[1:] {
		v, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
		if err != nil || !isLikely(unit.WoodMoisture, unit.Number(v)) {
			return p
		}
		facts = append(facts, amendment(unit.WoodMoistureLow, unit.PercentOf, grammar.Amendment{Value: v, Text: text}))
	}
	low, high := facts[0].Value.(unit.Number), facts[1].Value.(unit.Number)
	switch {
	case low == high:
		return p
	case low < high:
		facts[1].Field = unit.WoodMoistureHigh
	default:
		facts[0].Field = unit.WoodMoistureHigh
	}
	p.Facts, p.Amends = facts, nil
	p.Unused = slices.DeleteFunc(slices.Clone(p.Unused), func(w string) bool { return slices.Contains(said[1:], w) })
	return p
}

var (
	// timeOfDay are words of when it gets warm or cold, and of what warms.
	timeOfDay = regexp.MustCompile(`(?i)\b(mornings?|afternoons?|evenings?|arvo|noon|midday|lunch\w*|nights?|tonight|overnight|dawn|dusk|sun|heat\w*|heater|stove|radiators?)\b`)
	// itGets is said before how warm it is.
	itGets = regexp.MustCompile(`(?i)\b(?:it|it'?s|it'?ll|gets?|getting|hits?|be|is|was|goes|climbs?|drops?|rises?|falls?|reach(?:es)?|warms|cools)(?: (?:be|to|at|about|around|only|near|nearer|closer|more|like|up|down|just|over|under|a|good|all|the|way))* $`)
)

// heatsUp is said before what a shop is warmed to: "if we get it up to 21".
var heatsUp = regexp.MustCompile(`(?i)\b(?:get|bring|heat|warm|crank|turn|bump|put)(?:s|ed|ing)? (?:it|that|the (?:shop|room|place|heat|heating|stove))? ?(?:all the way |back )?up (?:to )?(?:about |around |maybe |say )*$`)

// degreesThen takes a bare number beside a time of the day, or behind a word of heating,
// for how warm the shop is then, where the thread tells how warm it is: "and in the afternoon it's 88".
func (t *turn) degreesThen(a grammar.Amendment) (grammar.Fact, bool) {
	x, told := t.before.Said.find(unit.ShopTemp)
	old, _ := x.Value.(unit.Number)
	before, _, found := strings.Cut(t.m.Text, a.Text)
	warmed := heatsUp.MatchString(before) && !t.before.Said.has(unit.Vacuum)
	if !told || !found || a.Unit.Symbol != "" || !warmed && (!timeOfDay.MatchString(t.m.Text) || !itGets.MatchString(before)) {
		return grammar.Fact{}, false
	}
	now := amendment(unit.ShopTemp, t.unitOf(x), a)
	n, _ := now.Value.(unit.Number)
	return now, isLikely(unit.ShopTemp, n) && math.Abs(float64(n-old)) <= furthestOff && (!warmed || n > old)
}

// andAt asks the same at another figure: "and at 70?".
var andAt = regexp.MustCompile(`(?i)^\W*(ok |so )?(and|or)( what| how)?( about)?( if (it is|its|it's))? at [\d.,]+\W*$`)

// degreesAgain takes the number of "and at 70?" for the shop's temperature where that and
// no vacuum was told: it is no answer to what was asked for.
func (t *turn) degreesAgain(a grammar.Amendment) (grammar.Fact, bool) {
	x, told := t.before.Said.find(unit.ShopTemp)
	gauge := t.before.Said.has(unit.Vacuum) || slices.ContainsFunc(t.before.Pending, func(p Pending) bool { return p.Field == unit.Vacuum })
	if !told || a.Unit.Symbol != "" || gauge || !andAt.MatchString(t.m.Text) {
		return grammar.Fact{}, false
	}
	now := amendment(unit.ShopTemp, t.unitOf(x), a)
	n, _ := now.Value.(unit.Number)
	old, _ := x.Value.(unit.Number)
	return now, isLikely(unit.ShopTemp, n) && math.Abs(float64(n-old)) <= furthestOff
}

// furthestOff is how far one shop's temperature lies from another that is asked about with
// it, in °C; our estimate.
const furthestOff = 25

// stripsAre tells what strips have become without a word for which way.
var stripsAre = regexp.MustCompile(`(?i)\b(?:strip|stave|slat|lam|lamella|board|piece|stick)s? (?:are|is|come|came|comes|end|ended|measure|measures|went|got)\b(?: (?:out|up|in|at|only|just|more|like|really|actually|about|to|down|now))* [\d./,½¼¾⅛⅜⅝⅞ -]+`)

// nearThickness takes "the strips are 28 now" of strips 45 wide and 30 thick for how
// thick they are: they are near that and far from the width.
func (t *turn) nearThickness(p grammar.Phrase) grammar.Phrase {
	const near = 0.2 // as a logarithm; our estimate
	said := t.before.Said.facts()
	wide, isWide := said.Number(unit.StripWidth)
	thick, isThick := said.Number(unit.StripThickness)
	if !isWide || !isThick || p.NewStart || p.Command != nil || stated(p.Facts, unit.StripThickness) || saysWide.MatchString(t.m.Text) || !stripsAre.MatchString(t.m.Text) {
		return p
	}
	for i, f := range p.Facts {
		n, isNumber := f.Value.(unit.Number)
		if f.Field != unit.StripWidth || !isNumber || n <= 0 || float64(n) == thick || float64(n) == wide {
			continue
		}
		off := math.Abs(math.Log(float64(n) / thick))
		if off < near && 2*off < math.Abs(math.Log(float64(n)/wide)) {
			p.Facts = slices.Clone(p.Facts)
			p.Facts[i].Field = unit.StripThickness
		}
	}
	return p
}

// pushes moves the thread's start: "push it back to 2".
var pushes = regexp.MustCompile(`(?i)\b(?:push|move|slide|slip|shift|bump|delay)(?:ed|s)? (?:it|that|things|everything|the day) (?:all )?(?:back |out |off |up |on )?(?:to|till|until) (?:about |around )?\d{1,2}\W*$`)

// pushedTo takes the bare hour to which a day's plan is pushed for its start.
func (t *turn) pushedTo(a grammar.Amendment) (grammar.Fact, bool) {
	x, told := t.before.Said.find(unit.StartTime)
	if !told || a.Unit.Symbol != "" || a.Value != math.Trunc(a.Value) || a.Value < 1 || a.Value > 12 || t.before.Asks[0].About != grammar.Schedule || !pushes.MatchString(t.m.Text) {
		return grammar.Fact{}, false
	}
	return grammar.Fact{Field: unit.StartTime, Value: nearerHalf(60*math.Mod(a.Value, 12), minutesOf(x.Value)), Text: a.Text}, true
}

// tankIs is said before how much a reservoir holds.
var tankIs = regexp.MustCompile(`(?i)\b(?:tank|reservoir|receiver|cylinder)(?:'?s| is| was| holds)(?: only| just| about| actually| really| a)* $`)

// tankHolds takes "tank's 30" for the volume where the thread tells one.
func (t *turn) tankHolds(a grammar.Amendment) (grammar.Fact, bool) {
	x, told := t.before.Said.find(unit.PressVolume)
	before, _, found := strings.Cut(t.m.Text, a.Text)
	if !told || !found || a.Unit.Symbol != "" || a.Value <= 0 || !tankIs.MatchString(before) {
		return grammar.Fact{}, false
	}
	return amendment(unit.PressVolume, t.unitOf(x), a), true
}
