package picture

// spread moves centres apart along one axis until items of the given sizes do
// not touch, each as near its wish as the others allow (least squares, by
// pooling neighbours that clash). Wishes come in rising order. The first item
// begins at low or after it; the last may end past the space there is.
func spread(wish, size []float64, low float64) []float64 {
	type pool struct {
		first, n int
		sum      float64 // of the wishes, each less its offset in the pool
		length   float64
	}
	start := func(p pool) float64 { return max(low, p.sum/float64(p.n)) }
	var pools []pool
	for i := range wish {
		p := pool{i, 1, wish[i] - size[i]/2, size[i]}
		for len(pools) > 0 {
			q := pools[len(pools)-1]
			if start(q)+q.length <= start(p) {
				break
			}
			p = pool{q.first, q.n + p.n, q.sum + p.sum - float64(p.n)*q.length, q.length + p.length}
			pools = pools[:len(pools)-1]
		}
		pools = append(pools, p)
	}
	at := make([]float64, 0, len(wish))
	for _, p := range pools {
		y := start(p)
		for i := range p.n {
			s := size[p.first+i]
			at = append(at, y+s/2)
			y += s
		}
	}
	return at
}

// upTo shifts spread centres down the axis so that the last ends at high,
// pushing the earlier ones no further than they must go.
func upTo(at, size []float64, high float64) []float64 {
	for i := len(at) - 1; i >= 0; i-- {
		at[i] = min(at[i], high-size[i]/2)
		high = at[i] - size[i]/2
	}
	return at
}
