package table_test

import (
	"io"
	"math"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/table"
)

func same(cell string) string { return cell }

func openText(text string) (*table.Rows, error) {
	return table.OpenRows(fstest.MapFS{"t.csv": {Data: []byte(text)}}, "dir", "t.csv", same, "mend it")
}

func TestRowsReadByName(t *testing.T) {
	rows, err := openText("\ufeffcode,amount,note\na,1.5e-3,\"two\nlines\"\nb,,\n")
	require.NoError(t, err)
	defer rows.Close()
	require.NoError(t, rows.Need("code", "amount"))
	require.Error(t, rows.Need("sd"))
	require.NoError(t, rows.Next())
	assert.Equal(t, "two\nlines", rows.Text("note"))
	x, err := rows.Number("amount")
	require.NoError(t, err)
	assert.Equal(t, 0.0015, x)
	require.NoError(t, rows.Next())
	x, err = rows.Number("amount")
	require.NoError(t, err)
	assert.True(t, math.IsNaN(x))
	assert.Equal(t, io.EOF, rows.Next())
}

func TestRowsRefuseWithThePlace(t *testing.T) {
	cases := []struct{ name, text, says string }{
		{"empty", "", "dir/t.csv: the file is empty"},
		{"twice", "a,b,a\n", "dir/t.csv:1:5: column \"a\" stands twice"},
		{"fields", "a,b\n1\n", "dir/t.csv:2:1: wrong number of fields"},
		{"zero byte", "a,b\n1,x\x00\n", "dir/t.csv:2:3: a zero byte"},
		{"encoding", "a,b\n1,caf\xe9\n", "dir/t.csv:2:3: this field is not UTF-8"},
		{"cut off", "a,b\n1,2", "the file may be cut off"},
		{"quote", "a,b\n1,\"2\n", "dir/t.csv:2:6"},
	}
	for _, c := range cases {
		rows, err := openText(c.text)
		for err == nil {
			err = rows.Next()
		}
		assert.ErrorContains(t, err, c.says, c.name)
	}
}

func TestRowsRefuseNumbers(t *testing.T) {
	for _, bad := range []string{"x", "1e400", "NaN", "Inf", "-1", "0x10", "1_0", "1,5", "--", " 1"} {
		rows, err := openText("a,b\n0,\"" + bad + "\"\n")
		require.NoError(t, err)
		require.NoError(t, rows.Next())
		_, err = rows.Number("b")
		assert.ErrorContains(t, err, "dir/t.csv:2:3", bad)
	}
}

func TestHashTellsNamesAndBytesApart(t *testing.T) {
	hash := func(a, b string, names ...string) string {
		h, err := table.Hash(fstest.MapFS{"a": {Data: []byte(a)}, "b": {Data: []byte(b)}}, names)
		require.NoError(t, err)
		return h
	}
	assert.Equal(t, hash("1", "2", "a", "b"), hash("1", "2", "b", "a"), "order of names")
	assert.NotEqual(t, hash("1", "2", "a", "b"), hash("2", "1", "a", "b"))
	assert.NotEqual(t, hash("1", "", "a", "b"), hash("1", "", "a"))
	assert.NotEqual(t, hash("12", "", "a", "b"), hash("1", "2", "a", "b"))
	_, err := table.Hash(fstest.MapFS{}, []string{"a"})
	assert.Error(t, err)
}

// Each goes through all rows that are left, and stops where one is wrong or where its user
// wants no more.
func TestEachGoesToTheEnd(t *testing.T) {
	read := func(text string, stop error) (codes []string, err error) {
		rows, err := openText(text)
		require.NoError(t, err)
		defer rows.Close()
		err = rows.Each(func() error {
			codes = append(codes, rows.Text("code"))
			return stop
		})
		return codes, err
	}
	codes, err := read("code\na\nb\n", nil)
	require.NoError(t, err)
	assert.Equal(t, []string{"a", "b"}, codes)
	codes, err = read("code\na\nb,c\n", nil)
	require.ErrorContains(t, err, "dir/t.csv:3:1: wrong number of fields")
	assert.Equal(t, []string{"a"}, codes)
	codes, err = read("code\na\nb\n", io.ErrClosedPipe)
	require.ErrorIs(t, err, io.ErrClosedPipe)
	assert.Equal(t, []string{"a"}, codes)
}
