package chemistry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// Fruit of which a total of acids is all that is published, or what was titrated, tell their
// acidity by their kin.
func TestFruitsOfKinTellTheirAcidity(t *testing.T) {
	lib := assaytest.Core(t)
	for _, code := range []string{
		"yuzu-juice", "sudachi-juice", "bitter-orange-juice", "apricot", "plum", "plum-juice", "redcurrant", "redcurrant-juice",
		"gooseberry", "gooseberry-juice", "rhubarb", "rhubarb-juice",
	} {
		c := assaytest.Glass(t, lib, "core:"+code, 25)
		assert.Empty(t, c.PHMeter.Why, code)
		assert.Empty(t, c.Acidity[0].Per100g.Why, code)
	}
}

// An acidity that a total of acids was read out of does not count as a second measurement
// of them: it stays as published, and as uncertain. Peach, 0.6 g/100 g (Belitz, Food
// Chemistry), and 16 % between trees and years (data/acid_unmeasured.csv), of which a 90 %
// interval is 2 · 1.645 wide.
func TestATitrationCountsOnce(t *testing.T) {
	const published, relative = 0.6, 0.16
	id := food.ID{Table: "core", Code: "peach"}
	lib := assaytest.Core(t)
	for _, of := range []constituent.ID{constituent.OrganicAcids, "QUINAC"} {
		lib = assaytest.Without(lib, id, of)
	}
	require.Equal(t, food.ByKin, food.Enter(lib[id], nil).Cell(constituent.OrganicAcids).By)
	acidity := assaytest.Glass(t, lib, "core:peach", 25).Acidity[0].Per100g
	assert.InEpsilon(t, published, acidity.Mean, 0.05)
	// Counted twice it would be narrower by √2. It is wider by what lies between fruits of the
	// name (row "titratable acidity of a name").
	width := 2 * 1.645 * relative * published
	assert.Greater(t, acidity.High-acidity.Low, 0.85*width)
	assert.Less(t, acidity.High-acidity.Low, 1.5*width)
}
