package terminal_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"testing"

	"presshand/adapters/terminal"
	"presshand/bot"
)

func TestTerminal_threads(t *testing.T) {
	room, err := terminal.Open(strings.NewReader("one\ntwo\n\n  \nthree"), io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	defer room.Close()
	var threads, texts []string
	for {
		m, err := room.Receive(context.Background())
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		threads, texts = append(threads, m.Thread), append(texts, m.Text)
	}
	if strings.Join(texts, "|") != "one|two|three" {
		t.Fatalf("received %v, want one, two, three", texts)
	}
	if threads[0] != threads[1] || threads[1] == threads[2] {
		t.Errorf("threads are %v, want the first two alike and the third apart", threads)
	}
}

func TestTerminal_plainThroughAPipe(t *testing.T) {
	var out bytes.Buffer
	room, err := terminal.Open(strings.NewReader(""), &out)
	if err != nil {
		t.Fatal(err)
	}
	r := bot.Reply{Lines: []bot.Line{{Kind: bot.Headline, Text: "Good: it fits."}, {Kind: bot.Warning, Text: "Hands out."}}}
	if err := room.Send(context.Background(), bot.Message{}, r); err != nil {
		t.Fatal(err)
	}
	if got, want := out.String(), "Good: it fits.\n! Hands out.\n\n"; got != want {
		t.Errorf("printed %q, want %q", got, want)
	}
}

func TestTerminal_stopsWithItsContext(t *testing.T) {
	in, _ := io.Pipe() // nobody types
	room, err := terminal.Open(in, io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := room.Receive(ctx); !errors.Is(err, io.EOF) {
		t.Errorf("error is %v, want the end of input", err)
	}
}
