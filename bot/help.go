package bot

import (
	"maps"
	"slices"
	"strings"
	"unicode"

	"presshand/grammar"
)

// A help tells what can be asked about one topic. Its examples are shown as
// they are, and are tested: each is answered, about its topic, with nothing
// left unread.
type help struct {
	name   string // what is said behind “help”
	about  grammar.Topic
	says   string
	inch   []string // examples for a shop set to inches
	metric []string // and for one set to millimetres
}

var helps = []help{
	{"side", grammar.Side, "What squeezes the edge joints of a panel. I need how many strips, how wide and how thick, the bar's height and the vacuum; the glue and what lies under the strips make it better.",
		[]string{"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue", "what bar for 50 psi at the far joint, 5 strips 2 wide, 1/4 thick, 25 inHg, waxed sled"},
		[]string{"5 strips 60 wide, 6 thick, 25 mm bar, 0.85 bar, pva", "what bar for 350 kPa at the far joint, 5 strips 50 wide, 6 thick, 0.85 bar, waxed sled"}},
	{"face", grammar.Face, "What presses down on the work. I need the vacuum, and the size for the whole force.",
		[]string{"how many tons on a 4x8 at 25 inHg", "24 inHg at 5280 ft on a 24x48 panel"},
		[]string{"how many tons on a 600 x 1200 panel at 0.85 bar", "0.8 bar at 1600 m on a 600 x 1200 panel"}},
	{"flatten", grammar.Flatten, "Whether the vacuum can press a cupped or bowed board flat. I need the cup, the thickness, the width and the wood.",
		[]string{"will 24 inHg flatten 1/8 cup in 3/8 oak 5 wide"},
		[]string{"will 0.8 bar flatten a 3 mm cup in 10 mm oak 120 wide"}},
	{"stack", grammar.Stack, "Whether a pile fits the press, and what stands proud. Tell it bottom first.",
		[]string{"stack: sled 3/4, fence 1/4, strips 5/16, plastic, caul 3/4, press opening 4 in"},
		[]string{"stack: sled 18, fence 6, strips 8, plastic, caul 18, press opening 100 mm"}},
	{"strips", grammar.Strips, "Which strips make up a width. I need what you have and how wide it must be.",
		[]string{"got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide"},
		[]string{"got 12 at 55, 9 at 75, 7 at 95; need 1200 wide"}},
	{"glue", grammar.Glue, "How much glue, and how much time. I need the glue, the panels and the strips.",
		[]string{"how much pva for 8 panels 24x48 of 2 1/4 strips 3/4 thick"},
		[]string{"how much pva for 8 panels 600 x 1200 of 60 mm strips 18 thick"}},
	{"pump", grammar.Pump, "How long a pump takes. I need its size, the room it has to empty and the vacuum.",
		[]string{"how long to pull a 4x8x3in frame to 24 inHg with 5 cfm"},
		[]string{"how long to pull 300 l to 0.8 bar with 140 l/min"}},
	{"move", grammar.Move, "How far a panel swells, shrinks or cups. I need the wood, its moisture and the air that it will live in.",
		[]string{"30 wide hard maple flat sawn pressed at 7%, house at 35% rh 70f"},
		[]string{"750 wide hard maple flat sawn pressed at 7%, house at 35% rh 21 C"}},
	{"load", grammar.Load, "All of a load at once. Begin with “plan” and tell what there is; the verdict is that of its worst part.",
		[]string{"plan: 5 strips 2 1/4 wide, 1/4 thick, 48 long, 1 in bar, 25 inHg, yellow glue, 68F"},
		[]string{"plan: 5 strips 60 wide, 6 thick, 1200 long, 25 mm bar, 0.85 bar, pva, 20 C"}},
	{"schedule", grammar.Schedule, "When a day's loads are done. I need how many panels, how many presses, the glue, the shop's temperature and the start.",
		[]string{"14 panels 24x48, two presses, start 7:30, pva at 65f"},
		[]string{"14 panels 600 x 1200, two presses, start 7:30, pva at 18 C"}},
	{"book", grammar.Book, "The load book, by turns in the thread of a load: one person posts it, another measures it, then it goes in, comes out and gets its result.",
		[]string{"post it", "1 checked, bar 1 in, strips 1/4, gauge 25", "1 in", "what's in the press", "1 out", "1 result: good", "load 1", "last five with pva"},
		[]string{"post it", "1 checked, bar 25 mm, strips 6 mm, gauge 0.85 bar", "1 in", "what's in the press", "1 out", "1 result: good", "load 1", "last five with pva"}},
	{"setup", grammar.Profile, "What this room has, so that you need not say it each time.",
		[]string{"our press is a 4x8, 4 in opening, 5 cfm, we're at 5280 ft", "our setup", "pictures off"},
		[]string{"our press is 1200 x 2400, 100 mm opening, 140 l/min, we're at 1600 m", "our setup", "pictures off"}},
}

// examples are those for a shop's units.
func (h help) examples(metric bool) []string {
	if metric {
		return h.metric
	}
	return h.inch
}

// lines tell the help, with an example on each line.
func (h help) lines(metric bool) []string {
	out := []string{h.says}
	for _, e := range h.examples(metric) {
		out = append(out, "“"+e+"”")
	}
	return out
}

// helpFor finds the topic of a message that is nothing but “help side”.
func helpFor(text string) (help, bool) {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	if len(words) < 2 || len(words) > 4 || words[0] != "help" {
		return help{}, false
	}
	for _, h := range helps {
		if slices.Contains(words, h.name) {
			return h, true
		}
	}
	return help{}, false
}

// helpSays tells what can be asked.
func helpSays(metric bool) string {
	names := make([]string, len(helps))
	for i, h := range helps {
		names[i] = h.name
	}
	amend := "what about 22 inHg"
	if metric {
		amend = "what about 0.8 bar"
	}
	return "Tell me what is in the press and what you want to know, like “" + helps[0].examples(metric)[0] + "”. " +
		"“help " + names[0] + "” tells more, and so for " + strings.Join(names[1:], ", ") + ". " +
		"In a thread, “" + amend + "” changes the last question and “why” shows the working. " +
		"“what is a caul” explains a word, “words” lists them, “units” says what I read."
}

// wordsSays lists the words that are explained.
func wordsSays() string {
	return "Ask “what is a caul”, or about any of these: " + strings.Join(slices.Sorted(maps.Keys(glossary)), ", ") + "."
}
