package curdling_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/curdling"
)

// atPH is a mixture of the pH 5.7 at 80 °C, where casein curdles between 5.4 and 6.0: in so
// many of twenty draws it lies where the least acid brings it down.
func atPH(t *testing.T, curdles int) *curdling.Mixture {
	t.Helper()
	s, err := acid.NewSolver(curdling.BenchCelsius)
	require.NoError(t, err)
	sol := milk(t)
	_, err = s.Calibrate(sol, 5.7)
	require.NoError(t, err)
	const twenty = 20
	m := &curdling.Mixture{Protein: protein(t, "casein"), Celsius: 80, Place: []float64{0.5}, Milk: same(sol, 100, twenty+1), Sour: same(sol, 1, twenty+1)}
	for d := range twenty {
		place := 0.0
		if d < curdles {
			place = 1
		}
		m.Place = append(m.Place, place)
	}
	return m
}

// Smooth from 95 %, curdles up to 5 %: both ends belong to the verdict.
func TestVerdictsBeginWhereTheyAreSaidTo(t *testing.T) {
	for curdles, want := range map[int]curdling.Verdict{0: curdling.Smooth, 1: curdling.Smooth, 2: curdling.Doubtful, 10: curdling.Doubtful, 18: curdling.Doubtful, 19: curdling.Curdles, 20: curdling.Curdles} {
		stand, err := atPH(t, curdles).Stand()
		require.NoError(t, err)
		assert.InDelta(t, float64(20-curdles)/20, stand.Smooth, 1e-12)
		assert.Equal(t, want, stand.Verdict, "%d of 20", curdles)
	}
	m := atPH(t, 20)
	m.Place, m.Milk, m.Sour = m.Place[:1], same(m.Milk.Solutions[0], 1000, 1), same(m.Sour.Solutions[0], 1, 1)
	m.Place[0] = 0
	stand, err := m.Stand()
	require.NoError(t, err)
	assert.Equal(t, 1.0, stand.Smooth, "without draws the central value is all there is")
}

// The figures of a temperature are those of the nearest published one.
func TestTheSourceIsOfTheNearestTemperature(t *testing.T) {
	casein := protein(t, "casein")
	for celsius, nearest := range map[float64]float64{-2: 5, 6: 5, 14: 5, 16: 25, 30: 25, 35: 25, 37: 47, 46: 47, 60: 47, 70: 80, 99: 80} {
		assert.Equal(t, casein.At(nearest).Source, casein.At(celsius).Source, "%g °C", celsius)
	}
	assert.Equal(t, 30.0, casein.At(30).Celsius)
	assert.Equal(t, 5.0, casein.Coldest())
	_, ok := curdling.Find("gold")
	assert.False(t, ok)
}

// What a way out says is done to the drink: a salt by its formula (trisodium citrate dihydrate
// 294.10 g/mol, sodium hydrogen carbonate 84.01, dipotassium phosphate 174.18: IUPAC atomic
// weights), and as much as it says, no more.
func TestASaltIsAsMuchAsItSays(t *testing.T) {
	molar := map[string]float64{"citrate": 294.10, "bicarbonate": 84.01, "phosphate": 174.18}
	charges := map[string]float64{"citrate": 3, "bicarbonate": 1, "phosphate": 2}
	acids := map[string]string{"citrate": "citric", "bicarbonate": "carbonic", "phosphate": "phosphoric"}
	ways, err := sourMilk(t, 60, 3).Ways()
	require.NoError(t, err)
	seen := 0
	for _, w := range ways {
		if w.Kind != curdling.Buffer {
			continue
		}
		seen++
		const drink = 100 + 3 + 20
		assert.InDelta(t, w.Grams/drink, w.Change, 1e-12)
		assert.Equal(t, 60.0, w.Celsius, "the pour is as hot")
		for share, smooth := range map[float64]bool{1: true, 0.9: false} {
			salt := acid.New(1)
			salt.Acids[acid.Must(acids[w.Salt.ID])] = share * w.Grams / 20 * 1000 / molar[w.Salt.ID]
			salt.AddIon(1, charges[w.Salt.ID]*share*w.Grams/20*1000/molar[w.Salt.ID])
			m := sourMilk(t, 60, 3)
			m.Rest = same(salt, 20, draws+1)
			stand, err := m.Stand()
			require.NoError(t, err)
			assert.Equal(t, smooth, stand.Verdict == curdling.Smooth, "%.1f of %s", share, w.Salt.Name)
			if share == 1 {
				assert.InDelta(t, w.PH, stand.PH[0], 1e-3)
				assert.InDelta(t, w.Smooth, stand.Smooth, 1e-9)
			}
		}
	}
	assert.Positive(t, seen)
}

// What each way changes, as a share of the drink; a degree counts as one per cent of it.
func TestChangesAreOfTheDrink(t *testing.T) {
	ways, err := sourMilk(t, 60, 3).Ways()
	require.NoError(t, err)
	const drink = 100 + 3 + 20
	for _, w := range ways {
		switch w.Kind {
		case curdling.Cooler:
			assert.InDelta(t, 0.01*(60-w.Celsius), w.Change, 1e-12)
			assert.Less(t, w.Celsius, 60.0)
			assert.Zero(t, w.Grams)
		case curdling.LessSour, curdling.MoreMilk:
			assert.InDelta(t, w.Grams/drink, w.Change, 1e-12)
			assert.Equal(t, 60.0, w.Celsius)
		}
		if w.Kind == curdling.MoreMilk {
			assert.LessOrEqual(t, w.Grams, 300.0, "four times the milk is another drink")
		}
		assert.False(t, math.IsNaN(w.PH))
	}
	// Where nothing within reach helps, nothing is proposed.
	ways, err = sourMilk(t, 5, 100).Ways()
	require.NoError(t, err)
	for _, w := range ways {
		assert.Equal(t, curdling.LessSour, w.Kind, "of a drink that is half lemon juice")
	}
}

func TestSaltsAreThoseOfTheTable(t *testing.T) {
	var ids []string
	for _, s := range curdling.Salts() {
		ids = append(ids, s.ID+" "+s.Additive)
		assert.NotEmpty(t, s.Name)
	}
	assert.Equal(t, []string{"citrate E 331", "bicarbonate E 500", "phosphate E 340"}, ids)
	molar, err := constituent.MolarMass("Na3C6H5O7·2H2O")
	require.NoError(t, err)
	assert.InDelta(t, 294.10, molar, 0.02)
}
