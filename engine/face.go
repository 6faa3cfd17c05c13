package engine

import (
	"presshand/engine/glue"
	"presshand/engine/press"
	"presshand/engine/unit"
)

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
	b.workAmbient(pa)
	if !ok {
		if !asksOnlyFor(b, unit.Ambient) {
			b.need(unit.Vacuum)
		}
		return nil
	}
	b.workVacuum(pa, p)
	give(b, unit.FacePressure, p)
	give(b, unit.FaceTonsPerSquareFoot, p)
	b.work(unit.FaceTonsPerSquareFoot, p, "p / 95760.518 Pa", "2000 lbf on the square foot, NIST SP 811", Seen, func() string {
		return sayRange(unit.FacePressure, p)
	})
	if err := b.giveForce(p); err != nil {
		return err
	}
	b.judgeVacuum()
	if b.known(unit.GlueClass) || facesOnCore(b) {
		if err := b.judgeGlueLine(); err != nil {
			return err
		}
		if b.q.About == Face || facesOnCore(b) {
			b.judgeFace("face", p, b.glue())
		}
	}
	if b.known(unit.GlueClass) {
		warnOfGlue(b, b.glue())
	}
	b.warnOfVacuum()
	b.warnOfUse()
	return nil
}

// asksOnlyFor reports whether one figure alone was asked for by name.
func asksOnlyFor(b *builder, f unit.Field) bool { return len(b.q.For) == 1 && b.q.For[0] == f }

// giveForce gives the force on the panel, the sled or the bed, where its size
// is known.
func (b *builder) giveForce(p unit.Range[float64]) error {
	A, ok := b.area()
	if !ok {
		return nil
	}
	var err error
	F := unit.Sweep(func(c unit.Corner) float64 {
		f, e := press.FaceForce(unit.Pressure(c[0]), unit.Area(A))
		err = firstError(err, e)
		return float64(f)
	}, p)
	give(b, unit.FaceForce, F)
	b.work(unit.FaceForce, F, "F = p A", "definition of pressure", Computed, func() string {
		return sayRange(unit.FacePressure, p) + ", " + say(unit.JointArea, A)
	})
	return err
}

// area returns the face that is pressed, in m².
func (b *builder) area() (float64, bool) {
	r, err := b.row()
	L, ok := b.length()
	if err == nil && ok && r.width > 0 {
		return r.width * L, true
	}
	for _, pair := range [...][2]unit.Field{{unit.SledWidth, unit.SledLength}, {unit.BedWidth, unit.BedLength}} {
		w, ok1 := b.number(pair[0])
		l, ok2 := b.number(pair[1])
		if ok1 && ok2 {
			return w * l, true
		}
	}
	return 0, false
}

// judgeFace judges the pressure on a face that is glued onto a core or a
// neighbour.
func (b *builder) judgeFace(name string, p unit.Range[float64], c glue.Class) {
	b.judgeFaceWith(name, p, c, unit.Facts{})
}

// judgeFaceWith is judgeFace with some figures more to the finding.
func (b *builder) judgeFaceWith(name string, p unit.Range[float64], c glue.Class, figures unit.Facts) {
	if b.judged(name) {
		return
	}
	contact := float64(glue.Contact(c))
	v, r := Stop, ReasonFaceUnderContact
	switch {
	case reaches(p.Low, contact) && c.WantsClamps():
		v, r = Care, ReasonFaceWantsClamps
	case reaches(p.Low, contact):
		v, r = Good, ReasonFaceContact
	case reaches(p.Mid, contact):
		v, r = Care, ReasonFaceMayFall
	case reaches(p.Mid, contact/2):
		v, r = Care, ReasonFaceNearContact
	}
	figures[unit.FacePressure] = figure(unit.FacePressure, p)
	figures[unit.GlueContact] = unit.GlueContact.Number(contact)
	figures[unit.GlueClass] = unit.Word(c.Name)
	b.judge(name, v, r, figures)
}
