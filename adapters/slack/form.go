package slack

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/engine/unit"
)

// formID marks the form of the second check.
const formID = "second_check"

// A checking is what a form is bound to, kept in it.
type checking struct {
	Room     string `json:"room"`
	Thread   string `json:"thread"`
	Load     int    `json:"load"`
	Revision int    `json:"revision"`
}

// openForm asks for what was measured. It shows no planned figure.
func (a *Slack) openForm(ctx context.Context, c slack.InteractionCallback, value string) {
	ctx, cancel := context.WithTimeout(ctx, callTimeout)
	defer cancel()
	on, err := a.cardOf(ctx, c, value)
	if on.Load == 0 || !a.Allowed(c.Channel.ID) {
		return
	}
	if err == nil {
		err = a.openFormOn(ctx, c, on)
	}
	if err == nil {
		return
	}
	a.Log.Warn("slack: form not opened", "error", err)
	text := fmt.Sprintf("The form could not be opened: %v. Say it in the thread instead, with what you measured: “%d checked, bar …, strips …, gauge …”.", err, on.Load)
	a.whisper(ctx, c, text)
}

func (a *Slack) openFormOn(ctx context.Context, c slack.InteractionCallback, on card) error {
	l, err := a.store.Load(ctx, c.Channel.ID, on.Load)
	if err != nil {
		return fmt.Errorf("load %d could not be looked up: %w", on.Load, err)
	}
	if l.Revision != on.Revision {
		return fmt.Errorf("load %d changed since: it is at revision %d now; use the buttons of its last message", l.Number, l.Revision)
	}
	bound := checking{Room: c.Channel.ID, Thread: on.Thread, Load: on.Load, Revision: on.Revision}
	_, err = a.api.OpenViewContext(ctx, c.TriggerID, a.form(l, bound))
	return err
}

// whisper tells one person something where they pressed a button.
func (a *Slack) whisper(ctx context.Context, c slack.InteractionCallback, text string) {
	thread := c.Message.ThreadTimestamp
	options := []slack.MsgOption{slack.MsgOptionText(fallback(text), false), slack.MsgOptionDisableMarkdown()}
	if thread != "" {
		options = append(options, slack.MsgOptionTS(thread))
	}
	if _, err := a.calm.PostEphemeralContext(ctx, c.Channel.ID, c.User.ID, options...); err != nil {
		a.Log.Warn("slack: note not shown", "error", err)
	}
}

func words(text string) *slack.TextBlockObject {
	return slack.NewTextBlockObject(slack.PlainTextType, text, false, false)
}

// form has a field for each thing that can be measured, by its field's name.
func (a *Slack) form(l book.Load, bound checking) slack.ModalViewRequest {
	kept, _ := json.Marshal(bound) // strings and numbers cannot fail
	blocks := []slack.Block{slack.NewSectionBlock(words("Measure it yourself and type what you found, at least two. I compare it with the plan."), nil, nil)}
	for _, m := range bot.Measures(l.Plan, a.Metric(bound.Room)) {
		input := slack.NewPlainTextInputBlockElement(words(m.Unit), "typed")
		input.MaxLength = 30
		b := slack.NewInputBlock(string(m.Field), words(capital(m.Name)), nil, input)
		b.Optional = true
		blocks = append(blocks, b)
	}
	return slack.ModalViewRequest{
		Type: slack.VTModal, CallbackID: formID, PrivateMetadata: string(kept),
		Title: words(fmt.Sprintf("Check load %d", bound.Load)), Submit: words("Compare"), Close: words("Not now"),
		Blocks: slack.Blocks{BlockSet: blocks},
	}
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}

// submitted keeps what a form says, or answers with what is wrong in it. It
// counts only for the revision that the form was opened on.
func (a *Slack) submitted(ctx context.Context, c slack.InteractionCallback) (any, error) {
	if c.View.CallbackID != formID || c.View.State == nil {
		return nil, nil
	}
	var bound checking
	if err := json.Unmarshal([]byte(c.View.PrivateMetadata), &bound); err != nil || !a.Allowed(bound.Room) {
		return nil, nil // not a form of ours
	}
	l, err := a.store.Load(ctx, bound.Room, bound.Load)
	if err != nil {
		return nil, err
	}
	if l.Revision != bound.Revision {
		return outdatedForm(c.View, l), nil
	}
	typed := map[unit.Field]string{}
	for block, fields := range c.View.State.Values {
		typed[unit.Field(block)] = fields["typed"].Value
	}
	metric := a.Metric(bound.Room)
	text, wrong := bot.SayMeasured(bound.Load, bot.Measures(l.Plan, metric), typed, metric)
	if len(wrong) > 0 {
		errs := map[string]string{}
		for f, says := range wrong {
			errs[string(f)] = says
		}
		return slack.NewErrorsViewSubmissionResponse(errs), nil
	}
	extra, err := json.Marshal(bot.Gesture{Load: bound.Load, Revision: bound.Revision, User: c.User.ID})
	if err != nil {
		return nil, err
	}
	key := fmt.Sprintf("slack:%s:form:%s", bound.Room, c.View.ID)
	_, err = a.inbox.Receive(ctx, book.Event{
		Key: key, Place: book.Place{Service: Service, Room: bound.Room, Thread: bound.Thread}, Message: key,
		From: a.person(ctx, c.User.ID), Text: text, At: a.Clock(), Extra: extra,
	})
	return nil, err
}

// outdatedForm answers a form whose load changed since it was opened, on its
// first field: what it asked for may no longer be what the plan has.
func outdatedForm(v slack.View, l book.Load) any {
	says := fmt.Sprintf("Load %d changed since: it is at revision %d now. Close this and use the buttons of its last message.", l.Number, l.Revision)
	fields := slices.Sorted(maps.Keys(v.State.Values)) // where the blocks could not be read
	for _, b := range v.Blocks.BlockSet {
		if input, ok := b.(*slack.InputBlock); ok {
			fields = []string{input.BlockID}
			break
		}
	}
	if len(fields) == 0 {
		return nil
	}
	return slack.NewErrorsViewSubmissionResponse(map[string]string{fields[0]: says})
}
