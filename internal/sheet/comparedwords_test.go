package sheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/sheet"
)

func textsOf(c *sheet.Compared) string {
	var list []string
	for _, w := range c.Words() {
		list = append(list, w.Text)
	}
	return strings.Join(list, "\n")
}

const water = "100.00 g ± 0.01 g core:water-pure, "

// A judge tastes a mouthful, and a glass holds sugars: of as much lactose in half the sucrose's place a
// drink is less sweet and holds as many sugars; of as much sucrose in half the water it is sweeter.
func TestSweetnessIsNotGramsOfSugar(t *testing.T) {
	sweet := "build: [" + water + "10.00 g ± 0.01 g core:sucrose]"
	larger := textsOf(compared(t, sweet, "build: ["+water+water+"12.00 g ± 0.01 g core:sucrose]"))
	assert.Contains(t, larger, "less sweet by ")
	assert.Contains(t, larger, " as sucrose in 100 ml")
	assert.Contains(t, larger, "a serving has 2.00 g more sugars")
	assert.NotContains(t, larger, "of sugars")
}

// A judge may notice what reaches the least of what is published, 20.5 % of what is sweet (npj Sci Food
// 2022, 6:33), and surely notices what is beyond the most of it, 33 %.
func TestHowSurelyAJudgeNotices(t *testing.T) {
	for more, want := range map[string]string{"11.00": ", less than a judge notices", "13.00": ", which a judge may notice", "16.00": ", which a judge surely notices"} {
		c := compared(t, "build: ["+water+"10.00 g ± 0.01 g core:sucrose]", "build: ["+water+more+" g ± 0.01 g core:sucrose]")
		assert.Contains(t, c.Words()[0].Text, want, more)
	}
	c := compared(t, "build: ["+water+"16.00 g ± 0.01 g core:sucrose]", "build: ["+water+"10.00 g ± 0.01 g core:sucrose]")
	assert.Equal(t, contrast.Surely, c.Sweet.Notice, "and the other way")
}

// Of citric and malic acid, a gram each, a burette finds as much within a tenth (5.2 and 7.5 mmol of
// molecules, 15.6 and 14.9 mmol of protons); there are 43 % more molecules of the malic acid, and both
// stand on the page with the pH, which is surely higher.
func TestTheFieldDisputesWhatIsSour(t *testing.T) {
	with := func(acid string) string {
		return "build: [" + water + "6.00 g ± 0.01 g core:sucrose, 1.00 g ± 0.01 g core:" + acid + "]"
	}
	c := compared(t, with("citric-acid"), with("malic-acid"))
	assert.Contains(t, textsOf(c), "mmol/l more acid molecules")
	assert.Contains(t, textsOf(c), "the field disputes which a tongue follows")
	rows := map[string]bool{}
	for _, b := range c.Leaf().Blocks {
		if b.Grid != nil {
			for _, r := range b.Grid.Rows {
				rows[r.Label] = true
			}
		}
	}
	assert.True(t, rows["acid molecules"])
	assert.True(t, rows["pH at 25 °C"])
}

// What is too little for anybody to ask of in either drink is hardly a difference: 0.05 g of fat in 100 ml.
func TestWhatNobodyAsksForIsHardlyADifference(t *testing.T) {
	c := compared(t, "build: ["+water+"1.00 g ± 0.01 g core:milk-whole]", "build: ["+water+"2.00 g ± 0.01 g core:milk-whole]")
	hardly := map[constituent.ID]bool{}
	for _, f := range c.Told().Hardly {
		hardly[f.Constituent.ID] = true
	}
	require.NotEmpty(t, hardly)
	assert.True(t, hardly[constituent.Fat])
	assert.NotContains(t, textsOf(c), "fat")
}

// A pH that is withheld goes neither way: of sweetened water the water decides, and nothing is said of it.
func TestAWithheldPHIsNotCompared(t *testing.T) {
	acid, open := "build: [100 g core:lemon-juice]", "build: [100 g core:water-pure, 10 g core:sugar-white]"
	for _, pair := range [][2]string{{acid, open}, {open, acid}} {
		text := textsOf(compared(t, pair[0], pair[1]))
		assert.NotContains(t, text, "NaN")
		assert.NotContains(t, text, "pH")
	}
}
