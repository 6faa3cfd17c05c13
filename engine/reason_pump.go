package engine

// Reasons of the checks on the pump.
const (
	// ReasonPumpReaches: pump and leak allow the vacuum wanted even at the slow end.
	// Figures: vacuum_kpa, ultimate_vacuum_kpa.
	ReasonPumpReaches Reason = "pump-reaches"
	// ReasonPumpMayNotReach: a worn pump, or a low barometer, may not get there.
	// Figures: vacuum_kpa, ultimate_vacuum_kpa.
	ReasonPumpMayNotReach Reason = "pump-may-not-reach"
	// ReasonPumpCannotReach: pump and leak do not allow the vacuum wanted.
	// Figures: vacuum_kpa, ultimate_vacuum_kpa.
	ReasonPumpCannotReach Reason = "pump-cannot-reach"
)

// Advice on the pump.
const (
	// ReasonNoLeak: without a leak the vacuum holds as long as one likes. No figures.
	ReasonNoLeak Reason = "no-leak"
	// ReasonBelowContact: the vacuum is below the glue's contact pressure already.
	// Figures: vacuum_kpa, glue_min_kpa, glue.
	ReasonBelowContact Reason = "below-contact"
	// ReasonHoldAgainstPress: how long the vacuum holds beside how long the glue
	// wants to be pressed. Figures: hold_s, press_time_min, glue_min_kpa, glue.
	ReasonHoldAgainstPress Reason = "hold-against-press"
	// ReasonBagVolume: the air in the bag is guessed from its size laid flat.
	// Figures: press_volume_l.
	ReasonBagVolume Reason = "bag-volume"
	// ReasonLeakDominates: most of what the pump cannot pull is the leak; sealing
	// gains more than a bigger pump. Figures: leak_kpa_per_min, ultimate_vacuum_kpa.
	ReasonLeakDominates Reason = "leak-dominates"
)
