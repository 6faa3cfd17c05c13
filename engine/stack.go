package engine

import (
	"fmt"
	"math"

	"presshand/engine/unit"
)

// Margins of a stack, in m.
const (
	leastProud     = 0.0008  // common practice, no source
	leastClearance = 0.006   // common practice, no source
	mostUnevenSled = 0.00015 // between strips under a rigid sled without a mat
	alike          = 1e-9    // two heights that differ by arithmetic alone
)

// answerStack answers how high a stack is, whether the work stands proud of its
// fences, and what a mat does for uneven strips.
func answerStack(b *builder) error {
	p, err := b.pile()
	if err != nil {
		return err
	}
	m, err := b.matting(p)
	if err != nil {
		return err
	}
	if !p.known && len(b.layers()) == 0 && !p.looseStrips() {
		b.need(unit.StackLayers)
	}
	if p.known {
		b.giveHeight(p)
		b.judgeProud(p, m)
		b.judgeBag(p)
	}
	if err := b.judgeThinnest(p, m); err != nil {
		return err
	}
	if m.concentrated {
		give(b, unit.LevelPressure, m.above)
		b.work(unit.LevelPressure, m.above, "p A_sled / A_strips", "force balance", Computed, func() string {
			return fmt.Sprintf("%.4g kPa · %.4g m² / %.4g m²", m.face.Mid/1e3, m.sled, m.strips)
		})
	}
	b.judgeUneven(p)
	if p.matted() {
		b.advise(ReasonFoamGas, nil)
	}
	if b.evacuated() {
		b.judgeVacuum()
		if err := b.judgeGlueAside(); err != nil {
			return err
		}
		b.warnOfVacuum()
	}
	return nil
}

// judgeProud gives how far the work of each fenced level stands above its fence
// and judges each.
func (b *builder) judgeProud(p pile, m matting) {
	var all unit.Triples
	for _, l := range p.levels {
		if below := l.belowFence(); below > alike {
			b.judge("proud of the fence", Care, ReasonFenceMat, p.at(l, unit.Facts{unit.FenceThickness: unit.FenceThickness.Number(l.fence), unit.Proud: unit.Proud.Number(below)}))
		}
		open := !l.capped && l.mats() == 0 && len(p.levels) == 1 // what will lie on it was not said
		if l.fence == 0 || !l.capped && !open || l.core+l.strips == 0 {
			continue
		}
		if l.mats() > 0 && !m.pressed {
			b.need(unit.Vacuum)
			return
		}
		r, err := m.proud(l)
		if err != nil {
			return
		}
		all = append(all, figure(unit.Proud, r))
		if open {
			continue
		}
		v, why := Good, ReasonProud
		switch {
		case r.Mid < alike:
			v, why = Stop, ReasonFenceCarries
		case !reaches(r.Low, leastProud):
			v, why = Care, ReasonProudLittle
		}
		b.judge("proud of the fence", v, why, p.at(l, unit.Facts{unit.Proud: figure(unit.Proud, r)}))
		b.work(unit.Proud, r, p.named(l)+"proud = core + t + (m − s) − fence", "geometry", Computed, func() string {
			squash := l.core + l.strips + l.mats() - l.fence - r.Mid
			return fmt.Sprintf("%.6g + %.6g + (%.6g − %.6g) − %.6g mm", l.core*1e3, l.strips*1e3, l.mats()*1e3, math.Max(0, squash)*1e3, l.fence*1e3)
		})
	}
	if len(all) > 0 {
		b.giveValue(unit.Proud, all)
	}
}

// judgeThinnest gives what the thinnest strips under a mat get, on the level
// where that is least, and judges it.
func (b *builder) judgeThinnest(p pile, m matting) error {
	worst, at := unit.Range[float64]{}, -1
	for i, l := range p.levels {
		if !l.evened() {
			continue
		}
		if !m.pressed {
			b.need(unit.Vacuum)
			return nil
		}
		r, err := m.low(l)
		if err != nil {
			return err
		}
		m.workLow(b, p, l, r)
		if at < 0 || r.Mid < worst.Mid {
			worst, at = r, i
		}
	}
	if at < 0 {
		return nil
	}
	give(b, unit.MatLow, worst)
	m.adviseMatFit(b, p.levels[at])
	b.judgeFaceWith("thinnest strips", worst, b.glue(), p.at(p.levels[at], unit.Facts{}))
	return nil
}

// judgeUneven judges, level by level, strips of several thicknesses that no mat
// evens out.
func (b *builder) judgeUneven(p pile) {
	for _, l := range p.levels {
		if !l.uneven || l.evened() {
			continue
		}
		figures := p.at(l, unit.Facts{unit.ThicknessSpread: unit.ThicknessSpread.Number(l.spread)})
		switch {
		case !l.capped:
			b.judge("uneven strips", Good, ReasonFilmForgives, figures)
		case !reaches(mostUnevenSled, l.spread):
			b.judge("uneven strips", Stop, ReasonUneven, figures)
		default:
			b.judge("uneven strips", Good, ReasonEven, figures)
		}
	}
}
