package assay

import (
	"slices"

	"sipsum/internal/ledger"
)

// partOf gives the part of a serving that a row belongs to.
func partOf(row ledger.Row) PartID {
	if len(row.Path) > 0 {
		return PartID{Component: row.Path[0]}
	}
	return PartID{Food: row.Profile.Food.ID}
}

// parts lists what the build pours, in order.
func (a *Assay) parts() []PartID {
	var ids []PartID
	for _, row := range a.Serving.Rows {
		if id := partOf(row); !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// only gives the rows of the serving that belong to a part.
func (a *Assay) only(id PartID) *ledger.Pot {
	return a.Serving.Only(func(row int) bool { return partOf(a.Serving.Rows[row]) == id })
}
