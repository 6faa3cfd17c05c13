package grammar

import "strings"

// weakCues are cues of one common word, which count only where the facts speak
// for their topic too.
var weakCues = runSet(`weight_on force what_time how_late get_through what_time_will what_time_are our_pump_is our_shop_is our_press_has my_press_has our_frame_has my_frame_has our_bag_has our_press_is my_press_is our_frame_is our_bag_is our_bed_is we_run_a we_normally_use we_normally_run our_shop_sits we_always whats_the_pressure what_pressure force_on be_done be_ready get_done out_of_these out_of_that do_both room_left press_both how_much_room stay_put stays_put stay_in how_much move moves fit fits flat close finish start tomorrow today day rise rises how_high how_tall reach time_to mix proud finished hours shift overnight grow grows pick how_long_for rush tons ton squeeze plan planned grams choose source what_is what_are means mean words units default defaults finished leak top_out settle ultimate evacuate cure cures arch loads proud clearance closes shut_it grams like examples help explain why warp moving contract how_come reach_in squash_it big_enough get_there full_vacuum ceiling combo rack waste setup settings assume end_up_at how_far_down how_deep mains generator fast how_fast come_in comes_in`)

// weak reports whether a cue's wording is weak.
func weak(wording string) bool { return weakCues[wording] }

// runSet is a set of runs of words, each written in one with "_".
func runSet(s string) map[string]bool {
	set := map[string]bool{}
	for _, run := range strings.Fields(s) {
		set[strings.ReplaceAll(run, "_", " ")] = true
	}
	return set
}
