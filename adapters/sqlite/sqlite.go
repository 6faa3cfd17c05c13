// Package sqlite keeps the load book and the messages in one file, or in
// memory. It needs no set-up and no C library.
package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/pressly/goose/v3"
	"modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"presshand/adapters/sqlstore"
	"presshand/bot/book"
)

// readers is how many goroutines read the file at once.
const readers = 4

// patience is how long a store waits for another process. Who opens a new file
// while another does can be refused at once: the switch to WAL waits for nobody.
const patience = 5 * time.Second

// Open opens the store in a file, which is made if it is not there. What was
// recorded is on the disk: a write-ahead log, synced at each commit.
func Open(ctx context.Context, path string) (book.Store, error) {
	for end := time.Now().Add(patience); ; {
		s, err := open(ctx, path, fmt.Sprintf("_pragma=busy_timeout(%d)", patience.Milliseconds()))
		if !errors.Is(err, book.ErrBusy) || time.Now().After(end) {
			return s, err
		}
		select {
		case <-ctx.Done():
			return nil, err
		case <-time.After(50 * time.Millisecond):
		}
	}
}

// Memory returns a store that is gone when it is closed.
func Memory(ctx context.Context) (book.Store, error) {
	db, err := sql.Open("sqlite", "file::memory:?_txlock=immediate")
	if err != nil {
		return nil, explain(err)
	}
	db.SetMaxOpenConns(1) // each connection has a memory of its own
	return sqlstore.Open(ctx, db, Dialect)
}

// MakePrivate makes a file that its owner alone may read, if it is not there;
// SQLite would leave that to the umask. It gives the log and its index the mode
// of their file. Where none can be made, whoever opens it says so.
func MakePrivate(path string) {
	if f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL, 0o600); err == nil {
		f.Close()
	}
}

func open(ctx context.Context, path string, settings ...string) (book.Store, error) {
	MakePrivate(path)
	db, err := sql.Open("sqlite", dsn(path, settings...))
	if err != nil {
		return nil, explain(err)
	}
	db.SetMaxOpenConns(readers)
	db.SetMaxIdleConns(readers)
	s, err := sqlstore.Open(ctx, db, Dialect)
	if err != nil {
		return nil, fmt.Errorf("store %s: %w", path, err)
	}
	return s, nil
}

func dsn(path string, settings ...string) string {
	escaped := strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(path)
	// what is deleted or written over is overwritten with zeros, or the file
	// would go on holding what was forgotten
	return "file:" + escaped + "?_txlock=immediate&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=secure_delete(ON)&" +
		strings.Join(settings, "&")
}

// Dialect is what the shared statements need to know of SQLite.
var Dialect = sqlstore.Dialect{Goose: goose.DialectSQLite3, OneWriter: true, Explain: explain, Purge: emptyLog}

// emptyLog brings all that the log holds into the file and cuts the log off, of
// which the older part still has what was written over. It waits for who reads
// or writes.
func emptyLog(ctx context.Context, db *sql.DB) error {
	var busy, pages, moved int
	if err := db.QueryRowContext(ctx, `PRAGMA wal_checkpoint(TRUNCATE)`).Scan(&busy, &pages, &moved); err != nil {
		return err
	}
	if busy != 0 {
		return fmt.Errorf("%w: its log still holds what was said; forget again", book.ErrBusy)
	}
	return nil
}

var meanings = map[int]error{
	lib.SQLITE_BUSY:       book.ErrBusy,
	lib.SQLITE_LOCKED:     book.ErrBusy,
	lib.SQLITE_READONLY:   book.ErrReadOnly,
	lib.SQLITE_FULL:       book.ErrFull,
	lib.SQLITE_CANTOPEN:   book.ErrLost,
	lib.SQLITE_IOERR:      book.ErrLost,
	lib.SQLITE_CORRUPT:    book.ErrDamaged,
	lib.SQLITE_NOTADB:     book.ErrDamaged,
	lib.SQLITE_CONSTRAINT: sqlstore.ErrDuplicate,
}

func explain(err error) error {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return err
	}
	switch e.Code() {
	case lib.SQLITE_IOERR_SHMOPEN, lib.SQLITE_IOERR_SHMSIZE: // the index of the log cannot be made, or grow
		return fmt.Errorf("%w: %w", book.ErrFull, err)
	case lib.SQLITE_IOERR_WRITE: // what SQLite makes of a quota, and of a dying disk
		return fmt.Errorf("%w: the disk or a quota refused a write: %w", book.ErrFull, err)
	}
	// the low byte is the kind, the rest tells it more finely
	if meaning, ok := meanings[e.Code()&0xff]; ok {
		return fmt.Errorf("%w: %w", meaning, err)
	}
	return err
}
