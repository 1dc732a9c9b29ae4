package data_test

import (
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// alone assays 100 g of a food by itself at central values, and makes its cards.
func alone(t *testing.T, foods assaytest.Library, id food.ID, rules ...string) (*assay.Assay, []label.Card) {
	t.Helper()
	s := sheetOf(t, foods, aloneText(id), rules...)
	return s.Assay, s.Cards()
}

func aloneText(id food.ID) string {
	return fmt.Sprintf("drink: Alone\nserves: 1\nbuild: [100 g %s]\n", id)
}

func sheetOf(t *testing.T, foods assaytest.Library, text string, rules ...string) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Build("test", assaytest.Assay(t, foods, text, 0), nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, rules)
	require.NoError(t, err)
	return s
}

// factor is an energy factor as its regulation prints it: the factors stand here and not in
// the data that the card reads.
type factor struct {
	of       constituent.ID
	kj, kcal float64
}

// euFactors are those of Regulation (EU) No 1169/2011, Annex XIV; of carbohydrate without
// polyols and of polyols without erythritol.
var euFactors = []factor{
	{"CHOAVL", 17, 4}, {"CHOCDF-other", 17, 4}, {"POLYL", 10, 2.4}, {"PROCNT", 17, 4}, {"FAT", 37, 9}, {"ALC", 29, 7}, {"OA", 13, 3}, {"FIBTG", 8, 2},
}

// nothing is what floating point may leave of 100 g, in g.
const nothing = 1e-6

// gramsOf gives what is known of a constituent in the serving, and whether all of it is known.
func gramsOf(a *assay.Assay, id constituent.ID) (grams float64, whole bool) {
	mean, withBounds, known := a.AmountOf(id)
	return mean / constituent.Must(id).PerGram, known && withBounds-mean <= nothing
}

func rowOf(c label.Card, key string) *label.Row {
	for i := range c.Rows {
		if c.Rows[i].Key == key {
			return &c.Rows[i]
		}
	}
	return nil
}

// Each core food by itself: total carbohydrate of the US is what water, protein, fat, ash,
// alcohol and carbon dioxide, as the food's row prints them, leave of 100 g (21 CFR
// 101.9(c)(6)); where sugars, fibre and polyols, which have rows of their own, were analysed as more, it
// is these, for no row is below its parts. A pure substance of one formula has no difference.
func TestUSCarbohydrateOfEveryCoreFoodIsByDifference(t *testing.T) {
	foods, judged, byParts, open := assaytest.Core(t), 0, 0, 0
	for _, id := range sortedIDs(foods) {
		f := foods[id]
		if f.Chemical {
			continue
		}
		a, cards := alone(t, foods, id, "us")
		left, all := 100.0, true
		for _, part := range []constituent.ID{"WATER", "PROCNT", "FAT", "ASH", "ALC", "CO2"} {
			grams, whole := gramsOf(a, part)
			if x := figureOf(f, part); !math.IsNaN(x) {
				grams = x
			}
			left, all = left-grams, all && (whole || part == "ALC" || part == "CO2")
		}
		if !all { // nobody can tell what is carbohydrate of the rest
			open++
			continue
		}
		parts := 0.0
		for _, part := range []constituent.ID{"SUGAR", "FIBTG", "POLYL"} {
			grams, _ := gramsOf(a, part)
			parts += grams
		}
		judged++
		if parts > left+0.05 {
			byParts++
			t.Logf("%s: parts %.4g g, difference %.4g g", id, parts, left)
		}
		cell := rowOf(cards[0], "carbohydrate").Serving
		if assert.NotNil(t, cell.Value, "%s: %.4g g by difference", id, left) {
			assert.InDelta(t, max(left, parts), *cell.Value, 1e-4, "%s", id)
		}
	}
	t.Logf("%d core foods, of %d the parts are more than the difference; of %d water, protein, fat or ash is not known", judged, byParts, open)
	assert.Greater(t, judged, 2*open)
	assert.Less(t, byParts, judged/5)
}

// Each core food by itself: the energy of the EU is the sum of the parts by the factors of
// Annex XIV, in kJ and in kcal each by its own.
func TestEUEnergyOfEveryCoreFoodIsTheSumOfItsParts(t *testing.T) {
	foods := assaytest.Core(t)
	for _, id := range sortedIDs(foods) {
		a, cards := alone(t, foods, id, "eu")
		kj, kcal := 0.0, 0.0
		for _, f := range euFactors {
			grams, _ := gramsOf(a, f.of)
			if f.of == "POLYL" {
				erythritol, _ := gramsOf(a, "ERYTHL")
				grams -= erythritol
			}
			kj, kcal = kj+f.kj*grams, kcal+f.kcal*grams
		}
		cell := rowOf(cards[0], "energy").Serving
		if cell.Value == nil {
			assert.Less(t, kj, nothing, "%s", id)
			continue
		}
		assert.InDelta(t, kj, *cell.Value, 1e-4, "%s kJ", id)
		assert.InDelta(t, kcal, *cell.Kcal, 1e-4, "%s kcal", id)
	}
}

// Each core food by itself, and the demo drinks, under every set of rules: no row is below
// those that are part of it, neither as a figure nor as it is printed, and a percentage is
// that of the figure beside it.
func TestNoRowOfACardContradictsAnother(t *testing.T) {
	foods, refs := assaytest.Core(t), referencesOf(t)
	judge := func(name string, s *sheet.Sheet) {
		for _, c := range s.Cards() {
			for _, fault := range append(contradictions(c), refs.faults(c)...) {
				t.Errorf("%s, %s: %s", name, c.Rules, fault)
			}
		}
	}
	rules := label.Rules()
	require.Len(t, rules, 6)
	for _, id := range sortedIDs(foods) {
		judge(id.String(), sheetOf(t, foods, aloneText(id), rules...))
	}
	demos, err := fs.Glob(data.FS, "demo/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, demos)
	for _, name := range demos {
		text, err := fs.ReadFile(data.FS, name)
		require.NoError(t, err)
		judge(name, sheetOf(t, foods, string(text), rules...))
	}
}

// contradictions tells what rows of a card contradict each other: rows that stand indented
// under a row are parts of it.
func contradictions(c label.Card) []string {
	var faults []string
	for _, basis := range c.Columns {
		var above []*label.Row // the row last seen at each indent
		for i := range c.Rows {
			r := &c.Rows[i]
			above = append(above[:min(r.Indent, len(above))], r)
			if r.Indent == 0 || r.Indent >= len(above) {
				continue
			}
			whole := above[r.Indent-1]
			part, all := r.On(basis), whole.On(basis)
			switch {
			case part == nil || all == nil || part.Value == nil:
			case all.Value == nil && *part.Value > 0:
				faults = append(faults, fmt.Sprintf("%s: %s %.4g, but %s unknown", basis, r.Key, *part.Value, whole.Key))
			case all.Value != nil && *part.Value > *all.Value+nothing:
				faults = append(faults, fmt.Sprintf("%s: %s %.4g, but %s %.4g", basis, r.Key, *part.Value, whole.Key, *all.Value))
			}
			low, _, ok := printedRange(part)
			if _, high, both := printedRange(all); ok && both && low > high {
				faults = append(faults, fmt.Sprintf("%s: %s %q, but %s %q", basis, r.Key, part.Printed, whole.Key, all.Printed))
			}
		}
	}
	return faults
}

// printedRange reads what a cell prints: "3.4 g" is 3.4 to 3.4, "<0.5 g" and "less than 1 g"
// are from nothing on. ok is false for words.
func printedRange(c *label.Cell) (low, high float64, ok bool) {
	if c == nil {
		return 0, 0, false
	}
	text, below := strings.CutPrefix(strings.ToLower(c.Printed), "less than")
	if !below {
		text, below = strings.CutPrefix(text, "<")
	}
	figure, _, _ := strings.Cut(strings.TrimSpace(text), " ")
	x, err := strconv.ParseFloat(strings.ReplaceAll(figure, ",", ""), 64)
	switch {
	case err != nil || math.IsNaN(x):
		return 0, 0, false
	case below:
		return 0, x, true
	}
	return x, x, true
}
