package drink_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// Ranges are read in the units of the trade, with one end or two. All rules here are invented.
func TestHouseRulesRead(t *testing.T) {
	_, mixed := drink.ParseHouseRules("r", []byte(`rules: "Invented, read in spring"
forbidden: {ingredients: [core:lemon-juice, milk], kinds: [spirit], constituents: [alcohol, CAFFN], allergens: [milk]}
limits:
  - say: "At most half a per cent"
    check: alcohol_abv() <= 0.5 %
servings: 4
volume: 6 cl to 240 ml
temperature: 131 °F to 70 °C
minutes: 15
hand-over: ["list of ingredients"]
`))
	require.Error(t, mixed.Err(fail.Wrong), "two units of one range")
	h, faults := drink.ParseHouseRules("r", []byte(`rules: "Invented, read in spring"
forbidden: {ingredients: [core:lemon-juice, milk], kinds: [spirit], constituents: [alcohol, CAFFN], allergens: [milk]}
limits:
  - say: "At most half a per cent"
    check: alcohol_abv() <= 0.5 %
servings: 4
volume: 60 ml to 240 ml
temperature: 55 °C to 70 °C
minutes: 15
hand-over: ["list of ingredients"]
`))
	require.NoError(t, faults.Err(fail.Wrong))
	assert.Equal(t, "Invented, read in spring", h.From)
	assert.Equal(t, "ALC", h.Forbidden.Constituents[0].Text)
	assert.Equal(t, "alcohol_abv() <= 0.5 %", h.Limits[0].Check)
	assert.Equal(t, fail.Place{File: "r", Line: 5, Col: 12}, h.Limits[0].CheckAt)
	for name, c := range map[string]struct {
		w         *drink.Within
		low, high float64
	}{
		"servings": {h.Servings, 4, 4}, "volume": {h.Volume, 60, 240}, "temperature": {h.Temperature, 55, 70}, "minutes": {h.Minutes, math.Inf(-1), 15},
	} {
		assert.Equal(t, [2]float64{c.low, c.high}, [2]float64{c.w.Low, c.w.High}, name)
	}
	for text, want := range map[string][2]float64{
		"volume: at least 6 cl": {60, math.Inf(1)}, "volume: up to 1 l": {math.Inf(-1), 1000}, "volume: 60-240 ml": {60, 240}, "volume: 100 ml ± 20 ml": {80, 120},
		"volume: at most 2 dl": {math.Inf(-1), 200},
	} {
		h, faults := drink.ParseHouseRules("r", []byte("rules: x\n"+text))
		require.NoError(t, faults.Err(fail.Wrong), text)
		assert.InDelta(t, 0, delta(want[0], h.Volume.Low)+delta(want[1], h.Volume.High), 1e-9, text)
	}
	for text, want := range map[string][2]float64{"minutes: 900 s": {math.Inf(-1), 15}, "minutes: 10 to 15 min": {10, 15}, "minutes: 9 to 10": {9, 10}, "minutes: 9-10": {9, 10}, "minutes: at least 5": {5, math.Inf(1)}} {
		h, faults := drink.ParseHouseRules("r", []byte("rules: x\n"+text))
		require.NoError(t, faults.Err(fail.Wrong), text)
		assert.InDelta(t, 0, delta(want[0], h.Minutes.Low)+delta(want[1], h.Minutes.High), 1e-9, text)
	}
}

func delta(a, b float64) float64 {
	if a == b {
		return 0
	}
	return math.Abs(a - b)
}

// What is wrong is told at its place, with what to write.
func TestHouseRulesFaults(t *testing.T) {
	for text, want := range map[string]string{
		"":                                                    "r:1:1: the file is empty (begin with rules:",
		"# nothing\n":                                         "r:1:1: the file holds nothing but comments (begin with rules:",
		"servings: 4":                                         `r:1:1: a file of house rules needs "rules"`,
		"rules: x\nforbiden: {}":                              `has no key "forbiden" (did you mean "forbidden"?`,
		"rules: x\nforbidden: {kind: [a]}":                    `forbidden has no key "kind" (did you mean "kinds"?`,
		"rules: x\nforbidden: [a]":                            "r:2:12: forbidden must be written as key: value",
		"rules: x\nforbidden: {kinds: a}":                     "write: kinds: [a]",
		"rules: x\nvolume: 60 ml":                             "write: volume: at most 60 ml, or: volume: at least 60 ml",
		"rules: x\nvolume: 60 g":                              `"60 g" is not a volume`,
		"rules: x\nvolume: 240 ml to 60 ml":                   "r:2:9: ",
		"rules: x\nvolume: 60 ml of milk":                     "is not a volume",
		"rules: x\ntemperature: 60 °C":                        "not whether that is the least or the most",
		"rules: x\nservings: some":                            "does not begin with a number",
		"rules: x\nservings: 0":                               "out of range",
		"rules: x\nminutes: at most 1-2 min":                  "has an end and a range",
		"rules: x\nlimits: [{say: a}]":                        `a claim needs "check"`,
		"rules: x\nrules: y":                                  "stands here again",
		"rules: x\nforbidden: {constituents: [alcohol, ALC]}": `"ALC" is "alcohol", which stands here already`,
		"rules: \"\u202ex\"":                                  "a character that reorders text",
		"rules: x\nhand-over: &a [b]":                         "anchors and aliases",
		"rules: x\n" + strings.Repeat("#", drink.MostBytes()) + "\n": "the file has more than",
	} {
		_, faults := drink.ParseHouseRules("r", []byte(text))
		assert.ErrorContains(t, faults.Err(fail.Wrong), want, text[:min(len(text), 60)])
	}
}

// FuzzHouseRules feeds the reader anything: it never panics, its faults lie within the file, and what
// it gives without a fault has legal values.
func FuzzHouseRules(f *testing.F) {
	for _, seed := range []string{
		"rules: x\nforbidden: {ingredients: [core:lemon-juice, milk], kinds: [spirit], constituents: [alcohol], allergens: [milk]}\n",
		"rules: x\nlimits:\n  - {say: a, check: ph() < 4}\nservings: 4\nvolume: 60 ml to 240 ml\ntemperature: at most 131 °F\nminutes: 15\nhand-over: [a]\n",
		"rules: x\nvolume: up to -1/0 ml\n", "rules:\n  - a", "{a: [b", "minutes: at least \n", "servings: 1 to 1e9\n", "volume: at least 1 ml ± 2 ml sd\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		h, faults := drink.ParseHouseRules("fuzz", text)
		if err := faults.Err(fail.Wrong); err != nil {
			var e *fail.Error
			if !errors.As(err, &e) {
				t.Fatal(err)
			}
			for _, fault := range e.Faults {
				checkFault(t, text, fault)
			}
			return
		}
		if h.From == "" || !utf8.ValidString(h.From) {
			t.Fatalf("from %q", h.From)
		}
		for _, w := range []*drink.Within{h.Servings, h.Volume, h.Temperature, h.Minutes} {
			if w != nil && !(w.Low <= w.High) {
				t.Fatalf("within %+v", w)
			}
		}
	})
}
