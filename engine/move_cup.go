package engine

import (
	"fmt"
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// flatEnough is the width over the cup that a panel may still have.
const flatEnough = 300

// A coreBoard is a board that faces are laid on: its stiffness and its movement for
// each per cent of moisture, both from memory.
type coreBoard struct {
	stiffness unit.Stiffness
	movement  wood.Movement
}

var cores = map[string]coreBoard{
	"plywood":       {unit.Gigapascals(8), 0.0002},
	"mdf":           {unit.Gigapascals(3.5), 0.0003},
	"particleboard": {unit.Gigapascals(2.5), 0.0004},
	"hardboard":     {unit.Gigapascals(4), 0.0004},
}

const solidCore = "solid" // the same wood across

// faceCup gives and judges the cup of a panel with a face laid on a core.
func faceCup(b *builder, m moved, s wood.Species, W float64) error {
	kind := b.word(unit.CoreKind)
	if kind == "" {
		if facesOnCore(b) {
			b.lack(unit.Cup, unit.CoreKind)
		}
		return nil
	}
	if sides := b.numberOr(unit.Faces, 1); kind == solidCore || sides >= 2 { // alike throughout, or alike on both sides
		judgeCup(b, unit.Exactly(0.0), W)
		b.work(unit.Cup, unit.Exactly(0.0), "Δε = 0: core and face alike, or a face on both sides", "symmetry", Computed,
			func() string { return "κ = 0" })
		return nil
	}
	c, ok := cores[kind]
	if !ok {
		return fmt.Errorf("core is %q, want plywood, mdf, particleboard, hardboard or solid", kind)
	}
	face, core, missing := faceAndCore(b)
	if len(missing) > 0 {
		b.lack(unit.Cup, missing...)
		if b.q.About == Move {
			b.need(missing...)
		}
		return nil
	}
	f := faceOnCore{m: m, core: c, face: unit.Length(face), base: unit.Length(core), width: unit.Length(W)}
	stiffness := b.across(s)
	movement := b.collapse(unit.SI(s.Moves(wood.Cut(b.word(unit.Sawn)))))
	board := b.collapse(unit.SI(wood.Spread(c.stiffness)))
	cup, err := f.cup(stiffness, board, movement)
	if err != nil {
		return err
	}
	judgeCup(b, cup, W)
	b.work(unit.Cup, cup, cupFormula,
		"Timoshenko 1925, JOSA 11:233, as read in public source code; stiffness and movement of the core from memory",
		FromMemory, func() string { return f.numbers(kind, stiffness.Mid, movement.Mid) })
	return nil
}

// faceAndCore returns the two thicknesses, in m, or the fields that say them.
func faceAndCore(b *builder) (face, core float64, missing []unit.Field) {
	face, ok := b.thickness()
	if !ok {
		missing = append(missing, unit.StripThickness)
	}
	core, ok = b.number(unit.CoreThickness)
	if !ok {
		for _, l := range b.layers() {
			if l.Part == partCore && l.Thickness > 0 {
				return face, l.Thickness / 1000, missing
			}
		}
		missing = append(missing, unit.CoreThickness)
	}
	return face, core, missing
}

// A faceOnCore is a face glued to one side of a core.
type faceOnCore struct {
	m                 moved
	core              coreBoard
	face, base, width unit.Length
}

// at returns the cup for one choice of the stiffnesses of face and core, the
// face's movement and its moisture before, in that order.
func (f faceOnCore) at(v unit.Corner) (unit.Length, error) {
	before, after := unit.Percent(v[3]), unit.Percent(f.m.after)
	wooden, err := press.FreeStrain(wood.Movement(v[2]), before, after)
	if err != nil {
		return 0, err
	}
	board, err := press.FreeStrain(f.core.movement, before, after)
	if err != nil {
		return 0, err
	}
	κ, err := press.BilayerCurvature(
		press.Ply{Thickness: f.face, Stiffness: unit.Stiffness(v[0])},
		press.Ply{Thickness: f.base, Stiffness: unit.Stiffness(v[1])}, wooden-board)
	if err != nil {
		return 0, err
	}
	return press.Sagitta(κ, f.width)
}

// cup returns the cup over the corners of what is uncertain, and over the
// stiffness at which it is greatest where that lies between.
func (f faceOnCore) cup(face, board, movement unit.Range[float64]) (unit.Range[float64], error) {
	if _, err := f.at(unit.Corner{face.Mid, board.Mid, movement.Mid, f.m.before.Mid}); err != nil {
		return unit.Range[float64]{}, err
	}
	number := func(v unit.Corner) float64 {
		c, err := f.at(v)
		if err != nil {
			return math.NaN()
		}
		return float64(c)
	}
	cup := unit.Sweep(number, face, board, movement, f.m.before)
	most := float64(press.MostBent(f.face, press.Ply{Thickness: f.base, Stiffness: unit.Stiffness(board.Mid)}))
	// Only the ratio of the stiffnesses counts.
	if n := most / board.Mid; n > face.Low/board.High && n < face.High/board.Low {
		cup = unit.Hull(cup, unit.Sweep(number, unit.Exactly(most), unit.Exactly(board.Mid), movement, f.m.before))
	}
	return cup, nil
}

const cupFormula = "cup = κ·W²/8, hollow on the face's side where negative; κ = 6Δε(1+m)²/(h[3(1+m)² + (1+mn)(m² + 1/(mn))]), m = t1/t2, n = E1/E2, h = t1+t2, Δε = (C1 − C2)(M2 − M1)"

// numbers puts the middles in words.
func (f faceOnCore) numbers(kind string, stiffness, movement float64) string {
	return fmt.Sprintf("t1 = %.4g mm, t2 = %.4g mm, E1 = %.4g GPa, E2 = %.4g GPa (%s), C1 = %.5f, C2 = %.4f, M %.4g to %.4g %%, W = %.4g mm",
		f.face.Millimetres(), f.base.Millimetres(), stiffness/1e9, f.core.stiffness.Gigapascals(), kind,
		movement, float64(f.core.movement), f.m.before.Mid, f.m.after, f.width.Millimetres())
}

// judgeCup gives the cup and judges it by its larger end.
func judgeCup(b *builder, cup unit.Range[float64], W float64) {
	give(b, unit.Cup, cup)
	allowed := W / flatEnough
	figures := unit.Facts{unit.Cup: b.a.Values[unit.Cup], unit.CupAllowed: unit.CupAllowed.Number(allowed)}
	if math.Max(math.Abs(cup.Low), math.Abs(cup.High)) <= allowed {
		b.judge("cup", Good, ReasonStaysFlat, figures)
		return
	}
	b.judge("cup", Care, ReasonCups, figures)
	b.advise(ReasonFaceTheBack, nil)
}
