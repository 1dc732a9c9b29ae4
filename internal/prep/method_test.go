package prep_test

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// everyStep has each word of the grammar once.
const everyStep = `drink: every step
serves: 1
build: [10 g house]
components:
  house:
    ingredients: [200 g own:milk]
    steps:
      - reduce: {by: 20 %}
      - strain: {collect: 300 g, through: cloth}
      - press: {collect: 290 g, through: metal}
      - curdle: {collect: 280 g, by: acid}
      - clarify: {by: agar, with: 1 g own:agar, collect: 300 g}
      - brew: {out: 38 g, strength: 9.5 %}
      - steep: {ingredients: [5 g own:tea], collect: 350 g}
      - add: 1 g own:salt
      - chill: {melt: 30 g}
      - cool: {to: 4 °C}
      - dilute: {brix: 4}
      - invert: {share: 40 %}
      - hydrolyse: {lactose: 90 %}
      - convert: {starch: 60 %, to: glucose}
      - ferment: {after: {ALC: 0.5 g}, because: "a test"}
      - caramelise: {loss: 12 %}
      - concentrate: {by: freezing, to: 400 g}
      - wash: {fat: 10 g own:butter, collect: 340 g}
      - heat: {code: "5001"}
      - adjust: {brix: 40, with: own:sugar}
      - split: {keep: {SUCS: 10 %}, because: "a test"}
      - carbonate: {left: 3 g/l}
      - foam: {charge: 8 g, gas: N2O, bottle: 1 l, at: 4 °C, overrun: 80 %}
      - treat: "smoked, apple wood"
      - measured: {ph: 4.5}
`

func steps(t *testing.T, text string) map[string]drink.Step {
	t.Helper()
	d, faults := drink.Parse("test.yaml", []byte(text), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	byWord := map[string]drink.Step{}
	for _, step := range d.Components[0].Steps {
		byWord[step.Kind()] = step
	}
	return byWord
}

// grammarWords lists the steps that the schema of the drink file shows.
func grammarWords(t *testing.T) []string {
	t.Helper()
	var schema struct {
		Defs map[string]struct{ Properties map[string]any } `json:"$defs"`
	}
	require.NoError(t, json.Unmarshal(drink.Schema(), &schema))
	words := slices.Sorted(maps.Keys(schema.Defs["step"].Properties))
	require.NotEmpty(t, words)
	return words
}

// A step of the grammar without a method would be refused for good, a method without a
// grammar never be called, and one of another type would end the program.
func TestGrammarAndMethodsAreTheSameSteps(t *testing.T) {
	words := grammarWords(t)
	assert.Equal(t, words, prep.Words())
	all := steps(t, everyStep)
	assert.Equal(t, words, slices.Sorted(maps.Keys(all)), "the test's drink has them all")
	for word, step := range all {
		m := prep.MethodOf(step)
		require.NotNil(t, m, word)
		assert.NotPanics(t, func() { m.KeepsWeight(step, true) }, "%s says what it does to the weight", word)
		for _, id := range m.Makes(step) {
			_, known := constituent.Find(string(id))
			assert.True(t, known, "%s makes %s", word, id)
		}
		if brought := m.Brings(); brought != nil {
			assert.NotEmpty(t, brought.ID.Code, word)
		}
	}
	assert.Nil(t, prep.MethodOf(&later{drink.Head{Word: "distil"}}), "a step of a later grammar")
}

// later is a step that this version does not know.
type later struct{ drink.Head }

// bench is a kitchen of plain figures: a millilitre is a gram, and a refractometer reads
// sucrose and nothing else.
type bench struct {
	drawer *ledger.Drawer
	lines  *food.Profile
	foods  map[food.ID]*food.Profile
}

func (b bench) Amount(a unit.Amount, _ string) []float64 { return grams(a.Base()) }
func (b bench) Quantity(q drink.Quantity, factor float64, _ string) []float64 {
	return grams(q.Number * factor)
}
func (b bench) Pour(pot *ledger.Pot, lines []drink.Line) {
	for _, line := range lines {
		pot.Pour(b.lines, b.drawer.PerGram(b.lines), grams(line.Amount.Base()), line.Path)
	}
}
func (b bench) Drawn(f *food.Food) (*food.Profile, ledger.Cells) {
	return b.foods[f.ID], b.drawer.PerGram(b.foods[f.ID])
}
func (b bench) Volume(pot *ledger.Pot) []float64    { return pot.Mass() }
func (b bench) Refracted(pot *ledger.Pot) []float64 { return pot.Total("SUCS") }
func (b bench) Hold([]drink.Stated) error           { return nil }
func (b bench) Surely() acidity.Surely              { return acidity.Surely{PH: true} }
func (b bench) Laboratory() *acidity.Laboratory {
	return acidity.NewLaboratory(factors.Ensemble, b.drawer, b.lines, nil)
}
func (b bench) Doser(drink.Line) (func(*ledger.Pot, []float64), string) {
	return func(pot *ledger.Pot, grams []float64) { pot.Pour(b.lines, b.drawer.PerGram(b.lines), grams, "dose") }, "dose"
}
func (b bench) Weigh(pot *ledger.Pot, line drink.Line, grams []float64) {
	pot.Pour(b.lines, b.drawer.PerGram(b.lines), grams, line.Path)
}

// benchPot holds 200 g of milk, 200 g of water, 30 g of sugar and 20 g of coffee.
func benchPot() (bench, *ledger.Pot) {
	poured := []*food.Profile{milk(), water(), sugar(), starchyBean()}
	b := bench{lines: entered("salt", "salt", map[constituent.ID]float64{"ASH": 100}), foods: map[food.ID]*food.Profile{}}
	profiles := append(slices.Clone(poured), b.lines)
	for _, f := range []*food.Food{prep.PureWater(), prep.Gas(), prep.BurntSugarAcids(), prep.FermentProducts()} {
		b.foods[f.ID] = food.Enter(f, nil)
		profiles = append(profiles, b.foods[f.ID])
	}
	columns := ledger.NewColumns(profiles, "GLUS", "FRUS", "GALS", "CHOCDF-other", "OA-other", "MASS-other", "ALC", "CO2", "MALS")
	b.drawer = ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: n}, columns)
	pot := ledger.New(columns, n)
	for i, mass := range []float64{200, 200, 30, 20} {
		pot.Pour(poured[i], b.drawer.PerGram(poured[i]), grams(mass), poured[i].Food.ID.String())
	}
	return b, pot
}

// starchyBean is a coffee that also holds the starch that convert asks for.
func starchyBean() *food.Profile {
	return entered("bean", "coffee bean", map[constituent.ID]float64{
		"WATER": 5, "PROCNT": 14, "FAT": 15, "CHOCDF": 62, "STARCH": 2, "FIBTG": 20, "ASH": 4, "OA": 1.2, "CAFFN": 1100, "K": 2000,
	})
}

// Each step does what its line in the drink file says, and its method says of the weight
// what the line states.
func TestMethodsDoWhatTheirLinesSay(t *testing.T) {
	_, before := benchPot()
	sucrose := central(before, "SUCS")
	for word, want := range map[string]struct {
		mass                 float64
		unweighed, weighed   bool // is the mass known after it, if it was not before and if it was
		brewed, parted, adds bool
	}{
		"reduce":      {mass: 450 * 0.8, unweighed: true, weighed: true},
		"strain":      {mass: 300, unweighed: true, weighed: true},
		"press":       {mass: 290, unweighed: true, weighed: true},
		"curdle":      {mass: 280, unweighed: true, weighed: true, parted: true},
		"brew":        {mass: 38, unweighed: true, weighed: true, brewed: true},
		"steep":       {mass: 350, unweighed: true, weighed: true, brewed: true},
		"add":         {mass: 451, weighed: true},
		"chill":       {mass: 480, adds: true},
		"cool":        {mass: 450, weighed: true},
		"clarify":     {mass: 300, unweighed: true, weighed: true},
		"convert":     {mass: 450},
		"dilute":      {mass: sucrose / 0.04, adds: true},
		"invert":      {mass: 450},
		"hydrolyse":   {mass: 450},
		"ferment":     {mass: 450 / (1 + 0.005*88.018/92.138)}, // the gas of 0.5 % of alcohol leaves (IUPAC atomic weights)
		"caramelise":  {mass: 450},
		"concentrate": {mass: 400, unweighed: true, weighed: true},
		"wash":        {mass: 340, unweighed: true, weighed: true},
		"heat":        {mass: 450},
		"split":       {mass: 450 - 0.9*sucrose, unweighed: true, weighed: true},
		"carbonate":   {mass: 450 + 0.003*450, weighed: true, adds: true},
		"foam":        {mass: 450, weighed: true},
	} {
		b, pot := benchPot()
		step := steps(t, everyStep)[word]
		m := prep.MethodOf(step)
		out, err := m.Do(b, pot, step, factors)
		require.NoError(t, err, word)
		assert.InDelta(t, want.mass, pot.Mass()[0], 1e-4, word)
		assert.Equal(t, want.unweighed, m.KeepsWeight(step, false), word)
		assert.Equal(t, want.weighed, m.KeepsWeight(step, true), word)
		assert.Equal(t, want.brewed, out.Brewed, word)
		assert.Equal(t, want.parted, out.Parted != nil, word)
		assert.Equal(t, want.adds, out.Added > 0, word)
		assert.Equal(t, word == "carbonate", m.StatesGas(step), word)
	}
}

// What a step does not state of the mass is open: water may have gone or come.
func TestMethodsKnowWhatIsNotStated(t *testing.T) {
	all := steps(t, `drink: open steps
serves: 1
build: [10 g house]
components:
  house:
    ingredients: [200 g own:milk]
    steps:
      - steep: {ingredients: [5 g own:tea]}
      - dilute: {to: 500 g}
      - wash: {fat: 10 g own:butter}
      - carbonate: {bottle: 1 l, charge: 8 g, at: 4 °C}
`)
	for word, keeps := range map[string][2]bool{"steep": {false, false}, "dilute": {true, true}, "wash": {false, true}, "carbonate": {false, true}} {
		m := prep.MethodOf(all[word])
		assert.Equal(t, keeps, [2]bool{m.KeepsWeight(all[word], false), m.KeepsWeight(all[word], true)}, word)
		assert.False(t, m.StatesGas(all[word]), word)
	}
}

// Errors stand where the fault is: at the figure, else at the step, which has no place here.
func TestMethodsSayWhereTheFaultIs(t *testing.T) {
	all := steps(t, `drink: faults
serves: 1
build: [10 g house]
components:
  house:
    ingredients: [200 g own:milk]
    steps:
      - reduce: {to: 451 g}
      - heat: {code: "9999"}
      - split: {keep: {sugars: 4 %}, because: "a test"}
      - ferment: {after: {ALC: 0.5 g, NA: 1 g}, because: "a test"}
      - dilute: {brix: 60}
`)
	for word, says := range map[string]string{
		"reduce":  "reduce to 451 g: the pot holds only 450 g (check the amounts)",
		"heat":    `unknown retention code "9999" (use a code of the USDA retention table, such as 2151)`,
		"ferment": `test.yaml:11:39: ferment cannot state "NA" (state ALC, acids such as LACAC, SUGAR or single sugars, in g or mg)`,
		"dilute":  "dilute to 60 °Bx: the pot reads only 6.667 °Bx, and water brings it further down (check the amounts)",
	} {
		b, pot := benchPot()
		_, err := prep.MethodOf(all[word]).Do(b, pot, all[word], factors)
		require.Error(t, err, word)
		assert.Equal(t, says, err.Error(), word)
		assert.InDelta(t, 450, pot.Mass()[0], close, "%s: nothing has changed", word)
	}
}

// What a pot reads does not depend on how much of it there is; one that is empty reads
// nothing.
func TestDiluteTellsWhatThePotReads(t *testing.T) {
	step := steps(t, "drink: d\nserves: 1\nbuild: [10 g house]\ncomponents:\n  house:\n    ingredients: [1 g own:milk]\n    steps:\n      - dilute: {brix: 60}\n")["dilute"]
	for part, reads := range map[float64]string{1: "6.667", 0.001: "6.667", 0: "0"} {
		b, pot := benchPot()
		pot.Scale(grams(part))
		_, err := prep.MethodOf(step).Do(b, pot, step, factors)
		assert.ErrorContains(t, err, "the pot reads only "+reads+" °Bx", "%g of it", part)
	}
}

// What a step cannot know it says.
func TestMethodsSayWhatTheyCannotKnow(t *testing.T) {
	all := steps(t, everyStep)
	for word, says := range map[string]string{
		"caramelise": "g of sugar become caramel, whose parts are not known",
		"brew":       "% of the dose; the grounds hold",
	} {
		b, pot := benchPot()
		out, err := prep.MethodOf(all[word]).Do(b, pot, all[word], factors)
		require.NoError(t, err, word)
		assert.Contains(t, strings.Join(out.Notes, "\n"), says, word)
	}
}

// A pot can be reduced to what it holds: then nothing leaves.
func TestReducingToWhatThereIsTakesNothing(t *testing.T) {
	_, pot := benchPot()
	_, err := prep.Reduce(pot, pot.Mass(), factors)
	require.NoError(t, err)
	assert.InDelta(t, 450, pot.Mass()[0], close)
}

// A ferment makes what its figures name, as far as it can, and something without a name.
func TestAFermentMakesWhatItsFiguresName(t *testing.T) {
	step := steps(t, "drink: d\nserves: 1\nbuild: [10 g house]\ncomponents:\n  house:\n    ingredients: [1 g own:milk]\n    steps:\n      - ferment: {after: {ALC: 0.5 g, LACAC: 1 g, GLYRL: 1 g, GLUS: 1 g, NA: 1 g}, because: \"a test\"}\n")["ferment"]
	made := prep.MethodOf(step).Makes(step)
	for _, id := range []constituent.ID{"ALC", "LACAC", "GLYRL", "GLUS", constituent.MassOther} {
		assert.Contains(t, made, id)
	}
	assert.NotContains(t, made, constituent.ID("NA"))
}
