package label_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// Energy of the European Union: the factors are those of Annex XIV of Regulation
// (EU) No 1169/2011; the sums are arithmetic on them.
func TestEnergyEU(t *testing.T) {
	for _, c := range []struct {
		what    string
		amounts map[constituent.ID]float64
		kj      float64
		kcal    float64
		printed string
	}{
		{"carbohydrate 8.5 g, citric acid 0.6 g: two sums, not 35.8 kcal times 4.184", map[constituent.ID]float64{"CHOAVL": 8.5, "OA": 0.6}, 152.3, 35.8, "152 kJ / 36 kcal"},
		{"10 % vol: ethanol 7.89 g, carbohydrate 9 g, citric acid 0.4 g", map[constituent.ID]float64{"ALC": 7.89, "CHOAVL": 9, "OA": 0.4}, 387.01, 92.43, "387 kJ / 92 kcal"},
		{"xylitol 2 g, erythritol 3 g, citric acid 0.5 g, fibre 1 g", map[constituent.ID]float64{"POLYL": 5, "XYLTL": 2000, "ERYTHL": 3000, "OA": 0.5, "FIBTG": 1}, 34.5, 8.3, "35 kJ / 8 kcal"},
		{"whole milk of 3.3 g fat, 4.8 g carbohydrate, 3.2 g protein", map[constituent.ID]float64{"FAT": 3.3, "CHOAVL": 4.8, "PROCNT": 3.2}, 258.1, 61.7, "258 kJ / 62 kcal"},
		{"nothing", nil, 0, 0, "0 kJ / 0 kcal"},
	} {
		cell := row(t, card(t, "eu", facts(100, c.amounts)), "energy").Per100ml
		assert.InDelta(t, c.kj, *cell.Value, 1e-9, c.what)
		assert.InDelta(t, c.kcal, *cell.Kcal, 1e-9, c.what)
		assert.Equal(t, c.printed, cell.Printed, c.what)
	}
}

// A panel published in Australia with Standard 1.2.8, whose general factors are
// the same: protein 3.6 g, fat 1.7 g, carbohydrate 31.0 g and fibre 6.1 g make
// 61.2 + 62.9 + 527 + 48.8 = 699.9 kJ, printed as 700 kJ.
func TestEnergyOfAPublishedPanel(t *testing.T) {
	cell := row(t, card(t, "eu", facts(100, map[constituent.ID]float64{"PROCNT": 3.6, "FAT": 1.7, "CHOAVL": 31, "FIBTG": 6.1})), "energy").Serving
	assert.InDelta(t, 699.9, *cell.Value, 1e-9)
	assert.True(t, strings.HasPrefix(cell.Printed, "700 kJ"), cell.Printed)
}

// Method (C) of 21 CFR 101.9(c)(1)(i).
func TestCaloriesUS(t *testing.T) {
	for _, c := range []struct {
		what    string
		amounts map[constituent.ID]float64
		want    float64
	}{
		{"4, 4, 9", map[constituent.ID]float64{"PROCNT": 3, "CHOCDF": 37, "FAT": 8}, 232},
		{"fibre at 2 inside carbohydrate", map[constituent.ID]float64{"CHOCDF": 10, "FIBTG": 4}, 32},
		{"organic acids stay in carbohydrate", map[constituent.ID]float64{"CHOCDF": 10, "OA": 1}, 40},
		{"sorbitol at 2.6, erythritol at 0", map[constituent.ID]float64{"CHOCDF": 10, "POLYL": 6, "SORTL": 2000, "ERYTHL": 4000}, 4*4 + 2*2.6},
	} {
		assert.InDelta(t, c.want, *row(t, card(t, "us", facts(0, c.amounts)), "calories").Serving.Value, 1e-9, c.what)
	}
	// FDA, final guidance of 19 October 2020 (85 FR 66217): 0.4 kcal/g, in total carbohydrate
	// and not in total sugars.
	allulose := card(t, "us", facts(0, map[constituent.ID]float64{"CHOCDF": 12, "SUGAR": 12, "allulose": 10}))
	assert.InDelta(t, 2*4+10*0.4, *row(t, allulose, "calories").Serving.Value, 1e-9)
	assert.InDelta(t, 2, *row(t, allulose, "sugars").Serving.Value, 1e-9)
	f := facts(0, map[constituent.ID]float64{"CHOCDF": 10})
	delete(f.Serving, "SORTL")
	assert.NotContains(t, notes(card(t, "us", f)), "calories", "an unknown part of a known carbohydrate counts as carbohydrate")
}
