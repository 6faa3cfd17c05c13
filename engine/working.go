package engine

import (
	"fmt"

	"presshand/engine/unit"
	"presshand/engine/wood"
)

// say returns a figure in SI with the unit that a field's name ends in.
func say(f unit.Field, si float64) string {
	u := f.Unit()
	switch {
	case !isFinite(si):
		return "out of reach"
	case u == unit.One:
		return fmt.Sprintf("%.4g", si)
	}
	return fmt.Sprintf("%.4g %s", u.Of(si), u.Symbol)
}

// sayFinely is say for a term of a sum that may nearly cancel.
func sayFinely(f unit.Field, si float64) string {
	if !isFinite(si) {
		return say(f, si)
	}
	return fmt.Sprintf("%.6g %s", f.Unit().Of(si), f.Unit().Symbol)
}

// sayRange returns a figure with its ends, where it has any.
func sayRange(f unit.Field, r unit.Range[float64]) string {
	switch u := f.Unit(); {
	case r.Low == r.High:
		return say(f, r.Mid)
	case isFinite(r.Low) && isFinite(r.High):
		return fmt.Sprintf("%s (%.4g to %.4g)", say(f, r.Mid), u.Of(r.Low), u.Of(r.High))
	}
	return fmt.Sprintf("%s (%s to %s)", say(f, r.Mid), say(f, r.Low), say(f, r.High))
}

// work keeps the working of one figure: the formula, the mids put in, the result
// with its range, and where it comes from.
func (b *builder) work(f unit.Field, r unit.Range[float64], formula, source string, standing Standing, numbers func() string) {
	b.why(func() Step {
		return Step{Name: string(f), Formula: formula, Numbers: numbers(), Result: sayRange(f, r), Source: source, Standing: standing}
	})
}

// workAir keeps the working of the ambient and of the vacuum.
func (b *builder) workAir(pa, p unit.Range[float64]) {
	b.workAmbient(pa)
	b.workVacuum(pa, p)
}

func (b *builder) workAmbient(pa unit.Range[float64]) {
	if b.known(unit.Ambient) {
		b.work(unit.Ambient, pa, "p_a as the barometer reads", "as said", Seen, func() string { return say(unit.Ambient, pa.Mid) })
		return
	}
	b.work(unit.Ambient, pa, "p_a = 101325 (1 − 0.0065 h / 288.15)^5.255876",
		"US Standard Atmosphere 1976, ISO 2533; ±2 kPa of weather is our estimate", Seen, func() string {
			return "h = " + say(unit.Altitude, b.numberOr(unit.Altitude, 0))
		})
}

func (b *builder) workVacuum(pa, p unit.Range[float64]) {
	formula, source, standing := "p = reading ± 2.54 kPa, never above p_a", "as said; dial of class 2.5, EN 837-1 (from memory)", FromMemory
	numbers := "reading %s, p_a = %s"
	f, n, _ := b.gauge()
	switch f {
	case unit.VacuumAbsolute:
		formula, source, standing, numbers = "p = p_a − p_abs", "as said", Computed, "p_abs = %s, p_a = %s"
	case unit.VacuumPercent:
		formula, source, standing, numbers = "p = share · p_a", "as said", Computed, "%s · %s"
	}
	b.work(unit.FacePressure, p, formula, source, standing, func() string {
		return fmt.Sprintf(numbers, say(f, n), say(unit.Ambient, pa.Mid))
	})
}

// stiffnessSource names where the stiffness of the strips comes from, and how far
// that was looked at: across the grain, or along it.
func (b *builder) stiffnessSource(across bool) (string, Standing) {
	s := b.species()
	source, standing := "E: "+wood.StrengthSource, s.StrengthStanding
	if s.Name == wood.Default().Name {
		source = "E: that of a middling hardwood, our estimate"
	}
	if across {
		source += "; across: " + wood.RatioSource
		if s.GroupRatios {
			source += ", as here"
		}
		standing = unit.Weakest(standing, s.RatioStanding)
		if b.word(unit.Sawn) == "" {
			source += "; rings at 45° at the low end from memory"
		}
	}
	return source + "; ±22 % from memory", unit.Weakest(standing, FromMemory)
}
