package bot

import (
	"fmt"
	"math"
	"slices"
	"time"

	"presshand/engine/unit"
	"presshand/grammar"
)

// clocked gives a clock time without a word for what it is to the start or the
// deadline of the thread's day, whichever it is nearer to: "make it quarter to one".
func (t *turn) clocked(p grammar.Phrase) grammar.Phrase {
	start, started := t.before.Said.find(unit.StartTime)
	end, ends := t.before.Said.find(unit.Deadline)
	for i, f := range p.Facts {
		if f.Field == unit.StartTime && started && earlyHour.MatchString(f.Text) && !saysHalf.MatchString(t.m.Text) {
			p.Facts = slices.Clone(p.Facts)
			p.Facts[i].Value = nearerHalf(minutesOf(f.Value), minutesOf(start.Value))
		}
		if f.Field != unit.StartTime || !f.Loose || !ends || stated(p.Facts, unit.Deadline) {
			continue
		}
		if now := minutesOf(f.Value); !started || math.Abs(now-minutesOf(end.Value)) < math.Abs(now-minutesOf(start.Value)) {
			p.Facts[i].Field = unit.Deadline
		}
	}
	return p
}

// nearerHalf is the clock time, in the half of the day that brings it nearer to what it
// was: a start at noon that is pushed to 1:15.
func nearerHalf(now, was float64) unit.Word {
	const half, smallHours = 12 * 60, 4 * 60 // nobody starts in them
	if now+half < 24*60 && (now < smallHours || math.Abs(now+half-was) < math.Abs(now-was)) {
		now += half
	}
	return unit.Word(fmt.Sprintf("%02d:%02d", int(now)/60, int(now)%60))
}

// minutesOf are the minutes of a clock time since midnight.
func minutesOf(v unit.Value) float64 {
	word, _ := v.(unit.Word)
	at, err := time.Parse("15:04", string(word))
	if err != nil {
		return 0
	}
	return float64(at.Hour()*60 + at.Minute())
}
