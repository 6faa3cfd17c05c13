// Package pgserver gives tests a real PostgreSQL: the one at PRESSHAND_POSTGRES,
// a URL of a user who may create databases, or else one that it starts from the
// installed binaries, in a folder of its own, on a socket that only this
// machine sees.
package pgserver

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"github.com/jackc/pgx/v5"
)

// An account is a user of this machine; the zero account is nobody in particular.
type account struct{ uid, gid int }

// ErrNotInstalled says that there is neither a server nor the means to start one.
var ErrNotInstalled = errors.New("no PostgreSQL: want PRESSHAND_POSTGRES to name a server, or the package postgresql installed")

// A Server is a running PostgreSQL.
type Server struct {
	admin string // URL of a database to connect to first
	dir   string // "" where the server is not ours
	bin   string
	owner account // not set where the server runs as whoever runs the tests
	made  int
}

// Start finds or starts a server.
func Start(ctx context.Context) (*Server, error) {
	if at := os.Getenv("PRESSHAND_POSTGRES"); at != "" {
		return &Server{admin: at}, nil
	}
	found, _ := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	if len(found) == 0 {
		return nil, ErrNotInstalled
	}
	slices.Sort(found)
	s := &Server{bin: filepath.Dir(found[len(found)-1])}
	if err := s.folder(); err != nil {
		return nil, err
	}
	if err := s.initialise(ctx); err != nil {
		return nil, errors.Join(err, os.RemoveAll(s.dir))
	}
	if err := s.Up(ctx); err != nil {
		return nil, errors.Join(err, os.RemoveAll(s.dir))
	}
	return s, nil
}

// folder makes the server's folder. PostgreSQL refuses to run as root, so root
// runs it as the user that the package made.
func (s *Server) folder() error {
	dir, err := os.MkdirTemp("", "pg")
	if err != nil {
		return err
	}
	s.dir = dir
	if os.Getuid() != 0 {
		return nil
	}
	u, err := user.Lookup("postgres")
	if err != nil {
		return err
	}
	if s.owner.uid, err = strconv.Atoi(u.Uid); err != nil {
		return err
	}
	if s.owner.gid, err = strconv.Atoi(u.Gid); err != nil {
		return err
	}
	return os.Chown(dir, s.owner.uid, s.owner.gid)
}

func (s *Server) initialise(ctx context.Context) error {
	return s.run(ctx, "initdb", "-D", s.data(), "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync")
}

// Up starts the server and waits until it answers. It is not synced to the
// disk: the tests kill processes, not the machine.
func (s *Server) Up(ctx context.Context) error {
	s.admin = "postgres:///postgres?user=postgres&host=" + url.QueryEscape(s.dir)
	return s.run(ctx, "pg_ctl", "-D", s.data(), "-l", filepath.Join(s.dir, "log"), "-w", "-t", "60",
		"-o", "-c listen_addresses='' -c unix_socket_directories='"+s.dir+"' -c max_connections=60 -c fsync=off", "start")
}

// Down stops the server at once, as a crash of its machine would, and keeps
// its data.
func (s *Server) Down(ctx context.Context) error {
	if s.dir == "" {
		return errors.New("cannot stop a server that was not started here")
	}
	return s.run(ctx, "pg_ctl", "-D", s.data(), "-w", "-m", "immediate", "stop")
}

// Stop ends a server that was started here and removes its data.
func (s *Server) Stop() error {
	if s.dir == "" {
		return nil
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	return errors.Join(s.Down(ctx), os.RemoveAll(s.dir))
}

// Database makes an empty database and returns its URL.
func (s *Server) Database(ctx context.Context) (string, error) {
	c, err := pgx.Connect(ctx, s.admin)
	if err != nil {
		return "", err
	}
	defer c.Close(ctx)
	s.made++
	name := fmt.Sprintf("presshand_%d_%d", os.Getpid(), s.made)
	if _, err := c.Exec(ctx, "CREATE DATABASE "+name); err != nil {
		return "", err
	}
	at, err := url.Parse(s.admin)
	if err != nil {
		return "", err
	}
	at.Path = "/" + name
	return at.String(), nil
}

func (s *Server) data() string { return filepath.Join(s.dir, "data") }

func (s *Server) run(ctx context.Context, program string, args ...string) error {
	return s.asOwner(ctx, filepath.Join(s.bin, program), args...)
}

// asOwner runs a program as who the server runs as.
func (s *Server) asOwner(ctx context.Context, program string, args ...string) error {
	cmd := exec.CommandContext(ctx, program, args...)
	cmd.Dir = s.dir
	s.owner.runs(cmd)
	// the server inherits what pg_ctl writes to, so that it must be a file
	log, err := os.OpenFile(filepath.Join(s.dir, filepath.Base(program)+".log"), os.O_CREATE|os.O_WRONLY|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	defer log.Close()
	cmd.Stdout, cmd.Stderr = log, log
	if err := cmd.Run(); err != nil {
		said, _ := os.ReadFile(log.Name())
		return fmt.Errorf("%s: %w: %s", program, err, said)
	}
	return nil
}
