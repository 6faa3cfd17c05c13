package bot

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// parse reads a message. A bare number is read in the light of the thread:
// "what about 22 inches", "and 1 1/2?".
func (t *turn) parse(text string) grammar.Phrase {
	if next := andLoad.FindStringSubmatch(text); next != nil && t.before.Looked && len(t.before.Pending) == 0 {
		if n, err := strconv.Atoi(next[1]); err == nil && n > 0 {
			return grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Book}}, Command: &grammar.Command{Verb: grammar.Show, Loads: []int{n}}}
		}
	}
	p := t.read(t.inThread(text))
	if p.Inferred && !t.before.empty() && !p.NewStart && !t.asksAnew(p) {
		p.Asks = slices.DeleteFunc(slices.Clone(p.Asks), func(a grammar.Ask) bool { return computed(a.About) })
	}
	for i, a := range p.Asks {
		if a.Guessed && !t.before.empty() && !p.NewStart {
			p.Asks = slices.Clone(p.Asks)
			p.Asks[i].About = t.before.Asks[0].About
		}
	}
	p = t.goalAgain(p)
	if v, ok := loneVerb(alone(text)); ok && t.before.Load > 0 {
		if strings.Contains(text, "?") {
			v = grammar.Show
		}
		return grammar.Phrase{Command: &grammar.Command{Verb: v, Loads: []int{t.before.Load}}}
	}
	if ofIt, ok := t.itself(p, text); ok {
		return ofIt
	}
	if timed, ok := t.timed(p, text); ok {
		return timed
	}
	if was, ok := t.timeAmended(p, text); ok {
		return was
	}
	if first, ok := t.doneAndSaid(p, text); ok {
		return first
	}
	if both, ok := t.movesBoth(p, text); ok {
		return both
	}
	if named, ok := t.namedAgain(p, text); ok {
		return named
	}
	if again, ok := t.insists(p, text); ok {
		return again
	}
	for _, step := range []func(grammar.Phrase) grammar.Phrase{
		t.besideTank, t.endOfHold, t.inItsUnit, t.leaksAgain, t.moved, t.matOnly, t.sledOfTwo, t.laidOnTop, t.turnedOver, t.resawn, t.bedded, t.stoodOn, t.single, t.putBack, t.ofLast,
		t.bedAgain, t.clocked, t.maybeGone, t.morePresses, t.severalPanels, t.dayAsked, t.unitFixed, t.wetApart, t.nearThickness, t.lossNotTaper, t.levelsOfThose, t.anotherLayer, t.ofThread, t.placed, t.recounted, t.restocked, t.bareReplies, t.carries,
	} {
		p = step(p)
	}
	return p
}

// andLoad goes on to another load where one was looked at: "and 45".
var andLoad = regexp.MustCompile(`(?i)^\W*(?:(?:and|also|what about|how about|then|now|next)\s+(?:load\s*|number\s*|no\.?\s*)?|(?:load|number)\s*)(\d{1,6})\W*$`)

var (
	startsAt = regexp.MustCompile(`(?i)^\W*(?:ok |so |and |say |make it )*(start|begin) (\d{1,2})\W*$`)
	noneOf   = regexp.MustCompile(`(?i)^\W*(?:ok |but |and )*(?:nothing|none|no) (?:under|below|less than)\b`)
)

// inThread says in full what is short for something in its thread: "start 6" of a
// day's plan, "nothing under 2 1/2" where strips are chosen.
func (t *turn) inThread(text string) string {
	if t.before.empty() {
		return text
	}
	switch t.before.Asks[0].About {
	case grammar.Schedule:
		return startsAt.ReplaceAllString(text, "start at $2:00")
	case grammar.Pump:
		if t.before.Said.has(unit.PumpSpeed) && t.before.Said.has(unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent) {
			if m := pumpOnly.FindStringSubmatch(text); m != nil && m[2] != "" {
				return pumpOnly.ReplaceAllString(text, "pump stops at $1 inHg") // "only pulls 26 in"
			}
			return pumpOnly.ReplaceAllString(text, "pump stops at $1")
		}
	case grammar.Strips:
		return noneOf.ReplaceAllString(text, "no strips under")
	}
	return text
}

// insisting is how one holds to what was called dangerous.
var insisting = regexp.MustCompile(`(?i)\b(safe|rated|stamped|certified|careful|(ok|okay|fine|alright) to)\b|\b(it|it'?s|its|that|thats|that'?s)\b[^.]*\b(ok|okay|fine|alright)\b[^.]*\?`)

// insists reads "but it's stamped 250 psi so it's ok to use, right?" behind a danger:
// it is asked about once more, and no figure of it helps.
func (t *turn) insists(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	wonders := t.playsDown(p, text)
	if t.before.Peril == "" || p.Command != nil || p.NewStart || len(p.Facts) > 1 || len(text) > 160 || !insisting.MatchString(text) && !wonders {
		return p, false
	}
	if slices.ContainsFunc(p.Facts, func(f grammar.Fact) bool { return f.Field == unit.BarHeight || isVacuum(f) && !wonders }) {
		return p, false
	}
	for _, a := range p.Asks {
		if a.About != grammar.Safety && a.About != grammar.Why && !(computed(a.About) && p.Inferred) {
			return p, false
		}
	}
	unused := slices.Clone(p.Unused)
	for _, f := range p.Facts {
		unused = append(unused, f.Text)
	}
	for _, r := range p.Refused {
		unused = append(unused, r.Text)
	}
	for _, a := range p.Amends {
		unused = append(unused, a.Text)
	}
	return grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Safety, Peril: t.before.Peril}}, Unused: unused}, true
}

// playedDown is how one asks whether a little of a danger is none.
var playedDown = regexp.MustCompile(`(?i)\b(?:what|even) if\b.*\b(?:only|just|low|lower|barely|quick|quickly|slow|slowly|careful)\b|\beven (?:at|with|when)\b`)

// playsDown reads "what if its only at 10 inHg" behind a danger: it is of that danger
// still, where nothing else than a vacuum is said.
func (t *turn) playsDown(p grammar.Phrase, text string) bool {
	return playedDown.MatchString(text) && len(p.Choices)+len(p.Changes)+len(p.Drops)+len(p.Amends) == 0 && !slices.ContainsFunc(p.Facts, func(f grammar.Fact) bool { return !isVacuum(f) })
}

// itWord stands for the load in its own thread.
var itWord = regexp.MustCompile(`(?i)\bit\b`)

// puts begins an order to press a load.
var puts = regexp.MustCompile(`(?i)^\W*(ok |so |now |then )*(put|slide|get|load)\b`)

// drops tells an order to drop a load from "forget it", which leaves it be.
var drops = regexp.MustCompile(`(?i)\b(drop|scrap|scrub|bin|cancel|delete|kill) it(\W*$|\s*[,;:–-]\s)`)

// ofIt are the verbs that are taken to be of the thread's load where the
// message says "it": "take it out", "is it out?", "don't hold it".
var ofIt = []grammar.Verb{grammar.In, grammar.Out, grammar.Hold, grammar.Clear, grammar.Show, grammar.NotDone, grammar.Drop}

// itself reads a message that states nothing with the thread's load in the
// place of "it".
func (t *turn) itself(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	asksList := p.Command != nil && p.Command.Verb == grammar.List && len(p.Command.Loads) == 0 // "when did it go in"
	if t.before.Load == 0 || p.Command != nil && !asksList || len(p.Facts)+len(p.Amends)+len(p.Changes)+len(p.Choices)+len(p.Drops) > 0 || len(itWord.FindAllString(text, -1)) != 1 || strings.ContainsAny(text, digits) {
		return p, false
	}
	named := t.bot.Parse(itWord.ReplaceAllString(text, strconv.Itoa(t.before.Load)), grammar.Habit{Metric: t.settings.Metric})
	c := named.Command
	if c != nil && asksList && c.Verb == grammar.List && slices.Equal(c.Loads, []int{t.before.Load}) {
		return named, true
	}
	if c == nil || asksList || !slices.Contains(ofIt, c.Verb) || !slices.Equal(c.Loads, []int{t.before.Load}) || c.Bare && c.Verb != grammar.Show && !puts.MatchString(text) || c.Verb == grammar.Drop && !drops.MatchString(text) {
		return p, false
	}
	c.Bare = false // it is a load, not a length
	return named, true
}

// goesOrComes begins what is said of the load that is spoken of: "went in at
// 9:40", "out 3:15".
var goesOrComes = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|right|so|and|then|just|now|it'?s|it|put|slid|stuck|loaded|is|was|they'?re|that'?s|went|gone|going|go|came|come|coming|has|been|pulled|took|taken|taking|had|got|we|i|them|that|this|one)\s+)*(?:in|out)\s`)

// tookIt begins what is said of a load that somebody took out: "pulled it at 3:15".
var tookIt = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|right|so|and|then|just|now|we|i|i'?ve|we'?ve|have|had)\s+)*(?:pulled|unloaded|emptied|took|taken) (?:it|that|them|her|him|that one|this one)(?: out| off)?\s+`)

// roughHour ends what may be a time and no length: "in about 7", "out by 9 or so".
var roughHour = regexp.MustCompile(`(?i)\b(in|out)\s+(?:at|around|about|since|by|from|roughly)\s+(?:about\s+|half\s+)?~?(\d{1,2})\s*-?(?:ish|or so|o'?clock|or thereabouts)?\W*$`)

// timed reads a message that says when the thread's load went in or came out,
// and names no load.
func (t *turn) timed(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	if t.before.Load == 0 || p.Command != nil || asksByTone(strings.ToLower(text)) || !goesOrComes.MatchString(text) && !tookIt.MatchString(text) {
		return p, false
	}
	said := tookIt.ReplaceAllString(strings.TrimLeft(text, " \t\n.,!"), "out ")
	named := t.bot.Parse(strconv.Itoa(t.before.Load)+" "+said, grammar.Habit{Metric: t.settings.Metric})
	if short, ok := t.agoOfIt(text); ok {
		named = short
	}
	c := named.Command
	if rough := roughHour.FindStringSubmatch(text); c == nil && rough != nil { // it is no length
		verb := grammar.Verb(strings.ToLower(rough[1]))
		return grammar.Phrase{Command: &grammar.Command{Verb: grammar.NotDone, Meant: verb, Loads: []int{t.before.Load}, Lacks: grammar.LacksWhen}, Unused: []string{rough[2]}}, true
	}
	if c == nil || c.Verb != grammar.In && c.Verb != grammar.Out || c.Time == "" && c.Ago == 0 && !c.Anyway || !slices.Equal(c.Loads, []int{t.before.Load}) {
		return p, false
	}
	return named, true
}

// corrects reports whether a message in the thread of a load that is not in the
// press yet changes that load: it says so in a few words and asks nothing. A
// whole new load, or "what if", is a question.
func (t *turn) corrects(ctx context.Context) (bool, error) {
	p := &t.phrase
	if t.before.Load == 0 || p.Command != nil || t.tellsReading() || t.forbidsChange() || p.NewStart || len(p.Asks)+len(p.Choices)+len(p.Refused)+len(p.Clashes) > 0 || !t.changesLittle() {
		return false, nil
	}
	l, err := t.ledger.Load(ctx, t.before.Load)
	if errors.As(err, new(*book.RefusedError)) { // there is no such load
		return false, nil
	}
	if err != nil {
		return false, err
	}
	return l.State == book.Posted || l.State == book.Checked || l.State == book.Held && l.HeldFrom != book.Pressing, nil
}

// amending are words by which a message changes what was said.
var amending = []string{
	"make ", "change ", "use ", "actually", "sorry", "it's ", "its ", "it is ", "should ", "without ", "no ", "take ", "swap ",
	"switch ", "go with ", "set ", "oops", "correction", "wrong", "not ", "that's ", "thats ", "we'll ", "the ",
}

func (t *turn) changesLittle() bool {
	text := strings.ToLower(strings.TrimSpace(t.m.Text))
	if len(t.phrase.Facts)+len(t.phrase.Drops) == 0 || len(t.phrase.Facts) > 3 || asksByTone(text) || remarks(text) || thatWas.MatchString(text) {
		return false
	}
	if (stated(t.phrase.Facts, unit.StartTime) || stated(t.phrase.Facts, unit.Deadline)) && !strings.Contains(text, " in ") { // hours are no figures of a load
		return false
	}
	if len(t.phrase.Facts)+len(t.phrase.Drops) == 1 {
		return true
	}
	return slices.ContainsFunc(amending, func(w string) bool { return strings.HasPrefix(text, w) })
}

// thatWas puts right which load was meant before: "oops, that was 1 not 2".
var thatWas = regexp.MustCompile(`\b(?:that|it|i) (?:was|were|meant|mean|should have been) (?:load |#)?\d+\b[ ,]*not (?:load |#)?\d+\W*$`)

// asksByTone reports whether a message wonders rather than states.
func asksByTone(text string) bool {
	if strings.Contains(text, "?") {
		return true
	}
	for _, w := range []string{"what if", "what about", "how about", "if we", "if i"} {
		if strings.Contains(text, w) {
			return true
		}
	}
	for _, w := range []string{"what", "how", "if ", "would", "could", "and "} {
		if strings.HasPrefix(text, w) {
			return true
		}
	}
	return false
}

// wholeQuestion is how many facts make a question of their own.
const wholeQuestion = 4

// asksAnew reports whether a message that asks nothing outright is a question
// of its own all the same, and not the answer to one.
func (t *turn) asksAnew(p grammar.Phrase) bool {
	said := Statement(nil).stating(p.Facts)
	wanted := slices.ContainsFunc(t.before.Pending, func(w Pending) bool { return said.has(w.Field) })
	return len(t.before.Pending) == 0 && len(p.Facts)+len(p.Choices) >= wholeQuestion || !wanted && tellsWhole(said)
}

// tellsWhole: "got 12 at 2 1/4 and 8 at 3, want 30 wide" and "sled 3/4, strips 3/4, sled 3/4,
// opening is 3" are questions of their own, whatever the thread was about.
func tellsWhole(said Statement) bool {
	return said.has(unit.StockPiles) && said.has(unit.TargetWidth, unit.Targets) || said.has(unit.StackLayers) && said.has(unit.Opening)
}

// loneVerbs are what one says of a load in its own thread; elsewhere "in" is a
// unit.
var loneVerbs = map[string]grammar.Verb{
	"in": grammar.In, "it's in": grammar.In, "its in": grammar.In, "in now": grammar.In, "going in": grammar.In, "going in now": grammar.In, "just went in": grammar.In, "gone in": grammar.In, "it's in now": grammar.In, "its in now": grammar.In, "now in": grammar.In,
	"out": grammar.Out, "it's out": grammar.Out, "its out": grammar.Out, "out now": grammar.Out, "coming out": grammar.Out, "coming out now": grammar.Out, "just came out": grammar.Out, "it's out now": grammar.Out, "its out now": grammar.Out,
}

// nods are words before an order that add nothing to it.
var nods = regexp.MustCompile(`^(?:(?:ok|okay|k|right|alright|all right|so|and|then|yep|yeah|yes|great|good|fine|cool|done|well|there|righto|right you are)[\s,.!:;–—-]+)+`)

// alone is a message in lower case without nods before it and marks around it.
func alone(text string) string {
	text = strings.Trim(strings.ToLower(strings.TrimSpace(text)), ".!? ")
	return strings.ReplaceAll(nods.ReplaceAllString(text, ""), "’", "'")
}

// maxFinding is how long an answer to "how did it come out" may be.
const maxFinding = 120

// tellsResult reports whether a message in the thread of a load that is out says
// how it came out: "all good", or of any load "2: good". After a result only
// something wrong is news.
func (t *turn) tellsResult(ctx context.Context) (bool, error) {
	n, finding := t.findingOf()
	if n == 0 || !t.mayTellResult() || onlyNods(finding) && finding == strings.TrimSpace(t.m.Text) {
		return false, nil
	}
	l, err := t.ledger.Load(ctx, n)
	switch {
	case errors.As(err, new(*book.RefusedError)):
		return false, nil
	case err != nil:
		return false, err
	}
	if l.State == book.Judged && !l.Good && wasGood.MatchString(strings.TrimRight(finding, " .!")) {
		return true, nil // "the result was wrong, it was good"
	}
	tone := toneOf(finding)
	return l.State == book.Taken && tone != neither || l.State == book.Judged && tone == bad, nil
}

// mayTellResult reports whether a message states nothing but how something is.
func (t *turn) mayTellResult() bool {
	p := &t.phrase
	facts := slices.DeleteFunc(slices.Clone(p.Facts), func(f grammar.Fact) bool { // "joint 2" is no fact
		return slices.ContainsFunc(p.Amends, func(a grammar.Amendment) bool { return a.Text == f.Text })
	})
	stands := p.Command != nil && p.Command.Verb == grammar.NotDone && p.Command.Meant == grammar.Show // "1 good"
	if p.Command != nil && !stands || len(facts)+len(p.Choices) > 0 || t.correctsByTone() || len(t.m.Text) > maxFinding || asksByTone(strings.ToLower(t.m.Text)) {
		return false
	}
	return !slices.ContainsFunc(p.Asks, func(a grammar.Ask) bool { // "flat" and "joint" are words of a finding too
		return a.About != grammar.Flatten && a.About != grammar.Side
	})
}

// judged takes the message for a result.
func (t *turn) judged(ctx context.Context, err error) (Reply, error) {
	if err != nil {
		return Reply{}, fmt.Errorf("load book: %w", err)
	}
	n, finding := t.findingOf()
	if good := wasGood.FindString(strings.TrimRight(finding, " .!")); good != "" {
		finding = good
	}
	head, then := t.orderBehind(n, finding)
	t.phrase = grammar.Phrase{Command: &grammar.Command{Verb: grammar.Result, Loads: []int{n}, Note: head, Then: then}}
	return t.command(ctx)
}

// carries notes that a load is to carry people where the message only mentions
// it beside the load: "it's a guard rail on a balcony".
func (t *turn) carries(p grammar.Phrase) grammar.Phrase {
	if !slices.Contains(p.Perils, "structure") || stated(p.Facts, unit.StructuralUse) || len(p.Facts) == 0 {
		return p
	}
	p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: unit.StructuralUse, Value: unit.Word("yes")})
	return p
}

// agoOfIt reads "put it in 5 min ago" with the load's number before "in".
func (t *turn) agoOfIt(text string) (grammar.Phrase, bool) {
	began := goesOrComes.FindString(text)
	if began == "" {
		return grammar.Phrase{}, false
	}
	words := strings.Fields(began)
	short := t.bot.Parse(strconv.Itoa(t.before.Load)+" "+words[len(words)-1]+" "+text[len(began):], grammar.Habit{Metric: t.settings.Metric})
	return short, short.Command != nil && short.Command.Ago > 0
}
