package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// findAsks reads the cues of what is asked. Which of them count is settled when
// the facts are known.
func (r *reader) findAsks() {
	for i := range r.items {
		it := &r.items[i]
		if it.kind == kindPeril {
			r.phrase.Asks = append(r.phrase.Asks, Ask{About: Safety, Peril: Peril(it.id)})
			continue
		}
		if it.kind != kindAsk {
			continue
		}
		a := cue(it.id)
		r.phrase.Asks = append(r.phrase.Asks, a)
		if a.Solve != "" && r.solving == "" {
			r.solving = a.Solve
		}
	}
	if r.solving == "" {
		r.phrase.Asks = append(r.phrase.Asks, r.loosely()...)
	}
	if len(r.phrase.Asks) > 0 {
		r.topic = r.phrase.Asks[0].About
	}
}

func cue(id string) Ask {
	topic, what, _ := strings.Cut(id, ":")
	if strings.HasPrefix(topic, "solve=") {
		topic, what = "", topic
	}
	a := Ask{About: Topic(topic)}
	switch {
	case strings.HasPrefix(what, "solve="):
		a.Solve = unit.Field(strings.TrimPrefix(what, "solve="))
	case what != "":
		a.For = []unit.Field{unit.Field(what)}
	}
	return a
}

// loosely reads "what … bar" and "how much … vacuum" with words in between.
func (r *reader) loosely() []Ask {
	for i := range r.items {
		if !r.word(i, "what", "which", "how") && !r.is(i, kindAsk) {
			continue
		}
		if !in(r.items[i].word, "what", "which", "what size bar", "how tall", "how high", "how much") {
			continue
		}
		for j := i + 1; j < len(r.items) && j <= i+3 && !r.isBreak(j); j++ {
			if r.items[j].amount != nil {
				break
			}
			if r.is(j, kindNoun, "bar") && !r.is(j+1, kindNone) == false && r.needs(j) {
				return []Ask{{About: Side, Solve: unit.BarHeight}}
			}
		}
	}
	return nil
}

// needs reports whether "need", "should" or "get" stands within reach of item j.
func (r *reader) needs(j int) bool {
	for k := j + 1; k < len(r.items) && k <= j+5 && !r.isStop(k); k++ {
		if r.word(k, "need", "needed", "should", "gets", "gives", "for", "would", "get", "give", "use", "must") {
			return true
		}
	}
	return false
}

// supports are the fields that a topic's answer is made of: a cue counts only
// where the message has some of them, or nothing at all that speaks for another.
var supports = map[Topic][]unit.Field{
	Face:     {unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent, unit.Altitude, unit.Ambient, unit.PanelWidth, unit.BedWidth},
	Side:     {unit.StripCount, unit.BarHeight, unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.Gap, unit.StripThickness, unit.StripWidth, unit.BarDenied, unit.BarCount, unit.FrictionStated, unit.Cover},
	Flatten:  {unit.Cup, unit.Bow},
	Stack:    {unit.StackLayers, unit.Opening, unit.MatThickness, unit.ThicknessSpread, unit.StripThickest, unit.SledThickness, unit.BagWidth, unit.CaulThickness, unit.MatFirmness},
	Strips:   {unit.StockPiles, unit.TargetWidth},
	Glue:     {unit.GlueClass, unit.ShopTemp, unit.WoodMoisture, unit.WoodMoistureLow, unit.LabelOpen, unit.LabelClosed, unit.LabelPress, unit.LabelSpread, unit.PanelCount, unit.StripThickness},
	Pump:     {unit.PumpSpeed, unit.PressVolume, unit.Leak, unit.PumpLimit, unit.Vacuum, unit.Opening, unit.BedWidth},
	Move:     {unit.ServiceHumidity, unit.ServiceTemp, unit.WoodMoisture, unit.Sawn, unit.ShopHumidity, unit.PanelWidth, unit.CoreKind},
	Schedule: {unit.PanelCount, unit.PressCount, unit.StartTime, unit.Deadline, unit.LayupPanel, unit.LayupLoad},
}

// supported reports whether the message has a field that the topic works with.
func (r *reader) supported(t Topic) bool {
	for _, f := range supports[t] {
		if r.has(f) {
			return true
		}
	}
	return false
}
