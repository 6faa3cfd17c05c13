package unit

import "strings"

// A Field names a quantity of the shop; its ending says the unit that a [Number]
// under it is in. What is said and what is computed share the names.
type Field string

// What a message can say.
const (
	StripCount       Field = "strip_count"
	StripWidth       Field = "strip_width_mm"
	StripWidths      Field = "strip_widths_mm"
	StripThickness   Field = "strip_thickness_mm"
	StripThickest    Field = "strip_thickest_mm"
	StripThinnest    Field = "strip_thinnest_mm"
	PanelThickness   Field = "panel_thickness_mm"
	ThicknessSpread  Field = "spread_mm"
	StripLength      Field = "strip_length_mm"
	PanelWidth       Field = "panel_width_mm"
	PanelLength      Field = "panel_length_mm"
	PanelCount       Field = "panel_count"
	Species          Field = "species"
	Vacuum           Field = "vacuum_kpa"     // as a dial shows it
	VacuumAbsolute   Field = "vacuum_abs_kpa" // what is left in the press, as said
	VacuumPercent    Field = "vacuum_pct"     // of the ambient, as said
	Altitude         Field = "altitude_m"
	Ambient          Field = "ambient_kpa"
	PressKind        Field = "press"
	BarHeight        Field = "bar_height_mm"
	BarWidth         Field = "bar_width_mm"
	BarCount         Field = "bar_count"
	BarDenied        Field = "bar"
	BarFoot          Field = "bar_foot"
	SledThickness    Field = "sled_thickness_mm"
	CaulThickness    Field = "caul_thickness_mm"
	Cover            Field = "cover_mm"
	Faces            Field = "faces"
	SledWidth        Field = "sled_width_mm"
	SledLength       Field = "sled_length_mm"
	BagWidth         Field = "bag_width_mm"
	BagLength        Field = "bag_length_mm"
	WedgeRatio       Field = "wedge_ratio"
	WedgeForce       Field = "wedge_force_n"
	Overfill         Field = "overfill_mm"
	Tent             Field = "tent_mm"
	SurfaceKind      Field = "surface"
	FrictionStated   Field = "friction"
	LabelOpen        Field = "label_open_min"
	LabelClosed      Field = "label_closed_min"
	LabelPress       Field = "label_press_min"
	LabelSpread      Field = "label_spread_gm2"
	LabelMinTemp     Field = "label_min_temp_c"
	GlueClass        Field = "glue"
	ShopTemp         Field = "shop_temp_c"
	ShopHumidity     Field = "shop_rh_pct"
	WoodMoisture     Field = "wood_mc_pct"
	WoodMoistureLow  Field = "wood_mc_low_pct"
	WoodMoistureHigh Field = "wood_mc_high_pct"
	ServiceHumidity  Field = "service_rh_pct"
	ServiceTemp      Field = "service_temp_c"
	Sawn             Field = "sawn"
	Gap              Field = "gap_mm"
	Cup              Field = "cup_mm"
	Bow              Field = "bow_mm"
	CupUp            Field = "cup_up"
	StackLayers      Field = "stack"
	Opening          Field = "opening_mm"
	MatThickness     Field = "mat_thickness_mm"
	MatFirmness      Field = "mat_firmness"
	MatFirm          Field = "mat_firm_kpa"
	MatDenied        Field = "mat"
	CoreKind         Field = "core"
	CoreThickness    Field = "core_thickness_mm"
	PumpSpeed        Field = "pump_lps"
	PumpLimit        Field = "pump_limit_kpa"
	PressVolume      Field = "press_volume_l"
	Leak             Field = "leak_kpa_per_min"
	BedWidth         Field = "bed_width_mm"
	BedLength        Field = "bed_length_mm"
	StockPiles       Field = "stock"
	TargetWidth      Field = "target_width_mm"
	Targets          Field = "targets"
	Trim             Field = "trim_mm"
	WedgeLow         Field = "wedge_low_mm"
	WedgeHigh        Field = "wedge_high_mm"
	LoadNumber       Field = "load"
	Note             Field = "note"
	Measured         Field = "measured"
	Title            Field = "title"
	AtTime           Field = "time"
	PressName        Field = "press_name"
	GlueLot          Field = "glue_lot"
	Job              Field = "job"
	StartTime        Field = "start"
	Deadline         Field = "deadline"
	PressCount       Field = "press_count"
	LayupPanel       Field = "layup_s"
	LayupLoad        Field = "layup_load_s"
	PressTime        Field = "press_time_min"
	Unload           Field = "unload_min"
	SolveFor         Field = "solve"
	Goal             Field = "goal"
	CompareWith      Field = "compare"
	FilmThickness    Field = "film_thickness_mm"
	StructuralUse    Field = "structural" // "yes" where the panel is to carry people
)

// What is computed, where the name is not one that a message says too.
const (
	FacePressure          Field = "face_pressure_kpa"
	FaceForce             Field = "face_force_n"
	FaceTonsPerSquareFoot Field = "face_tons_per_sqft"
	SideIdeal             Field = "side_ideal_kpa"
	SideFirstJoint        Field = "side_first_joint_kpa"
	SideFarJoint          Field = "side_far_joint_kpa"
	BarCovered            Field = "bar_covered_mm"
	BarReach              Field = "bar_reach_mm"
	Preload               Field = "preload_kpa"
	FenceLoad             Field = "fence_load_n_per_m"
	Rise                  Field = "rise_mm"
	Snap                  Field = "snap_kpa"
	Buckle                Field = "buckle_kpa"
	Closing               Field = "closing_kpa"
	GlueContact           Field = "glue_min_kpa"
	GlueFull              Field = "glue_full_kpa"
	FlattenNeed           Field = "flatten_need_kpa"
	StackHeight           Field = "stack_height_mm"
	Proud                 Field = "proud_mm"
	MatLow                Field = "mat_low_kpa"
	LevelPressure         Field = "level_pressure_kpa"
	StackLevel            Field = "level" // counted from the bottom
	BarTipping            Field = "bar_tipping_mm"
	LimitOf               Field = "limit_of"
	LimitIs               Field = "limit_is"
	BarWidthLeast         Field = "bar_width_least_mm"
	SideNet               Field = "side_net_kpa"
	Crushing              Field = "crush_kpa"
	Starving              Field = "starved_kpa"
	BoilingPoint          Field = "boiling_kpa"
	Clearance             Field = "clearance_mm"
	JointAt               Field = "joint_at_mm"
	UnderContact          Field = "under_contact_pct"
	FlattenLeft           Field = "flatten_left_kpa"
	Picks                 Field = "picks"
	WidthSum              Field = "width_sum_mm"
	Over                  Field = "over_mm"
	WedgeGap              Field = "wedge_gap_mm"
	StripsLeft            Field = "strips_left"
	GlueMass              Field = "glue_g"
	JointArea             Field = "joint_area_m2"
	ClosedTime            Field = "closed_time_s"
	OpenTime              Field = "open_time_s"
	MinTemp               Field = "min_temp_c"
	Pump                  Field = "pump_s"
	UltimateVacuum        Field = "ultimate_vacuum_kpa"
	Hold                  Field = "hold_s"
	Emc                   Field = "emc_pct"
	WidthChange           Field = "width_change_mm"
	WidthChangePercent    Field = "width_change_pct"
	CupAllowed            Field = "cup_allowed_mm"
	GapLimit              Field = "gap_limit_mm"
	PressNeeded           Field = "press_needed_min"
	MoistureSpread        Field = "wood_mc_spread_pct"
	LoadsNeeded           Field = "loads"
	FinishTimes           Field = "finish"
	PanelsPerLoad         Field = "panels_per_load"
	LoadState             Field = "state"
	Revision              Field = "revision"
	Working               Field = "working"
	FenceThickness        Field = "fence_thickness_mm" // of the fences in a stack, solved for
)

// counts are the fields that hold a whole number.
var counts = map[Field]bool{
	StripCount: true, PanelCount: true, BarCount: true, PressCount: true,
	Faces: true, LoadNumber: true, LoadsNeeded: true, StripsLeft: true, PanelsPerLoad: true, Revision: true, StackLevel: true,
}

// Unit returns the unit that a number under f is in, as the ending of its name says;
// [One] where it has none.
func (f Field) Unit() Unit {
	name := string(f)
	switch name[strings.LastIndexByte(name, '_')+1:] {
	case "kpa":
		return KPa
	case "mm":
		return MM
	case "min":
		if strings.HasSuffix(name, "_kpa_per_min") {
			return KPaPerMin
		}
		return Minute
	case "m":
		if strings.HasSuffix(name, "_n_per_m") {
			return NewtonPerMetre
		}
		return Metre
	case "sqft":
		return TonPerFt2
	case "gm2":
		return GPerM2
	case "m2":
		return SquareMetre
	case "lps":
		return LitrePerSecond
	case "pct":
		return PercentOf
	case "c":
		return DegC
	case "s":
		return Second
	case "l":
		return Litre
	case "n":
		return Newton
	case "g":
		return Gram
	}
	return One
}

// Dimension returns the kind of quantity that f holds.
func (f Field) Dimension() Dimension {
	if u := f.Unit(); u.Dimension != Plain {
		return u.Dimension
	}
	if f == WedgeRatio || f == FrictionStated {
		return Plain
	}
	if counts[f] {
		return Count
	}
	return Text
}

// Number returns a value given in SI as the number that f holds.
func (f Field) Number(si float64) Number { return Number(f.Unit().Of(si)) }

// SI returns a number held by f in SI.
func (f Field) SI(n Number) float64 { return f.Unit().SI(float64(n)) }

// Said are the fields that a message can state, in the order of the list above.
var Said = []Field{
	StripCount, StripWidth, StripWidths, StripThickness, StripThickest, StripThinnest,
	PanelThickness, ThicknessSpread, StripLength, PanelWidth, PanelLength, PanelCount,
	Species, Vacuum, VacuumAbsolute, VacuumPercent, Altitude, Ambient,
	PressKind, BarHeight, BarWidth, BarCount, BarDenied, BarFoot,
	SledThickness, CaulThickness, Cover, Faces, SledWidth, SledLength,
	BagWidth, BagLength, WedgeRatio, WedgeForce, Overfill, Tent,
	SurfaceKind, FrictionStated, LabelOpen, LabelClosed, LabelPress, LabelSpread,
	LabelMinTemp, GlueClass, ShopTemp, ShopHumidity, WoodMoisture, WoodMoistureLow,
	WoodMoistureHigh, ServiceHumidity, ServiceTemp, Sawn, Gap, Cup,
	Bow, CupUp, StackLayers, Opening, MatThickness, MatFirmness,
	MatFirm, MatDenied, CoreKind, CoreThickness, PumpSpeed, PumpLimit,
	PressVolume, Leak, BedWidth, BedLength, StockPiles, TargetWidth,
	Targets, Trim, WedgeLow, WedgeHigh, LoadNumber, Note,
	Measured, Title, AtTime, PressName, GlueLot, Job,
	StartTime, Deadline, PressCount, LayupPanel, LayupLoad, PressTime,
	Unload, SolveFor, Goal, CompareWith, FilmThickness, StructuralUse,
	WorkHours, Overnight, Narrowest, Widest, UseFirst, Neighbours, WedgeAgain,
}
