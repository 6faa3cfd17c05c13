package matrix

import (
	"context"
	"fmt"
	"os"
	"testing"

	"presshand/adapters/matrix/homeserver"
)

var server *homeserver.Server

// TestMain starts one homeserver for all tests, or serves as a bot process
// that a test started.
func TestMain(m *testing.M) {
	child()
	os.Exit(run(m))
}

func run(m *testing.M) int {
	var err error
	if server, err = homeserver.Start(context.Background(), "../../testdata/matrix/dendrite.yaml"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	code := m.Run()
	if err := server.Stop(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return code
}
