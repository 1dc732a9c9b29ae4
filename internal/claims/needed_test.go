package claims_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/fail"
	"sipsum/internal/note"
)

// three coffees of which the third brings next to nothing, and a herb of which nobody knows what it brings: it
// is next to nothing too (less than 10 mg in 100 g).
const three = `drink: "x"
serves: 1
foods:
  dark: {name: "Dark, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: 40 mg ± 6 mg sd}, source: "x"}
  light: {name: "Light, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: 40 mg ± 6 mg sd}, source: "x"}
  decaf: {name: "Decaf, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: 3 mg ± 1 mg sd}, source: "x"}
  herb: {name: "Herb, invented", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: < 10 mg}, source: "x"}
components:
  base: {ingredients: [50.00 g own:dark, 50.00 g own:light]}
  rest: {ingredients: [5.00 g own:decaf, 5.00 g own:herb]}
build: [100.00 g base, 10.00 g rest]
claims:
`

// without is a world with one change left out: of the food's other figures, or with its line gone.
func without(w *claims.World, i int) *claims.World {
	out, left := *w, w.Changes[i]
	out.Changes = slices.Delete(slices.Clone(w.Changes), i, i+1)
	figure := regexp.MustCompile(`[A-Za-z0-9-]+: ` + regexp.QuoteMeta(note.Grams(left.To)+" "+left.Unit) + ` ± 0(, )?`)
	for k := range out.Changes {
		if out.Changes[k].Line == left.Line {
			out.Changes[k].Line = figure.ReplaceAllString(left.Line, "")
		}
	}
	return &out
}

// Each change of a world matters: the claim is no longer false for sure where it is left out.
func TestEveryChangeOfAWorldMatters(t *testing.T) {
	core := assaytest.Core(t)
	several := 0
	for _, check := range []string{
		`share(MALAC, "plum syrup") between 30 % and 72 %`, `ratio(MALAC, SUGAR) < 5 %`, `brix() < 20`, `ta() > 1.5 g/l`,
		`share(K, "plum syrup") > 40 %`, `share(SUGAR, "core:sugar-white") > 30 %`, `per100g(K) < 150 mg`, `ratio(GLUS, FRUS) < 90 %`,
		`share(MALAC, "plum syrup") > 35 % and ratio(MALAC, SUGAR) > 1 %`, `ratio(K, MALAC) > 12 %`,
	} {
		text := plum + "  - say: \"x\"\n    check: '" + check + "'\n"
		s := judged(t, core, text)[0]
		t.Log(check, s.Line(), s.Lines())
		if s.Nearest == nil || len(s.Nearest.Changes) < 2 {
			continue
		}
		several++
		for i, c := range s.Nearest.Changes {
			read, err := claim.Parse(check, fail.Place{})
			require.NoError(t, err)
			o, err := read.Evaluate(claims.NewGlass(run(t, core, written(t, text, without(s.Nearest, i)), 50), nil), nil)
			require.NoError(t, err)
			_, may := o.AtCentre()
			assert.True(t, may, "%s: without %s", check, c.Words)
		}
	}
	assert.GreaterOrEqual(t, several, 2, "worlds of several changes")
}

// What brings hardly anything is not in the world, whether nobody knows it or not: two coffees of 50 g bring
// 20 mg each, all else less than 0.7 mg.
func TestAWorldWithoutWhatHardlyMatters(t *testing.T) {
	s := judged(t, assaytest.Core(t), three+"  - {say: x, check: serving(CAFFN) > 30 mg}\n")[0]
	require.NotNil(t, s.Nearest, s.Line())
	words := strings.Join(s.Lines(), "\n")
	assert.Contains(t, words, "your dark")
	assert.NotContains(t, words, "herb")
	assert.NotContains(t, words, "decaf")
}
