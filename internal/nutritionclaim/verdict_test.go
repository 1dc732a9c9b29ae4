package nutritionclaim_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/nutritionclaim"
)

// What the figures of a drink say of a claim depends on where its interval ends, and on what
// nobody knows. The figures are invented, the limits those of the regulations.
func TestVerdictsByInterval(t *testing.T) {
	nothing := nutritionclaim.Figure{Most: math.NaN()}
	some := func(low, mean, most float64, unknown ...string) nutritionclaim.Figure {
		high := most
		if len(unknown) > 0 {
			high = mean
		}
		return nutritionclaim.Figure{Low: low, Mean: mean, High: high, Most: most, Known: true, Unknown: unknown}
	}
	for _, c := range []struct {
		claim   string
		id      constituent.ID
		figure  nutritionclaim.Figure
		verdict nutritionclaim.Verdict
		near    bool
		why     string
	}{
		{"low sugars", "SUGAR", some(2.1, 2.3, 2.45), nutritionclaim.Allowed, false, "2.3 g sugars per 100 ml, up to 2.45, at most 2.5"},
		{"low sugars", "SUGAR", some(2.1, 2.3, 2.6), nutritionclaim.NotYet, true, "2.3 g sugars per 100 ml, up to 2.6, at most 2.5; measure it"},
		{"low sugars", "SUGAR", some(2.1, 2.3, 2.6, "A syrup"), nutritionclaim.Undecided, true, "2.3 g sugars per 100 ml, up to 2.6, at most 2.5; measure it, or find it out of A syrup"},
		{"low sugars", "SUGAR", some(2.1, 2.3, math.NaN(), "A syrup"), nutritionclaim.Undecided, true, "2.3 g sugars per 100 ml and an unknown rest, at most 2.5; measure it, or find it out of A syrup"},
		{"low sugars", "SUGAR", some(2.4, 2.6, 2.9), nutritionclaim.NotAllowed, true, "2.6 g sugars per 100 ml, at most 2.5"},
		{"low sugars", "SUGAR", some(2.4, 2.6, 2.9, "A syrup"), nutritionclaim.NotAllowed, true, "2.6 g sugars per 100 ml, at most 2.5"},
		{"low sugars", "SUGAR", some(2.4, 2.5004, 2.9), nutritionclaim.NotAllowed, true, "2.5004 g sugars per 100 ml, at most 2.5"},
		{"low sugars", "SUGAR", some(8, 9, 10), nutritionclaim.NotAllowed, false, "9 g sugars per 100 ml, at most 2.5"},
		{"low sugars", "SUGAR", nothing, nutritionclaim.Undecided, false, "sugars per 100 ml not known, at most 2.5; measure it"},
		{"low sugars", "SUGAR", nutritionclaim.Figure{Most: 2.4, Unknown: []string{"A pack"}}, nutritionclaim.Allowed, false, "up to 2.4 g sugars per 100 ml, at most 2.5"},
		{"low sugars", "SUGAR", nutritionclaim.Figure{Most: 4, Unknown: []string{"A pack"}}, nutritionclaim.Undecided, false, "up to 4 g sugars per 100 ml, at most 2.5; measure it, or find it out of A pack"},
		{"source of potassium", "K", some(160, 200, 240), nutritionclaim.Allowed, false, "200 mg potassium per 100 ml, no less than 160, at least 150 (7.5 % of 2000 mg)"},
		{"source of potassium", "K", some(140, 200, 240), nutritionclaim.NotYet, true, "200 mg potassium per 100 ml, no less than 140, at least 150 (7.5 % of 2000 mg); measure it"},
		{"source of potassium", "K", some(120, 149, 180), nutritionclaim.NotAllowed, true, "149 mg potassium per 100 ml, at least 150 (7.5 % of 2000 mg)"},
		{"source of potassium", "K", some(70, 100, 180, "A juice"), nutritionclaim.Undecided, false, "100 mg potassium per 100 ml, up to 180, at least 150 (7.5 % of 2000 mg); measure it, or find it out of A juice"},
		{"source of potassium", "K", some(70, 100, 140, "A juice"), nutritionclaim.NotAllowed, false, "100 mg potassium per 100 ml, at least 150 (7.5 % of 2000 mg)"},
		{"source of potassium", "K", nothing, nutritionclaim.Undecided, false, "potassium per 100 ml not known, at least 150 (7.5 % of 2000 mg); measure it"},
	} {
		in := drink("eu", 100, nil)
		set(in, c.id, c.figure)
		k := judged(t, in, c.claim)
		assert.Equal(t, c.verdict, k.Verdict, c.why)
		assert.Equal(t, c.near, k.Near, c.why)
		assert.Equal(t, c.why, k.Why)
	}
}

// A share of the energy is taken between the ends that are against the claim.
func TestShareOfEnergyByInterval(t *testing.T) {
	in := drink("eu", 100, map[constituent.ID]float64{"PROCNT": 3, "ENERC_KCAL": 100})
	assert.Equal(t, nutritionclaim.Allowed, judged(t, in, "source of protein").Verdict)
	set(in, "ENERC_KCAL", nutritionclaim.Figure{Low: 95, Mean: 100, High: 105, Most: 105, Known: true})
	k := judged(t, in, "source of protein")
	assert.Equal(t, nutritionclaim.NotYet, k.Verdict)
	assert.Equal(t, "12 % protein of the energy, no less than 11.4, at least 12 %; measure it", k.Why)
	set(in, "ENERC_KCAL", nutritionclaim.Figure{Low: 95, Mean: 100, High: 105, Most: math.NaN(), Known: true, Unknown: []string{"A pack"}})
	assert.NotEqual(t, nutritionclaim.Allowed, judged(t, in, "source of protein").Verdict, "energy without an end")
	water := drink("eu", 100, nil)
	assert.Equal(t, nutritionclaim.Allowed, judged(t, water, "low saturated fat").Verdict, "nothing of nothing is nothing")
	assert.Equal(t, nutritionclaim.NotAllowed, judged(t, water, "source of protein").Verdict)
}

// Parts of a whole are no more than it: where no fat is, no trans fat is either, whoever has
// looked for it.
func TestPartsAreNoMoreThanTheirWhole(t *testing.T) {
	in := drink("us", 240, map[constituent.ID]float64{"FAT": 0.3})
	set(in, "FATRN", nutritionclaim.Figure{Most: math.NaN(), Unknown: []string{"An espresso"}})
	set(in, "FASAT", nutritionclaim.Figure{Most: math.NaN(), Unknown: []string{"An espresso"}})
	k := judged(t, in, "saturated fat free")
	assert.Equal(t, nutritionclaim.Allowed, k.Verdict, k.Why)
	assert.Contains(t, k.Why, "up to 0.45 g trans fat per reference amount of 360 ml, below 0.5")
	assert.Equal(t, nutritionclaim.NotAllowed, judged(t, drink("eu", 100, map[constituent.ID]float64{"FASAT": 0.2}), "saturated fat-free").Verdict)
}

// Of what cannot be said per 100 ml nothing is said.
func TestWithoutAVolume(t *testing.T) {
	in := drink("eu", 100, nil)
	in.Per100ml = nil
	k := judged(t, in, "low sugars")
	assert.Equal(t, nutritionclaim.Undecided, k.Verdict)
	assert.Equal(t, "the volume of the drink is not known", k.Why)
	assert.Equal(t, nutritionclaim.Allowed, judged(t, in, "sodium-free or salt-free").Verdict, "per 100 g")
}

// Of a strong drink no claim of eu is left; the strength decides, and so does where it may
// end. 1.2 % vol: Regulation (EC) No 1924/2006, Article 4(3).
func TestClaimsOfDrinksWithAlcohol(t *testing.T) {
	in := drink("eu", 100, nil)
	in.Strength = exactly(5)
	for _, k := range nutritionclaim.Judge(in) {
		assert.Equal(t, nutritionclaim.NotAllowed, k.Verdict, k.Name)
		assert.Contains(t, k.Why, "5 % vol alcohol in the drink, at most 1.2", k.Name)
	}
	in.Strength = nutritionclaim.Figure{Low: 1, Mean: 1.1, High: 1.4, Most: 1.4, Known: true}
	k := judged(t, in, "fat-free")
	assert.Equal(t, nutritionclaim.NotYet, k.Verdict)
	assert.Equal(t, "1.1 % vol alcohol in the drink, up to 1.4, at most 1.2; measure it", k.Why)
	in.Strength = exactly(0)
	assert.NotContains(t, judged(t, in, "fat-free").Why, "alcohol", "no reason to name it")
}

// Who may say more need not say less.
func TestStrongerClaims(t *testing.T) {
	in := drink("eu", 100, map[constituent.ID]float64{"SUGAR": 0.4})
	assert.True(t, judged(t, in, "low sugars").Implied)
	assert.False(t, judged(t, in, "sugars-free").Implied)
	us := drink("us", 360, map[constituent.ID]float64{"K": 945})
	good := judged(t, us, "good source of potassium")
	assert.Equal(t, nutritionclaim.NotAllowed, good.Verdict)
	assert.False(t, good.Near, "“high in potassium” is allowed")
}

func TestRulesWithoutClaims(t *testing.T) {
	for _, rules := range []string{"anz", "ca", "codex", "nobody"} {
		assert.Empty(t, nutritionclaim.Judge(drink(rules, 100, nil)), rules)
	}
}

// A number is printed with what its limit is worth, and what is too little for that is no 0.
func TestNumbersBesideTheirLimits(t *testing.T) {
	for want, amounts := range map[string]map[constituent.ID]float64{
		"<0.001 g fat per 100 ml, at most 0.5":              {"FAT": 1e-15},
		"0 g fat per 100 ml, at most 0.5":                   {},
		"0.111 g fat per 100 ml, at most 0.5":               {"FAT": 0.11144},
		"0.5 g fat per 100 ml, at most 0.5":                 {"FAT": 0.5},
		"0.50001 g fat per 100 ml, at most 0.5":             {"FAT": 0.50001},
		"1230 g fat per 100 ml, at most 0.5":                {"FAT": 1234.5},
		"<0.001 g added sugars per 100 ml, at most 0":       {"SUGAD": 1e-9},
		"149.99 mg potassium per 100 ml, at least 150 (7.5": {"K": 149.99},
	} {
		claim := "fat-free"
		for id := range amounts {
			claim = map[constituent.ID]string{"FAT": "fat-free", "SUGAD": "with no added sugars", "K": "source of potassium"}[id]
		}
		assert.Contains(t, judged(t, drink("eu", 100, amounts), claim).Why, want)
	}
}
