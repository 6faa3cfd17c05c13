package grammar

// sheetSizes are the bare sizes that every shop, metric ones too, gives in feet.
var sheetSizes = map[[2]int]bool{{4, 8}: true, {8, 4}: true, {4, 10}: true, {10, 4}: true, {5, 5}: true, {5, 10}: true, {10, 5}: true}

// doorSizes are more of them in whole feet, of what is made and not bought.
var doorSizes = map[[2]int]bool{{3, 6}: true, {3, 7}: true, {3, 8}: true, {4, 6}: true, {4, 7}: true}

func (r *reader) isSheet(i int) bool {
	if i+1 >= len(r.items) || r.items[i+1].amount == nil {
		return false
	}
	a, okA := r.items[i].amount.whole()
	b, okB := r.items[i+1].amount.whole()
	size := [2]int{a, b}
	return okA && okB && (sheetSizes[size] || doorSizes[size] && !r.habit.Metric && (r.is(i+2, kindNoun, "panel") || r.word(i+2, "door", "doors")) && r.items[i+1].amount.bare())
}

func (r *reader) sheet(i, end int) bool {
	if !r.isSheet(i) || end-i > 3 {
		return false
	}
	n := r.next(end - 1)
	return !r.is(n, kindNoun, "strip", "bar") && !r.is(r.prev(i), kindNoun, "strip", "bar")
}
