package bot

import (
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// glossary explains the words of the trade, each in a sentence or two.
var glossary = map[string]string{
	"caul":           "A caul is a stiff board laid on top of the work to spread the pressure and keep it flat. The sled is under the work, the caul on it.",
	"sled":           "A sled is the flat board that the work lies on and goes into the press with. Keep its edge just behind the strips' edge.",
	"bar":            "A side bar is the batten that lies against the panel's edge. The film pushes it sideways: the taller the part that counts, the harder.",
	"fence":          "A fence is the fixed stop on the far side that the strips are pushed against. It must stand lower than the work.",
	"wedge":          "A wedge is driven between fence and strips to squeeze the joints before the vacuum. Once pressed down, friction holds that squeeze.",
	"mat":            "A mat is a soft layer on strips that differ in thickness, so that the thin ones get pressed too.",
	"film":           "Film is the plastic sheet that the air presses on the work. It pushes on every face that it can reach, also behind a bar.",
	"bag":            "A bag is a press made of film all round; a frame press has a bed and a frame with film on top.",
	"frame":          "A frame press is a bed with a frame and film over it; its opening is the clear height inside.",
	"bed":            "The bed is the table of the press that sleds lie on.",
	"core":           "A core is the board that faces are glued onto: ply, MDF, particleboard or solid wood.",
	"strips":         "Strips, staves, slats: the pieces that are glued edge to edge into a panel.",
	"vacuum":         "Vacuum is how far the press is below the air outside. 25 inHg, 85 kPa and 0.85 bar are the same, and press about 12 psi on the face.",
	"inhg":           "inHg is inches of mercury, what most gauges show: 1 inHg is 3.4 kPa or half a psi. At sea level there are about 29.9 to be had.",
	"ambient":        "Ambient is the pressure of the air in the shop. It is the most that a vacuum can press with, and it falls with height.",
	"side pressure":  "Side pressure is what squeezes the edge joints: by the rule, vacuum times bar height over strip thickness, less what friction eats on the way.",
	"face pressure":  "Face pressure is what presses down on the work: the vacuum itself.",
	"far joint":      "The far joint is the one furthest from the bar. It gets least, since friction under the strips eats the push on the way.",
	"open time":      "Open time is how long spread glue may lie open before the parts must touch.",
	"closed time":    "Closed time is how long you have from the parts touching to full pressure.",
	"press time":     "Press time is how long the work has to stay under pressure. Under film it is longer, since the water cannot get out.",
	"contact":        "Contact is the least pressure at which the glue touches both sides all along; a joint that closes hand-tight needs no more.",
	"proud":          "Proud means standing higher than its neighbour. Work has to stand a little proud of the fence, or the fence takes the pressure.",
	"crook":          "Crook is a strip bent in its plane, like a banana on the table: it leaves a gap at the joint.",
	"cup":            "Cup is a board hollow across its width.",
	"bow":            "Bow is a board bent along its length, like a ski.",
	"emc":            "EMC is the moisture that wood settles at in given air; at 70 °F and 50 % humidity about 9 %.",
	"mc":             "MC is moisture content: the water in the wood, per cent of its dry weight. 6 to 14 % is right for gluing.",
	"rh":             "RH is relative humidity, how full of water the air is.",
	"quarter sawn":   "Quarter sawn boards have their rings upright; they move least in width.",
	"flat sawn":      "Flat sawn boards have their rings lying; they move most in width and cup.",
	"pva":            "PVA is white wood glue. Yellow glue (aliphatic) is its quicker cousin; type I or D4 stands water.",
	"aliphatic":      "Aliphatic is yellow wood glue.",
	"epoxy":          "Epoxy is two-part glue that fills gaps and wants little pressure; too much starves the joint.",
	"uf":             "UF is urea-formaldehyde, a powder glue with long times that wants a warm shop.",
	"starved joint":  "A starved joint has had its glue squeezed out.",
	"breather":       "A breather is an open path for the air under the film to the pump. Without it the middle gets no pressure.",
	"leak":           "A leak shows with the pump off: how far the gauge falls in a minute.",
	"overfill":       "Overfill is strips that are together wider than the opening. They spring up and squeeze the joints when pressed flat.",
	"tent":           "Tenting is film that bridges an inside corner instead of lying in it; the bridged part does not press.",
	"trim":           "Trim is extra width that is sawn off at the end.",
	"lay-up":         "Lay-up is spreading the glue and putting the work together, up to full pressure.",
	"second check":   "A second check is another person measuring the load before it goes in and telling me what they found. Two pairs of eyes catch the wrong bar; a ruined panel is dear.",
	"altitude":       "The higher the shop, the less air there is to press with: about 17 % less at 5000 ft.",
	"joint":          "A joint is the glue line between two strips.",
	"panel":          "A panel is the board that comes of strips glued edge to edge.",
	"batten":         "A batten is another word for the side bar.",
	"hand-tight":     "Hand-tight means that the joint closes with no more than the push of your hands.",
	"4/4":            "4/4 is rough lumber by quarters of an inch: 4/4 is 1 in rough, usually 13/16 to 3/4 in once planed.",
	"nominal":        "Nominal sizes are names: a 1x6 measures 3/4 by 5 1/2 in.",
	"reservoir":      "A reservoir stores vacuum. It must be made for full vacuum: never glass, never an old tank.",
	"creep":          "Creep is wood giving way slowly under a steady push, so that a wedge's squeeze fades.",
	"cfm":            "cfm is cubic feet of air a minute, how fast a pump is. 1 cfm is about half a litre a second.",
	"veneer":         "A veneer is a thin face glued onto a core. It is pressed by the face pressure alone.",
	"hide":           "Hide glue is the old animal glue; hot it grabs in a minute, liquid it stays open longer.",
	"polyurethane":   "Polyurethane glue cures with the water in wood and air, foams, and stands weather.",
	"resorcinol":     "Resorcinol is a dark, fully waterproof boat glue that wants warmth and clamp pressure.",
	"spread":         "Spread is how much glue goes on: grams on a square metre, or pounds on a thousand square feet.",
	"clamp pressure": "Clamp pressure is what clamps are advised to give: 100 to 250 psi by wood, far more than a face gets from vacuum.",
}

const unitsSays = "I take inches, feet, mm, cm and m; fractions like 2 1/4; inHg, psi, kPa, bar, mbar and mmHg; °F and °C; cfm and l/min; oz, g, lb and kg. Bare numbers follow this shop's habit"

const helpSays = "Tell me what is in the press and what you want to know, like “5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue”. I answer on side and face pressure, flattening, stacks, choosing strips, glue and times, pumps, wood movement, whole loads and a day's schedule. “post it” puts a load in the book, “why” shows the working, “what is a caul” explains a word, “our setup” keeps your press."

// words explains trade words, the units, or the bot itself.
func (t *turn) words() Reply {
	r := Reply{About: grammar.Words, Verdict: engine.None, Read: unit.Facts{}}
	r.note(t.phrase.Unused...)
	for i, line := range explained(t.phrase.Terms) {
		kind := Figure
		if i == 0 {
			kind = Headline
		}
		if line == unitsSays {
			habit := "inches and °F."
			if t.settings.Metric {
				habit = "millimetres and °C."
			}
			line += ": " + habit
		}
		r.say(kind, line)
	}
	return r
}

// explained returns a sentence for each term, for help where there is none.
func explained(terms []string) []string {
	var out, unknown []string
	for _, term := range terms {
		line, ok := explain(term)
		switch {
		case !ok:
			unknown = append(unknown, line)
		case !containsFold(out, line):
			out = append(out, line)
		}
	}
	switch {
	case len(out) > 0:
		return out
	case len(unknown) > 0:
		return unknown
	}
	return []string{helpSays}
}

// explain returns what a term means; ok is false where it is not known.
func explain(term string) (says string, ok bool) {
	key := strings.ToLower(strings.TrimSpace(term))
	words := strings.Fields(strings.NewReplacer("?", " ", ",", " ", ".", " ").Replace(key))
	switch {
	case key == "" || slices.Contains(words, "help"):
		return helpSays, true
	case slices.Contains(words, "units") || slices.Contains(words, "unit") || strings.HasSuffix(key, "you take"):
		return unitsSays, true
	}
	if s, ok := lookUp(key); ok {
		return s, true
	}
	// a whole question may stand here: explain each word of the trade in it,
	// the longest first
	var out []string
	for n := min(3, len(words)); n > 0; n-- {
		for i := 0; i+n <= len(words); i++ {
			if s, ok := lookUp(strings.Join(words[i:i+n], " ")); ok && !slices.Contains(out, s) {
				out = append(out, s)
				words = slices.Delete(words, i, i+n)
			}
		}
	}
	if len(out) == 0 {
		return "I do not know the word " + quoted(term) + ".", false
	}
	return strings.Join(out, "\n"), true
}

func lookUp(key string) (string, bool) {
	for _, k := range []string{key, strings.TrimSuffix(key, "s"), key + "s", strings.ReplaceAll(key, " ", "-"), strings.ReplaceAll(key, "-", " ")} {
		if s, ok := glossary[k]; ok {
			return s, true
		}
	}
	s, ok := glossary[synonyms[key]]
	return s, ok
}

// synonyms lead to the word that is explained.
var synonyms = map[string]string{
	"side bar": "bar", "stave": "strips", "staves": "strips", "slat": "strips", "slats": "strips", "strip": "strips",
	"white glue": "pva", "yellow glue": "aliphatic", "glue": "pva", "moisture content": "mc", "relative humidity": "rh",
	"humidity": "rh", "quartersawn": "quarter sawn", "flatsawn": "flat sawn", "gap": "crook", "barometer": "ambient",
	"assembly time": "closed time", "clamp time": "press time", "first joint": "far joint", "plywood": "core", "mdf": "core",
	"checked": "second check", "check": "second check", "tenting": "tent", "press": "frame", "press opening": "frame",
	"opening": "frame", "moisture": "mc", "layup": "lay-up", "lay up": "lay-up", "gauge": "vacuum", "hide glue": "hide",
	"urea-formaldehyde": "uf", "pump": "cfm", "preload": "wedge", "shim": "wedge", "spring": "overfill", "starved": "starved joint",
}
