package engine

// Dangers of the press and of the load in it.
const (
	// CautionImplosion: a vessel that is not made for vacuum bursts inwards; never
	// glass, never an unrated tank.
	CautionImplosion Caution = "implosion"
	// CautionBreather: a middle that is sealed off from the pump gets no pressure;
	// keep a breather path open.
	CautionBreather Caution = "breather"
	// CautionGauge: a gauge at the pump reads above what the press has.
	CautionGauge Caution = "gauge-at-pump"
	// CautionPorous: a porous bed or core leaks; seal it or lay film under the
	// work.
	CautionPorous Caution = "porous-bed"
	// CautionPowerCut: know what holds the vacuum when the power goes.
	CautionPowerCut Caution = "power-cut"
	// CautionPinch: a wedge under load lets go at once; fingers and faces away,
	// release it slowly.
	CautionPinch Caution = "pinch"
	// CautionHoldDown: sprung strips jump; hold them down until the vacuum does.
	CautionHoldDown Caution = "hold-down"
	// CautionHands: keep hands out while the press pulls down.
	CautionHands Caution = "hands"
	// CautionNoise: ear protection beside the pump, a dust mask at the planer.
	CautionNoise Caution = "ear-and-dust"
	// CautionStructural: a panel that carries people is a matter for the local
	// code and a licensed practitioner; these figures do not prove it.
	CautionStructural Caution = "structural"
)
