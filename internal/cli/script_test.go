package cli_test

import (
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/require"

	"sipsum/internal/cli"
)

var update = flag.Bool("update", false, "rewrite the expected output in the scripts")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"sipsum": func() { os.Exit(cli.Main(os.Args[1:], cli.OS())) },
	})
}

// TestScripts runs every acceptance script against the real command, each with
// an empty home and the trimmed tables at hand.
func TestScripts(t *testing.T) {
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join(root, "testdata", "script"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"exec-exit": execExit, "cmp-unsealed": cmpUnsealed},
		Setup: func(env *testscript.Env) error {
			home := filepath.Join(env.WorkDir, "home")
			env.Setenv("HOME", home)
			env.Setenv("XDG_DATA_HOME", "")
			env.Setenv("SIPSUM_DB", "")
			env.Setenv("TABLES", filepath.Join(root, "testdata", "tables"))
			env.Setenv("DRINKS", filepath.Join(root, "testdata", "drinks"))
			return os.Mkdir(home, 0o755)
		},
	})
}

// cmpUnsealed compares documents but for their digests: cmp-unsealed FILE FILE.
func cmpUnsealed(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: cmp-unsealed file file")
	}
	if a, b := unsealed(ts.ReadFile(args[0])), unsealed(ts.ReadFile(args[1])); a != b {
		ts.Fatalf("%s and %s differ", args[0], args[1])
	}
}

// execExit runs a command that must end with the given exit code:
// exec-exit CODE COMMAND ARGS.
func execExit(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exec-exit code command args")
	}
	err := ts.Exec(args[1], args[2:]...)
	code := 0
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		code = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if strconv.Itoa(code) != args[0] {
		ts.Fatalf("exit code %d, want %s", code, args[0])
	}
}
