package grammar

import (
	"cmp"
	"presshand/engine/unit"
)

// A reader turns the items of a message into a phrase. Each of its passes binds
// what it is sure of and leaves the rest to the next.
type reader struct {
	text    string
	habit   Habit
	items   []item
	heard   heard
	system  *unit.Unit // what a bare length is in, where the message says so
	topic   Topic      // the first topic that a cue names
	solving unit.Field
	order   pairsOrder
	byPanel bool // strips are counted by the panel: "six to the panel"
	loose   bool // the part of the measure at hand was not named
	bound   []binding
	fixedAt []int     // items that correct the one before, without a word for it
	rewidth []string  // numbers that a stock was made of besides, as typed
	doubted []Refusal // numbers that cannot be, of which somebody only heard
	phrase  Phrase
}

// A binding is a value that was read for a field, before rivals are settled.
type binding struct {
	fact Fact
	from int  // the item that it stands at
	weak bool // hearsay or a guess: gives way to any other reading
}

func (r *reader) read() {
	r.wordsAhead()
	r.moreOfSize()
	r.comparing()
	r.conditions()
	r.metricMils()
	r.humidities()
	r.decimalCounts()
	r.onPaper()
	r.loseInTime()
	r.enumerated()
	r.halfAndHalf()
	r.labelCommas()
	r.plainBrackets()
	r.stripWishes()
	r.boardsPlanned()
	r.spokenHundreds()
	r.spokenTimes()
	r.bookTimes()
	r.findFixes()
	r.killForgotten()
	r.corrections()
	r.setAside()
	r.oldAndNew()
	r.killNeeds()
	r.killHelp()
	r.onTop()
	r.killSomeOf()
	r.killStacked()
	r.killAtATime()
	r.livesIn()
	r.theirAir()
	r.glueRoom()
	r.findStart()
	r.retitled()
	r.sized()
	r.findAsks()
	r.backwards()
	r.guessTopic()
	r.killFigures()
	if !r.command() {
		r.sayings()
	}
	r.settle()
	r.mood()
}

// setAside marks the numbers that are no figures of the panel.
func (r *reader) setAside() {
	r.killQuoted()
	r.killNames()
	r.killStrangers()
	r.killPapers()
	r.barsToDrinkIn()
	r.killPumpPressure()
	r.killThen()
	r.killOrdinals()
	r.killOthers()
	r.killTalk()
	r.killAside()
	r.killClaims()
	r.killHearsay()
	r.killIntended()
	r.killPast()
	r.useOther()
	r.killDenied()
	r.killPieces()
	r.killOneStart()
	r.pressIdle()
	r.killSquashed()
	r.killDropped()
	r.killDeviations()
	r.killRough()
	r.killNominal()
	r.killTimes()
	r.killEarlier()
	r.killWarmElsewhere()
	r.killUncut()
	r.killTotals()
	r.killInPassing()
}

// sayings binds what is said beside a command, each rule taking what those before it left.
func (r *reader) sayings() {
	checks := r.phrase.Command != nil && r.phrase.Command.Verb == Check
	r.partsBehind(checks)
	r.killBlemishes()
	r.formulas() // before a change is seen in "w = 2"
	r.changes()
	r.tables()
	r.withinThou()
	r.lots(r.endsAClause)
	if len(r.stockRows()) < 2 { // else each row has a count of its own
		r.labelledCounts()
		r.offStrips()
	}
	r.leakTests()
	r.mixedThick()
	r.structures()
	r.twoGauges()
	r.rates()
	r.watched()
	r.ratios()
	r.choicesOfWords()
	r.airs()
	r.pressures()
	r.forces()
	r.temperatures()
	r.someAndSome()
	r.percents()
	r.durations()
	r.plainUnits()
	r.bareVacuum()
	r.products()
	r.barsOffered()
	r.counts()
	r.measures()
	r.alternatives()
	r.firstAlternatives()
	r.trusted()
	r.barsOverStrips()
	r.barsStacked()
	r.loneReading()
	r.levelsAndMore()
	r.sharedOut()
	r.surfaceInstead()
	r.wordFacts()
	r.faceOnBack()
	r.firmnessAlone()
	r.barPlace()
	if !r.has(unit.Cover) && !r.phrase.Uncovered && r.filmInside() {
		r.coverWord(r.within(0, len(r.items), kindNoun, "film", "bag"), "down")
	}
	r.parts()
	r.phrase.BarStands = r.barStands()
	r.profileWords()
	if checks {
		r.missingParts()
	}
	r.fixes()
}

// structures reads what is told in a form of its own: stacks, hours, sizes, piles, clocks.
func (r *reader) structures() {
	r.layers()
	r.workHours()
	r.overnight()
	r.panelSizes()
	r.piles()
	r.clocks()
}

// bind gives field the amount at item i.
func (r *reader) bind(i int, f unit.Field) bool {
	it := &r.items[i]
	v, u, ok := r.valueOf(it.amount, f)
	if !ok {
		return false
	}
	it.used = true
	if want := cmp.Or(impossible(f, v), r.lowBar(it.amount, f, v), unlikely(it.amount, f, v)); it.amount.minus && !signed[f] || want != "" {
		if want == "" {
			want = "more than nothing"
		}
		if it.amount.hearsay {
			r.doubted = append(r.doubted, Refusal{f, it.text, want})
			return true
		}
		r.refuse(f, it.text, want)
		return true
	}
	r.bound = append(r.bound, binding{Fact{Field: f, Value: unit.Number(v), Unit: u, Text: it.text}, i, it.amount.hearsay})
	return true
}

// justBound is the fact that was bound last; nil unless it stands at item i, as where
// bind refused the amount there.
func (r *reader) justBound(i int) *Fact {
	if last := len(r.bound) - 1; last >= 0 && r.bound[last].from == i {
		return &r.bound[last].fact
	}
	return nil
}

// signed fields may stand with a minus: gauges print vacuum so, and it gets cold.
var signed = map[unit.Field]bool{
	unit.Vacuum: true, unit.ShopTemp: true, unit.ServiceTemp: true, unit.LabelMinTemp: true, unit.Altitude: true, unit.PumpLimit: true,
}

// say gives field a value that is no number.
func (r *reader) say(i int, f unit.Field, v unit.Value) {
	r.items[i].used = true
	r.bound = append(r.bound, binding{Fact{Field: f, Value: v, Text: r.items[i].text}, i, false})
}

func (r *reader) refuse(f unit.Field, text, want string) {
	r.phrase.Refused = append(r.phrase.Refused, Refusal{f, text, want})
}

// has reports whether a field was read already.
func (r *reader) has(f unit.Field) bool {
	for i := range r.bound {
		if r.bound[i].fact.Field == f && !r.bound[i].weak {
			return true
		}
	}
	for i := range r.phrase.Refused {
		if r.phrase.Refused[i].Field == f {
			return true
		}
	}
	return false
}

// free reports whether item i is an amount that nothing has taken yet.
func (r *reader) free(i int) bool {
	return i >= 0 && i < len(r.items) && r.items[i].amount != nil && !r.items[i].used && !r.items[i].amount.dead && !r.items[i].amount.ordinal
}

// isBreak reports whether item i parts clauses.
func (r *reader) isBreak(i int) bool {
	if i < 0 || i >= len(r.items) {
		return true
	}
	switch r.items[i].brk {
	case ',', '.', '?', '!', ';', '\n', '(', ')', '-', '/', '+', '&', ':':
		return true
	}
	return false
}

// isStop reports whether item i ends a sentence.
func (r *reader) isStop(i int) bool {
	if i < 0 || i >= len(r.items) {
		return true
	}
	b := r.items[i].brk
	return b == '.' || b == '(' || b == ')'
}

// idle reports whether item i says nothing by itself.
func (r *reader) idle(i int) bool {
	it := &r.items[i]
	if it.amount != nil || it.brk != 0 && it.brk != '~' && it.brk != '=' && it.brk != '"' && it.brk != '*' && it.brk != '_' && it.brk != '`' && it.brk != '@' && it.brk != '\'' {
		return false
	}
	if it.kind == kindWoodSort || it.kind == kindFill {
		return true
	}
	return it.kind == kindNone && (it.brk != 0 || fill[it.word]) && it.word != "and" && it.word != "with" && it.word != "but"
}

// next returns the first item right of i in its clause that says something; -1
// where there is none.
func (r *reader) next(i int) int {
	for j := i + 1; j < len(r.items); j++ {
		if r.isBreak(j) {
			return -1
		}
		if !r.idle(j) {
			return j
		}
	}
	return -1
}

// prev is next to the left.
func (r *reader) prev(i int) int {
	for j := i - 1; j >= 0; j-- {
		if r.isBreak(j) {
			return -1
		}
		if !r.idle(j) {
			return j
		}
	}
	return -1
}

// clause returns the bounds of the clause around i: [from, to).
func (r *reader) clause(i int) (from, to int) {
	for from = i; from > 0 && !r.isBreak(from-1); from-- {
	}
	for to = i + 1; to < len(r.items) && !r.isBreak(to); to++ {
	}
	return from, to
}

// sentence returns the bounds of the sentence around i.
func (r *reader) sentence(i int) (from, to int) {
	for from = i; from > 0 && !r.isStop(from-1); from-- {
	}
	for to = i + 1; to < len(r.items) && !r.isStop(to); to++ {
	}
	return from, to
}

// is reports whether item i has the meaning. It stands in thousands of places, where
// inlined it fills the processor's cache for code; word and within likewise.
//
//go:noinline
func (r *reader) is(i int, k kind, ids ...string) bool {
	if i < 0 || i >= len(r.items) || r.items[i].kind != k {
		return false
	}
	id := r.items[i].id
	for _, one := range ids {
		if id == one {
			return true
		}
	}
	return len(ids) == 0
}

// word reports whether item i is one of the words.
//
//go:noinline
func (r *reader) word(i int, ws ...string) bool {
	if i < 0 || i >= len(r.items) || r.items[i].amount != nil {
		return false
	}
	word := r.items[i].word
	for _, w := range ws {
		if word == w {
			return true
		}
	}
	return false
}

// within returns the first item of [from, to) with the meaning; -1 where none.
//
//go:noinline
func (r *reader) within(from, to int, k kind, ids ...string) int {
	if !r.means(k, ids...) {
		return -1
	}
	for i := from; i < to; i++ {
		if r.is(i, k, ids...) {
			return i
		}
	}
	return -1
}

// mentions reports whether the message has the meaning anywhere.
func (r *reader) mentions(k kind, ids ...string) bool {
	return r.within(0, len(r.items), k, ids...) >= 0
}
