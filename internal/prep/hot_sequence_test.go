package prep_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// stove is a kitchen that can be asked for acidity, and doses one of its foods.
type stove struct {
	kitchen
	lab    *acidity.Laboratory
	dosed  int
	weighs *ledger.Pot // what was weighed in
	brings map[food.ID]*food.Profile
}

func (s stove) Amount(a unit.Amount, _ string) []float64 { return even(a.Base()) }
func (s stove) Quantity(q drink.Quantity, factor float64, _ string) []float64 {
	return even(q.Number * factor)
}
func (s stove) Pour(*ledger.Pot, []drink.Line) {}
func (s stove) Drawn(f *food.Food) (*food.Profile, ledger.Cells) {
	return s.brings[f.ID], s.drawer.PerGram(s.brings[f.ID])
}
func (s stove) Volume(pot *ledger.Pot) []float64    { return s.lab.Gauge.Volume(pot) }
func (s stove) Refracted(pot *ledger.Pot) []float64 { return s.lab.Gauge.Refracted(pot) }
func (s stove) Hold([]drink.Stated) error           { return nil }
func (s stove) Laboratory() *acidity.Laboratory     { return s.lab }
func (s stove) Surely() acidity.Surely              { return acidity.Surely{PH: true} } // as if a meter had read it
func (s stove) Doser(drink.Line) (func(*ledger.Pot, []float64), string) {
	return func(pot *ledger.Pot, grams []float64) { s.dose(pot, grams) }, s.profiles[s.dosed].Food.ID.Code
}
func (s stove) Weigh(pot *ledger.Pot, _ drink.Line, grams []float64) {
	s.dose(pot, grams)
	s.dose(s.weighs, grams)
}
func (s stove) dose(pot *ledger.Pot, grams []float64) {
	p := s.profiles[s.dosed]
	pot.Pour(p, s.drawer.PerGram(p), grams, "dose")
}

// hotSteps are steps that need to know how sour the pot is, with figures to be drawn.
var hotSteps = []string{
	"adjust: {ph: %.2f, with: x}|2|5", "adjust: {ta: %.2f g/100 g, with: x}|0.1|3", "adjust: {brix: %.1f, with: x}|1|60",
	"heat: {at: %.0f °C, for: 10 min}|20|105", "heat: {at: 90 °C, for: %.0f min}|0|200",
	"reduce: {by: %.0f %%}|0|60", "reduce: {by: %.0f %%, at: 100 °C, for: 20 min}|0|60", "caramelise: {loss: %.0f %%}|0|90", "caramelise: {to: %.0f g}|20|300",
}

// Whatever pot is adjusted, heated, reduced or burnt, in whatever order: nothing appears and
// nothing vanishes in any draw, and a step that is refused has changed nothing.
func TestStepsThatAskForAcidityKeepMassAndParents(t *testing.T) {
	const sequences, steps = 150, 5
	k := newKitchen()
	brings := map[food.ID]*food.Profile{}
	for _, f := range []*food.Food{prep.BurntSugarAcids(), prep.PureWater()} {
		brings[f.ID] = food.Enter(f, nil)
	}
	r, possible, times := rand.New(rand.NewPCG(3, 9)), 0, map[string]int{}
	for sequence := range sequences {
		ens := estimate.Ensemble{Seed: uint64(sequence), N: few}
		pot := ledger.New(k.columns, few)
		for _, p := range []int{1, 2, 5, 6} { // juice, sugar, lemon, water
			k.pour(pot, p, 100*r.Float64())
		}
		for range steps {
			form := strings.Split(hotSteps[r.IntN(len(hotSteps))], "|")
			var low, high float64
			_, err := fmt.Sscan(form[1]+" "+form[2], &low, &high)
			require.NoError(t, err)
			text := fmt.Sprintf(form[0], low+(high-low)*r.Float64())
			s := stove{k, acidity.NewLaboratory(ens, k.drawer, k.profiles[6], nil), []int{2, 5, 6}[r.IntN(3)], ledger.New(k.columns, few), brings}
			step := oneStep(t, text)
			before := all(pot)
			out, err := prep.MethodOf(step).Do(s, pot, step, prep.Factors{Ensemble: ens, Path: "step"})
			after := all(pot)
			if err != nil {
				require.Equal(t, before, after, "refused: %v", err)
				assert.NotEmpty(t, err.Error())
				continue
			}
			possible++
			times[step.Kind()]++
			lost := 0.0
			if out.Lost.Grams != nil {
				lost = out.Lost.Mass()
			}
			require.InDelta(t, before[constituent.Mass][0]+s.weighs.Mass()[0], after[constituent.Mass][0]+lost, 1e-7, "sequence %d: %s", sequence, text)
			grown(t, k.columns, before, after, done{poured: s.weighs, made: append(madeBy(step), constituent.AddedSugar)})
			sound(t, pot)
		}
	}
	require.Greater(t, possible, sequences*steps/4, "many of the steps were possible")
	for _, word := range []string{"adjust", "heat", "reduce", "caramelise"} {
		assert.Greater(t, times[word], 15, word)
	}
}

// thinning doses a sugar that brings the more water the more of it there is.
type thinning struct{ stove }

func (s thinning) Doser(drink.Line) (func(*ledger.Pot, []float64), string) {
	return func(pot *ledger.Pot, grams []float64) {
		const sugar, water = 2, 6
		wet := even(0)[:len(grams)]
		for d, g := range grams {
			wet[d] = g * g / 10
		}
		pot.Pour(s.profiles[sugar], s.drawer.PerGram(s.profiles[sugar]), grams, "dose")
		pot.Pour(s.profiles[water], s.drawer.PerGram(s.profiles[water]), wet, "its water")
	}, "wet sugar"
}

// A reading that two doses make is refused with both, since nobody can know which is meant:
// g of sugar with g²/10 of water in 100 g of water read 10 °Bx where g = 0.1·(100 + g + g²/10),
// which is at 12.984 and 77.016 by algebra.
func TestAReadingOfTwoDosesIsRefused(t *testing.T) {
	k := newKitchen()
	pot := ledger.New(k.columns, few)
	k.pour(pot, 6, 100)
	ens := estimate.Ensemble{Seed: 1, N: few}
	step := oneStep(t, "adjust: {brix: 10, with: x}")
	_, err := prep.MethodOf(step).Do(thinning{stove{kitchen: k, lab: acidity.NewLaboratory(ens, k.drawer, k.profiles[6], nil)}}, pot, step, prep.Factors{Ensemble: ens, Path: "step"})
	require.ErrorContains(t, err, "two doses of wet sugar bring it to 10 °Bx: 13 g and 77.1 g (write the one that you mean with add:)")
	assert.InDelta(t, 100, pot.Mass()[0], 1e-9)
}

func oneStep(t *testing.T, text string) drink.Step {
	t.Helper()
	d, faults := drink.Parse("t", []byte("drink: x\nserves: 1\nbuild: [1 g pot]\ncomponents:\n  pot:\n    ingredients: [1 g a]\n    steps:\n      - "+text+"\n"), nil)
	require.NoError(t, faults.Err(fail.Wrong), text)
	return d.Components[0].Steps[0]
}
