package bot

import (
	"errors"
	"fmt"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// inputs are the fields that a formula calls by a name of its own.
var inputs = map[string]unit.Field{
	"overfill": unit.Overfill, "vacuum": unit.Vacuum, "ambient": unit.Ambient, "height above the sea": unit.Altitude,
	"run of the wedge": unit.WedgeRatio, "wood moisture": unit.WoodMoisture, "thickness of the strips": unit.StripThickness,
}

// typed returns how the input that is refused was written, or else the number as
// the engine got it.
func typed(f unit.Field, bad *unit.RangeError, facts []grammar.Fact) string {
	for _, x := range facts {
		if statedField(x.Field) == f && x.Text != "" {
			return x.Text
		}
	}
	return strings.TrimSpace(significant(bad.Got, 4) + bad.Unit)
}

// trouble says what is wrong with a question that the engine refused, and what
// would do.
func (r *Reply) trouble(err error, metric bool, facts ...grammar.Fact) {
	r.Verdict = engine.Ask
	var bad *unit.RangeError
	if !errors.As(err, &bad) {
		r.say(Question, "I cannot work that out from what you gave me. Say it again with the numbers, like “"+askExample(metric)+"”.")
		return
	}
	f, known := inputs[bad.What]
	if !known {
		f = unit.Field(bad.What)
	}
	name := bad.What
	if _, ok := wants[f]; ok || known {
		name = strings.TrimPrefix(nameOf(f), "the ")
		delete(r.Read, f)
		r.need(f)
	}
	r.note(typed(f, bad, facts))
	r.say(Question, fmt.Sprintf("%s cannot be %s%s; it has to be %s.",
		capital(name), significant(bad.Got, 4), bad.Unit, bad.Want))
}

// tooLong answers a message that is too long to be a question.
func tooLong(n int) Reply {
	r := Reply{About: Unknown}
	r.say(Question, fmt.Sprintf("That is %d characters; I read up to %d. Send me just the question and its numbers.", n, maxMessage))
	return r
}

// tooMany answers the first message over the limit.
func tooMany(most int) Reply {
	r := Reply{About: Unknown}
	r.say(Question, fmt.Sprintf("That was more than %d messages in a minute. Give me a minute, then I go on.", most))
	return r.finished()
}

// Sorry is the reply where a message could not be worked on.
func Sorry(err error) Reply {
	r := Reply{About: Unknown}
	says := "Something went wrong on my side and your message was not answered. Please send it again; if it happens twice, tell whoever runs me."
	for is, text := range storeSays {
		if errors.Is(err, is) {
			says = text
		}
	}
	r.say(Question, says)
	return r.finished()
}

// storeSays tells what a store's failure means for who waits for an answer.
var storeSays = map[error]string{
	book.ErrBusy:     "The load book is in use by another program just now. Please send it again in a minute.",
	book.ErrReadOnly: "I cannot write to the load book, so nothing was changed. Tell whoever runs me: the file or the server is read-only.",
	book.ErrFull:     "There is no space left for the load book, so nothing was changed. Tell whoever runs me.",
	book.ErrLost:     "I cannot reach the load book, so nothing was changed. Please send it again in a minute.",
	book.ErrDamaged:  "The load book is damaged, so nothing was changed. Tell whoever runs me: it has to be restored from a backup.",
	book.ErrNewer:    "The load book was made by a newer version of me. Tell whoever runs me: the program has to be updated.",
}

// refusal says why the load book does not take something.
func refusal(e *book.RefusedError, metric bool) string {
	l := e.Load
	switch e.Why {
	case book.NoSuchLoad:
		if l.Number == 0 {
			return "There is no load here yet. Describe one and say “post it”."
		}
		return fmt.Sprintf("There is no load %d here. “loads today” lists what there is.", l.Number)
	case book.NotChecked:
		if e.Act == book.Uncheck {
			return fmt.Sprintf("Load %d has no check to withdraw.", l.Number)
		}
	case book.TooFew:
		return fmt.Sprintf("Load %d is not checked: tell me at least two things that you measured, like “%s”.", l.Number, CheckExample(l.Number, metric))
	case book.OwnLoad:
		return fmt.Sprintf("You planned load %d, so someone else has to measure it.", l.Number)
	case book.NotAChecker:
		return fmt.Sprintf("Load %d has to be checked by one of the people named for it here.", l.Number)
	case book.OthersSince:
		return fmt.Sprintf("%s has acted on load %d since (%s), so I leave it. Say what should be, like “correction to %d: …”.", callOf(e.By), l.Number, deeds[e.Since], l.Number)
	case book.NothingToUndo:
		return "There is nothing of yours to take back."
	case book.NoFinding:
		return fmt.Sprintf("How did it come out? Like “%d result: good” or “%d result: joint 3 open”.", l.Number, l.Number)
	case book.NothingNew:
		if l.Check != nil && !l.Check.Agrees {
			return fmt.Sprintf("That changes nothing about load %d, and its check still differs. Measure again and say it whole, like “%s”.", l.Number, CheckExample(l.Number, metric))
		}
	case book.BadTime:
		if e.Act == book.In {
			return fmt.Sprintf("That time cannot be: load %d would have gone in long before it was posted.", l.Number)
		}
		return fmt.Sprintf("That time cannot be: load %d would have come out before it went in.", l.Number)
	case book.AlreadyThere:
		state := stateSays[l.State]
		if l.State == book.Taken || l.State == book.Judged {
			state = "out"
		}
		return fmt.Sprintf("Load %d is %s already.", l.Number, state)
	}
	form, ok := refusalSays[e.Why]
	if !ok {
		return fmt.Sprintf("Load %d is %s, so that does not go.", l.Number, l.State)
	}
	return fmt.Sprintf(form, l.Number)
}

// refusalSays are the refusals that need no more than the load's number.
var refusalSays = map[book.Why]string{
	book.NotChecked: "Load %[1]d has no valid second check. Have someone measure it, or say “%[1]d in anyway” and I write that down.",
	book.IsHeld:     "Load %[1]d is on hold. Say “clear %[1]d” first.",
	book.NotHeld:    "Load %[1]d is not on hold.",
	book.NotIn:      "Load %[1]d is not in the press. If it went in, say when first, like “%[1]d in 7:22”.",
	book.StillIn:    "Load %[1]d is still in the press. Say “%[1]d out” first.",
	book.IsOut:      "Load %[1]d is out already.",
	book.IsDropped:  "Load %[1]d was dropped. Copy it if you want it again: “same as %[1]d”.",
	book.HasResult:  "Load %[1]d has its result already. Say “undo” if that was wrong.",
	book.NothingNew: "That changes nothing about load %[1]d.",
	book.Ahead:      "That time lies ahead, so I have not written it down for load %[1]d. Tell me when it has happened.",
	book.NotTheLast: "Something was done to load %[1]d after that; undo the later one first.",
}

// Unreadable is the reply to something that is no message at all.
func Unreadable(says string) Reply {
	r := Reply{About: Unknown}
	r.say(Question, says)
	return r.finished()
}
