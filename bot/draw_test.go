package bot_test

import (
	"strings"
	"testing"

	"presshand/bot"
)

// Each kind of answer has the picture that says most of it, with words for who
// does not see it; others have none.
func TestReply_Draw_kinds(t *testing.T) {
	b := bot.New(bot.NewMemory())
	for text, want := range map[string]string{
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg":                               "Cross-section",
		"6 strips 2 wide, 1/2 thick, 1 in bar, 25 inHg. how far does the bar reach":       "Side pressure along the panel",
		"got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide":                               "Strips",
		"14 panels 24x48, two presses, start 7:30, pva at 65f":                            "The day's clock",
		"two sleds, base 3/4, fence 1/4, strips 5/16, film, sled 3/4, press opening 4 in": "Cross-section",
		"how many tons on a 4x8 at 25 inHg":                                               "",
		"5 strips 2 1/4 wide, 1 in bar, 25 inHg":                                          "", // lacks the thickness
		"what is a caul":                                                                  "",
	} {
		d, ok := say(t, b, bot.Message{From: "ana", Text: text}).Draw()
		switch {
		case ok != (want != ""):
			t.Errorf("%q has a drawing: %v, want %v", text, ok, want != "")
		case ok && (!strings.HasPrefix(d.Title, want) || len(d.Alt) < 40):
			t.Errorf("%q is drawn as %q with the words %q, want %q and a sentence", text, d.Title, d.Alt, want)
		}
	}
}
