package plan

import "slices"

// alternating returns the widths, widest first, of which any k can be laid
// with no two neighbours alike: no width is more than half of them, rounded up.
func alternating(ws []int64, k int) []int64 {
	var out []int64
	run := 0
	for i, w := range ws {
		if run++; i == 0 || w != ws[i-1] {
			run = 1
		}
		if run <= (k+1)/2 {
			out = append(out, w)
		}
	}
	return out
}

// sameWidths turns indices into some of the widths into indices of strips of
// the same widths among all; both have the widest first.
func sameWidths(all, some []int64, picked []int) []int {
	slices.Sort(picked)
	out := make([]int, 0, len(picked))
	next := 0
	for _, p := range picked {
		for all[next] != some[p] {
			next++
		}
		out = append(out, next)
		next++
	}
	return out
}

// lay orders strips, given by width, so that no two neighbours are alike, or as
// few as can be: the width that most strips are left of goes next, unless it
// has just gone.
func lay(ws []int64) (order []int, differ bool) {
	byWidth := map[int64][]int{}
	for i, w := range ws {
		byWidth[w] = append(byWidth[w], i)
	}
	keys := make([]int64, 0, len(byWidth))
	for w := range byWidth {
		keys = append(keys, w)
	}
	slices.Sort(keys)
	differ = true
	var last int64 = -1
	for range ws {
		next := int64(-1)
		for _, w := range keys {
			if n := len(byWidth[w]); n > 0 && w != last && (next < 0 || n > len(byWidth[next])) {
				next = w
			}
		}
		if next < 0 {
			next, differ = last, false
		}
		order = append(order, byWidth[next][0])
		byWidth[next] = byWidth[next][1:]
		last = next
	}
	return order, differ
}
