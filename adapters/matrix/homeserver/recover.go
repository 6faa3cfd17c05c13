package homeserver

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"syscall"
	"time"
)

// A killed Dendrite now and then finds its queue on disk empty, while the
// queue's readers remember how far they had read: it then takes messages and
// hands none out until as many have passed again. Its log says so.
const (
	emptied   = "is ahead of stream's last sequence"
	positions = "js/jetstream/*/streams/*/obs"
)

// Emptied returns how often the homeserver lost its queue when it was killed,
// and with it what it had accepted and not handed out yet.
func (s *Server) Emptied() int { return s.emptied }

// recover brings a homeserver that was killed up at another address, lets it
// finish what its queue holds, and ends it in good order. One whose queue is
// gone has its readers begin anew, as an administrator would see to.
func (s *Server) recover(ctx context.Context) error {
	before := len(s.log())
	at, err := freeAddress()
	if err != nil {
		return err
	}
	if err := s.up(ctx, at); err != nil {
		return err
	}
	if err := s.end(); err != nil {
		return err
	}
	s.killed = false
	if !bytes.Contains(s.log()[before:], []byte(emptied)) {
		return nil
	}
	s.emptied++
	found, err := filepath.Glob(filepath.Join(s.dir, positions))
	if err != nil {
		return err
	}
	for _, dir := range found {
		if err := os.RemoveAll(dir); err != nil {
			return err
		}
	}
	return nil
}

// endWithin is how long a homeserver may take to end in good order.
const endWithin = 30 * time.Second

func (s *Server) end() error {
	if err := s.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		return err
	}
	select {
	case <-s.gone:
		return nil
	case <-time.After(endWithin):
		return fmt.Errorf("homeserver does not end within %v: %s", endWithin, s.lastWords())
	}
}
