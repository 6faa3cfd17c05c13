package sqlite_test

import (
	"database/sql"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/sqlite"
)

func TestUpgrade(t *testing.T) {
	connect := func(path string) (*sql.DB, error) { return sql.Open("sqlite", sqlite.DSN(path)) }
	adaptertest.Upgrade(t, sqlite.Dialect, func() string { return file(t) }, connect, open)
}

func TestCrowd(t *testing.T) { adaptertest.Crowd(t, file(t), open) }

func TestOpen_together(t *testing.T) { adaptertest.OpenTogether(t, file(t), open) }
