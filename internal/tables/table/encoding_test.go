package table_test

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/table"
)

func TestWesternReadsUTF8AndWindows1252(t *testing.T) {
	// 0x93 and 0x94 are quotation marks in Windows-1252 and nothing in ISO 8859-1.
	long := strings.Repeat("x", 1<<16-1)
	files := fstest.MapFS{
		"plain":   {Data: []byte("plain")},
		"utf8":    {Data: []byte("café")},
		"western": {Data: []byte("caf\xe9 \x93au lait\x94")},
		"across":  {Data: []byte(long + "é")}, // the é lies across two pieces
		"late":    {Data: []byte(long + long + "\xe9")},
		"cut":     {Data: []byte("caf\xc3")}, // the first half of an é
		"empty":   {},
	}
	for name, want := range map[string]string{
		"plain": "plain", "utf8": "café", "western": "café “au lait”", "across": long + "é", "late": long + long + "é", "cut": "cafÃ", "empty": "",
	} {
		got, err := fs.ReadFile(table.Western(files), name)
		require.NoError(t, err, name)
		assert.Equal(t, want, string(got), name)
	}
	_, err := table.Western(files).Open("nothing")
	assert.Error(t, err)
}
