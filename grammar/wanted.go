package grammar

import "presshand/engine/unit"

// wanted reports whether a word before item i says that its figure is wanted.
func (r *reader) wanted(i int) bool {
	for j := i - 1; j >= 0 && j >= i-5 && !r.isStop(j) && r.items[j].brk != ','; j-- {
		if r.is(i+1, kindRole, "min") && j == i-1 && r.solving == unit.Vacuum {
			return true // "he says 9 psi minimum. inHg for that?"
		}
		if r.word(j, "for", "want", "wanted", "get", "reach", "gets", "give", "gives", "hit", "least", "have", "put", "wants", "keep", "see") || r.is(j, kindRole, "target", "min") || r.is(j, kindAsk, "pump") {
			return true
		}
		if r.is(j, kindVacuum) || r.items[j].amount != nil {
			return false
		}
	}
	return false
}

// goal takes a pressure for the wanted figure of a question that is solved
// backwards.
func (r *reader) goal(i int) bool {
	if r.solving == "" {
		return false
	}
	f, at := r.figureNear(i)
	if f == unit.FacePressure && r.solving == unit.WedgeForce {
		f, at = "", -1 // "how many pounds of force on the wedge for 50 psi" is of no face
	}
	if f == "" && (r.solving != unit.Vacuum && !r.wanted(i) || r.items[i].amount.unit.Symbol == "inHg" && r.solving != unit.Vacuum) {
		return false
	}
	if f == "" && !r.wanted(i) {
		return false
	}
	if f == "" {
		f = unit.SideFarJoint
		tons := r.items[i].amount.unit.Symbol == unit.TonPerFt2.Symbol // said of a face
		if (r.solving == unit.Vacuum || tons) && !r.mentions(kindNoun, "bar", "joint") && !r.mentions(kindNoun, "strip") {
			f = unit.FacePressure
		}
		switch r.solving {
		case unit.WedgeRatio, unit.WedgeForce, unit.Overfill:
			f = unit.Preload
		}
		if r.topicOf(r.solving) == Pump {
			return false
		}
	}
	if f == unit.FacePressure && r.items[i].amount.unit.Symbol == unit.TonPerFt2.Symbol {
		f = unit.FaceTonsPerSquareFoot
	}
	v, u, ok := r.valueOf(r.items[i].amount, f)
	if !ok || impossible(f, v) != "" {
		return false
	}
	r.items[i].used = true
	if at >= 0 {
		r.items[at].used = true
	}
	for k := range r.phrase.Asks {
		if r.phrase.Asks[k].Solve == r.solving {
			if r.phrase.Asks[k].Goal == nil {
				r.phrase.Asks[k].Goal = map[unit.Field]Fact{}
			}
			r.unuse(r.phrase.Asks[k].Goal[f].Text)
			r.phrase.Asks[k].Goal[f] = Fact{Field: f, Value: unit.Number(v), Unit: u, Text: r.items[i].text}
			break
		}
	}
	return true
}

// goalAgain: "40 psi at the far joint, no, scratch that, 60 psi".
func (r *reader) goalAgain(i int) bool {
	j := i - 1
	for j >= 0 && r.items[j].amount == nil {
		j--
	}
	if j < 0 || r.within(j, i, kindFix) < 0 || r.is(r.next(i), kindVacuum) {
		return false
	}
	for k := range r.phrase.Asks {
		for _, was := range goals(r.phrase.Asks[k]) {
			f := was.Field
			if am := r.items[i].amount; am.bare() && was.Text == r.items[j].text {
				am.unit = &was.Unit
			}
			v, u, ok := r.valueOf(r.items[i].amount, f)
			if was.Text == r.items[j].text && ok && impossible(f, v) == "" {
				r.unuse(was.Text)
				r.items[i].used = true
				r.phrase.Asks[k].Goal[f] = Fact{Field: f, Value: unit.Number(v), Unit: u, Text: r.items[i].text}
				return true
			}
		}
	}
	return false
}

func (r *reader) topicOf(f unit.Field) Topic {
	for _, a := range r.phrase.Asks {
		if a.Solve == f {
			return a.About
		}
	}
	return ""
}

// figureNear finds the figure that is named right behind or before a pressure:
// "50 psi at the far joint".
func (r *reader) figureNear(i int) (unit.Field, int) {
	if !r.means(kindNoun, "face", "joint") && !r.means(kindAsk, "face", "side", "side:"+string(unit.SideFarJoint), "side:"+string(unit.SideFirstJoint), "side:"+string(unit.Preload)) {
		return "", -1
	}
	for j := i + 1; j < len(r.items) && j <= i+6; j++ {
		if r.isBreak(j) || r.items[j].amount != nil {
			break
		}
		if f := r.figure(j); f != "" {
			return f, j
		}
	}
	for j := i - 1; j >= 0 && j >= i-4; j-- {
		if r.isBreak(j) || r.items[j].amount != nil {
			break
		}
		if f := r.figure(j); f != "" {
			return f, j
		}
	}
	return "", -1
}

func (r *reader) figure(j int) unit.Field {
	it := &r.items[j]
	switch {
	case it.kind == kindAsk && it.id == "side:"+string(unit.SideFarJoint):
		return unit.SideFarJoint
	case it.kind == kindAsk && it.id == "side:"+string(unit.SideFirstJoint):
		return unit.SideFirstJoint
	case it.kind == kindAsk && it.id == "side:"+string(unit.Preload):
		return unit.Preload
	case it.kind == kindAsk && it.id == "face", it.kind == kindNoun && it.id == "face":
		return unit.FacePressure
	case it.kind == kindAsk && it.id == "side", it.kind == kindNoun && it.id == "joint":
		return unit.SideFarJoint
	case r.word(j, "first") && r.word(j-1, "the") && r.isBreak(j+1) && r.mentions(kindAsk, "side:"+string(unit.SideFarJoint)):
		return unit.SideFirstJoint // "40 psi on the last joint and 60 on the first"
	}
	return ""
}

// otherPressure reports whether the message has another pressure than that at
// item i.
func (r *reader) otherPressure(i int) bool {
	for k := range r.items {
		if k != i && r.items[k].amount != nil && !r.items[k].amount.dead && r.items[k].amount.is(unit.Pressing) {
			return true
		}
	}
	return false
}
