package caution

import (
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// caffeineMark is the mark of what is taken to hold caffeine by its group or its names.
const caffeineMark = "caffeine"

// wakes reports whether a food that is marked so is worth naming: one that is known to bring
// caffeine, or one of which nobody says so and whose owner, group or name to print does. A
// further name does not: "blue tea" is a flower. Of what is not drunk nobody says.
func (l *look) wakes(i int) bool {
	it := l.Items[i]
	brought, asked := l.Brought[constituent.Caffeine]
	switch {
	case !asked, !it.Eaten, slices.Contains(brought, it.Food):
		return true
	case !slices.Contains(l.Unstated[constituent.Caffeine], it.Food):
		return false
	}
	if slices.ContainsFunc(it.Marks, func(m food.Mark) bool { return m.Kind == "caution" && m.Value == caffeineMark }) {
		return true
	}
	it.Names = nil
	return slices.Contains(allergen.Assess(it).Cautions, caffeineMark)
}
