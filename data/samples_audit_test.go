package data_test

import (
	"encoding/csv"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
)

// Every figure of data/samples.csv stands as it is printed in the row of data/core/literature.csv of its food
// and constituent, whose sources are its own, as often as here; by its factor it lies where the row says that
// published figures lie, to the last digit of a factor. There are at least three of each.
func TestSamplesStandInTheLiterature(t *testing.T) {
	read := func(name string) [][]string {
		file, err := data.FS.Open(name)
		require.NoError(t, err)
		defer file.Close()
		rows, err := csv.NewReader(file).ReadAll()
		require.NoError(t, err)
		return rows[1:]
	}
	type cell struct{ code, constituent string }
	literature := map[cell][]string{}
	for _, row := range read("core/literature.csv") {
		literature[cell{row[0], row[1]}] = row
	}
	number := func(text string, without float64) float64 {
		if text == "" {
			return without
		}
		x, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err, text)
		return x
	}
	count, printed := map[cell]int{}, map[cell]map[string]int{}
	for _, row := range read("samples.csv") {
		at := cell{row[0], row[1]}
		of, ok := literature[at]
		if !assert.True(t, ok, "%v has no literature row", at) {
			continue
		}
		if printed[at] == nil {
			printed[at] = map[string]int{}
			for _, text := range figure.FindAllString(of[8], -1) {
				printed[at][text]++
			}
		}
		printed[at][row[2]]--
		assert.GreaterOrEqual(t, printed[at][row[2]], 0, "%v: %s is not printed so often", at, row[2])
		const last = 0.015
		x := number(row[2], 0) * number(row[3], 0)
		assert.GreaterOrEqual(t, x, (1-last)*number(of[5], 0), "%v: %s", at, row[2])
		assert.LessOrEqual(t, x, (1+last)*number(of[6], x), "%v: %s", at, row[2])
		assert.NotEmpty(t, row[4], "%v: %s: how it became per 100 g", at, row[2])
		assert.NotEmpty(t, of[10], "%v has no source", at)
		count[at]++
	}
	for at, n := range count {
		assert.GreaterOrEqual(t, n, 3, "%v", at)
	}
}
