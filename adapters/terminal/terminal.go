// Package terminal is the chat room of one person at a terminal. On a real
// terminal lines can be edited, earlier ones come back with the arrow keys and
// replies are coloured; through a pipe all is plain.
//
// What goes where: the person types behind "> ", replies stand below, a blank
// line starts a new thread. Nothing else is printed, but that a reply takes longer.
package terminal

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"github.com/fatih/color"
	"golang.org/x/term"

	"presshand/bot"
)

const prompt = "> "

// A Terminal is a [bot.Room].
type Terminal struct {
	out    io.Writer
	read   func() (string, error)
	close  func() error
	thread int
	count  int
	began  time.Time
	paint  map[bot.LineKind]*color.Color // nil: plain
}

var _ bot.Room = (*Terminal)(nil)

// Open returns the room of who sits at in and out. Where both are a terminal
// it is in raw mode while a line is typed.
func Open(in io.Reader, out io.Writer) (*Terminal, error) {
	t := &Terminal{out: out, began: time.Now(), close: func() error { return nil }}
	keyboard, okIn := in.(*os.File)
	screen, okOut := out.(*os.File)
	if !okIn || !okOut || !term.IsTerminal(int(keyboard.Fd())) || !term.IsTerminal(int(screen.Fd())) {
		lines := bufio.NewReader(in)
		t.read = func() (string, error) { return plainLine(lines) }
		return t, nil
	}
	t.edit(keyboard, screen)
	return t, nil
}

// plainLine reads a line; a last one without an end counts.
func plainLine(r *bufio.Reader) (string, error) {
	line, err := r.ReadString('\n')
	if line != "" && err == io.EOF {
		err = nil
	}
	return line, err
}

// edit gives the terminal editing and colours.
func (t *Terminal) edit(keyboard, screen *os.File) {
	editor := term.NewTerminal(struct {
		io.Reader
		io.Writer
	}{keyboard, screen}, prompt)
	if w, h, err := term.GetSize(int(screen.Fd())); err == nil && w > 0 {
		_ = editor.SetSize(w, h) // a wrong width only wraps badly
	}
	t.out = editor
	t.read = func() (string, error) { return t.rawLine(keyboard, editor) }
	if os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" {
		t.paint = colours()
	}
	fmt.Fprintln(t.out, "What are you pressing? “help” tells what I know, a blank line starts afresh, Ctrl-D ends.")
}

// rawLine reads a line in raw mode. Between lines the terminal is as it was, so
// that Ctrl-C is a signal while an answer is worked out.
func (t *Terminal) rawLine(keyboard *os.File, editor *term.Terminal) (string, error) {
	before, err := term.MakeRaw(int(keyboard.Fd()))
	if err != nil {
		return "", fmt.Errorf("raw mode: %w", err)
	}
	t.close = func() error { return term.Restore(int(keyboard.Fd()), before) }
	line, err := editor.ReadLine()
	return line, errors.Join(err, t.close())
}

func colours() map[bot.LineKind]*color.Color {
	paint := map[bot.LineKind]*color.Color{
		bot.Headline: color.New(color.Bold),
		bot.ReadAs:   color.New(color.Faint),
		bot.Notice:   color.New(color.FgYellow),
		bot.Warning:  color.New(color.FgYellow),
		bot.Question: color.New(color.FgCyan),
	}
	for _, c := range paint {
		c.EnableColor() // the library looks at standard output only
	}
	return paint
}

// Receive returns the next line typed. A blank one starts a new thread.
func (t *Terminal) Receive(ctx context.Context) (bot.Message, error) {
	for {
		line, err := t.next(ctx)
		if err != nil {
			return bot.Message{}, err
		}
		text := strings.TrimSpace(line)
		if text == "" {
			t.thread++
			continue
		}
		t.count++
		began := t.began.UnixNano()
		return bot.Message{
			Room: "terminal", Thread: fmt.Sprintf("terminal-%d-%d", began, t.thread), ID: fmt.Sprintf("terminal-%d-%d", began, t.count),
			From: "you", Text: text, At: time.Now(), Via: "terminal",
		}, nil
	}
}

// next waits for a line, or for the end of ctx.
func (t *Terminal) next(ctx context.Context) (string, error) {
	type typed struct {
		line string
		err  error
	}
	got := make(chan typed, 1)
	go func() {
		line, err := t.read()
		got <- typed{line, err}
	}()
	select {
	case <-ctx.Done():
		return "", io.EOF
	case x := <-got:
		return x.line, x.err
	}
}

// Send prints a reply.
func (t *Terminal) Send(_ context.Context, _ bot.Message, r bot.Reply) error {
	var b strings.Builder
	for _, l := range r.Lines {
		text := l.Text
		if l.Kind == bot.Warning {
			text = "! " + text
		}
		if c := t.paint[l.Kind]; c != nil {
			text = c.Sprint(text)
		}
		b.WriteString(text)
		b.WriteByte('\n')
	}
	b.WriteByte('\n')
	_, err := io.WriteString(t.out, b.String())
	return err
}

// Working says that a reply takes longer than usual.
func (t *Terminal) Working() {
	fmt.Fprintln(t.out, "Looking for a better plan; Ctrl-C gives the best so far …")
}

// Close gives the terminal back as it was.
func (t *Terminal) Close() error { return t.close() }
