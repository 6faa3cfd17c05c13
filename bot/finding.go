package bot

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// badWords are what people say of a joint that failed.
var badWords = []string{
	"open", "opened", "gap", "gaps", "loose", "split", "splits", "crack", "cracks", "cracked", "starved", "cup", "cupped", "bad", "delam", "delaminated", "delaminating", "delamination",
	"fail", "failed", "failure", "let", "popped", "sprung", "bubble", "bubbles", "blister", "blisters", "warped", "warp", "twisted", "twist", "crushed",
	"poor", "weak", "scrap", "ruined", "chalky", "dry", "void", "voids", "uneven", "stuck", "slipped", "shifted", "apart", "hairline", "hairlines",
	"bowed", "bow", "crooked", "lifting", "lifted", "peeled", "peeling", "broke", "broken", "snapped", "separated", "separating", "dented", "dent", "dents",
	"soft", "tacky", "sticky", "uncured", "wrong", "problem", "problems", "complaint", "complaints", "issue", "issues", "trouble", "fault", "faults",
	"flaw", "flaws", "defect", "defects", "terrible", "awful", "horrible", "disaster", "rejected", "rubbish", "junk", "toast", "wavy", "stepped", "leaked", "stained", "stain",
	"snipe", "sniped", "reglued", "tearout", "telegraphed", "telegraphing", "dished", "ridge", "ridges",
}

var goodWords = []string{
	"good", "fine", "perfect", "perfectly", "great", "ok", "okay", "tight", "sound", "solid", "clean", "closed", "excellent", "flat", "beautiful", "beautifully", "nice", "nicely",
	"well", "lovely", "flawless", "happy", "strong", "straight", "success", "successful", "alright", "super", "superb", "brilliant", "spotless", "invisible", "passed",
}

// deniers turn the words behind them round, up to the end of their clause.
var deniers = []string{"no", "not", "without", "nothing", "isn't", "isnt", "wasn't", "wasnt", "never", "none", "didn't", "didnt", "aren't", "arent", "zero", "hardly", "zilch", "nowhere"}

// deniedBy reports whether words that begin at word i turn those behind them round: "far from
// perfect", "anything but good", "used to be good".
func deniedBy(words []string, i int) bool {
	if i+2 >= len(words) {
		return false
	}
	switch words[i] + " " + words[i+1] {
	case "far from", "less than", "used to", "anything but", "short of":
		return true
	}
	return false
}

// besideGood are words behind "good" that make it no finding: "good to see you".
var besideGood = []string{"thing", "to", "for", "idea", "luck", "news", "time", "question", "point", "reason", "call", "grief", "god", "lord", "old"}

// turns part the clauses of a finding.
var turns = []string{"but", "and", "except", "although", "though", "however", "yet", "only"}

// mends are what had to be done to something bad: "had to reglue one end".
var mends = []string{"reglue", "redo", "repair", "rework", "patch", "fix", "fill", "glue", "clamp", "cut", "rip", "resaw", "re", "remake", "bin", "throw"}

// excepts reports whether word i takes something out of what was said before: "good
// except joint 2", "fine other than the end", "all but one".
func excepts(words []string, i int) bool {
	next := ""
	if i+1 < len(words) {
		next = words[i+1]
	}
	switch words[i] {
	case "except", "excepting", "barring":
		return next != ""
	case "other":
		return next == "than" && i+2 < len(words)
	case "save":
		return next == "for"
	case "aside":
		return next == "from"
	case "all":
		return next == "but" && i+2 < len(words)
	}
	return false
}

// A findingTone is how a result sounds.
type findingTone int

const (
	neither findingTone = iota
	bad
	fine
)

var (
	// rethought takes back what a finding said before it: "bad, no wait, good".
	rethought = regexp.MustCompile(`(?i)[,;.–—-]\s*(?:(?:oh|ah|er|um|well)\s+)?(?:no,? wait|wait,? no|wait|no,? actually|no,? sorry|sorry|actually|scratch that|strike that|correction|i meant?|make that|no(?:pe)?\s*[,;.–—-])`)
	// takesBack ends a finding that is taken back and told no other.
	takesBack = regexp.MustCompile(`(?i)^\W*(?:no,? wait|wait,? no|wait|scratch that|strike that|no(?:pe)?)\W*$`)
)

// toneOf tells how a finding sounds: bad with any word of something wrong, but
// for "no gaps" and the like, and fine with good words only. Who asks or hopes says neither.
func toneOf(finding string) findingTone {
	if at := rethought.FindStringIndex(finding); at != nil { // the later word counts
		later := toneOf(finding[at[1]:])
		if later != neither || takesBack.MatchString(finding[at[0]:]) {
			return later
		}
	}
	words := findingWords(finding)
	tone := soundOf(words)
	if strings.Contains(finding, "?") || tone != neither && leftOpen(words, tone) {
		return neither
	}
	return tone
}

// soundOf is how the words of a finding sound.
func soundOf(words []string) findingTone {
	tone, denied := neither, false
	for i, w := range words {
		isBad, isGood := slices.Contains(badWords, w), slices.Contains(goodWords, w)
		if w == "well" && (i == 0 || words[i-1] == ",") {
			continue // "well, let's see"
		}
		if isGood && i+1 < len(words) && (slices.Contains(greeted, words[i+1]) || slices.Contains(besideGood, words[i+1])) {
			continue // "good morning", "good thing we waited"
		}
		mended := slices.Contains(mends, w) && i > 1 && words[i-1] == "to" && (words[i-2] == "had" || words[i-2] == "having")
		if mended || excepts(words, i) && (tone == fine || w == "all") {
			return bad
		}
		if deniedBy(words, i) {
			denied = true
			continue
		}
		switch {
		case w == "but" && i > 0 && words[i-1] == "anything":
		case w == "," || slices.Contains(turns, w):
			denied = false
		case slices.Contains(deniers, w):
			denied = true
		case isBad && !denied, isGood && denied:
			return bad
		case isBad, isGood:
			tone = fine
		}
	}
	return tone
}

// findingWords cuts a finding into words; marks that part clauses become commas.
func findingWords(finding string) []string {
	parted := strings.Map(func(c rune) rune {
		switch {
		case unicode.IsLetter(c) || c == '\'':
			return unicode.ToLower(c)
		case c == '’':
			return '\''
		case strings.ContainsRune(",.;:!?–—", c):
			return ','
		}
		return ' '
	}, finding)
	return strings.Fields(strings.ReplaceAll(parted, ",", " , "))
}

// ofLoad is a finding that names its load: "2: good".
var ofLoad = regexp.MustCompile(`^\s*(?:load\s+|#)?(\d{1,6})\s*[:=–—-]\s*(\D.*)$`)

// judgesLoad is a finding right behind its load: "3 bad, skinned over".
var judgesLoad = regexp.MustCompile(`(?i)^\s*(?:load\s+|#)?(\d{1,6})\s+((?:(?:is|was|came out|all)\s+)*(?:bad|good|fine|failed|ruined|junk|poor|rubbish|scrap|perfect)\b.*)$`)

// findingOf returns which load a message without a verb would judge, and how.
func (t *turn) findingOf() (load int, finding string) {
	text := strings.TrimSpace(t.m.Text)
	m := ofLoad.FindStringSubmatch(text)
	if m == nil {
		m = judgesLoad.FindStringSubmatch(text)
	}
	if m != nil {
		n, err := strconv.Atoi(m[1])
		if err == nil {
			return n, strings.TrimSpace(m[2])
		}
	}
	return t.before.Load, text
}
