//go:build unix

package cli_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pourInto starts the program over many drinks, with its output in a pipe, and waits until it writes.
func pourInto(t *testing.T, said *bytes.Buffer) (ended func() (exit int), interrupt func(), out *bufio.Reader, hangUp func() error) {
	t.Helper()
	home := t.TempDir()
	dir := filepath.Join(home, "bar")
	fill(t, dir, 400)
	read, write, err := os.Pipe()
	require.NoError(t, err)
	cmd := command(t, home, "assay", dir, "--format", "jsonl", "--draws", "20", "--jobs", "4")
	cmd.Stdout, cmd.Stderr = write, said
	require.NoError(t, cmd.Start())
	require.NoError(t, write.Close())
	t.Cleanup(func() { read.Close() })
	out = bufio.NewReader(read)
	_, err = out.Peek(1)
	require.NoError(t, err)
	return func() int { _ = cmd.Wait(); return cmd.ProcessState.ExitCode() },
		func() { require.NoError(t, cmd.Process.Signal(os.Interrupt)) }, out, read.Close
}

// Who reads slowly gets whole lines, whenever the stream is interrupted: a line is longer than a pipe holds.
func TestAnInterruptedStreamEndsWithAWholeLine(t *testing.T) {
	var said bytes.Buffer
	ended, interrupt, out, _ := pourInto(t, &said)
	for range 3 {
		_, err := out.ReadString('\n')
		require.NoError(t, err)
	}
	interrupt()
	time.Sleep(300 * time.Millisecond) // longer than a command has to leave
	rest, err := io.ReadAll(out)
	require.NoError(t, err)
	assert.Equal(t, 130, ended(), said.String())
	assert.Equal(t, "interrupted\n", said.String())
	require.True(t, strings.HasSuffix(string(rest), "\n"), "the last line is cut off")
	lines := strings.Split(strings.TrimSuffix(string(rest), "\n"), "\n")
	assert.Less(t, len(lines), 20, "it was interrupted")
	for _, line := range lines {
		assert.True(t, json.Valid([]byte(line)))
	}
}

// Where nobody reads on, a second interruption ends it.
func TestASecondInterruptionEndsAStream(t *testing.T) {
	var said bytes.Buffer
	ended, interrupt, _, _ := pourInto(t, &said)
	time.Sleep(300 * time.Millisecond) // until it waits for the pipe
	interrupt()
	time.Sleep(300 * time.Millisecond)
	interrupt()
	assert.NotZero(t, ended())
	assert.Empty(t, said.String(), "there was no time for a word")
}

// Who has read enough and leaves is not told anything.
func TestAStreamThatNobodyReadsEndsQuietly(t *testing.T) {
	var said bytes.Buffer
	ended, _, out, hangUp := pourInto(t, &said)
	_, err := out.ReadString('\n')
	require.NoError(t, err)
	require.NoError(t, hangUp())
	assert.NotZero(t, ended())
	assert.Empty(t, said.String())
}

// A file and a folder that may not be read have their lines; the rest is done.
func TestManyDrinksThatMayNotBeRead(t *testing.T) {
	home, err := os.MkdirTemp("", "sipsum") // that of t.TempDir is not open to others
	require.NoError(t, err)
	shut := filepath.Join(home, "bar", "b")
	t.Cleanup(func() {
		os.Chmod(shut, 0o755)
		os.RemoveAll(home)
	})
	program, err := os.ReadFile(command(t, home).Path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(home, "sipsum"), program, 0o755))
	fill(t, filepath.Join(home, "bar"), 4)
	for _, name := range []string{"a/00000", "c/00002", "d/00003"} {
		mode := os.FileMode(0o644)
		if name == "c/00002" {
			mode = 0
		}
		require.NoError(t, os.Chmod(filepath.Join(home, "bar", name+".drink.yaml"), mode))
	}
	require.NoError(t, os.Chmod(home, 0o755))
	require.NoError(t, os.Chmod(shut, 0))
	out, said, code := asNobody(t, home, "assay", filepath.Join(home, "bar"), "--format", "jsonl", "--draws", "20", "--db", ":memory:")
	assert.Equal(t, 5, code, said)
	lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	require.Len(t, lines, 4, said)
	assert.Contains(t, lines[0], `"sipsum.assay/1"`)
	assert.Contains(t, lines[1], "cannot read the folder "+shut)
	assert.Contains(t, lines[2], `the file's permissions are not`)
	assert.Contains(t, lines[3], `"sipsum.assay/1"`)
	assert.Regexp(t, `2 of 4 failed`, said)
}
