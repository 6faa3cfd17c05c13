package bot

import "presshand/engine"

// solvingSays are the sentences on questions answered backwards, and on formulas
// that go beyond what they were made for. {sought} stands for what is solved for.
var solvingSays = map[engine.Reason]string{
	engine.ReasonJumps:         "That figure cannot be had exactly: it jumps here. This is a little beyond the jump, on the side that is enough.",
	engine.ReasonNotExactly:    "That cannot be had exactly: the figure jumps over it here.",
	engine.ReasonFormulaEnds:   "Beyond that the formula ends: the {limit_of} has to be {limit_is}.",
	engine.ReasonAnyUpTo:       "Any up to {sought} has enough; I looked no further.",
	engine.ReasonAnyFrom:       "Any from {sought} on has enough.",
	engine.ReasonSureFrom:      "To be sure of it, whatever the wood, the dial and the side that is up: {sought}.",
	engine.ReasonDeepCurl:      "So deep a curl, more than a tenth of its span, takes more than this formula says.",
	engine.ReasonStubbyStrip:   "A strip under ten widths long is stiffer than a slender one; pulling it over can take somewhat less or more than I say.",
	engine.ReasonSteepRise:     "A middle that stands up by more than a tenth of the width is no shallow arch; take what it needs to lie down as a guess.",
	engine.ReasonMatOutsideFit: "The mat is squashed less than a quarter or more than 60 %; its law was fitted between, so take this with care.",
}
