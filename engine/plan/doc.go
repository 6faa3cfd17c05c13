// Package plan chooses strips for panels, packs panels into press loads and
// sets loads on the clock. Every plan comes with a certificate: that it is
// proven best, or a bound on how far off the best it can be.
//
//	strips.go       the question and the answer about strips
//	grid.go         widths as whole numbers
//	goal.go         what sum suits a panel
//	bench.go        a job in whole numbers, and the answer back in lengths
//	alternate.go    neighbours of different widths
//	pick.go         one panel: the exact choice
//	ladder.go       the table behind it
//	reach.go        which sums can be had at all
//	several.go      several panels from one stock
//	balance.go      where the stock is nearly all needed
//	patterns.go     several panels from a stock of few widths, exactly
//	loads.go        the question and the answer about loads
//	beds.go         rectangles on beds
//	repack.go       loads emptied and filled anew
//	bounds.go       how few beds can ever do
//	fewpanels.go    a handful of panels, exactly
//	clock.go        the question and the answer about the clock
//	order.go        the crew's order of work, and the times that it gives
//	clocksearch.go  the best order of work
//	clearbound.go   how soon presses that are empty over night get done
//	deadline.go     what gives when a deadline does not hold
//	certificate.go  and its kin check any plan, and share no code with the makers
//
// Nothing here reads a clock or draws a random number: the same question has
// the same answer on every machine.
package plan

// A Watch is told now and then the best found so far and the bound on what can
// be found. Planning goes on as long as it returns true; a nil Watch lets it
// run to its end. What was best when it stopped is still a whole plan.
type Watch[T any] func(best, bound T) (goOn bool)

func (w Watch[T]) goOn(best, bound T) bool { return w == nil || w(best, bound) }
