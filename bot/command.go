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
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// command carries out a word to the load book.
func (t *turn) command(ctx context.Context) (Reply, error) {
	c := t.phrase.Command
	if c.Bare {
		if answers, err := t.answersInches(ctx, c); err != nil || answers {
			t.phrase.Command = nil
			return t.figuresOr(err)
		}
	}
	r := Reply{About: grammar.Book, Verdict: engine.None, Read: t.commandRead(), Values: unit.Facts{}}
	r.note(t.phrase.Unused...)
	for ; c != nil; c = c.Then {
		t.phrase.Command = c
		if err := t.refuses(&r, t.carryOut(ctx, &r, c)); err != nil {
			return Reply{}, fmt.Errorf("load book: %w", err)
		}
	}
	r.notices(t.phrase, t.m.Text)
	return r, nil
}

// refuses says what the book refused, if it did; other errors are returned.
func (t *turn) refuses(r *Reply, err error) error {
	var refused *book.RefusedError
	if !errors.As(err, &refused) {
		return err
	}
	r.Verdict = engine.Ask
	if refused.Why == book.TooFew {
		r.need(unit.Measured)
	}
	r.loads(refused.Load)
	r.say(Headline, refusal(refused, t.settings.Metric))
	return nil
}

// answersInches reports whether "the 2 in" answers what the thread asked rather
// than to speak of a load, which there is not.
func (t *turn) answersInches(ctx context.Context, c *grammar.Command) (bool, error) {
	if len(c.Loads) != 1 {
		return false, nil
	}
	a := grammar.Amendment{Text: fmt.Sprintf("%d in", c.Loads[0]), Value: float64(c.Loads[0]), Unit: unit.Inch}
	f, ok := t.chosen(a)
	if !ok {
		f, ok = t.askedFor(a)
	}
	if !ok && t.before.Load == 0 && (strings.Contains(t.m.Text, "?") || t.correctsByTone()) {
		f, ok = t.instead(a) // "2 in?" after "taller bar, say 1 1/2", "make it 1 in"
	}
	if t.insteadInches() {
		return true, nil
	}
	if !ok {
		return false, nil
	}
	_, err := t.ledger.Load(ctx, c.Loads[0])
	if err == nil {
		return false, nil
	}
	if !errors.As(err, new(*book.RefusedError)) {
		return false, err
	}
	t.phrase.Facts = append(t.phrase.Facts, f)
	return true, nil
}

// figuresOr answers with figures unless something went wrong before.
func (t *turn) figuresOr(err error) (Reply, error) {
	if err != nil {
		return Reply{}, fmt.Errorf("load book: %w", err)
	}
	return t.figures()
}

func (t *turn) carryOut(ctx context.Context, r *Reply, c *grammar.Command) error {
	switch c.Verb {
	case grammar.Post:
		return t.post(ctx, r, c)
	case grammar.Copy:
		return t.copyLoad(ctx, r, c)
	case grammar.Undo:
		return t.undo(ctx, r, c)
	case grammar.List:
		err := t.list(ctx, r, c)
		if len(c.Loads) == 1 {
			if failed := t.speaksOf(c.Loads[0], true); failed != nil {
				return failed
			}
		}
		return err
	case grammar.NotDone:
		return t.notDone(ctx, r, c)
	case grammar.Check:
		if c.By != "" && !t.isWriter(c.By) {
			return t.notTheirs(ctx, r, c)
		}
	}
	if len(c.Loads) == 0 && c.Verb != grammar.Result && meansSeveral(c.Note) {
		return t.asksWhich(ctx, r, c)
	}
	loads, err := t.meant(ctx, c)
	if err != nil {
		return err
	}
	if len(loads) == 0 {
		r.Verdict = engine.Ask
		r.need(unit.LoadNumber)
		r.say(Headline, "Which load? Say its number, like “14 "+example(c.Verb, t.settings.Metric)+"”.")
		return nil
	}
	for _, n := range loads {
		if err := t.refuses(r, t.act(ctx, r, c, n)); err != nil {
			return err
		}
	}
	if err := t.stillStands(ctx, r, c); err != nil {
		return err
	}
	if len(loads) == 1 {
		return t.speaksOf(loads[0], c.Verb == grammar.Show)
	}
	return nil
}

// speaksOf notes that the thread is about a load from now on, and whether that was only
// looked at.
func (t *turn) speaksOf(load int, looked bool) error {
	if t.m.Thread == "" || t.outcome.Thread != nil {
		return nil
	}
	thread := t.before
	thread.Load, thread.Looked = load, looked
	t.looks = looked
	return t.keep(thread)
}

// example shows how a verb is said to a load.
func example(v grammar.Verb, metric bool) string {
	switch v {
	case grammar.Check:
		return measuredExample(metric)
	case grammar.In, grammar.Out:
		return string(v)
	case grammar.Result:
		return "result: good"
	}
	return string(v)
}

// meant returns the loads that a command is about: those named, the thread's
// own, or the only one to which it can be done.
func (t *turn) meant(ctx context.Context, c *grammar.Command) ([]int, error) {
	if len(c.Loads) > 0 {
		return c.Loads, nil
	}
	if t.before.Load > 0 {
		return []int{t.before.Load}, nil
	}
	states := map[grammar.Verb][]book.State{
		grammar.Check: {book.Posted}, grammar.In: {book.Checked}, grammar.Result: {book.Taken},
		grammar.Clear: {book.Held}, grammar.Out: {book.Pressing},
	}[c.Verb]
	if states == nil {
		return nil, nil
	}
	found, err := t.ledger.Find(ctx, book.Query{States: states, Limit: 2})
	if err != nil || len(found) != 1 {
		return nil, err
	}
	return []int{found[0].Number}, nil
}

// untold reports whether nobody but the bot said a load's number: "post it", "clear it". One that
// was looked at was asked for by it.
func (t *turn) untold(n float64) bool {
	if t.before.Looked || slices.Contains(wholeNumbers.FindAllString(t.m.Text, -1), strconv.Itoa(int(n))) {
		return false
	}
	plain := t.bot.Parse(t.m.Text, grammar.Habit{Metric: t.settings.Metric}).Command
	return plain == nil || !slices.Contains(numbersNamed(plain), n) // "load three checked"
}

var wholeNumbers = regexp.MustCompile(`\d+`)

// commandRead is what the reply says that the command said.
func (t *turn) commandRead() unit.Facts {
	c := t.phrase.Command
	out := read(Thread{Said: Statement(nil).stating(t.phrase.Facts)}, t.profile.Said.facts(), nil)
	switch ns := slices.DeleteFunc(numbersNamed(c), t.untold); {
	case len(ns) == 1:
		out[unit.LoadNumber] = unit.Number(ns[0])
	case len(ns) > 1:
		out[unit.LoadNumber] = ns
	}
	if len(c.Measured) > 0 {
		out[unit.Measured] = t.measured()
	}
	for f, text := range map[unit.Field]string{
		unit.Note: c.Note, unit.Title: c.Title, unit.AtTime: c.Time, unit.PressName: c.Press,
	} {
		if text != "" {
			out[f] = unit.Word(text)
		}
	}
	if c.Ago > 0 {
		out[unit.AtTime] = unit.Word(t.toldTime(c).Format("15:04"))
	}
	return out
}

// numbersNamed are the loads that a chain of commands names, each once; of a copy
// without a number of its own it is the load that it is like.
func numbersNamed(c *grammar.Command) unit.Numbers {
	var ns unit.Numbers
	for ; c != nil; c = c.Then {
		named := c.Loads
		if len(named) == 0 && c.From > 0 {
			named = []int{c.From}
		}
		for _, n := range named {
			if !slices.Contains(ns, float64(n)) {
				ns = append(ns, float64(n))
			}
		}
	}
	return ns
}

// measured is what a second person measured, every vacuum as a difference.
func (t *turn) measured() unit.Facts {
	return read(Thread{Said: Statement(nil).stating(t.phrase.Command.Measured)}, t.profile.Said.facts(), nil)
}

func (t *turn) saying() book.Saying {
	return book.Saying{By: book.Person{ID: t.m.From, Name: t.m.Name}, At: t.m.At, Event: t.m.ID}
}

func callOf(p book.Person) string {
	switch {
	case p.Name != "":
		return quoted(p.Name)
	case p.ID != "":
		return quoted(p.ID)
	}
	return "someone"
}

// loads notes which loads a reply is about.
func (r *Reply) loads(ls ...book.Load) {
	for _, l := range ls {
		if l.Number == 0 || l.State == "" {
			continue
		}
		r.Loads = append(r.Loads, l.Number)
		r.States = append(r.States, string(l.State))
		r.Revision = l.Revision
	}
	if r.Values == nil {
		r.Values = unit.Facts{}
	}
	switch len(r.Loads) {
	case 0:
		return
	case 1:
		r.Values[unit.LoadNumber] = unit.Number(r.Loads[0])
		r.Values[unit.LoadState] = unit.Word(r.States[0])
		r.Values[unit.Revision] = unit.Number(r.Revision)
		return
	}
	ns := make(unit.Numbers, len(r.Loads))
	for i, n := range r.Loads {
		ns[i] = float64(n)
	}
	r.Revision = 0
	delete(r.Values, unit.Revision)
	r.Values[unit.LoadNumber], r.Values[unit.LoadState] = ns, unit.Words(r.States)
}

// act does one thing to one load.
func (t *turn) act(ctx context.Context, r *Reply, c *grammar.Command, n int) error {
	switch c.Verb {
	case grammar.Check:
		if !t.looksGood(ctx, c, n) {
			return t.check(ctx, r, n)
		}
		c = &grammar.Command{Verb: grammar.Result, Loads: []int{n}, Note: seenGood.FindString(t.m.Text)}
		t.phrase.Command = c
	case grammar.Correct:
		return t.correct(ctx, r, n)
	case grammar.Show:
		return t.show(ctx, r, n)
	case grammar.Result:
		if c.Note != "" && toneOf(c.Note) == neither {
			l, err := t.ledger.Load(ctx, n)
			if err == nil && (l.State == book.Taken || l.State == book.Judged) {
				t.asksForVerdict(r, l, c.Note)
				return nil
			}
		}
	}
	c, err := t.judging(ctx, c, n)
	if err != nil {
		return err
	}
	do, says := t.deed(c)
	if do == nil {
		return nil
	}
	l, err := t.ledger.Do(ctx, n, do)
	if err != nil {
		return err
	}
	r.loads(l)
	says(r, l)
	if c.Verb == grammar.In && l.Press != "" {
		return t.besides(ctx, r, l)
	}
	return nil
}

// judging takes "14 came out great" for a result where the load is out already.
func (t *turn) judging(ctx context.Context, c *grammar.Command, n int) (*grammar.Command, error) {
	if c.Verb != grammar.Out || toneOf(c.Note) == neither {
		return c, nil
	}
	l, err := t.ledger.Load(ctx, n)
	if err != nil || l.State != book.Taken {
		return c, err
	}
	return &grammar.Command{Verb: grammar.Result, Loads: []int{n}, Note: c.Note}, nil
}

// besides tells which other loads lie in the press that a load went into.
func (t *turn) besides(ctx context.Context, r *Reply, l book.Load) error {
	found, err := t.ledger.Find(ctx, book.Query{InPress: true, Press: l.Press})
	if err != nil {
		return err
	}
	var others []string
	for _, x := range found {
		if x.Number != l.Number {
			others = append(others, fmt.Sprint(x.Number))
		}
	}
	if len(others) > 0 {
		r.say(Reason, fmt.Sprintf("By the book load %s lies in press %s too.", listed(others, "and"), quoted(l.Press)))
	}
	return nil
}

// deed returns what a verb does to a load, and what is then said.
func (t *turn) deed(c *grammar.Command) (func(book.Load) (book.Entry, error), func(*Reply, book.Load)) {
	s := t.saying()
	switch c.Verb {
	case grammar.Uncheck:
		return func(l book.Load) (book.Entry, error) { return l.Uncheck(s, c.Note) }, t.saysUnchecked
	case grammar.Hold:
		return func(l book.Load) (book.Entry, error) { return l.Hold(s, c.Note) }, t.saysHeld
	case grammar.Clear:
		return func(l book.Load) (book.Entry, error) { return l.Clear(s, c.Note) }, t.saysState
	case grammar.Drop:
		return func(l book.Load) (book.Entry, error) { return l.Drop(s, c.Note) }, t.saysDropped
	case grammar.In:
		g := book.Going{Press: c.Press, Time: t.toldTime(c), Anyway: c.Anyway}
		return func(l book.Load) (book.Entry, error) { return l.PutIn(s, g) }, t.saysIn
	case grammar.Out:
		return func(l book.Load) (book.Entry, error) { return l.TakeOut(s, t.toldTime(c)) }, t.saysOut
	case grammar.Result:
		return func(l book.Load) (book.Entry, error) { return l.Judge(s, c.Note, toneOf(c.Note) == fine) }, t.saysJudged
	}
	return nil, nil
}
