package acid_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
)

// gramsOf makes a solution of a composition in mg.
func gramsOf(t testing.TB, mg map[constituent.ID]float64) *acid.Solution {
	t.Helper()
	sol := acid.New(0)
	sol.AddGrams(func(at int) float64 { return mg[acid.Constituents()[at]] / 1000 })
	return sol
}

// orange is the mean of the German RSK values for orange juice, mg/l, as printed
// in Belitz, Grosch and Schieberle, Food Chemistry, table 18.41: density 1.046,
// 11.41 °Bx. Chloride and sulphate are published as "below" and taken at half.
func orange(t testing.TB) *acid.Solution {
	return gramsOf(t, map[constituent.ID]float64{
		"WATER": 1046e3 * (1 - 0.1141), "CITAC": 9400, "MALAC": 1700, "ISOCAC": 90, "VITC": 350, "phosphate": 460,
		"K": 1900, "NA": 14, "CA": 80, "MG": 100, "CLD": 30, "sulphate": 75,
	})
}

func TestOrangeJuiceOfTheRSKMean(t *testing.T) {
	s, juice := solver(t, 25), orange(t)
	state, err := s.Solve(juice, acid.State{})
	require.NoError(t, err)
	base, err := s.Base(juice, 7.0, state)
	require.NoError(t, err)
	tartaric := acid.All()[acid.Must("tartaric")]
	acidity := base * juice.Solvent * tartaric.Equivalent()
	// 9.5 g/l as tartaric acid to pH 7.0 (Belitz, table 18.41); the tolerance is the 8 %.
	assert.InEpsilon(t, 9.5, acidity, 0.08)
	// Published range of orange juice: FDA/CFSAN 2003 3.30–4.19, from memory.
	assert.GreaterOrEqual(t, state.PH, 3.3)
	assert.LessOrEqual(t, state.PH, 4.2)
	t.Logf("pH %.2f, %.2f g/l as tartaric acid", state.PH, acidity)
}

func TestLemonJuice(t *testing.T) {
	// Citric acid: Penniston et al. 2008 (PMC2637791), 48.0 g/l. Minerals: Lorente
	// et al. 2014, mean of 92 juices. Phosphate is unknown: at most 3.066 times
	// the phosphorus (306 mg/l), so both ends are solved. Water: density 1.03,
	// 8.9 °Bx (19 CFR 151.91). pH 2.0 to 2.6: FDA/CFSAN list 2003.
	for _, phosphate := range []float64{0, 306 * 3.066} {
		juice := gramsOf(t, map[constituent.ID]float64{
			"WATER": 1030e3 * (1 - 0.089), "CITAC": 48000, "K": 1264, "CA": 112, "MG": 92.6, "phosphate": phosphate,
		})
		state, err := solver(t, 25).Solve(juice, acid.State{})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, state.PH, 2.0)
		assert.LessOrEqual(t, state.PH, 2.6)
		t.Logf("phosphate %.0f mg/l: pH %.2f", phosphate, state.PH)
	}
}

func TestVinegar(t *testing.T) {
	// Vinegar of 5 % acetic acid: pH 2.40 is the low end of FDA/CFSAN 2003, from memory.
	vinegar := gramsOf(t, map[constituent.ID]float64{"WATER": 950e3, "ACEAC": 50e3})
	state, err := solver(t, 25).Solve(vinegar, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, 2.4, state.PH, 0.05)
}

func TestBlendConservesAmountsNotPH(t *testing.T) {
	s := solver(t, 25)
	juice, lemon := orange(t), gramsOf(t, map[constituent.ID]float64{"WATER": 938e3, "CITAC": 48000, "K": 1264})
	_, err := s.Calibrate(juice, 3.75)
	require.NoError(t, err)
	_, err = s.Calibrate(lemon, 2.45)
	require.NoError(t, err)
	for sol, want := range map[*acid.Solution]float64{juice: 3.75, lemon: 2.45} {
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, want, state.PH, 1e-9, "a calibrated component has the pH that was read")
	}

	blend := acid.New(0)
	blend.Pour(juice, 0.3)
	blend.Pour(lemon, 0.7)
	got, err := s.Solve(blend, acid.State{})
	require.NoError(t, err)

	pooled := acid.New(0.3*juice.Solvent + 0.7*lemon.Solvent)
	for i := range pooled.Acids {
		pooled.Acids[i] = 0.3*juice.Acids[i] + 0.7*lemon.Acids[i]
	}
	pooled.Strong = 0.3*juice.Strong + 0.7*lemon.Strong
	pooled.Background = 0.3*juice.Background + 0.7*lemon.Background
	for m := range pooled.Metals {
		pooled.Metals[m] = 0.3*juice.Metals[m] + 0.7*lemon.Metals[m]
	}
	want, err := s.Solve(pooled, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, want.PH, got.PH, 1e-9)
	weights := 0.3*juice.Solvent + 0.7*lemon.Solvent
	sid := (0.3*juice.Solvent*juice.StrongIonDifference() + 0.7*lemon.Solvent*lemon.StrongIonDifference()) / weights
	assert.InDelta(t, sid, blend.StrongIonDifference(), 1e-12)

	averaged := 0.3*3.75 + 0.7*2.45
	assert.Greater(t, math.Abs(averaged-got.PH), 0.1, "the mean of the pH is another number")
	t.Logf("blend %.3f, averaged pH %.3f", got.PH, averaged)
}

func TestTemperatureMovesAJuiceLittle(t *testing.T) {
	// Standard citrate buffer moves by −0.081 from 5 to 35 °C (Staples and Bates
	// 1969); a juice that it dominates moves likewise.
	cold, err := solver(t, 5).Solve(orange(t), acid.State{})
	require.NoError(t, err)
	warm, err := solver(t, 35).Solve(orange(t), acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, -0.08, warm.PH-cold.PH, 0.04)
}

func TestEthanolWeakensAcids(t *testing.T) {
	// Prenesti et al. 2012, table 4: log K of lactate 3.70 in water and 3.81 in
	// 12 % vol ethanol (9.64 % m/m), I = 0.05; the mean over three carboxyls is
	// 0.138. At half neutralisation pH follows pK.
	s := solver(t, 25)
	water := mix(t, "lactic 0.05 NA 0.025")
	wine := mix(t, "lactic 0.05 NA 0.025")
	wine.Ethanol = 0.0964
	a, err := s.Solve(water, acid.State{})
	require.NoError(t, err)
	b, err := s.Solve(wine, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, 0.11, b.PH-a.PH, 0.04)
}

func TestMilkSerumBindsItsCalcium(t *testing.T) {
	// Fox and McSweeney 1998, Dairy Chemistry and Biochemistry, table 5.6: the
	// soluble salts of milk; 35 % of the soluble calcium is free, 55 % with
	// citrate and 10 % with phosphate; milk's pH is 6.6 to 6.7. The serum's own
	// acids are left out there, so only the split at that pH is asked, and widely.
	s := solver(t, 20)
	serum := gramsOf(t, map[constituent.ID]float64{
		"WATER": 950e3, "NA": 460, "K": 1334, "CLD": 1200, "sulphate": 100, "phosphate": 322, "CITAC": 1645, "CA": 408, "MG": 87,
	})
	_, err := s.Calibrate(serum, 6.65)
	require.NoError(t, err)
	state, err := s.Solve(serum, acid.State{})
	require.NoError(t, err)
	free := state.Free[acid.Calcium] / (serum.Metals[acid.Calcium] / serum.Solvent)
	assert.InDelta(t, 0.35, free, 0.15)
	t.Logf("free calcium %.0f %%", 100*free)
}
