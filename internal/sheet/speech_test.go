package sheet_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// spoken gives the sheet of a drink of the core table with its claims judged, and a work behind
// every figure.
func spoken(t *testing.T, text string) *sheet.Sheet {
	t.Helper()
	foods := assaytest.Core(t)
	d, faults := drink.Parse("proof.drink.yaml", []byte("drink: Proof\nserves: 1\n"+text), nil)
	r, err := recipe.Find(context.Background(), d, faults, foods)
	require.NoError(t, err)
	ens := estimate.Ensemble{Seed: 1, N: 201, Journal: &estimate.Journal{}}
	a, err := assay.Prepare(r, ens).Run(context.Background(), nil, assay.Want{
		Figures: slices.Concat(evidence.Constituents(d), claims.Constituents(d)), Intervals: true, Chemistry: true, Draws: true, Next: true,
	})
	require.NoError(t, err)
	works := func(table, id string) (source.Work, bool) {
		return source.Work{ID: id, Citation: "the paper " + id}, table != food.Own
	}
	s, err := sheet.Build("sipsum test", a, []source.Table{{ID: "core", Title: "A table"}}, works, nil)
	require.NoError(t, err)
	require.NoError(t, sheet.Judge(context.Background(), s, works, nil, nil))
	return s
}

// texts are the sentences of a speech, one a line.
func texts(s speech.Speech) string {
	var list []string
	for _, l := range s.Lines {
		list = append(list, l.Text)
	}
	return strings.Join(list, "\n")
}

// everything has, between them, all that a speech can tell.
var everything = []string{
	`components:
  shot:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps:
      - brew: {out: 38 g, strength: 9.5 %}
  espresso pot:
    ingredients: [40 g core:espresso]
    steps:
      - cool: {to: 4 °C}
  cordial:
    ingredients: [120 g core:lemon-juice, 60 g core:sugar-white, 20 g shot]
  veil:
    ingredients: [100 g core:milk-whole, 10 g cordial]
    steps:
      - treat: "smoked, apple wood 20 min"
build: [36 g espresso pot, 30 g cordial, 60 g veil]
finish:
  - chill: {melt: 20 g}
garnish: [1 g core:spearmint]
may-contain: [almond]
aroma:
  - {of: "orange peel", treatment: expressed}
claims:
  - {say: "The lemon brings most of the citric acid", check: 'share(CITAC, "lemon juice") >= 50 %'}
  - {say: "Not much caffeine", check: serving(CAFFN) < 230 mg}
`,
	`foods:
  tea: {name: "Tea, invented", per: 100 g, values: {WATER: 99 g ± 0 g, CAFFN: 50 mg ± 5 mg sd}, source: "a laboratory"}
  dark: {name: "Dark, invented", per: 100 g, allergens: [], values: {WATER: 99 g ± 0 g, CAFFN: 50 mg ± 0 mg}, source: "a laboratory"}
build: [100 g own:tea, "50 g ± 20 g own:dark"]
claims:
  - {say: "Not much caffeine", check: serving(CAFFN) < 82 mg}
  - {say: "The dark tea matters", check: "component('Dark, invented', CAFFN) > 17 mg"}
  - {say: "Pale", check: "component('Tea, invented', CAFFN) < 60 mg"}
`,
	`build: [100 g core:espresso, 20 g core:pear-juice, 50 g core:apple-juice]
claims:
  - {say: "Strong", check: serving(CAFFN) > 160 mg}
  - {say: "Malic", check: serving(MALAC) > 200 mg}
  - {say: "Sugars", check: serving(SUGAR) > 6.3 g}
`,
	"build: [100 g core:orange-juice, 30 g core:milk-whole]\n",
	"foods:\n  rum: {name: \"House rum\", per: 100 g, allergens: [], values: {WATER: 60 g}, source: \"a still\"}\nbuild: [40 g core:espresso, 80 g own:rum]\n",
	"components:\n  pot: {ingredients: [100 g ± 9 g core:sugar-white, 100 g ± 9 g core:water-pure], measured: {brix: 50 ± 1}}\nbuild: [100 g ± 0.01 g pot, 10 g ± 0.01 g core:lemon-juice]\nclaims:\n  - {say: \"Thick\", check: serving(SUGAR) > 49 g}\n",
	"build: [60 g core:filter-coffee, 60 g core:tonic-water]\nfinish:\n  - treat: liquid nitrogen\n",
	"build: [60 g core:filter-coffee, 40 g core:rum-40, 30 g core:egg-white, 20 g core:honey, 30 g core:tonic-water, 30 g core:grapefruit-juice, 3 g core:tonka-bean, 60 g core:kombucha, 5 g core:poppy-seed, 30 g core:elderberry-juice, 5 g core:juniper-berry, 2 g core:cinchona-bark]\n",
}

func TestEverySentenceIsSaid(t *testing.T) {
	said := map[string]bool{}
	for _, text := range everything {
		s := spoken(t, text)
		for _, register := range speech.Registers {
			out := sheet.SpeechOf(s, register)
			for _, l := range out.Lines {
				said[string(register)+" "+l.Kind] = true
			}
			for _, l := range slices.Concat(out.LeftOut, out.Unspoken) {
				said[string(register)+" "+l.Kind] = true
			}
		}
	}
	for _, row := range embedded.Rows("speech.csv") {
		// Parts of sentences, and what is said where cautions do not fit, the room's own tests want.
		if row.Text("register") != "any" && row.Text("kind") != speech.More {
			assert.True(t, said[row.Text("register")+" "+row.Text("kind")], "nobody says %s to the %s", row.Text("kind"), row.Text("register"))
		}
	}
}

// Every step of a drink file, done in any way, has words, but for those that do nothing which
// anybody would speak of; and there are no words for a step that no file can have.
func TestEveryStepHasWords(t *testing.T) {
	ways := map[string][]string{
		"strain": {"cloth", "paper", "metal", "sieve", "bag"}, "press": {"cloth", "paper", "metal", "sieve", "bag"},
		"clarify": {"milk", "egg white", "gelatine", "agar", "centrifuge"}, "curdle": {"acid", "rennet"},
		"concentrate": {"freezing", "vacuum"}, "adjust": {"ph", "ta", "brix"},
	}
	known := map[string]bool{}
	for _, step := range drink.Steps() {
		silent := step.Word == "measured" || step.Word == "add"
		for _, way := range append(ways[step.Word], "") {
			if way == "" && len(ways[step.Word]) > 0 {
				continue
			}
			known[strings.TrimSuffix(step.Word+"."+way, ".")] = true
			assert.Equal(t, silent, speech.Step(step.Word, way, map[string]string{"technique": "smoked"}) == "", "%s %s", step.Word, way)
		}
	}
	for _, row := range embedded.Rows("speech_steps.csv") {
		assert.True(t, known[row.Text("step")], "no file can have the step %s", row.Text("step"))
	}
}

// A claim is said as far as its verdict bears it, in no other words; one that is not borne is told
// to be left out, and why.
func TestAClaimIsSaidNoHigherThanItsVerdict(t *testing.T) {
	const tea = `foods:
  tea: {name: "Tea, invented", per: 100 g, values: {WATER: 99 g ± 0 g, CAFFN: 50 mg ± 5 mg sd}, source: "invented for this file"}
build: [100 g own:tea]
claims:
`
	// Φ: 60 mg 0.97, 54 mg 0.79, 50 mg 0.52, 44 mg 0.11, 40 mg 0.01 (testdata/claims/likely.drink.yaml)
	for below, want := range map[string]string{
		"60": "It wakes you gently.", "54": "Most likely, though not surely: It wakes you gently.", "50": "unclear", "44": "unlikely", "40": "refuted",
	} {
		s := sheet.SpeechOf(spoken(t, tea+"  - {say: \"It wakes you gently\", check: serving(CAFFN) < "+below+" mg}\n"), speech.Judge)
		if strings.HasSuffix(want, ".") {
			assert.Contains(t, "\n"+texts(s)+"\n", "\n"+want+"\n", below)
			assert.Empty(t, s.Unspoken, below)
			continue
		}
		assert.NotContains(t, texts(s), "gently", below)
		require.Len(t, s.Unspoken, 1, below)
		assert.Equal(t, "its verdict is "+want, s.Unspoken[0].Why)
	}
}

// A figure that nobody has seen in print is not spoken, nor what rests on it.
func TestNothingFromMemoryIsSpoken(t *testing.T) {
	const tea = "foods:\n  tea: {name: \"Tea\", per: 100 g, values: {WATER: 99 g, CAFFN: 50 mg}, source: \"%\"}\nbuild: [100 g own:tea]\n"
	assert.Contains(t, texts(sheet.SpeechOf(spoken(t, strings.Replace(tea, "%", "report 7", 1)), speech.Judge)), "caffeine")
	assert.NotContains(t, texts(sheet.SpeechOf(spoken(t, strings.Replace(tea, "%", "from memory", 1)), speech.Judge)), "caffeine")
}

// A caution that nobody has seen in print is not spoken, but that there is more to ask is.
func TestACautionFromMemoryIsAskedFor(t *testing.T) {
	s := texts(sheet.SpeechOf(spoken(t, "foods:\n  herb: {name: \"Comfrey leaf\", per: 100 g, allergens: [], values: {WATER: 90 g}, source: \"a gardener\"}\nbuild: [100 g core:black-tea, 5 g own:herb]\n"), speech.Guest))
	assert.NotContains(t, s, "comfrey hold")
	assert.Contains(t, s, "There is more to know before you drink it: please ask us.")
}

// A claim that denies something, or speaks of health, is not spoken though its check holds: the drink
// holds milk.
func TestAClaimThatNoFigureDecidesIsNotSpoken(t *testing.T) {
	s := spoken(t, `build: [60 g core:espresso, 30 g core:milk-whole]
claims:
  - {say: "No milk in it", check: serving(FAT) < 5 g}
  - {say: "It is good for your heart", check: serving(CAFFN) > 1 mg}
  - {say: "Gentle", check: serving(FAT) < 5 g}
`)
	for _, register := range speech.Registers {
		out := sheet.SpeechOf(s, register)
		assert.Contains(t, texts(out), "Gentle.", register)
		assert.NotContains(t, texts(out), "No milk", register)
		why := map[string]string{}
		for _, l := range out.Unspoken {
			why[l.Text] = l.Why
		}
		assert.Contains(t, why["No milk in it"], "is not in a drink", register)
		assert.Contains(t, why["It is good for your heart"], "body", register)
	}
}

// The judges are told of alcohol from where on a strength has to be stated, whatever else there is no
// time for: 20 g of wine in a drink are about 1.6 % vol, 4 g about 0.3.
func TestJudgesAreToldOfAlcohol(t *testing.T) {
	const rest = `core:wine-red, 20 g core:orange-juice]
claims:
  - {say: "One of very many long and winding sentences that a barista may wish to say to all of the judges at a table, who listen with patience, and each of them is as true as it is long and takes the time that it takes until the whole of that minute and a half is gone and nobody has said another word about the drink that stands before them and gets cold", check: serving(CAFFN) > 1 mg}
  - {say: "Another of very many long and winding sentences that a barista may wish to say to all of the judges at a table, who listen with patience, and each of them is as true as it is long and takes the time that it takes until the whole of that minute and a half is gone and nobody has said another word about the drink that stands before them and gets cold", check: serving(SUGAR) > 1 g}
`
	told := func(text string) string { return texts(sheet.SpeechOf(spoken(t, text), speech.Judge)) }
	assert.Regexp(t, `It holds 1\.\d+ to [12]\.?\d* percent alcohol by volume\.`, told("build: [40 g core:espresso, 80 g core:grape-juice, 20 g "+rest))
	assert.NotContains(t, told("build: [40 g core:espresso, 80 g core:grape-juice, 4 g "+rest), "alcohol")
	const house = "foods:\n  bitters: {name: \"House rum\", per: 100 g, allergens: [], values: {WATER: 60 g}, source: \"a still\"}\n"
	assert.Contains(t, told(house+"build: [40 g core:espresso, 80 g own:bitters]\n"), "It holds alcohol, and how much nobody has stated.")
}

// Nobody is told to find a drink sour for the citrate of its milk, whose pH is not known, nor at the
// pH of milk; orange juice and lemon are sour.
func TestOnlyFreeAcidIsCalledSour(t *testing.T) {
	for text, sour := range map[string]bool{
		"build: [38 g core:espresso, 150 g core:milk-whole]\n":                                                                      false,
		"components:\n  pot: {ingredients: [38 g core:espresso, 150 g core:milk-whole], measured: {ph: 6.4}}\nbuild: [180 g pot]\n": false,
		"build: [60 g core:filter-coffee, 60 g core:orange-juice, 10 g core:lemon-juice]\n":                                         true,
	} {
		for _, register := range speech.Registers {
			out := sheet.SpeechOf(spoken(t, text), register)
			has := func(l speech.Line) bool { return l.Kind == "sour.above" }
			left := func(l speech.Left) bool { return l.Kind == "sour.above" }
			assert.Equal(t, sour, slices.ContainsFunc(out.Lines, has) || slices.ContainsFunc(out.LeftOut, left), text)
		}
	}
}

// A question is asked of what a claim hangs on, and of nothing where all draws agree; nobody asks why
// caffeine is not poured as a powder; and a claim whose number lies far from what the drink has is
// not said, whatever it holds.
func TestOnlyWhatIsNewsIsSaidAfterAFigure(t *testing.T) {
	const drink = `foods:
  tea: {name: "Tea, invented", per: 100 g, allergens: [], values: {WATER: 89 g ± 0 g, SUGAR: 10 g ± 0.5 g sd, SUCS: 10 g ± 0.5 g sd, CAFFN: 50 mg ± 5 mg sd}, source: "a laboratory"}
build: [100 g own:tea, 10 g core:water-pure]
claims:
`
	for claim, want := range map[string][2]bool{ // said, asked of
		`{say: "As sweet as five percent sugar", check: sweetness() >= 5 %}`:         {false, false},
		`{say: "Six grams of sugars", check: serving(SUGAR) >= 6 g}`:                 {false, false},
		`{say: "At most 20 g of sugars", check: serving(SUGAR) <= 20 g}`:             {false, false},
		`{say: "At most 11 g of sugars", check: serving(SUGAR) <= 11 g}`:             {true, true},
		`{say: "Plenty of sugar", check: serving(SUGAR) >= 5 g}`:                     {true, false},
		`{say: "The tea wakes", check: 'component("Tea, invented", CAFFN) > 20 mg'}`: {true, false},
	} {
		out := sheet.SpeechOf(spoken(t, drink+"  - "+claim+"\n"), speech.Judge)
		said := slices.ContainsFunc(out.Lines, func(l speech.Line) bool { return strings.HasPrefix(l.Kind, "claim") })
		asked := slices.ContainsFunc(out.Lines, func(l speech.Line) bool {
			return strings.HasPrefix(l.Kind, "asked") && l.Kind != "asked.works" && l.Kind != "asked.gap"
		})
		assert.Equal(t, want[0], said, "%s: %v", claim, out.Unspoken)
		assert.Equal(t, want[1], asked, "%s: %s", claim, texts(out))
		assert.NotContains(t, texts(out), "published work", "nobody published it")
		if want[0] {
			continue
		}
		require.Len(t, out.Unspoken, 1, claim)
		assert.Contains(t, out.Unspoken[0].Why, "its limit lies far", claim)
	}
}

// What is spoken of a category is about what a tongue has most of; of a pot that is the whole drink
// nobody says that it brings everything, and of a little that it brings some.
func TestWhatIsSpokenMattersMost(t *testing.T) {
	kinds := func(text, kind string) string {
		var list []string
		out := sheet.SpeechOf(spoken(t, text), speech.Judge)
		for _, l := range out.Lines {
			if l.Kind == kind {
				list = append(list, l.Text)
			}
		}
		for _, l := range out.LeftOut {
			if l.Kind == kind {
				list = append(list, l.Text)
			}
		}
		return strings.Join(list, "\n")
	}
	const cider = "build: [20 g core:espresso, 100 g core:apple-juice, 10 g core:orange-juice, 2 g core:sugar-white]\n"
	assert.Contains(t, kinds(cider, "figure"), "grams of sugars")
	assert.Contains(t, kinds(cider, "figure"), "of malic acid", "an apple's acid")
	assert.NotRegexp(t, "phosphate|organic acids", kinds(cider, "figure"))
	assert.Contains(t, kinds("build: [60 g core:filter-coffee, 80 g core:tonic-water]\n", "figure"), "of quinine", "bitterer by far than the caffeine")

	const punch = "components:\n  punch: {ingredients: [100 g core:espresso, 50 g core:lemon-juice, 30 g core:sugar-white]}\nbuild: [150 g punch]\nfinish:\n  - chill: {melt: 20 g}\n"
	assert.NotContains(t, kinds(punch, "lead"), "The punch brings")
	assert.NotContains(t, kinds(cider, "lead"), "some of")
	assert.NotContains(t, kinds(punch, "lead"), "Some of")
}

// What is brewed is not made from coffee, brewed.
func TestABrewIsBrewed(t *testing.T) {
	const filter = "components:\n  filter:\n    ingredients: [15 g core:coffee-roasted-arabica, 250 g core:water-brew]\n    steps:\n      - brew: {out: 220 g, strength: 1.3 %}\nREST\nbuild: [80 g filter]\n"
	s := spoken(t, strings.Replace(filter, "REST\n", "", 1))
	assert.Contains(t, texts(sheet.SpeechOf(s, speech.Judge)), "I brew the filter from coffee.")
	assert.Contains(t, texts(sheet.SpeechOf(s, speech.Guest)), "The filter is brewed from coffee.")
	s = spoken(t, strings.Replace(filter, "REST", "      - strain: {through: paper, collect: 200 g}", 1))
	assert.Contains(t, texts(sheet.SpeechOf(s, speech.Judge)), "I brew the filter from coffee, strained through paper.")
}
