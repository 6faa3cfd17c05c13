package grammar

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
)

// soughtWords tell a field that a question can be solved for, told by the part and
// its size ("how wide a bar", "what bar width") or in words of its own.
type soughtWords struct {
	field unit.Field
	part  string
	how   string // the adjective
	size  string // the noun
	said  string // in other words
	near  string // what each of its wordings holds: "a|b;c" is one of a and b, and c
}

const (
	stripWords = `(strips?|slats?|staves?|boards?|pieces?|lams?)`
	stripNear  = "strip|slat|stave|board|piece|lam"
	panelWords = `(panels?|glue.?ups?|tops?)`
	panelNear  = "panel|glue|top"
	houseWords = `(the |her |his |their |my |our )*(house|home|room|flat|shop it goes to|kitchen)`
)

var soughtTable = []soughtWords{
	{unit.Cover, "", "", "", `how (high|far up|tall) (must|should|does|do|has) [^.,;?]*(bar|batten) [^.,;?]*covered|how much cover|what cover|how high must the cover`, "cover"},
	{unit.BarWidth, `(side )?(bar|batten)`, `(wide|broad|fat)`, `width`, ``, "bar|batten;wide|broad|fat|width"},
	{unit.BarHeight, `(side )?(bar|batten)`, `(high|tall)`, `height`, `(what|which|whats|what.s) (is |are )?(the )?(shortest|lowest|smallest|least|shallowest) (side )?(bar|batten)`, "bar|batten;high|tall|height|short|low|small|least"},
	{unit.StripWidth, stripWords, `(wide|broad|narrow)`, `width`, `(what|which|whats) (is |are )?(the )?widest strips?`, stripNear + ";wide|broad|narrow|width"},
	{unit.StripLength, stripWords, `(long|short)`, `length`, `(what|which|whats) (is |are )?(the )?longest strips?`, stripNear + ";long|short|length"},
	{unit.StripThickness, stripWords, `(thick|thin)`, `thickness`, ``, stripNear + ";thick|thin"},
	{unit.PanelLength, panelWords, `(long|short)`, `length`, `(what|which|whats) (is )?(the )?longest panel`, panelNear + ";long|short|length"},
	{unit.PanelWidth, panelWords, `(wide|broad)`, `width`, ``, panelNear + ";wide|broad|width"},
	{unit.CaulThickness, `(caul|cauls)`, `(thick|thin)`, `thickness`, `what caul`, "caul"},
	{unit.CoreThickness, `(core|substrate)`, `(thick|thin)`, `thickness`, `what core`, "core|substrate"},
	{unit.SledThickness, `sled`, `(thick|thin)`, `thickness`, `what sled`, "sled"},
	{unit.FenceThickness, `fence`, `(thick|thin|high|tall|low)`, `(thickness|height)`, `what fence`, "fence"},
	{unit.MatThickness, `mat`, `(thick|thin)`, `thickness`, `what mat`, "mat"},
	{unit.MatFirm, `mat`, `(firm|stiff|hard|soft)`, `(firmness|stiffness)`, ``, "mat;firm|stiff|hard|soft"},
	{unit.ThicknessSpread, "", "", "", `how (much|far) (can|may|could) (the |my |our )?(` + stripWords + `|thickness(es)?) (vary|differ)|how uneven (can|may)|what spread of thickness`, "vary|differ|uneven|spread"},
	{unit.FrictionStated, "", "", "", `(what|which|how much|max|maximum|most|highest) (coefficient of )?friction|how slippery`, "friction|slipp"},
	{unit.Tent, "", "", "", `(what|how much|max|maximum|most) tent(ing)?|how (much|high|far) (can|may|could) (the |my )?(bag|film) (tent|bridge)`, "tent|bridge"},
	{unit.Altitude, "", "", "", `(what|which|max|maximum|highest) (altitude|elevation)|how high up|how high (can|could|may) (i|we|the shop) (be|go|work|sit|lie)|up to what (height|altitude|elevation)|how far up the mountain`, "altitude|elevation|how high|height|mountain"},
	{unit.Ambient, "", "", "", `(what|which|how much|least|lowest) (barometer|barometric pressure|air pressure|ambient)`, "barom|air pressure|ambient"},
	{unit.PumpLimit, "", "", "", `(what|which) pump limit|how low must the pump|where (must|may) the pump stop|what limit of the pump`, "pump limit|the pump"},
	{unit.Opening, "", "", "", `how deep (a |can |may |must |could |should )+(the |my |our )?frame|(what|which) (opening|frame depth)|how deep may the frame`, "frame|opening"},
	{unit.LabelSpread, "", "", "", `(what|which|how much|how heavy a|how thin a) (glue )?spread`, "spread"},
	{unit.ServiceTemp, "", "", "", `how (warm|hot|cold|cool) (can|may|must|should|does|could) ` + houseWords + `|what temperature in (the |her |his |their )?(house|home|room)|(what|which) (house|home|room) temp(erature)?`, "house|home|room|flat|shop|kitchen;warm|hot|cold|cool|temp"},
	{unit.ServiceHumidity, "", "", "", `(what|which) (rh|humidity|relative humidity)|how (dry|humid|damp) (can|may|must|should|does|could) ` + houseWords, "rh|humid|dry|damp"},
	{unit.WoodMoisture, "", "", "", `(what|which) (wood moisture|moisture content)|how (dry|wet) (can|may|must|should|do|does) (the |my )?(wood|boards|strips|faces?|veneer)`, "moisture|how dry|how wet"},
	{unit.PanelCount, "", "", "", `how many panels`, "how many panels"},
	{unit.StripCount, "", "", "", `how many ` + stripWords, stripNear + ";how many"},
	{unit.ShopTemp, "", "", "", `how (warm|hot|cold|cool)|what (shop )?temp(erature)?`, "how warm|how hot|how cold|how cool|temp"},
	{unit.WedgeForce, "", "", "", `(what|which|how much) (drive|driving|wedge) force|(what|how much|how many (pounds|lbs?|kilos|kg|newtons)( of)?) force ((do|must|should) (i|we) (need|want|put|use) )?(on|for) (the |my |our )?wedge|how hard (must|should|do|can) (i|we) (have to )?(drive|hit|knock)`, "force|how hard"},
	{unit.WedgeRatio, "", "", "", `what (wedge|taper)( ratio)?|how steep`, "wedge|taper|steep"},
	{unit.Overfill, "", "", "", `how much (overfill|oversize)|how far over`, "much over|far over"},
	{unit.Vacuum, "", "", "", `(how much|what|which|how deep a) (vacuum|vac)`, "much vac|what vac|which vac|deep a vac"},
	{unit.PressVolume, "", "", "", `how (big|large) a (chamber|tank|press|bag|frame|volume)|how much volume|what volume`, "volume|how big a|how large a"},
	{unit.PumpSpeed, "", "", "", `what (size )?(of )?pump|(what|which|whats|what.s) (is )?(the )?(smallest|least) pump|how (big|large|strong) a pump|how many cfm|what cfm|cfm (do |would |that )?(i|we|you)( would|.d)? need|cfm (is )?(needed|required)|m3/h (do )?(i|we) need`, "pump|cfm|m3/h"},
	{unit.Leak, "", "", "", `how (much|big a|large a) leak|what leak`, "much leak|a leak|what leak"},
	{unit.Cup, "", "", "", `what cup|how (deep|big|bad) (can|may|could) (a|the) cup`, "what cup|a cup|the cup"},
	{unit.Bow, "", "", "", `what bow|how (deep|big|bad) (can|may|could) (a|the) bow`, "what bow|a bow|the bow"},
	{unit.Gap, "", "", "", `how much (crook|gap)|how (big|wide|large) a gap|what gap`, "crook|gap"},
}

const (
	modals = `(can|could|may|must|should|do|does|would|has|need|needs|might)`
	whose  = `((i|we|you) (make|rip|cut|use|need|go with) )?(the |my |our |a |an )*`
)

type soughtPattern struct {
	field unit.Field
	near  [][]string
	re    *regexp.Regexp
}

var soughtPatterns = compileSought()

func compileSought() []soughtPattern {
	var out []soughtPattern
	for _, s := range soughtTable {
		said := s.said
		if s.part != "" {
			if said != "" {
				said += `|`
			}
			said += `how ` + s.how + ` ` + modals + ` ` + whose + s.part + `|how ` + s.how + ` (of )?(a|an|the|my) ` + s.part +
				`|(what|which|max|maximum|min|minimum|least|most) ` + s.part + ` ` + s.size + `|(what|which|max|maximum|min|minimum) ` + s.size + ` of (the |a |my )?` + s.part
		}
		var near [][]string
		for one := range strings.SplitSeq(s.near, ";") {
			near = append(near, strings.Split(one, "|"))
		}
		out = append(out, soughtPattern{s.field, near, regexp.MustCompile(`(?i)^(` + said + `)\b`)})
	}
	return out
}

// sought tells which field a message looks for by the words that stand first, and
// where they stand.
func (r *reader) sought() (f unit.Field, span []int, ok bool) {
	for i := range r.items {
		if !opensSought(r.items[i].word) {
			continue
		}
		start := r.items[i].start
		behind := folds(r.text[start:])
		for k := range soughtPatterns {
			p := &soughtPatterns[k]
			if !p.mayStand(behind) {
				continue
			}
			if at := p.re.FindStringIndex(r.text[start:]); at != nil {
				return p.field, []int{start, start + at[1]}, true
			}
		}
	}
	return "", nil, false
}

// folds is text in small letters, as (?i) takes them for each other.
func folds(text string) string { return strings.ReplaceAll(strings.ToLower(text), "ſ", "s") }

// mayStand reports whether text, in small letters, may have one of the pattern's wordings.
func (p *soughtPattern) mayStand(text string) bool {
	for _, near := range p.near {
		if !slices.ContainsFunc(near, func(word string) bool { return strings.Contains(text, word) }) {
			return false
		}
	}
	return true
}

// opensSought reports whether words can open what is sought; few do, which keeps a
// message that asks forwards cheap.
func opensSought(words string) bool {
	if words == "" || !strings.Contains("hwmluc", words[:1]) {
		return false
	}
	first, _, _ := strings.Cut(words, " ")
	switch first {
	case "how", "what", "whats", "which", "max", "maximum", "min", "minimum", "most", "least", "highest", "lowest", "where", "up", "cfm", "m3/h":
		return true
	}
	return false
}
