package engine

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// A level is what lies between two rigid layers of a stack. Heights in m.
type level struct {
	number int // of the levels with work, the lowest is 1

	sled, core, strips, film, caul float64
	fence, bar                     float64
	mat                            float64 // against the strips, which it evens out
	pad                            float64 // elsewhere between the rigid layers
	next                           float64 // of the pad, what the next strips would lie on
	over                           float64 // of all these, what lies over the work so far
	under                          float64 // a mat beneath the sled or above the caul: it evens nothing
	spread                         float64 // thickest less thinnest strips
	uneven                         bool    // that spread is known
	work, laid                     bool    // holds work; holds strips
	bare                           bool    // strips are its topmost work so far
	capped                         bool    // something rigid lies above
}

// A pile is a whole stack, the lowest level first.
type pile struct {
	levels []level
	height float64
	known  bool
	bedBar float64 // a side bar that stands on the bed, beside it all
	foot   float64 // what the highest side bar stands on
	bar    float64 // its height, where its top is the highest of all
}

// mats is how thick the mats are that the level's cap squashes.
func (l level) mats() float64 { return l.mat + l.pad }

// evened reports whether a mat evens out the level's strips.
func (l level) evened() bool { return l.uneven && l.capped && l.mat > 0 }

// height is that of the level, mats as bought; a fence stands beside the work
// and counts where it stands higher.
func (l level) height() float64 {
	return l.sled + l.under + l.caul + math.Max(l.core+l.strips+l.mats()+l.film, l.fence)
}

// belowFence is how far the work lies below its fence, in m, where a mat under film
// alone lies over both.
func (l level) belowFence() float64 {
	if l.capped || l.over == 0 || !l.work {
		return 0
	}
	return l.fence - (l.core + l.strips + l.mats() - l.over)
}

// matted reports whether a mat lies anywhere in the pile.
func (p pile) matted() bool {
	return slices.ContainsFunc(p.levels, func(l level) bool { return l.mats()+l.under > 0 })
}

// squashes reports whether something rigid lies on a mat.
func (p pile) squashes() bool {
	return slices.ContainsFunc(p.levels, func(l level) bool { return l.capped && l.mats() > 0 })
}

// looseStrips reports whether uneven strips can be judged without a stack.
func (p pile) looseStrips() bool {
	return len(p.levels) == 1 && p.levels[0].uneven && p.levels[0].capped
}

// at adds to some figures which level they are about, where there are several.
func (p pile) at(l level, figures unit.Facts) unit.Facts {
	if p.worked() > 1 {
		figures[unit.StackLevel] = unit.Number(l.number)
	}
	return figures
}

// named names a level in a working, where there are several.
func (p pile) named(l level) string {
	if p.worked() < 2 {
		return ""
	}
	return "level " + strconv.Itoa(l.number) + ": "
}

// worked is how many levels hold work.
func (p pile) worked() (n int) {
	for _, l := range p.levels {
		n = max(n, l.number)
	}
	return n
}

// sum writes the heights of the levels as a sum, or that of the bar which stands
// higher.
func (p pile) sum() string {
	if p.bar > 0 {
		return "side bar on its foot, " + say(unit.StackHeight, p.foot) + " + " + say(unit.BarHeight, p.bar)
	}
	terms := make([]string, 0, len(p.levels))
	for _, l := range p.levels {
		terms = append(terms, say(unit.StackHeight, l.height()))
	}
	return strings.Join(terms, " + ")
}

// pile reads the stack; not known where a layer's thickness is missing. Without
// a stack it is the strips with what was said to lie on them.
func (b *builder) pile() (pile, error) {
	layers := b.layers()
	if len(layers) == 0 {
		layers = b.saidLayers()
	}
	if len(layers) == 0 {
		return pile{levels: b.looseLevel()}, nil
	}
	return b.pileOf(layers)
}

// pileOf lays layers on each other, with what was said beside them.
func (b *builder) pileOf(layers unit.Layers) (pile, error) {
	p := pile{known: true}
	var at level
	for _, l := range layers {
		if l.Part == partMat && b.matDenied() {
			continue
		}
		h, err := b.layerThickness(l, layers)
		if err != nil {
			return p, err
		}
		if h == 0 {
			p.known = false
		}
		rigid := l.Part == partSled || l.Part == partCaul
		if rigid && (at.work || at.fence > 0) {
			at.capped = true
			p.close(&at)
		}
		at.add(l.Part, h)
		if l.Part == partStrips {
			b.unevenStrips(&at, l, layers)
		}
	}
	at.capped = len(b.layers()) == 0 && b.liesUnderRigid()
	p.close(&at)
	if err := b.placeMat(&p, layers); err != nil {
		return p, err
	}
	b.standBar(&p)
	p.stand()
	return p, nil
}

// standBar stands a side bar told of outside the stack beside the strips of each
// level, on its sled, or on the bed.
func (b *builder) standBar(p *pile) {
	H, ok := b.barHeight()
	switch {
	case !ok, slices.ContainsFunc(p.levels, func(l level) bool { return l.bar > 0 }):
	case b.word(unit.BarFoot) == "bed":
		p.bedBar = H
	default:
		for i := range p.levels {
			if p.levels[i].laid {
				p.levels[i].bar = H
			}
		}
	}
}

// close ends a level and numbers it, if it holds work.
func (p *pile) close(at *level) {
	if at.work || at.fence > 0 {
		at.number = p.worked() + 1
	}
	p.levels = append(p.levels, *at)
	*at = level{}
}

// add puts a layer into the level.
func (l *level) add(part string, h float64) {
	switch part {
	case partSled, partCaul: // what lay there before lies under it
		l.under, l.mat, l.pad, l.next, l.over = l.under+l.mat+l.pad, 0, 0, 0, 0
		if part == partSled {
			l.sled += h
		} else {
			l.caul += h
		}
	case partFence:
		l.fence = math.Max(l.fence, h)
	case partBar:
		l.bar = math.Max(l.bar, h)
	case partFilm:
		l.film += h
	case partMat:
		if l.work {
			l.over += h
		}
		if l.bare {
			l.mat += h
		} else {
			l.pad, l.next = l.pad+h, l.next+h
		}
	case partCore: // it keeps a mat off the strips
		l.core, l.work, l.bare, l.next, l.over = l.core+h, true, false, 0, 0
	case partStrips:
		l.mat, l.pad, l.next, l.over = l.mat+l.next, l.pad-l.next, 0, 0
		l.strips, l.work, l.laid, l.bare = l.strips+h, true, true, true
	}
}

// stand works out the height. A side bar counts where it is higher than all that
// lies beside it.
func (p *pile) stand() {
	top := p.bedBar
	for _, l := range p.levels {
		foot := p.height + l.under + l.sled + l.caul
		if l.bar > 0 && foot+l.bar > top {
			top, p.foot = foot+l.bar, foot
		}
		p.height += l.height()
	}
	if top > p.height+alike {
		p.height, p.bar = top, top-p.foot
	}
}

// placeMat lays a mat told of outside the stack: on the highest level with
// uneven strips under something rigid, else on the highest with strips. No other
// level is taken to have one.
func (b *builder) placeMat(p *pile, layers unit.Layers) error {
	m, ok := b.saidMat()
	for _, l := range layers {
		ok = ok && l.Part != partMat
	}
	if !ok {
		return nil
	}
	where := -1
	for i, l := range p.levels {
		if l.laid && (where < 0 || !p.levels[where].uneven || !p.levels[where].capped || l.uneven && l.capped) {
			where = i
		}
	}
	if where >= 0 {
		p.levels[where].mat += m
		p.levels[where].over += m
	}
	return unit.MoreThan("thickness of the mat", m*1000, 0, " mm")
}

// looseLevel is the strips with what was said to lie on them, in a stack that
// nobody described.
func (b *builder) looseLevel() []level {
	l := level{number: 1, work: true, laid: true, capped: b.liesUnderRigid()}
	b.unevenStrips(&l, unit.Layer{Part: partStrips}, nil)
	l.mat, _ = b.saidMat()
	if !l.uneven {
		return nil
	}
	return []level{l}
}

// liesUnderRigid reports whether something rigid lies on strips of which no stack
// was described: a mat lies under something rigid, and nobody denies a mat under
// film alone.
func (b *builder) liesUnderRigid() bool {
	_, matted := b.saidMat()
	return matted || b.matDenied() || b.known(unit.CaulThickness)
}
