// Package postgres keeps the load book and the messages on a PostgreSQL
// server, so that several processes serve the same rooms.
package postgres

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"io"
	"net"
	"strings"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"

	"presshand/adapters/sqlstore"
	"presshand/bot/book"
)

// connections is how many a process opens at most.
const connections = 8

// Open opens the store at a URL, postgres://user@host/database. Its tables are
// made if they are not there.
func Open(ctx context.Context, url string) (book.Store, error) {
	config, err := pgx.ParseConfig(url)
	if err != nil {
		// the URL may hold a password, so the error is not passed on
		return nil, errors.New("cannot read the store's URL, want postgres://user@host/database")
	}
	db := stdlib.OpenDB(*config)
	db.SetMaxOpenConns(connections)
	db.SetMaxIdleConns(connections)
	if err := db.PingContext(ctx); err != nil {
		return nil, fmt.Errorf("store on %s: %w", config.Host, errors.Join(explain(err), db.Close()))
	}
	s, err := sqlstore.Open(ctx, db, Dialect)
	if err != nil {
		return nil, fmt.Errorf("store on %s: %w", config.Host, err)
	}
	return s, nil
}

// Dialect is what the shared statements need to know of PostgreSQL.
var Dialect = sqlstore.Dialect{
	Goose: goose.DialectPostgres, Numbered: true, RowLocks: true, Explain: explain,
	Locker: func() (lock.SessionLocker, error) {
		return lock.NewPostgresSessionLocker(lock.WithLockTimeout(1, 60)) // asked for each second, for a minute
	},
}

// meanings of SQLSTATE codes, by code or by class: PostgreSQL, Appendix A.
var meanings = map[string]error{
	"23505": sqlstore.ErrDuplicate, // unique_violation
	"40001": book.ErrConflict,      // serialization_failure
	"40P01": book.ErrConflict,      // deadlock_detected
	"55P03": book.ErrBusy,          // lock_not_available
	"53300": book.ErrBusy,          // too_many_connections
	"25006": book.ErrReadOnly,      // read_only_sql_transaction
	"53100": book.ErrFull,          // disk_full
	"3D000": book.ErrLost,          // invalid_catalog_name
	"08":    book.ErrLost,          // connection exception
	"28":    book.ErrLost,          // invalid authorization
	"57P":   book.ErrLost,          // shut down, starting up
	"58":    book.ErrLost,          // system error
	"XX":    book.ErrDamaged,       // internal error, data corrupted
}

// internalError is also the code for a file that cannot grow for another reason
// than a full disk: a quota, a limit. The routine of the server tells, in
// whichever language its message is.
const internalError = "XX000"

var growing = map[string]bool{
	"mdextend":     true,
	"mdzeroextend": true, // from PostgreSQL 16 on
}

func explain(err error) error {
	var e *pgconn.PgError
	if errors.As(err, &e) {
		if e.Code == internalError && growing[e.Routine] {
			return fmt.Errorf("%w: %w", book.ErrFull, err)
		}
		for code, meaning := range meanings {
			if strings.HasPrefix(e.Code, code) {
				return fmt.Errorf("%w: %w", meaning, err)
			}
		}
		return err
	}
	var dial *pgconn.ConnectError
	var netErr net.Error
	if errors.As(err, &dial) || errors.As(err, &netErr) || errors.Is(err, driver.ErrBadConn) || errors.Is(err, sql.ErrConnDone) || errors.Is(err, pgconn.ErrConnClosed) ||
		errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, net.ErrClosed) {
		return fmt.Errorf("%w: %w", book.ErrLost, err)
	}
	return err
}
