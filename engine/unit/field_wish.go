package unit

// What a message wishes of a plan of strips, of a day at the press or of a wedge. The
// contract has no names for these, so a reply reports them together, as one
// object under [Wishes], beside the fields that it has names for.
const (
	WorkHours Field = "hours"     // the crew's, shift by shift: "08:00-12:00, 13:00-17:00"
	Overnight Field = "overnight" // "yes" or "no": whether a press may hold a load over night

	Narrowest  Field = "narrowest_mm" // strip that may be used
	Widest     Field = "widest_mm"
	UseFirst   Field = "use_first"  // "narrow": rather many narrow strips than few wide ones
	Neighbours Field = "neighbours" // "differ": no two of one width side by side

	WedgeAgain Field = "wedge_again" // "yes": driven once more just before the vacuum
)

// Wishes holds what was wished, by its name.
const Wishes Field = "wishes"

// Wished are the fields that a reply reports under [Wishes].
var Wished = []Field{WorkHours, Overnight, Narrowest, Widest, UseFirst, Neighbours, WedgeAgain}
