package postgres_test

import (
	"testing"

	"presshand/adapters/adaptertest"
)

func TestCrash(t *testing.T) { adaptertest.Crash(t, database(t), open, 200) }

func TestReplicas(t *testing.T) { adaptertest.Replicas(t, database(t), open, 3) }
