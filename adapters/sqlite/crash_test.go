package sqlite_test

import (
	"testing"

	"presshand/adapters/adaptertest"
)

func TestCrash(t *testing.T) { adaptertest.Crash(t, file(t), open, 200) }
