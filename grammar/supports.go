package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// supports are the fields that a topic's answer is made of: a cue counts only
// where the message has some of them, or nothing at all that speaks for another.
var supports = map[Topic][]unit.Field{
	Face:     {unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent, unit.Altitude, unit.Ambient, unit.PanelWidth, unit.BedWidth},
	Side:     {unit.StripCount, unit.BarHeight, unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.Gap, unit.StripThickness, unit.StripWidth, unit.BarDenied, unit.BarCount, unit.FrictionStated, unit.Cover},
	Flatten:  {unit.Cup, unit.Bow},
	Stack:    {unit.StackLayers, unit.Opening, unit.MatThickness, unit.ThicknessSpread, unit.StripThickest, unit.BagWidth, unit.MatFirmness, unit.MatDenied, unit.SledWidth},
	Strips:   {unit.StockPiles, unit.TargetWidth, unit.Targets, unit.Narrowest, unit.Widest, unit.UseFirst, unit.Neighbours},
	Glue:     {unit.GlueClass, unit.ShopTemp, unit.WoodMoisture, unit.WoodMoistureLow, unit.LabelOpen, unit.LabelClosed, unit.LabelPress, unit.LabelSpread, unit.PanelCount, unit.StripThickness},
	Pump:     {unit.PumpSpeed, unit.PressVolume, unit.Leak, unit.PumpLimit},
	Move:     {unit.ServiceHumidity, unit.ServiceTemp, unit.WoodMoisture, unit.Sawn, unit.ShopHumidity, unit.PanelWidth, unit.CoreKind},
	Schedule: {unit.PanelCount, unit.Targets, unit.PressCount, unit.StartTime, unit.Deadline, unit.LayupPanel, unit.LayupLoad, unit.WorkHours, unit.Overnight},
}

// answerable reports whether everything that a topic needs was said.
func (r *reader) answerable(t Topic) bool {
	vacuum := r.has(unit.Vacuum) || r.has(unit.VacuumAbsolute) || r.has(unit.VacuumPercent)
	switch t {
	case Face:
		return vacuum && (r.has(unit.PanelWidth) || r.has(unit.BedWidth))
	case Glue:
		return r.has(unit.GlueClass) && (r.has(unit.PanelWidth) || r.has(unit.StripWidth) || r.has(unit.ShopTemp))
	case Pump:
		return r.has(unit.PumpSpeed) && vacuum
	case Move:
		return r.has(unit.ServiceHumidity) && r.has(unit.WoodMoisture)
	case Flatten:
		return r.has(unit.Cup) || r.has(unit.Bow)
	}
	return false
}

// supported reports whether the message has a field that the topic works with.
func (r *reader) supported(t Topic) bool {
	for _, f := range supports[t] {
		if r.has(f) {
			return true
		}
	}
	return t == Pump && (r.mentions(kindNoun, "pump") || r.pumpCopes()) || t == Flatten && r.mentions(kindAsk, "flatten") && (r.saidCup() || r.outOfFlat() && !r.has(unit.StripCount) && !r.has(unit.Overfill) && !r.mentions(kindNoun, "bar"))
}

// saidCup: "suck the cup out" speaks of a cup whose depth is not said.
func (r *reader) saidCup() bool {
	for i := range r.items {
		if r.is(i, kindAsk, "flatten") && (strings.Contains(r.items[i].word, "cup") || strings.Contains(r.items[i].word, "bow")) {
			return true
		}
	}
	return false
}

// fieldsTold has the bits of the fields that were read, refused or offered.
func (r *reader) fieldsTold() (bits uint64) {
	for i := range r.bound {
		bits |= fieldBit(r.bound[i].fact.Field)
	}
	for i := range r.phrase.Refused {
		bits |= fieldBit(r.phrase.Refused[i].Field)
	}
	for i := range r.phrase.Choices {
		bits |= fieldBit(r.phrase.Choices[i].Field)
	}
	return bits
}

// fieldBit is a bit that few fields share.
func fieldBit(f unit.Field) uint64 {
	_, bit := sound(string(f))
	return bit
}

// toldAny reports whether one of the fields is among those told, by their bits.
func (r *reader) toldAny(bits uint64, fs []unit.Field) bool {
	for _, f := range fs {
		if bits&fieldBit(f) != 0 && (r.has(f) || r.chosen(f)) {
			return true
		}
	}
	return false
}
