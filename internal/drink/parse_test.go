package drink_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

const drinks = "../../testdata/drinks"

func readDrink(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(drinks, name))
	require.NoError(t, err)
	return text
}

func openDrinks(path string) ([]byte, error) { return os.ReadFile(filepath.Join(drinks, path)) }

// parseClean parses a text that must have no fault.
func parseClean(t *testing.T, text string) *drink.Drink {
	t.Helper()
	d, faults := drink.Parse("t.yaml", []byte(text), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	return d
}

func TestDesignExampleParses(t *testing.T) {
	d, faults := drink.Parse("copper-orchard.drink.yaml", readDrink(t, "copper-orchard.drink.yaml"), nil)
	require.NoError(t, faults.Err(fail.Wrong))

	assert.Equal(t, "Copper Orchard", d.Name)
	assert.Equal(t, 2, d.Serves)
	assert.Equal(t, 180.0, d.Glass.Base())
	assert.Equal(t, drink.Quantity{Number: 6, Unit: "°C"}, *d.At)
	assert.Equal(t, []drink.Word{{Place: fail.Place{File: d.File, Line: 6, Col: 9}, Text: "eu"}, {Place: fail.Place{File: d.File, Line: 6, Col: 13}, Text: "us"}}, d.Rules)
	assert.Equal(t, "espresso", d.CompareWith)
	require.Len(t, d.MayContain, 1)
	assert.Equal(t, "almond", d.MayContain[0].Text)

	require.Len(t, d.Foods, 1)
	oat := d.Foods[0]
	assert.Equal(t, "house-oat", oat.Code)
	assert.Equal(t, "core:oat-drink", oat.Fill)
	assert.True(t, oat.Assessed)
	require.Len(t, oat.Allergens, 1)
	assert.Equal(t, "oats", oat.Allergens[0].Text)
	assert.NotZero(t, oat.Allergens[0].Place.Line)
	require.Len(t, oat.Values, 6)
	assert.Equal(t, "NA", oat.Values[5].Tag)
	assert.Equal(t, drink.Quantity{Number: 40, Unit: "mg"}, oat.Values[5].Quantity)

	require.Len(t, d.Components, 2)
	syrup := d.Components[1]
	assert.Equal(t, "cherry syrup", syrup.Name)
	require.Len(t, syrup.Ingredients, 4)
	acid := syrup.Ingredients[2]
	assert.Equal(t, "core:citric-acid", acid.Food)
	assert.Equal(t, "cherry syrup/core:citric-acid", acid.Path)
	assert.InDelta(t, 0.1, acid.Amount.Half, 1e-12)
	assert.Equal(t, fail.Place{File: "copper-orchard.drink.yaml", Line: 29, Col: 9}, acid.Place)
	assert.Equal(t, 23, acid.FoodAt.Col)
	assert.Equal(t, "edible", syrup.Ingredients[3].As)
	assert.Equal(t, "a slice, pressed", syrup.Ingredients[3].Note)
	require.Len(t, syrup.Steps, 2)
	reduce := syrup.Steps[0].(*drink.Reduce)
	assert.Equal(t, 375.0, reduce.To.Base())
	assert.Equal(t, "cherry syrup/reduce", reduce.StepPath())
	assert.Equal(t, "cloth", syrup.Steps[1].(*drink.Strain).Through)
	assert.Equal(t, drink.Quantity{Number: 52.5, Half: 0.2, Decimals: 1}, *syrup.Measured.Brix)
	assert.Equal(t, 5.0, syrup.Keeps.Days)
	assert.Equal(t, 4.0, syrup.Keeps.At.Number)

	require.Len(t, d.Build, 3)
	gas := d.Finish[0].(*drink.Carbonate)
	assert.Equal(t, drink.Quantity{Number: 3, Half: 0.5, Unit: "g/l", Decimals: 1}, *gas.Left)
	assert.False(t, d.Garnish[0].Eaten)
	assert.Equal(t, []string{"CITAC", "MALAC", "phosphate"}, d.Categories[0].Tags)
	assert.Equal(t, `share(MALAC, "cherry syrup") >= 50 %`, d.Claims[0].Check)
	assert.Len(t, d.Targets, 3)
	assert.Equal(t, "own:house-oat", d.Vary[1].Of)
}

func TestEveryKeyAndStepParses(t *testing.T) {
	d, faults := drink.Parse("every-key.drink.yaml", readDrink(t, "every-key.drink.yaml"), openDrinks)
	require.NoError(t, faults.Err(fail.Wrong))

	base, ok := d.Component("base")
	require.True(t, ok)
	kinds := map[string]bool{}
	for _, s := range base.Steps {
		kinds[s.Kind()] = true
	}
	for _, word := range []string{
		"reduce", "strain", "press", "curdle", "brew", "steep", "add", "chill", "dilute", "invert", "hydrolyse",
		"ferment", "caramelise", "concentrate", "wash", "heat", "adjust", "split", "measured", "clarify", "cool", "convert",
	} {
		assert.True(t, kinds[word], word)
	}
	values := d.Foods[1].Values
	assert.Equal(t, drink.Stated{Tag: "FAT", Place: values[1].Place, State: drink.Below, Limit: 0.5, Quantity: drink.Quantity{Unit: "g", Decimals: 1}}, values[1])
	assert.Equal(t, drink.Trace, values[3].State)
	assert.Equal(t, drink.Unknown, values[4].State)
	assert.Equal(t, "µg", values[6].Unit, "the Greek mu and the micro sign are one unit")
	assert.True(t, d.Foods[1].Assessed, "[] says that somebody looked")
	assert.False(t, d.Foods[0].Assessed, "no key says that nobody did")

	assert.Equal(t, -2.0, d.At.Number)
	assert.Equal(t, 120.0, d.Glass.Base())
	assert.True(t, d.Build[1].Amount.Sigma)
	assert.Equal(t, unit.Share, base.Ingredients[2].Amount.Measure.Kind)
	assert.Equal(t, 0.5, base.Ingredients[3].Count)
	var times []float64
	for _, s := range base.Steps {
		switch s := s.(type) {
		case *drink.Steep:
			times = append(times, s.Minutes.Number)
		case *drink.Invert:
			if s.Minutes != nil {
				times = append(times, s.Minutes.Number)
			}
		case *drink.Ferment:
			if s.Minutes != nil {
				times = append(times, s.Minutes.Number)
			}
		case *drink.Heat:
			assert.NotEqual(t, s.Code == "2151", s.Stated(), "a code, or how hot and how long")
		}
	}
	assert.Equal(t, []float64{4, 30, 2880}, times, "min: 4 min, 0.5 h, 2 days")
	assert.Len(t, base.Measured.Titration, 3)
}

func TestPantryComesFirstAndKeepsItsName(t *testing.T) {
	d, faults := drink.Parse("bar/x.drink.yaml", []byte("use: [house.pantry.yaml]\ndrink: x\nserves: 1\nbuild: [1 g a, 1 g b]\ncomponents:\n  a: {ingredients: [1 g c]}\n"),
		func(path string) ([]byte, error) {
			assert.Equal(t, "house.pantry.yaml", path)
			return []byte("components:\n  a: {ingredients: [1 g d]}\n  b: {ingredients: [1 f d]}\ndrink: y\n"), nil
		})
	err := faults.Err(fail.Wrong)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "bar/house.pantry.yaml:3:21: unknown unit \"f\"")
	assert.Contains(t, err.Error(), "bar/house.pantry.yaml:4:1: a pantry file has no key \"drink\"")
	assert.Contains(t, err.Error(), "bar/x.drink.yaml:6:3: there is a component \"a\" already, at bar/house.pantry.yaml:2:3")
	assert.Equal(t, "d", d.Components[0].Ingredients[0].Food)
}

func TestUseIsRefusedWithoutAWayToOpenFiles(t *testing.T) {
	_, faults := drink.Parse("-", []byte("use: [p.yaml]\ndrink: x\nserves: 1\nbuild: [1 g a]\n"), nil)
	assert.Contains(t, faults.Err(fail.Wrong).Error(), "-:1:7: no other file can be read from here")
}

func TestCodesAndNamesAreReadAsWritten(t *testing.T) {
	d := parseClean(t, `
drink: 007
serves: 2
foods:
  no: {name: yes, per: 100 g, fill: sr:0304, source: 1e3}
components:
  c: {ingredients: [1 g x], steps: [{heat: {code: 0304}}, {heat: {code: 1e3}}, {heat: {code: null}}, {heat: {code: yes}}]}
build:
  - 1 g sr:0304
  - 1 g null
`)
	assert.Equal(t, "007", d.Name)
	assert.Equal(t, "no", d.Foods[0].Code)
	assert.Equal(t, "yes", d.Foods[0].Name)
	assert.Equal(t, "sr:0304", d.Foods[0].Fill)
	assert.Equal(t, "1e3", d.Foods[0].Source)
	var codes []string
	for _, s := range d.Components[0].Steps {
		codes = append(codes, s.(*drink.Heat).Code)
	}
	assert.Equal(t, []string{"0304", "1e3", "null", "yes"}, codes)
	assert.Equal(t, "null", d.Build[1].Food)
}

func TestWindowsFilesAndNoBreakSpacesAreRead(t *testing.T) {
	d := parseClean(t, "\ufeffdrink: x\r\nserves: 2\r\nat: 6\u00a0°C\r\nbuild:\r\n  - 20\u00a0g crème brûlée\r\n  - '3 g \"x\"' # note\r\n")
	assert.Equal(t, "crème brûlée", d.Build[0].Food)
	assert.Equal(t, `"x"`, d.Build[1].Food)
	assert.Equal(t, 10, d.Build[0].FoodAt.Col)
	assert.Equal(t, fail.Place{File: "t.yaml", Line: 6, Col: 10}, d.Build[1].FoodAt)
}

func TestPathsHoldNoPosition(t *testing.T) {
	paths := func(extra string) []string {
		d := parseClean(t, `
drink: x
serves: 1
components:
  s/y~z:
    ingredients:
`+extra+`      - 1 g a
      - 2 g a
      - 3 g b/c
    steps: [{add: [1 g a, 2 g a]}, {strain: {collect: 1 g, through: cloth}}, {strain: {collect: 1 g, through: cloth}}]
    measured: {ph: 3}
build: [5 g s/y~z]
finish: [{chill: {melt: 1 g}}]
`)
		c := d.Components[0]
		var out []string
		for _, l := range append(c.Ingredients, c.Steps[0].(*drink.Add).Ingredients...) {
			out = append(out, l.Path)
		}
		for _, s := range c.Steps {
			out = append(out, s.StepPath())
		}
		return append(out, c.Measured.StepPath(), d.Build[0].Path, d.Finish[0].StepPath())
	}
	plain := paths("")
	assert.Equal(t, []string{
		"s~sy~tz/a", "s~sy~tz/a~2", "s~sy~tz/b~sc", "s~sy~tz/add/a", "s~sy~tz/add/a~2",
		"s~sy~tz/add", "s~sy~tz/strain", "s~sy~tz/strain~2", "s~sy~tz/end/measured", "build/s~sy~tz", "finish/chill",
	}, plain)
	assert.Subset(t, paths("      - 9 g new\n"), plain)
}

func TestFaultyPartsAreLeftOutAndTheRestIsKept(t *testing.T) {
	d, faults := drink.Parse("t.yaml", []byte(`
drink: x
serves: 2
components:
  a: {ingredients: [1 g b, 1 f c], steps: [{reduce: {}}, {chill: {melt: 1 g}}]}
build: [1 g a, "1 g", 2 g d]
claims: [{say: s}, {say: s, check: c}]
`), nil)
	require.Equal(t, 4, faults.Len())
	assert.Equal(t, "b", d.Components[0].Ingredients[0].Food)
	assert.Len(t, d.Components[0].Ingredients, 1)
	assert.Len(t, d.Components[0].Steps, 1)
	assert.Len(t, d.Build, 2)
	assert.Len(t, d.Claims, 1)
}

func TestAGarnishIsEatenOnlyIfItSaysSo(t *testing.T) {
	const text = "drink: x\nserves: 1\nbuild: [1 g a]\ngarnish: [1 g b, {food: c, amount: 1 g}, {food: d, amount: 1 g, eaten: false}, {food: e, amount: 1 g, eaten: true}]\n"
	d, faults := drink.Parse("test", []byte(text), nil)
	require.NoError(t, faults.Err(fail.Wrong))
	assert.True(t, d.Build[0].Eaten)
	for i, eaten := range []bool{false, false, false, true} {
		assert.Equal(t, eaten, d.Garnish[i].Eaten, d.Garnish[i].Food)
	}
}

// Whoever looks for lines asks the steps, and finds those of every step that has some.
func TestStepsGiveTheirLines(t *testing.T) {
	d := parseClean(t, head+`build: [10 g a]
finish:
  - steep: {ingredients: [5 g tea, 1 g mint]}
  - add: 2 g salt
  - wash: {fat: [60 g butter, 1 g oil]}
  - chill: {melt: 3 g}
`)
	var got [][]string
	for _, step := range d.Finish {
		var paths []string
		for _, line := range step.Lines() {
			paths = append(paths, line.Path)
		}
		got = append(got, paths)
	}
	assert.Equal(t, [][]string{
		{"finish/steep/tea", "finish/steep/mint"}, {"finish/add/salt"}, {"finish/wash/butter", "finish/wash/oil"}, nil,
	}, got)
}

// What a pantry would have brought is not reported as missing if the pantry was not read.
func TestAPantryThatWasNotReadHidesNothingElse(t *testing.T) {
	text := "use: [a, b]\n" + head + "compare-with: house\nbuild: [10 g a]\n"
	for says, open := range map[string]func(string) ([]byte, error){
		"cannot read":      func(string) ([]byte, error) { return nil, os.ErrNotExist },
		"262144 bytes":     func(string) ([]byte, error) { return make([]byte, drink.MostBytes()+1), nil },
		"no component: \"": func(string) ([]byte, error) { return []byte("components: {other: {ingredients: [1 g a]}}\n"), nil },
	} {
		_, faults := drink.Parse("f.yaml", []byte(text), open)
		err := faults.Err(fail.Wrong)
		require.Error(t, err, says)
		assert.Contains(t, err.Error(), says)
		assert.Equal(t, says == "no component: \"", strings.Contains(err.Error(), "compare-with names no component"), says)
	}
}

func TestServingsThatCannotBeReadAreNone(t *testing.T) {
	for _, serves := range []string{"[2]", "two", "0", "2.5", "10001", "+2"} {
		d, faults := drink.Parse("f.yaml", []byte("drink: d\nserves: "+serves+"\nbuild: [10 g a]\n"), nil)
		assert.Positive(t, faults.Len(), serves)
		assert.Zero(t, d.Serves, serves)
	}
}

func TestAFoodOfAPantryIsNotDescribedAgain(t *testing.T) {
	const oat = "foods: {oat: {name: o, per: 100 g, fill: \"core:oat\"}}\n"
	_, faults := drink.Parse("f.yaml", []byte("use: [p]\n"+head+oat+"build: [10 g own:oat]\n"), func(string) ([]byte, error) { return []byte(oat), nil })
	require.Equal(t, 1, faults.Len())
	assert.ErrorContains(t, faults.Err(fail.Wrong), `there is a food "oat" already, at p:1:9`)
}

// A pantry is read once, whichever way its path is written; a use: that is no list brings
// none, and there is an end to their number.
func TestAPantryIsUsedOnce(t *testing.T) {
	opened := 0
	open := func(string) ([]byte, error) {
		opened++
		return []byte(fmt.Sprintf("components: {c%d: {ingredients: [1 g a]}}\n", opened)), nil
	}
	_, faults := drink.Parse("f.yaml", []byte("use: [house, ./house]\n"+head+"build: [10 g a]\n"), open)
	assert.ErrorContains(t, faults.Err(fail.Wrong), `f.yaml:1:14: "./house" is used twice`)
	assert.Equal(t, 1, opened)

	_, faults = drink.Parse("f.yaml", []byte("use: {house: 1}\n"+head+"build: [10 g a]\n"), open)
	assert.Equal(t, 1, faults.Len())
	assert.Equal(t, 1, opened)

	opened = 0
	many := strings.Repeat("p, ", 200)
	for i := range 200 {
		many = strings.Replace(many, "p,", fmt.Sprintf("q%d,", i), 1)
	}
	_, faults = drink.Parse("f.yaml", []byte("use: ["+many+"]\n"+head+"build: [10 g a]\n"), open)
	assert.ErrorContains(t, faults.Err(fail.Wrong), fmt.Sprintf("more than %d pantry files", opened))
}

// A number with a decimal comma between brackets is one number at fault, and no line.
func TestADecimalCommaIsNoLine(t *testing.T) {
	d, faults := drink.Parse("t", []byte(head+"build: [1,5 g sugar, 2 g b]\n"), nil)
	assert.Equal(t, 1, faults.Len())
	require.Len(t, d.Build, 1)
	assert.Equal(t, "b", d.Build[0].Food)
}

// A reading knows whose it is.
func TestAReadingNamesItsPot(t *testing.T) {
	d := parseClean(t, head+"components: {s/y: {ingredients: [1 g a], measured: {ph: 3}}}\nbuild: [1 g s/y]\nfinish: [{measured: {ph: 4}}]\n")
	of, ok := d.Finish[0].(*drink.Measured)
	require.True(t, ok)
	assert.Empty(t, of.Of())
	assert.Equal(t, "the drink", of.What())
	m := d.Components[0].Measured
	assert.Equal(t, []string{"s/y"}, m.Of())
	assert.Equal(t, "s/y", m.What())
	assert.Equal(t, "s~sy", m.Pot())
}

// A long circle is told by its two ends.
func TestALongCircleIsClipped(t *testing.T) {
	text := head + "components:\n"
	for i := range 9 {
		text += fmt.Sprintf("  c%d: {ingredients: [1 g c%d]}\n", i, (i+1)%9)
	}
	got := faultsOf(t, text+"build: [1 g c0]\n")
	require.NotEmpty(t, got)
	assert.Contains(t, got[0], "c0 → c1 → c2 → c3 → … → c6 → c7 → c8 → c0")
	text = head + "components:\n"
	for i := range 7 {
		text += fmt.Sprintf("  c%d: {ingredients: [1 g c%d]}\n", i, (i+1)%7)
	}
	got = faultsOf(t, text+"build: [1 g c0]\n")
	require.NotEmpty(t, got)
	assert.Contains(t, got[0], "c0 → c1 → c2 → c3 → c4 → c5 → c6 → c0", "eight names are told")
}
