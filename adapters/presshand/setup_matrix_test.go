//go:build goolm

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"presshand/adapters/matrix/homeserver"
)

// The set-up does not ask for the recovery key that it is to tell, and makes a
// store that only its owner can read.
func TestMatrixSetup_beforeTheRecoveryKey(t *testing.T) {
	server, err := homeserver.Start(t.Context(), "../../testdata/matrix/dendrite.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer server.Stop()
	press, err := server.Register(t.Context(), "press", "secret-of-press")
	if err != nil {
		t.Fatal(err)
	}
	t.Setenv(matrixPassword, "secret-of-press")
	dir := t.TempDir()
	key, keys := filepath.Join(dir, "recovery-key"), filepath.Join(dir, "keys.db")
	config := configured(t, fmt.Sprintf(`
store = %q
listen = ""
[matrix]
homeserver = %q
user = %q
store = %q
recovery_key_file = %q
`, filepath.Join(dir, "shop.db"), server.URL, press.UserID, keys, key))
	if code, out, _ := ran(t, "", "check", "--config", config); code != exitFailed || !strings.Contains(out, "leave recovery_key_file out until") {
		t.Errorf("check with a recovery key that nothing has told yet: code %d\n%s", code, out)
	}
	code, out, errs := ran(t, "", "matrix-setup", "--config", config)
	told := regexp.MustCompile(`(?m)^    (\S.*)$`).FindStringSubmatch(out)
	if code != exitOK || told == nil {
		t.Fatalf("set-up: code %d, %q, %q", code, out, errs)
	}
	if info, err := os.Stat(keys); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("%s: %v, %v; want a file for its owner alone", keys, info, err)
	}
	if err := os.WriteFile(key, []byte(told[1]+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, out, errs := ran(t, "", "check", "--config", config); code != exitOK {
		t.Errorf("check: code %d, %q\n%s", code, errs, out)
	}
}
