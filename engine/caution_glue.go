package engine

import "presshand/engine/glue"

// Dangers of the glues, and of trusting a table.
const (
	// CautionLabel: the label and the safety data sheet govern over the table.
	CautionLabel Caution = "label"
	// CautionFormaldehyde: gives off formaldehyde while it cures; air and gloves.
	CautionFormaldehyde Caution = "formaldehyde"
	// CautionPhenol: phenol burns the skin; gloves and eye protection.
	CautionPhenol Caution = "phenol"
	// CautionFlammable: alcohol in the solvent; no flame or spark, air.
	CautionFlammable Caution = "flammable"
	// CautionPowder: the powder irritates; a dust mask while mixing.
	CautionPowder Caution = "powder"
	// CautionIsocyanate: an isocyanate sensitises lungs and skin; air and gloves.
	CautionIsocyanate Caution = "isocyanate"
	// CautionIsocyanateHardener: the hardener of two-part kinds may be an isocyanate.
	CautionIsocyanateHardener Caution = "isocyanate-hardener"
	// CautionEpoxySkin: epoxy sensitises the skin for good; gloves, eye protection.
	CautionEpoxySkin Caution = "epoxy-skin"
	// CautionEpoxyHeat: a mass of mixed epoxy heats itself; small batches, spread out.
	CautionEpoxyHeat Caution = "epoxy-heat"
	// CautionHotGlue: the pot and the glue scald.
	CautionHotGlue Caution = "hot-glue"
	// CautionAlkaline: the glue is alkaline; gloves and eye protection; stains oak.
	CautionAlkaline Caution = "alkaline"
)

var cautionOf = map[glue.Hazard]Caution{
	glue.Formaldehyde:       CautionFormaldehyde,
	glue.Phenol:             CautionPhenol,
	glue.Flammable:          CautionFlammable,
	glue.Dust:               CautionPowder,
	glue.Isocyanate:         CautionIsocyanate,
	glue.IsocyanateHardener: CautionIsocyanateHardener,
	glue.SkinSensitiser:     CautionEpoxySkin,
	glue.HeatsInMass:        CautionEpoxyHeat,
	glue.HotPot:             CautionHotGlue,
	glue.Alkaline:           CautionAlkaline,
}

// warnOfGlue records what the glue does to who works with it.
func warnOfGlue(b *builder, c glue.Class) {
	for _, h := range c.Hazards {
		b.warn(cautionOf[h])
	}
	b.warn(CautionLabel)
}
