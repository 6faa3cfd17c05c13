package sqlstore

import (
	"context"
	"database/sql"
	"strconv"
	"strings"
)

// querier is a database or a transaction.
type querier interface {
	ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error)
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

// conn runs statements written with ? and explains their errors.
type conn struct {
	q querier
	d Dialect
}

// exec returns how many rows the statement touched.
func (c conn) exec(ctx context.Context, query string, args ...any) (int, error) {
	r, err := c.q.ExecContext(ctx, c.numbered(query), clean(args)...)
	if err != nil {
		return 0, c.d.explain(err)
	}
	n, err := r.RowsAffected()
	return int(n), c.d.explain(err)
}

// scanner reads the columns of one row.
type scanner func(dest ...any) error

// each calls f for each row, and is done with the statement when it returns: a
// database with one connection can then run the next.
func (c conn) each(ctx context.Context, f func(scanner) error, query string, args ...any) (err error) {
	rows, err := c.q.QueryContext(ctx, c.numbered(query), clean(args)...)
	if err != nil {
		return c.d.explain(err)
	}
	defer func() {
		if e := rows.Close(); err == nil {
			err = c.d.explain(e)
		}
	}()
	for rows.Next() {
		if err := f(rows.Scan); err != nil {
			return err
		}
	}
	return c.d.explain(rows.Err())
}

// one reads a single row; without one the error is book.ErrNotFound.
func (c conn) one(ctx context.Context, dest []any, query string, args ...any) error {
	found := false
	err := c.each(ctx, func(scan scanner) error {
		found = true
		return scan(dest...)
	}, query, args...)
	if err == nil && !found {
		err = c.d.explain(sql.ErrNoRows)
	}
	return err
}

// next returns the next number of a counter. Counting in the transaction keeps
// the numbers in the order of the commits.
func (c conn) next(ctx context.Context, counter string) (n int64, err error) {
	err = c.one(ctx, []any{&n}, `UPDATE counters SET n = n + 1 WHERE name = ? RETURNING n`, counter)
	return n, err
}

func (c conn) numbered(query string) string {
	if !c.d.Numbered {
		return query
	}
	var b strings.Builder
	n := 0
	for _, r := range query {
		if r != '?' {
			b.WriteRune(r)
			continue
		}
		n++
		b.WriteString("$" + strconv.Itoa(n))
	}
	return b.String()
}

// clean replaces what a text column of PostgreSQL cannot hold, in place, so
// that both databases keep the same.
func clean(args []any) []any {
	for i, a := range args {
		if s, ok := a.(string); ok {
			args[i] = strings.ToValidUTF8(strings.ReplaceAll(s, "\x00", "\uFFFD"), "\uFFFD")
		}
	}
	return args
}

// holes returns n placeholders for an IN list.
func holes(n int) string { return strings.TrimSuffix(strings.Repeat("?, ", n), ", ") }

func anys[T any](vs []T) []any {
	out := make([]any, len(vs))
	for i, v := range vs {
		out[i] = v
	}
	return out
}
