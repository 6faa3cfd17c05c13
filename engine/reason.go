package engine

// Reasons of the checks on the air and the vacuum.
const (
	// ReasonVacuumWithin: advice on a face, the vacuum is within what the air at
	// this height allows. Figures: vacuum_kpa, ambient_kpa.
	ReasonVacuumWithin Reason = "vacuum-within"
	// ReasonVacuumNearAmbient: the vacuum is above 95 % of the ambient; few pumps
	// get there. Figures: vacuum_kpa, ambient_kpa.
	ReasonVacuumNearAmbient Reason = "vacuum-near-ambient"
	// ReasonVacuumAboveAmbient: the vacuum is at or above the ambient, which is
	// the most that this height allows. Figures: vacuum_kpa, ambient_kpa.
	ReasonVacuumAboveAmbient Reason = "vacuum-above-ambient"
)

// Reasons of the checks on edge joints. Figures of each: side_net_kpa, the
// pressure less what closes the gap; glue_min_kpa, glue_full_kpa; joint_at_mm
// where a bar presses.
const (
	// ReasonJointFull: the pressure reaches the advice for clamps.
	ReasonJointFull Reason = "joint-full"
	// ReasonJointTight: the pressure reaches contact and the joint closes
	// hand-tight.
	ReasonJointTight Reason = "joint-tight"
	// ReasonJointHandTight: contact is reached, clamp pressure is not; every joint
	// must close hand-tight before the vacuum.
	ReasonJointHandTight Reason = "joint-hand-tight"
	// ReasonJointUnderContact: part of the range is under contact pressure; every
	// joint out there must close hand-tight or be wedged. Figures:
	// under_contact_pct, and bar_reach_mm where a bar presses.
	ReasonJointUnderContact Reason = "joint-under-contact"
	// ReasonJointBeyondReach: friction may eat the whole push before this joint;
	// only a preload and a hand-tight fit hold it. Figures: under_contact_pct,
	// bar_reach_mm.
	ReasonJointBeyondReach Reason = "joint-beyond-reach"
	// ReasonJointOpen: a gap wider than the glue fills, and the pressure does not
	// close it. Figures: gap_mm, gap_limit_mm, closing_kpa.
	ReasonJointOpen Reason = "joint-open"
	// ReasonJointGapWide: a gap wider than the glue fills, which the pressure may
	// or may not close. Figures: gap_mm, gap_limit_mm, closing_kpa.
	ReasonJointGapWide Reason = "joint-gap-wide"
	// ReasonNoJoint: one strip has no edge joint. No figures.
	ReasonNoJoint Reason = "no-joint"
	// ReasonJointGapLength: a gap wider than the glue fills; whether the pressure
	// closes it depends on a length that is not known. Figures: gap_mm,
	// gap_limit_mm.
	ReasonJointGapLength Reason = "joint-gap-length"
)

// Reasons of the other checks on a panel pressed from the side.
const (
	// ReasonWedgeHolds: the wedge stays in by itself. Figures: wedge_ratio.
	ReasonWedgeHolds Reason = "wedge-holds"
	// ReasonWedgeSlips: at low friction the wedge backs out; put a stop behind
	// it. Figures: wedge_ratio.
	ReasonWedgeSlips Reason = "wedge-slips"
	// ReasonLies: the vacuum lays the sprung panel down. Figures:
	// face_pressure_kpa, snap_kpa, rise_mm.
	ReasonLies Reason = "sprung-lies-down"
	// ReasonMayStand: the vacuum may not lay the sprung panel down. Figures:
	// face_pressure_kpa, snap_kpa, rise_mm.
	ReasonMayStand Reason = "sprung-may-stand"
	// ReasonStands: the sprung panel stays up. Figures: face_pressure_kpa,
	// snap_kpa, rise_mm.
	ReasonStands Reason = "sprung-stands"
	// ReasonLifts: the preload lifts loose strips; hold them down until the vacuum
	// does. Figures: preload_kpa, buckle_kpa.
	ReasonLifts Reason = "strips-lift"
	// ReasonNoLift: the preload does not lift loose strips. Figures: preload_kpa,
	// buckle_kpa.
	ReasonNoLift Reason = "strips-lie"
	// ReasonCrushNear: the highest joint pressure is above half of what the wood
	// bears across the grain. Figures: side_first_joint_kpa, crush_kpa.
	ReasonCrushNear Reason = "crush-near"
	// ReasonCrushed: the highest joint pressure is above what the wood bears
	// across the grain. Figures: side_first_joint_kpa, crush_kpa.
	ReasonCrushed Reason = "crushed"
	// ReasonStarved: so much pressure squeezes epoxy out of the joint. Figures:
	// side_first_joint_kpa, starved_kpa.
	ReasonStarved Reason = "joint-starved"
	// ReasonBoils: water boils under film at this vacuum and temperature.
	// Figures: boiling_kpa, vacuum_kpa, shop_temp_c.
	ReasonBoils Reason = "water-boils"
	// ReasonBoilsNear: water nearly boils under film. Figures: boiling_kpa,
	// vacuum_kpa, shop_temp_c.
	ReasonBoilsNear Reason = "water-boils-near"
)

// Advice on a panel pressed from the side.
const (
	// ReasonCoverBar: film that reaches behind the bar pushes it back; cover the
	// bar to its top. Figures: bar_height_mm, cover_mm as it may be,
	// bar_width_least_mm where it would tip then, side_far_joint_kpa with the bar covered.
	ReasonCoverBar Reason = "cover-the-bar"
	// ReasonKeepBack: the edges of core, sled and caul must stay 1 to 3 mm behind
	// the strips' edge, or they take the push.
	ReasonKeepBack Reason = "keep-edges-back"
	// ReasonWiderBar: the bar tips before its covered height pushes; a wider one
	// does not. Figures: bar_height_mm, bar_tipping_mm, bar_width_least_mm,
	// side_far_joint_kpa with that width.
	ReasonWiderBar Reason = "wider-bar"
	// ReasonBarTooLow: the bar's top is at or under the strips' underside and
	// does not touch them. Figures: bar_height_mm.
	ReasonBarTooLow Reason = "bar-too-low"
	// ReasonBarBarely: the bar overlaps the strips' edge by too little to be sure of
	// its push. Figures: bar_height_mm that is enough.
	ReasonBarBarely Reason = "bar-barely"
	// ReasonBarUnderUpperFace: the bar touches the lower face alone; the figures are
	// for the upper one, which only the film on its edge presses. Figures:
	// bar_height_mm.
	ReasonBarUnderUpperFace Reason = "bar-under-upper-face"
	// ReasonBothFaces: one bar or wedge presses both faces of a core, half of it
	// each; the ends of a range are the shares beside a bar that leans.
	ReasonBothFaces Reason = "both-faces"
	// ReasonFrictionBound: the joint figures take friction as used up; the truth
	// lies between them and the covered ideal. Figures: side_ideal_kpa of the
	// covered height.
	ReasonFrictionBound Reason = "friction-bound"
	// ReasonDriveAgain: squeeze-out relieves a wedge; drive it again just before
	// the vacuum.
	ReasonDriveAgain Reason = "drive-wedge-again"
	// ReasonWedgeForceUnknown: how hard the wedge is driven would give the
	// preload.
	ReasonWedgeForceUnknown Reason = "wedge-force-unknown"
	// ReasonCrushUnknown: no table has a crushing strength for this wood, so that
	// is not judged. Figures: species; where it would be near for the softest wood
	// of its group, side_first_joint_kpa and crush_kpa of that wood.
	ReasonCrushUnknown Reason = "crush-unknown"
	// ReasonBarForContact: a bar of this height, covered to its top, gives the far
	// joint contact at the middle of the range. Figures: bar_height_mm,
	// glue_min_kpa.
	ReasonBarForContact Reason = "bar-for-contact"
	// ReasonEachBarStep: what each further step of covered bar adds to the far
	// joint. Figures: bar_height_mm the step, side_far_joint_kpa what it adds.
	ReasonEachBarStep Reason = "each-bar-step"
	// ReasonEachVacuumStep: what each further step of vacuum adds to the far
	// joint. Figures: vacuum_kpa the step, side_far_joint_kpa what it adds.
	ReasonEachVacuumStep Reason = "each-vacuum-step"
)

// Reasons of the checks on faces. Figures of the first five: face_pressure_kpa,
// glue_min_kpa, glue.
const (
	// ReasonFaceContact: the face gets contact pressure.
	ReasonFaceContact Reason = "face-contact"
	// ReasonFaceWantsClamps: contact is reached, but this glue wants a clamp's
	// pressure.
	ReasonFaceWantsClamps Reason = "face-wants-clamps"
	// ReasonFaceMayFall: the middle of the range is enough, its low end is not.
	ReasonFaceMayFall Reason = "face-may-fall-short"
	// ReasonFaceNearContact: at least half of the contact pressure.
	ReasonFaceNearContact Reason = "face-near-contact"
	// ReasonFaceUnderContact: less than half of the contact pressure.
	ReasonFaceUnderContact Reason = "face-under-contact"

	// ReasonFlattens: the vacuum flattens the strip. Figures: face_pressure_kpa,
	// flatten_need_kpa.
	ReasonFlattens Reason = "flattens"
	// ReasonMayFlatten: at the middle of the range it does. Figures as above.
	ReasonMayFlatten Reason = "may-flatten"
	// ReasonStaysCurled: the vacuum does not flatten the strip. Figures as above.
	ReasonStaysCurled Reason = "stays-curled"
	// ReasonHumpUp: lay the strip hump up; hollow up its edges stay up.
	ReasonHumpUp Reason = "hump-up"
)

// Reasons of the checks on a stack. Where several levels hold work, those of one
// level have its number, level, counted from the bottom.
const (
	// ReasonFits: the stack fits the opening. Figures: stack_height_mm,
	// opening_mm, clearance_mm.
	ReasonFits Reason = "fits"
	// ReasonFitsBarely: less than 6 mm is left. Figures as above.
	ReasonFitsBarely Reason = "fits-barely"
	// ReasonTooHigh: the stack is higher than the opening. Figures as above.
	ReasonTooHigh Reason = "too-high"
	// ReasonBarTooHigh: the side bar's top is higher than the opening. Figures as
	// above, the height that of its top.
	ReasonBarTooHigh Reason = "bar-too-high"
	// ReasonBarFitsBarely: less than 6 mm is left above the side bar. Figures as
	// above.
	ReasonBarFitsBarely Reason = "bar-fits-barely"
	// ReasonProud: the work stands above the fence. Figures: proud_mm.
	ReasonProud Reason = "proud"
	// ReasonProudLittle: the work stands less than 0.8 mm above the fence.
	// Figures: proud_mm.
	ReasonProudLittle Reason = "proud-little"
	// ReasonFenceCarries: the fence carries the sled above, not the work. Figures:
	// proud_mm.
	ReasonFenceCarries Reason = "fence-carries"
	// ReasonFenceMat: the work lies below its fence, which carries the mat at the
	// work's edges. Figures: fence_thickness_mm, proud_mm (how far below), level.
	ReasonFenceMat Reason = "fence-carries-mat"
	// ReasonUneven: strips differ by more than a rigid sled forgives; a mat helps.
	// Figures: spread_mm.
	ReasonUneven Reason = "strips-uneven"
	// ReasonEven: strips are even enough for a rigid sled. Figures: spread_mm.
	ReasonEven Reason = "strips-even"
	// ReasonFilmForgives: film alone follows any thickness. Figures: spread_mm.
	ReasonFilmForgives Reason = "film-forgives"
	// ReasonBagFits: the bag is wide and long enough. Figures: bag_width_mm and
	// bag_length_mm needed.
	ReasonBagFits Reason = "bag-fits"
	// ReasonBagSmall: the bag is too small. Figures: bag_width_mm and
	// bag_length_mm needed.
	ReasonBagSmall Reason = "bag-small"
	// ReasonFoamGas: closed cells keep their gas in an evacuated press; the mat
	// squashes less than on a bench and bulges sideways.
	ReasonFoamGas Reason = "foam-keeps-gas"
	// ReasonSledConcentrates: the sled is larger than the strips and concentrates
	// the load on them. Figures: face_pressure_kpa, level_pressure_kpa.
	ReasonSledConcentrates Reason = "sled-concentrates"
)

// Reasons of solving backwards.
const (
	// ReasonSolved: the goal is met. Figures: the goal's, and the solved field.
	ReasonSolved Reason = "solved"
	// ReasonOutOfReach: no value of the field meets the goal. Figures: the field
	// where it comes nearest, the goal's figure there, goal what was wanted.
	ReasonOutOfReach Reason = "out-of-reach"
	// ReasonFormulaEnds: beyond the nearest that can be had a formula is not valid.
	// Figures: limit_of, the input in words, and limit_is, what it has to be.
	ReasonFormulaEnds Reason = "formula-ends"
	// ReasonNoBearing: the figure wanted does not hang on the field. Figures: goal.
	ReasonNoBearing Reason = "no-bearing"
	// ReasonJumps: no value gives the figure wanted, which jumps over it; this is
	// the side of the jump that is enough. Figures: as of ReasonOutOfReach.
	ReasonJumps Reason = "jumps"
	// ReasonNotExactly: the figure jumps over what is wanted, which cannot be had
	// exactly. Figures: as of ReasonOutOfReach.
	ReasonNotExactly Reason = "not-exactly"
	// ReasonAnyUpTo: the goal is met wherever it was looked, with the least to spare
	// at the greatest value. Figures: as of ReasonOutOfReach.
	ReasonAnyUpTo Reason = "any-up-to"
	// ReasonAnyFrom: the same, with the least to spare at the smallest value, or in
	// between. Figures: as of ReasonOutOfReach.
	ReasonAnyFrom Reason = "any-from"
	// ReasonSureFrom: the value that meets the goal over the whole range of what is
	// uncertain. Figures: the solved field.
	ReasonSureFrom Reason = "sure-from"
)

// Reasons of formulas that go beyond what they were made for.
const (
	// ReasonDeepCurl: a cup or a bow of more than a tenth of its span needs more than
	// the formula says. Figures: cup_mm or bow_mm.
	ReasonDeepCurl Reason = "deep-curl"
	// ReasonStubbyStrip: a strip under ten widths long is too short for the formula
	// of a slender beam. Figures: strip_length_mm, strip_width_mm.
	ReasonStubbyStrip Reason = "stubby-strip"
	// ReasonSteepRise: a panel that stands up by more than a tenth of its width is
	// no shallow arch. Figures: rise_mm.
	ReasonSteepRise Reason = "steep-rise"
	// ReasonMatOutsideFit: the mat's law is fitted to a squash of 25 to 60 %.
	// Figures: none.
	ReasonMatOutsideFit Reason = "mat-outside-fit"
)
