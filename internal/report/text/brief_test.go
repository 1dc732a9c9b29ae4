package textreport_test

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

// screen is what a terminal shows at once.
const screen = 24

// briefed are the drinks whose briefs are kept and read: the demos, and drinks of this folder.
func briefed(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{}
	demos, err := fs.Glob(data.FS, "demo/*.yaml")
	require.NoError(t, err)
	for _, name := range demos {
		text, err := data.FS.ReadFile(name)
		require.NoError(t, err)
		all["demo-"+strings.TrimSuffix(filepath.Base(name), ".yaml")] = string(text)
	}
	files, err := filepath.Glob("testdata/brief/*.drink.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
	for _, name := range files {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		all[strings.TrimSuffix(filepath.Base(name), ".drink.yaml")] = string(text)
	}
	return all
}

// told calculates a drink as the command brief does, with the works of the core table.
func told(t *testing.T, text string) *sheet.Sheet {
	t.Helper()
	release, err := core.Format.Open(context.Background(), "", "")
	require.NoError(t, err)
	for _, err := range release.Foods { // the works come with the foods
		require.NoError(t, err)
	}
	works := func(_, id string) (source.Work, bool) {
		for _, w := range release.Works {
			if w.ID == id {
				return w, true
			}
		}
		return source.Work{}, false
	}
	d, faults := drink.Parse("test.drink.yaml", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, assaytest.Core(t), assaytest.Options{
		Draws: 1000, Seed: 1, Want: assay.Want{Figures: evidence.Constituents(d), Next: true},
	})
	require.NoError(t, err)
	s, err := sheet.Build("sipsum test", a, []source.Table{release.Table}, works, nil)
	require.NoError(t, err)
	proposed(t, s, text)
	return s
}

// proposed looks for the change of a brief, as the command does.
func proposed(t *testing.T, s *sheet.Sheet, text string) {
	t.Helper()
	r := assaytest.Found(t, assaytest.Core(t), text)
	plan := func(n int) *assay.Plan { return assay.Prepare(r, estimate.Ensemble{Seed: 1, N: n}) }
	require.NoError(t, sheet.Propose(context.Background(), s, sheet.Again{Central: plan(1), Drawn: plan(1001)}))
}

func pageOf(t *testing.T, s *sheet.Sheet, st textreport.Style) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, textreport.Brief(&out, s, st))
	return out.String()
}

// The briefs of the demos and of drinks as a new user writes them: written with -update, and read.
func TestBriefsAreRead(t *testing.T) {
	for name, drink := range briefed(t) {
		got, file := pageOf(t, told(t, drink), textreport.Style{}), filepath.Join("testdata", "brief", name+".txt")
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
			continue
		}
		want, err := os.ReadFile(file)
		if assert.NoError(t, err, "write it with -update, and read it") {
			assert.Equal(t, string(want), got, name)
		}
	}
}

// A brief is a screen, whatever the names: each line keeps to its columns, and no page is longer.
func TestABriefIsOneScreen(t *testing.T) {
	drinks := briefed(t)
	drinks["hostile"] = reporttest.HostileDrink()
	for name, drink := range drinks {
		s := told(t, drink)
		for _, columns := range []int{0, 120} {
			page := pageOf(t, s, textreport.Style{Width: columns})
			assert.LessOrEqual(t, strings.Count(page, "\n"), screen, name)
			for line := range strings.Lines(page) {
				assert.LessOrEqual(t, textreport.Width(strings.TrimSuffix(line, "\n")), max(columns, 80), "%s: %s", name, line)
			}
			assert.Empty(t, never.FindAllString(page, -1), name)
		}
	}
}

// trouble has more to tell than a screen holds.
const trouble = `
drink: "Every Trouble"
serves: 3
rules: [eu]
foods:
  odd: {name: "Secret bitters", per: 100 g, values: {SUGAR: 12 g}, source: "invented"}
  nuts: {name: "Nut drink", per: 100 g, values: {SUGAR: 12 g, FAT: 3 g}, allergens: [almond, hazelnut, walnut, peanut, wheat, oats, sesame, soya, celery, mustard, lupin], source: "invented"}
components:
  syrup:
    ingredients: [100 g core:lemon-juice, 120 g core:sugar-white, 2 g core:citric-acid]
    measured: {brix: 66.0, ph: 3.4, ta: 5.0 %}
  cordial:
    ingredients: [100 g core:sour-cherry-juice, 120 g core:sugar-white, 1 g core:citric-acid]
    measured: {brix: 40.0}
build: [30 g syrup, 30 g cordial, 40 g own:odd, 20 g own:nuts, 60 g core:milk-whole, 60 g core:espresso]
garnish:
  - {food: "core:cream-heavy", amount: 6 g}
  - {food: "core:honey", amount: 6 g, eaten: true}
may-contain: [fish]
`

// What must not be missed stands on the screen; what has no room is counted.
func TestABriefHoldsWhatMustNotBeMissed(t *testing.T) {
	page := pageOf(t, told(t, trouble), textreport.Style{})
	flat := strings.Join(strings.Fields(page), " ")
	for _, must := range []string{
		"syrup, °Brix: read 66", "syrup, pH: read 3.4", "syrup, titratable acidity: read 5", "cordial, °Brix: read 40",
		"Cereals containing gluten (wheat, oats)", "Peanuts", "Soybeans", "Milk", "Nuts (almonds, hazelnuts, walnuts)", "Celery", "Mustard", "Sesame", "Lupin",
		"May contain: Fish", "Not assessed: Secret bitters", "nobody has measured: ",
	} {
		assert.Contains(t, flat, must)
	}
	assert.Regexp(t, `\d+ more: sipsum evidence · \d+ more: sipsum allergens`, flat)
	assert.LessOrEqual(t, strings.Count(page, "\n"), screen)
}

// A garnish that nobody eats is named with its allergens, on the brief and on the sheet.
func TestAGarnishIsNamedWithItsAllergens(t *testing.T) {
	s := told(t, "drink: Rim\nserves: 2\nrules: [eu]\nbuild: [100 g core:water-pure]\ngarnish: [5 g core:almond, {food: core:cream-heavy, amount: 3 g, eaten: true}]\n")
	assert.Contains(t, pageOf(t, s, textreport.Style{}), "On top, not eaten: Almond, with Nuts (almonds)")
	var whole bytes.Buffer
	require.NoError(t, textreport.Sheet(&whole, s, textreport.Style{}))
	flat := strings.Join(strings.Fields(whole.String()), " ")
	assert.Contains(t, flat, "Garnish of all 2 servings, not eaten: 5 g Almond (Nuts (almonds))")
	assert.Contains(t, flat, "eaten: 3 g Cream, heavy whipping (Milk)")
}

// A food that came through two pots is told once, with what came through each.
func TestAFoodThroughTwoPotsIsToldOnce(t *testing.T) {
	s := told(t, `
drink: "Two Pots"
serves: 1
components:
  syrup: {ingredients: [100 g core:water-pure, 100 g core:sucrose]}
  cordial: {ingredients: [150 g core:water-pure, 50 g core:sucrose]}
build: [40 g syrup, 40 g cordial, 100 g core:black-tea]
`)
	// 20 g and 10 g of sucrose, by hand.
	assert.Contains(t, pageOf(t, s, textreport.Style{}), "sugars (29.7–30.3): all from sucrose (syrup 67, cordial 33)")
}

// rumAndSyrup is strong, served in too small a glass, with a syrup of milk that is kept too long.
const rumAndSyrup = `
drink: "Rum and Syrup"
serves: 1
glass: 30 ml
rules: [eu]
components:
  syrup: {ingredients: [100 g core:milk-whole, 100 g core:sucrose], keeps: 21 days at 4 °C}
  shot: {ingredients: [60 g core:espresso, 40 g core:espresso]}
build: [40 g core:rum-40, 20 g syrup, 50 g shot, 60 g core:tonic-water, 5 g core:honey]
garnish: [2 g core:lemon-peel]
`

// What may hurt stands on every screen before anything else gives way, on a narrow one too; it is
// said in a few words where whole sentences have no room.
func TestABriefHoldsWhatMayHurt(t *testing.T) {
	s := told(t, rumAndSyrup)
	for _, columns := range []int{40, 60, 80, 120} {
		flat := strings.Join(strings.Fields(pageOf(t, s, textreport.Style{Width: columns})), " ")
		for _, must := range []string{
			"Alcohol 1", "% vol · ", "g alcohol", "overflows a glass of 30 ml", "21 days are too long (7 at 5 °C",
			"ore caffeine than one portion", "alcohol: legal age", "uinine: ", "honey: never under 12 months", "Contains (EU): Milk",
		} {
			assert.Contains(t, flat, must, columns)
		}
		assert.Contains(t, flat, "more: sipsum allergens", columns)
	}
	assert.NotContains(t, pageOf(t, told(t, "drink: x\nserves: 1\nrules: [eu]\nbuild: [100 g core:water-pure, 10 g core:sucrose]\n"), textreport.Style{}), "Alcohol")
}

// No line of a narrow page ends in the middle of what it says: what has no room stands in the next
// line, and a page that is scrolled names who brings it.
func TestANarrowBriefFolds(t *testing.T) {
	s := told(t, rumAndSyrup)
	for _, columns := range []int{40, 60, 80} {
		page := pageOf(t, s, textreport.Style{Width: columns})
		assert.NotContains(t, strings.ReplaceAll(page, ": …", ": "), "…", "the gap of a line to write apart: %d", columns)
		flat := strings.Join(strings.Fields(page), " ")
		assert.Contains(t, flat, "g alcohol", columns)
		assert.Contains(t, flat, "from rum", columns)
		assert.Contains(t, flat, "sucrose", columns)
	}
}

// What a drink is judged by stands in the order of what it does: acids by what a burette finds of
// them, gas that nobody put in is no sparkle, and what a step made unknown nobody need measure.
func TestABriefSaysWhatABaristaWould(t *testing.T) {
	// 100 mg of citric acid are 1.56 mmol of base (192.12 g/mol, three protons), 120 mg of quinic
	// acid 0.62 (192.17 g/mol, one): molar masses by formula.
	acids := pageOf(t, told(t, `
drink: "Acids"
serves: 1
rules: [eu]
foods:
  sour: {name: "Sour water", per: 100 g, values: {WATER: 99 g, CITAC: 0.1 g, QUINAC: 0.12 g, SUGAR: 0 g}, source: "invented"}
build: [100 g own:sour, 30 g core:water-brew, 10 g core:sucrose]
`), textreport.Style{})
	assert.Less(t, strings.Index(acids, "citric acid"), strings.Index(acids, "quinic acid"))
	assert.Regexp(t, `Sparkle +still`, acids)
	assert.NotContains(t, acids, "chlorogenic", "of a drink without coffee nobody asks")
	soda := pageOf(t, told(t, "drink: x\nserves: 1\nrules: [eu]\nbuild: [100 g core:water-pure]\nfinish:\n  - carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 3 g/l}\n"), textreport.Style{})
	assert.Regexp(t, `Sparkle +2\.99 g/l carbon dioxide.*from the charge`, soda)
	assert.Regexp(t, `Sparkle +not known: carbon dioxide`, pageOf(t, told(t, rumAndSyrup), textreport.Style{}), "tonic water is sold with gas")
	nitro := "drink: x\nserves: 1\nrules: [eu]\nbuild: [100 g core:cold-brew]\nfinish: [treat: \"nitro: N2, 3 bar, stout tap\"]\n"
	assert.Regexp(t, `Sparkle +how much of the nitrogen`, pageOf(t, told(t, nitro), textreport.Style{}))
	washed := strings.Join(strings.Fields(pageOf(t, told(t, `
drink: "Washed"
serves: 1
rules: [eu]
components:
  wash:
    ingredients: [200 g core:rum-40, 100 g core:espresso, 30 g core:lemon-juice]
    steps:
      - clarify: {by: milk, with: [100 g core:milk-whole], collect: 300 g}
build: [60 g wash, 20 g core:sucrose]
`), textreport.Style{})), " ")
	assert.Contains(t, washed, "what the steps of wash left of: chlorogenic acids of the espresso")
	assert.NotContains(t, washed, "nobody has measured: chlorogenic acids of the espresso")
	assert.Contains(t, washed, "°Bx with its alcohol")
}

// What to change stands on the screen in a line, and says what it makes smaller; nothing is proposed where
// nothing is to be mended.
func TestABriefSaysWhatToChange(t *testing.T) {
	page := pageOf(t, told(t, briefed(t)["demo-garden-tide"]), textreport.Style{})
	assert.NotContains(t, page, "\nChange ")
	small := strings.Replace(briefed(t)["demo-garden-tide"], "glass: 160 ml", "glass: 100 ml", 1)
	assert.Regexp(t, `(?m)^Change   140 → \d+(\.\d)? g mint whey: it fits the glass of 100 ml; .*1\d %`, pageOf(t, told(t, small), textreport.Style{}))
}
