package plan

import (
	"iter"
	"math/bits"
)

// A bitset holds small whole numbers, 64 to a word.
type bitset []uint64

// between yields the numbers held from low to high, in order.
func (b bitset) between(low, high int64) iter.Seq[int64] {
	return func(yield func(int64) bool) {
		for i := max(low, 0) >> 6; i <= high>>6 && int(i) < len(b); i++ {
			for w := b[i]; w != 0; w &= w - 1 {
				at := i<<6 + int64(bits.TrailingZeros64(w))
				if at < low {
					continue
				}
				if at > high || !yield(at) {
					return
				}
			}
		}
	}
}

// any reports whether b holds a number from low to high.
func (b bitset) any(low, high int64) bool {
	for range b.between(low, high) {
		return true
	}
	return false
}

// spread adds to b every number of from raised by shift, and writes item into
// first at each number that is new.
func (b bitset) spread(from bitset, shift int64, first []uint16, item uint16) {
	ws, bs := int(shift>>6), uint(shift&63)
	for i := len(b) - 1; i >= ws; i-- {
		v := from[i-ws] << bs
		if bs > 0 && i > ws {
			v |= from[i-ws-1] >> (64 - bs)
		}
		fresh := v &^ b[i]
		if fresh == 0 {
			continue
		}
		b[i] |= fresh
		for at := i << 6; fresh != 0; fresh &= fresh - 1 {
			first[at+bits.TrailingZeros64(fresh)] = item
		}
	}
}

// A ladder holds, for each number of strips, the total offsets that can be
// had: row j those of j strips. first says for each which strip of the sequence
// was the last needed.
type ladder struct {
	seq   []int64
	rows  []bitset
	first [][]uint16
}

func newLadder(seq []int64, rows, words int) *ladder {
	l := &ladder{seq: seq, rows: make([]bitset, rows+1), first: make([][]uint16, rows+1)}
	all, marks := make(bitset, (rows+1)*words), make([]uint16, (rows+1)*words*64)
	for j := range l.rows {
		l.rows[j] = all[j*words : (j+1)*words]
		l.first[j] = marks[j*words*64 : (j+1)*words*64]
	}
	l.rows[0][0] = 1
	return l
}

func (l *ladder) offset(j, i int) int64 {
	return max(l.seq[j-1]-l.seq[i], l.seq[i]-l.seq[j-1])
}

// fill works through the strips until the last row holds an offset from near
// to far, or to the end. It returns the words of bits that it took.
func (l *ladder) fill(near, far int64) (work int) {
	rows, n := len(l.rows)-1, len(l.seq)
	words := len(l.rows[0])
	for i := range l.seq {
		for j := min(i+1, rows); j >= max(1, rows-(n-1-i)); j-- {
			d := l.offset(j, i)
			if d >= int64(words)*64 {
				break // and the rows below lie further still
			}
			l.rows[j].spread(l.rows[j-1], d, l.first[j], uint16(i))
			work += words
		}
		if l.rows[rows].any(near, far) {
			break
		}
	}
	return work
}

// trace returns the places in the sequence of the strips that give offset d.
func (l *ladder) trace(d int64) []int {
	at := make([]int, len(l.rows)-1)
	for j := len(at); j > 0; j-- {
		i := int(l.first[j][d])
		at[j-1] = i
		d -= l.offset(j, i)
	}
	return at
}
