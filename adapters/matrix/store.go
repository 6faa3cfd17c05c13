package matrix

import (
	"context"
	"database/sql"
	_ "embed" // for the tables
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/stdlib"
	"go.mau.fi/util/dbutil"
	"maunium.net/go/mautrix/id"
	"maunium.net/go/mautrix/sqlstatestore"
	_ "modernc.org/sqlite" // the driver "sqlite"
)

// schema holds the tables of this package on a PostgreSQL server, where the
// load book may live in the same database.
const schema = "presshand_matrix"

// A store keeps what an account must not forget: its keys and the rooms' state,
// which mautrix looks after, and the tables below.
type store struct {
	db    *dbutil.Database
	state *states
}

//go:embed tables.sql
var firstTables string

var tables = dbutil.UpgradeTable{
	dbutil.WrapUpgrade(0, 1, 1, "First tables", dbutil.TxnModeOn, func(ctx context.Context, db *dbutil.Database) error {
		_, err := db.Exec(ctx, firstTables)
		return err
	}),
	dbutil.WrapUpgrade(1, 2, 2, "Who said a message", dbutil.TxnModeOn, func(ctx context.Context, db *dbutil.Database) error {
		_, err := db.Exec(ctx, `ALTER TABLE known ADD COLUMN sender TEXT NOT NULL DEFAULT ''`)
		return err
	}),
}

// openStore opens the store, which is made if it is not there.
func openStore(ctx context.Context, name string) (*store, error) {
	db, err := openDatabase(ctx, name)
	if err != nil {
		return nil, err
	}
	s := &store{db: db.Child("presshand_version", tables, nil)}
	s.state = &states{sqlstatestore.NewSQLStateStore(db, dbutil.NoopLogger, false)}
	for _, d := range []*dbutil.Database{s.db, s.state.Database} {
		if err := d.Upgrade(ctx); err != nil {
			return nil, errors.Join(fmt.Errorf("store of the Matrix account cannot be used: %w", err), db.Close())
		}
	}
	return s, nil
}

func openDatabase(ctx context.Context, name string) (*dbutil.Database, error) {
	if strings.HasPrefix(name, "postgres://") || strings.HasPrefix(name, "postgresql://") {
		return openPostgres(ctx, name)
	}
	escaped := strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(name)
	db, err := sql.Open("sqlite", "file:"+escaped+"?_txlock=immediate&_pragma=foreign_keys(1)&_pragma=journal_mode(WAL)"+
		"&_pragma=synchronous(FULL)&_pragma=busy_timeout(5000)")
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(4)
	return dbutil.NewWithDB(db, "sqlite")
}

func openPostgres(ctx context.Context, url string) (*dbutil.Database, error) {
	config, err := pgx.ParseConfig(url)
	if err != nil {
		// the URL may hold a password, so the error is not passed on
		return nil, errors.New("cannot read the URL of the Matrix account's store, want postgres://user@host/database")
	}
	config.RuntimeParams["search_path"] = schema
	db := stdlib.OpenDB(*config)
	db.SetMaxOpenConns(4)
	if _, err := db.ExecContext(ctx, "CREATE SCHEMA IF NOT EXISTS "+schema); err != nil {
		return nil, errors.Join(fmt.Errorf("store of the Matrix account on %s: %w", config.Host, err), db.Close())
	}
	return dbutil.NewWithDB(db, "postgres")
}

func (s *store) close() error { return s.db.RawDB.Close() }

// login returns what the account logged in with last.
func (s *store) login(ctx context.Context, user id.UserID) (device id.DeviceID, token string, err error) {
	err = s.one(ctx, []any{&device, &token}, `SELECT device, token FROM account WHERE user_id = $1`, user)
	return device, token, err
}

func (s *store) keepLogin(ctx context.Context, user id.UserID, device id.DeviceID, token string) error {
	return s.exec(ctx, `INSERT INTO account (user_id, device, token) VALUES ($1, $2, $3)
		ON CONFLICT (user_id) DO UPDATE SET device = excluded.device, token = excluded.token`, user, device, token)
}

// place returns the sync token, "" before the first sync.
func (s *store) place(ctx context.Context, user id.UserID) (place string, err error) {
	err = s.one(ctx, []any{&place}, `SELECT place FROM account WHERE user_id = $1`, user)
	return place, err
}

func (s *store) keepPlace(ctx context.Context, user id.UserID, place string) error {
	return s.exec(ctx, `UPDATE account SET place = $1 WHERE user_id = $2`, place, user)
}

func (s *store) avatar(ctx context.Context, user id.UserID) (digest string, err error) {
	err = s.one(ctx, []any{&digest}, `SELECT avatar FROM account WHERE user_id = $1`, user)
	return digest, err
}

func (s *store) keepAvatar(ctx context.Context, user id.UserID, digest string) error {
	return s.exec(ctx, `UPDATE account SET avatar = $1 WHERE user_id = $2`, digest, user)
}

// seal keeps that a room is encrypted, for ever.
func (s *store) seal(ctx context.Context, room id.RoomID) error {
	return s.exec(ctx, `INSERT INTO sealed (room_id) VALUES ($1) ON CONFLICT (room_id) DO NOTHING`, room)
}

func (s *store) isSealed(ctx context.Context, room id.RoomID) (sealed bool, err error) {
	err = s.one(ctx, []any{&sealed}, `SELECT true FROM sealed WHERE room_id = $1`, room)
	return sealed, err
}

// putAside keeps which event could not be dealt with, and why. What it said is
// not kept: it may not have been meant for the bot.
func (s *store) putAside(ctx context.Context, event id.EventID, room id.RoomID, kind, reason string) error {
	return s.exec(ctx, `INSERT INTO aside (event_id, room_id, type, reason, at) VALUES ($1, $2, $3, $4, $5)
		ON CONFLICT (event_id) DO NOTHING`, event, room, kind, reason, time.Now().UnixMilli())
}

func (s *store) exec(ctx context.Context, query string, args ...any) error {
	_, err := s.db.Exec(ctx, query, args...)
	return ofStore(err)
}

// one reads a single row; without one dest is left alone.
func (s *store) one(ctx context.Context, dest []any, query string, args ...any) error {
	err := s.db.QueryRow(ctx, query, args...).Scan(dest...)
	if errors.Is(err, sql.ErrNoRows) {
		return nil
	}
	return ofStore(err)
}

// A storeError is a failure of the account's store: trying again can help.
type storeError struct{ err error }

func (e *storeError) Error() string { return "store of the Matrix account: " + e.err.Error() }
func (e *storeError) Unwrap() error { return e.err }

func ofStore(err error) error {
	if err == nil {
		return nil
	}
	return &storeError{err}
}
