package engine

// Reasons of a day's plan. Clock figures are seconds since the first midnight.
const (
	// ReasonLoadsFewest: no packing needs fewer loads. Figures: loads,
	// loads_by_area.
	ReasonLoadsFewest Reason = "loads-fewest"
	// ReasonLoadsNear: fewer loads are not ruled out. Figures: loads, loads_least.
	ReasonLoadsNear Reason = "loads-near"
	// ReasonGlueLimitsLoad: the bed takes more, the glue's closed time does not.
	// Figures: panels_per_load, bed_panels, closed_time_s.
	ReasonGlueLimitsLoad Reason = "glue-limits-load"
	// ReasonRoomBetween: butted up, without the 25 mm kept between panels, a load
	// would hold more. Figures: panels_per_load, bed_panels.
	ReasonRoomBetween Reason = "room-between"
	// ReasonSmallerLoads: with smaller loads the lay-up is well within the closed
	// time. Figures: panels_in_comfort.
	ReasonSmallerLoads Reason = "smaller-loads"
	// ReasonPanelOffBed: the panel is larger than the bed. Figures:
	// panel_width_mm, panel_length_mm, bed_width_mm, bed_length_mm.
	ReasonPanelOffBed Reason = "panel-off-bed"
	// ReasonDeadlineHolds: all is out by the deadline, at the late end too.
	// Figures: last_out, last_out_late, out_by.
	ReasonDeadlineHolds Reason = "deadline-holds"
	// ReasonDeadlineTight: all is out by the deadline, but not at the late end of
	// the press time. Figures: last_out, last_out_late, out_by, loads_in_time.
	ReasonDeadlineTight Reason = "deadline-tight"
	// ReasonDeadlineMissed: the last load is out too late. Figures: last_out,
	// out_by, late_s, loads, loads_in_time.
	ReasonDeadlineMissed Reason = "deadline-missed"
	// ReasonStartBy: the latest start with which the deadline holds. Figures:
	// latest_start, out_by.
	ReasonStartBy Reason = "start-by"
	// ReasonMorePresses: so many presses would hold the deadline. Figures:
	// presses_needed, out_by.
	ReasonMorePresses Reason = "more-presses"
	// ReasonNothingGives: neither an earlier start nor more presses hold the
	// deadline. Figures: out_by.
	ReasonNothingGives Reason = "nothing-gives"
	// ReasonStartUnsaid: clock times would take a start. Figures: whole_job_s.
	ReasonStartUnsaid Reason = "start-unsaid"
	// ReasonPastMidnight: the plan runs on through the night, and somebody has to
	// be there. Figures: last_out.
	ReasonPastMidnight Reason = "past-midnight"
	// ReasonClockNear: the last load may be out earlier with another order of
	// work. Figures: last_out, last_out_least.
	ReasonClockNear Reason = "clock-near"
	// ReasonTooManyLoads: so many loads are not set on the clock. Figures: loads.
	ReasonTooManyLoads Reason = "too-many-loads"
	// ReasonHoursHeld: the crew lays up and unloads within its hours only. Figures:
	// hours.
	ReasonHoursHeld Reason = "hours-held"
	// ReasonHoursOvernight: likewise, and some loads stay in a press over night.
	// Figures: hours, loads_overnight.
	ReasonHoursOvernight Reason = "hours-overnight"
	// ReasonHoursCleared: likewise, and none does, as was wished. Figures: hours.
	ReasonHoursCleared Reason = "hours-cleared"
	// ReasonNightCleared: no load stays in over night, as was wished. Figures:
	// last_out_late.
	ReasonNightCleared Reason = "night-cleared"
	// ReasonNightIfLate: none stays in over night, but some do at the late end of
	// the press time. Figures: loads_overnight.
	ReasonNightIfLate Reason = "night-if-late"
	// ReasonNightUnsure: whether the presses are empty over night takes the hours
	// of work.
	ReasonNightUnsure Reason = "night-unsure"
	// ReasonNightNeeded: no load can go in and come out within the hours of one
	// day. Figures: hours, press_time_min.
	ReasonNightNeeded Reason = "night-needed"
	// ReasonShiftTooShort: the lay-up of a load is longer than any shift. Figures:
	// hours, layup_load_s.
	ReasonShiftTooShort Reason = "shift-too-short"
)
