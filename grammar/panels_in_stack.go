package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// mostPanelsUp is more than anybody stacks in one press.
const mostPanelsUp = 20

// levelsAndMore builds a stack from what was told of one level and beside its layers.
func (r *reader) levelsAndMore() {
	r.levels()
	if r.measureOf(unit.StackLayers) < 0 {
		return
	}
	r.panelsLeftOut()
	r.sledUnderEach()
	r.capLeftOut()
}

// panelsLeftOut puts into a stack the panels that were counted beside its layers: "3/4 sled,
// 1/2 caul, two panels 7/8 each and a 1/4 mat between". The first sled carries them, a mat
// lies between them where it is said to, and the rest lies on top.
func (r *reader) panelsLeftOut() {
	stack := r.measureOf(unit.StackLayers)
	if stack < 0 {
		return
	}
	thick, count := r.measureOf(unit.PanelThickness), r.measureOf(unit.PanelCount)
	if thick < 0 || count < 0 {
		return
	}
	layers, _ := r.bound[stack].fact.Value.(unit.Layers)
	n, _ := r.bound[count].fact.Value.(unit.Number)
	isWork := func(l unit.Layer) bool { return l.Part == "strips" || l.Part == "core" }
	if n < 1 || n > mostPanelsUp || slices.ContainsFunc(layers, isWork) {
		return
	}
	isPart := func(part string) func(unit.Layer) bool {
		return func(l unit.Layer) bool { return l.Part == part }
	}
	built, rest := unit.Layers{}, slices.Clone(layers)
	if at := slices.IndexFunc(rest, isPart("sled")); at >= 0 {
		built, rest = append(built, rest[at]), slices.Delete(rest, at, at+1)
	}
	var between unit.Layers
	if at := slices.IndexFunc(rest, isPart("mat")); at >= 0 && r.liesBetween("mat") {
		between = unit.Layers{rest[at]}
		rest = slices.DeleteFunc(rest, isPart("mat"))
	}
	for k := range int(n) {
		if k > 0 {
			built = append(built, between...)
		}
		built = append(built, r.layerOf("strips", thick))
	}
	r.bound[stack].fact.Value = append(built, rest...)
	r.drop(unit.PanelThickness)
}

// capLeftOut lays on top of a stack the caul that was told beside its layers: "four panels
// in a 4 inch opening with a 3/4 sled and 1/2 caul". Of several cauls, or where one that is not
// said to be on top may lie on each of several sleds, it cannot be told where they lie, and the
// layers are asked for.
func (r *reader) capLeftOut() {
	stack, caul := r.measureOf(unit.StackLayers), r.measureOf(unit.CaulThickness)
	if stack < 0 || caul < 0 || !r.asksFor(Stack) && !r.has(unit.Opening) {
		return
	}
	layers, _ := r.bound[stack].fact.Value.(unit.Layers)
	if slices.ContainsFunc(layers, func(l unit.Layer) bool { return l.Part == "caul" }) {
		return
	}
	i := r.bound[caul].from
	from, to := r.clause(i)
	top := r.liesOnTop(i) || r.oneCaul(i)
	if at := r.within(from, to, kindNoun, "caul"); !top && (ownSleds(layers) || at >= 0 && isPlural(r.items[at].word) || r.opensWithin(from, to, "each", "every", "apiece", "between")) {
		r.refuse(unit.StackLayers, r.textOf(min(i, max(at, from)), max(i, at)), "")
		r.unuse(r.bound[stack].fact.Text)
		r.drop(unit.StackLayers)
		return
	}
	r.bound[stack].fact.Value = append(layers, r.layerOf("caul", caul))
	r.bound[stack].fact.Text += ", " + r.items[i].text
	r.drop(unit.CaulThickness)
}

// ownSleds reports whether the work lies on two sleds or more.
func ownSleds(ls unit.Layers) bool {
	n := 0
	for k := 1; k < len(ls); k++ {
		if ls[k-1].Part == "sled" && ls[k].Part != "sled" {
			n++
		}
	}
	return n > 1
}

// oneSled: of "four 3/4 panels with a 3/4 sled" there is one sled, below them all.
func (r *reader) oneSled(i int) bool {
	return r.word(i-1, "a", "one") && r.is(i+1, kindNoun, "sled") && !isPlural(r.items[i+1].word) && !r.opensWithin(0, len(r.items), "each", "every", "per", "between", "apiece", "under", "own")
}

// sledUnderEach lays each of several panels on a sled of its own where the sleds are told by
// their thickness alone: "3 panels 3/4 thick, sleds 1/2, caul 3/4". Cauls lie on each.
func (r *reader) sledUnderEach() {
	stack, count := r.measureOf(unit.StackLayers), r.measureOf(unit.PanelCount)
	if stack < 0 || count < 0 || !r.sledsUncounted() {
		return
	}
	n, _ := r.bound[count].fact.Value.(unit.Number)
	layers, _ := r.bound[stack].fact.Value.(unit.Layers)
	of := map[string]unit.Layers{}
	for _, l := range layers {
		of[l.Part] = append(of[l.Part], l)
	}
	strips, mats := of["strips"], of["mat"]
	if len(strips) == 1 {
		strips = slices.Repeat(strips, int(min(n, mostPanelsUp+1)))
	}
	simple := len(of["sled"]) == 1 && len(mats) <= 1 && len(of["caul"]) <= 1 && len(of["sled"])+len(of["strips"])+len(mats)+len(of["caul"]) == len(layers)
	if n < 2 || n > mostPanelsUp || len(strips) != int(n) || !simple {
		return
	}
	each, top := unit.Layers(nil), of["caul"]
	if at := r.within(0, len(r.items), kindNoun, "caul"); at >= 0 && isPlural(r.items[at].word) {
		each, top = top, nil
	}
	var built unit.Layers
	for k, panel := range strips {
		built = append(built, of["sled"][0], panel)
		if k < len(strips)-1 || !r.liesBetween("mat") {
			built = append(built, mats...)
		}
		built = append(built, each...)
	}
	r.bound[stack].fact.Value = append(built, top...)
}

// sledsUncounted reports whether the only word for a sled tells of several, not of how many.
func (r *reader) sledsUncounted() bool {
	at := r.within(0, len(r.items), kindNoun, "sled")
	return at >= 0 && r.within(at+1, len(r.items), kindNoun, "sled") < 0 && isPlural(r.items[at].word) && !r.countsSleds()
}
