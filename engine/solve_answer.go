package engine

import (
	"errors"
	"math"
	"strings"

	"presshand/engine/unit"
)

// answer is the forward answer at the solution, or nearest to it.
func (s *solver) answer(at solution) (Answer, error) {
	if !at.met && !at.moves {
		return s.unmoved(), nil
	}
	if at.met && s.figure == GoalVerdict {
		at.at = s.shortened(at.at)
	}
	a, err := Compute(s.with(at.at))
	if err != nil {
		return a, err
	}
	if s.covered && a.Values.Has(unit.BarCovered) {
		a.Assumed[unit.Cover] = s.with(at.at).Said[unit.Cover]
	}
	figures := s.goal()
	figures[s.field] = unit.Number(at.at)
	if v, ok := a.Values[s.figure]; ok {
		figures[s.figure] = v
	}
	delete(a.Values, s.field) // the nearest is no solution
	head := func(v Verdict, r Reason) {
		a.Checks = append([]Check{{"goal", v, Finding{r, figures}}}, a.Checks...)
		a.Verdict = Worst(a.Verdict, v)
	}
	switch {
	case at.met:
		a.Values[s.field] = unit.TripleOf(unit.Exactly(at.at))
		a.Advice = append([]Finding{{ReasonSolved, figures}}, a.Advice...)
		s.adviseSure(&a)
	case at.jump && at.safe:
		a.Values[s.field] = unit.TripleOf(unit.Exactly(at.at))
		head(Care, ReasonJumps)
	case at.jump:
		head(Stop, ReasonNotExactly)
	case at.every:
		if s.figure == GoalVerdict {
			a.Values[s.field] = unit.TripleOf(unit.Exactly(at.at))
		}
		if at.last || reaches(at.at, s.high) {
			head(None, ReasonAnyUpTo)
		} else {
			head(None, ReasonAnyFrom)
		}
		adviseEnd(&a, at.ends)
	default:
		head(Stop, ReasonOutOfReach)
		a.Verdict = Stop
		adviseEnd(&a, at.ends)
	}
	return a, nil
}

// shortened returns a value of seven digits next to one that gives a good verdict, on the
// side where the verdict is good: what is written down must give it when put back.
func (s *solver) shortened(x float64) float64 {
	if x == 0 {
		return x
	}
	scale := math.Pow(10, 6-math.Floor(math.Log10(math.Abs(x))))
	for _, round := range [...]func(float64) float64{math.Round, math.Ceil, math.Floor} {
		if y := round(x*scale) / scale; s.miss(y) >= 0 {
			return y
		}
	}
	return x
}

// adviseEnd tells which input would leave what its formula is valid for, just beyond
// the nearest that can be had.
func adviseEnd(a *Answer, why error) {
	var bad *unit.RangeError
	if errors.As(why, &bad) && !strings.Contains(bad.What, "_") {
		a.Advice = append(a.Advice, Finding{ReasonFormulaEnds, unit.Facts{
			unit.LimitOf: unit.Word(bad.What), unit.LimitIs: unit.Word(bad.Want),
		}})
	}
}

// adviseSure tells which value keeps a strip flat over the whole range of what is
// uncertain, where the solution only does so at the middles.
func (s *solver) adviseSure(a *Answer) {
	if s.figure != GoalVerdict || s.q.About != Flatten || a.Verdict == Good {
		return
	}
	over := *s
	over.sure = true
	if at := over.solve(); at.met {
		a.Advice = append([]Finding{{ReasonSureFrom, unit.Facts{s.field: unit.Number(at.at)}}}, a.Advice...)
	}
}

// unmoved is the answer where the figure is the same at every value, or is given
// at none. What friction eats whole is out of reach, and so is what a check
// stops everywhere; anything else has no bearing.
func (s *solver) unmoved() Answer {
	a, err := Compute(s.with((s.low + s.high) / 2))
	v, _ := a.Values[s.figure].(unit.Triple)
	given := v.Mid != nil
	eaten := given && *v.Mid == 0
	stopped := !given && a.Verdict == Stop
	figures, reason, checks := s.goal(), ReasonNoBearing, []Check(nil)
	if err == nil && (eaten || stopped || s.figure == GoalVerdict) {
		reason, checks = ReasonOutOfReach, a.Checks
		if given {
			figures[s.figure] = v
		}
	}
	return Answer{
		About: s.q.About, Verdict: Stop, Values: unit.Facts{}, Assumed: unit.Facts{},
		Checks: append([]Check{{"goal", Stop, Finding{reason, figures}}}, checks...),
	}
}

func (s *solver) goal() unit.Facts {
	if s.figure == GoalVerdict {
		return unit.Facts{unit.Goal: unit.Facts{GoalVerdict: unit.Word(Good)}}
	}
	return unit.Facts{unit.Goal: unit.Facts{s.figure: unit.Number(s.want)}}
}
