package acid_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
)

func readCases(t testing.TB, path string) [][]string {
	t.Helper()
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	return rows[1:]
}

func parse(t testing.TB, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

// mix reads "citric 0.05 K 0.05" in mol per kg of water.
func mix(t testing.TB, text string) *acid.Solution {
	t.Helper()
	s := acid.New(1)
	charges := map[string]int{"K": 1, "NA": 1, "CLD": -1}
	metals := map[string]acid.Metal{"CA": acid.Calcium, "MG": acid.Magnesium}
	words := strings.Fields(text)
	for i := 0; i < len(words); i += 2 {
		mol := parse(t, words[i+1])
		if z, ok := charges[words[i]]; ok {
			s.AddIon(z, mol)
		} else if m, ok := metals[words[i]]; ok {
			s.Metals[m] += mol
		} else {
			s.Acids[acid.Must(words[i])] += mol
		}
	}
	return s
}

func solver(t testing.TB, celsius float64) *acid.Solver {
	t.Helper()
	s, err := acid.NewSolver(celsius)
	require.NoError(t, err)
	return s
}

func TestStandardBuffersAndPureAcids(t *testing.T) {
	for _, path := range []string{"testdata/buffers.csv", "testdata/pure_acids.csv"} {
		worst := 0.0
		for _, row := range readCases(t, path) {
			sol := mix(t, row[1])
			state, err := solver(t, parse(t, row[2])).Solve(sol, acid.State{})
			require.NoError(t, err, row[0])
			assert.InDelta(t, parse(t, row[3]), state.PH, parse(t, row[4]), "%s at %s °C", row[0], row[2])
			worst = max(worst, math.Abs(parse(t, row[3])-state.PH))
		}
		t.Logf("%s: worst %.3f", path, worst)
	}
}

func TestMcIlvaine(t *testing.T) {
	// Tolerance 0.15 a row and 0.08 for the mean error.
	s, sum := solver(t, 25), 0.0
	cases := readCases(t, "testdata/mcilvaine.csv")
	require.Len(t, cases, 30)
	for _, row := range cases {
		phosphate, citric := 0.2*parse(t, row[1])/20, 0.1*parse(t, row[2])/20
		sol := acid.New(1)
		sol.Acids[acid.Must("phosphoric")] = phosphate
		sol.Acids[acid.Must("citric")] = citric
		sol.AddIon(1, 2*phosphate)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		assert.InDelta(t, parse(t, row[0]), state.PH, 0.15)
		sum += state.PH - parse(t, row[0])
	}
	bias := sum / float64(len(cases))
	assert.InDelta(t, 0, bias, 0.08)
	t.Logf("mean error %+.3f", bias)
}

func TestPKw(t *testing.T) {
	// 13.995 at 25 °C: CRC Handbook of Chemistry and Physics, from memory; Bates
	// (Determination of pH) prints 14.944 at 0 and 13.017 at 60 °C, from memory.
	for celsius, want := range map[float64]float64{0: 14.944, 25: 13.995, 60: 13.017} {
		assert.InDelta(t, want, acid.PKw(celsius), 0.01)
	}
}
