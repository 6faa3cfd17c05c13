package grammar

// A Habit says how a shop writes bare numbers, and whether a message opens its
// thread.
type Habit struct {
	Metric  bool // bare lengths are millimetres and degrees Celsius; else inches and Fahrenheit
	Follows bool // the message follows a question of its thread
}
