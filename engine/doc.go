// Package engine answers a question about a press load: from what is known of
// it to figures with their ranges, checks with a verdict, and the working.
//
// [Compute] answers forwards, [SolveFor] backwards. Both are pure: the same
// question gives the same answer, and no clock, file or chance has a part in it.
//
// # Where it lives
//
//	unit    quantities, units, ranges, the names of fields
//	wood    species: stiffness, strength, movement; moisture of wood in air
//	glue    glue classes: spread, times, temperatures, gaps
//	press   the formulas of the press, each with its source
//	plan    which strips, which loads, what clock; with certificates
//
// # Where it comes from
//
//	US Standard Atmosphere 1976, ISO 2533           press/air.go
//	Alduchov & Eskridge 1996, vapour pressure       press/air.go
//	free bodies of bar, film and strips, derived    press/side.go
//	statics of a wedge, Hooke, Euler, derived       press/wedge.go, press/sprung.go
//	Wood Handbook Eq. 9-2, beams                    press/sprung.go, press/flatten.go
//	data sheet after EN ISO 3386-1, ASTM D1056      press/mat.go, mat.go
//	NIST SP 811, conversion factors                 unit
//
// # Units
//
// Everything is SI inside, temperatures are in °C. What comes in and goes out
// stands under a [unit.Field], whose name ends in the unit. Quantities cross the
// borders of packages as types of package unit.
//
// # Accuracy
//
// Every figure is a low, a middle and a high. The middle is the formula at the
// middles; the ends are the least and the most over the corners of the uncertain
// inputs, see [unit.Sweep]. What a person states is exact, but for a dial. The
// inputs' ranges stand as constants beside where they are read: air.go, bar.go,
// preload.go, mat.go and package wood.
package engine
