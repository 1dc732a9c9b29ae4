package food

import (
	"slices"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// WithKin gives a food with the values that it gains by its kin where it enters the ledger,
// each marked ByKin.
func WithKin(f *Food) *Food {
	may := slices.ContainsFunc(Splittable(), func(id constituent.ID) bool {
		v, ok := f.Value(id)
		return ok && Stated(v.Amount)
	})
	if !may {
		return f
	}
	own, profile := *f, Enter(f, nil)
	own.Values = slices.Clone(f.Values)
	for _, c := range constituent.All() {
		cell := profile.Cell(c.ID)
		if cell.By != ByKin {
			continue
		}
		scale := unit.Hundred * c.PerGram
		own.Values = slices.DeleteFunc(own.Values, func(v Value) bool { return v.Constituent == c.ID })
		own.Values = append(own.Values, Value{
			Constituent: c.ID, Amount: threeDigits(cell.Amount * scale), SD: threeDigits(cell.SD * scale), Low: None, High: None, Limit: None,
			State: estimate.Calculated, Source: cell.Source, Ref: cell.Why, By: ByKin,
		})
	}
	return &own
}

// threeDigits rounds what is calculated to the digits that it deserves.
func threeDigits(x float64) float64 {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 3, 64), 64)
	return rounded
}

// Splittable are the figures of a food that its kin can share out.
func Splittable() []constituent.ID { return []constituent.ID{constituent.OrganicAcids, titratable} }

// SharedByKin reports whether a kin can tell of a constituent.
func SharedByKin(id constituent.ID) bool {
	return id == constituent.OrganicAcids || slices.ContainsFunc(kins(), func(k *Kin) bool {
		return slices.ContainsFunc(k.shares, func(s kinShare) bool { return s.acid.ID == id && s.share > 0 })
	})
}

// GroupsWithKin are the food groups in which a kin stands.
func GroupsWithKin() []string {
	var list []string
	for _, k := range kins() {
		for _, group := range k.groups {
			if k.Name != NoKin && !slices.Contains(list, group) {
				list = append(list, group)
			}
		}
	}
	return list
}
