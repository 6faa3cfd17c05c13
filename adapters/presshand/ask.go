package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"presshand/bot"
)

// askCmd answers messages without a chat service.
type askCmd struct {
	Question []string `arg:"" optional:"" help:"The message. Without one, each line of standard input is a message."`
	JSON     bool     `name:"json" help:"Print each reply as one line of JSON."`
	In       string   `name:"in" enum:"text,json" default:"text" help:"What each line of standard input is: text, or an object with room, thread, from, text and at."`
	Thread   bool     `help:"All lines belong to one thread: a later one amends the earlier ones."`
	Units    string   `enum:"inch,metric" default:"inch" help:"What bare numbers are: inch or metric."`
	Store    string   `placeholder:"FILE" help:"Keep threads and loads in this file, or in postgres://…; in memory without it."`
	Picture  string   `placeholder:"FILE" help:"Write the drawing of the last answer that has one (.svg or .png)."`
}

// maxLine is the longest line of standard input that is read. The bot says of
// much shorter ones that they are too long.
const maxLine = 1 << 20

// Run answers the message of the command line, or those of standard input.
func (c *askCmd) Run(ctx context.Context, s streams) (err error) {
	if err := c.drawable(); err != nil {
		return err
	}
	b, done, err := newBot(ctx, c.Store, c.Units)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, done()) }()
	a := &asking{askCmd: c, bot: b, out: bufio.NewWriter(s.out)}
	if len(c.Question) > 0 {
		if watched(s.err) {
			defer whileWorking(quiet, func() { fmt.Fprintln(s.err, "Looking for a better plan; Ctrl-C gives the best so far …") })()
		}
		return a.once(ctx, strings.Join(c.Question, " "))
	}
	if err := a.lines(ctx, s.in); err != nil {
		return err
	}
	return a.draw()
}

// asking is one run of the command.
type asking struct {
	*askCmd
	bot   *bot.Bot
	out   *bufio.Writer
	line  []byte
	count int // messages taken
	shown int // replies printed
	sketches
}

// once answers a single message; one that is not about the trade has an exit
// code of its own.
func (a *asking) once(ctx context.Context, text string) error {
	r, err := a.answer(ctx, a.message(text))
	if err != nil {
		return err
	}
	if err := a.out.Flush(); err != nil {
		return unwritable(err)
	}
	if r.About == bot.Unknown { // which has no drawing either
		return exitError(exitUnknown)
	}
	return a.draw()
}

// lines answers each line as it comes; a blank one gets no reply.
func (a *asking) lines(ctx context.Context, in io.Reader) error {
	read := bufio.NewReaderSize(in, 64*1024)
	for ctx.Err() == nil {
		line, err := readLine(read)
		if text := strings.TrimSpace(line); text != "" {
			if _, err := a.answer(ctx, a.taken(text)); err != nil {
				return errors.Join(err, a.out.Flush())
			}
		}
		if !waiting(read) {
			if err := a.out.Flush(); err != nil {
				return unwritable(err)
			}
		}
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return hint(fmt.Errorf("standard input cannot be read: %w", err), "check what feeds it")
		}
	}
	return ctx.Err()
}

// waiting reports whether another line is there already, so that its reply can
// go out with this one.
func waiting(r *bufio.Reader) bool {
	ahead, err := r.Peek(r.Buffered())
	return err == nil && bytes.IndexByte(ahead, '\n') >= 0
}

func unwritable(err error) error {
	return hint(fmt.Errorf("reply cannot be written: %w", err), "check where standard output goes")
}

// readLine reads a line of any length and returns at most maxLine of it.
func readLine(r *bufio.Reader) (string, error) {
	var out []byte
	for {
		part, err := r.ReadSlice('\n')
		if room := maxLine - len(out); room > 0 {
			out = append(out, part[:min(len(part), room)]...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return string(out), err
		}
	}
}

// A taken message, or the reply to a line that is none.
type taken struct {
	message bot.Message
	reply   *bot.Reply
}

func (a *asking) taken(line string) taken {
	if a.In != "json" {
		return a.message(line)
	}
	m, err := messageOf(line)
	if err != nil {
		r := bot.Unreadable("That line is not a message: " + err.Error() + `. Each line is one object like {"room":"shop","thread":"1","from":"ana","text":"25 inHg on a 4x8","at":"2026-03-04T07:00:00Z"}.`)
		return taken{reply: &r}
	}
	return a.dated(m)
}

func (a *asking) message(text string) taken {
	m := bot.Message{Room: "terminal", From: "you", Text: text}
	if a.Thread {
		m.Thread = "terminal"
	}
	return a.dated(m)
}

func (a *asking) dated(m bot.Message) taken {
	if m.At.IsZero() {
		m.At = time.Now()
	}
	if a.Thread && m.Thread == "" {
		m.Thread = "terminal"
	}
	a.count++
	m.ID = fmt.Sprintf("ask-%d-%d", m.At.UnixNano(), a.count)
	return taken{message: m}
}

// messageOf reads a line of --in json. What is missing takes its default.
func messageOf(line string) (bot.Message, error) {
	var in struct {
		Room, Thread, From, Text *string
		At                       *time.Time
	}
	if err := json.Unmarshal([]byte(line), &in); err != nil {
		var shape *json.UnmarshalTypeError
		if errors.As(err, &shape) && shape.Field != "" {
			return bot.Message{}, fmt.Errorf("%q is no %s", shape.Field, shape.Type)
		}
		return bot.Message{}, errors.New("it is no JSON object as it should be")
	}
	if !strings.HasPrefix(line, "{") {
		return bot.Message{}, errors.New("it is no JSON object")
	}
	m := bot.Message{Room: "terminal", From: "you"}
	for _, f := range []struct {
		to   *string
		from *string
	}{{&m.Room, in.Room}, {&m.Thread, in.Thread}, {&m.From, in.From}, {&m.Text, in.Text}} {
		if f.from != nil {
			*f.to = *f.from
		}
	}
	if in.At != nil {
		m.At = *in.At
	}
	return m, nil
}

// answer prints the reply to one message, at once.
func (a *asking) answer(ctx context.Context, t taken) (bot.Reply, error) {
	r := t.reply
	if r == nil {
		got, err := a.bot.Handle(ctx, t.message)
		if err != nil {
			return bot.Reply{}, storeTrouble(err)
		}
		r = &got
	}
	if a.Picture != "" {
		a.keep(*r)
	}
	if err := a.print(r); err != nil {
		return bot.Reply{}, unwritable(err)
	}
	return *r, nil
}

func (a *asking) print(r *bot.Reply) error {
	if a.JSON {
		a.line = append(r.AppendJSON(a.line[:0]), '\n')
		_, err := a.out.Write(a.line)
		return err
	}
	text := r.Text + "\n"
	if a.shown > 0 {
		text = "\n" + text
	}
	a.shown++
	_, err := a.out.WriteString(text)
	return err
}
