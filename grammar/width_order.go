package grammar

// narrowestInMetric is less than any strip of a stock is wide, in metres.
const narrowestInMetric = 0.015

// widthsLead reports whether the pairs of "2 1/8 x 12, 3 x 9" say a width before how many
// there are: one pair whose order is certain settles that of all the others.
func (r *reader) widthsLead() bool {
	if r.order == orderUnknown {
		r.order = orderMixed
		lead, trail := 0, 0
		for i := 1; i < len(r.items); i++ {
			if first := r.pairOrder(i); first > 0 {
				lead++
			} else if first < 0 {
				trail++
			}
		}
		if lead > 0 && trail == 0 {
			r.order = orderWidthFirst
		}
	}
	return r.order == orderWidthFirst
}

// The order of width and count in pairs.
type pairsOrder uint8

const (
	orderUnknown pairsOrder = iota
	orderMixed
	orderWidthFirst
)

// pairOrder is 1 where the pair that ends at item i has its width first for certain, -1
// where it has its count first, and 0 where it may be either.
func (r *reader) pairOrder(i int) int {
	if !r.timesAt(i) || r.timesAt(i-1) || r.timesAt(i+1) || r.items[i-1].amount == nil {
		return 0
	}
	_, first := r.items[i-1].amount.whole()
	_, second := r.items[i].amount.whole()
	bare := r.items[i-1].amount.bare() && r.items[i].amount.bare()
	switch {
	case r.items[i-1].amount.bare() && first && (!second || !r.items[i].amount.bare()):
		return -1
	case r.items[i].amount.bare() && second && !first:
		return 1
	case !bare || !r.habit.Metric:
		return 0
	case r.size(i) < narrowestInMetric && r.size(i-1) >= narrowestInMetric:
		return 1
	case r.size(i-1) < narrowestInMetric && r.size(i) >= narrowestInMetric:
		return -1
	}
	return 0
}
