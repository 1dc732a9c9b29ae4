package workshop_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"sipsum/internal/workshop"
)

// killed names the folder in which a process saves until it is killed.
const killed = "SIPSUM_TEST_KILL"

func TestMain(m *testing.M) {
	if dir := os.Getenv(killed); dir != "" {
		saveForEver(dir)
	}
	os.Exit(m.Run())
}

// long is a text of which one can see whether it is whole: a number, again and again, and an end.
func long(n int) string { return strings.Repeat(strconv.Itoa(n)+"\n", 20000) + "end\n" }

// numberOf gives the number of a text, -1 if it is not whole.
func numberOf(text []byte) int {
	first, _, _ := bytes.Cut(text, []byte("\n"))
	n, err := strconv.Atoi(string(first))
	if err != nil || string(text) != long(n) {
		return -1
	}
	return n
}

const plenty = 1 << 20

func saveForEver(dir string) {
	f, err := workshop.Open(dir, plenty)
	var text []byte
	if err == nil {
		text, err = f.Read(tide)
	}
	for n := numberOf(text) + 1; err == nil; n++ {
		next := []byte(long(n))
		if err = f.Save(tide, workshop.Fingerprint(text), next); err == nil {
			text = next
			fmt.Println(n) // the parent holds us to it
		}
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(1)
}

// Whenever the program is killed, the drink and every version of it are whole, and nothing that was said to be saved is lost.
func TestAKillDuringASaveLosesNothing(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, tide, long(0))
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	for range 20 {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), killed+"="+dir)
		var said, wrong bytes.Buffer
		cmd.Stdout, cmd.Stderr = &said, &wrong
		require.NoError(t, cmd.Start())
		time.Sleep(50*time.Millisecond + time.Duration(random.Int64N(int64(60*time.Millisecond))))
		require.NoError(t, cmd.Process.Kill())
		cmd.Wait() // its error is the kill
		require.Empty(t, wrong.String())

		now := numberOf([]byte(saved(t, dir, tide)))
		require.GreaterOrEqual(t, now, 0, "the drink is not whole")
		lines := strings.Fields(said.String())
		if len(lines) > 0 {
			last, err := strconv.Atoi(lines[len(lines)-1])
			if err == nil {
				require.GreaterOrEqual(t, now, last, "a save that was said to be done is lost")
			}
		}
		f, err := workshop.Open(dir, plenty)
		require.NoError(t, err)
		list, err := f.Versions(tide)
		require.NoError(t, err)
		require.LessOrEqual(t, len(list), 21)
		for _, v := range list {
			text, err := f.Version(tide, v.ID)
			require.NoError(t, err)
			require.GreaterOrEqual(t, numberOf(text), 0, "a version is not whole")
		}
		require.NoError(t, f.Close())
	}
	t.Logf("%d saves", numberOf([]byte(saved(t, dir, tide))))
	require.Positive(t, numberOf([]byte(saved(t, dir, tide))), "nothing was saved at all")
	_, err := os.Stat(filepath.Join(dir, ".sipsum"))
	require.NoError(t, err)
}
