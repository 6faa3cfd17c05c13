package grammar

import "strings"

// Pictures is whether drawings stand beside the answers.
type Pictures string

const (
	PicturesOn  Pictures = "on"
	PicturesOff Pictures = "off"
)

// pictureWords are those of a message that turns pictures on or off in a room,
// by what each does there. Any other word makes it another message.
var pictureWords = wordKinds(map[string]string{
	"pictures": "pictures drawings images diagrams pics sketches illustrations",
	"off":      "off no without dont stop never hide disable skip",
	"on":       "on again enable resume",
	"verb":     "show send want need post draw",
	"question": "are",
	"idle": "a all also always answer answers any anymore beside bot can channel could do for from here hey i in it just make more " +
		"now ok okay our please plain pls room rooms set setting sending showing drawing posting shop switch thanks thank the them this " +
		"to turn turned us we with would you your back and me my so",
})

func wordKinds(lists map[string]string) map[string]string {
	kinds := map[string]string{}
	for kind, words := range lists {
		for w := range strings.FieldsSeq(words) {
			kinds[w] = kind
		}
	}
	return kinds
}

// longestPictureSetting is how long such a message is at most, in bytes.
const longestPictureSetting = 100

// plainPictureWords makes one word of those that mean another alone.
var plainPictureWords = strings.NewReplacer("'", "", "’", "", "from now on", "now", "do not ", "dont ", "no,", "nay", "no.", "nay")

// pictureSetting reads a message that says nothing but whether the room wants
// pictures, or asks whether they are on. One picture is of one answer, and many
// are a setting.
func pictureSetting(text string) (Phrase, bool) {
	text = strings.TrimSpace(text)
	if len(text) > longestPictureSetting {
		return Phrase{}, false
	}
	text = plainPictureWords.Replace(strings.ToLower(text))
	said := map[string]bool{}
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \t\r\n.,;:!?()-–—=*_", r) }) {
		kind := pictureWords[w]
		if kind == "" {
			return Phrase{}, false
		}
		said[kind] = true
	}
	p := Phrase{Asks: []Ask{{About: Profile}}}
	switch {
	case !said["pictures"]:
		return Phrase{}, false
	case said["question"] || strings.HasSuffix(text, "?"):
		return p, said["on"] || said["off"]
	case said["off"]:
		p.Pictures = PicturesOff
		return p, !said["on"]
	}
	p.Pictures = PicturesOn
	return p, said["on"] || said["verb"]
}
