package acidity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// Above 1.5 g in 100 g the buffering of protein decides (row "protein"), but for that of what
// was titrated; and nothing without water has a pH.
func TestWhatCanHaveNoPHFromItsComposition(t *testing.T) {
	rich := assaytest.Exact("rich", "milk", figures{"WATER": 90, "PROCNT": 3.2, "LACS": 5})
	poor := assaytest.Exact("poor", "milk", figures{"WATER": 90, "PROCNT": 1.4, "LACS": 5})
	dry := assaytest.Exact("dry", "sugar", figures{"WATER": 0, "SUCS": 100})
	b := assaytest.NewBench(3, rich, poor, dry)
	assert.Equal(t, "3.2 g of protein in 100 g buffer as its acids do: no pH from composition above 1.5 g; titrate it", acidity.Unsolvable(b.Pot(100, rich)))
	assert.Empty(t, acidity.Unsolvable(b.Pot(100, poor)))
	assert.NotEmpty(t, acidity.Unsolvable(b.Pot(100, rich, poor)), "2.3 g")
	assert.Empty(t, acidity.Unsolvable(b.Pot(100, rich, poor, dry, dry)), "1.15 g")
	assert.Equal(t, "there is no water in it", acidity.Unsolvable(b.Pot(100, dry)))
	assert.Equal(t, "there is no water in it", acidity.Unsolvable(b.Drawer.NewPot()))
	known := b.Pot(100, rich)
	carry(known, titrated(4, 5, 8), 100)
	assert.Empty(t, acidity.Unsolvable(known))

	_, _, err := b.Lab.Acidity(b.Pot(100, dry))
	assert.EqualError(t, err, "there is no water in it")
}

// A drink of foods is neither alkaline nor more acid than any food acid makes it (row
// "possible": 1 to 8.5, or as high as its groups go: egg white 9.0); waters, acids and salts
// may be, and what was titrated says so itself.
func TestPHThatNoDrinkHas(t *testing.T) {
	juice := assaytest.Exact("juice", "fruit juice", juice)
	egg := assaytest.Exact("egg", "egg", figures{"WATER": 88, "PROCNT": 1, "K": 100})
	water := assaytest.Exact("tap", "water", figures{"WATER": 100, "NA": 2, "CA": 8, "MG": 1, "CO2": 0.02})
	salt := assaytest.Exact("soda", "salt", figures{"WATER": 0, "NA": 27000})
	b := assaytest.NewBench(3, juice, egg, water, salt)
	in := b.Lab.IonsOf(b.Pot(100, juice), 1)
	for pH, absurd := range map[float64]string{0.9: "more acids than", 1.1: "", 4: "", 8.4: "", 8.6: "more metals than"} {
		if got := in.Impossible(pH); absurd == "" {
			assert.Empty(t, got)
		} else {
			assert.Contains(t, got, absurd)
		}
	}
	in = b.Lab.IonsOf(b.Pot(100, juice, egg), 1)
	assert.Empty(t, in.Impossible(8.9))
	assert.NotEmpty(t, in.Impossible(9.1))
	in = b.Lab.IonsOf(b.Pot(100, water, salt), 1)
	assert.Empty(t, in.Impossible(11))
	assert.Empty(t, in.Impossible(0.5))
	known := b.Pot(100, juice)
	carry(known, titrated(4, 5, 8), 100)
	assert.Empty(t, b.Lab.IonsOf(known, 1).Impossible(8.9))
}

// Of acids from memory those are told that make up a twentieth of the acid, by equivalents.
func TestAcidsFromMemoryAreTold(t *testing.T) {
	var remembered, seen acid.Acid
	for _, a := range acid.All() {
		switch {
		case !acidity.IsOrganic(a):
		case a.FromMemory():
			remembered = a
		case a.ID == "citric":
			seen = a
		}
	}
	if remembered.ID == "" {
		t.Skip("every acid of the table has been seen in print")
	}
	milligrams := func(a acid.Acid, equivalents float64) float64 { return 1000 * equivalents * a.Equivalent() }
	of := func(share float64) []string {
		f := assaytest.Exact("mixed", "acid", figures{
			"WATER": 95, "K": 100, seen.Constituent: milligrams(seen, 0.01*(1-share)), remembered.Constituent: milligrams(remembered, 0.01*share),
		})
		b := assaytest.NewBench(2, f)
		return b.Lab.IonsOf(b.Pot(100, f), 1).Unseen()
	}
	assert.Equal(t, []string{remembered.Name}, of(0.06))
	assert.Empty(t, of(0.04))
	water := assaytest.Exact("pure", "water", figures{"WATER": 100, "CO2": 0, "NA": 0, "K": 0, "CA": 0, "MG": 0})
	b := assaytest.NewBench(2, water)
	assert.Empty(t, b.Lab.IonsOf(b.Pot(100, water), 1).Unseen())
}

// The vocabulary's organic acids are listed, without sums and rests.
func TestAcidsOfTheVocabulary(t *testing.T) {
	for _, c := range acidity.AcidsOf() {
		assert.Equal(t, constituent.OrganicAcids, c.Parent, c.ID)
		assert.Equal(t, constituent.Leaf, c.Kind, c.ID)
	}
	organic := map[string]bool{}
	for _, a := range acid.All() {
		organic[a.ID] = acidity.IsOrganic(a)
	}
	assert.True(t, organic["citric"] && organic["quinic"])
	assert.False(t, organic["phosphoric"] || organic["carbonic"] || organic["boric"] || organic["ascorbic"], "no part of the organic acids of tables")
}
