package engine

import (
	"slices"

	"presshand/engine/unit"
)

// bounds are where a value is looked for, in the unit of the field.
var bounds = map[unit.Field][2]float64{
	unit.StripCount: {2, 400}, unit.PanelCount: {1, 1000}, unit.PressCount: {1, 50}, unit.BarCount: {1, 2}, unit.Faces: {1, 2},
	unit.BarHeight: {0.5, 1000}, unit.BarWidth: {0.5, 500}, unit.Cover: {0.5, 1000},
	unit.StripThickness: {0.5, 300}, unit.StripThickest: {0.5, 300}, unit.StripThinnest: {0.5, 300},
	unit.StripWidth: {2, 2000}, unit.StripLength: {20, 30000}, unit.PanelWidth: {5, 30000}, unit.PanelLength: {20, 30000},
	unit.Altitude: {-400, 9000}, unit.Ambient: {30, 110}, unit.Vacuum: {0, 110},
	unit.WedgeRatio: {1, 100}, unit.WedgeForce: {1, 100000}, unit.FrictionStated: {0.01, 2},
	unit.ShopTemp: {-10, 45}, unit.ServiceTemp: {-10, 45}, unit.Overfill: {0, 50},
	unit.Gap: {0, 50}, unit.Cup: {0.01, 200}, unit.Bow: {0.01, 1000},
	unit.PumpSpeed: {0.01, 1000}, unit.PumpLimit: {0, 100}, unit.PressVolume: {0.1, 100000}, unit.Leak: {0.001, 500},
	unit.WoodMoisture: {1, 28}, unit.ShopHumidity: {1, 99}, unit.ServiceHumidity: {1, 99},
}

// senses are the figures that are wanted at least (1) or at most (−1); any other
// is wanted as it stands.
var senses = map[unit.Field]int{
	GoalVerdict:       1,
	unit.FacePressure: 1, unit.FaceForce: 1, unit.FaceTonsPerSquareFoot: 1, unit.LevelPressure: 1, unit.MatLow: 1,
	unit.SideIdeal: 1, unit.SideFirstJoint: 1, unit.SideFarJoint: 1, unit.SideNet: 1, unit.BarCovered: 1, unit.BarReach: 1,
	unit.Preload: 1, unit.Buckle: 1, unit.FlattenLeft: 1, unit.Proud: 1, unit.Clearance: 1, unit.UltimateVacuum: 1, unit.Hold: 1,
	unit.OpenTime: 1, unit.ClosedTime: 1,
	unit.Snap: -1, unit.Closing: -1, unit.FlattenNeed: -1, unit.FenceLoad: -1, unit.Rise: -1, unit.StackHeight: -1,
	unit.GlueMass: -1, unit.LayupPanel: -1, unit.PressTime: -1, unit.Pump: -1,
}

// ofFace are the figures for which a face has all that counts, and joints ask for more.
var ofFace = map[unit.Field]bool{unit.FacePressure: true, unit.FaceForce: true, unit.FaceTonsPerSquareFoot: true}

// sense tells whether more of the figure wanted is better, or less.
func (s *solver) sense() int { return senses[s.figure] }

// shallow is how deep a cup or a bow may be for its formula, as a share of its span.
const shallow = 0.1

// searched returns where to look for a value of a field; false where the field
// holds no number.
func searched(f unit.Field, q Question) (low, high float64, ok bool) {
	if span, ok := spanOf(f, q); ok {
		return 0.01, shallow * span, true
	}
	if r, ok := bounds[f]; ok {
		return r[0], r[1], true
	}
	switch f.Dimension() {
	case unit.Distance:
		return 0.1, 5000, true
	case unit.Pressing:
		return 0.1, 2000, true
	case unit.Lasting:
		return 0.1, 100000, true
	case unit.Pushing, unit.Spreading, unit.Content, unit.Weight:
		return 0.1, 100000, true
	case unit.Proportion, unit.Warmth:
		return 0.1, 100, true
	}
	return 0, 0, false
}

// spanOf returns the span of a cup or a bow, in mm.
func spanOf(f unit.Field, q Question) (float64, bool) {
	over := map[unit.Field][]unit.Field{
		unit.Cup: {unit.StripWidth, unit.PanelWidth}, unit.Bow: {unit.StripLength, unit.PanelLength},
	}
	for _, facts := range [...]unit.Facts{q.Said, q.Room} {
		for _, s := range over[f] {
			if mm, ok := facts.Number(s); ok && mm > 0 {
				return mm, q.About == Flatten
			}
		}
	}
	return 0, false
}

// fenced returns a stack whose fences of no thickness, or else all of them, have
// one in mm.
func fenced(layers unit.Layers, mm float64) unit.Layers {
	out := slices.Clone(layers)
	open := slices.ContainsFunc(out, func(l unit.Layer) bool { return l.Part == partFence && l.Thickness == 0 })
	for i, l := range out {
		if l.Part == partFence && (l.Thickness == 0 || !open) {
			out[i].Thickness = mm
		}
	}
	return out
}

// overruled returns what says the field that is wanted in other words, or denies
// it.
func overruled(said unit.Facts, f unit.Field) []unit.Field {
	switch {
	case f == unit.Vacuum:
		return []unit.Field{unit.VacuumAbsolute, unit.VacuumPercent}
	case f == unit.BarHeight:
		return []unit.Field{unit.BarDenied}
	case f == unit.Ambient:
		return []unit.Field{unit.Altitude}
	case f == unit.Altitude:
		return []unit.Field{unit.Ambient}
	case f == unit.ThicknessSpread:
		return []unit.Field{unit.StripThickest, unit.StripThinnest}
	case f == unit.WoodMoisture:
		return []unit.Field{unit.WoodMoistureLow, unit.WoodMoistureHigh}
	case f == unit.Opening && said.Has(unit.BedWidth):
		return []unit.Field{unit.PressVolume}
	case f == unit.StripWidth && said.Has(unit.StripCount):
		return []unit.Field{unit.StripWidths, unit.PanelWidth}
	case f == unit.PanelWidth && said.Has(unit.StripWidth):
		return []unit.Field{unit.StripCount}
	case f == unit.StripCount && said.Has(unit.StripWidth):
		return []unit.Field{unit.PanelWidth}
	}
	return nil
}

// whole reports whether a field holds a whole number.
func whole(f unit.Field) bool { return f.Dimension() == unit.Count }
