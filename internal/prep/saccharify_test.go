package prep_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// koji is a food that has amylases by its name.
func koji(name string, starch float64) *food.Profile {
	p := entered("koji", "cereal", map[constituent.ID]float64{"WATER": 30, "STARCH": starch, "PROCNT": 70 - starch})
	p.Food.Names = []food.Name{{Language: "en", Text: name}}
	return p
}

// Kept warm with koji, starch may become sugar, and no step but convert counts that; nothing
// is said where there is no starch, or nothing that would do it.
func TestKojiAndStarchAskForConvert(t *testing.T) {
	for _, line := range []string{"heat: {at: 58 °C, for: 480 min}", "treat: \"rested, 8 h at 58 °C\""} {
		for _, c := range []struct {
			food *food.Profile
			says bool
		}{{koji("Rice koji", 60), true}, {koji("Barley malt flour", 60), true}, {koji("Rice koji", 0), false}, {koji("Rice", 60), false}} {
			b, _ := benchPot()
			step := steps(t, "drink: d\nserves: 1\nbuild: [10 g house]\ncomponents:\n  house:\n    ingredients: [1 g own:milk]\n    steps:\n      - "+line+"\n")[strings.SplitN(line, ":", 2)[0]]
			out, err := prep.MethodOf(step).Do(b, potOf(c.food), step, factors)
			require.NoError(t, err, line)
			assert.Equal(t, c.says, strings.Contains(strings.Join(out.Notes, "\n"), "may make sugar of the starch"), "%s of %s", line, c.food.Food.Name())
		}
	}
}

// A step that finds nothing to split says so.
func TestNothingToSplitIsSaid(t *testing.T) {
	for name, does := range map[string]func(*ledger.Pot, []float64) (prep.Outcome, error){"sucrose": prep.Invert, "lactose": prep.Hydrolyse} {
		out, err := does(potOf(water()), grams(0.5))
		require.NoError(t, err)
		require.Len(t, out.Notes, 1)
		assert.Contains(t, out.Notes[0], "nothing here holds "+name)
	}
	out, err := prep.Invert(sugary(juice(), sugar()), grams(0.5))
	require.NoError(t, err)
	assert.Empty(t, out.Notes)
}
