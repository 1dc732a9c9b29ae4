package data_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// annexII lists core foods by name under the point of Regulation (EU) No
// 1169/2011, Annex II, that names their allergen, written from the regulation; the
// leaf code is that of data/allergens.csv. Coconut is no tree nut there: it was one
// in the list of the US Food and Drug Administration until January 2025.
var annexII = []struct{ point, leaf, foods string }{
	{"1 cereals containing gluten: wheat", "wheat", "wheat-flour"},
	{"1 cereals containing gluten: rye", "rye", "rye-flour"},
	{"1 cereals containing gluten: barley", "barley", "barley-pearl barley-hulled barley-malt-flour malt-syrup malt-drink beer beer-light beer-dark beer-stout beer-alcohol-free barley-tea"},
	{"1 cereals containing gluten: oats", "oats", "oats oat-bran oat-drink"},
	{"3 eggs and products thereof", "egg", "egg-whole egg-white egg-yolk egg-white-pasteurised egg-yolk-pasteurised egg-white-dried egg-yolk-dried egg-quail egg-duck eggnog"},
	{"5 peanuts and products thereof", "peanut", "peanut peanut-butter"},
	{"6 soybeans and products thereof", "soya", "soya-drink soya-drink-sweetened soya-drink-plain soybean tofu-soft kinako miso lecithin-soya"},
	{"7 milk and products thereof (including lactose)", "cow milk", "milk-whole milk-reduced milk-lowfat milk-skim milk-evaporated milk-condensed milk-powder-whole milk-powder-skim milk-chocolate-drink " +
		"cream-half cream-light cream-whipping cream-heavy cream-pressurised butter-unsalted butter-salted ghee buttermilk buttermilk-whole buttermilk-dried kefir yogurt-whole yogurt-lowfat yogurt-skim yogurt-strained-skim " +
		"yogurt-strained-whole yogurt-strained-lowfat sour-cream sour-cream-light cream-cheese ricotta cottage-cheese quark-skim mascarpone whey-acid whey-sweet whey-acid-dried whey-sweet-dried lactose-monohydrate chocolate-milk-bar " +
		"chocolate-white ice-cream-vanilla ice-cream-chocolate coffee-cream-liqueur"},
	{"7 milk and products thereof", "goat milk", "milk-goat"},
	{"7 milk and products thereof", "sheep milk", "milk-sheep"},
	{"7 milk and products thereof", "buffalo milk", "milk-buffalo"},
	{"8 nuts: almonds", "almond", "almond almond-blanched almond-paste almond-butter almond-drink almond-drink-sweetened almond-drink-calcium almond-oil"},
	{"8 nuts: hazelnuts", "hazelnut", "hazelnut hazelnut-blanched hazelnut-oil chocolate-hazelnut-spread"},
	{"8 nuts: walnuts", "walnut", "walnut walnut-black walnut-oil"},
	{"8 nuts: cashews", "cashew", "cashew cashew-butter"},
	{"8 nuts: pecan nuts", "pecan", "pecan"},
	{"8 nuts: Brazil nuts", "brazil nut", "brazil-nut"},
	{"8 nuts: pistachio nuts", "pistachio", "pistachio"},
	{"8 nuts: macadamia nuts", "macadamia", "macadamia"},
	{"9 celery and products thereof", "celery", "celery celery-juice celeriac celery-seed"},
	{"10 mustard and products thereof", "mustard", "mustard-seed mustard-prepared"},
	{"11 sesame seeds and products thereof", "sesame", "sesame-seed sesame-seed-hulled sesame-oil tahini"},
	{"12 sulphur dioxide and sulphites", "sulphites", "wine-red wine-white wine-rose sodium-metabisulphite apple-dried apricot-dried peach-dried pear-dried raisin-golden"},
	{"13 lupin and products thereof", "lupin", "lupin-seed"},
	{"not in Annex II; US list until 2025", "coconut", "coconut-milk coconut-cream coconut-drink coconut-milk-fresh coconut-flesh coconut-oil"},
}

// notInAnnexII are foods that their name might put there.
var notInAnnexII = strings.Fields("coconut-water buckwheat-roasted nutmeg water-pure cream-of-tartar cocoa-butter rice-drink sugar-white espresso black-tea lemon-juice poppy-seed chickpea maize-starch cider-dry")

func TestAllergensByName(t *testing.T) {
	foods := byKey(t, "core/foods.csv", "code")
	marked := map[string][]string{}
	for _, m := range rows(t, "core/marks.csv") {
		if m["kind"] == "allergen" {
			marked[m["code"]] = append(marked[m["code"]], m["value"])
		}
	}
	named := 0
	for _, a := range annexII {
		for code := range strings.FieldsSeq(a.foods) {
			require.Contains(t, foods, code)
			named++
			assert.Contains(t, marked[code], a.leaf, "%s: Annex II, point %s", code, a.point)
		}
	}
	assert.GreaterOrEqual(t, named, 80)
	t.Logf("%d foods by name", named)
	inside := []string{"gluten", "wheat", "rye", "barley", "oats", "egg", "fish", "crustacean", "mollusc", "peanut", "soya", "cow milk", "almond", "hazelnut", "walnut", "cashew", "pecan", "brazil nut", "pistachio", "macadamia", "celery", "mustard", "sesame", "lupin"}
	for _, code := range notInAnnexII {
		require.Contains(t, foods, code)
		for _, leaf := range marked[code] {
			assert.False(t, slices.Contains(inside, leaf), "%s is marked %s", code, leaf)
		}
	}
}
