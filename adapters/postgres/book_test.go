package postgres_test

import (
	"testing"

	"presshand/adapters/adaptertest"
)

func TestBook(t *testing.T) { adaptertest.Book(t, fresh) }
