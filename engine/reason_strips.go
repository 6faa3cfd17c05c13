package engine

// Reasons of a choice of strips. Figures of each: panels_made, panel_count,
// waste_mm of all panels together; over_mm or wedge_gap_mm of the first pick;
// held_to, the wishes kept.
const (
	// ReasonPickExact: nothing runs over; no pick can do better.
	ReasonPickExact Reason = "pick-exact"
	// ReasonPickBest: no other pick from this stock wastes less, and none that
	// wastes as little takes fewer strips.
	ReasonPickBest Reason = "pick-best"
	// ReasonPickLeastWaste: no other pick wastes less; one with fewer strips is
	// not ruled out. Figures: strips_used, strips_least.
	ReasonPickLeastWaste Reason = "pick-least-waste"
	// ReasonPickNarrow: no other pick wastes less, and none that wastes as little
	// takes more strips, as was wished.
	ReasonPickNarrow Reason = "pick-narrow"
	// ReasonPickNarrowMaybe: no other pick wastes less; one with more strips is not
	// ruled out. Figures: strips_used, strips_least, here the most.
	ReasonPickNarrowMaybe Reason = "pick-narrow-maybe"
	// ReasonNeighboursAlike: no plan was found without neighbours of one width.
	// Figures of several panels: panels_alike.
	ReasonNeighboursAlike Reason = "neighbours-alike"
	// ReasonPickWedge: no other pick comes nearer to the middle of what the wedge
	// takes. Figures: wedge_gap_mm, wedge_low_mm, wedge_high_mm.
	ReasonPickWedge Reason = "pick-wedge"
	// ReasonPicksBest: no plan for so many panels wastes less.
	ReasonPicksBest Reason = "picks-best"
	// ReasonPicksMost: the stock makes no further panel, and no plan for as many
	// wastes less.
	ReasonPicksMost Reason = "picks-most"
	// ReasonPicksNear: not proven best; no plan for as many panels wastes less
	// than waste_least_mm. Figures: waste_least_mm, waste_off_pct.
	ReasonPicksNear Reason = "picks-near"
	// ReasonPicksUnfinished: looking was broken off, and more panels are not ruled
	// out. Figures: panels_most.
	ReasonPicksUnfinished Reason = "picks-unfinished"
	// ReasonStopped: looking was broken off; the plan is the best until then, of
	// strips or of a day.
	ReasonStopped Reason = "stopped"
	// ReasonPicksMaybeMore: more panels are not ruled out. Figures: panels_most.
	ReasonPicksMaybeMore Reason = "picks-maybe-more"
)

// Reasons of a stock that does not do. Figures: panels_made, panel_count,
// stock_reach_mm, stock_short_mm.
const (
	// ReasonStockShort: all that may be used together is too narrow for the panel.
	ReasonStockShort Reason = "stock-short"
	// ReasonStockShortOfFew: no so many strips as may be taken are wide enough for
	// the panel. Figures: strip_count.
	ReasonStockShortOfFew Reason = "stock-short-of-few"
	// ReasonStockShortOfSuch: all strips of a width that may be used together are
	// too narrow for the panel.
	ReasonStockShortOfSuch Reason = "stock-short-of-such"
	// ReasonStockNoneSuch: no strip is of a width that may be used.
	ReasonStockNoneSuch Reason = "stock-none-such"
	// ReasonStockShortOfMore: some panels can be made, what is left is too narrow
	// for a further one.
	ReasonStockShortOfMore Reason = "stock-short-of-more"
	// ReasonStockNoFit: there is width enough, but no pick lands where it should.
	// Figures: wedge_low_mm, wedge_high_mm.
	ReasonStockNoFit Reason = "stock-no-fit"
	// ReasonStockMakesMore: advice on one panel, the stock would make several like
	// it. Figures: panels_most.
	ReasonStockMakesMore Reason = "stock-makes-more"
)
