package matrix

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"html"
	"image/png"
	"strings"
	"unicode/utf8"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/crypto/attachment"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot"
	"presshand/bot/book"
)

// longest is how many bytes of text and of HTML go into one event, which the
// homeserver limits to 64 KiB with all that encryption adds.
const longest = 12_000

// content makes the event of a reply: a notice with HTML and a plain body, or
// a picture, in its thread or in the place of an earlier one.
func (s *session) content(ctx context.Context, o book.Outgoing, sheet bot.Sheet, sealed bool) (*event.MessageEventContent, error) {
	var c *event.MessageEventContent
	var err error
	if sheet.Picture != nil {
		c, err = s.picture(ctx, *sheet.Picture, sealed)
	} else {
		c, err = s.notice(ctx, o, sheet)
	}
	if err != nil {
		return nil, err
	}
	if o.ReplacesRef != "" {
		c.SetEdit(id.EventID(o.ReplacesRef))
		return c, nil
	}
	c.RelatesTo = inThread(o)
	return c, nil
}

// inThread relates a reply to its thread. Programs that know no threads show
// an answer to the message instead.
func inThread(o book.Outgoing) *event.RelatesTo {
	root := id.EventID(o.Place.Thread)
	if root == "" {
		return nil
	}
	to := id.EventID(strings.TrimSuffix(o.Message, "/picture"))
	if !strings.HasPrefix(string(to), "$") {
		to = root // a reminder answers no message
	}
	return &event.RelatesTo{
		Type: event.RelThread, EventID: root, IsFallingBack: true, InReplyTo: &event.InReplyTo{EventID: to},
	}
}

// notice words a reply. It draws nobody's attention but that of whom a
// reminder is for.
func (s *session) notice(ctx context.Context, o book.Outgoing, sheet bot.Sheet) (*event.MessageEventContent, error) {
	c := &event.MessageEventContent{MsgType: event.MsgNotice, Body: shortened(o.Text, longest), Mentions: &event.Mentions{}}
	marked := htmlOf(sheet)
	if o.Event == "" {
		who, err := s.minder(ctx, o, sheet)
		if err != nil {
			return nil, err
		}
		if who != "" {
			name, err := s.nameOf(ctx, id.RoomID(o.Place.Room), who)
			if err != nil {
				return nil, err
			}
			c.Mentions.UserIDs = []id.UserID{who}
			c.Body = name + ": " + c.Body
			marked = pill(who, name) + ": " + marked
		}
	}
	if len(marked) <= longest {
		c.Format, c.FormattedBody = event.FormatHTML, marked
	}
	return c, nil
}

// htmlOf sets the lines of a reply: the verdict in bold, figures as a list,
// what was understood in small print, cautions marked.
func htmlOf(sheet bot.Sheet) string {
	var b strings.Builder
	listing := false
	for _, l := range sheet.Lines {
		if is := l.Kind == bot.Figure; is != listing {
			b.WriteString(map[bool]string{true: "<ul>", false: "</ul>"}[is])
			listing = is
		}
		text := strings.ReplaceAll(html.EscapeString(l.Text), "\n", "<br>")
		switch l.Kind {
		case bot.Headline:
			b.WriteString("<p><strong>" + text + "</strong></p>")
		case bot.Figure:
			b.WriteString("<li>" + text + "</li>")
		case bot.ReadAs:
			b.WriteString("<p><em>" + text + "</em></p>")
		case bot.Warning:
			b.WriteString("<p>⚠️ " + text + "</p>")
		default:
			b.WriteString("<p>" + text + "</p>")
		}
	}
	if listing {
		b.WriteString("</ul>")
	}
	return b.String()
}

func pill(who id.UserID, name string) string {
	return `<a href="https://matrix.to/#/` + html.EscapeString(string(who)) + `">` + html.EscapeString(name) + "</a>"
}

// minder returns whom a reminder is for: who put the load in, else its poster.
// "" where that is no user of Matrix.
func (s *session) minder(ctx context.Context, o book.Outgoing, sheet bot.Sheet) (id.UserID, error) {
	if sheet.Load == 0 {
		return "", nil
	}
	l, err := s.book.Load(ctx, o.Place.Room, sheet.Load)
	if errors.Is(err, book.ErrNotFound) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	who := l.Poster
	for _, e := range l.Standing() {
		if e.Act == book.In {
			who = e.By
		}
	}
	members, err := s.store.state.GetRoomJoinedOrInvitedMembers(ctx, id.RoomID(o.Place.Room))
	if err != nil {
		return "", ofStore(err)
	}
	for _, m := range members {
		if s.cfg.Person(string(m), "").ID == who.ID {
			return m, nil
		}
	}
	return "", nil
}

// nameOf returns the name that a user goes by in a room.
func (s *session) nameOf(ctx context.Context, room id.RoomID, user id.UserID) (string, error) {
	m, err := s.store.state.TryGetMember(ctx, room, user)
	if err != nil {
		return "", ofStore(err)
	}
	if m == nil || m.Displayname == "" {
		return user.Localpart(), nil
	}
	return m.Displayname, nil
}

// picture uploads a picture, encrypted where the room is.
func (s *session) picture(ctx context.Context, p bot.Picture, sealed bool) (*event.MessageEventContent, error) {
	size, err := png.DecodeConfig(bytes.NewReader(p.PNG))
	if err != nil {
		return nil, fmt.Errorf("picture is no PNG: %w", err)
	}
	c := &event.MessageEventContent{
		MsgType: event.MsgImage, Body: p.Alt, FileName: "presshand.png", Mentions: &event.Mentions{},
		Info: &event.FileInfo{MimeType: "image/png", Width: size.Width, Height: size.Height, Size: len(p.PNG)},
	}
	if c.Body == "" {
		c.Body = c.FileName
	}
	if !sealed {
		up, err := s.client.UploadBytesWithName(ctx, p.PNG, "image/png", c.FileName)
		if err != nil {
			return nil, err
		}
		c.URL = up.ContentURI.CUString()
		return c, nil
	}
	file, data := attachment.NewEncryptedFile(), bytes.Clone(p.PNG)
	file.EncryptInPlace(data)
	up, err := s.client.UploadMedia(ctx, mautrix.ReqUploadMedia{ContentBytes: data, ContentType: "application/octet-stream"})
	if err != nil {
		return nil, err
	}
	c.File = &event.EncryptedFileInfo{EncryptedFile: *file, URL: up.ContentURI.CUString()}
	return c, nil
}

// shortened cuts a text at a rune.
func shortened(s string, most int) string {
	if len(s) <= most {
		return s
	}
	cut := most
	for !utf8.RuneStart(s[cut]) {
		cut--
	}
	return s[:cut] + "…"
}
