package grammar

import (
	"math/big"
	"slices"

	"presshand/engine/unit"
)

// boardsOf takes the board that a sled or a caul is made of for no core of the panel, and
// melamine on it for no glue: "sled under the strips is 1/2 ply", "bottom sled (3/4 melamine)".
func (r *reader) boardsOf() {
	if !r.means(kindNoun, "sled", "caul", "mat") {
		return
	}
	r.sheetsMake()
	r.sheetsOnMat()
	if !r.means(kindNoun, "sled", "caul") {
		return
	}
	for i := 2; i < len(r.items); i++ {
		if r.items[i-1].amount == nil {
			continue
		}
		melamine := r.items[i].kind == kindGlue && r.items[i].word == "melamine"
		if !melamine && (!r.is(i, kindNoun, "core") || r.word(i, "core", "cores", "substrate")) || r.is(i+1, kindNoun) || r.is(i+1, kindGlue) || r.word(i+1, "glue") {
			continue
		}
		at := i - 1
		if r.items[at-1].brk == '(' && i+1 < len(r.items) && r.items[i+1].brk == ')' {
			at--
		}
		if r.boardIn(at - 1) {
			r.items[i].meaning, r.items[i].used = meaning{kind: kindFill}, true
		}
	}
	r.plainBoards()
}

// boardIn reports whether what is told from item i back begins with a sled or a caul: "the
// caul on the strips", "top caul which is".
func (r *reader) boardIn(i int) bool {
	strips := 0
	for ; i >= 0; i-- {
		switch {
		case r.is(i, kindNoun, "sled", "caul"):
			if r.word(i-1, "the", "my", "our", "a") && r.word(i-2, "on", "over", "under", "onto") {
				return false // "on the sled is half inch ply"
			}
			if strips > 0 {
				r.items[strips].meaning, r.items[strips].used = meaning{kind: kindFill}, true
			}
			return true
		case r.is(i, kindNoun, "strip") && r.word(i-1, "the", "my", "our") && r.word(i-2, "under", "on", "over", "below", "beneath", "above"):
			strips, i = i, i-2
		case r.word(i, "is", "are", "was", "which", "thats", "that", "of", "a", "an", "being", "made", "from", "out", "only", "just", "under", "on", "over", "below", "beneath", "top", "bottom", "them", "it"):
		default:
			return false
		}
	}
	return false
}

// plainBoards takes the brackets off the board of a sled: "sled (3/4 melamine), film".
func (r *reader) plainBoards() {
	for i := 1; i+3 < len(r.items); i++ {
		if r.items[i].brk == '(' && r.items[i+3].brk == ')' && r.is(i-1, kindNoun, "sled", "caul") && r.items[i+1].amount != nil && r.is(i+2, kindFill) {
			r.items = slices.Delete(r.items, i+3, i+4)
			r.items = slices.Delete(r.items, i, i+1)
		}
	}
}

// sheetsMake makes one board of the sheets that a caul is made of: "caul is two sheets of
// 1/4 ply", "caul is one sheet of 1/2 ply with another on top of it".
func (r *reader) sheetsMake() {
	for i := 0; i+4 < len(r.items); i++ {
		if !r.is(i, kindNoun, "caul", "sled", "mat") || !r.word(i+1, "is", "are", "thats", "being") {
			continue
		}
		n, whole := r.wholeAt(i + 2)
		if !whole {
			n = 1
		}
		at := i + 5
		if !whole && !r.word(i+2, "a", "an") || n < 1 || n > 4 || !r.word(i+3, "sheet", "sheets", "piece", "pieces", "layer", "layers", "thickness", "thicknesses", "bit", "bits") || !r.word(i+4, "of") || !r.free(at) || !r.length(at) || r.items[at].amount.link != linkNone || r.items[at].amount.value == nil {
			continue
		}
		last := at
		if r.is(at+1, kindNoun, "core", "mat") || r.is(at+1, kindWood) {
			last++
		}
		if end := r.anotherOnIt(last + 1); end > 0 && n == 1 {
			n, last = 2, end-1
		}
		if k := last + 3; r.word(last+1, "with", "plus", "and") && r.word(last+2, "another", "second") && r.free(k) && r.length(k) && !r.one(k) && !r.is(r.next(k), kindNoun, "mat", "strip", "caul", "sled", "fence", "bar") {
			r.refuse(unit.StackLayers, r.textOf(i+2, k), "") // "with another 1/2 sheet on top of it"
			r.items[k].amount.dead = true
		}
		board := r.items[at]
		am := *board.amount
		am.value = new(big.Rat).Mul(am.value, big.NewRat(int64(n), 1))
		board.amount, board.start, board.end = &am, r.items[i+2].start, r.items[last].end
		board.text = r.text[board.start:board.end]
		r.items[i+2] = board
		r.hear(i + 2)
		r.items = slices.Delete(r.items, i+3, last+1)
	}
}

// anotherOnIt is the item behind "with another on top of it", "plus another one on that" from
// item i on; 0 where that does not stand there.
func (r *reader) anotherOnIt(i int) int {
	if !r.word(i, "with", "plus", "and") || !r.word(i+1, "another", "second") && !(r.word(i+1, "a") && r.word(i+2, "second")) {
		return 0
	}
	for i += 2; r.word(i, "second", "one", "sheet", "piece", "layer", "laid", "like", "it") || r.one(i); i++ {
	}
	if r.word(i, "on top of it", "on top of that") {
		return i + 1
	}
	if !r.word(i, "on", "over") {
		return 0
	}
	for i++; r.word(i, "top", "of", "it", "that", "the", "first"); i++ {
	}
	return i
}

// sheetsOnMat takes a board for a caul where no face is told that it might carry: what lies
// over or under a mat, "do I lay the hardboard over or under the mat", and what a caul that is
// to be flattened is made of, "the caul is cupped 1/8, 1/2 ply".
func (r *reader) sheetsOnMat() {
	if !r.mentions(kindNoun, "core") || r.mentions(kindNoun, "face", "panel") || r.countKind(kindWood) > 0 {
		return
	}
	board := r.within(0, len(r.items), kindNoun, "caul", "sled")
	bent := board >= 0 && (r.mentions(kindNoun, "cup", "bow") || r.wordIn("warped", "warp", "bent", "curled")) && !r.mentions(kindNoun, "strip", "mat")
	for i := range r.items {
		switch {
		case !r.is(i, kindNoun, "core") || r.word(i, "core", "cores", "substrate") || r.is(i+1, kindNoun):
		case bent && i > 0 && r.items[i-1].amount != nil:
			r.items[i].meaning.id = r.items[board].id
			r.hear(i)
		case board < 0 && r.overMat(i):
			r.items[i].meaning.id = "caul"
			r.hear(i)
		}
	}
}

// overMat reports whether the part at item i is said to lie over, under or beside a mat.
func (r *reader) overMat(i int) bool {
	where := false
	for k := i + 1; k < len(r.items) && k < i+14 && !in(string(r.items[k].brk), ".", "?", ";"); k++ {
		switch {
		case r.is(k, kindNoun, "mat"):
			return where
		case r.is(k, kindNoun, "sled", "bed"):
			return false
		}
		where = where || r.word(k, "over", "under", "above", "below", "beneath", "between")
	}
	return false
}
