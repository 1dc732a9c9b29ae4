//go:build unix

package store_test

import (
	"os"
	"os/exec"
	"syscall"
)

// asNobody makes root run the command without its powers.
func asNobody(cmd *exec.Cmd) {
	const nobody = 65534
	if os.Getuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
}
