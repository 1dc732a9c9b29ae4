package tables_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/tables"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
)

// release is a small release of a format and the largest file in it, which is
// the one that holds the values (the mapping file of generic does not).
type release struct {
	format table.Format
	dir    string
	main   string
	foods  int
}

// releases gives the small releases in testdata, one for each format.
func releases(t *testing.T) []release {
	t.Helper()
	var all []release
	for _, f := range tables.Formats() {
		r := release{format: f, dir: filepath.Join("..", "..", "testdata", "tables", f.Name)}
		if f.Name == "core" {
			r.dir = filepath.Join("..", "..", "data", "core")
		}
		entries, err := os.ReadDir(r.dir)
		require.NoError(t, err, "format %s has no small release in testdata", f.Name)
		largest := int64(0)
		for _, e := range entries {
			info, err := e.Info()
			require.NoError(t, err)
			if info.Mode().IsRegular() && info.Size() > largest && filepath.Ext(e.Name()) != ".md" && e.Name() != "sipsum-map.csv" {
				r.main, largest = e.Name(), info.Size()
			}
		}
		r.foods, err = r.read(t, r.dir)
		require.NoError(t, err, f.Name)
		require.Positive(t, r.foods, f.Name)
		all = append(all, r)
	}
	return all
}

// read reads a release whole.
func (r release) read(t *testing.T, path string) (foods int, err error) {
	all, err := tablestest.Read(t, r.format, path)
	return len(all), err
}

// with reads a copy of the release with other bytes in its main file.
func (r release) with(t *testing.T, content []byte) (foods int, err error) {
	t.Helper()
	return r.read(t, tablestest.Change(t, r.dir, r.main, func([]byte) []byte { return content }))
}

// isText tells whether the main file has lines.
func (r release) isText() bool {
	ext := strings.ToLower(filepath.Ext(r.main))
	return ext == ".csv" || ext == ".txt" || ext == ".tsv"
}

// refused checks that an error is a fault for people, with a place.
func refused(t *testing.T, err error, what string) {
	t.Helper()
	tablestest.Fault(t, err, what)
	assert.Less(t, len(err.Error()), 4096, "%s: the message repeats the file", what)
}

// harmless accepts a whole reading or a fault.
func (r release) harmless(t *testing.T, foods int, err error, what string) {
	t.Helper()
	if err != nil {
		refused(t, err, what)
		return
	}
	assert.Equal(t, r.foods, foods, what)
}

func TestWhatIsNoReleaseIsRefused(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a file.txt")
	require.NoError(t, os.WriteFile(file, []byte("not a table\n"), 0o600))
	archive := filepath.Join(t.TempDir(), "archive.zip")
	require.NoError(t, os.WriteFile(archive, []byte("PK\x03\x04 cut off"), 0o600))
	for _, f := range tables.Formats() {
		for what, path := range map[string]string{
			"empty folder": t.TempDir(), "a file": file, "a damaged archive": archive, "nothing": filepath.Join(t.TempDir(), "nowhere"),
		} {
			assert.False(t, f.Sniff(path), "%s: %s", f.Name, what)
			_, err := tablestest.Read(t, f, path)
			refused(t, err, f.Name+": "+what)
		}
	}
}

func TestHostileBytes(t *testing.T) {
	for _, r := range releases(t) {
		t.Run(r.format.Name, func(t *testing.T) {
			whole := tablestest.Bytes(t, r.dir, r.main)
			middle := len(whole) / 2
			patch := func(piece []byte) []byte {
				return bytes.Join([][]byte{whole[:middle], piece, whole[middle:]}, nil)
			}
			for what, content := range map[string][]byte{
				"zero bytes":         patch([]byte{0, 0, 0, 0}),
				"nothing":            {},
				"only zero bytes":    make([]byte, 4096),
				"UTF-16":             inUTF16(whole),
				"cut in the middle":  whole[:middle-1],
				"an unending line":   bytes.Repeat([]byte("1,"), 1<<20),
				"an unending cell":   bytes.Repeat([]byte("9"), 10<<20),
				"an unending quote":  append([]byte("\""), bytes.Repeat([]byte("x\n"), 1<<20)...),
				"something else":     []byte("<html><body>Not found</body></html>\n"),
				"only line ends":     bytes.Repeat([]byte("\r\n"), 1000),
				"a table of nothing": bytes.Repeat([]byte(",,,,\n"), 1000),
			} {
				foods, err := r.with(t, content)
				if err == nil {
					assert.Fail(t, "was read", "%s: %s gave %d foods", r.main, what, foods)
					continue
				}
				refused(t, err, what)
			}
			foods, err := r.with(t, append([]byte("\ufeff"), whole...))
			r.harmless(t, foods, err, "byte order mark")
			foods, err = r.with(t, patch([]byte{0xe9}))
			r.harmless(t, foods, err, "a byte of ISO 8859-1")
		})
	}
}

func TestHostileCells(t *testing.T) {
	for _, r := range releases(t) {
		if !r.isText() {
			continue
		}
		t.Run(r.format.Name, func(t *testing.T) {
			whole := tablestest.Bytes(t, r.dir, r.main)
			crlf := bytes.ReplaceAll(bytes.ReplaceAll(whole, []byte("\r\n"), []byte("\n")), []byte("\n"), []byte("\r\n"))
			foods, err := r.with(t, crlf)
			require.NoError(t, err, "CRLF")
			assert.Equal(t, r.foods, foods, "CRLF")

			line := middleLine(whole)
			for what, new := range map[string]string{
				"a cell of 10 MB":         strings.Repeat("7", 10<<20),
				"a quoted cell of 10 MB":  "\"" + strings.Repeat("x\n", 5<<20) + "\"",
				"an unterminated quote":   "\"1",
				"too large for a number":  "1e400",
				"a large exponent":        "1e99999999999",
				"negative":                "-3",
				"not a number":            "NaN",
				"infinite":                "Inf",
				"hexadecimal":             "0x1p4",
				"a number with a comment": "3 (?)",
				"digits of another kind":  "٣",
			} {
				r.eachNumber(t, whole, line, what, new)
			}
		})
	}
}

// number is a cell that holds a number only, between separators of any format.
var number = regexp.MustCompile(`[,;^\t]\d+(\.\d+)?[,;^\t\r\n]`)

// eachNumber replaces each number of a line in turn: every reading must be whole
// or refused with its line, and at least one refused.
func (r release) eachNumber(t *testing.T, whole []byte, line [2]int, what, new string) {
	t.Helper()
	text := whole[line[0]:line[1]]
	cells := number.FindAllIndex(text, -1)
	require.NotEmpty(t, cells, "%s: no number in %s", r.main, text)
	const enough = 4 // from the end, where the values stand
	refusals := 0
	for _, cell := range cells[max(0, len(cells)-enough):] {
		from, to := line[0]+cell[0]+1, line[0]+cell[1]-1
		foods, err := r.with(t, bytes.Join([][]byte{whole[:from], []byte(new), whole[to:]}, nil))
		r.harmless(t, foods, err, what)
		var faults *fail.Error
		if errors.As(err, &faults) {
			assert.Positive(t, faults.Faults[0].Line, "%s: %v", what, err)
			refusals++
		}
		if len(new) > 1<<20 && refusals > 0 {
			break // one is enough for a slow one
		}
	}
	assert.Positive(t, refusals, "%s in %s was never refused", what, r.main)
}

// middleLine gives where the line in the middle of a file that has most numbers
// begins and ends.
func middleLine(whole []byte) [2]int {
	best, most, at := [2]int{}, -1, 0
	lines := bytes.SplitAfter(whole, []byte("\n"))
	for i, line := range lines {
		end := at + len(line)
		if n := len(number.FindAllIndex(line, -1)); i > len(lines)/4 && i < len(lines)-2 && n > most {
			best, most = [2]int{at, end}, n
		}
		at = end
	}
	return best
}

// inUTF16 writes bytes as a spreadsheet that saves "Unicode text" does.
func inUTF16(text []byte) []byte {
	out := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(string(text))) {
		out = append(out, byte(u), byte(u>>8))
	}
	return out
}
