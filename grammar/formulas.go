package grammar

import "presshand/engine/unit"

// symbolFields are the letters of a formula, "n = 8, w = 0.065 m, H = 0.055 m".
var symbolFields = map[string]unit.Field{
	"n": unit.StripCount, "w": unit.StripWidth, "b": unit.StripWidth, "t": unit.StripThickness, "e": unit.StripThickness,
	"h": unit.BarHeight, "hb": unit.BarHeight, "l": unit.StripLength,
	"p": unit.Vacuum, "dp": unit.Vacuum, "δp": unit.Vacuum, "∆p": unit.Vacuum, "q": unit.Vacuum, "pv": unit.Vacuum, "mu": unit.FrictionStated, "µ": unit.FrictionStated, "μ": unit.FrictionStated,
}

// formulas reads the strips of a load from the letters of a formula, where a width and
// a thickness are among three of them at least.
func (r *reader) formulas() {
	var at []int
	wide, thick := false, false
	for i := range r.items {
		if i+2 >= len(r.items) || r.items[i+1].brk != '=' || r.items[i].amount != nil || !r.free(i+2) {
			continue
		}
		f := symbolFields[r.items[i].word]
		if f == "" {
			continue
		}
		wide, thick = wide || f == unit.StripWidth, thick || f == unit.StripThickness
		at = append(at, i)
	}
	if len(at) < 3 || !wide || !thick {
		return
	}
	for _, i := range at {
		f := symbolFields[r.items[i].word]
		if r.has(f) || !r.fitsField(i+2, f) {
			continue
		}
		r.items[i].used, r.items[i].meaning = true, meaning{}
		r.bind(i+2, f)
	}
}

// fitsField reports whether the amount at item i can be of a field, by its unit.
func (r *reader) fitsField(i int, f unit.Field) bool {
	am := r.items[i].amount
	_, whole := am.whole()
	switch f {
	case unit.StripCount:
		return whole
	case unit.Vacuum:
		return am.is(unit.Pressing)
	case unit.FrictionStated:
		return am.bare()
	}
	return r.length(i)
}

// groupedByThree joins "84 000 Pa": a group of three digits that begins with a nought,
// or has a unit of many, is the thousands' rest.
func (r *reader) groupedByThree() {
	for i := 0; i+1 < len(r.items); i++ {
		a, b := r.items[i].amount, r.items[i+1].amount
		if a == nil || b == nil || a.form != formInt || b.form != formInt || !a.bare() || b.link != linkNone || a.minus || b.minus || r.items[i+1].start != r.items[i].end+1 {
			continue
		}
		head, tail := r.items[i].text, r.items[i+1].text
		if digits(head) != len(head) || len(head) > 3 || digits(tail) != 3 || head[0] == '0' || tail[0] != '0' && b.unitRaw != "pa" {
			continue
		}
		n, _ := plainWhole(a)
		m, _ := plainWhole(b)
		r.joinNext(i, 1000*n+m)
	}
}

// foreignWords reads how strong and how large, as others say thick and wide: "75 mm
// large and 18 mm strong".
func (r *reader) foreignWords() {
	if !r.says("strong", "large", "broad") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		am := r.items[i-1].amount
		if am == nil || !am.is(unit.Distance) || r.items[i].amount != nil || r.items[i].kind != kindNone {
			continue
		}
		switch r.items[i].word {
		case "strong":
			r.items[i].meaning = meaning{kind: kindAttr, id: "thick"}
			r.hear(i)
		case "large", "broad":
			r.items[i].meaning = meaning{kind: kindAttr, id: "wide"}
			r.hear(i)
		}
	}
}
