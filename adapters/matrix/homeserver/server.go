// Package homeserver gives tests a real Matrix homeserver: a Dendrite on this
// machine's loopback address, in a folder of its own, that can be killed and
// started again.
package homeserver

import (
	"bytes"
	"context"
	"crypto/rand"
	"encoding/pem"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/synapseadmin"
)

const (
	version = "v0.13.8"
	secret  = "test-shared-secret" // in the configuration
)

// A Server is a homeserver that runs, or was killed and can run again.
type Server struct {
	URL string

	program, dir, at string
	cmd              *exec.Cmd
	gone             chan struct{}
	killed           bool // and not started since
	emptied          int
}

// Start starts a new homeserver with a configuration, in which {folder} stands
// for the folder of its files.
func Start(ctx context.Context, config string) (*Server, error) {
	program, err := find(ctx)
	if err != nil {
		return nil, err
	}
	yaml, err := os.ReadFile(config)
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "homeserver")
	if err != nil {
		return nil, err
	}
	s := &Server{program: program, dir: dir}
	yaml = bytes.ReplaceAll(yaml, []byte("{folder}"), []byte((&url.URL{Path: filepath.ToSlash(dir)}).EscapedPath()))
	if err := errors.Join(
		os.WriteFile(filepath.Join(dir, "dendrite.yaml"), yaml, 0o600),
		os.WriteFile(filepath.Join(dir, "matrix_key.pem"), signingKey(), 0o600),
		s.chooseAddress(), s.Up(ctx),
	); err != nil {
		return nil, errors.Join(err, s.Stop())
	}
	return s, nil
}

// signingKey makes the key that a homeserver signs with, in the form of
// Dendrite's generate-keys.
func signingKey() []byte {
	seed := make([]byte, 32)
	_, _ = rand.Read(seed) // never fails
	return pem.EncodeToMemory(&pem.Block{Type: "MATRIX PRIVATE KEY", Headers: map[string]string{"Key-ID": "ed25519:test01"}, Bytes: seed})
}

// chooseAddress takes a port that is free; it stays the same over restarts.
func (s *Server) chooseAddress() (err error) {
	s.at, err = freeAddress()
	s.URL = "http://" + s.at
	return err
}

func freeAddress() (string, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return "", err
	}
	return l.Addr().String(), l.Close()
}

// startWithin is how long a homeserver may take to answer.
const startWithin = 30 * time.Second

// Up starts the homeserver and waits until it answers. One that was killed is
// first brought up where nobody talks to it, to put its queue in order.
func (s *Server) Up(ctx context.Context) error {
	if s.killed {
		if err := s.recover(ctx); err != nil {
			return err
		}
	}
	return s.up(ctx, s.at)
}

func (s *Server) up(ctx context.Context, at string) error {
	log, err := os.OpenFile(filepath.Join(s.dir, "log"), os.O_CREATE|os.O_WRONLY|os.O_APPEND, 0o600)
	if err != nil {
		return err
	}
	defer log.Close()
	cmd := exec.Command(s.program, "-config", "dendrite.yaml", "-http-bind-address", at)
	cmd.Dir, cmd.Stdout, cmd.Stderr = s.dir, log, log
	if err := cmd.Start(); err != nil {
		return err
	}
	gone := make(chan struct{})
	s.cmd, s.gone = cmd, gone
	go func() {
		_ = cmd.Wait() // killed: its exit tells nothing
		close(gone)
	}()
	ctx, done := context.WithTimeout(ctx, startWithin)
	defer done()
	for {
		if answers(ctx, at) {
			return nil
		}
		select {
		case <-gone:
			return fmt.Errorf("homeserver ended at its start: %s", s.lastWords())
		case <-ctx.Done():
			return fmt.Errorf("homeserver does not answer within %v: %s", startWithin, s.lastWords())
		case <-time.After(10 * time.Millisecond):
		}
	}
}

func answers(ctx context.Context, at string) bool {
	req, err := http.NewRequestWithContext(ctx, http.MethodGet, "http://"+at+"/_matrix/client/versions", nil)
	if err != nil {
		return false
	}
	r, err := http.DefaultClient.Do(req)
	if err != nil {
		return false
	}
	return r.Body.Close() == nil && r.StatusCode == http.StatusOK
}

// Kill ends the homeserver at once, as a crash would, and keeps its data.
func (s *Server) Kill() {
	if s.cmd == nil {
		return
	}
	_ = s.cmd.Process.Kill() // gone already is as good
	<-s.gone
	s.killed = true
}

// Stop ends the homeserver and removes its data.
func (s *Server) Stop() error {
	s.Kill()
	return os.RemoveAll(s.dir)
}

func (s *Server) log() []byte {
	b, err := os.ReadFile(filepath.Join(s.dir, "log"))
	if err != nil {
		return []byte(err.Error())
	}
	return b
}

// lastWords returns the end of the log.
func (s *Server) lastWords() string {
	b := s.log()
	return string(b[max(0, len(b)-2000):])
}

// Register makes a user and returns a client that is logged in as a first
// device of theirs.
func (s *Server) Register(ctx context.Context, name, password string) (*mautrix.Client, error) {
	c, err := mautrix.NewClient(s.URL, "", "")
	if err != nil {
		return nil, err
	}
	r, err := (&synapseadmin.Client{Client: c}).SharedSecretRegister(ctx, secret, synapseadmin.ReqSharedSecretRegister{
		Username: name, Password: password,
	})
	if err != nil {
		return nil, err
	}
	c.UserID, c.AccessToken, c.DeviceID = r.UserID, r.AccessToken, r.DeviceID
	return c, nil
}

// find returns the homeserver's program: the one at PRESSHAND_DENDRITE, one in
// the path, or one that it builds. With PRESSHAND_REAL set it builds none.
func find(ctx context.Context) (string, error) {
	if at := os.Getenv("PRESSHAND_DENDRITE"); at != "" {
		return filepath.Abs(at)
	}
	if at, err := exec.LookPath("dendrite"); err == nil {
		return at, nil
	}
	if os.Getenv("PRESSHAND_REAL") != "" {
		return "", errors.New("no Dendrite: want PRESSHAND_DENDRITE to name the program, or dendrite in the path")
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	dir := filepath.Join(cache, "presshand", "dendrite-"+version)
	at := filepath.Join(dir, "dendrite")
	if _, err := os.Stat(at); err == nil {
		return at, nil
	}
	return at, build(ctx, dir)
}

// build takes minutes, once.
func build(ctx context.Context, dir string) error {
	cmd := exec.CommandContext(ctx, "go", "install", "github.com/matrix-org/dendrite/cmd/dendrite@"+version)
	cmd.Env = append(os.Environ(), "GOBIN="+dir, "CGO_ENABLED=1", "GOFLAGS=")
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("homeserver cannot be built: %w: %s", err, said.String())
	}
	return nil
}
