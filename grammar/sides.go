package grammar

import "strings"

// cupSides are the words for the sides of a cupped board: on top of the arch, and
// within it.
var cupSides = map[string][]string{
	"hump":   {"hump", "humps", "crown", "belly", "bump", "convex", "convex side", "hump side", "hump sides", "crown side", "crown sides", "crowned", "dome", "domed side", "humped", "humped side", "bellied side", "rounded side", "arched side"},
	"hollow": {"hollow", "hollows", "cup", "cup side", "cup sides", "hollow sides", "concave", "concave side", "hollow side", "dish", "dished", "dished side", "cupped", "cupped side", "dip", "scooped side", "hollowed side"},
}

// upward and downward say where a side faces.
var (
	upward   = []string{"up", "upward", "upwards", "uppermost", "on top", "to the top", "at the top", "is uppermost", "faces the film", "against the film", "facing up", "is up", "is on top", "is facing up", "faces up", "to the sky", "skyward"}
	downward = []string{"down", "downward", "downwards", "underneath", "on the bottom", "facing down", "is down", "is underneath", "is facing down", "faces down", "to the bed", "is on the bottom", "to the bottom", "at the bottom", "to the sled", "on the sled", "against the sled", "towards the sled"}
)

// cupEntries say which side of a cup is up. What has its hollow down has its hump
// up.
func cupEntries() []entry {
	said := map[string][]string{}
	for side, names := range cupSides {
		other := "hollow"
		if side == "hollow" {
			other = "hump"
		}
		for _, n := range names {
			for _, up := range upward {
				said[side] = append(said[side], n+" "+up)
			}
			for _, down := range downward {
				said[other] = append(said[other], n+" "+down)
			}
		}
	}
	return []entry{
		{kindFact, "cup_up=hump", strings.Join(said["hump"], ",")},
		{kindFact, "cup_up=hollow", strings.Join(said["hollow"], ",")},
	}
}

// pressedDown tells "will it suck the hump down" from a side that lies down.
func (r *reader) pressedDown(i int) bool {
	if !strings.HasSuffix(r.items[i].word, " down") {
		return false
	}
	for j := i - 1; j >= 0 && j >= i-4 && !r.isBreak(j); j-- {
		if r.word(j, "pull", "pulls", "suck", "sucks", "press", "presses", "get", "gets", "bring", "push", "squash", "hold", "holds", "take", "flatten", "keep", "force", "lay", "lays", "iron", "irons", "draw", "draws", "coax", "squeeze", "mash") || r.is(j, kindVacuum, "pull") {
			return true
		}
	}
	return false
}
