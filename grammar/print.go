package grammar

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// Print writes what p asks and states in the long form, so that Parse(Print(p))
// asks and states the same. A word to the load book, what was refused and what
// was not used are not printed.
func Print(p Phrase) string {
	var out []string
	for _, a := range p.Asks {
		if a.About == Book {
			continue
		}
		out = append(out, "ask: "+printAsk(a))
		for _, f := range goals(a) {
			out = append(out, "goal "+label(f.Field)+": "+printValue(f))
		}
	}
	if p.Pictures != "" {
		out = append(out, "pictures: "+string(p.Pictures))
	}
	for _, d := range p.Drops {
		out = append(out, "without: "+string(d))
	}
	for _, f := range p.Facts {
		out = append(out, label(f.Field)+": "+printValue(f))
	}
	for _, c := range p.Choices {
		var vs []string
		for _, f := range c.Values {
			vs = append(vs, printValue(f))
		}
		out = append(out, "either "+label(c.Field)+": "+strings.Join(vs, " | "))
	}
	if len(out) == 0 {
		return ""
	}
	return longMark + " " + strings.Join(out, "; ")
}

func goals(a Ask) []Fact {
	var fs []Fact
	for _, f := range a.Goal {
		fs = append(fs, f)
	}
	sort.Slice(fs, func(i, j int) bool { return fs[i].Field < fs[j].Field })
	return fs
}

func printAsk(a Ask) string {
	s := string(a.About)
	if a.Solve != "" {
		s += ", solve " + string(a.Solve)
	}
	for _, f := range a.For {
		s += ", figure " + string(f)
	}
	if a.Peril != "" {
		s += ", danger " + string(a.Peril)
	}
	return s
}

func label(f unit.Field) string {
	if l, ok := labels[f]; ok {
		return l
	}
	return string(f)
}

func printValue(f Fact) string {
	switch v := f.Value.(type) {
	case unit.Number:
		return printNumber(f, v)
	case unit.Word:
		return strings.Map(plainRune, string(v))
	case unit.Numbers:
		var ss []string
		for _, x := range v {
			ss = append(ss, decimal(x))
		}
		return strings.Join(ss, ", ")
	case unit.Layers:
		var ss []string
		for _, l := range v {
			ss = append(ss, l.Part+" "+decimal(l.Thickness))
		}
		return strings.Join(ss, ", ")
	case unit.Piles:
		var ss []string
		for _, p := range v {
			s := fmt.Sprintf("%d @ %s", p.Count, decimal(p.Width))
			if p.Length > 0 {
				s += " x " + decimal(p.Length)
			}
			ss = append(ss, s)
		}
		return strings.Join(ss, ", ")
	}
	return ""
}

// plainRune keeps what a person typed from ending its own entry.
func plainRune(r rune) rune {
	if r == ';' || r == '\n' || r == '\r' {
		return ','
	}
	return r
}

func printNumber(f Fact, v unit.Number) string {
	u := f.Unit
	if u.Symbol == "" || u.Dimension != f.Field.Dimension() || u.Factor == 0 {
		u = f.Field.Unit()
	}
	if u.Symbol == "" || f.Field.Dimension() == unit.Count {
		return decimal(float64(v))
	}
	return decimal(round(u.Of(f.Field.SI(v)))) + " " + u.Symbol
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
