package drink_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// stepsOf reads steps of a component.
func stepsOf(t *testing.T, lines ...string) ([]drink.Step, string) {
	t.Helper()
	text := head + "components:\n  pot:\n    ingredients:\n      - 500 g core:water\n    steps:\n"
	for _, l := range lines {
		text += "      - " + l + "\n"
	}
	d, faults := drink.Parse("t", []byte(text+"build:\n  - 100 g pot\n"), nil)
	said := ""
	if err := faults.Err(fail.Wrong); err != nil {
		said = err.Error()
	}
	return d.Components[0].Steps, said
}

// The words of a kitchen are read as their steps, with what they hold.
func TestKitchenWordsAreReadAsTheirSteps(t *testing.T) {
	for line, same := range map[string]string{
		"boil: {to: 300 g}":                                                        "reduce: {to: 300 g}",
		"simmer: {to: 300 g, at: 98 °C, for: 20 min}":                              "reduce: {to: 300 g, at: 98 °C, for: 20 min}",
		"acidify: {ph: 3.2, with: core:citric-acid}":                               "adjust: {ph: 3.2, with: core:citric-acid}",
		"Simmer: {by: 20 %}":                                                       "reduce: {by: 20 %}",
		"filter: {collect: 300 g, through: paper}":                                 "strain: {collect: 300 g, through: paper}",
		"sieve: {collect: 300 g}":                                                  "strain: {collect: 300 g, through: sieve}",
		"squeeze: {collect: 300 g, through: cloth}":                                "press: {collect: 300 g, through: cloth}",
		"infuse: {ingredients: [5 g core:bay-leaf], for: 5 min}":                   "steep: {ingredients: [5 g core:bay-leaf], for: 5 min}",
		"shake: {from: 20 °C, to: -2 °C}":                                          "chill: {from: 20 °C, to: -2 °C}",
		"stir: {melt: 30 g}":                                                       "chill: {melt: 30 g}",
		"vacuum: {to: 300 g}":                                                      "concentrate: {by: vacuum, to: 300 g}",
		"agar: {with: 1 g core:agar, collect: 300 g}":                              "clarify: {by: agar, with: 1 g core:agar, collect: 300 g}",
		"egg white:\n          with: 9 g core:egg-white\n          collect: 300 g": "clarify: {by: egg white, with: 9 g core:egg-white, collect: 300 g}",
		"centrifuge: {collect: 300 g}":                                             "clarify: {by: centrifuge, collect: 300 g}",
		"smoke: apple wood":                                                        "treat: \"smoke, apple wood\"",
		"nitro":                                                                    "treat: nitro",
		"whip: {overrun: 120 %}":                                                   "foam: {overrun: 120 %}",
		"Siphon: {charge: 8 g, gas: n2o, bottle: 0.7 l, at: 4 °C}":                 "foam: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C}",
		"sous vide: 60 °C, 1 h":                                                    "treat: \"sous vide, 60 °C, 1 h\"",
	} {
		got, said := stepsOf(t, line)
		require.Empty(t, said, line)
		want, _ := stepsOf(t, same)
		require.Len(t, got, 1, line)
		assert.Empty(t, want[0].Said())
		assert.Equal(t, bare(want[0]), bare(got[0]), line)
	}
}

// bare gives a step without its place and what was said of its word.
func bare(s drink.Step) any {
	strip := func(h *drink.Head) {
		h.Place, h.Echo = fail.Place{}, ""
		for i := range h.Ingredients {
			h.Ingredients[i].Place, h.Ingredients[i].FoodAt = fail.Place{}, fail.Place{}
		}
	}
	switch s := s.(type) {
	case *drink.Reduce:
		strip(&s.Head)
	case *drink.Strain:
		strip(&s.Head)
	case *drink.Adjust:
		strip(&s.Head)
	case *drink.Steep:
		strip(&s.Head)
	case *drink.Chill:
		strip(&s.Head)
	case *drink.Concentrate:
		strip(&s.Head)
	case *drink.Clarify:
		strip(&s.Head)
	case *drink.Treat:
		strip(&s.Head)
	case *drink.Foam:
		strip(&s.Head)
	}
	return s
}

// A roasted fruit is weighed before and after, and is roasted.
func TestARoastIsWeighedAndNamed(t *testing.T) {
	steps, said := stepsOf(t, "roast: {to: 300 g}")
	require.Empty(t, said)
	require.Len(t, steps, 2)
	assert.Equal(t, 300.0, steps[0].(*drink.Reduce).To.Base())
	assert.Equal(t, "roasted", steps[1].(*drink.Treat).Technique)
}

// What is not safe to read is answered with the line as it should be, and with the figures
// that stand there.
func TestKitchenWordsThatCannotBeReadShowTheirLine(t *testing.T) {
	for line, shows := range map[string]string{
		"boil: 10 min":                  "write - reduce: {to: … g, at: … °C, for: 10 min} if water boils off, or - heat: {at: … °C, for: 10 min} if the lid is on",
		"boil: 300 g":                   "write - reduce: {to: 300 g})",
		"boil":                          "write - reduce: {to: … g} if water boils off, or - heat: {at: … °C, for: … min} if the lid is on",
		"boil: {for: 10 min}":           "write - reduce: {to: … g, at: … °C, for: 10 min}",
		"stir: {from: 20 °C, to: 2 °C}": "write - chill: {melt: … g}",
		"shake: 30 g":                   "write - chill: {melt: 30 g}",
		"filter: 300 g":                 "write - strain: {collect: 300 g, through: cloth}",
		"sieve":                         "write - strain: {collect: … g, through: sieve}",
		"roast: 180 °C":                 "write - reduce: {to: … g} and - treat: \"roasted, 180 °C\"",
		"gelatine: 5 g core:gelatin":    "write - clarify: {by: gelatine, with:",
		"vacuum":                        "write - concentrate: {by: vacuum, to: … g}",
		"freeze":                        "- cool: {to: -18 °C} if not",
		"cook: {for: 1 h}":              "- reduce: {to: … g} if water boils off",
		"hot smoke":                     "did you mean \"smoke\"? It is read as treat: - treat:",
		"coarse strain":                 "did you mean \"strain\"? Write - strain: {collect: 355 g, through: cloth}",
		"spinn":                         "It is read as clarify: - clarify: {by: centrifuge, collect: … g}",
		"stir: {from: 20 °C}":           "a stirred drink does not come to rest with its ice",
		"nitro: {charge: 8 g}":          "write - treat: \"nitro, …\"",
		"whip":                          "where nobody has read its overrun, - treat: \"whipped\"",
		"siphon: {at: 4 °C}":            "- treat: \"foamed in a siphon\"",
		"whip: 80 %":                    "write - foam: {overrun: 80 %}",
	} {
		_, said := stepsOf(t, line)
		assert.Contains(t, said, shows, line)
	}
}

// Every word is read, or says what to write; none is a step already.
func TestKitchenWordsNameSteps(t *testing.T) {
	var words []string
	for _, e := range drink.Steps() {
		words = append(words, e.Word)
	}
	require.NotEmpty(t, drink.KitchenWords())
	for word, step := range drink.KitchenWords() {
		assert.NotContains(t, words, word)
		if step != "" {
			assert.Contains(t, words, step, word)
		}
		if step == "adjust" {
			continue
		}
		_, said := stepsOf(t, word+": {zzz: 1}")
		assert.NotContains(t, said, "is not a step", word)
		assert.NotEmpty(t, said, word)
	}
}

// Where the reading of a word matters the sheet says so.
func TestTheSheetSaysHowAWordWasRead(t *testing.T) {
	steps, said := stepsOf(t, "stir: {melt: 30 g}", "infuse: {ingredients: [5 g core:bay-leaf]}")
	require.Empty(t, said)
	assert.Contains(t, steps[0].Said(), "stir is read as chill: ")
	assert.Empty(t, steps[1].Said())
}
