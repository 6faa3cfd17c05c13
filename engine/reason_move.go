package engine

// Reasons of the checks on moving wood.
const (
	// ReasonStaysFlat: the cup stays within 1/300 of the width.
	// Figures: cup_mm, cup_allowed_mm.
	ReasonStaysFlat Reason = "stays-flat"
	// ReasonCups: the cup can pass 1/300 of the width.
	// Figures: cup_mm, cup_allowed_mm.
	ReasonCups Reason = "cups"
	// ReasonOutsideMovingRange: the movement is published for 6 to 14 % moisture
	// and one of the two is outside. Figures: wood_mc_pct, emc_pct.
	ReasonOutsideMovingRange Reason = "outside-moving-range"
)

// Advice on moving wood.
const (
	// ReasonFaceTheBack: a like face on the back keeps the panel flat. No figures.
	ReasonFaceTheBack Reason = "face-the-back"
	// ReasonSpeciesUnsaid: the movement is the mean of hardwoods; single woods run
	// from half to half as much again. No figures.
	ReasonSpeciesUnsaid Reason = "species-unsaid"
	// ReasonCutUnsaid: flat sawn wood moves most and quarter sawn least; the ends
	// are the two. No figures.
	ReasonCutUnsaid Reason = "cut-unsaid"
	// ReasonAirHeld: the air is beyond the published table and taken at its end.
	// Figures: service_temp_c (what was taken).
	ReasonAirHeld Reason = "air-held"
	// ReasonCoreHoldsFace: the width change is that of a free board; glued to a
	// core it moves far less. No figures.
	ReasonCoreHoldsFace Reason = "core-holds-face"
)
