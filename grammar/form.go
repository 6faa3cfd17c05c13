package grammar

import (
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// The long form writes a phrase without anything to interpret: an equals sign, then
// entries "label: value" parted by semicolons. [Print] writes it, and [Parse] reads
// it when every entry of a message that begins so has that shape.

// longMark begins the long form, which nobody types by chance.
const longMark = "="

// labels are the fields' labels: their names without the unit.
var labels, fieldsByLabel = buildLabels()

func buildLabels() (map[unit.Field]string, map[string]unit.Field) {
	byField, byLabel := map[unit.Field]string{}, map[string]unit.Field{}
	for _, f := range unit.Said {
		name := string(f)
		if u := f.Unit(); u != unit.One {
			name = name[:strings.LastIndexByte(name, '_')]
			name = strings.TrimSuffix(name, "_kpa_per")
		}
		label := strings.ReplaceAll(name, "_", " ")
		if _, taken := byLabel[label]; taken {
			label = strings.ReplaceAll(string(f), "_", " ")
		}
		byField[f], byLabel[label] = label, f
	}
	return byField, byLabel
}

var topics = []Topic{Face, Side, Flatten, Stack, Strips, Glue, Pump, Move, Load, Schedule, Book, Profile, Safety, Why, Words}

// longForm reads a message in the long form.
func longForm(text string) (Phrase, bool) {
	text, marked := strings.CutPrefix(strings.TrimSpace(text), longMark)
	if !marked || strings.ContainsAny(text, "\n\r") {
		return Phrase{}, false
	}
	var p Phrase
	for _, entry := range strings.Split(strings.TrimSuffix(strings.TrimSpace(text), ";"), ";") {
		label, value, ok := strings.Cut(entry, ":")
		if !ok || !p.enter(strings.TrimSpace(label), strings.TrimSpace(value)) {
			return Phrase{}, false
		}
	}
	return p, true
}

// enter takes one entry; it reports whether the entry is one of the long form's.
func (p *Phrase) enter(label, value string) bool {
	switch label {
	case "ask":
		return p.enterAsk(value)
	case "pictures":
		p.Pictures = Pictures(value)
		return p.Pictures == PicturesOn || p.Pictures == PicturesOff
	case "without":
		p.Drops = append(p.Drops, Part(value))
		_, known := partNames[value]
		return known
	}
	if name, ok := strings.CutPrefix(label, "either "); ok {
		return p.enterChoice(name, value)
	}
	if name, ok := strings.CutPrefix(label, "goal "); ok {
		f, ok := entryFact(name, value)
		if !ok || len(p.Asks) == 0 {
			return false
		}
		a := &p.Asks[len(p.Asks)-1]
		if a.Goal == nil {
			a.Goal = map[unit.Field]Fact{}
		}
		a.Goal[f.Field] = f
		return true
	}
	f, ok := entryFact(label, value)
	if ok {
		p.Facts = append(p.Facts, f)
	}
	return ok
}

func (p *Phrase) enterAsk(value string) bool {
	about, rest, _ := strings.Cut(value, ", ")
	if !slices.Contains(topics, Topic(about)) {
		return false
	}
	a := Ask{About: Topic(about)}
	for _, part := range strings.Split(rest, ", ") {
		verb, what, _ := strings.Cut(part, " ")
		switch verb {
		case "":
		case "solve":
			a.Solve = unit.Field(what)
		case "figure":
			a.For = append(a.For, unit.Field(what))
		case "danger":
			a.Peril = Peril(what)
		default:
			return false
		}
	}
	p.Asks = append(p.Asks, a)
	return true
}

func (p *Phrase) enterChoice(name, value string) bool {
	c := Choice{}
	for _, v := range strings.Split(value, " | ") {
		f, ok := entryFact(name, v)
		if !ok {
			return false
		}
		c.Field = f.Field
		c.Values = append(c.Values, f)
	}
	p.Choices = append(p.Choices, c)
	return true
}

// entryFact reads a value in the unit written with it.
func entryFact(label, value string) (Fact, bool) {
	f, ok := fieldsByLabel[label]
	if !ok {
		f = unit.Field(label)
		if f.Dimension() == unit.Text {
			return Fact{}, false
		}
	}
	fact := Fact{Field: f, Text: value}
	switch f {
	case unit.StackLayers:
		layers, ok := entryLayers(value)
		fact.Value, fact.Unit = layers, unit.MM
		return fact, ok
	case unit.StockPiles, unit.Targets:
		piles, ok := entryPiles(value)
		fact.Value, fact.Unit = piles, unit.MM
		return fact, ok
	case unit.StripWidths:
		ns, ok := entryNumbers(value)
		fact.Value, fact.Unit = ns, unit.MM
		return fact, ok
	}
	if f.Dimension() == unit.Text {
		fact.Value = unit.Word(value)
		return fact, value != ""
	}
	number, symbol, _ := strings.Cut(value, " ")
	r, ok := new(big.Rat).SetString(number)
	if !ok {
		return Fact{}, false
	}
	v, _ := r.Float64()
	u, ok := unitSymbols[symbol]
	if !ok || symbol != "" && u.Dimension != f.Dimension() {
		return Fact{}, false
	}
	if symbol != "" {
		v = round(f.Unit().Of(u.SI(v)))
	}
	if impossible(f, v) != "" {
		return Fact{}, false
	}
	fact.Value, fact.Unit = unit.Number(v), u
	return fact, true
}

// unitSymbols are the units by their symbols; no symbol is a plain number.
var unitSymbols = buildSymbols()

func buildSymbols() map[string]unit.Unit {
	m := map[string]unit.Unit{"": unit.One}
	for _, u := range unitWords {
		m[u.unit.Symbol] = u.unit
	}
	return m
}

func entryLayers(value string) (unit.Layers, bool) {
	var ls unit.Layers
	for _, part := range strings.Split(value, ", ") {
		name, thickness, _ := strings.Cut(part, " ")
		t, ok := entryNumber(orZero(thickness))
		if !ok || name == "" {
			return nil, false
		}
		ls = append(ls, unit.Layer{Part: name, Thickness: t})
	}
	return ls, true
}

// entryNumber reads a number that a tape can show: not NaN, not infinite.
func entryNumber(s string) (float64, bool) {
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

func orZero(s string) string {
	if s == "" {
		return "0"
	}
	return s
}

func entryPiles(value string) (unit.Piles, bool) {
	var ps unit.Piles
	for _, part := range strings.Split(value, ", ") {
		n, w, ok := strings.Cut(part, " @ ")
		w, l, _ := strings.Cut(w, " x ")
		count, err := strconv.Atoi(n)
		width, okW := entryNumber(w)
		length, okL := entryNumber(orZero(l))
		if !ok || err != nil || !okW || !okL {
			return nil, false
		}
		ps = append(ps, unit.Pile{Width: width, Count: count, Length: length})
	}
	return ps, true
}

func entryNumbers(value string) (unit.Numbers, bool) {
	var ns unit.Numbers
	for _, part := range strings.Split(value, ", ") {
		v, ok := entryNumber(part)
		if !ok {
			return nil, false
		}
		ns = append(ns, v)
	}
	return ns, true
}
