package constituent_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// Annex XIV of Regulation (EU) No 1169/2011 has nine factors, each in kJ and in kcal; one set
// of rules and no other gives an assay its own energy. 21 CFR 101.9(c)(1)(i) has calories only.
func TestEnergyFactors(t *testing.T) {
	own := map[string]int{}
	by := map[constituent.ID]constituent.EnergyFactor{}
	for _, f := range constituent.EnergyFactors() {
		assert.NotEmpty(t, f.Source, f.Of)
		if f.Own {
			own[f.Rules]++
			by[f.Of] = f
		}
		if f.Rules == "us" {
			assert.NotContains(t, f.PerGram, "kJ", f.Of)
		}
	}
	assert.Equal(t, map[string]int{"eu": 9}, own)
	assert.Equal(t, map[string]float64{"kJ": 37, "kcal": 9}, by["FAT"].PerGram)
	assert.Equal(t, map[string]float64{"kJ": 29, "kcal": 7}, by["ALC"].PerGram)
	assert.Equal(t, map[string]float64{"kJ": 0, "kcal": 0}, by["ERYTHL"].PerGram)
}
