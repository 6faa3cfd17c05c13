package grammar

import "strings"

// vesselEntries are the wordings of something that is to stand in for a tank under vacuum:
// "as the vacuum tank", "as my vac reservoir".
func vesselEntries() []entry {
	var said []string
	for _, whose := range []string{"", "a ", "an ", "the ", "my ", "our "} {
		for _, air := range []string{"vacuum ", "vac "} {
			for _, what := range []string{"tank", "reservoir", "reserve", "vessel", "chamber", "accumulator", "buffer", "receiver"} {
				said = append(said, "as "+whose+air+what)
			}
		}
	}
	return []entry{{kindPeril, "vessel", strings.Join(said, ", ")}}
}

// holders are what air is pumped out of.
var holders = []string{"lid", "lids", "reservoir", "chamber", "vessel", "tank", "accumulator", "trap", "pot"}

// holdsVacuum reports whether the safety glass or the sight glass at item i may be part of what
// air is pumped out of; the sight glass for a pump's oil is not.
func (r *reader) holdsVacuum(i int) bool {
	if r.wordIn(holders...) || r.mentions(kindNoun, "reservoir") {
		return true
	}
	if r.word(i-1, "sight") && (r.wordIn("oil") || r.mentions(kindNoun, "pump")) {
		return false
	}
	return r.mentions(kindVacuum) || r.pressureSaid() || r.wordIn("vacuum", "vac")
}

// glazes reports whether the polycarbonate or the window at item i is for something that no air
// is pumped out of: "cabinet with viewing window", "face a polycarbonate on 3/4 ply".
func (r *reader) glazes(i int) bool {
	from, to := r.sentence(i)
	if r.opensWithin(from, to, holders...) || r.within(from, to, kindNoun, "reservoir", "press", "frame", "bag", "bed") >= 0 {
		return false
	}
	pumped := r.mentions(kindVacuum) || r.pressureSaid() || r.pumping()
	return !pumped || r.opensWithin(from, i, "face", "facing", "cabinet", "cupboard", "door", "doors", "veneer", "laminate")
}
