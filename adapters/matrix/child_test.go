package matrix

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"log/slog"
	"os"
	"os/exec"
	ossignal "os/signal"
	"strings"
	"syscall"
	"testing"

	"presshand/adapters/postgres"
	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

// childEnv holds what a bot process is to serve.
const childEnv = "PRESSHAND_MATRIX_CHILD"

// An order is what a bot process is started with.
type order struct {
	Homeserver, User, Store, Book, Worker string
}

// child serves as a bot process if the test binary was started as one.
func child() {
	text := os.Getenv(childEnv)
	if text == "" {
		return
	}
	if err := obey(text); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Exit(0)
}

func obey(text string) error {
	ctx, stop := ossignal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer stop()
	var o order
	if err := json.Unmarshal([]byte(text), &o); err != nil {
		return err
	}
	store, err := openBook(ctx, o.Book)
	if err != nil {
		return err
	}
	defer store.Close()
	return Serve(ctx, Config{
		Homeserver: o.Homeserver, User: o.User, Password: password, Store: o.Store, Allow: []string{"localhost"},
		Log:    slog.New(slog.NewTextHandler(os.Stderr, nil)),
		Person: func(user, name string) book.Person { return book.Person{ID: wordOf(user), Name: name} },
	}, newDesk(store, o.Worker, false, false))
}

// openBook opens a load book in a file or on a server.
func openBook(ctx context.Context, at string) (book.Store, error) {
	if strings.HasPrefix(at, "postgres:") {
		return postgres.Open(ctx, at)
	}
	return sqlite.Open(ctx, at)
}

// A process is a bot process that can be killed.
type process struct {
	cmd  *exec.Cmd
	gone chan struct{}
}

func spawn(t testing.TB, o order) *process {
	t.Helper()
	text, err := json.Marshal(o)
	must(t, err)
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childEnv+"="+string(text))
	said, err := cmd.StderrPipe()
	must(t, err)
	must(t, cmd.Start())
	p := &process{cmd, make(chan struct{})}
	go func() {
		for lines := bufio.NewScanner(said); lines.Scan(); {
			if line := lines.Text(); !strings.Contains(line, "level=INFO") {
				t.Logf("%s: %s", o.Worker, line)
			}
		}
		_ = cmd.Wait() // killed: its exit tells nothing
		close(p.gone)
	}()
	return p
}

func (p *process) kill() {
	_ = p.cmd.Process.Kill() // gone already is as good
	<-p.gone
}
