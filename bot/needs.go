package bot

import (
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// A want is how a missing field is asked for.
type want struct {
	what         string // "how thick the strips are"
	inch, metric string // an example of an answer
}

// wants lists every field that an answer can lack.
var wants = map[unit.Field]want{
	unit.StripCount:      {"how many strips", "5 strips", "5 strips"},
	unit.StripWidth:      {"how wide the strips are", "2 1/4 wide", "60 mm wide"},
	unit.StripWidths:     {"how wide the strips are", "2 1/4 wide", "60 mm wide"},
	unit.StripThickness:  {"how thick the strips are", "1/4 thick", "6 mm thick"},
	unit.StripThickest:   {"how thick the thickest strip is", "5/16 to 3/8 thick", "8 to 9 mm thick"},
	unit.StripThinnest:   {"how thin the thinnest strip is", "5/16 to 3/8 thick", "8 to 9 mm thick"},
	unit.StripLength:     {"how long the strips are", "48 long", "1200 long"},
	unit.PanelWidth:      {"how wide the panel is", "24 wide", "600 wide"},
	unit.PanelLength:     {"how long the panel is", "24x48 panel", "600x1200 panel"},
	unit.PanelCount:      {"how many panels", "8 panels", "8 panels"},
	unit.PanelThickness:  {"how thick the panels are", "1/2 thick panels", "12 mm panels"},
	unit.Species:         {"which wood", "hard maple", "beech"},
	unit.Vacuum:          {"what the gauge shows", "25 inHg", "0.85 bar"},
	unit.Altitude:        {"how high the shop lies", "at 5280 ft", "at 1600 m"},
	unit.Ambient:         {"what the barometer shows", "barometer 29.2 inHg", "barometer 990 hPa"},
	unit.BarHeight:       {"how tall the side bar is, or that there is none", "1 in bar", "25 mm bar"},
	unit.WedgeRatio:      {"the wedge's taper", "1:12 wedge", "1:12 wedge"},
	unit.WedgeForce:      {"how hard the wedge is driven", "driven with 200 lb", "driven with 900 N"},
	unit.GlueClass:       {"which glue", "yellow glue", "pva"},
	unit.ShopTemp:        {"how warm the shop is", "65F in the shop", "18 °C in the shop"},
	unit.WoodMoisture:    {"how wet the wood is", "8% mc", "8 % mc"},
	unit.ServiceHumidity: {"how dry the place is where it will live", "house at 35% rh", "house at 35 % rh"},
	unit.Cup:             {"how much it cups", "1/8 cup", "3 mm cup"},
	unit.Bow:             {"how much it bows", "1/4 bow", "6 mm bow"},
	unit.StackLayers:     {"how thick each layer is, from the bottom", "sled 3/4, strips 5/16, film, mat 1/4, sled 3/4", "sled 19, strips 8, film, mat 6, sled 19"},
	unit.SledThickness:   {"how thick the sled is", "3/4 sled", "19 mm sled"},
	unit.MatThickness:    {"how thick the mat is", "3/8 mat", "10 mm mat"},
	unit.CaulThickness:   {"how thick the caul is", "3/4 caul", "19 mm caul"},
	unit.BarCount:        {"how many bars", "bars on both sides", "bars on both sides"},
	unit.BarWidth:        {"how wide the bar is", "3/4 wide bar", "19 mm wide bar"},
	unit.PressCount:      {"how many presses", "two presses", "two presses"},
	unit.Opening:         {"how much the press opens", "4 in opening", "100 mm opening"},
	unit.CoreThickness:   {"how thick the core is", "on 3/4 ply", "on 18 mm ply"},
	unit.CoreKind:        {"what the core is", "on 3/4 mdf", "on 18 mm mdf"},
	unit.PumpSpeed:       {"how fast the pump is", "5 cfm pump", "140 l/min pump"},
	unit.PressVolume:     {"how big the press is", "4x8 frame 3 in deep", "1200 x 2400 frame 75 deep"},
	unit.Leak:            {"how fast it leaks with the pump off", "loses 2 inHg in 10 min", "loses 60 mbar in 10 min"},
	unit.StockPiles:      {"which strips you have", "12 at 2 1/8, 9 at 3", "12 @ 54, 9 @ 76"},
	unit.TargetWidth:     {"how wide it has to come out", "need 48 wide", "need 600 wide"},
	unit.StartTime:       {"when you start", "start 7:30", "start 7:30"},
	unit.Deadline:        {"when it has to be out", "out by 16:00", "out by 16:00"},
	unit.LoadNumber:      {"which load", "load 14", "load 14"},
	unit.BedWidth:        {"how big the bed is", "4x8 bed", "1220x2440 bed"},
	unit.BedLength:       {"how big the bed is", "4x8 bed", "1220x2440 bed"},
	unit.Overfill:        {"how much the strips run over the opening", "1/16 over", "1.5 mm over"},
	unit.Gap:             {"the worst hand-tight gap", "1/32 gap", "0.5 mm gap"},
	unit.BagWidth:        {"how wide the bag lies flat", "54 in bag", "1400 mm bag"},
	unit.BagLength:       {"how long the bag is", "bag 10 ft long", "bag 3 m long"},
	unit.PressTime:       {"how long it stays in the press", "leave it in 2 hours", "leave it in 2 hours"},
	unit.LayupPanel:      {"how long one panel takes to lay up", "8 min a panel", "8 min a panel"},
}

// ask asks for what is missing, in one short question with an example.
func (r *Reply) ask(st style, p grammar.Phrase) {
	for _, c := range p.Clashes {
		r.ask1(clashSays(c))
	}
	for _, x := range p.Refused {
		r.ask1(cannotBe(x))
	}
	var what, examples []string
	for _, f := range r.Needs {
		w, ok := wants[f]
		if !ok {
			w = want{what: strings.ReplaceAll(string(f), "_", " ")}
		}
		example := w.inch
		if st.metric {
			example = w.metric
		}
		if doubted(p, f) || containsFold(what, w.what) {
			continue
		}
		what = append(what, w.what)
		if example != "" && !containsFold(examples, example) {
			examples = append(examples, example)
		}
	}
	if len(what) > 3 {
		what, examples = what[:3], examples[:min(3, len(examples))]
	}
	if len(what) == 0 {
		return
	}
	q := "Tell me " + listed(what, "and")
	if len(examples) > 0 {
		q += ", like “" + strings.Join(examples, ", ") + "”"
	}
	r.ask1(q + ".")
}

// ask1 puts a question: first where nothing could be answered, else last.
func (r *Reply) ask1(text string) {
	if r.Verdict == engine.Ask && !r.headed() {
		r.Lines = append([]Line{{Headline, text}}, r.Lines...)
		return
	}
	r.say(Question, text)
}

func (r *Reply) headed() bool { return len(r.Lines) > 0 && r.Lines[0].Kind == Headline }

// doubted reports whether the message's own doubts ask for f already.
func doubted(p grammar.Phrase, f unit.Field) bool {
	for _, c := range p.Clashes {
		if statedField(c.Field) == f {
			return true
		}
	}
	for _, x := range p.Refused {
		if statedField(x.Field) == f {
			return true
		}
	}
	return false
}

func clashSays(c grammar.Clash) string {
	return "You gave " + listed(eachQuoted(c.Texts), "and") + " for " + nameOf(c.Field) + ". Which is it?"
}

func cannotBe(x grammar.Refusal) string {
	if x.Field == unit.StackLayers && x.Want == "" {
		return "I cannot tell what " + quoted(x.Text) + " makes of the stack. Tell me every layer of it from the bottom, like “sled, strips, mat, sled, strips” with how thick each is."
	}
	text := quoted(x.Text) + " cannot be " + nameOf(x.Field)
	if x.Field == "" {
		text = quoted(x.Text) + " is no number that I can use"
	}
	if x.Want != "" {
		text += "; it has to be " + strings.TrimSuffix(x.Want, ".")
	}
	return text + "."
}

// listed joins words as one says them: "a, b and c".
func listed(words []string, last string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}
