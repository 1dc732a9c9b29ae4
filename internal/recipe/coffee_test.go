package recipe_test

import (
	"math"
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
	p, said := house(t, arabica+"coffee: {species: liberica}")
	assert.Contains(t, said, "species, liberica: nothing of it is in the core table, no bean and no other figure; those of arabica (core:coffee-roasted-arabica) are taken in its place, as unsure as from arabica to robusta")
	assert.Equal(t, a.Cell("CAFFN").Amount, p.Cell("CAFFN").Amount)
	one := a.Cell("CAFFN").Amount // no one of them likelier: rectangular from arabica to robusta
	assert.InEpsilon(t, math.Hypot(a.Cell("CAFFN").SD, (r.Cell("CAFFN").Amount-one)/math.Sqrt(3)), p.Cell("CAFFN").SD, 1e-6)
	dark, _ := house(t, arabica+"coffee: {species: liberica, roast: {called: dark}}")
	plain, _ := house(t, arabica+"coffee: {roast: {called: dark}}")
	assert.Equal(t, plain.Cell("CAFFN").Amount, dark.Cell("CAFFN").Amount)
	assert.Greater(t, dark.Cell("CAFFN").SD, 2*plain.Cell("CAFFN").SD)
	_, said = house(t, `fill: "core:espresso", coffee: {species: liberica}`)
	assert.Contains(t, said, "no espresso and no other figure; those of arabica (core:espresso) are taken in its place")
	assert.NotContains(t, said, "as unsure")
	_, said = house(t, `fill: "core:lemon-juice", coffee: {species: robusta}`)
	assert.Contains(t, said, "no published effect on these figures, of which core:lemon-juice lends some")
	_, said = house(t, `values: {CAFFN: 1 g}, coffee: {roast: {loss: 14 %}}`)
	assert.Contains(t, said, "roast, 14 % lost: changes no figure, since nothing is borrowed; with fill: core:coffee-roasted-arabica it would")
}

// Belitz et al. 2009, table 21.6: chlorogenic acids 2.7 % of a light roast, 0.2 % of a dark one. A colour
// number alone says neither, so that 90 % of the draws reach both; a word beside it is heard.
func TestAColourAloneMayBeAnyRoast(t *testing.T) {
	plain, _ := house(t, arabica+"coffee: {origin: hill}")
	for _, roast := range []string{"colour: 45, scale: agtron gourmet", "colour: 22, scale: CIE L*"} {
		p, said := house(t, arabica+"coffee: {roast: {"+roast+"}}")
		x := p.Cell("CHLRAC")
		assert.Equal(t, plain.Cell("CHLRAC").Amount, x.Amount)
		const ninety = 1.645
		assert.Less(t, x.Amount-ninety*x.SD, 0.002*0.945+0.001, "to the dark roast")
		assert.Greater(t, x.Amount+ninety*x.SD, 0.027*0.945-0.004, "to the light roast")
		assert.Greater(t, p.Cell("CAFFN").SD, plain.Cell("CAFFN").SD)
		assert.Equal(t, plain.Cell("K").SD, p.Cell("K").SD, "a copy carries no difference")
		assert.Contains(t, said, "which may be of any roast: they stay those of core:coffee-roasted-arabica, and each is as unsure as from a light to a dark roast; the mass that it lost or a word would tell")
	}
	for _, beside := range []string{"called: dark", "loss: 16 %"} {
		p, said := house(t, arabica+"coffee: {roast: {colour: 45, scale: agtron gourmet, "+beside+"}}")
		word, _ := house(t, arabica+"coffee: {roast: {"+beside+"}}")
		for _, c := range constituent.All() {
			assert.Equal(t, word.Cell(c.ID).Amount, p.Cell(c.ID).Amount, c.ID)
			assert.Equal(t, word.Cell(c.ID).SD, p.Cell(c.ID).SD, c.ID)
		}
		assert.Contains(t, said, "roast, agtron gourmet 45: changes no figure beside what else is said of the roast (")
	}
	dark, said := house(t, `fill: "core:coffee-roasted-arabica-dark", coffee: {roast: {colour: 45, scale: agtron gourmet}}`)
	assert.InDelta(t, 0.002*0.945, dark.Cell("CHLRAC").Amount, 1e-5)
	assert.Contains(t, said, "they are those of a dark roast, as core:coffee-roasted-arabica-dark is")
}

// A roastery's rule of thumb has dark roasts lose 17 to 20 % and light ones 11 to 13 %: what lost more
// or less is as the nearest of these, its caffeine too.
func TestNoRoastBeyondThePublished(t *testing.T) {
	medium, _ := house(t, arabica+"coffee: {origin: hill}")
	for loss, nearest := range map[string]float64{"35": 20, "21": 20, "9": 11} {
		p, said := house(t, arabica+"coffee: {roast: {loss: "+loss+" %}}")
		assert.InEpsilon(t, medium.Cell("CAFFN").Amount*85.5/(100-nearest), p.Cell("CAFFN").Amount, 1e-3, loss)
		assert.Contains(t, said, "no roast is published that lost more than 20 or less than 11 %, and its figures are those of the nearest")
	}
	_, said := house(t, arabica+"coffee: {roast: {loss: 19.5 %}}")
	assert.NotContains(t, said, "nearest")
}

// Sanchez 2017: 13 to 23 mg/g of caffeine in ground coffees. What is over that is told, and what is
// over twice of it is a slip: 39 g for 39 mg, or of a gram for of 100 g.
func TestAFigureOverAllThatIsPublished(t *testing.T) {
	_, said := house(t, arabica+`coffee: {lab: {values: {CAFFN: 2300 mg}, source: "r"}}`)
	assert.NotContains(t, said, "published of a coffee bean")
	_, said = house(t, arabica+`coffee: {lab: {values: {CAFFN: 2.5 g}, source: "r"}}`)
	assert.Contains(t, said, "CAFFN 2.5 g makes 2500 mg in 100 g, and the most that is published of a coffee bean is 2300 (")
	assert.Contains(t, said, "check it before you rely on it")
	for _, entry := range []string{`coffee: {lab: {values: {CAFFN: 39 g}, source: r}}`, `values: {CAFFN: 39 g}, source: r, coffee: {origin: hill}`} {
		_, err := find(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods:\n  a: {name: A, group: coffee bean, per: 100 g, "+entry+"}\nbuild: [\"10 g own:a\"]\n")
		assert.ErrorContains(t, err, `own food "a": CAFFN 39 g makes 39000 mg in 100 g, and the most that is published of a coffee bean is 2300`)
		assert.ErrorContains(t, err, "check the figure, its unit and per:")
	}
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
	assert.Contains(t, said, "lab: in 100 g caffeine (CAFFN) 1300 mg, fat (FAT) 16 g, in place of what is borrowed (report 7)")
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
