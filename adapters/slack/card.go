package slack

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
)

// Marks of the store that the adapter keeps beside its messages.
func cardMark(room, ts string) string      { return "slack:card:" + room + ":" + ts }
func rootMark(room, ts string) string      { return "slack:root:" + room + ":" + ts }
func slashMark(room, thread string) string { return "slack:slash:" + room + ":" + thread }

func latestMark(room string, load int) string {
	return fmt.Sprintf("slack:latest:%s:%d", room, load)
}

// A card is what a message of the bot shows: one revision of a load.
type card struct {
	Thread   string `json:"thread"`
	Load     int    `json:"load"`
	Revision int    `json:"revision"`
}

func (a *Slack) cardAt(ctx context.Context, room, ts string) (card, error) {
	var c card
	kept, err := a.store.Mark(ctx, cardMark(room, ts))
	if err != nil || kept == "" {
		return c, err
	}
	if err := json.Unmarshal([]byte(kept), &c); err != nil {
		return c, fmt.Errorf("card cannot be read: %w", err)
	}
	return c, nil
}

// note keeps what a message shows, for the reactions and replies that it gets.
func (a *Slack) note(ctx context.Context, o book.Outgoing, s bot.Sheet, thread, ts string) error {
	if s.Private != "" || s.Picture != nil || s.Withdraw {
		return nil
	}
	if strings.HasPrefix(o.Place.Thread, slashPrefix) && thread == "" {
		if err := a.store.SetMark(ctx, rootMark(o.Place.Room, ts), o.Place.Thread); err != nil {
			return err
		}
		if err := a.store.SetMark(ctx, slashMark(o.Place.Room, o.Place.Thread), ts); err != nil {
			return err
		}
	}
	if s.Load == 0 {
		return nil
	}
	if len(offers[s.State]) > 0 {
		if err := a.noteCard(ctx, o.Place, s, ts); err != nil {
			return err
		}
	}
	if thread == "" {
		thread = ts // it begins the thread
	}
	return a.retire(ctx, o.Place.Room, s.Load, thread+"/"+ts)
}

// noteCard keeps which load a message shows.
func (a *Slack) noteCard(ctx context.Context, p book.Place, s bot.Sheet, ts string) error {
	kept, err := json.Marshal(card{Thread: p.Thread, Load: s.Load, Revision: s.Revision})
	if err != nil {
		return err
	}
	return a.store.SetMark(ctx, cardMark(p.Room, ts), string(kept))
}

// retire makes a message, “thread/ts”, the latest of a load, whether it has
// buttons or not, and takes them off the one before. Buttons that stay by a failure do no harm: what they say
// is judged by how the load stands.
func (a *Slack) retire(ctx context.Context, room string, load int, place string) error {
	before, err := a.store.Mark(ctx, latestMark(room, load))
	if err != nil || before == place {
		return err
	}
	if err := a.store.SetMark(ctx, latestMark(room, load), place); err != nil {
		return err
	}
	thread, ts, known := strings.Cut(before, "/")
	if !known {
		return nil
	}
	if err := a.undress(ctx, room, thread, ts); err != nil {
		a.Log.Warn("slack: old buttons not taken off", "error", err)
	}
	return nil
}

// undress takes the buttons off a message of the bot.
func (a *Slack) undress(ctx context.Context, room, thread, ts string) error {
	page, _, _, err := a.api.GetConversationRepliesContext(ctx, &slack.GetConversationRepliesParameters{
		ChannelID: room, Timestamp: thread, Oldest: ts, Latest: ts, Inclusive: true, Limit: 2})
	if err != nil {
		return err
	}
	for _, m := range page {
		if m.Timestamp != ts {
			continue
		}
		all := len(m.Blocks.BlockSet)
		kept := slices.DeleteFunc(m.Blocks.BlockSet, func(b slack.Block) bool { return b.BlockType() == slack.MBTAction })
		if len(kept) == all {
			return nil
		}
		_, _, _, err := a.api.UpdateMessageContext(ctx, room, ts, slack.MsgOptionText(shortened(m.Text, maxUpdate), false), slack.MsgOptionDisableMarkdown(), slack.MsgOptionBlocks(kept...))
		return err
	}
	return nil
}
