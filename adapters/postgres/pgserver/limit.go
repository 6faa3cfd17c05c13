package pgserver

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/jackc/pgx/v5"
)

// Unlimited lets a server's files grow as they like.
const Unlimited = -1

// LimitFiles keeps each file of a server that runs to a size, in bytes, until
// it is called again or the server is started again: what would be written
// beyond it is refused, as on a full disk or at a quota. It needs no right to
// mount a small disk, only the program prlimit of Linux.
func (s *Server) LimitFiles(ctx context.Context, size int64) error {
	limit := "unlimited"
	if size != Unlimited {
		limit = strconv.FormatInt(size, 10)
	}
	first, err := s.postmaster()
	if err != nil {
		return err
	}
	if err := s.limit(ctx, first, limit); err != nil {
		return err
	}
	// those that it starts from now on have the limit from it
	others, err := s.started(ctx)
	if err != nil {
		return err
	}
	for _, pid := range others {
		err := s.limit(ctx, pid, limit)
		if _, gone := os.Stat(fmt.Sprint("/proc/", pid)); err != nil && gone == nil {
			return err
		}
	}
	return nil
}

func (s *Server) limit(ctx context.Context, pid int, limit string) error {
	return s.asOwner(ctx, "prlimit", "--pid", strconv.Itoa(pid), "--fsize="+limit+":")
}

// postmaster is the process that starts the server's others.
func (s *Server) postmaster() (int, error) {
	kept, err := os.ReadFile(filepath.Join(s.data(), "postmaster.pid"))
	if err != nil {
		return 0, err
	}
	first, _, _ := strings.Cut(string(kept), "\n")
	return strconv.Atoi(first)
}

// started are the server's other processes.
func (s *Server) started(ctx context.Context) ([]int, error) {
	c, err := pgx.Connect(ctx, s.admin)
	if err != nil {
		return nil, err
	}
	defer c.Close(ctx)
	rows, err := c.Query(ctx, "SELECT pid FROM pg_stat_activity WHERE pid <> pg_backend_pid()")
	if err != nil {
		return nil, err
	}
	return pgx.CollectRows(rows, pgx.RowTo[int])
}
