package engine

// Reasons of the checks on the air and the vacuum.
const (
	// ReasonVacuumWithin: the vacuum is what the air at this height allows.
	// Figures: vacuum_kpa, ambient_kpa.
	ReasonVacuumWithin Reason = "vacuum-within"
	// ReasonVacuumNearAmbient: the vacuum is above 95 % of the ambient; few pumps
	// get there. Figures: vacuum_kpa, ambient_kpa.
	ReasonVacuumNearAmbient Reason = "vacuum-near-ambient"
	// ReasonVacuumAboveAmbient: the vacuum is at or above the ambient, which is
	// the most that this height allows. Figures: vacuum_kpa, ambient_kpa.
	ReasonVacuumAboveAmbient Reason = "vacuum-above-ambient"
)
