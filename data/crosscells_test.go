package data_test

import (
	"context"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/table"
)

// crossCell is a constituent of a core food beside what another table prints.
type crossCell struct {
	class, food, table string
	id                 constituent.ID

	mean, low, high float64 // core: central value and 90 % interval, unit of the vocabulary
	value           float64 // the other table's, at the core food's water
	rounding        float64 // half of the last place of both
}

func (c crossCell) held() bool {
	return c.value+c.rounding >= c.low && c.value-c.rounding <= c.high
}

// heldInside reports whether the inner half of the interval holds the value, as if
// it were lognormal.
func (c crossCell) heldInside() bool {
	const quartile, limit = 0.6745, 1.6449 // of the standard normal distribution: 75 % and 95 %
	middle, sigma := math.Log(c.low*c.high)/2, math.Log(c.high/c.low)/2/limit
	return c.value+c.rounding >= math.Exp(middle-quartile*sigma) && c.value-c.rounding <= math.Exp(middle+quartile*sigma)
}

// halfWidth is half of the interval against the central value.
func (c crossCell) halfWidth() float64 { return (c.high - c.low) / 2 / c.mean }

// crossPair is a core food and the same food of another table.
type crossPair struct {
	ours      *food.Food
	own       *food.Profile
	intervals map[constituent.ID]estimate.Summary
	table     outsideTable
	theirs    *food.Food
	other     *food.Profile
	places    map[constituent.ID]float64 // last places of the other table's columns
	match     string

	acidIntervals map[constituent.ID]estimate.Summary
}

// crossCells gives the cells that the core table shares with others, in the
// order of the crosswalk.
func crossCells(t *testing.T, folder string) []crossCell {
	t.Helper()
	var cells []crossCell
	copied := 0
	for _, p := range crossPairs(t, folder) {
		if p.match != "A" {
			continue
		}
		of := p.cells()
		if p.copied(of) {
			copied += len(of)
			continue
		}
		cells = append(cells, of...)
	}
	t.Logf("%d cells of rows that others took from SR28 are left out", copied)
	return cells
}

// crossPairs reads the tables and gives the pairs of the crosswalk.
func crossPairs(t *testing.T, folder string) []crossPair {
	t.Helper()
	own := foodsOf(t, core.Format, "")
	tables := map[string]outsideTable{}
	theirs, places := map[string]map[string]*food.Food{}, map[string]map[constituent.ID]float64{}
	for _, o := range outside {
		path := filepath.Join(folder, o.folder)
		tables[o.format.Name] = o
		theirs[o.format.Name], places[o.format.Name] = foodsOf(t, o.format, path), placesOf(t, o.format, path)
	}
	profiles, drawn, acids := map[string]*food.Profile{}, map[string]map[constituent.ID]estimate.Summary{}, map[string]map[constituent.ID]estimate.Summary{}
	var pairs []crossPair
	for _, r := range rows(t, "crosswalk.csv") {
		o, ok := tables[r["table"]]
		if !ok {
			continue
		}
		f, other := own[r["core"]], theirs[r["table"]][r["code"]]
		require.NotNil(t, f, r["core"])
		require.NotNil(t, other, "%s has no food %s", r["table"], r["code"])
		if drawn[f.ID.Code] == nil {
			profiles[f.ID.Code] = food.Enter(f, nil)
			drawn[f.ID.Code], acids[f.ID.Code] = intervals(profiles[f.ID.Code])
		}
		pairs = append(pairs, crossPair{
			ours: f, own: profiles[f.ID.Code], intervals: drawn[f.ID.Code],
			table: o, theirs: other, other: food.Enter(other, nil), places: places[r["table"]], match: r["match"],
			acidIntervals: acids[f.ID.Code],
		})
	}
	return pairs
}

// intervals draws a core food: what the classes compare, and its single acids.
func intervals(profile *food.Profile) (compared, acids map[constituent.ID]estimate.Summary) {
	const columnLength = 1001 // the central value and a thousand draws
	columns := ledger.NewColumns([]*food.Profile{profile})
	perGram := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: columnLength}, columns).PerGram(profile)
	summary := func(ids []constituent.ID, into map[constituent.ID]estimate.Summary) {
		for _, id := range ids {
			c := constituent.Must(id)
			sum := make([]float64, columnLength)
			for _, at := range columns.Below(id) {
				for i, x := range perGram[at] {
					sum[i] += x * 100 * c.PerGram
				}
			}
			if sum[0] > 0 {
				into[id] = estimate.Summarise(sum)
			}
		}
	}
	compared, acids = map[constituent.ID]estimate.Summary{}, map[constituent.ID]estimate.Summary{}
	for _, class := range classes {
		summary(class.ids, compared)
	}
	summary(acidColumns, acids)
	return compared, acids
}

func foodsOf(t *testing.T, format table.Format, path string) map[string]*food.Food {
	t.Helper()
	release, err := format.Open(context.Background(), path, "")
	require.NoError(t, err, format.Name)
	all := map[string]*food.Food{}
	for f, err := range release.Foods {
		require.NoError(t, err)
		all[f.ID.Code] = f
	}
	return all
}

// placesOf gives the last place of the columns of a table that says it.
func placesOf(t *testing.T, format table.Format, path string) map[constituent.ID]float64 {
	t.Helper()
	release, err := format.Open(context.Background(), path, "")
	require.NoError(t, err, format.Name)
	places := map[constituent.ID]float64{}
	for _, column := range release.Columns {
		if column.Decimals >= 0 {
			places[column.ID] = math.Pow10(-column.Decimals)
		}
	}
	return places
}

// middle is the median.
func middle(x []float64) float64 {
	x = slices.Sorted(slices.Values(x))
	if len(x) == 0 {
		return math.NaN()
	}
	return (x[(len(x)-1)/2] + x[len(x)/2]) / 2
}
