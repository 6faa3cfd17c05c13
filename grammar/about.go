package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// chooseAsks keeps the questions that the message really asks: a cue counts
// where the facts support its topic.
func (r *reader) chooseAsks() {
	asks := r.phrase.Asks
	if r.phrase.Command != nil {
		r.phrase.Asks = []Ask{{About: Book}}
		return
	}
	if len(asks) != 1 || asks[0].About == "" || asks[0].Goal != nil || r.plain(asks[0]) {
		r.phrase.Asks = nil
		for i := range asks { // those that name no topic last
			if asks[i].About != "" {
				r.merge(asks[i])
			}
		}
		for i := range asks {
			if asks[i].About == "" {
				r.merge(asks[i])
			}
		}
	}
	r.weigh()
	if len(r.phrase.Asks) == 0 {
		if t := r.infer(); t != "" {
			r.phrase.Asks = []Ask{{About: t}}
			r.phrase.Inferred = true
		}
	}
	r.countAsked()
	r.lostGoals(asks)
}

// lostGoals puts what was wanted of a question that is not asked after all among
// the unused.
func (r *reader) lostGoals(asks []Ask) {
	for i := range asks {
		for _, g := range goals(asks[i]) {
			if !slices.ContainsFunc(r.phrase.Asks, func(b Ask) bool { _, kept := b.Goal[g.Field]; return kept }) {
				r.unuse(g.Text)
			}
		}
	}
}

// plain reports whether a question for the vacuum states it: "how many kPa is 25
// inHg" is looked for nothing.
func (r *reader) plain(a Ask) bool {
	return a.Solve == unit.Vacuum && len(a.Goal) == 0 && r.has(unit.Vacuum) && len(r.phrase.Facts) == 1
}

// merge adds a question, one for each topic.
func (r *reader) merge(a Ask) {
	if r.plain(a) {
		a = Ask{About: Face}
	}
	if a.About == "" {
		a.About, a.Guessed = r.solvedTopic(a)
	}
	for i := range r.phrase.Asks {
		have := &r.phrase.Asks[i]
		if have.About != a.About {
			continue
		}
		have.weak = have.weak && a.weak
		have.second = have.second || a.second
		have.question = have.question || a.question
		if have.Solve == "" {
			have.Solve = a.Solve
		}
		if have.Goal == nil {
			have.Goal = a.Goal
		}
		have.For = append(have.For, a.For...)
		return
	}
	r.phrase.Asks = append(r.phrase.Asks, a)
}

// solvedTopic is the topic of a backwards question that names none: what its goal is of,
// the joints before the face, else the first other question, else what the facts speak of.
func (r *reader) solvedTopic(a Ask) (t Topic, guessed bool) {
	wants := func(fs ...unit.Field) bool {
		return slices.ContainsFunc(fs, func(f unit.Field) bool { _, wanted := a.Goal[f]; return wanted })
	}
	switch {
	case wants(unit.SideFarJoint, unit.SideFirstJoint, unit.Preload):
		return Side, false
	case wants(unit.FacePressure, unit.FaceTonsPerSquareFoot):
		return Face, false
	}
	if t := r.infer(); t != "" && t != Face && t != Glue {
		return t, false
	}
	for _, have := range r.phrase.Asks {
		if have.About != "" && have.About != Load && !(have.weak && have.About == Strips) {
			return have.About, false
		}
	}
	return Side, true
}

// weigh drops the cues that the facts do not support, where others are.
func (r *reader) weigh() {
	if len(r.phrase.Asks) == 0 {
		return
	}
	if safety := r.asksFor(Safety); safety && r.dangerous() {
		return
	}
	told := r.infer()
	kept := r.borneOut(told)
	if len(kept) > 0 {
		for _, a := range r.phrase.Asks {
			if a.second && !r.stands(a) && !keeps(kept, a.About) {
				kept = append(kept, a)
			}
		}
	}
	if len(kept) == 1 && kept[0].About == Safety && told != "" && len(r.phrase.Facts) > 3 {
		kept = append(kept, Ask{About: told})
	}
	if len(kept) == 0 && len(r.phrase.Facts)+len(r.phrase.Drops)+len(r.phrase.Amends)+len(r.phrase.Changes) > 0 {
		r.phrase.Asks = slices.DeleteFunc(r.phrase.Asks, func(a Ask) bool { return a.idle })
		if len(r.phrase.Asks) == 0 {
			return
		}
	}
	if len(kept) == 0 && !r.spoken() {
		r.phrase.Asks = nil
		return
	}
	for _, a := range r.phrase.Asks {
		if len(kept) == 0 && (r.onlyFlattens(a) || !a.weak && (a.About == Move || a.About == Glue && len(a.For) == 1 && (a.For[0] != unit.GlueMass || r.glueNamed()) || a.question && (a.About == Pump || a.About == Schedule || a.About == Strips))) {
			kept = append(kept, a)
		}
	}
	if len(kept) == 0 && len(r.phrase.Facts) > 0 {
		if t := r.infer(); t != "" {
			kept = []Ask{{About: t}}
			r.phrase.Inferred = true
		}
	}
	if len(kept) == 0 && r.reachesElsewhere() {
		r.phrase.Asks = nil
		return
	}
	if len(kept) == 0 {
		kept = r.phrase.Asks[:1]
	}
	if len(kept) == 2 && kept[0].About == Words && kept[1].About == Why {
		kept = kept[:1]
	}
	r.phrase.Asks = kept
}

// borneOut are the questions that the facts, of topic told, support.
func (r *reader) borneOut(told Topic) (kept []Ask) {
	for i, a := range r.phrase.Asks {
		if a.About == Load && told == Schedule && (r.has(unit.StartTime) || r.has(unit.Deadline)) && !r.has(unit.BarHeight) && !r.has(unit.StripWidth) && !r.has(unit.Vacuum) {
			r.phrase.Asks[i].About, a.About = Schedule, Schedule // "plan my saturday: 5 panels …"
		}
		if r.stands(a) && !(a.weak && a.About != Profile && told != "" && told != a.About && r.specific(told, a.About) && !r.answerable(a.About)) {
			if len(kept) == i {
				kept = r.phrase.Asks[: i+1 : i+1]
				continue
			}
			kept = append(kept, a)
		}
	}
	return kept
}

// reachesElsewhere: "still cant reach the top rack" is of no pump.
func (r *reader) reachesElsewhere() bool {
	a := r.phrase.Asks[0]
	return a.weak && a.About == Pump && len(r.bound) == 0 && !r.habit.Follows && !r.mentions(kindNoun, "pump", "press", "bag", "frame", "leak", "reservoir") && !r.mentions(kindVacuum) && !r.pressureSaid() && r.opens("reach") >= 0
}

func keeps(asks []Ask, t Topic) bool {
	for _, a := range asks {
		if a.About == t {
			return true
		}
	}
	return false
}

// dangerous keeps the safety question first.
func (r *reader) dangerous() bool {
	for i, a := range r.phrase.Asks {
		if a.About == Safety {
			r.phrase.Asks[0], r.phrase.Asks[i] = r.phrase.Asks[i], r.phrase.Asks[0]
			if r.supported(Side) {
				return false
			}
			r.phrase.Asks = slices.DeleteFunc(r.phrase.Asks, func(a Ask) bool { // but "and how long does PVA stay in at 70F"
				return a.About != Safety && !(a.About == Glue && a.question && r.answerable(Glue))
			})
			return true
		}
	}
	return false
}

// specific reports whether the facts speak for topic told rather than for the
// one that a weak cue names: a load or a day is more than its parts.
func (r *reader) specific(told, named Topic) bool {
	return named != Load && !(told == Face && named != Glue)
}

// spoken reports whether the message uses a word or a unit of the trade or a
// strong cue at all.
func (r *reader) spoken() bool {
	if len(r.bound) > 0 || len(r.phrase.Choices) > 0 || len(r.phrase.Refused) > 0 {
		return true
	}
	for _, a := range r.phrase.Asks {
		if !a.weak || a.About == Stack && r.habit.Follows && r.allPlain() {
			return true // "does it fit", of the stack before
		}
	}
	for i := range r.items {
		switch r.items[i].kind {
		case kindNoun:
			if r.items[i].word != "drop" {
				return true
			}
		case kindWood, kindGlue, kindVacuum, kindFact:
			return true
		}
	}
	return false
}

// stands reports whether a question's topic has facts to work with.
func (r *reader) stands(a Ask) bool {
	if a.back || a.Solve != "" && (len(r.phrase.Facts) > 0 || len(a.Goal) > 0) {
		return true
	}
	if r.habit.Follows && a.About == Glue && len(a.For) == 1 && a.For[0] == unit.GlueMass && a.question && !a.weak && len(r.phrase.Facts) <= 2 {
		return true // "how much glue for six of them"
	}
	if len(a.For) == 1 && a.For[0] == unit.Closing && !r.has(unit.Gap) && !r.has(unit.BarHeight) && !r.has(unit.WedgeForce) {
		return false
	}
	if r.habit.Follows && a.About == Pump && len(a.For) == 1 && (a.For[0] == unit.Hold && !a.weak || a.For[0] == unit.UltimateVacuum && len(r.phrase.Facts) == 0 && r.opens("top out", "tops out", "bottom out", "max out", "maxes out") >= 0) {
		return true // "and if the power goes", "so what does it top out at"
	}
	if a.About == Pump && len(a.For) == 1 && a.For[0] == unit.Hold && !a.weak && r.has(unit.Vacuum) && r.mentions(kindNoun, "leak") {
		return true // "leak was 2 inches in 10. hold time from 25?"
	}
	switch a.About {
	case Face:
		if r.has(unit.Overfill) && !r.has(unit.Vacuum) {
			return false // "how hard is it pushing if I overfill 1/16"
		}
	case Profile:
		return !a.weak || !r.asksSomething() && !r.clears() && !r.asksMove()
	case Why:
		return len(r.phrase.Facts) == 0 || !a.weak && len(r.phrase.Facts) == 1
	case Schedule:
		if len(a.For) == 1 && a.For[0] == unit.PanelCount && a.question {
			return true // "how many fit on a bed"
		}
	case Safety, Words:
		return len(r.phrase.Facts) == 0 || a.About == Words && r.amountsIn(0, len(r.items)) == 0 && len(r.phrase.Asks) == 1 || a.About == Safety
	case Load:
		return len(r.phrase.Facts) >= 3
	}
	return r.supported(a.About)
}

// asksMove reports whether a question of how wood moves is asked in so many words.
func (r *reader) asksMove() bool {
	for _, a := range r.phrase.Asks {
		if a.About == Move && (a.question || r.opens("how", "what", "whats", "will", "does") >= 0) {
			return true
		}
	}
	return false
}

// infer tells the topic of a message without a question from its facts.
func (r *reader) infer() Topic {
	told := r.fieldsTold()
	has := func(fs ...unit.Field) bool { return r.toldAny(told, fs) }
	vacuum := has(unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent)
	switch {
	case has(unit.StockPiles):
		return Strips
	case has(unit.StackLayers):
		return Stack
	case has(unit.PumpSpeed, unit.Leak) && !has(unit.StripCount):
		return Pump
	case has(unit.StartTime, unit.Deadline, unit.WorkHours, unit.Overnight) && has(unit.PanelCount, unit.Targets):
		return Schedule
	case has(unit.Cup, unit.Bow) && !has(unit.BarHeight):
		return Flatten
	case has(unit.BarHeight, unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.BarDenied, unit.Gap):
		return Side
	case has(unit.PanelCount) && has(unit.PanelWidth) && r.pressesNamed() > 1:
		return Schedule // "press 1 is free at 9, press 2 not til 11"
	case has(unit.PanelCount, unit.Targets) && has(unit.PressTime, unit.Unload, unit.LayupLoad, unit.StartTime, unit.PressCount):
		return Schedule
	case r.sizedTargets():
		return Schedule
	case has(unit.MatThickness, unit.MatFirmness, unit.MatDenied) && has(unit.ThicknessSpread, unit.StripThickest):
		return Stack
	case has(unit.LabelOpen, unit.LabelClosed, unit.LabelPress, unit.LabelSpread, unit.LabelMinTemp) && !vacuum:
		return Glue
	case has(unit.StripCount, unit.StripWidth, unit.StripWidths) && vacuum:
		return Side
	case has(unit.MatThickness, unit.ThicknessSpread, unit.StripThickest, unit.BagWidth) || has(unit.Opening) && !has(unit.PumpSpeed, unit.Leak):
		return Stack
	case has(unit.StripThickness) && !vacuum && r.mentions(kindNoun, "fence") && r.mentions(kindNoun, "sled", "caul") && !has(unit.StripCount, unit.StripWidth):
		return Stack // "fence is 1/4, strips 1/4, a sled on top"
	case has(unit.PumpSpeed, unit.Leak):
		return Pump
	case has(unit.ServiceHumidity, unit.Sawn):
		return Move
	case vacuum && has(unit.PanelWidth) && r.wordIn("pressure") && !has(unit.ShopTemp):
		return Face // "…, yellow glue, 25 inHg. pressure on the glue line?"
	case has(unit.GlueClass) && has(unit.ShopTemp, unit.WoodMoisture, unit.WoodMoistureLow, unit.PanelWidth, unit.PanelCount, unit.LabelClosed, unit.LabelOpen):
		return Glue
	case has(unit.ShopTemp) && r.wordIn("use") && r.wordIn("can", "ok", "okay", "safe"):
		return Glue // "shop's barely 50, can i use it"
	case vacuum:
		return Face
	case has(unit.StripWidth) && has(unit.PanelCount) && !r.mentions(kindNoun, "bar") && (r.mentions(kindRole, "spread", "label") || r.said(unit.Content)):
		return Glue // "spread is 6 oz per sq yd on the label. 10 panels 24x24, 2 inch strips"
	case has(unit.StripCount, unit.StripWidth), r.pushTold() && r.allPlain():
		return Side
	case has(unit.PanelWidth) && has(unit.Species) && r.mentions(kindAir, "service") && r.wordIn("will", "going", "goes", "stand", "hang"):
		return Move // "oak panel 900 wide, will be in a church"
	}
	return ""
}

// chosen reports whether alternatives were offered for a field.
func (r *reader) chosen(f unit.Field) bool {
	for i := range r.phrase.Choices {
		if r.phrase.Choices[i].Field == f {
			return true
		}
	}
	return false
}

// terms reads the words whose meaning is asked.
func (r *reader) terms() {
	if !r.asksFor(Words) {
		return
	}
	if len(r.phrase.Asks) == 1 && r.amountsIn(0, len(r.items)) == 0 { // "hump up or hollow up" is then no choice
		r.phrase.Facts, r.phrase.Choices, r.phrase.Clashes = nil, nil, nil
	}
	for i := range r.items {
		it := &r.items[i]
		switch it.kind {
		case kindNoun, kindRole, kindVacuum, kindGlue, kindAir:
			r.phrase.Terms = append(r.phrase.Terms, it.id)
		case kindFact:
			r.phrase.Terms = append(r.phrase.Terms, it.word)
		case kindAsk:
			if it.id != "words" && it.id != "why" && r.amountsIn(0, len(r.items)) == 0 {
				r.phrase.Terms = append(r.phrase.Terms, it.word) // "what is buckle"
				continue
			}
			if it.word == "units" || it.word == "what units" || it.word == "help" || it.id == "words" && len(r.phrase.Terms) == 0 && !r.mentions(kindRole) {
				r.phrase.Terms = append(r.phrase.Terms, it.word)
			}
		}
	}
}

// onlyFlattens: "will 18 inHg flatten it" asks nothing else.
func (r *reader) onlyFlattens(a Ask) bool {
	return a.About == Flatten && len(r.phrase.Asks) == 1 && len(r.phrase.Facts) == 1 && r.phrase.Facts[0].Field == unit.Vacuum && !r.habit.Follows
}
