package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestSecret_standsAlone(t *testing.T) {
	for name, c := range map[string]struct{ text, want, wrong string }{
		"alone":         {"s3cret\n", "s3cret", ""},
		"nothing":       {"\n", "", "is empty"},
		"a line behind": {"s3cret\nchmod 600 file\n", "", "has 2 lines"},
	} {
		t.Run(name, func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "secret")
			if err := os.WriteFile(file, []byte(c.text), 0o600); err != nil {
				t.Fatal(err)
			}
			got, err := secret("PRESSHAND_NONE", file)
			if got != c.want || (err != nil) != (c.wrong != "") || err != nil && !strings.Contains(err.Error(), c.wrong) {
				t.Errorf("secret %q, error %v, want %q, %q", got, err, c.want, c.wrong)
			}
		})
	}
}
