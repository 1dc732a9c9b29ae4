package data_test

import (
	"encoding/csv"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
)

var (
	separate = regexp.MustCompile(`;| and `)
	figure   = regexp.MustCompile(`\d+(\.\d+)?`)
)

// The row "pH from one work" of acid_unmeasured.csv is what works on one food differ by: of
// each food with figures of more than one work, the mean distance between the middles
// that they print. Two numbers that lie anywhere within a of one value differ by more
// than 0.586·a as often as not.
func TestSpreadOfAPHFromOneWorkIsThatBetweenWorks(t *testing.T) {
	rows := func(name string) [][]string {
		file, err := data.FS.Open(name)
		require.NoError(t, err)
		defer file.Close()
		all, err := csv.NewReader(file).ReadAll()
		require.NoError(t, err)
		return all[1:]
	}
	var apart []float64
	for _, row := range rows("core/literature.csv") {
		if row[1] != "PH" || len(strings.Fields(row[10])) < 2 || row[7] != "measured" {
			continue // a pH taken from another row would count twice
		}
		var middles []float64
		for _, part := range separate.Split(row[8], -1) {
			var ends []float64
			for _, text := range figure.FindAllString(part, -1) {
				x, err := strconv.ParseFloat(text, 64)
				require.NoError(t, err)
				if x < 14 {
					ends = append(ends, x)
				}
			}
			if len(ends) > 0 {
				middles = append(middles, (slices.Min(ends)+slices.Max(ends))/2)
			}
		}
		sum, pairs := 0.0, 0
		for i := range middles {
			for _, other := range middles[i+1:] {
				sum += math.Abs(middles[i] - other)
				pairs++
			}
		}
		if pairs > 0 {
			apart = append(apart, sum/float64(pairs))
		}
	}
	require.GreaterOrEqual(t, len(apart), 20)
	slices.Sort(apart)
	median := apart[len(apart)/2]
	t.Logf("%d foods, median distance %.2f", len(apart), median)
	for _, row := range rows("acid_unmeasured.csv") {
		if row[0] == "pH from one work" {
			high, err := strconv.ParseFloat(row[2], 64)
			require.NoError(t, err)
			assert.InDelta(t, median/(2-math.Sqrt2), high, 0.1)
			return
		}
	}
	t.Fatal("no row")
}

// The range of a group holds all that is published of its foods.
func TestPHOfAGroupHoldsItsFoods(t *testing.T) {
	groups, foods := byKey(t, "groups.csv", "group"), byKey(t, "core/foods.csv", "code")
	held := 0
	for _, row := range rows(t, "core/literature.csv") {
		group := groups[foods[row["code"]]["group"]]
		if row["constituent"] != "PH" || row["amount"] == "" || group["ph_low"] == "" {
			continue
		}
		low, high := number(t, group, "ph_low"), number(t, group, "ph_high")
		for _, published := range []string{"amount", "low", "high"} {
			if row[published] != "" {
				assert.GreaterOrEqual(t, number(t, row, published), low, row["code"])
				assert.LessOrEqual(t, number(t, row, published), high, row["code"])
				held++
			}
		}
	}
	assert.Greater(t, held, 100)
}
