package engine

import "presshand/engine/unit"

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

// searched returns where to look for a value of a field; false where the field
// holds no number.
func searched(f unit.Field) (low, high float64, ok bool) {
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

// overruled returns what says the field that is wanted in other words, or denies
// it.
func overruled(said unit.Facts, f unit.Field) []unit.Field {
	switch {
	case f == unit.Vacuum:
		return []unit.Field{unit.VacuumAbsolute, unit.VacuumPercent}
	case f == unit.BarHeight:
		return []unit.Field{unit.BarDenied}
	case f == unit.PanelWidth && said.Has(unit.StripWidth):
		return []unit.Field{unit.StripCount}
	case f == unit.StripCount && said.Has(unit.StripWidth):
		return []unit.Field{unit.PanelWidth}
	}
	return nil
}

// whole reports whether a field holds a whole number.
func whole(f unit.Field) bool { return f.Dimension() == unit.Count }
