package grammar

import "strings"

// Nothing pumps any longer when one of these stops: the current, or the pump.
var (
	suppliers = []string{"power", "electricity", "electric", "current", "mains", "juice", "utility", "grid", "supply", "pump", "the lights"}
	stopping  = []string{
		"fails", "failed", "failing", "failure", "goes", "goes out", "goes off", "goes down", "going out", "goes away", "went", "went out", "went off", "is out", "is off", "is gone", "stays off", "stays out", "out", "off",
		"cuts out", "cut out", "cuts us off", "cut us off", "cuts off", "drops out", "dropped out", "dies", "died", "quits", "quit", "trips", "tripped", "stops", "stopped", "packs up", "packed up", "shuts off", "shut off", "shuts down", "shut down", "switched off", "turned off", "outage", "cut", "loss",
	}
)

// outageEntries ask how long a press holds without its pump.
func outageEntries() []entry {
	var said []string
	for _, s := range suppliers {
		for _, stop := range stopping {
			if s == "pump" && in(stop, "goes", "went", "quits", "stops", "cuts out", "cuts off", "shuts off") {
				continue // "at 4 kPa absolute" tells how deep it pulls
			}
			said = append(said, s+" "+stop)
		}
	}
	return []entry{{kindAsk, "pump:hold_s", strings.Join(said, ",")}}
}
