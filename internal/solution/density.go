package solution

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// SpecificVolume is the apparent volume that a gram of a constituent takes up
// in water at 20 °C.
type SpecificVolume struct {
	MlPerGram float64
	SD        float64
	Source    string
}

var specificVolumes = sync.OnceValue(func() map[constituent.ID]SpecificVolume {
	volumes := map[constituent.ID]SpecificVolume{}
	for _, row := range embedded.Rows("specific_volumes.csv") {
		volumes[constituent.ID(row.Text("constituent"))] = SpecificVolume{MlPerGram: row.Number("ml_per_g"), SD: row.Number("sd"), Source: row.Text("source")}
	}
	return volumes
})

// VolumeOf gives the specific volume of a mass-additive constituent: its own
// row or that of the nearest parent.
func VolumeOf(id constituent.ID) (SpecificVolume, constituent.ID) {
	for at := id; at != ""; at = constituent.Must(at).Parent {
		if v, ok := specificVolumes()[at]; ok {
			return v, at
		}
	}
	panic("solution: " + string(id) + " is not part of the mass")
}

// Density gives g/ml at 20 °C of a mixture of masses in grams. An empty mixture
// has no density: ok is false.
func Density(grams map[constituent.ID]float64) (gramsPerMl float64, ok bool) {
	mass, volume, sugars := 0.0, 0.0, 0.0
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) { // in order, so that sums repeat exactly
		if g := grams[leaf.ID]; g != 0 {
			v, of := VolumeOf(leaf.ID)
			mass += g
			volume += g * v.MlPerGram
			if of == constituent.Sugar {
				sugars += g
			}
		}
	}
	volume += Excess(grams[constituent.Water], sugars, grams[constituent.Alcohol])
	if volume <= 0 {
		return 0, false
	}
	return mass / volume, true
}
