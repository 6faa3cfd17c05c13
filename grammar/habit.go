package grammar

// A Habit says how a shop writes bare numbers, and whether a message opens its
// thread.
type Habit struct {
	Metric  bool // bare lengths are millimetres and degrees Celsius; else inches and Fahrenheit
	Follows bool // the message follows a question of its thread
	Inches  bool // its thread tells all lengths in inches, whatever the shop does
	Metres  bool // or all in metric units
}
