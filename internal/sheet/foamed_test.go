package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

func foamsOf(t *testing.T, step string) []sheet.Foam {
	t.Helper()
	return sheet.FoamsOf(reporttest.Read(t, `drink: "Foamed"
serves: 1
components:
  veil:
    ingredients: [200 g core:cream-light, 20 g core:sugar-white]
    steps: [`+step+`]
build: [100 g core:water-pure, 20 g veil]
`).Assay)
}

// Light cream has some 19 % of fat (SR28 01050), less with sugar, where McGee 2004 has 30 % as the least that whips.
func TestAFoamIsToldBesideItsConditions(t *testing.T) {
	list := foamsOf(t, "foam: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C, overrun: 150 %}")
	require.Len(t, list, 1)
	f := list[0]
	assert.Equal(t, "foam of veil", f.Name)
	var names []string
	for _, r := range f.Rows {
		names = append(names, r.Name)
	}
	assert.Equal(t, []string{
		"nitrous oxide, charged", "  in the liquid, closed", "  above it", "pressure above the air's", "as liquid",
		"overrun, as read", "  liquid, by volume", "  as foam", "  density as foam",
	}, names)
	require.NotEmpty(t, f.Conditions)
	assert.Regexp(t, `^cream, fat 1\d(\.\d)?.g/100 g \(.*\), outside 30.g/100 g and more \(cream whips`, f.Conditions[0].Text)
	assert.Contains(t, f.Conditions[0].Source, "McGee 2004")
	assert.Equal(t, "No published range was found for protein of cream, pH of cream and alcohol of cream.", f.NoRange)
}

// 0.1 g of nitrous oxide are 52 ml of gas at 4 °C (8.314 J/(mol K) · 277.15 K · 2.27 mmol / 101,325 Pa): no foam of six times
// 220 ml is of that alone. It is said where the overrun stands, and not of 8 g, which are 4.1 l.
func TestAFoamOfMoreGasThanChargedIsRemarkedOn(t *testing.T) {
	const siphon = "N2O, bottle: 0.7 l, at: 4 °C, overrun: 500 %}"
	assert.Contains(t, foamsOf(t, "foam: {charge: 0.1 g, gas: "+siphon)[0].Remark, "air is in it, or the reading is off")
	assert.Empty(t, foamsOf(t, "foam: {charge: 8 g, gas: "+siphon)[0].Remark)
	assert.Empty(t, foamsOf(t, "foam: {overrun: 500 %}")[0].Remark)
}

// What nobody stated is not known, and is no row.
func TestAFoamIsToldWithoutWhatNobodyStated(t *testing.T) {
	list := foamsOf(t, "foam: {charge: 8 g, gas: N2O}")
	require.Len(t, list, 1)
	require.Len(t, list[0].Rows, 2)
	texts := ""
	for _, c := range list[0].Conditions {
		texts += c.Text + "\n"
	}
	assert.Contains(t, texts, "cream, temperature not known (nobody states how cold it is: at: … °C); published: up to 10")
	assert.Contains(t, texts, "cream, overrun not known (nobody read it); published: 100 to 300")
	none := sheet.FoamsOf(reporttest.Read(t, "drink: Bare\nserves: 3\nbuild: [300 g core:apple-juice]\nfinish: [foam: {overrun: 20 %}]\n").Assay)
	require.Len(t, none, 1)
	assert.Equal(t, "foam of the drink, all 3 servings", none[0].Name)
	assert.Empty(t, none[0].Conditions)
	assert.Contains(t, none[0].NoRange, "No food in it is one of whose foams")
	assert.Empty(t, foamsOf(t, "cool: {to: 4 °C}"))
}
