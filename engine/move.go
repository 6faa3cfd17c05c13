package engine

import (
	"fmt"
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// answerMove answers how moist wood gets and how far it moves.
func answerMove(b *builder) error {
	air, ok := b.airToSettleIn()
	if !ok {
		moveNeeds(b, unit.ServiceHumidity)
		return nil
	}
	emc, err := balance(b, air, unit.Emc)
	if err != nil {
		return err
	}
	give(b, unit.Emc, unit.Exactly(emc))
	before, ok, err := moistureBefore(b)
	if err != nil {
		return err
	}
	if !ok {
		moveNeeds(b)
		return nil
	}
	if !b.said(unit.ServiceHumidity) { // the air said without a place is where it goes
		b.assume(unit.ServiceHumidity, unit.Number(air.humidity))
	}
	judgeMovingRange(b, before, emc)
	return moved{before: before, after: emc}.give(b)
}

// moveNeeds notes what a movement lacks. A question about air and nothing else
// needs no more than the air.
func moveNeeds(b *builder, air ...unit.Field) {
	var fs []unit.Field
	if !widthIsKnown(b) {
		fs = append(fs, unit.PanelWidth)
	}
	if !b.known(unit.WoodMoisture, unit.WoodMoistureLow, unit.WoodMoistureHigh) {
		fs = append(fs, unit.WoodMoisture)
	}
	fs = append(fs, air...)
	b.lack(unit.WidthChange, fs...)
	b.lack(unit.Cup, fs...)
	b.lack(unit.Emc, air...)
	switch {
	case b.q.About != Move || len(b.q.For) > 0:
	case !pieceIsSaid(b) && b.said(unit.ShopTemp, unit.ServiceTemp):
		b.need(air...)
	case pieceIsSaid(b) || len(air) > 0:
		b.need(fs...)
	}
}

// pieceIsSaid reports whether the question is about a piece and not just air.
func pieceIsSaid(b *builder) bool {
	return sizeIsSaid(b) || b.said(unit.WoodMoisture, unit.WoodMoistureLow, unit.WoodMoistureHigh, unit.Species, unit.Sawn)
}

// sizeIsSaid reports whether a measure of the piece was said.
func sizeIsSaid(b *builder) bool {
	return b.said(unit.PanelWidth, unit.StripWidth, unit.StripWidths, unit.TargetWidth, unit.CoreKind, unit.StripThickness)
}

func widthIsKnown(b *builder) bool {
	w, err := movingWidth(b)
	return err == nil && w > 0
}

// movingWidth returns the width across the grain: the panel's, else the strips'
// together, else that of the one strip told of; 0 where none is known.
func movingWidth(b *builder) (float64, error) {
	p, err := b.row()
	if err != nil {
		return 0, err
	}
	if p.width > 0 {
		return p.width, nil
	}
	if w, ok := b.number(unit.TargetWidth); ok {
		return w, nil
	}
	return p.strip, nil
}

// moved is how a wood's moisture changes, in %.
type moved struct {
	before unit.Range[float64]
	after  float64
}

// give gives the movement: in per cent, of the width, and the cup of a face.
func (m moved) give(b *builder) error {
	s := b.species()
	if s.Name == wood.Default().Name {
		b.advise(ReasonSpeciesUnsaid, nil)
	}
	if b.word(unit.Sawn) == "" {
		b.advise(ReasonCutUnsaid, nil)
	}
	C := b.collapse(unit.SI(s.Moves(wood.Cut(b.word(unit.Sawn)))))
	W, err := movingWidth(b)
	if err != nil {
		return err
	}
	strain := func(v unit.Corner) float64 {
		e, err := press.FreeStrain(wood.Movement(v[0]), unit.Percent(v[1]), unit.Percent(m.after))
		if err != nil {
			return math.NaN()
		}
		return e
	}
	if _, err := press.FreeStrain(wood.Movement(C.Mid), unit.Percent(m.before.Mid), unit.Percent(m.after)); err != nil {
		return err
	}
	e := unit.Sweep(strain, C, m.before)
	give(b, unit.WidthChangePercent, e.Times(100))
	source := "Wood Handbook FPL-GTR-282 ch. 13; C: " + movementSource(s)
	b.work(unit.WidthChangePercent, e.Times(100), "C · (M2 − M1), of the width", source, s.MovementStanding, func() string {
		return fmt.Sprintf("100 · %.5f · (%.6g − %.6g) %%", C.Mid, m.after, m.before.Mid)
	})
	if W == 0 {
		b.lack(unit.WidthChange, unit.PanelWidth)
		if sizeIsSaid(b) && b.q.About == Move {
			b.need(unit.PanelWidth)
		}
		return nil
	}
	change, err := press.WidthChange(unit.Length(W), wood.Movement(C.Mid), unit.Percent(m.before.Mid), unit.Percent(m.after))
	if err != nil {
		return err
	}
	give(b, unit.WidthChange, unit.Around(unit.Length(W*e.Low), change, unit.Length(W*e.High)))
	b.work(unit.WidthChange, e.Times(W), "d = W · C · (M2 − M1)",
		source, s.MovementStanding, func() string {
			return fmt.Sprintf("%.4g mm · %.5f · (%.6g − %.6g) %%", W*1000, C.Mid, m.after, m.before.Mid)
		})
	if facesOnCore(b) {
		b.advise(ReasonCoreHoldsFace, nil)
	}
	return faceCup(b, m, s, W)
}

// movementSource names where the movement of a wood comes from.
func movementSource(s wood.Species) string {
	switch {
	case s.Name == wood.Default().Name:
		return "mean of the hardwoods of Table 13-5"
	case s.MovementStanding == Computed:
		return "computed from the wood's shrinkage, no row in Table 13-5"
	}
	return wood.MovementSource
}

// judgeMovingRange says where moistures leave the range that movement is
// published for.
func judgeMovingRange(b *builder, before unit.Range[float64], after float64) {
	low, high := float64(wood.DriestMoving), float64(wood.WettestMoving)
	least, most := math.Min(before.Low, after), math.Max(before.High, after)
	if least >= low && most <= high {
		return
	}
	from := before.Mid
	switch { // the end that is outside, where pieces differ
	case before.Low < low:
		from = before.Low
	case before.High > high:
		from = before.High
	}
	b.judge("moisture range", Care, ReasonOutsideMovingRange, unit.Facts{
		unit.WoodMoisture: unit.Number(from), unit.Emc: unit.Number(after),
	})
}
