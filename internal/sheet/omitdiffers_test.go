package sheet_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
)

func omitted(t *testing.T, text, name string) *sheet.Omitted {
	t.Helper()
	lib := assaytest.Core(t)
	bench := func(r *recipe.Recipe) fit.Bench {
		return fit.Bench{
			Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 51}),
			Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
		}
	}
	r := assaytest.Found(t, lib, text)
	o, err := fit.Omit(context.Background(), bench(r), r, name, func(ctx context.Context, d *drink.Drink) (fit.Bench, *recipe.Recipe, error) {
		found, err := recipe.Find(ctx, d, &fail.List{}, lib)
		if err != nil {
			return fit.Bench{}, nil, err
		}
		return bench(found), found, nil
	})
	require.NoError(t, err)
	return &sheet.Omitted{Omission: o}
}

// Of what no filler holds a match says where it is not like the drink: coffee without its caffeine, rum without its
// alcohol, phosphoric acid (pKa 2.15, CRC Handbook of Chemistry and Physics) beside as much citric (pKa 3.13), whose
// solutions are a half to a whole of a pH apart. Sugar in the place of a syrup of sugar differs in nothing.
func TestAMatchNamesWhatIsNotAlike(t *testing.T) {
	const build = "\ndrink: x\nserves: 1\nscale: 0.01 g\nbuild: [200 g core:water-pure, 20 g core:sugar-white, 3 g core:citric-acid, "
	for part, says := range map[string]string{
		"36 g core:espresso": "caffeine", "30 ml core:rum-40": "alcohol", "2 g core:phosphoric-acid": "pH",
	} {
		line := strings.Fields(part)
		list := strings.Join(omitted(t, build+part+"]\n", line[len(line)-1]).Differs(), "; ")
		assert.Contains(t, list, says+" ", part)
		assert.Contains(t, list, "→", part)
	}
	assert.Contains(t, strings.Join(omitted(t, build+"30 ml core:rum-40]\n", "core:rum-40").Differs(), "; "), "→ 0 % vol")
	assert.Empty(t, omitted(t, strings.Replace(build, "build: [", "components:\n  syrup: {ingredients: [10 g core:sugar-white, 10 g core:water-pure]}\nbuild: [20 g syrup, ", 1)+"1 g core:water-pure]\n", "syrup").Differs())
}
