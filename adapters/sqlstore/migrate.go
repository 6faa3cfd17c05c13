package sqlstore

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"

	"github.com/pressly/goose/v3"

	"presshand/bot/book"
)

//go:embed migrations/*.sql
var migrations embed.FS

// migrate brings the schema up to date. A newer schema is refused.
func migrate(ctx context.Context, db *sql.DB, d Dialect) error {
	p, err := provider(db, d)
	if err != nil {
		return d.explain(err)
	}
	have, want, err := p.GetVersions(ctx)
	for err == nil && have < want {
		_, failed := p.Up(ctx)
		before := have
		have, want, err = p.GetVersions(ctx)
		if failed != nil && have <= before {
			return d.explain(failed)
		}
		// without a lock around it all, another process may have been faster
		// with a step; then this one goes on from there
	}
	if err == nil && have > want {
		err = fmt.Errorf("%w: its schema is version %d, this program knows up to %d; install a newer presshand", book.ErrNewer, have, want)
	}
	return d.explain(err)
}

// MigrateTo brings the schema of an empty database up to an earlier version.
// It serves the tests that upgrade from it.
func MigrateTo(ctx context.Context, db *sql.DB, d Dialect, version int64) error {
	p, err := provider(db, d)
	if err != nil {
		return err
	}
	_, err = p.UpTo(ctx, version)
	return err
}

// Versions returns the versions of the schema there have been, oldest first.
func Versions(db *sql.DB, d Dialect) ([]int64, error) {
	p, err := provider(db, d)
	if err != nil {
		return nil, err
	}
	var out []int64
	for _, s := range p.ListSources() {
		out = append(out, s.Version)
	}
	return out, nil
}

func provider(db *sql.DB, d Dialect) (*goose.Provider, error) {
	files, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return nil, err
	}
	opts := []goose.ProviderOption{goose.WithDisableGlobalRegistry(true), goose.WithLogger(goose.NopLogger())}
	if d.Locker != nil {
		l, err := d.Locker()
		if err != nil {
			return nil, err
		}
		opts = append(opts, goose.WithSessionLocker(l))
	}
	return goose.NewProvider(d.Goose, db, files, opts...)
}
