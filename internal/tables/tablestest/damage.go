package tablestest

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// Damage says where a release is to be damaged: a number in a line of a file.
type Damage struct {
	File     string
	Line     int    // counted from 1; neither the first nor the last
	Number   string // stands in that line, with its marks to be found once
	Replaced string // the same with "%" where the number is
	Missing  string // a file that must be there; empty if no name is prescribed
	Blank    bool   // an empty number is not damage: it says nothing
	NoAmount bool   // the number is none of a constituent
}

const emptyNumber = "empty number"

// More than there is of anything in 100 g, in whichever unit a column has.
const (
	tooMuch   = "more than the whole"
	tooMuchOf = "999999999"
)

// checkDamage damages a copy of the release in every way that is known to
// happen and reads it.
func checkDamage(t *testing.T, format table.Format, dir string, d Damage) {
	whole := Bytes(t, dir, d.File)
	lines := bytes.SplitAfter(whole, []byte("\n"))
	line := lines[d.Line-1]
	require.Equal(t, 1, bytes.Count(line, []byte(d.Number)), "line %d must hold %s once", d.Line, d.Number)
	with := func(number string) []byte {
		text := strings.Replace(d.Replaced, "%", number, 1)
		return bytes.Replace(line, []byte(d.Number), []byte(text), 1)
	}
	swap := func(new ...[]byte) []byte {
		parts := append(append(append([][]byte{}, lines[:d.Line-1]...), new...), lines[d.Line:]...)
		return bytes.Join(parts, nil)
	}
	last := len(lines) - 2 // SplitAfter leaves an empty piece at the end
	lastLine := last + 1
	for _, c := range []struct {
		name  string
		bytes []byte
		line  int // 0: any place in the file
	}{
		{"not a number", swap(with("x1")), d.Line},
		{"too large for a number", swap(with("1e400")), d.Line},
		{"NaN", swap(with("NaN")), d.Line},
		{"Inf", swap(with("Inf")), d.Line},
		{"hexadecimal", swap(with("0x1p4")), d.Line},
		{"negative", swap(with("-1.5")), d.Line},
		{tooMuch, swap(with(tooMuchOf)), d.Line},
		{"decimal comma", swap(with("1;5")), d.Line},
		{emptyNumber, swap(with("")), d.Line},
		{"row twice", swap(line, line), d.Line + 1},
		{"zero byte", swap(with("\x00")), d.Line},
		{"row without its end", swap(append(bytes.Clone(line[:len(line)/2]), '\n')), d.Line},
		{"empty row, or a row of something else", swap([]byte("hello\n"), line), d.Line},
		{"cut off in the last line", whole[:len(whole)-len(lines[last])/2], 0},
		{"cut off before the last line end", bytes.TrimRight(whole, "\r\n"), 0},
		{"cut off in the middle", bytes.Join(append(append([][]byte{}, lines[:last/2]...), lines[last/2][:len(lines[last/2])/2]), nil), 0},
		{"empty", nil, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read(t, format, Change(t, dir, d.File, func([]byte) []byte { return c.bytes }))
			if d.NoAmount && c.name == tooMuch {
				t.Skip("the number is no amount")
			}
			if d.Blank && c.name == emptyNumber {
				require.NoError(t, err)
				return
			}
			at := Fault(t, err).Faults[0].Place
			assert.True(t, strings.HasSuffix(at.File, ".txt") || strings.HasSuffix(at.File, ".csv"), err)
			if c.line > 0 {
				assert.Equal(t, d.File, filepath.Base(at.File))
				assert.Equal(t, c.line, at.Line, err)
			}
			assert.LessOrEqual(t, at.Line, lastLine+1)
		})
	}
	t.Run("missing file", func(t *testing.T) {
		if d.Missing == "" {
			t.Skip("files of this format are known by what is in them")
		}
		copied := Copy(t, dir)
		require.NoError(t, os.Remove(filepath.Join(copied, d.Missing)))
		_, err := format.Open(t.Context(), copied, "")
		require.Error(t, err)
		assert.Contains(t, err.Error(), d.Missing)
	})
	t.Run("not a folder", func(t *testing.T) {
		_, err := format.Open(t.Context(), filepath.Join(dir, "nowhere"), "")
		assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	})
}
