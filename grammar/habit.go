package grammar

// A Habit says how a shop writes bare numbers.
type Habit struct {
	Metric bool // bare lengths are millimetres and degrees Celsius; else inches and Fahrenheit
}
