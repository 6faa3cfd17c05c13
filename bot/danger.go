package bot

import (
	"slices"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// A danger is what a person is told who asks about one.
type danger struct {
	verdict engine.Verdict
	says    string // a plain answer first
	instead string // what to do
}

// dangers are the perils that the grammar knows. None of the answers holds a
// figure that would help to do it.
var dangers = map[grammar.Peril]danger{
	"vessel": {engine.Stop,
		"No, never. A vessel that is not made for vacuum can implode and throw pieces across the shop: glass, a jar, a bucket, plastic pipe and unrated or old gas tanks all do.",
		"Use a reservoir that its maker rates for full vacuum, and nothing else."},
	"reach in": {engine.Stop,
		"No. Never put a hand under the film or between the sleds while it pulls down: it closes on fingers and does not let go.",
		"Vent it, set the part right, and pull down again."},
	"wedge release": {engine.Stop,
		"No. Do not knock a wedge out under load: it flies, and the strips jump after it.",
		"Stand to the side, keep faces and fingers out of its line, and ease it back in small taps with the strips held down."},
	"opening": {engine.Stop,
		"Do not open or pry at a press that still has vacuum in it: it lets go all at once, and what moves then hits whoever is there.",
		"Stop the pump, vent it slowly, and open it once the gauge shows nothing."},
	"fumes": {engine.Care,
		"Do not go without protection: glue, hardener and dust can make skin and lungs allergic for good.",
		"Gloves, eye protection, fresh air, and a mask where the label asks for one. The glue's own label and safety data sheet govern. If you feel unwell, stop and get help."},
	"bypass": {engine.Stop,
		"No. Never block, tie down or skip what is there to protect people: valves, switches, guards and the second check.",
		"Find out why it trips, and have it mended before you press."},
	"structure": {engine.Stop,
		"My figures are for the glue joint in the press. They do not say that a part carries people, and I will not say that it does.",
		"Stairs, guards, beams, spars and seats go by the local building code and a licensed engineer."},
	"electric": {engine.Stop,
		"No. Water, bare wire and a missing ground kill.",
		"Pull the plug, and have an electrician put it right before the pump runs again."},
	"heat": {engine.Stop,
		"No open flame, burner or unwatched heater near film, glue and dust: they burn, and hot film gives way.",
		"Warm the whole shop beforehand, or use a heating blanket made for presses with its own thermostat."},
	"hot pot": {engine.Stop,
		"Glue that is mixed heats itself where it sits in a mass: it can smoke, melt its cup and burn.",
		"Set it outside on bare concrete, away from all that burns, and stay out of the fumes; do not use it. Mix small batches, and spread them out at once."},
	"hot pump": {engine.Stop,
		"A pump or motor that smokes, smells burnt or is too hot to touch is failing, and may burn.",
		"Close the valve to the press, switch the pump off and let it cool. Look at its oil, filter, fan and exhaust and for a big leak before it runs again, and have the wiring seen to if it smelt."},
	"alone": {engine.Care,
		"Do not leave a running press to itself, and keep children away from it.",
		"Someone who knows it stays within earshot, with a plan for a power cut. Leave it overnight only on a set-up made for that."},
	"overpressure": {engine.Stop,
		"Never. A vacuum bag or frame is not a pressure vessel: blown up it bursts.",
		"Only ever take air out. Let air back in slowly through the vent."},
	"caught": {engine.Stop,
		"Shut the pump off and open the vent now: let air in wherever it can get in. Then free them, do not pull.",
		"Call for help at once. A crushed or numb hand goes to a doctor, also if it looks well."},
	"inside": {engine.Stop,
		"Never. Nobody gets into a bag or under the film, not for a moment and not with a little vacuum: it takes the air to breathe and crushes.",
		"Only wood goes in. Close the bag when it is put away, so that no child finds it open."},
	"eye": {engine.Stop,
		"Rinse it at once with clean running water and go on rinsing, 15 minutes at least.",
		"Then get medical help, and take the glue's label and safety data sheet along."},
	"bursting": {engine.Stop,
		"Stand clear of it, shut the pump off and open the vent.",
		"Find what the film bridges or rubs on before you pull down again."},
	"giving way": {engine.Stop,
		"Stand clear, shut the pump off and vent it slowly: a press that cracks may let go all at once, with all the force that is on it.",
		"Do not pull it down again before what gave is found and replaced, or made stronger by someone who reckons the whole force."},
	"suction": {engine.Care,
		"Keep skin off an open hose or port: full vacuum bruises, and can hold a hand fast.",
		"Try the pump with a gauge on a blank fitting, or a valve that is shut."},
	"standing on it": {engine.Stop,
		"No. Never stand, kneel or sit on a bag or a press that is pulled down: the film tears, and a fence or a wedge can let go.",
		"Press a stubborn spot with a caul before you pull down."},
}

// anyDanger is the answer to a peril that has none of its own.
var anyDanger = danger{engine.Stop,
	"Do not do it if you have to ask: a press holds a lot of force, and it lets go all at once.",
	"Vent it first, and ask the person who runs the shop."}

// danger answers a question about a danger first, then what else was asked.
func (t *turn) danger() (Reply, error) {
	var out Reply
	if t.asksAbout("structure") {
		t.phrase.Asks = withoutHolding(t.phrase.Asks)
		t.phrase.Facts = append(t.phrase.Facts, grammar.Fact{Field: unit.StructuralUse, Value: unit.Word("yes")})
	}
	if t.asksFigures() || computedBefore(t) {
		r, err := t.figures()
		if err != nil {
			return Reply{}, err
		}
		out = r
	} else {
		thread := t.before
		thread.Peril = perilAfter(thread.Peril, t.phrase)
		if err := t.keep(thread); err != nil {
			return Reply{}, err
		}
		out.note(t.phrase.Unused...)
		if len(t.phrase.Facts) > 0 {
			out.Read = read(Thread{Said: Statement(nil).stating(t.phrase.Facts)}, t.profile.Said.facts(), nil)
		}
	}
	lines := slices.DeleteFunc(out.Lines, func(l Line) bool { // the danger's own words say it already
		return l.Kind == Warning && l.Text == cautionSays[engine.CautionStructural] && t.asksAbout("structure")
	})
	topics := append([]grammar.Topic{out.About}, out.Also...)
	out.Lines, out.About, out.Also = nil, grammar.Safety, nil
	for _, about := range topics {
		if about != "" {
			out.also(about)
		}
	}
	verdict := engine.None
	for _, a := range t.phrase.Asks {
		if a.About != grammar.Safety {
			continue
		}
		d, ok := dangers[a.Peril]
		if !ok {
			d = anyDanger
		}
		out.say(Headline, verdictWord(d.verdict)+d.says)
		out.say(Reason, d.instead)
		out.Cautions = append(out.Cautions, d.says+" "+d.instead)
		verdict = engine.Worst(verdict, d.verdict)
	}
	if out.Verdict != engine.Ask {
		verdict = engine.Worst(verdict, out.Verdict)
	}
	out.Verdict = verdict
	out.Lines = append(out.Lines, lines...)
	return out, nil
}

func (t *turn) asksAbout(p grammar.Peril) bool {
	return slices.ContainsFunc(t.phrase.Asks, func(a grammar.Ask) bool { return a.Peril == p })
}

// withoutHolding drops the pump from "will it hold as a stair tread".
func withoutHolding(asks []grammar.Ask) []grammar.Ask {
	return slices.DeleteFunc(slices.Clone(asks), func(a grammar.Ask) bool { return a.About == grammar.Pump })
}

// harmlessToAnswer are the perils beside which the figures of a joint are no
// help to do what was asked.
var harmlessToAnswer = []grammar.Peril{"structure", "fumes", "alone"}

// computedBefore reports whether a message that asks about a danger describes a
// joint as well, of which the figures are no help to the danger.
func computedBefore(t *turn) bool {
	for _, a := range t.phrase.Asks {
		if a.About == grammar.Safety && !slices.Contains(harmlessToAnswer, a.Peril) {
			return false
		}
	}
	return topicOf(Statement(nil).stating(t.phrase.Facts), nil) != ""
}
