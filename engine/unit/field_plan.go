package unit

// What a plan of strips, of loads or of a day at the press tells beyond its own
// figures.
const (
	StockReach   Field = "stock_reach_mm" // the widest further panel, or opening, that the strips left fill
	StockShort   Field = "stock_short_mm" // what they lack for the next one
	PanelsMade   Field = "panels_made"    // that the strips in stock make
	PanelsMost   Field = "panels_most"    // that they can make at the very most
	Waste        Field = "waste_mm"       // of all panels together
	WasteLeast   Field = "waste_least_mm" // that any choice for as many panels has
	StripsUsed   Field = "strips_used"
	StripsLeast  Field = "strips_least"    // that any choice with as little waste takes
	WastePercent Field = "waste_off_pct"   // how far the two are apart, of the width used
	PickTargets  Field = "pick_targets_mm" // the finished width or the opening of each pick
	Held         Field = "held_to"         // the fields of the wishes that a choice keeps
	Alike        Field = "panels_alike"    // in which some neighbours are of one width

	LoadsLeast   Field = "loads_least"       // that any packing needs
	LoadsByArea  Field = "loads_by_area"     // what the beds' area alone would say
	BedHolds     Field = "bed_panels"        // that one load holds by room alone
	WholeJob     Field = "whole_job_s"       // from the first lay-up until the last load is out
	LayupStarts  Field = "layup_starts"      // clock, by load
	PressShuts   Field = "press_shuts"       // clock, by load
	FinishLate   Field = "finish_late"       // clock, by load, at the late end of the press time
	LoadPanels   Field = "load_panels"       // how many panels each load has
	LoadPresses  Field = "load_presses"      // the press of each load, from 1
	DaysLater    Field = "finish_days"       // days after the first on which each load comes out
	LastOut      Field = "last_out"          // seconds since the first midnight
	LastOutLate  Field = "last_out_late"     // the same at the late end of the press time
	OutBy        Field = "out_by"            // the deadline, likewise
	LastOutLeast Field = "last_out_least"    // the least that any order of work can reach
	LatestStart  Field = "latest_start"      // likewise; a clock time among an answer's values
	Late         Field = "late_s"            // how far the finish is past the deadline
	InTime       Field = "loads_in_time"     // that are out by the deadline
	PressesNeed  Field = "presses_needed"    // with which a deadline holds
	StayNight    Field = "loads_overnight"   // that stay in a press over night
	Comfortable  Field = "panels_in_comfort" // a load with which the lay-up is well within the closed time
)
