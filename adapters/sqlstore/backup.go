package sqlstore

import (
	"bufio"
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"presshand/bot/book"
)

// tables in the order in which a restore fills them.
var tables = []string{"counters", "inbox", "outbox", "threads", "profiles", "entries", "loads", "reminders", "leases", "marks"}

// head is the first line of a backup.
type head struct {
	Backup string `json:"backup"`
	Schema int64  `json:"schema"`
}

// row is every other line.
type row struct {
	Table string         `json:"table"`
	Row   map[string]any `json:"row"`
}

const backupOf = "presshand"

// Backup writes everything as lines of JSON, which any store of this or a
// newer schema restores, whichever its database.
func (s *Store) Backup(ctx context.Context, w io.Writer) error {
	p, err := provider(s.db, s.dialect)
	if err != nil {
		return s.dialect.explain(err)
	}
	version, err := p.GetDBVersion(ctx)
	if err != nil {
		return s.dialect.explain(err)
	}
	t, err := s.db.BeginTx(ctx, &sql.TxOptions{Isolation: s.dialect.snapshot()})
	if err != nil {
		return s.dialect.explain(err)
	}
	defer t.Rollback() // nothing was changed
	out := bufio.NewWriter(w)
	lines := json.NewEncoder(out)
	if err := lines.Encode(head{backupOf, version}); err != nil {
		return err
	}
	for _, table := range tables {
		if err := dump(ctx, t, table, lines); err != nil {
			return s.dialect.explain(err)
		}
	}
	return out.Flush()
}

// snapshot is the isolation under which several statements see one state.
func (d Dialect) snapshot() sql.IsolationLevel {
	if d.RowLocks {
		return sql.LevelRepeatableRead
	}
	return sql.LevelDefault
}

func dump(ctx context.Context, t *sql.Tx, table string, lines *json.Encoder) error {
	rows, err := t.QueryContext(ctx, `SELECT * FROM `+table)
	if err != nil {
		return err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return err
	}
	cells := make([]any, len(columns))
	into := make([]any, len(columns))
	for i := range cells {
		into[i] = &cells[i]
	}
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return err
		}
		r := row{table, map[string]any{}}
		for i, name := range columns {
			r.Row[name] = cells[i]
		}
		if err := lines.Encode(r); err != nil {
			return err
		}
	}
	return rows.Err()
}

// Restore reads a backup into an empty store, whole or not at all.
func (s *Store) Restore(ctx context.Context, r io.Reader) error {
	lines := json.NewDecoder(bufio.NewReader(r))
	lines.UseNumber()
	var h head
	if err := lines.Decode(&h); err != nil || h.Backup != backupOf {
		return fmt.Errorf("%w: its first line is not that of one", book.ErrBackup)
	}
	p, err := provider(s.db, s.dialect)
	if err != nil {
		return s.dialect.explain(err)
	}
	version, err := p.GetDBVersion(ctx)
	if err != nil {
		return s.dialect.explain(err)
	}
	if h.Schema > version {
		return fmt.Errorf("%w: the backup's schema is version %d, this program knows up to %d", book.ErrNewer, h.Schema, version)
	}
	return s.write(ctx, func(c conn) error {
		if err := c.empty(ctx); err != nil {
			return err
		}
		for {
			var line row
			err := lines.Decode(&line)
			if errors.Is(err, io.EOF) {
				return nil
			}
			if err != nil {
				return fmt.Errorf("%w: %w", book.ErrBackup, err)
			}
			if err := c.insertRow(ctx, line); err != nil {
				return ofBackup(ctx, err)
			}
		}
	})
}

// ofBackup lays a refused row to the backup, unless it is the store's trouble.
func ofBackup(ctx context.Context, err error) error {
	for _, its := range []error{book.ErrBackup, book.ErrBusy, book.ErrReadOnly, book.ErrFull, book.ErrLost, book.ErrDamaged, book.ErrConflict, ctx.Err()} {
		if its != nil && errors.Is(err, its) {
			return err
		}
	}
	return fmt.Errorf("%w: %w", book.ErrBackup, err)
}

// empty refuses a store that holds something, and clears the counters that
// every store has.
func (c conn) empty(ctx context.Context) error {
	for _, table := range tables[1:] {
		n := 0
		if err := c.one(ctx, []any{&n}, `SELECT COUNT(*) FROM (SELECT 1 FROM `+table+` LIMIT 1) AS found`); err != nil {
			return err
		}
		if n > 0 {
			return fmt.Errorf("%w: got a store with something in its %s, want an empty one", book.ErrNotEmpty, table)
		}
	}
	_, err := c.exec(ctx, `DELETE FROM counters`)
	return err
}

func (c conn) insertRow(ctx context.Context, line row) error {
	known := false
	for _, t := range tables {
		known = known || t == line.Table
	}
	if !known {
		return fmt.Errorf("%w: unknown table %q", book.ErrBackup, line.Table)
	}
	var names []string
	var args []any
	for name, v := range line.Row {
		if strings.Trim(name, "abcdefghijklmnopqrstuvwxyz_") != "" {
			return fmt.Errorf("%w: unknown column %q", book.ErrBackup, name)
		}
		if n, ok := v.(json.Number); ok {
			v = plain(n)
		}
		names, args = append(names, name), append(args, v)
	}
	_, err := c.exec(ctx, `INSERT INTO `+line.Table+` (`+strings.Join(names, ", ")+`) VALUES (`+holes(len(args))+`)`, args...)
	return err
}

func plain(n json.Number) any {
	if i, err := n.Int64(); err == nil {
		return i
	}
	f, _ := n.Float64()
	return f
}
