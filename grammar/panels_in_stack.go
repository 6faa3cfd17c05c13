package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// mostPanelsUp is more than anybody stacks in one press.
const mostPanelsUp = 20

// panelsLeftOut puts into a stack the panels that were counted beside its layers: "3/4 sled,
// 1/2 caul, two panels 7/8 each and a 1/4 mat between". The first sled carries them, a mat
// lies between them where it is said to, and the rest lies on top.
func (r *reader) panelsLeftOut() {
	stack, thick, count := r.measureOf(unit.StackLayers), r.measureOf(unit.PanelThickness), r.measureOf(unit.PanelCount)
	if stack < 0 || thick < 0 || count < 0 {
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
