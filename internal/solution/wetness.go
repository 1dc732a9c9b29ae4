package solution

import "sipsum/internal/constituent"

// Wetness gives how much of a mixture of masses in grams, without its fat, is water and
// alcohol, in per cent, and the least of which a liquid consists: more where it is all of
// solid foods as they grow or are sold, whose water is in them. A mixture of nothing but
// fat has none.
func Wetness(grams map[constituent.ID]float64, solid bool) (share, least float64) {
	wet, all := grams[constituent.Water]+grams[constituent.Alcohol], 0.0
	for _, child := range constituent.Sums().Children(constituent.Mass) {
		if child.ID == constituent.Fat {
			continue
		}
		leaves := constituent.Sums().Leaves(child.ID)
		if child.Kind != constituent.Parent {
			leaves = []*constituent.Constituent{child}
		}
		for _, leaf := range leaves {
			all += grams[leaf.ID]
		}
	}
	if all > 0 {
		share = percent * wet / all
	}
	if solid {
		return share, constants()["driest juicy food"]
	}
	return share, constants()["driest liquid"]
}

// MostOpenWater is the share of a mass up to which it does not matter to a reading whether it is
// water: above it there is none.
func MostOpenWater() float64 { return constants()["most open water"] / percent }

// IsFat reports whether masses in grams are fat and next to no water or alcohol: what
// little there is lies in drops that nothing reads.
func IsFat(grams map[constituent.ID]float64) bool {
	sum := func(id constituent.ID) (total float64) {
		for _, leaf := range constituent.Sums().Leaves(id) {
			total += grams[leaf.ID]
		}
		return total
	}
	wet, all := grams[constituent.Water]+grams[constituent.Alcohol], sum(constituent.Mass)
	return sum(constituent.Fat) > all/2 && percent*wet < constants()["wettest fat"]*all
}
