package recipe_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// house gives a coffee that borrows from a food of the core table, and what is said of its facts.
func house(t testing.TB, entry string) (p *food.Profile, said string) {
	t.Helper()
	r, err := find(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods:\n  a: {name: A, group: coffee bean, per: 100 g, source: \"s\", "+entry+"}\nbuild: [\"10 g own:a\", \"1 g own:a\"]\n")
	require.NoError(t, err)
	p = r.Lines[r.Drink.Build[0].Path].Profile
	var list []string
	for _, n := range p.Notes {
		if n.Kind == "coffee" {
			list = append(list, n.Text)
		}
	}
	return p, strings.Join(list, "\n")
}

const arabica = `fill: "core:coffee-roasted-arabica", `

// Belitz et al. 2009, table 21.6: chlorogenic acids of a dark roast 0.2 %, of a light one 2.7 %, in
// beans of 5.5 % water. Half way from a medium roast to a dark one lies half of their difference.
func TestARoastIsThatOfItsMassLost(t *testing.T) {
	of := func(entry string, id constituent.ID) float64 {
		p, _ := house(t, arabica+"coffee: {roast: {"+entry+"}}")
		return p.Cell(id).Amount * 1e5
	}
	medium, _ := house(t, arabica+"coffee: {origin: hill}")
	assert.InDelta(t, 0.2*945, of("called: dark", "CHLRAC"), 1)
	assert.InDelta(t, 2.7*945, of("called: light", "CHLRAC"), 1)
	assert.InDelta(t, 0.2*945, of("loss: 18.5 %", "CHLRAC"), 1)
	assert.InDelta(t, 0.2*945, of("loss: 24 %", "CHLRAC"), 1, "no darker than the darkest that was measured")
	assert.InDelta(t, 2.7*945, of("loss: 8 %", "CHLRAC"), 1)
	m := medium.Cell("CHLRAC").Amount * 1e5
	assert.InDelta(t, m, of("loss: 14.5 %", "CHLRAC"), 1e-6)
	assert.InDelta(t, (m+0.2*945)/2, of("loss: 16.5 %", "CHLRAC"), 1)
	for loss, before := 100, m*2; loss <= 200; loss++ { // darker is less, without a jump
		x := of("loss: "+decimal(loss), "CHLRAC")
		assert.LessOrEqual(t, x, before+1e-9)
		if loss > 100 {
			assert.Less(t, before-x, 60.0, "at %d", loss)
		}
		before = x
	}
	// Caffeine stays (Herawati et al. 2018): of 100 g that lose 20 g there is more in a gram than of
	// 100 g that lose 14.5 g.
	assert.InDelta(t, medium.Cell("CAFFN").Amount*1e5*85.5/80, of("loss: 20 %", "CAFFN"), 1e-6)
	assert.InDelta(t, medium.Cell("K").Amount, of("loss: 20 %", "K")/1e5, 1e-12, "a copy carries no difference")
	dark, said := house(t, arabica+"coffee: {roast: {loss: 18 %}}")
	assert.Contains(t, said, "roast, 18 % lost: borrows between core:coffee-roasted-arabica and core:coffee-roasted-arabica-dark")
	assert.Contains(t, said, "chlorogenic acids × 0.2")
	assert.NotContains(t, said, "potassium")
	assert.Equal(t, food.Borrowed, dark.Cell("CITAC").By)
	assert.NotEmpty(t, dark.Cell("CITAC").Source)
	assert.Equal(t, 1, strings.Count(said, "roast,"), "said once, however often it is poured")
}

func decimal(tenths int) string {
	return string(rune('0'+tenths/100)) + string(rune('0'+tenths/10%10)) + "." + string(rune('0'+tenths%10)) + " %"
}

// Streuli 1973, 43 green coffees: caffeine 1.857 % of robusta and 1.191 % of arabica, a factor of
// 1.56; a handbook prints 2.0 and 1.0 % of the roasted: 2.
func TestASpeciesBorrowsFromItsOwn(t *testing.T) {
	a, said := house(t, arabica+"coffee: {species: arabica}")
	assert.Contains(t, said, "species, arabica: changes no figure, since core:coffee-roasted-arabica is of it")
	r, said := house(t, arabica+"coffee: {species: robusta}")
	assert.Contains(t, said, "species, robusta: borrows from core:coffee-roasted-robusta in place of core:coffee-roasted-arabica: ")
	times := r.Cell("CAFFN").Amount / a.Cell("CAFFN").Amount
	assert.Greater(t, times, 1.5)
	assert.Less(t, times, 2.0)
	assert.Less(t, r.Cell("trigonelline").Amount, a.Cell("trigonelline").Amount)
	_, said = house(t, arabica+"coffee: {species: liberica}")
	assert.Contains(t, said, "species, liberica: no published effect on these figures: the core table has no bean of it")
	_, said = house(t, `fill: "core:lemon-juice", coffee: {species: robusta}`)
	assert.Contains(t, said, "no published effect on these figures, of which core:lemon-juice lends some")
	_, said = house(t, `values: {CAFFN: 1 g}, coffee: {roast: {loss: 14 %}}`)
	assert.Contains(t, said, "roast, 14 % lost: changes no figure, since nothing is borrowed; with fill: core:coffee-roasted-arabica it would")
}

// What nobody has published changes nothing, and says so with who looked.
func TestFactsWithoutAPublishedEffect(t *testing.T) {
	plain, _ := house(t, arabica+"coffee: {species: arabica}")
	p, said := house(t, arabica+"coffee: {process: natural, origin: a hill, altitude: 1900 m, roast: {colour: 65, scale: agtron gourmet}}")
	for _, fact := range []string{"process, natural", "origin, a hill", "altitude, 1900 m", "roast, agtron gourmet 65"} {
		assert.Contains(t, said, fact+": no published effect on these figures (")
	}
	for _, c := range constituent.All() {
		assert.Equal(t, plain.Cell(c.ID).Amount, p.Cell(c.ID).Amount, c.ID)
	}
}

// What a laboratory found stands in place of what is borrowed, with its own ±, and no law's
// tolerance; what nobody knows stays unknown.
func TestALaboratoryIsBelieved(t *testing.T) {
	p, said := house(t, arabica+`coffee: {lab: {values: {CAFFN: 1300 mg ± 30 mg, FAT: 16 g}, source: "report 7"}}`)
	assert.InDelta(t, 0.013, p.Cell("CAFFN").Amount, 1e-12)
	assert.InDelta(t, 0.0003/1.7320508, p.Cell("CAFFN").SD, 1e-9)
	assert.Empty(t, p.Cell("CAFFN").By)
	assert.InEpsilon(t, food.ClassSpread(constituent.Must("FAT"), "coffee bean")*0.16, p.Cell("FAT-other").SD, 1e-6)
	assert.Contains(t, said, "lab: in 100 g CAFFN 1300 mg, FAT 16 g, in place of what is borrowed (report 7)")
	assert.NotContains(t, said, "accepts")
	bare, _ := house(t, `coffee: {lab: {values: {CAFFN: 1300 mg}, source: "report 7"}}`)
	assert.False(t, bare.Cell("CITAC").Known)
	for entry, says := range map[string]string{
		`group: syrup, per: 100 g, fill: "core:honey", coffee: {origin: hill}`:                                                  `own food "a" has coffee: and is of no group of coffees (write group: coffee bean`,
		`group: coffee bean, per: 100 g, values: {CAFFN: 1 g}, coffee: {lab: {values: {CAFFN: 2 g}, source: "r"}}, source: "s"`: "is stated twice",
		`group: coffee bean, per: 100 g, coffee: {lab: {values: {CAFFN: 120 g}, source: "r"}}`:                                  "there is no food with more than 100",
	} {
		_, err := find(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods:\n  a: {name: A, "+entry+"}\nbuild: [\"10 g own:a\"]\n")
		assert.ErrorContains(t, err, says, entry)
	}
}
