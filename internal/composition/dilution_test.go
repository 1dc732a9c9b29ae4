package composition_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// judged is what a prepared drink must have to within half a digit of both
// rows, and the decimals that SR28 prints of it (Num_Dec of NUTR_DEF).
var judged = []struct {
	id       constituent.ID
	decimals int
}{
	{"WATER", 2}, {"PROCNT", 2}, {"FAT", 2}, {"ASH", 2}, {"CHOCDF", 2}, {"FIBTG", 1}, {"SUGAR", 2},
	{"CA", 0}, {"FE", 2}, {"MG", 0}, {"P", 0}, {"K", 0}, {"NA", 0}, {"ZN", 2}, {"CU", 3}, {"MN", 3},
	{"VITC", 1}, {"THIA", 3}, {"RIBF", 3}, {"NIA", 3}, {"VITB6A", 3},
}

// reportedOnly is compared and printed, but not judged.
var reportedOnly = []constituent.ID{"ENERC_KCAL", "FASAT", "FAMS", "FAPU", "CHOLN"}

// fluidOunce is the mass in grams of one US fluid ounce of water at 1 g/ml
// (NIST Handbook 44, appendix C: 29.57 ml).
const fluidOunce = 29.57

// largestMiss is the most, in units of the last digit, by which a known miss
// may differ.
const largestMiss = 1.3

// pair is a row of testdata/sr28/pairs.csv.
type pair struct {
	concentrate, prepared, water string
	one                          bool // the prepared drink is one dilution of the concentrate
	volumes                      float64
	gramsPerFluidOunce           float64
	misses                       []constituent.ID
}

func pairs(t *testing.T) []pair {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(string(assaytest.FileOf(t, "testdata/sr28/pairs.csv")))).ReadAll()
	require.NoError(t, err)
	number := func(text string) float64 {
		if text == "" {
			return 0
		}
		x, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		return x
	}
	var all []pair
	for _, row := range rows[1:] {
		p := pair{concentrate: row[0], prepared: row[1], water: row[2], one: row[3] == "yes", volumes: number(row[4]), gramsPerFluidOunce: number(row[5]) / number(row[6])}
		for _, id := range strings.Fields(row[7]) {
			p.misses = append(p.misses, constituent.ID(id))
		}
		all = append(all, p)
	}
	return all
}

// halfLimit is what the ledger takes for a figure below its limit; 0 if it is
// not below one.
func halfLimit(f *food.Food, id constituent.ID) float64 {
	if f == nil { // pure water
		return 0
	}
	if v, ok := f.Value(id); ok && v.State == estimate.Below {
		return v.Limit / 2
	}
	return 0
}

func srFood(lib assaytest.Library, code string) *food.Food {
	return lib[food.ID{Table: "sr", Code: code}]
}

// factor gives the dilution by mass that carbohydrate shows, and how far the
// half digits of the two figures can move it. All waters have none.
func (p pair) factor(t *testing.T, lib assaytest.Library) (factor, half float64) {
	c, ok := assaytest.Printed(srFood(lib, p.concentrate), constituent.Carbohydrate)
	require.True(t, ok)
	d, ok := assaytest.Printed(srFood(lib, p.prepared), constituent.Carbohydrate)
	require.True(t, ok)
	const halfDigit = 0.005
	return c / d, c / d * (halfDigit/c + halfDigit/d)
}

// drinkOf writes the dilution of 100 g of concentrate.
func (p pair) drinkOf(factor float64) string {
	const concentrate = 100
	if p.water == "pure" {
		return fmt.Sprintf(`
drink: "Thinned"
serves: 1
components:
  thinned:
    ingredients: [%d g sr:%s]
    steps:
      - dilute: {to: %.9f g}
build: [100 g thinned]
`, concentrate, p.concentrate, concentrate*factor)
	}
	return fmt.Sprintf(`
drink: "Thinned"
serves: 1
build: [%d g sr:%s, %.9f g sr:%s]
`, concentrate, p.concentrate, concentrate*(factor-1), p.water)
}

// difference is a prepared figure beside the printed one, in units of the last
// digit.
type difference struct {
	id                  constituent.ID
	calculated, printed float64
	units, allowed      float64
	plain               float64 // units, with the printed figures as they stand
	limits              float64 // units that figures below their limit, printed 0, bring to the calculation
	decimals            int
}

// miss reports whether a difference is more than half a digit of both rows.
func (d difference) miss(units float64) bool { return math.Abs(units) > d.allowed }

func (d difference) String() string {
	return fmt.Sprintf("%s %.*f, SR28 prints %.*f: %+.2f units of the last digit, %.2f allowed", d.id, d.decimals+2, d.calculated, d.decimals, d.printed, d.units, d.allowed)
}

// compare runs the dilution and gives what differs from the prepared row, every
// judged constituent that both rows print.
func (p pair) compare(t *testing.T, lib assaytest.Library) []difference {
	factor, half := p.factor(t, lib)
	wanted := slices.Clone(reportedOnly)
	for _, j := range judged {
		wanted = append(wanted, j.id)
	}
	a := assaytest.Assay(t, lib, p.drinkOf(factor), 3, wanted...)
	concentrate, prepared := srFood(lib, p.concentrate), srFood(lib, p.prepared)
	var list []difference
	for _, j := range judged {
		from, ok := assaytest.Printed(concentrate, j.id)
		to, also := assaytest.Printed(prepared, j.id)
		if !ok || !also {
			t.Logf("%s %s: SR28 does not print it in both rows", p.concentrate, j.id)
			continue
		}
		unit := math.Pow10(-j.decimals)
		got := assaytest.Figure(t, a.Per100g, j.id).Mean
		water := p.waterHas(lib, j.id)
		list = append(list, difference{
			id: j.id, calculated: got, printed: to, decimals: j.decimals, units: (got - to) / unit,
			// Half a digit of the prepared row, of the concentrate's row, thinned,
			// and of the carbohydrates from which the dilution was found.
			allowed: (unit/2 + unit/2/factor + math.Abs(from-water)/factor*half/factor) / unit,
			plain:   ((from+(factor-1)*water)/factor - to) / unit,
			limits:  (halfLimit(concentrate, j.id) + (factor-1)*halfLimit(srFood(lib, p.water), j.id)) / factor / unit,
		})
	}
	for _, id := range reportedOnly {
		from, ok := assaytest.Printed(concentrate, id)
		to, also := assaytest.Printed(prepared, id)
		if ok && also {
			t.Logf("%s reported only: %s %.4g from %.4g, SR28 prints %.4g", p.concentrate, id, assaytest.Figure(t, a.Per100g, id).Mean, from, to)
		}
	}
	return list
}

func (p pair) waterHas(lib assaytest.Library, id constituent.ID) float64 {
	if p.water != "pure" {
		x, _ := assaytest.Printed(srFood(lib, p.water), id)
		return x
	}
	if id == constituent.Water {
		return 100
	}
	return 0
}

// SR28 prints these drinks twice, as concentrate and as prepared: the prepared
// row is its publisher's own recipe calculation, with its own water.
func TestDilutionPairsOfSR28(t *testing.T) {
	lib := assaytest.SR28(t)
	for _, p := range pairs(t) {
		if !p.one {
			continue
		}
		t.Run(p.concentrate+"-"+p.prepared, func(t *testing.T) {
			factor, half := p.factor(t, lib)
			t.Logf("dilution by mass %.4f ± %.4f", factor, half)
			p.checkVolumes(t, factor)
			compared := p.compare(t, lib)
			require.GreaterOrEqual(t, len(compared), len(judged)-2, "all but two of the judged constituents stand in both rows")
			worst := difference{}
			for _, d := range compared {
				known := slices.Contains(p.misses, d.id)
				assert.Equal(t, known, d.miss(d.plain), "the list of misses must be that of the printed figures: %s", d.id)
				switch {
				case known:
					t.Logf("known miss: %s; plain arithmetic gives %+.2f units", d, d.plain)
					assert.LessOrEqual(t, math.Abs(d.units), largestMiss, "%s", d)
				case math.Abs(d.units) > d.allowed+d.limits:
					t.Error(d)
				case math.Abs(d.units) > math.Abs(worst.units):
					worst = d
				}
			}
			t.Log("largest of the others: ", worst)
		})
	}
}

// checkVolumes compares the dilution with the volumes of water that the food's
// name states: concentrates are not mixed by volume to the last digit.
func (p pair) checkVolumes(t *testing.T, factor float64) {
	if p.volumes == 0 {
		return
	}
	stated := 1 + p.volumes*fluidOunce/p.gramsPerFluidOunce
	t.Logf("%g volumes of water to a concentrate of %.2f g per fl oz: %.4f, so %+.1f %%", p.volumes, p.gramsPerFluidOunce, stated, 100*(factor/stated-1))
	const tolerance = 0.10
	assert.InEpsilon(t, stated, factor, tolerance)
}

// These rows are not one dilution of their concentrate, with either water: a
// calculation that matched them would be tuned.
func TestPairsThatSR28Contradicts(t *testing.T) {
	lib := assaytest.SR28(t)
	for _, p := range pairs(t) {
		if p.one {
			continue
		}
		for _, water := range []string{p.water, "pure"} {
			p.water = water
			t.Run(p.concentrate+"-"+p.prepared+" with "+water, func(t *testing.T) {
				factor, _ := p.factor(t, lib)
				p.checkVolumes(t, factor)
				var far []constituent.ID
				for _, d := range p.compare(t, lib) {
					if d.miss(d.units) {
						t.Log("inconsistency of the source: ", d)
					}
					if math.Abs(d.units) > largestMiss {
						far = append(far, d.id)
					}
				}
				const several = 5
				assert.Greater(t, len(far), several, "beyond any rounding: %v", far)
			})
		}
	}
}
