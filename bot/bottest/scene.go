// Package bottest plays scenes of several people talking with the bot. A scene
// is a txtar archive: a heading, settings, then by turns what someone says and
// what the bot must answer.
//
//	A second person measures another bar.
//	units: inch
//
//	-- 07:00 ana in tops --
//	5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg
//	-- bot --
//	far joint
//	not: NaN
//	about: side
//	verdict: care
//
// The lines of the bot's part must stand in its reply, in that order; "not:"
// lines must not; "about:", "verdict:", "needs:" and "state:" look at the data
// of the reply. What one says outside a thread ("07:00 ana") is a thread of its
// own. The clock is that of the scene. "-- restart --" starts the bot anew on
// what it kept, and "-- 09:20 clock --" lets time pass: the bot's part is then
// what it says of its own accord, "silence" where that is nothing.
package bottest

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"golang.org/x/tools/txtar"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/engine/unit"
)

// A Scene is a conversation and what must come of it.
type Scene struct {
	Heading  string
	Settings bot.Settings
	Turns    []Turn
}

// A Turn is one message and what its reply must have. Where Clock is set nobody
// says anything, and only the time of the message counts.
type Turn struct {
	Message bot.Message
	Want    []string
	Restart bool // the bot was started anew before
	Clock   bool
}

// room is where scenes are played.
const room = "shop"

// day is when scenes are played, a winter's day without daylight saving.
var day = time.Date(2026, 3, 4, 0, 0, 0, 0, time.UTC)

// Read reads a scene.
func Read(text []byte) (Scene, error) {
	archive := txtar.Parse(text)
	s, err := heading(string(archive.Comment))
	if err != nil {
		return Scene{}, err
	}
	restart := false
	for i := 0; i < len(archive.Files); i += 2 {
		f := archive.Files[i]
		if f.Name == "restart" {
			restart = true
			i--
			continue
		}
		m, err := message(f.Name, string(f.Data))
		if err != nil {
			return Scene{}, err
		}
		if i+1 == len(archive.Files) || archive.Files[i+1].Name != "bot" {
			return Scene{}, fmt.Errorf("%q is not followed by what the bot answers", f.Name)
		}
		m.ID = fmt.Sprint("scene-", i)
		want := lines(string(archive.Files[i+1].Data))
		if len(want) == 0 {
			return Scene{}, fmt.Errorf("%q wants nothing of the reply", f.Name)
		}
		s.Turns = append(s.Turns, Turn{Message: m, Want: want, Restart: restart, Clock: m.From == "clock"})
		restart = false
	}
	if len(s.Turns) == 0 {
		return Scene{}, fmt.Errorf("scene %q has no turns", s.Heading)
	}
	return s, nil
}

func heading(text string) (Scene, error) {
	var s Scene
	for i, line := range lines(text) {
		key, value, isSetting := strings.Cut(line, ": ")
		switch {
		case i == 0:
			s.Heading = line
		case isSetting && key == "units":
			s.Settings.Metric = value == "metric"
		case isSetting && key == "own check":
			s.Settings.Policy.OwnCheck = value == "allowed"
		case isSetting && key == "checkers":
			s.Settings.Policy = book.Policy{Checkers: strings.Fields(value)}
		default:
			return Scene{}, fmt.Errorf("heading line %q is no setting", line)
		}
	}
	return s, nil
}

// message reads "07:00 ana in tops" and "tomorrow 07:00 ana".
func message(name, text string) (bot.Message, error) {
	words := strings.Fields(name)
	on := day
	if len(words) > 0 && words[0] == "tomorrow" {
		words, on = words[1:], day.AddDate(0, 0, 1)
	}
	if len(words) != 2 && (len(words) != 4 || words[2] != "in") {
		return bot.Message{}, fmt.Errorf("%q is not like %q", name, "07:00 ana in tops")
	}
	at, err := time.Parse("15:04", words[0])
	if err != nil {
		return bot.Message{}, fmt.Errorf("%q does not begin with a time", name)
	}
	m := bot.Message{Room: room, From: words[1], Text: strings.TrimSuffix(text, "\n"), Via: "scene"}
	m.At = on.Add(time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute)
	if len(words) == 4 {
		m.Thread = words[3]
	}
	return m, nil
}

func lines(text string) []string {
	var out []string
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// missing says which wishes a reply does not fulfil.
func missing(r bot.Reply, want []string) []string {
	var out []string
	rest := r.Text
	for _, line := range want {
		key, value, _ := strings.Cut(line, ": ")
		switch key {
		case "not":
			if strings.Contains(r.Text, value) {
				out = append(out, fmt.Sprintf("has %q, want it not to", value))
			}
		case "about":
			out = append(out, differs(key, string(r.About), value)...)
		case "verdict":
			out = append(out, differs(key, string(r.Verdict), value)...)
		case "state":
			out = append(out, differs(key, strings.Join(r.States, " "), value)...)
		case "needs":
			if !slices.ContainsFunc(r.Needs, func(f unit.Field) bool { return string(f) == value }) {
				out = append(out, fmt.Sprintf("needs %v, want %s among them", r.Needs, value))
			}
		default:
			_, after, found := strings.Cut(rest, line)
			if !found {
				out = append(out, fmt.Sprintf("lacks %q", line))
				continue
			}
			rest = after
		}
	}
	return out
}

func differs(what, got, want string) []string {
	if got == want {
		return nil
	}
	return []string{fmt.Sprintf("%s is %q, want %q", what, got, want)}
}
