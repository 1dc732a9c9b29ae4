package assay

import (
	"slices"

	"sipsum/internal/ledger"
	"sipsum/internal/recipe"
)

// partOf gives the part of a serving that a row belongs to.
func partOf(row ledger.Row) recipe.PartID {
	if len(row.Path) > 0 {
		return recipe.PartID{Component: row.Path[0]}
	}
	return recipe.PartID{Food: row.Profile.Food.ID}
}

// parts lists what the build pours, in order.
func (a *Assay) parts() []recipe.PartID {
	var ids []recipe.PartID
	for _, row := range a.Serving.Rows {
		if id := partOf(row); !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// only gives the rows of the serving that belong to a part.
func (a *Assay) only(id recipe.PartID) *ledger.Pot {
	return a.Serving.Only(func(row int) bool { return partOf(a.Serving.Rows[row]) == id })
}

// others gives the rows of the serving that belong to other parts.
func (a *Assay) others(id recipe.PartID) *ledger.Pot {
	return a.Serving.Only(func(row int) bool { return partOf(a.Serving.Rows[row]) != id })
}

// lines gives the paths of the lines that pour a part.
func (a *Assay) lines(id recipe.PartID) []string {
	var paths []string
	for _, line := range slices.Concat(a.Drink.Build, a.Drink.Garnish) {
		if line.Eaten && a.recipe.PartOf(line) == id {
			paths = append(paths, line.Path)
		}
	}
	return paths
}
