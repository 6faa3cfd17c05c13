package engine

// Reasons of the checks on gluing.
const (
	// ReasonWarmEnough: the shop is warm enough for the glue.
	// Figures: shop_temp_c, min_temp_c, glue.
	ReasonWarmEnough Reason = "warm-enough"
	// ReasonTooCold: below the lowest temperature of the glue it will not bond.
	// Figures: shop_temp_c, min_temp_c, glue.
	ReasonTooCold Reason = "too-cold"
	// ReasonMayChalk: the glue may dry to chalk; products differ between 2 and
	// 16 °C. Figures: shop_temp_c, min_temp_c, glue.
	ReasonMayChalk Reason = "may-chalk"
	// ReasonGelsFast: hot hide glue gels before the press closes in a cold shop.
	// Figures: shop_temp_c, min_temp_c, glue.
	ReasonGelsFast Reason = "gels-fast"

	// ReasonLayupWithin: the lay-up leaves a margin to the closed time.
	// Figures: layup_load_s (the time it takes), closed_time_s, glue.
	ReasonLayupWithin Reason = "layup-within"
	// ReasonLayupTight: the lay-up takes more than 70 % of the shortest closed
	// time. Figures: layup_load_s, closed_time_s, glue.
	ReasonLayupTight Reason = "layup-tight"
	// ReasonLayupTooLong: the lay-up outlasts the usual closed time.
	// Figures: layup_load_s, closed_time_s, glue.
	ReasonLayupTooLong Reason = "layup-too-long"

	// ReasonPressedLongEnough: the press time planned covers what the glue takes
	// under film. Figures: press_time_min (planned), press_needed_min.
	ReasonPressedLongEnough Reason = "pressed-long-enough"
	// ReasonPressedBarely: the press time planned covers the usual need, not the
	// longest. Figures: press_time_min (planned), press_needed_min.
	ReasonPressedBarely Reason = "pressed-barely"
	// ReasonPressedTooShort: the press time planned is shorter than the usual need.
	// Figures: press_time_min (planned), press_needed_min.
	ReasonPressedTooShort Reason = "pressed-too-short"

	// ReasonGapBridged: the gap is within what the glue bridges.
	// Figures: gap_mm, gap_limit_mm, glue.
	ReasonGapBridged Reason = "gap-bridged"
	// ReasonGapTooWide: the glue does not bridge the gap, the press must close it.
	// Figures: gap_mm, gap_limit_mm, glue.
	ReasonGapTooWide Reason = "gap-too-wide"

	// ReasonWoodDryEnough: the wood is between 6 and 14 %.
	// Figures: wood_mc_pct.
	ReasonWoodDryEnough Reason = "wood-dry-enough"
	// ReasonWoodEdge: the wood is between 4 and 6 or between 14 and 16 %.
	// Figures: wood_mc_pct.
	ReasonWoodEdge Reason = "wood-moisture-edge"
	// ReasonWoodTooDry: the wood is below 4 %; it drinks the glue. Figures: wood_mc_pct.
	ReasonWoodTooDry Reason = "wood-too-dry"
	// ReasonWoodTooWet: the wood is above 16 %; it will not set and will shrink.
	// Figures: wood_mc_pct.
	ReasonWoodTooWet Reason = "wood-too-wet"
	// ReasonWoodUneven: the pieces differ by more than 2 %.
	// Figures: wood_mc_low_pct, wood_mc_high_pct, wood_mc_spread_pct.
	ReasonWoodUneven Reason = "wood-uneven"
	// ReasonWoodEven: the pieces are within 2 % of each other.
	// Figures: wood_mc_low_pct, wood_mc_high_pct, wood_mc_spread_pct.
	ReasonWoodEven Reason = "wood-even"
)

// Advice on gluing.
const (
	// ReasonPumpDownCounts: the time to pull down counts towards the closed time.
	// Figures: layup_s, closed_time_s.
	ReasonPumpDownCounts Reason = "pump-down-counts"
	// ReasonNotInOneLoad: one panel is laid up in time, all of them in one load are not.
	// Figures: panel_count, layup_load_s, closed_time_s.
	ReasonNotInOneLoad Reason = "not-in-one-load"
	// ReasonFilmHoldsWater: under film the water stays in, so the press time is
	// longer than the table's or the label's. Figures: press_time_min.
	ReasonFilmHoldsWater Reason = "film-holds-water"
	// ReasonTimesHeld: the shop is colder than 10 or warmer than 35 °C, where the
	// times are not scaled any further. Figures: shop_temp_c.
	ReasonTimesHeld Reason = "times-held"
	// ReasonTemperatureUnsaid: the times are for the usual temperature.
	// Figures: shop_temp_c, min_temp_c.
	ReasonTemperatureUnsaid Reason = "temperature-unsaid"
	// ReasonWoodOffBalance: the wood is more than 2 % away from what the shop's
	// air would bring it to. Figures: wood_mc_pct, emc_pct.
	ReasonWoodOffBalance Reason = "wood-off-balance"
	// ReasonEdgesNotCounted: the edge joints between the strips of a face are not
	// in the amount, for want of their count or thickness. No figures.
	ReasonEdgesNotCounted Reason = "edges-not-counted"
)
