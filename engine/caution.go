package engine

// Dangers that depend on the load.
const (
	// CautionImplosion: a vessel that is not made for vacuum bursts inwards; never
	// glass, never an unrated tank.
	CautionImplosion Caution = "implosion"
	// CautionBreather: a middle that is sealed off from the pump gets no pressure;
	// keep a breather path open.
	CautionBreather Caution = "breather"
)
