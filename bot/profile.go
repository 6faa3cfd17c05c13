package bot

import (
	"context"
	"encoding/json"
	"fmt"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// setup keeps a room's own defaults, or shows them.
func (t *turn) setup() (Reply, error) {
	r := Reply{About: grammar.Profile, Verdict: engine.None}
	r.note(t.phrase.Unused...)
	p := t.profile
	changed := len(t.phrase.Facts)+len(t.phrase.Drops) > 0 || t.phrase.Pictures != "" || t.phrase.Reset && p.set()
	if t.phrase.Reset {
		p = Profile{}
	}
	if t.phrase.Pictures != "" {
		p.Pictures = t.phrase.Pictures
	}
	for _, part := range t.phrase.Drops {
		p.Said = p.Said.without(parts[part]...)
	}
	p.Said = p.Said.stating(t.phrase.Facts)
	thread := Thread{Said: p.Said}
	r.Read = read(Thread{Said: Statement(nil).stating(t.phrase.Facts)}, p.Said.facts(), nil)
	r.Values = read(thread, nil, nil)
	if p.Pictures != "" {
		r.Values["pictures"] = unit.Word(p.Pictures)
	}
	t.doubts(&r)
	if changed && r.Verdict != engine.Ask {
		state, err := json.Marshal(p)
		if err != nil {
			return Reply{}, fmt.Errorf("room's profile cannot be kept: %w", err)
		}
		t.stored.State = state
		t.outcome.Profile = &t.stored
	}
	st := styleOf(t.settings.Metric, thread)
	text := p.told(st)
	switch {
	case t.phrase.Reset && changed:
		r.say(Headline, "All that was set for this room is forgotten. It was: "+t.profile.told(styleOf(t.settings.Metric, Thread{Said: t.profile.Said}))+".")
	case text == "":
		r.say(Headline, "Nothing is set for this room yet. Tell me, like “"+setupExample(t.settings.Metric)+"”.")
	case t.phrase.Pictures != "":
		r.say(Headline, "Kept for this room: "+text+".")
		r.say(Figure, pictureSays[t.phrase.Pictures])
	case changed:
		r.say(Headline, "Kept for this room: "+text+".")
		r.say(Figure, "I take that from now on unless a message says otherwise. “our setup” shows it.")
	default:
		r.say(Headline, "Set for this room: "+text+".")
	}
	r.notices(t.phrase, t.m.Text)
	r.ask(st, t.phrase)
	return r, nil
}

// pictureSays is what comes of a wish for pictures or for none.
var pictureSays = map[grammar.Pictures]string{
	grammar.PicturesOff: "My answers here are words alone from now on. “pictures on” brings the drawings back.",
	grammar.PicturesOn:  "A drawing stands beside each answer here that has one. “pictures off” leaves them out.",
}

// set reports whether anything is kept.
func (p Profile) set() bool { return len(p.Said) > 0 || p.Pictures != "" }

// told says all that is kept.
func (p Profile) told(st style) string {
	text := st.understood(Thread{Said: p.Said})
	if p.Pictures == "" {
		return text
	}
	if text != "" {
		text += ", "
	}
	return text + "pictures " + string(p.Pictures)
}

// pictures reports whether a room wants pictures: by what was said there, else
// as it is configured.
func (b *Bot) pictures(ctx context.Context, room string, configured bool) (bool, error) {
	kept, err := b.Store.Profile(ctx, room)
	if err != nil {
		return false, fmt.Errorf("room's profile is not to be had: %w", err)
	}
	var p Profile
	if err := remembered(kept.State, &p); err != nil {
		return false, fmt.Errorf("room's profile cannot be read: %w", err)
	}
	if p.Pictures == "" {
		return configured, nil
	}
	return p.Pictures == grammar.PicturesOn, nil
}
