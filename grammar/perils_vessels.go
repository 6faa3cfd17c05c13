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
