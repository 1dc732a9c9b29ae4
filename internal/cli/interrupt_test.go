//go:build unix

package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/tablestest"
)

// An interruption ends whatever the program does, with exit code 130 and a word.
// Nothing here asserts a time; a command that did not hear would run into the
// test's own deadline, or end as if nothing had been said.
func TestAnInterruptionEndsAnything(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	long := filepath.Join(t.TempDir(), "long.drink.yaml") // as much work as the limits allow, seconds of it
	require.NoError(t, os.WriteFile(long, []byte("drink: x\nserves: 1\ncomponents:\n  c:\n    ingredients: [100 g core:lemon-juice, 10 g core:sugar-white]\n    steps:\n"+
		strings.Repeat("      - heat: {code: \"2151\"}\n      - measured: {ph: 3 ± 1}\n", 34)+"build: [10 g c]\n"), 0o600))
	home := t.TempDir()
	require.NoError(t, command(t, home, "table", "list").Run()) // so that the core table is there
	for name, c := range map[string]struct {
		args  []string
		stdin bool // an open pipe to which nobody writes
		out   bool // a full pipe from which nobody reads
	}{
		"waiting for the standard input": {args: []string{"assay", "-"}, stdin: true},
		"calculating":                    {args: []string{"assay", long, "--next"}},
		"waiting to write JSON":          {args: []string{"schema"}, out: true},
	} {
		t.Run(name, func(t *testing.T) {
			cmd := command(t, home, c.args...)
			var said bytes.Buffer
			cmd.Stderr = &said
			if c.stdin {
				in, err := cmd.StdinPipe()
				require.NoError(t, err)
				defer in.Close()
			}
			if c.out {
				full, err := os.OpenFile(pipe, os.O_RDWR, 0)
				require.NoError(t, err)
				defer full.Close()
				fillUp(t, full)
				cmd.Stdout = full
			}
			require.NoError(t, cmd.Start())
			time.Sleep(300 * time.Millisecond) // until it waits; sooner, it is interrupted in its start
			require.NoError(t, cmd.Process.Signal(os.Interrupt))
			err := cmd.Wait()
			require.Error(t, err)
			assert.Equal(t, 130, cmd.ProcessState.ExitCode(), said.String())
			assert.Equal(t, "interrupted\n", said.String())
		})
	}
}

// fillUp writes to a pipe until it takes no more.
func fillUp(t *testing.T, pipe *os.File) {
	t.Helper()
	require.NoError(t, pipe.SetWriteDeadline(time.Now().Add(50*time.Millisecond)))
	_, err := pipe.Write(make([]byte, 1<<21))
	require.ErrorIs(t, err, os.ErrDeadlineExceeded)
	_ = pipe.SetWriteDeadline(time.Time{})
}

// A load that is interrupted leaves nothing of the table behind.
func TestAnInterruptedLoadLeavesNothing(t *testing.T) {
	sr := tablestest.Published(t, "sr28")
	home := t.TempDir()
	require.NoError(t, command(t, home, "table", "list").Run()) // so that the core table is there
	cmd := command(t, home, "table", "load", "sr", sr)
	require.NoError(t, cmd.Start())
	time.Sleep(700 * time.Millisecond) // the whole takes several seconds
	require.NoError(t, cmd.Process.Signal(os.Interrupt))
	require.Error(t, cmd.Wait())
	assert.Equal(t, 130, cmd.ProcessState.ExitCode())
	out, err := command(t, home, "table", "list").CombinedOutput()
	require.NoError(t, err)
	assert.Contains(t, string(out), "core")
	assert.NotContains(t, string(out), "sr ")
}
