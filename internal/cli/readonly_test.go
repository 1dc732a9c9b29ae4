//go:build unix

package cli_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asNobody runs the program without the powers of root, who may write anywhere.
func asNobody(t *testing.T, home string, args ...string) (out, said string, code int) {
	t.Helper()
	cmd := command(t, home, args...)
	if os.Getuid() == 0 {
		const nobody = 65534
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		cmd.Path = filepath.Join(home, "sipsum")
	}
	cmd.Dir = "/"
	var o, e bytes.Buffer
	cmd.Stdout, cmd.Stderr = &o, &e
	err := cmd.Run()
	if _, ended := err.(*exec.ExitError); err != nil && !ended {
		require.NoError(t, err)
	}
	return o.String(), e.String(), cmd.ProcessState.ExitCode()
}

func TestAHomeThatMayNotBeWrittenTo(t *testing.T) {
	home, err := os.MkdirTemp("", "sipsum") // that of t.TempDir is not open to others
	require.NoError(t, err)
	t.Cleanup(func() {
		filepath.WalkDir(home, func(path string, _ os.DirEntry, _ error) error { return os.Chmod(path, 0o755) })
		os.RemoveAll(home)
	})
	program, err := exec.LookPath("sipsum")
	require.NoError(t, err)
	bytes, err := os.ReadFile(program)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(home, "sipsum"), bytes, 0o755))
	require.NoError(t, os.Chmod(home, 0o555))

	// Nothing there: from memory, which is said once.
	out, said, code := asNobody(t, home, "assay", "demo")
	assert.Zero(t, code, said)
	assert.Contains(t, out, "Garden Tide")
	assert.Regexp(t, `^sipsum: the database .* cannot be written to: working from memory, with sipsum's own table only\n$`, said)
	out, said, code = asNobody(t, home, "assay", "demo", "--quiet")
	assert.Zero(t, code)
	assert.Contains(t, out, "Garden Tide")
	assert.Empty(t, said)
	_, said, code = asNobody(t, home, "table", "load", "sr", "nowhere")
	assert.Equal(t, 1, code)
	assert.Contains(t, said, "name a file in a folder you may write to")

	// A database with a table of the owner's, in a folder that may not be written to,
	// and then in one that may: it is read.
	require.NoError(t, os.Chmod(home, 0o755))
	loaded, err := command(t, home, "table", "load", "ifct", "../../testdata/tables/ifct", "--force").CombinedOutput()
	require.NoError(t, err, "%s", loaded)
	folder := filepath.Join(home, ".local", "share", "sipsum")
	for _, open := range []string{".local", ".local/share"} {
		require.NoError(t, os.Chmod(filepath.Join(home, open), 0o755))
	}
	require.NoError(t, os.Chmod(filepath.Join(folder, "sipsum.db"), 0o444))
	for _, mode := range []os.FileMode{0o555, 0o777} {
		require.NoError(t, os.Chmod(folder, mode))
		out, said, code = asNobody(t, home, "food", "show", "ifct:Z001")
		assert.Zero(t, code, said)
		assert.Contains(t, out, "Z001", mode)
		assert.Empty(t, said, mode)
		_, said, code = asNobody(t, home, "table", "remove", "ifct")
		assert.Equal(t, 1, code, said)
		assert.Contains(t, said, "cannot be written to", mode)
	}

	// One of another sipsum lacks the core table of this one: from memory.
	require.NoError(t, os.Chmod(filepath.Join(folder, "sipsum.db"), 0o644))
	makeOld(t, filepath.Join(folder, "sipsum.db"))
	require.NoError(t, os.Chmod(filepath.Join(folder, "sipsum.db"), 0o444))
	require.NoError(t, os.Chmod(folder, 0o555))
	out, said, code = asNobody(t, home, "assay", "demo")
	assert.Zero(t, code, said)
	assert.Contains(t, out, "Garden Tide")
	assert.Contains(t, said, "what is in it was not made by this edition of sipsum: working from memory")
}
