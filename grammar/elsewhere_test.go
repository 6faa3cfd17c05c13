package grammar_test

import (
	"testing"

	"presshand/grammar"
)

// What other people count in strips, bags and beds states nothing; a shop's own
// message with such a word in it does.
func TestParse_otherPeoplesMatters(t *testing.T) {
	for text, own := range map[string]bool{
		"two strips of bacon each and three eggs, who is on breakfast": false,
		"does 3/4 ton of pea gravel cover a 10x12 pad 2 deep":          false,
		"veg patch: two raised beds 4 x 8, 12 deep, bags of compost?":  false,
		"is 66 brix right for maple syrup, boils at 219F":              false,
		"truck's vacuum gauge reads 18 at idle and it hunts":           false,
		"king bed 76 x 80": false,
		"fancy the match, kick off 7:30, two tickets going":               false,
		"post 9 on the back fence is rotten, need a 4x4 and a bag of mix": false,
		"bread boards: 6 strips 1 1/2 wide, 3/4 thick":                    true,
		"5 strips of padauk 2 1/4 wide":                                   true,
		"14 panels 24x48, kick off 7:30":                                  true,
		"truck is here at 4, 14 panels 24x48, start 7:30":                 true,
		"gauge reads 18 with the pump at idle, 24x48 panel":               true,
		"bag of 54 in, 10 ft long":                                        true,
	} {
		p := grammar.Parse(text, grammar.Habit{})
		if got := len(p.Facts) > 0; got != own {
			t.Errorf("%q states %v", text, p.Facts)
		}
	}
}

// Small talk in a thread amends nothing.
func TestParse_smallTalk(t *testing.T) {
	for text, amends := range map[string]bool{
		"ok back in 10": false, "i'll be 15 late": false, "Jim owes me 20": false, "room 12 is free": false, "pass me the 1/2 in socket": false, "who's up for lunch, 12 ok?": false,
		"give me 24": true, "ok 24 then": true, "make it 15": true, "hump up then. does it work with only 20": true,
	} {
		p := grammar.Parse(text, grammar.Habit{Follows: true})
		if got := len(p.Amends) > 0; got != amends {
			t.Errorf("%q amends %v", text, p.Amends)
		}
	}
}
