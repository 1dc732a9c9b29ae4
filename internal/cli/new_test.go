package cli_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/cli"
)

// What no drink file may hold, and sipsum would refuse to read again, starts no file.
func TestNewWritesNothingThatIsRefused(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, name := range []string{"odd\u202ename", "odd\u0007name", "odd\u2028name", strings.Repeat("long ", 60)} {
		var out, faults bytes.Buffer
		code := cli.Main([]string{"new", name}, cli.Streams{In: strings.NewReader(""), Out: &out, Err: &faults, Env: func(string) string { return "" }})
		assert.Equal(t, 2, code, "%q", name)
		assert.Contains(t, faults.String(), "cannot be the name", "%q", name)
	}
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	assert.Empty(t, files)
}
