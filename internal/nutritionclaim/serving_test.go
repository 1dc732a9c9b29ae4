package nutritionclaim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/nutritionclaim"
)

// Claims of us that say "free" hold in the reference amount and in the labelled serving (21 CFR
// 101.60 to 101.62), claims that say "low" in the reference amount: 12 fl oz of a beverage,
// and 8 fl oz too of what may be a juice or a milk-based drink (21 CFR 101.12(b)).
func TestReferenceAmountsAndServings(t *testing.T) {
	per100 := func(in nutritionclaim.Input, id constituent.ID, x float64) { set(in, id, exactly(x*in.ServingMl/100)) }
	milk := nutritionclaim.Food{Name: "Milk", Group: "milk"}

	in := drink("us", 500, nil)
	per100(in, "SUGAR", 0.13) // 0.468 g in 360 ml, 0.65 g in 500 ml
	k := judged(t, in, "sugar free")
	assert.Equal(t, nutritionclaim.NotAllowed, k.Verdict)
	assert.Equal(t, "0.65 g sugars per serving of 500 ml, below 0.5", k.Why)

	in = drink("us", 120, nil)
	per100(in, "SUGAR", 0.15) // 0.18 g in 120 ml, 0.54 g in 360 ml
	k = judged(t, in, "sugar free")
	assert.Equal(t, nutritionclaim.NotAllowed, k.Verdict)
	assert.Equal(t, "0.54 g sugars per reference amount of 360 ml, below 0.5", k.Why)

	in = drink("us", 500, nil)
	per100(in, "FAT", 0.8) // 2.88 g in 360 ml, 4 g in 500 ml
	assert.Equal(t, nutritionclaim.Allowed, judged(t, in, "low fat").Verdict, "the serving does not count")

	in = drink("us", 200, nil)
	per100(in, "K", 150) // 540 mg in 360 ml, 360 mg in 240 ml; 10 % of 4700 mg are 470 mg
	assert.Equal(t, nutritionclaim.Allowed, judged(t, in, "good source of potassium").Verdict)
	in.Foods = append(in.Foods, milk)
	k = judged(t, in, "good source of potassium")
	assert.Equal(t, nutritionclaim.NotAllowed, k.Verdict, "it may be a milk-based drink")
	assert.Equal(t, "360 mg potassium per reference amount of 240 ml, at least 470 (10 % of 4700 mg)", k.Why)
	assert.Equal(t, "secondary", k.Status, "12 fl oz was read in a secondary source")
}

// A fluid ounce of us is 29.57 ml; the table of 21 CFR 101.12(b) writes 30 ml for it, 240 ml
// for 8 and 360 ml for 12.
func TestReferenceAmountsAreThoseOfTheTable(t *testing.T) {
	var ml []string
	for _, row := range table(t, "claim_servings.csv") {
		require.Contains(t, []string{"verified", "secondary"}, row["status"])
		ml = append(ml, row["ml"])
	}
	assert.Equal(t, []string{"360", "240", "240"}, ml)
}

// What must stand with a claim stands with it, and only where it must.
func TestDisclosures(t *testing.T) {
	none := drink("eu", 100, nil)
	assert.Empty(t, judged(t, none, "with no added sugars").Disclosure)
	fruit := drink("eu", 100, map[constituent.ID]float64{"SUGAR": 3})
	assert.Equal(t, "“contains naturally occurring sugars”", judged(t, fruit, "with no added sugars").Disclosure)
	light := drink("us", 360, map[constituent.ID]float64{"ENERC_KCAL": 40})
	assert.Empty(t, judged(t, light, "sugar free").Disclosure)
	rich := drink("us", 360, map[constituent.ID]float64{"ENERC_KCAL": 41})
	assert.Equal(t, "“not a low calorie food”", judged(t, rich, "sugar free").Disclosure)
	assert.Contains(t, judged(t, rich, "no added sugar").Why, "if the food that it stands for normally has added sugars")
}

// Of several amounts on which a claim holds, that which is nearest to its limit is told.
func TestTheTightestAmountIsTold(t *testing.T) {
	for ml, want := range map[float64]string{500: "2 mg sodium per serving of 500 ml, below 5", 120: "2 mg sodium per reference amount of 360 ml, below 5"} {
		in := drink("us", ml, nil)
		set(in, "NA", exactly(2*ml/max(ml, 360)))
		assert.Equal(t, want, judged(t, in, "sodium free").Why)
	}
	in := drink("us", 240, map[constituent.ID]float64{"K": 960}, nutritionclaim.Food{Name: "Milk", Group: "milk"})
	assert.Equal(t, "960 mg potassium per reference amount of 240 ml, at least 940 (20 % of 4700 mg)", judged(t, in, "high in potassium").Why)
}
