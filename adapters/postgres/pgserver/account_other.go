//go:build !unix

package pgserver

import "os/exec"

// runs does nothing: only on Unix is a server run as someone else.
func (account) runs(*exec.Cmd) {}
