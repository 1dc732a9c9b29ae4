package foaming_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/foaming"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

const n = 101

// entered makes a food of invented round figures per 100 g; its figures spread as those of its group do.
func entered(name, group string, values map[constituent.ID]float64) *food.Profile {
	f := &food.Food{ID: food.ID{Table: "own", Code: name}, Names: []food.Name{{Language: "en", Text: name}}, Group: group, Edible: food.None}
	for _, c := range constituent.All() {
		if amount, ok := values[c.ID]; ok {
			f.Values = append(f.Values, food.Value{Constituent: c.ID, Amount: amount, SD: 0, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured})
		}
	}
	return food.Enter(f, nil)
}

func cream(fat float64) *food.Profile {
	return entered("Cream", "cream", map[constituent.ID]float64{"WATER": 93 - fat, "FAT": fat, "PROCNT": 3, "SUGAR": 3, "CHOCDF": 3, "ASH": 1})
}

func milk() *food.Profile {
	return entered("Milk", "milk", map[constituent.ID]float64{"WATER": 89.3, "FAT": 2, "PROCNT": 3.2, "SUGAR": 4.8, "CHOCDF": 4.8, "ASH": 0.7})
}

func gelatine() *food.Profile {
	return entered("Gelatin, dry", "gum", map[constituent.ID]float64{"WATER": 13, "PROCNT": 86, "ASH": 1})
}

type poured struct {
	of    *food.Profile
	grams float64
}

func judge(celsius, overrun float64, lines ...poured) map[string]foaming.Condition {
	profiles := []*food.Profile{food.Enter(prep.PureWater(), nil)}
	for _, l := range lines {
		profiles = append(profiles, l.of)
	}
	columns := ledger.NewColumns(profiles)
	ens := estimate.Ensemble{Seed: 1, N: n}
	drawer := ledger.NewDrawer(ens, columns)
	pot := ledger.New(columns, n)
	for _, l := range lines {
		pot.Pour(l.of, drawer.PerGram(l.of), estimate.Constant(n, l.grams), l.of.Food.ID.String())
	}
	f := foaming.Foam{Pot: pot}
	if !math.IsNaN(celsius) {
		f.Celsius = estimate.Constant(n, celsius)
	}
	if !math.IsNaN(overrun) {
		f.Overrun = estimate.Constant(n, overrun)
	}
	byName := map[string]foaming.Condition{}
	for _, c := range foaming.Judge(acidity.NewLaboratory(ens, drawer, profiles[0], nil), f) {
		byName[c.Kind+" "+c.Of] = c
	}
	return byName
}

// McGee 2004: cream whips from 30 % of fat, and starts at no more than 10 °C.
func TestCreamWhipsFromThirtyPerCentOfFat(t *testing.T) {
	for fat, want := range map[float64]foaming.Verdict{40: foaming.Within, 30: foaming.Either, 20: foaming.Outside} {
		c := judge(4, 1.5, poured{cream(fat), 200})["cream FAT"]
		assert.Equal(t, want, c.Verdict, "%g %%", fat)
		assert.InDelta(t, fat, c.Figure.Mean, 1e-6)
		assert.Equal(t, "g/100 g", c.Figure.Unit)
	}
	cold, warm, untold := judge(4, 1.5, poured{cream(36), 200}), judge(20, 5, poured{cream(36), 200}), judge(math.NaN(), math.NaN(), poured{cream(36), 200})
	assert.Equal(t, foaming.Within, cold["cream celsius"].Verdict)
	assert.Equal(t, foaming.Outside, warm["cream celsius"].Verdict)
	assert.Equal(t, foaming.NotKnown, untold["cream celsius"].Verdict, "unknown is not outside")
	assert.NotEmpty(t, untold["cream celsius"].Why)
	assert.Equal(t, foaming.Within, cold["cream overrun"].Verdict)
	assert.InDelta(t, 150, cold["cream overrun"].Figure.Mean, 1e-9)
	assert.Equal(t, foaming.Outside, warm["cream overrun"].Verdict)
	assert.Equal(t, foaming.NotKnown, untold["cream overrun"].Verdict)
	assert.Equal(t, foaming.NoRange, cold["cream pH"].Verdict, "nobody has published one")
	assert.Empty(t, cold["cream pH"].Ranges)
}

// A mixture is judged by what is in it; milk says nothing beside cream, whose fat is all that counts there.
func TestAFoamIsJudgedByAllThatIsInIt(t *testing.T) {
	both := judge(4, 1, poured{cream(36), 100}, poured{milk(), 100})
	assert.InDelta(t, (36+2.0)/2, both["cream FAT"].Figure.Mean, 1e-9)
	assert.Equal(t, foaming.Outside, both["cream FAT"].Verdict)
	assert.NotContains(t, both, "milk FAT")
	alone := judge(45, 1, poured{milk(), 100}, poured{gelatine(), 3})
	assert.Equal(t, foaming.Within, alone["milk FAT"].Verdict, "2 of 0.5 to 3.5 %")
	assert.Equal(t, foaming.Within, alone["milk celsius"].Verdict)
	assert.InDelta(t, 3.2*100/103, alone["milk PROCNT"].Figure.Mean, 1e-9, "the gelatine's protein is none of milk")
	assert.Equal(t, foaming.Within, alone["milk PROCNT"].Verdict)
	assert.InDelta(t, 100*3.0/103, alone["gelatine share"].Figure.Mean, 1e-9)
	assert.Equal(t, foaming.Within, alone["gelatine share"].Verdict)
	assert.Equal(t, foaming.Outside, judge(45, 1, poured{milk(), 100}, poured{gelatine(), 10})["gelatine share"].Verdict)
	assert.Empty(t, judge(4, 1, poured{entered("Juice", "fruit juice", map[constituent.ID]float64{"WATER": 100}), 100}), "nothing that foams is known of it")
	assert.Empty(t, judge(4, 1, poured{entered("Butter", "cream", map[constituent.ID]float64{"FAT": 82, "WATER": 18}), 100}))
	assert.Empty(t, judge(4, 1, poured{cream(36), 0}), "none of it is left")
}

// What no food states is not known, and is not outside; what may lie in or out is said to.
func TestWhatNobodyStatesIsNotKnown(t *testing.T) {
	c := judge(4, 1, poured{entered("Cream", "cream", map[constituent.ID]float64{"WATER": 60}), 100})["cream FAT"]
	assert.NotEqual(t, foaming.Outside, c.Verdict)
	assert.NotEqual(t, foaming.Within, c.Verdict)
}

// Every condition has a source; a range has words, and how it was read.
func TestEveryConditionHasASource(t *testing.T) {
	for _, row := range embedded.Rows("foams.csv") {
		assert.NotEmpty(t, row.Text("source"))
		switch read := row.Text("read"); read {
		case "nothing found":
			assert.Empty(t, row.Text("from")+row.Text("to")+row.Text("says"))
		default:
			assert.Contains(t, []string{"seen", "at second hand"}, read)
			assert.NotEmpty(t, row.Text("says"))
		}
		if of := row.Text("condition"); of != foaming.PH && of != foaming.Alcohol && of != foaming.Celsius && of != foaming.Overrun && of != foaming.Share {
			_, ok := constituent.Find(of)
			require.True(t, ok, of)
		}
	}
}
