package data_test

import (
	"context"
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/table"
)

// crossCells gives the cells that the core table shares with others, by food in
// the order of the crosswalk.
func crossCells(t *testing.T, folder string) []crossCell {
	t.Helper()
	own := foodsOf(t, core.Format, "")
	theirs, places := map[string]map[string]*food.Food{}, map[string]map[constituent.ID]float64{}
	for _, o := range outside {
		path := filepath.Join(folder, o.folder)
		theirs[o.format.Name], places[o.format.Name] = foodsOf(t, o.format, path), placesOf(t, o.format, path)
	}
	partners := map[string][]food.ID{}
	var order []string
	for _, r := range rows(t, "crosswalk.csv") {
		if theirs[r["table"]] == nil {
			continue
		}
		require.NotNil(t, theirs[r["table"]][r["code"]], "%s has no food %s", r["table"], r["code"])
		if partners[r["core"]] == nil {
			order = append(order, r["core"])
		}
		partners[r["core"]] = append(partners[r["core"]], food.ID{Table: r["table"], Code: r["code"]})
	}
	var cells []crossCell
	for _, code := range order {
		f := own[code]
		require.NotNil(t, f, code)
		byID := intervals(f)
		for _, partner := range partners[code] {
			addOther(byID, f, partner.Table, theirs[partner.Table][partner.Code], places[partner.Table])
		}
		for _, id := range slices.Sorted(maps.Keys(byID)) {
			if len(byID[id].others) > 0 {
				cells = append(cells, *byID[id])
			}
		}
	}
	return cells
}

// intervals draws a core food and gives its cells without others.
func intervals(f *food.Food) map[constituent.ID]*crossCell {
	const columnLength = 1001 // the central value and a thousand draws
	profile := food.Enter(f, nil)
	columns := ledger.NewColumns([]*food.Profile{profile})
	perGram := ledger.NewDrawer(1, columnLength, columns).PerGram(profile)
	cells := map[constituent.ID]*crossCell{}
	for class, ids := range crossChecked {
		for _, id := range ids {
			c := constituent.Must(id)
			sum := make([]float64, columnLength)
			for _, at := range columns.Below(id) {
				for i := range sum {
					sum[i] += perGram[at*columnLength+i] * 100 * c.PerGram
				}
			}
			if sum[0] > 0 {
				summary := estimate.Summarise(sum)
				cells[id] = &crossCell{class: class, food: f.ID.Code, id: id, mean: sum[0], low: summary.Low, high: summary.High, others: map[string]printedValue{}}
			}
		}
	}
	return cells
}

// addOther adds what another table states above zero, where the core food does
// not have its value from that table.
func addOther(cells map[constituent.ID]*crossCell, ours *food.Food, name string, other *food.Food, places map[constituent.ID]float64) {
	theirs := food.Enter(other, nil)
	sameWater := 1.0
	const driest = 0.5 // g/100 g: below it there is nothing to bring to the same water
	if water, ok := cells[constituent.Water]; ok && theirs.Cell(constituent.Water).Known {
		if solids, theirSolids := 100-water.mean, 100-100*theirs.Cell(constituent.Water).Amount; solids > driest && theirSolids > driest {
			sameWater = solids / theirSolids
		}
	}
	for id, cell := range cells {
		published, ok := ours.Value(publishedAs(ours, id))
		if !ok || !food.Stated(published.Amount) || published.Amount == 0 || published.State == estimate.Assumed || takenFrom(published.Source, name) {
			continue
		}
		v := theirs.Cell(id)
		if !v.Known || v.Limit > 0 || v.Amount == 0 || v.State == estimate.Assumed {
			continue
		}
		value := v.Amount * 100 * constituent.Must(id).PerGram
		const tooRough = 10 // last places
		if cell.mean < tooRough*coarsest(id) || value < tooRough*max(places[id], coarsestIfUnsaid(places, id)) {
			continue
		}
		scale := sameWater
		if id == constituent.Water {
			scale = 1
		}
		cell.others[name] = printedValue{value: value * scale, place: places[id] * scale}
	}
}

// publishedAs is the constituent that a food states in place of id: available
// carbohydrate is carbohydrate by difference less fibre and acids.
func publishedAs(f *food.Food, id constituent.ID) constituent.ID {
	if _, ok := f.Value(id); !ok && id == constituent.Available {
		return constituent.Carbohydrate
	}
	return id
}

func takenFrom(sources, name string) bool {
	for _, o := range outside {
		if o.format.Name == name && o.source != "" {
			return slices.Contains(strings.Fields(sources), o.source)
		}
	}
	return false
}

// coarsest is the last place of SR28 (Num_Dec of NUTR_DEF), the source of most
// core cells.
func coarsest(id constituent.ID) float64 {
	switch id {
	case "NA", "K", "CA", "MG", "P":
		return 1
	case "CU", "MN":
		return 0.001
	case "FIBTG", "ALC":
		return 0.1
	}
	return 0.01
}

// coarsestIfUnsaid stands in for a table that does not say its decimals.
func coarsestIfUnsaid(places map[constituent.ID]float64, id constituent.ID) float64 {
	if places[id] > 0 {
		return 0
	}
	return coarsest(id)
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
