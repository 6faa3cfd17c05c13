package bot

import (
	"encoding/json"
	"fmt"

	"presshand/engine"
	"presshand/grammar"
)

// setup keeps a room's own defaults, or shows them.
func (t *turn) setup() (Reply, error) {
	r := Reply{About: grammar.Profile, Verdict: engine.None}
	r.note(t.phrase.Unused...)
	p := t.profile
	changed := len(t.phrase.Facts)+len(t.phrase.Drops) > 0 || t.phrase.Reset && len(p.Said) > 0
	if t.phrase.Reset {
		p.Said = nil
	}
	for _, part := range t.phrase.Drops {
		p.Said = p.Said.without(parts[part]...)
	}
	p.Said = p.Said.stating(t.phrase.Facts)
	thread := Thread{Said: p.Said}
	r.Read = read(Thread{Said: Statement(nil).stating(t.phrase.Facts)}, p.Said.facts(), nil)
	r.Values = read(thread, nil, nil)
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
	text := st.understood(thread)
	switch {
	case t.phrase.Reset && changed:
		r.say(Headline, "All that was set for this room is forgotten. It was: "+styleOf(t.settings.Metric, Thread{Said: t.profile.Said}).understood(Thread{Said: t.profile.Said})+".")
	case text == "":
		r.say(Headline, "Nothing is set for this room yet. Tell me, like “"+setupExample(t.settings.Metric)+"”.")
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
