package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Nobody has measured the potassium of coffee by roast: the roasts share one figure, so no
// draw may say that one of them has more. What was measured by roast differs.
func TestRoastsDifferInNothingThatWasNotMeasuredByRoast(t *testing.T) {
	lib := assaytest.Core(t)
	profile := func(code string) *food.Profile {
		f := lib[food.ID{Table: "core", Code: code}]
		require.NotNil(t, f)
		return food.Enter(f, nil)
	}
	for _, pair := range [][2]string{{"coffee-roasted-arabica", "coffee-roasted-arabica-dark"}, {"espresso", "espresso-light"}} {
		comparesAlike(t, profile(pair[0]), profile(pair[1]))
	}
}

func comparesAlike(t *testing.T, medium, dark *food.Profile) {
	t.Helper()
	const draws = 400
	columns := ledger.NewColumns([]*food.Profile{medium, dark})
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns)
	apart := func(id constituent.ID) float64 {
		a, b := drawer.PerGram(medium)[columns.At(id)], drawer.PerGram(dark)[columns.At(id)]
		ratio := make([]float64, draws)
		for i := range ratio {
			ratio[i] = a[i+1] / b[i+1]
		}
		return stat.StdDev(ratio, nil) / stat.Mean(ratio, nil)
	}
	for _, id := range []constituent.ID{"K", "MG", "CAFFN", "trigonelline", "PROCNT"} {
		assert.Less(t, apart(id), 0.03, "%s: only the mass that is closed may differ", id)
	}
	assert.Greater(t, apart("CITAC"), 0.1)
}
