package bot

import (
	"presshand/engine/unit"
	"presshand/grammar"
)

// signs say what a message is about that states facts and asks nothing. The
// first line of which all needed groups are met decides; a group is met by any
// of its fields.
var signs = []struct {
	about grammar.Topic
	all   [][]unit.Field
}{
	{grammar.Strips, [][]unit.Field{{unit.StockPiles, unit.Narrowest, unit.Widest, unit.UseFirst, unit.Neighbours}}},
	{grammar.Strips, [][]unit.Field{{unit.TargetWidth, unit.Targets}, {unit.Trim, unit.WedgeLow, unit.WedgeHigh}}},
	{grammar.Schedule, [][]unit.Field{{unit.StartTime, unit.Deadline, unit.WorkHours, unit.Overnight}}},
	{grammar.Schedule, [][]unit.Field{{unit.PanelCount, unit.Targets}, {unit.PressCount}}},
	{grammar.Stack, [][]unit.Field{{unit.StackLayers}}},
	{grammar.Stack, [][]unit.Field{{unit.MatThickness, unit.MatFirmness, unit.MatFirm}, {unit.StripThickest, unit.StripThinnest, unit.ThicknessSpread, unit.Opening}}},
	{grammar.Flatten, [][]unit.Field{{unit.Cup, unit.Bow}}},
	{grammar.Pump, [][]unit.Field{{unit.PumpSpeed, unit.Leak}}},
	{grammar.Side, [][]unit.Field{{unit.BarHeight, unit.BarDenied, unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.Gap}}},
	{grammar.Side, [][]unit.Field{{unit.StripCount}, {unit.StripWidth, unit.StripWidths, unit.StripThickness}}},
	{grammar.Move, [][]unit.Field{{unit.ServiceHumidity}}},
	{grammar.Glue, [][]unit.Field{{unit.GlueClass}, {unit.PanelCount, unit.PanelWidth, unit.WoodMoisture, unit.ShopTemp, unit.LabelOpen, unit.LabelClosed, unit.LabelPress}}},
	{grammar.Glue, [][]unit.Field{{unit.WoodMoisture, unit.WoodMoistureLow, unit.WoodMoistureHigh}}},
	{grammar.Glue, [][]unit.Field{{unit.LabelOpen, unit.LabelClosed, unit.LabelPress, unit.LabelSpread}}},
	{grammar.Side, [][]unit.Field{{unit.StripWidth, unit.StripWidths}, {unit.StripThickness}}},
	{grammar.Pump, [][]unit.Field{{unit.PressVolume}}},
	{grammar.Face, [][]unit.Field{{unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent, unit.Altitude, unit.Ambient}}},
	{grammar.Strips, [][]unit.Field{{unit.TargetWidth, unit.Targets}}},
	{grammar.Glue, [][]unit.Field{{unit.GlueClass}}},
	{grammar.Stack, [][]unit.Field{{unit.Opening, unit.MatThickness}}},
	{grammar.Side, [][]unit.Field{{unit.StripCount, unit.StripWidth}}},
}

// topicOf infers what a statement is about, "" where it could be anything.
func topicOf(s Statement, more []Alternative) grammar.Topic {
	known := func(fs []unit.Field) bool {
		if s.has(fs...) {
			return true
		}
		for _, a := range more {
			for _, f := range fs {
				if a.Field == f {
					return true
				}
			}
		}
		return false
	}
next:
	for _, sign := range signs {
		for _, group := range sign.all {
			if !known(group) {
				continue next
			}
		}
		return sign.about
	}
	return ""
}
