package liquid

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// extracted reports whether a row is what water has drawn from coffee or tea: brewed
// elsewhere, or what a step leaves of grounds and leaves.
func extracted(row ledger.Row) bool {
	group := row.Profile.Food.Facts()
	return group.Infused || row.Modelled && group.Dose
}

// dissolves counts what water has drawn from coffee or tea as dissolved, whatever it is:
// soluble solids are what dries, as in the strength of a brew (prep.Brew).
func dissolves(row ledger.Row, id constituent.ID) constituent.ID {
	if extracted(row) && !volatile(id) {
		return constituent.Mass
	}
	return dissolvedFibre(row, id)
}

// refracts counts the dissolved matter of coffee as one thing, for which alone there are
// readings. Its oil floats in droplets.
func refracts(row ledger.Row, id constituent.ID) constituent.ID {
	if extracted(row) && row.Profile.Food.Facts().Coffee && !volatile(id) && !within(id, constituent.Fat) {
		return constituent.Mass
	}
	return dissolvedFibre(row, id)
}

// volatile tells what does not stay when a liquid is dried.
func volatile(id constituent.ID) bool {
	return id == constituent.Water || id == constituent.Alcohol || id == constituent.CarbonDioxide
}

// within reports whether a constituent is another or part of it.
func within(id, whole constituent.ID) bool {
	for at := id; at != ""; at = constituent.Must(at).Parent {
		if at == whole {
			return true
		}
	}
	return false
}

// Steeped reports whether most of a pot comes from coffee or tea.
func Steeped(pot *ledger.Pot) bool {
	solids, all := 0.0, 0.0
	for row, r := range pot.Rows {
		dry := pot.CentralOf(row, constituent.Mass) - pot.CentralOf(row, constituent.Water)
		all += dry
		if group := r.Profile.Food.Facts(); group.Dose || group.Infused {
			solids += dry
		}
	}
	return solids > all/2
}
