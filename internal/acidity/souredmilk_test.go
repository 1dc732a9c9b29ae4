package acidity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Yogurt holds 0.7 g of lactic acid in 100 g (STFCJ 2020, food 13025), without fat 0.9 g (food
// 13054), and reads pH 4.15, 4.0 to 4.3 (data/core/literature.csv: tooth-jp, dental-drinks). Milk
// with as much reads so within 0.3: its protein, colloidal phosphate, citrate and dissolved
// phosphate take up what makes lactate of two thirds of it. Yogurt may hold more solids than milk.
func TestSouredMilkReadsAsYogurtDoes(t *testing.T) {
	foods := assaytest.Core(t)
	lactic := foods[food.ID{Table: "core", Code: "lactic-acid"}]
	for code, acid := range map[string]float64{"milk-whole": 0.7, "milk-skim": 0.9} {
		milk := foods[food.ID{Table: "core", Code: code}]
		b := assaytest.NewBench(200, milk, lactic)
		pot := b.Pot(100-acid, milk)
		pot.Join(b.Pot(acid, lactic))
		read := estimate.Summarise(pHOf(t, b, pot))
		t.Logf("%s and %g %% of lactic acid: pH %.2f (%.2f to %.2f)", code, acid, read.Mean, read.Low, read.High)
		assert.InDelta(t, 4.15, read.Mean, 0.3)
	}
}
