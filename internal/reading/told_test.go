package reading_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/reading"
)

func formatted(x float64) string { return strconv.FormatFloat(x, 'f', 6, 64) }

// What has been read of a pot, by kind; a titration tells its pH and its acidity.
func TestTakenTellsWhatWasRead(t *testing.T) {
	none := reading.TakenOf(nil)
	assert.Equal(t, acidity.Surely{}, none.Acidity())
	assert.False(t, none[amount.ReadMass])
	for text, kind := range map[string]string{"mass: 1 g": "mass", "brix: 1": "brix", "tds: 1 %": "tds", "density: 1.0 g/ml": "density", "abv: 1 %": "abv", "ph: 4": "ph", "ta: 1 g/l": "ta"} {
		taken := reading.TakenOf(readings(t, text, "brix: 2"))
		for _, other := range []string{"mass", "brix", "tds", "density", "abv", "ph", "ta"} {
			assert.Equal(t, other == kind || other == "brix", taken[other], "%s, %s", text, other)
		}
	}
	assert.Equal(t, acidity.Surely{PH: true}, reading.TakenOf(readings(t, "ph: 4")).Acidity())
	assert.Equal(t, acidity.Surely{Acidity: true}, reading.TakenOf(readings(t, "ta: 1 %")).Acidity())
	bench := "titration: [[0 ml, 3.0], [5 ml, 5.0], [9 ml, 8.2]], base: 0.1 mol/l, sample: 10 g"
	assert.Equal(t, acidity.Surely{PH: true, Acidity: true}, reading.TakenOf(readings(t, "mass: 3 g", bench)).Acidity())
}

// A sentence names what was read, what was expected and used, and what to do.
func TestNoteOfAReading(t *testing.T) {
	r := reading.Reading{Path: []string{"base", "syrup"}, Kind: "brix", Unit: "°Bx", Read: 65, Expected: 50.25, Used: 60, Advice: "stir"}
	assert.Equal(t, "base, syrup: brix: read 65 · expected 50.2 · used 60 °Bx; recipe and reading disagree: stir", r.Note())
	r.Path = nil
	assert.Contains(t, r.Note(), "the drink: brix: ")
}

// Each kind is what its instrument reads of a pot: by hand, 300 g of 100 g of sugar read
// 33.3 °Bx and weigh 1.142 g/ml (CRC Handbook: sucrose of 33.3 % at 20 °C, 1.1425).
func TestWhatInstrumentsRead(t *testing.T) {
	pot, lab := syrup()
	b := reading.NewBench(lab, amount.Hand{Ens: lab.Ens}, nil)
	for kind, want := range map[string]float64{"mass": 300, "brix": 33.33, "tds": 33.33, "density": 1.1425, "abv": 0} {
		assert.InDelta(t, want, b.Expected(pot, kind)[0], 0.002*want, kind)
	}
	assert.Len(t, reading.ReadingKinds, 5)
	assert.PanicsWithValue(t, "reading: no reading is called colour", func() { b.Expected(pot, "colour") })
}

// An instrument without ± is within the range of data/instruments.csv, or half of the last
// digit written, if that is more: for tds 0.05 % and 5 % of it, and so wide wherever the
// recipe lies.
func TestAnInstrumentIsAsSureAsItsRange(t *testing.T) {
	for text, want := range map[string]struct {
		kind string
		half float64
	}{
		"brix: 33.4": {"brix", 0.2}, "brix: 33": {"brix", 0.5}, "tds: 33.4 %": {"tds", 0.05 + 0.05*33.4}, "density: 1.143 g/ml": {"density", 0.002}, "density: 1.14 g/ml": {"density", 0.005},
	} {
		pot, lab := assaytest.Pot(2000, assaytest.Poured{Code: "water", Grams: 200, SD: 90, Holds: grams{"WATER": 1}, Group: "water"}, assaytest.Poured{Code: "sugar", Grams: 100, SD: 45, Holds: grams{"SUCS": 1}, Group: "water"})
		b := take(t, pot, lab, reading.Stated{}, text)
		sd := stat.StdDev(b.Expected(pot, want.kind)[1:], nil)
		assert.InEpsilon(t, want.half/math.Sqrt(3), sd, 0.1, text)
	}
}

// A reading agrees as far as three standard deviations of what parts it from the recipe.
func TestWhenAReadingAgrees(t *testing.T) {
	pot, _ := syrup()
	sd := stat.StdDev(logs(pot.Mass())[1:], nil)
	for _, n := range []float64{-3.2, -2.8, 2.8, 3.2} {
		pot, lab := syrup()
		spread := math.Hypot(sd, 1.0/300)
		b := take(t, pot, lab, reading.Stated{}, "mass: "+formatted(300*math.Exp(n*spread))+" g ± 1 g sd")
		assert.Equal(t, math.Abs(n) < 3, b.Readings[0].Agrees, n)
		assert.Equal(t, math.Abs(n) < 3, len(b.Notes) == 0, n)
		assert.Equal(t, math.Abs(n) < 3, b.Readings[0].Advice == "", n)
	}
}

// Nothing is read of a pot of which nothing was read, nor of draws too few for a covariance:
// then the central pot stays, and a mass is closed no further.
func TestWithoutDrawsNothingMoves(t *testing.T) {
	pot, lab := syrup()
	was := pot.Copy()
	b := takeList(t, pot, lab, reading.Stated{}, nil)
	assert.Empty(t, b.Readings)
	assert.Equal(t, was.Total("SUCS"), pot.Total("SUCS"))

	central, lab := assaytest.Pot(0, assaytest.Poured{Code: "water", Grams: 200, Holds: grams{"WATER": 1}, Group: "water"}, assaytest.Poured{Code: "sugar", Grams: 100, Holds: grams{"SUCS": 1}, Group: "water"})
	b = take(t, central, lab, reading.Stated{}, "brix: 34.0")
	require.Len(t, b.Readings, 1)
	assert.InDelta(t, 100, central.Central("SUCS"), 1e-9)
	assert.InDelta(t, 100.0/3, b.Readings[0].Used, 0.05)
}

// A reading that agrees with the recipe and is not used, since nobody knows well enough how a
// coffee refracts, says why and what is kept; one that is used says nothing.
func TestAReadingThatIsKeptApartSaysWhy(t *testing.T) {
	lib := assaytest.Core(t)
	shot := jar{"", "18 g core:coffee-roasted-arabica, 60 g core:water-brew", "brew: {out: 38 g, strength: 9.2 %}", ""}
	said := assaytest.NotesOf(shot.read(t, lib, 300, "brix: 10.8 ± 0.1"), "reading kept apart", "")
	require.Len(t, said, 1)
	assert.Regexp(t, `brix: read 10\.8 °Bx, and the recipe expects 8\.\d+: how strongly what is dissolved in it refracts is not known better .* the amounts stay as the recipe has them \(8\.\d+ °Bx\)`, said[0])
	for _, used := range []string{"brix: 8.6", "tds: 9.4 %"} {
		assert.Empty(t, assaytest.NotesOf(shot.read(t, lib, 300, used), "reading kept apart", ""), used)
	}
}
