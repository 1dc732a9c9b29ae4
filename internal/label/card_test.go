package label_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/label"
)

// everything lists what the cards read; facts sets all of it to a known 0 first.
var everything = []constituent.ID{
	"FAT", "FASAT", "FATRN", "CHOCDF", "CHOAVL", "CHOCDF-other", "POLYL", "SORTL", "MANTL", "XYLTL", "ERYTHL", "MALTL",
	"LACTL", "ISOMALT", "SUGAR", "allulose", "SUGAD", "FIBTG", "OA", "PROCNT", "ALC", "NA", "CHOLE", "VITD", "CA", "FE", "K",
}

func facts(ml float64, amounts map[constituent.ID]float64) label.Facts {
	f := label.Facts{ServingG: 100, ServingMl: ml, Serving: map[constituent.ID]estimate.Amount{}}
	for _, id := range everything {
		f.Serving[id] = estimate.Amount{Known: true}
	}
	for id, x := range amounts {
		f.Serving[id] = estimate.Amount{Mean: x, WithBounds: x, Known: true}
	}
	return f
}

func card(t *testing.T, rules string, f label.Facts) label.Card {
	t.Helper()
	c, err := label.Make(rules, f)
	require.NoError(t, err)
	return c
}

func row(t *testing.T, c label.Card, key string) label.Row {
	t.Helper()
	for _, r := range c.Rows {
		if r.Key == key {
			return r
		}
	}
	require.Failf(t, "no such row", "%s of %s", key, c.Rules)
	return label.Row{}
}

func keys(c label.Card) []string {
	var out []string
	for _, r := range c.Rows {
		out = append(out, r.Key)
	}
	return out
}

// Annex XV of the Regulation; 21 CFR 101.9(c).
func TestRowsAndTheirOrder(t *testing.T) {
	assert.Equal(t, []string{"energy", "fat", "saturates", "carbohydrate", "sugars", "fibre", "protein", "salt"}, keys(card(t, "eu", facts(100, nil))))
	sweet := facts(100, map[constituent.ID]float64{"POLYL": 5, "CHOAVL": 2})
	delete(sweet.Serving, "FIBTG")
	c := card(t, "eu", sweet)
	assert.Equal(t, []string{"energy", "fat", "saturates", "carbohydrate", "sugars", "polyols", "protein", "salt"}, keys(c), "polyols if there are any, fibre if it is known")
	assert.Equal(t, "7.0 g", row(t, c, "carbohydrate").Per100ml.Printed, "carbohydrate includes polyols (Annex I)")
	assert.Equal(t, []string{
		"calories", "fat", "saturated-fat", "trans-fat", "cholesterol", "sodium", "carbohydrate", "fiber", "sugars",
		"added-sugars", "protein", "vitamin-d", "calcium", "iron", "potassium",
	}, keys(card(t, "us", facts(100, nil))))
}

func TestBasis(t *testing.T) {
	c := card(t, "eu", facts(100, nil))
	assert.Equal(t, label.Per100ml, c.Basis)
	assert.Equal(t, label.Per100ml, card(t, "eu", facts(0.5, nil)).Basis, "a drop has a volume")
	c = card(t, "eu", facts(0, map[constituent.ID]float64{"FAT": 3}))
	assert.Equal(t, label.Per100g, c.Basis)
	assert.Nil(t, row(t, c, "fat").Per100ml)
	assert.Equal(t, "3.0 g", row(t, c, "fat").Per100g.Printed)
	assert.Contains(t, notes(c), "per 100 g")
	c = card(t, "us", facts(100, nil))
	assert.Equal(t, label.PerServing, c.Basis)
	assert.Nil(t, row(t, c, "fat").Per100ml)
}

func notes(c label.Card) string {
	var out []string
	for _, n := range c.Notes {
		out = append(out, n.Row+": "+n.Text)
	}
	return strings.Join(out, "\n")
}

func TestExplainGivesTheCard(t *testing.T) {
	f := facts(50, map[constituent.ID]float64{"CHOAVL": 8.5, "OA": 0.6, "NA": 40, "SUGAR": 3})
	for _, rules := range label.Rules() {
		c := card(t, rules, f)
		works, err := label.Explain(rules, f)
		require.NoError(t, err)
		for _, w := range works {
			require.NotEmpty(t, w.Sources, w.Row)
			assert.Equal(t, w.Percent == "", w.Against == "", "%s %s: a share is of something", w.Row, w.Unit)
			total := 0.0
			for _, term := range w.Terms {
				if term.Gives != nil {
					total += *term.Gives
				}
			}
			if w.Value != nil {
				assert.InDelta(t, *w.Value, total*w.Scale, 1e-9, "%s %s", w.Row, w.Basis)
			}
			r := row(t, c, w.Row)
			cell := r.Serving
			if w.Basis == label.Per100ml {
				cell = r.Per100ml
			}
			assert.Contains(t, cell.Printed, w.Printed, w.Row)
		}
	}
	works, err := label.Explain("eu", f)
	require.NoError(t, err)
	assert.Equal(t, "17 × CHOAVL + 17 × CHOCDF-other + 10 × POLYL + 0 × ERYTHL + 17 × PROCNT + 37 × FAT + 29 × ALC + 13 × OA + 8 × FIBTG", works[0].Formula)
	assert.Equal(t, "kJ", works[0].Unit)
	last := works[len(works)-1]
	assert.Equal(t, "2.5 × NA", last.Formula)
	assert.InDelta(t, 0.1, *last.Value, 1e-12)
	assert.Equal(t, "6 g", last.Against)
}

func TestRefusals(t *testing.T) {
	_, err := label.Make("moon", facts(100, nil))
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	assert.ErrorContains(t, err, "use one of: anz, ca, codex, eu, uk, us")
	_, err = label.Make("eu", label.Facts{})
	assert.Error(t, err)
	_, err = label.Explain("mars", facts(100, nil))
	assert.Error(t, err)
}

// What is printed goes into documents, which have no word for NaN.
func TestCardHasNoNaN(t *testing.T) {
	f := facts(100, map[constituent.ID]float64{"FAT": 1.234})
	delete(f.Serving, "SUGAR")
	c := card(t, "eu", f)
	_, err := json.Marshal(c)
	require.NoError(t, err)
	fat := row(t, c, "fat")
	assert.Equal(t, 1.234, *fat.Per100ml.Value)
	assert.Equal(t, "1.2 g", fat.Per100ml.Printed)
	assert.Equal(t, "1.2 g", fat.Serving.Printed)
	assert.Equal(t, "2 %", fat.Serving.Reference)
	assert.Empty(t, c.Claims)
	works, err := label.Explain("eu", f)
	require.NoError(t, err)
	_, err = json.Marshal(works)
	require.NoError(t, err)
}

// The words at the head of a card and its basis are those of the rules: Regulation (EU) No
// 1169/2011, Article 32(2) and Annex XV; 21 CFR 101.9(b) and (d).
func TestCardHasTheHeadOfItsRules(t *testing.T) {
	eu, us := card(t, "eu", facts(100, nil)), card(t, "us", facts(100, nil))
	assert.Equal(t, []string{"Nutrition declaration", "% reference*", label.Per100ml}, []string{eu.Title, eu.Percents, eu.Basis})
	assert.Equal(t, []string{"Nutrition Facts", "% Daily Value*", label.PerServing}, []string{us.Title, us.Percents, us.Basis})
	assert.NoError(t, label.Check("us", facts(100, nil)))
	assert.Error(t, label.Check("moon", facts(100, nil)))
	assert.Error(t, label.Check("eu", label.Facts{}))
}
