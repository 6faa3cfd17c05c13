//go:build unix

package pgserver

import (
	"os/exec"
	"syscall"
)

// runs has a command run as the account.
func (a account) runs(cmd *exec.Cmd) {
	if a != (account{}) {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: uint32(a.uid), Gid: uint32(a.gid)}}
	}
}
