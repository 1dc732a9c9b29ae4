package burette_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/burette"
	"sipsum/internal/estimate"
)

// 10 g of a solution of 1 % citric acid hold 0.1 g, and 192.12 g are a mol of three protons (the
// atomic weights of IUPAC): 1.561 mmol.
func TestAWeighedAcidTellsTheBase(t *testing.T) {
	p := burette.ProofOf(10)
	assert.InDelta(t, 3*0.1/192.12, p.Mol, 1e-6)
	assert.False(t, burette.KnownWell(0.048), "a syringe of 10 ml that draws 4 ml is ± 5 %")
	assert.True(t, burette.KnownWell(0.01))
}

// A plan takes what a burette holds: a stronger base for what is sour, more of what is hardly so.
func TestAPlanTakesWhatABuretteHolds(t *testing.T) {
	for _, c := range []struct{ mmol, molarity, grams float64 }{
		{1.5, 0.1, 10},  // 15 ml
		{8, 0.5, 10},    // of lemon juice 16 ml, and 80 of 0.1 mol/l
		{30, 1, 10},     // of pure concentrate
		{0.1, 0.1, 50},  // 1 ml of a filter coffee
		{0.49, 0.1, 50}, // 4.9 ml
	} {
		p := burette.Usual(10, c.mmol/1000)
		assert.Equal(t, c.molarity, p.Molarity, "%g mmol", c.mmol)
		assert.Equal(t, c.grams, p.Grams, "%g mmol", c.mmol)
	}
	p := burette.Plan{Molarity: 0.1, Points: 5}
	points := p.Lay(0.002, 0.05, 0.001)
	require.Len(t, points, 5)
	assert.Zero(t, points[0].Off)
	assert.InDelta(t, 0.001, points[2].Base, 1e-12)
	assert.InDelta(t, 0.010, points[2].Water, 1e-12, "10 ml of water")
	assert.InDelta(t, 5e-6, points[4].Off, 1e-12)
}

// A syringe that is off by a twentieth moves all volumes together: its base is known that badly, and
// the acids are told worse; proved with the same syringe it is as good as its sample.
func TestASyringeIsOffAlikeAtAllVolumes(t *testing.T) {
	s := wide([]string{"citric", "malic"}, []float64{3, 3})
	l, kit := s.prior(good, 1000, 3)
	of := map[string]burette.Told{}
	for _, by := range burette.Pourers(estimate.Ensemble{Seed: 1, N: 1001}, "x", kit.Factor) {
		kit.Factor = by.All
		o, err := burette.Look(estimate.Ensemble{Seed: 1, N: 1001}, "x", 25, l, kit, nil)
		require.NoError(t, err)
		mol, err := o.BaseTo(burette.EndOfPlan(), 10)
		require.NoError(t, err)
		points := burette.Usual(10, mol).Lay(mol, by.Off, 0.001)
		require.NoError(t, o.Shown(points))
		assert.InDelta(t, burette.EndOfPlan(), points[len(points)-1].PH, 0.02, "the last point stands at the end")
		of[by.Name], err = o.Tells(points)
		require.NoError(t, err)
	}
	syringe, best, proved := of[burette.BySyringe], of[burette.ByBurette], of[burette.ByProved]
	assert.Greater(t, syringe.Half[0], 1.2*best.Half[0])
	assert.Greater(t, syringe.Factor, 0.03)
	assert.Less(t, proved.Half[0], syringe.Half[0])
	assert.Greater(t, proved.Half[0], best.Half[0]*0.99)
}

// The next points are worth their base, in the order in which they are poured, and what is left when
// they have been read is not worth any.
func TestTheNextPointsAreWorthTheirBase(t *testing.T) {
	s := juice
	s.nameless = 0
	l, kit := s.prior(good, 600, 4)
	ens := estimate.Ensemble{Seed: 1, N: 601}
	is := truth{mol: map[string]float64{}, strong: s.strong * sampleKg, factor: 1, carbonate: 0.01, slope: 1}
	for i, name := range s.acids {
		is.mol[name] = s.grams[i] / molar[name] * sampleKg
	}
	read := is.titrate(rand.New(rand.NewPCG(1, 1)), good, 25)[:5]
	for range 40 {
		o, err := burette.Look(ens, "x", 25, l, kit, read)
		require.NoError(t, err)
		last := read[len(read)-1].Base
		end, err := o.BaseTo(burette.EndOfPlan(), 10)
		require.NoError(t, err)
		var further []burette.Point
		for k := 1; k <= 30 && end > last; k++ {
			base := last + (end-last)*float64(k)/30
			further = append(further, burette.Point{Base: base, Off: 2e-6, Water: base / molarity})
		}
		require.NoError(t, o.Shown(further))
		places, narrows, err := o.Few(further, 5)
		require.NoError(t, err)
		if len(places) == 0 {
			t.Logf("%d points, the last at pH %.2f", len(read), read[len(read)-1].PH)
			assert.GreaterOrEqual(t, len(read), burette.Fewest())
			assert.Greater(t, read[len(read)-1].PH, 6.0, "all acids but the weakest are titrated")
			return
		}
		assert.IsIncreasing(t, append([]int{-1}, places...))
		assert.Greater(t, narrows, 0.0)
		read = append(read, further[places[0]])
	}
	t.Error("it never ends")
}

// A liquid of which everything is certain has no outlook.
func TestWhatIsCertainHasNoOutlook(t *testing.T) {
	one := estimate.Constant(101, 1)
	l := burette.Liquid{Rest: acid.New(0.05), Strong: estimate.Constant(101, 0), Acids: []burette.Amount{{Acid: acid.Must("citric"), Mol: estimate.Constant(101, 1e-4)}}}
	_, err := burette.Look(estimate.Ensemble{Seed: 1, N: 101}, "x", 25, l, burette.Kit{Noise: 0.02, Zero: estimate.Constant(101, 0), Slope: one, Factor: one}, nil)
	assert.ErrorContains(t, err, "nothing is uncertain")
}
