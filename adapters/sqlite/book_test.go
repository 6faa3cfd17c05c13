package sqlite_test

import (
	"testing"

	"presshand/adapters/adaptertest"
)

func TestBook_file(t *testing.T)   { adaptertest.Book(t, fresh) }
func TestBook_memory(t *testing.T) { adaptertest.Book(t, memory) }
