package picture

import "math"

// A raster finds what part of each pixel closed contours cover. It keeps only
// the pixels that an edge crosses: what lies between two of them is covered
// alike, however much it is.
type raster struct {
	width, height int
	rows          [][]cell // of the whole bitmap, empty between two fillings
	top, bottom   int      // of the rows in use
	pen, start    point
}

// A cell is what one piece of an edge does to the pixel that it crosses, and to
// all on the right of it.
type cell struct {
	x     int
	here  float64 // added to the covered part of this pixel
	right float64 // added to those on its right
}

func newRaster(width, height int) *raster {
	return &raster{width: width, height: height, rows: make([][]cell, height), top: height}
}

func (r *raster) moveTo(p point) {
	r.close()
	r.pen, r.start = p, p
}

func (r *raster) close() { r.lineTo(r.start) }

// lineTo draws an edge, cut at the rows that it passes.
func (r *raster) lineTo(p point) {
	a, b, turn := r.pen, p, 1.0
	r.pen = p
	if a.y > b.y {
		a, b, turn = b, a, -1
	}
	if !(b.y > 0 && a.y < float64(r.height) && b.y > a.y) {
		return
	}
	slope := (b.x - a.x) / (b.y - a.y)
	y, x := a.y, a.x
	if y < 0 {
		y, x = 0, a.x-a.y*slope
	}
	end := math.Min(b.y, float64(r.height))
	for y < end {
		row := int(y)
		next := math.Min(float64(row+1), end)
		to := a.x + (next-a.y)*slope
		r.piece(row, x, to, (next-y)*turn)
		y, x = next, to
	}
}

// piece adds a part of an edge within one row, which goes down by so much, cut
// at the pixels that it passes.
func (r *raster) piece(row int, x0, x1, down float64) {
	r.top, r.bottom = min(r.top, row), max(r.bottom, row+1)
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	w := float64(r.width)
	if x1 <= 0 || x0 >= w || x1-x0 < 1e-9 {
		r.add(row, (x0+x1)/2, down)
		return
	}
	steep := down / (x1 - x0)
	if x0 < 0 {
		r.add(row, 0, -x0*steep)
		x0 = 0
	}
	x1 = math.Min(x1, w) // what lies on the right of the bitmap covers none of it
	for x0 < x1 {
		next := math.Min(math.Floor(x0)+1, x1)
		r.add(row, (x0+next)/2, (next-x0)*steep)
		x0 = next
	}
}

// add notes a piece of an edge within one pixel, by its middle.
func (r *raster) add(row int, middle, down float64) {
	if middle >= float64(r.width) {
		return
	}
	middle = math.Max(middle, 0)
	x := int(middle)
	here := down * (1 - (middle - float64(x)))
	cells := r.rows[row]
	if n := len(cells); n > 0 && cells[n-1].x == x {
		cells[n-1].here += here
		cells[n-1].right += down
		return
	}
	r.rows[row] = append(cells, cell{x, here, down})
}

// quadTo and cubeTo draw curves as chords that keep within a twentieth of a
// pixel of them.
func (r *raster) quadTo(b, c point) {
	a := r.pen
	bend := math.Hypot(a.x-2*b.x+c.x, a.y-2*b.y+c.y) / 4
	n := chords(bend)
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		r.lineTo(between(between(a, b, t), between(b, c, t), t))
	}
}

func (r *raster) cubeTo(b, c, d point) {
	a := r.pen
	bend := math.Max(math.Hypot(a.x-2*b.x+c.x, a.y-2*b.y+c.y), math.Hypot(b.x-2*c.x+d.x, b.y-2*c.y+d.y)) * 3 / 4
	n := chords(bend)
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		ab, bc, cd := between(a, b, t), between(b, c, t), between(c, d, t)
		r.lineTo(between(between(ab, bc, t), between(bc, cd, t), t))
	}
}

// chords is into how many a curve is cut that bends away from its own by so
// many pixels: the distance falls with the square of their number.
func chords(bend float64) int {
	return int(math.Min(1+math.Sqrt(bend*20), 64))
}

func between(a, b point, t float64) point {
	return point{a.x + (b.x-a.x)*t, a.y + (b.y-a.y)*t}
}

// sweep calls paint for each run of pixels of a row that are covered alike, and
// readies the raster for the next filling. Where contours of one turn overlap,
// they join.
func (r *raster) sweep(paint func(row, from, to int, covered float64)) {
	r.close()
	for row := r.top; row < r.bottom; row++ {
		cells := r.rows[row]
		sortCells(cells)
		sum := 0.0
		for i := 0; i < len(cells); {
			x, here, right := cells[i].x, 0.0, 0.0
			for ; i < len(cells) && cells[i].x == x; i++ {
				here += cells[i].here
				right += cells[i].right
			}
			paint(row, x, x+1, math.Abs(sum+here))
			sum += right
			next := r.width
			if i < len(cells) {
				next = cells[i].x
			}
			if next > x+1 {
				paint(row, x+1, next, math.Abs(sum))
			}
		}
		r.rows[row] = cells[:0]
	}
	r.top, r.bottom = r.height, 0
	r.pen, r.start = point{}, point{}
}

// sortCells puts cells in order; they nearly are, for letters and dashes come
// from left to right.
func sortCells(cells []cell) {
	for i := 1; i < len(cells); i++ {
		c := cells[i]
		j := i
		for ; j > 0 && cells[j-1].x > c.x; j-- {
			cells[j] = cells[j-1]
		}
		cells[j] = c
	}
}
