package data_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/core"
)

// contents are the values of one core food by constituent, in g per 100 g; what
// is below a limit or a trace counts as half of it.
type contents map[constituent.ID]float64

func coreContents(t *testing.T) map[string]contents {
	t.Helper()
	all := map[string]contents{}
	for _, v := range rows(t, "core/values.csv") {
		c := constituent.Must(constituent.ID(v["constituent"]))
		if all[v["code"]] == nil {
			all[v["code"]] = contents{}
		}
		amount := math.NaN()
		switch state, err := estimate.ParseState(v["state"]); {
		case err != nil:
			t.Fatal(err)
		case state == estimate.Trace || state == estimate.Below:
			amount = number(t, v, "high") / 2
		case v["amount"] != "":
			amount = number(t, v, "amount")
		}
		if !math.IsNaN(amount) && c.PerGram > 0 {
			all[v["code"]][c.ID] = amount / c.PerGram
		}
	}
	return all
}

// total is the larger of what is published for a constituent and of what its
// published parts make up.
func (c contents) total(id constituent.ID) float64 {
	parts := 0.0
	for _, part := range constituent.Sums().Children(id) {
		parts += c.total(part.ID)
	}
	return max(c[id], parts)
}

func TestCoreFoodsCloseInMass(t *testing.T) {
	const least, most = 97.0, 103.0
	const excuse = "mass balance:"
	all := coreContents(t)
	for code, f := range byKey(t, "core/foods.csv", "code") {
		c := all[code]
		require.NotNil(t, c, "%s has no value", code)
		if _, ok := c[constituent.Water]; !ok && f["use"] != "chemical" {
			t.Errorf("%s states no water", code)
			continue
		}
		sum := c.total(constituent.Mass)
		if _, why, excused := strings.Cut(f["note"], excuse); excused {
			t.Logf("%s: leaves make %.1f g:%s", code, sum, why)
			assert.True(t, sum < least || sum > most, "%s needs no excuse any more", code)
			continue
		}
		assert.GreaterOrEqual(t, sum, least, code)
		assert.LessOrEqual(t, sum, most, code)
	}
}

// What lies inside carbohydrate by difference is reported where it exceeds it:
// sources of acids and of carbohydrate are different samples.
func TestPartsOfCarbohydrateAreReported(t *testing.T) {
	const worthTelling, tooMuch = 0.5, 3.0
	for code, c := range coreContents(t) {
		published, ok := c[constituent.Carbohydrate]
		if !ok {
			continue
		}
		parts := 0.0
		for _, part := range constituent.Sums().Children(constituent.Carbohydrate) {
			parts += c.total(part.ID)
		}
		over := parts - published
		if over > worthTelling {
			t.Logf("%s: sugars, starch, fibre, polyols and acids exceed carbohydrate by difference by %.2f g", code, over)
		}
		assert.Less(t, over, tooMuch, code)
	}
}

// Parts are listed where they exceed their published parent by more than the
// combined spread explains; nothing is repaired.
func TestPartsAgainstTheirParents(t *testing.T) {
	const apart = 3 // standard deviations of the difference
	listed := 0
	for code, f := range foodsOf(t, core.Format, "") {
		for _, parent := range []constituent.ID{constituent.Fat, constituent.Sugar, constituent.OrganicAcids} {
			whole, ok := f.Value(parent)
			if !ok || !food.Stated(whole.Amount) {
				continue
			}
			c := constituent.Must(parent)
			parts, variance := 0.0, math.Pow(spreadOf(f, c, whole)/c.PerGram, 2)
			for _, part := range constituent.Sums().Children(parent) {
				if v, ok := f.Value(part.ID); ok && food.Stated(v.Amount) {
					parts += v.Amount / part.PerGram
					variance += math.Pow(spreadOf(f, part, v)/part.PerGram, 2)
				}
			}
			over := parts - whole.Amount/c.PerGram
			const rounding = 0.05 // g, of parts printed to a tenth
			if over > rounding && over > apart*math.Sqrt(variance) {
				listed++
				t.Logf("%s: the parts of %s make %.2f g, the whole %.2f g", code, parent, parts, whole.Amount/c.PerGram)
			}
		}
	}
	t.Logf("%d parents listed", listed)
	assert.Zero(t, listed, "judge the new ones, then list them by name")
}

// spreadOf is the standard deviation that a comparison takes.
func spreadOf(f *food.Food, c *constituent.Constituent, v food.Value) float64 {
	one := &food.Food{ID: f.ID, Group: f.Group, Chemical: f.Chemical, Values: []food.Value{v}}
	return food.Compare([]*food.Food{one})[0].Cells[0].SD
}

// Molar shares of salts against figures printed outside the project.
func TestChemicalsAgainstPrintedFigures(t *testing.T) {
	all := coreContents(t)
	const perMgOfMg, perMgOfNa = 4.118, 2.177 // mg CaCO3 equivalent: 100.09/24.305 and 100.09/(2·22.990)
	for _, c := range []struct {
		code       string
		element    constituent.ID
		gramsPerL  float64
		factor     float64
		hardness   float64 // mg/L as CaCO3, hardness of Mg or alkalinity beside Na
		within     float64
		publishing string
	}{
		{"magnesium-sulphate", "MG", 2.45, perMgOfMg, 1000, 10, "mineral concentrate of a published home water recipe: 2.45 g/L gives 1000 mg/L hardness"},
		{"sodium-bicarbonate", "NA", 1.68, perMgOfNa, 1000, 10, "mineral concentrate of a published home water recipe: 1.68 g/L gives 1000 mg/L alkalinity"},
	} {
		t.Run(c.code, func(t *testing.T) {
			mgPerL := all[c.code][c.element] / 100 * c.gramsPerL * 1000
			assert.InDelta(t, c.hardness, mgPerL*c.factor, c.within, c.publishing)
		})
	}
	for code, f := range byKey(t, "core/foods.csv", "code") {
		if f["use"] == "chemical" {
			assert.InDelta(t, 100, all[code].total(constituent.Mass), 1e-3, code)
		}
	}
}

// A food with caffeine or alcohol must say so.
func TestCautionsFollowTheValues(t *testing.T) {
	cautioned := map[string]bool{}
	for _, m := range rows(t, "core/marks.csv") {
		if m["kind"] == "caution" {
			cautioned[m["code"]+" "+m["value"]] = true
		}
	}
	const caffeine, alcohol = 0.001, 0.1 // g/100 g from which the food is marked
	for code, c := range coreContents(t) {
		if c[constituent.Caffeine] >= caffeine {
			assert.True(t, cautioned[code+" caffeine"], "%s holds %.3g g caffeine", code, c[constituent.Caffeine])
		}
		if c[constituent.Alcohol] >= alcohol {
			assert.True(t, cautioned[code+" alcohol"], "%s holds %.3g g alcohol", code, c[constituent.Alcohol])
		}
	}
}

// What is dissolved and suspended has no more room than the water leaves: what the leaves
// of a food add up to exceeds 100 g by two standard deviations of them at most.
func TestSolidsHaveRoomBesideTheWater(t *testing.T) {
	const deviations, worthTelling = 2, 1.0
	contents, notes := coreContents(t), byKey(t, "core/foods.csv", "code")
	for code, f := range foodsOf(t, core.Format, "") {
		c := contents[code]
		if _, ok := c[constituent.Water]; !ok || strings.Contains(notes[code]["note"], "mass balance:") {
			continue
		}
		sum, variance := 0.0, 0.0
		var add func(parent constituent.ID)
		add = func(parent constituent.ID) {
			for _, part := range constituent.Sums().Children(parent) {
				within := 0.0
				for _, p := range constituent.Sums().Children(part.ID) {
					within += c.total(p.ID)
				}
				v, ok := f.Value(part.ID)
				switch {
				case ok && food.Stated(v.Amount) && c[part.ID] >= within:
					sum += c[part.ID]
					variance += math.Pow(spreadOf(f, part, v)/part.PerGram, 2)
				case part.Kind == constituent.Parent:
					add(part.ID)
				default:
					sum += c[part.ID]
				}
			}
		}
		add(constituent.Mass)
		over, sd := sum-100, math.Sqrt(variance)
		if over > worthTelling {
			t.Logf("%s: %.2f g too much, %.1f standard deviations", code, over, over/sd)
		}
		assert.True(t, over <= 0.1 || over <= deviations*sd, "%s: %.2f g too much, standard deviation %.2f", code, over, sd)
	}
}
