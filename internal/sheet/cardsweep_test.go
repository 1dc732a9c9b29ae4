package sheet_test

import (
	"context"
	"math"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

// Every core food alone, 100 g of it, under every set of rules.
func TestCardsOfCoreFoods(t *testing.T) {
	release, err := core.Format.Open(context.Background(), "", "")
	require.NoError(t, err)
	foods := shelf{}
	for f, err := range release.Foods {
		require.NoError(t, err)
		foods[f.ID] = f
	}
	byDifference := 0
	for id, f := range foods {
		d, faults := drink.Parse("alone", []byte("drink: \"Alone\"\nserves: 1\nbuild: [100 g "+id.String()+"]\n"), nil)
		a, err := assaytest.Run(context.Background(), d, faults, foods, assaytest.Options{Draws: 30, Seed: 1})
		require.NoError(t, err)
		s, err := sheet.Build("test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, label.Rules())
		require.NoError(t, err)
		for _, c := range s.Cards() {
			swept{t, id.String() + " " + c.Rules, &c}.all()
			if c.Rules == "us" && differenceAsPublished(t, f, &c) {
				byDifference++
			}
		}
	}
	assert.Greater(t, byDifference, 250, "foods whose carbohydrate is what the table's figures leave")
}

// differenceAsPublished compares total carbohydrate with 100 − water − protein − fat − ash −
// alcohol − carbon dioxide as published (21 CFR 101.9(c)(6)). It reports whether a food states
// all of that and its carbohydrate is the difference; it is more only where the sugars, other
// available carbohydrate, fibre and polyols are published as more.
func differenceAsPublished(t *testing.T, f *food.Food, c *label.Card) bool {
	rest := 100.0
	for _, id := range []constituent.ID{"WATER", "PROCNT", "FAT", "ASH", "ALC", "CO2"} {
		v, ok := f.Value(id)
		switch {
		case ok && food.Stated(v.Amount):
			rest -= v.Amount
		case id != "ALC" && id != "CO2":
			return false
		}
	}
	if f.Chemical {
		return false
	}
	row := rowOf(c, "carbohydrate")
	require.NotNil(t, row.Serving.Value, f.ID)
	parts := polyols(f)
	for _, key := range []string{"sugars", "fiber"} {
		if v := rowOf(c, key).Serving.Value; v != nil {
			parts += *v
		}
	}
	const far = 0.05 // g: the mass of a food that is published as more than 100 g was closed
	assert.InDelta(t, max(rest, parts), *row.Serving.Value, far, "%s", f.ID)
	return parts <= rest
}

// polyols are those that a food states, in g/100 g.
func polyols(f *food.Food) float64 {
	sum := 0.0
	for _, c := range constituent.Sums().Children("POLYL") {
		if v, ok := f.Value(c.ID); ok && food.Stated(v.Amount) {
			sum += v.Amount / c.PerGram
		}
	}
	if v, ok := f.Value("POLYL"); ok && food.Stated(v.Amount) {
		sum = max(sum, v.Amount)
	}
	return sum
}

func rowOf(c *label.Card, key string) *label.Row {
	for i := range c.Rows {
		if c.Rows[i].Key == key {
			return &c.Rows[i]
		}
	}
	return &label.Row{Serving: &label.Cell{}}
}

// swept is a card and what must hold of any.
type swept struct {
	t    *testing.T
	name string
	card *label.Card
}

func (s swept) all() {
	s.parents()
	for i := range s.card.Rows {
		for _, basis := range s.card.Columns {
			s.small(&s.card.Rows[i], s.card.Rows[i].On(basis))
		}
		s.percent(&s.card.Rows[i])
	}
}

// parents: no row is below the known rows that are parts of it.
func (s swept) parents() {
	parts := map[string][]string{
		"fat": {"saturates", "mono-unsaturates", "polyunsaturates", "saturated-fat", "saturated"},
		// a row of starch, polyols or fibre stands under different rows by rules
		"carbohydrate": {"sugars"}, "sugars": {"added-sugars"},
	}
	if s.card.Rules == "us" || s.card.Rules == "ca" {
		parts["carbohydrate"] = []string{"sugars", "fiber", "fibre"}
	}
	for whole, list := range parts {
		sum, v := 0.0, rowOf(s.card, whole).Serving.Value
		for _, key := range list {
			if part := rowOf(s.card, key).Serving.Value; part != nil {
				sum += *part
			}
		}
		if sum == 0 {
			continue
		}
		if assert.NotNil(s.t, v, "%s: %s is not known, and its parts are", s.name, whole) {
			assert.GreaterOrEqual(s.t, *v, sum-1e-9, "%s: %s is below its parts", s.name, whole)
		}
	}
}

// small are the texts for small amounts and the end of what they may stand for: European
// Commission guidance of December 2012, section 6; FDA Food Labeling Guide, appendix H; table
// to B.01.401 of the Food and Drug Regulations.
var small = map[string]map[string]float64{
	"eu": {"<0.5 g": 0.5, "<0.1 g": 0.1, "<0.01 g": 0.0125, "0 g": 0},
	"us": {"0 g": 0.5, "less than 1 g": 1, "0 mg": 5, "less than 5 mg": 5},
	"ca": {"0 g": 0.5, "0 mg": 5},
}

// small: no small amount stands beside an end that is more than it.
func (s swept) small(r *label.Row, cell *label.Cell) {
	if cell.Most == nil {
		return
	}
	rules := s.card.Rules
	if rules == "uk" {
		rules = "eu"
	}
	if most, ok := small[rules][cell.Printed]; ok {
		assert.LessOrEqual(s.t, *cell.Most, most*(1+1e-9), "%s: %s prints %s", s.name, r.Key, cell.Printed)
	}
	if strings.HasPrefix(cell.Printed, "0 ") && rules != "us" && rules != "ca" {
		assert.Less(s.t, *cell.Most, 0.5, "%s: %s prints %s", s.name, r.Key, cell.Printed)
	}
}

// percent: a share is of the amount by the rules' own basis: of what is printed in the
// minerals of Canada (B.01.401(1.2)), of the amount before rounding elsewhere, and 0 beside a
// printed 0.
func (s swept) percent(r *label.Row) {
	text := strings.TrimSuffix(r.Serving.Reference+r.Serving.DailyValue, " %")
	if text == "" || r.Key == "trans" || s.card.Rules == "us" && strings.Contains("vitamin-d calcium iron potassium", r.Key) {
		return
	}
	got, err := strconv.ParseFloat(text, 64)
	require.NoError(s.t, err)
	amount := 0.0
	if r.Serving.Value != nil {
		amount = *r.Serving.Value
	}
	if s.card.Rules == "ca" && strings.Contains("calcium iron potassium", r.Key) {
		amount, _ = strconv.ParseFloat(strings.Fields(r.Serving.Printed)[0], 64)
	}
	rules := s.card.Rules
	if rules == "uk" {
		rules = "eu"
	}
	want := math.Floor(100*amount/references()[rules+" "+r.Key] + 0.5 + 1e-9)
	if strings.HasPrefix(r.Serving.Printed, "0 ") {
		want = 0
	}
	assert.Equal(s.t, want, got, "%s: %s, %g", s.name, r.Key, amount)
}

// references are the reference values by rules and row.
var references = sync.OnceValue(func() map[string]float64 {
	all := map[string]float64{}
	values := embedded.Rows("daily_values.csv")
	for _, row := range embedded.Rows("card_rows.csv") {
		for _, v := range values {
			if v.Text("rules") == row.Text("rules") && v.Text("key") == row.Text("reference") {
				all[row.Text("rules")+" "+row.Text("key")] = v.Number("value")
			}
		}
	}
	return all
})
