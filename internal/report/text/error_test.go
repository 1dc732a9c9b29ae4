package textreport_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/fail"
	textreport "sipsum/internal/report/text"
)

// Lines to paste keep their own lines, set in: none stands where a fault begins.
func TestAnErrorShowsLinesToPaste(t *testing.T) {
	var b strings.Builder
	textreport.Error(&b, fail.New(fail.Wrong, "\"boyl\" is not a step", "one line of each:\n- reduce: {to: 375 g}\n- add: 1 g salt\x1b[2J"))
	assert.Equal(t, "\"boyl\" is not a step (one line of each:\n    - reduce: {to: 375 g}\n    - add: 1 g salt[2J)\n", strings.ReplaceAll(b.String(), "\ufffd", ""))
}
