package engine

import "presshand/engine/unit"

// judgeVacuum judges the vacuum asked for against what the air has.
func (b *builder) judgeVacuum() {
	pa, err := b.ambient()
	asked, ok := b.vacuumSaid(pa)
	const name = "vacuum"
	if err != nil || !ok || b.judged(name) {
		return
	}
	figures := unit.Facts{
		unit.Vacuum:  unit.Vacuum.Number(asked.Mid),
		unit.Ambient: figure(unit.Ambient, pa),
	}
	switch {
	case reaches(asked.Mid, pa.Mid):
		b.judge(name, Stop, ReasonVacuumAboveAmbient, figures)
	case !reaches(nearAmbient*pa.Mid, asked.Mid):
		b.judge(name, Care, ReasonVacuumNearAmbient, figures)
	case b.q.About == Face:
		b.advise(ReasonVacuumWithin, figures)
	}
}
