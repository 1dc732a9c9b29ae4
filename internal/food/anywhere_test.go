package food_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
)

// byHand are spreads whose effect can be told by hand.
func byHand() *food.Anywhere {
	return food.AnywhereOf(embedded.Parse("anywhere.csv", strings.NewReader(`constituent,class,relative_sd,tail,foods,evidence
WATER,fruits,0.5,0.3,40,by hand
SUGAR,fruits,0.3,0.3,40,by hand
GLUS,fruits,0.4,0.3,40,by hand
FRUS,fruits,0.4,0.3,40,by hand
K,fruits,0.2,0.3,40,by hand
`)))
}

func melon() *food.Food {
	f := sr("x", "Melon", "fruit", map[constituent.ID]float64{"WATER": 91, "GLUS": 3, "FRUS": 4, "K": 200, "CA": 10, "PROCNT": 1})
	f.ID.Table = "sr"
	return f
}

// Another shop's melon has another potassium than one agency's sample, however many
// samples there were; of calcium nobody has compared tables here.
func TestAFoodOfTheNameVariesMoreThanTheSamplesOfOneSource(t *testing.T) {
	f := melon()
	stated(f, "K", 7, 20)
	p := byHand().Enter(f, nil)
	assert.InDelta(t, 0.2*200e-5, p.Cell("K").SD, 1e-9)
	assert.InDelta(t, 0.3, p.Cell("K").Tail, 1e-12)
	assert.Zero(t, p.Cell("CA").Tail)
	assert.InDelta(t, 0.1*food.ClassSpread(constituent.Must("CA"), "fruit")*1e-3, p.Cell("CA").SD, 1e-9)
	assert.InDelta(t, 0.5*(1-p.Cell("WATER").Amount), p.Cell("WATER").SD, 1e-9, "of water it is the solids that vary")

	stated(f, "K", 90, 20)
	cell := byHand().Enter(f, nil).Cell("K")
	assert.Greater(t, cell.SD, 90e-5*0.99, "samples further apart than foods of the name are believed")
	assert.Zero(t, cell.Tail)
}

// What a designer has weighed, or reads on a pack, is that food and no other.
func TestAFoodInHandIsNoFoodOfTheName(t *testing.T) {
	f := melon()
	f.ID.Table = food.Own
	assert.Zero(t, byHand().Enter(f, nil).Cell("K").Tail)
	f = melon()
	f.Chemical = true
	assert.Zero(t, byHand().Enter(f, nil).Cell("K").SD)
}

// A sweeter lot is sweeter in all its sugars: the interval of the sum is that of sugars, not
// of glucose and fructose each by itself, which would be √(0.4²·3² + 0.4²·4²) = 2 g of 7.
func TestATotalHasTheSpreadOfItsKind(t *testing.T) {
	p := byHand().Enter(melon(), nil)
	require.Len(t, p.Totals, 1)
	assert.Equal(t, constituent.Sugar, p.Totals[0].Constituent.ID)
	amount := p.Cell("SUGAR").Amount
	assert.InDelta(t, amount, p.Totals[0].Cell.Amount, 1e-12)
	assert.InDelta(t, 0.3*amount, p.Totals[0].Cell.SD, 1e-9)
}
