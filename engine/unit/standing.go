package unit

// A Standing says how far the source of a value was looked at.
type Standing string

const (
	Seen           Standing = "seen"            // read in the source or a quotation of it
	Computed       Standing = "computed"        // follows from a named formula
	CommonPractice Standing = "common practice" // no source
	FromMemory     Standing = "from memory"     // recalled, not seen
	Estimate       Standing = "our estimate"
)

// Weakest returns the least trustworthy of some standings; "" for none.
func Weakest(ss ...Standing) Standing {
	var weakest Standing
	for _, s := range ss {
		if doubt[s] > doubt[weakest] {
			weakest = s
		}
	}
	return weakest
}

var doubt = map[Standing]int{Seen: 1, Computed: 2, CommonPractice: 3, FromMemory: 4, Estimate: 5}
