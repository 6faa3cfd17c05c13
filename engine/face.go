package engine

import "presshand/engine/unit"

// answerFace answers what presses on a face.
func answerFace(b *builder) error {
	pa, err := b.ambient()
	if err != nil {
		return err
	}
	give(b, unit.Ambient, pa)
	p, ok, err := b.vacuum()
	if err != nil {
		return err
	}
	if !ok {
		b.need(unit.Vacuum)
		return nil
	}
	give(b, unit.FacePressure, p)
	return nil
}
