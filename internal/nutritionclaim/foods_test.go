package nutritionclaim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/nutritionclaim"
)

// Regulation (EC) No 1924/2006, annex: no added mono- or disaccharides, and no other food used
// for its sweetening properties. 21 CFR 101.60(c)(2): nor concentrated fruit juice.
func TestFoodsThatSweeten(t *testing.T) {
	none := []constituent.ID{"SUGAR"}
	for _, c := range []struct {
		food nutritionclaim.Food
		want nutritionclaim.Verdict
	}{
		{nutritionclaim.Food{Name: "Sugar, white", Group: "sugar"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Date syrup", Group: "syrup"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Date syrup"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Honey", Group: "honey"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Date, dried", Group: "fruit"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Raisin, golden, sulphured", Group: "fruit"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Apple juice concentrate", Group: "fruit juice"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Sour cherry juice", Group: "fruit juice", Reduced: true}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Sour cherry juice", Group: "fruit juice"}, nutritionclaim.Undecided},
		{nutritionclaim.Food{Name: "Nectarine", Group: "fruit"}, nutritionclaim.Undecided},
		{nutritionclaim.Food{Name: "Lemon juice, bottled, from concentrate", Group: "citrus juice"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Orange juice, fresh", Group: "citrus juice"}, nutritionclaim.Undecided},
		{nutritionclaim.Food{Name: "Orange peel", Group: "citrus fruit"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Melon, honeydew", Group: "vegetable"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Erythritol", Group: "sugar", Lacks: none}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Zero syrup", Group: "syrup", Lacks: none}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Oat drink, unsweetened", Group: "plant drink"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Whole milk", Group: "milk"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Espresso", Group: "coffee drink"}, nutritionclaim.Allowed},
	} {
		for rules, claim := range map[string]string{"eu": "with no added sugars", "us": "no added sugar"} {
			k := judged(t, drink(rules, 240, map[constituent.ID]float64{"SUGAR": 5}, c.food), claim)
			assert.Equal(t, c.want, k.Verdict, "%s: %s: %s", rules, c.food.Name, k.Why)
			if c.want != nutritionclaim.Allowed {
				assert.Contains(t, k.Why, c.food.Name)
			}
		}
	}
}

// Regulation (EU) No 1047/2012: no added sodium, nor ingredients to which it was added.
func TestFoodsThatSalt(t *testing.T) {
	for _, c := range []struct {
		food nutritionclaim.Food
		want nutritionclaim.Verdict
	}{
		{nutritionclaim.Food{Name: "Trisodium citrate dihydrate", Group: "salt"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Potassium chloride", Group: "salt", Lacks: []constituent.ID{"NA"}}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Soy sauce", Group: "other"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Olive brine"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Tomato juice, without salt", Group: "vegetable juice"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Tomato juice", Group: "vegetable juice"}, nutritionclaim.Undecided},
		{nutritionclaim.Food{Name: "Almond butter, salted", Group: "nut"}, nutritionclaim.NotAllowed},
		{nutritionclaim.Food{Name: "Peanut butter, smooth", Group: "legume"}, nutritionclaim.Undecided},
		{nutritionclaim.Food{Name: "Olive oil", Group: "oil"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "Carrot", Group: "vegetable"}, nutritionclaim.Allowed},
		{nutritionclaim.Food{Name: "A pack"}, nutritionclaim.Undecided},
		{nutritionclaim.Food{Name: "Milk, whole", Group: "milk"}, nutritionclaim.Allowed},
	} {
		k := judged(t, drink("eu", 100, map[constituent.ID]float64{"NA": 40}, c.food), "no added sodium/salt")
		assert.Equal(t, c.want, k.Verdict, "%s: %s", c.food.Name, k.Why)
	}
}

// 21 CFR 101.60(c)(1)(ii) and 101.62(b)(1)(ii): a sugar or a fat is lawful in what is free of
// them by figures, if the list of ingredients marks it.
func TestNamedIngredients(t *testing.T) {
	syrup := nutritionclaim.Food{Name: "Maple syrup", Group: "syrup"}
	in := drink("us", 360, map[constituent.ID]float64{"SUGAR": 0.3}, syrup, nutritionclaim.Food{Name: "Coconut oil", Group: "oil"})
	k := judged(t, in, "sugar free")
	assert.Equal(t, nutritionclaim.Allowed, k.Verdict)
	assert.Equal(t, "an asterisk on Maple syrup in the ingredient list: “adds a trivial amount of sugar”", k.Disclosure)
	assert.Equal(t, "an asterisk on Coconut oil in the ingredient list: “adds a trivial amount of fat”", judged(t, in, "fat free").Disclosure)
	in = drink("us", 360, nil)
	assert.Empty(t, judged(t, in, "sugar free").Disclosure)
}
