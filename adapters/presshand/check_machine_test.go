package main

import (
	"net"
	"strings"
	"testing"
)

// A store of keys in a folder that is not there is told as that.
func TestCheck_matrixFolder(t *testing.T) {
	t.Setenv(matrixPassword, "secret")
	text := "store = \"shop.db\"\n[matrix]\nhomeserver = \"http://127.0.0.1:1\"\nuser = \"@press:localhost\"\nstore = \"/nowhere/at/all/keys.db\"\n"
	for _, command := range []string{"check", "serve", "matrix-setup"} {
		if code, out, errs := ran(t, "", command, "--config", configured(t, text)); code != exitFailed || !strings.Contains(out+errs, "matrix store: folder /nowhere/at/all is not there: make it") {
			t.Errorf("%s: code %d, %q, %q", command, code, out, errs)
		}
	}
}

// A port that another program has is wrong, and one that a presshand has is
// worth a remark: check may be asked while it serves.
func TestCheck_listen(t *testing.T) {
	s := newServed(t, "")
	busy, err := net.Listen("tcp", s.listen)
	if err != nil {
		t.Fatal(err)
	}
	if code, out, _ := ran(t, "", "check", "--config", s.config); code != exitFailed || !strings.Contains(out, "wrong  listen: health cannot be told") {
		t.Errorf("busy port: code %d\n%s", code, out)
	}
	busy.Close()
	if code, out, _ := ran(t, "", "check", "--config", s.config); code != exitOK || !strings.Contains(out, "ok     listen: "+s.listen+" is free") {
		t.Errorf("free port: code %d\n%s", code, out)
	}
	s.start()
	defer s.end()
	if code, out, _ := ran(t, "", "check", "--config", s.config); code != exitOK || !strings.Contains(out, "note   listen: a presshand tells its health") {
		t.Errorf("while it serves: code %d\n%s", code, out)
	}
}
