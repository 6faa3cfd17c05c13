package bot

import (
	"slices"
	"strings"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// notices names what was not used where it could change the answer.
func (r *Reply) notices(p grammar.Phrase, text string) {
	var names []string
	for _, u := range r.Unused {
		if (strings.ContainsAny(u, digits) || spelled[strings.ToLower(u)]) && !refused(p, u) && !dealtWith(p, u) {
			names = append(names, quoted(u))
		}
	}
	for _, n := range p.Negated {
		if q := quoted(n); !slices.Contains(names, q) {
			names = append(names, q)
		}
	}
	names = append(names, wishes(r, p)...)
	if words := strangers(r, p, text); len(words) > 0 {
		names = append(names, words...)
	}
	if glue := strangeGlue(r, text); glue != "" {
		r.say(Notice, "I do not know "+quoted(glue)+" glue; I took it for "+style{}.plain(unit.GlueClass, r.Assumed[unit.GlueClass], unit.Unit{})+". Go by its label.")
		names = slices.DeleteFunc(names, func(n string) bool { return n == quoted(glue) })
	}
	if len(names) > 6 {
		names = append(names[:6], "and more")
	}
	if len(names) > 0 {
		r.say(Notice, "Not used: "+strings.Join(names, ", ")+". If it matters, say it another way.")
	}
}

// dealtWith reports whether what was typed is a figure of a check or a finding of a load,
// of which the reply says itself what becomes of it.
func dealtWith(p grammar.Phrase, typed string) bool {
	for c := p.Command; c != nil; c = c.Then {
		measured := slices.ContainsFunc(c.Measured, func(f grammar.Fact) bool { return f.Text == typed })
		if measured || c.Verb == grammar.Out && c.Note == typed && toneOf(typed) != neither {
			return true
		}
	}
	return false
}

// spelled are numbers in words that a reply must not pass over.
var spelled = map[string]bool{
	"two": true, "three": true, "four": true, "five": true, "six": true, "seven": true, "eight": true, "nine": true, "ten": true,
	"eleven": true, "twelve": true, "half": true, "quarter": true, "dozen": true, "a dozen": true, "twice": true, "double": true,
}

// strangers are unread words that may be the wood that nobody could place.
func strangers(r *Reply, p grammar.Phrase, text string) []string {
	if !r.Assumed.Has(unit.Species) || len(r.Unused) > 4 {
		return nil
	}
	var out []string
	for _, u := range r.Unused {
		if len(u) > 3 && !strings.ContainsAny(u, digits) && !slices.Contains(p.Negated, u) && mayBeWood(u, text) {
			out = append(out, quoted(u))
		}
	}
	return out
}

// strangeGlue is the unread word before "glue" where the kind of glue is assumed.
func strangeGlue(r *Reply, text string) string {
	if !r.Assumed.Has(unit.GlueClass) {
		return ""
	}
	for _, u := range r.Unused {
		for _, noun := range []string{" glue", " adhesive"} {
			if len(u) > 2 && !strings.ContainsAny(u, digits) && strings.Contains(strings.ToLower(text), strings.ToLower(u+noun)) {
				return u
			}
		}
	}
	return ""
}

// mayBeWood reports whether a word stands in a message where a wood does: before
// the pieces, behind "in" or "of", or with a wood's family name.
func mayBeWood(word, text string) bool {
	word, text = strings.ToLower(word), strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, family := range []string{"pine", "oak", "ash", "maple", "gum", "cedar", "fir", "spruce", "wood", "teak", "elm", "larch"} {
		if strings.HasSuffix(word, family) {
			return true
		}
	}
	before, after, found := strings.Cut(text, word)
	if !found {
		return false
	}
	for _, piece := range []string{"strip", "stave", "slat", "board", "panel", "piece", "face", "veneer", "lath", "batten", "stock"} {
		if strings.HasPrefix(strings.TrimSpace(after), piece) {
			return true
		}
	}
	before = strings.TrimSpace(before)
	return strings.HasSuffix(before, " in") || strings.HasSuffix(before, " of") || strings.HasSuffix(before, "thick") || strings.HasSuffix(before, "wide")
}

func refused(p grammar.Phrase, text string) bool {
	for _, x := range p.Refused {
		if strings.EqualFold(x.Text, text) {
			return true
		}
	}
	for _, c := range p.Clashes {
		if containsFold(c.Texts, text) {
			return true
		}
	}
	return false
}

// maxWarnings is how many cautions a reply shows; the rest stand in its data.
const maxWarnings = 3

// warnings adds the cautions of the answers, each once; that of a part which
// carries people comes first. What the thread was told already stands only in
// the data.
func (r *Reply) warnings(thread Thread, works []worked) {
	if thread.Said.has(unit.StructuralUse) {
		r.caution(cautionSays[engine.CautionStructural])
	}
	for _, w := range works {
		for _, c := range w.answer.Cautions {
			r.caution(cautionSays[c])
		}
	}
	shown := 0
	for _, says := range r.Cautions {
		again := slices.Contains(thread.Warned, says) && says != cautionSays[engine.CautionStructural]
		if shown < maxWarnings && !again {
			r.say(Warning, says)
			shown++
		}
	}
}

func (r *Reply) caution(says string) {
	if says == "" || slices.Contains(r.Cautions, says) {
		return
	}
	r.Cautions = append(r.Cautions, says)
}

// warned are the cautions that a thread was shown, with those of a reply.
func (r *Reply) warned(before []string) []string {
	out := slices.Clone(before)
	for _, l := range r.Lines {
		if l.Kind == Warning && !slices.Contains(out, l.Text) {
			out = append(out, l.Text)
		}
	}
	return out
}
