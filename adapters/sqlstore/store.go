package sqlstore

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"

	"presshand/bot/book"
)

// A Dialect is what differs between databases.
type Dialect struct {
	Goose     goose.Dialect
	Numbered  bool // placeholders are $1, $2, … instead of ?
	RowLocks  bool // several processes claim work: FOR UPDATE SKIP LOCKED
	OneWriter bool // writers wait for each other here, not in the database
	// Locker lets one process at a time migrate; nil where the file's lock does.
	Locker func() (lock.SessionLocker, error)
	// Explain wraps a driver's error in what the port names. [ErrDuplicate]
	// stands for a key that is there already.
	Explain func(error) error
	// Purge wipes from the files what was deleted; nil where the database sees
	// to that in its own time.
	Purge func(context.Context, *sql.DB) error
}

// ErrDuplicate is what [Dialect.Explain] wraps the violation of a key in.
var ErrDuplicate = errors.New("key is there already")

// A Store keeps everything in one database.
type Store struct {
	db      *sql.DB
	dialect Dialect
	gate    chan struct{} // holds one token while a writer writes
}

var _ book.Store = (*Store)(nil)

// Open brings the schema of the database up to date and returns a store on it.
// The store closes db, also when Open fails.
func Open(ctx context.Context, db *sql.DB, d Dialect) (*Store, error) {
	if err := migrate(ctx, db, d); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return &Store{db: db, dialect: d, gate: make(chan struct{}, 1)}, nil
}

// Close closes the database.
func (s *Store) Close() error { return s.dialect.explain(s.db.Close()) }

func (d Dialect) explain(err error) error {
	switch {
	case err == nil, errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	case errors.Is(err, sql.ErrNoRows):
		return fmt.Errorf("%w: %w", book.ErrNotFound, err)
	}
	return d.Explain(err)
}

// write runs f in one transaction.
func (s *Store) write(ctx context.Context, f func(conn) error) error {
	if s.dialect.OneWriter {
		select {
		case s.gate <- struct{}{}:
			defer func() { <-s.gate }()
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	t, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return s.dialect.explain(err)
	}
	if err := f(conn{t, s.dialect}); err != nil {
		// the first error tells more than what became of the rollback
		_ = t.Rollback()
		return err
	}
	return s.dialect.explain(t.Commit())
}

// read is for single statements outside a transaction.
func (s *Store) read() conn { return conn{s.db, s.dialect} }

// micros is how times are kept; the zero time is 0.
func micros(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return t.UnixMicro()
}

func fromMicros(n int64) time.Time {
	if n == 0 {
		return time.Time{}
	}
	return time.UnixMicro(n).UTC()
}
