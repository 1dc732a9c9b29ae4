package cli_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/embedded"
)

// What house rules want handed over is printed by a command that there is.
func TestWhatIsHandedOverIsPrinted(t *testing.T) {
	home, _ := stranger(t)
	for _, row := range embedded.Rows("hand_over.csv") {
		out, code := run(home, row.Text("command"), "--help")
		assert.Equal(t, 0, code, row.Text("command"))
		assert.Contains(t, out, "sipsum "+row.Text("command"))
		assert.NotEmpty(t, row.Text("source"))
	}
}
