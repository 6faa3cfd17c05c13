package bot

import (
	"maps"

	"presshand/engine"
)

// withPlans returns sentences with those on choosing strips, planning a day and
// solving backwards.
func withPlans(says map[engine.Reason]string) map[engine.Reason]string {
	maps.Copy(says, planSays)
	maps.Copy(says, solvingSays)
	return says
}

var planSays = map[engine.Reason]string{
	engine.ReasonPickExact:       "Nothing runs over the width and the trim, so no other pick can do better.",
	engine.ReasonPickBest:        "No other pick from this pile wastes less, and none as good takes fewer strips.",
	engine.ReasonPickLeastWaste:  "No other pick from this pile wastes less; one as good with fewer strips may exist ({strips_used} taken, {strips_least} at the very least).",
	engine.ReasonPickNarrow:      "No other pick from this pile wastes less, and none as good takes more strips.",
	engine.ReasonPickNarrowMaybe: "No other pick from this pile wastes less; one as good with more strips may exist ({strips_used} taken, {strips_least} at the very most).",
	engine.ReasonNeighboursAlike: "I found no way to keep all neighbours different[ in {panels_alike} of {panels_made} panels]: too few strips of another width.",
	engine.ReasonPickWedge:       "No other pick from this pile comes nearer to the middle of what the wedge takes ({wedge_low_mm} to {wedge_high_mm}).",
	engine.ReasonPicksBest:       "No other way to fill these panels from this pile wastes less.",
	engine.ReasonPicksMost:       "No other way makes more panels from this pile, or as many with less waste.",
	engine.ReasonPicksNear:       "Within {waste_off_pct} of the best there can be: {waste_mm} of waste in all, and no plan gets under {waste_least_mm}.",
	engine.ReasonPicksUnfinished: "I stopped looking: these {panels_made} are the best so far, and up to {panels_most} are not ruled out.",
	engine.ReasonStopped:         "I stopped looking after a while; this is the best so far.",
	engine.ReasonPicksMaybeMore:  "I found no way to make more; {panels_most} is the most that I could not rule out.",

	engine.ReasonStockShort:       "Not enough: all that is in the pile makes one panel up to {stock_reach_mm} wide, {stock_short_mm} short.",
	engine.ReasonStockShortOfFew:  "Not with {strip_count} of these strips: the widest make one panel up to {stock_reach_mm} wide, {stock_short_mm} short.",
	engine.ReasonStockShortOfSuch: "Not enough: all of the pile that may be used makes one panel up to {stock_reach_mm} wide, {stock_short_mm} short.",
	engine.ReasonStockNoneSuch:    "There is none in the pile that may be used.",
	engine.ReasonStockShortOfMore: "Not enough for {panel_count} panels, only for {panels_made}. What is left would fill {stock_reach_mm}, {stock_short_mm} short of the next.",
	engine.ReasonStockNoFit:       "There is wood enough, but no pick lands where it should[: between {wedge_low_mm} and {wedge_high_mm} left for the wedge]. Rip one strip to suit.",
	engine.ReasonStockMakesMore:   "This pile makes {panels_made} such panels in all.",

	engine.ReasonLoadsFewest:    "Fewer than {loads} loads cannot be had.",
	engine.ReasonLoadsNear:      "I found nothing under {loads} loads; {loads_least} is the least that there can be.",
	engine.ReasonGlueLimitsLoad: "The bed takes {bed_panels} at a time, but more than {panels_per_load} cannot be laid up before the glue is too stiff ({closed_time_s}).",
	engine.ReasonRoomBetween:    "I keep 1 in (25 mm) between panels; butted up, {bed_panels} would go in a load instead of {panels_per_load}.",
	engine.ReasonSmallerLoads:   "With {panels_in_comfort} in a load the lay-up is well within the glue's time.",
	engine.ReasonPanelOffBed:    "A panel {panel_width_mm} by {panel_length_mm} does not go on a bed of {bed_width_mm} by {bed_length_mm}.",
	engine.ReasonDeadlineHolds:  "All out by {out_by}: the last at {last_out}, at the latest {last_out_late}.",
	engine.ReasonDeadlineTight:  "You make {out_by} if the glue is as usual ({last_out}); if it takes its longest, the last is out at {last_out_late}.",
	engine.ReasonDeadlineMissed: "Not by {out_by}: the last is out at {last_out}, {late_s} too late.[ {loads_in_time} of {loads} loads make it.]",
	engine.ReasonStartBy:        "Starting at {latest_start} would do.",
	engine.ReasonMorePresses:    "With {presses_needed} presses you would make {out_by}.",
	engine.ReasonNothingGives:   "Neither an earlier start that day nor more presses would do: fewer panels, or a faster glue.",
	engine.ReasonStartUnsaid:    "From the first lay-up to the last one out it takes {whole_job_s}[, at the longest {whole_job_s.high}]. Tell me when you start and I give you clock times.",
	engine.ReasonPastMidnight:   "That runs past midnight; I took it that somebody is there to take loads out and lay up.",
	engine.ReasonHoursHeld:      "Nobody lays up or unloads outside your hours, {hours}.",
	engine.ReasonHoursOvernight: "Nobody lays up or unloads outside your hours, {hours}; {loads_overnight} of {loads} loads stay in overnight.",
	engine.ReasonHoursCleared:   "Nobody lays up or unloads outside your hours, {hours}, and nothing stays in the press overnight.",
	engine.ReasonNightCleared:   "Nothing stays in the press overnight: all is out by {last_out_late} at the latest.",
	engine.ReasonNightIfLate:    "If the glue takes its longest, {loads_overnight} of the loads would have to stay in overnight after all.",
	engine.ReasonNightUnsure:    "Whether the press is empty overnight I can only tell with your hours: say “we work 8 to 5”.",
	engine.ReasonNightNeeded:    "No load goes in and comes out within one day of {hours}: each is {press_time_min} in the press. It has to stay in overnight, or you need a faster glue.",
	engine.ReasonShiftTooShort:  "No shift of {hours} is long enough to lay up a load, which takes {layup_load_s}. Make the loads smaller.",
	engine.ReasonClockNear:      "Another order of work may end sooner, but never before {last_out_least}.",
	engine.ReasonTooManyLoads:   "{loads} loads are more than I set on the clock.",
}
