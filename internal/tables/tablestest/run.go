package tablestest

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// Want is what a release must give; every expected figure is typed from the
// publisher's files.
type Want struct {
	Columns, Foods, Values int
	First, Last            string            // codes
	Names                  map[string]string // code: name, as it reads when decoded
	Spots                  []Spot
	Damage                 Damage // left empty for a release too large to copy
}

// Spot is one value as published.
type Spot struct {
	Code, Constituent string
	State             estimate.State
	Amount            float64 // NaN for none; in the vocabulary's unit
	SD                float64 // NaN for none
	Printed           string  // the publisher's line, or the part of it that holds the figures
}

// At makes a Spot.
func At(code, tag string, state estimate.State, amount, sd float64, printed string) Spot {
	return Spot{Code: code, Constituent: tag, State: state, Amount: amount, SD: sd, Printed: printed}
}

// Run checks a reader against a release.
func Run(t *testing.T, format table.Format, dir string, want Want) {
	t.Helper()
	t.Run("release", func(t *testing.T) { checkRelease(t, Open(t, format, dir), format.Name, want) })
	t.Run("foods", func(t *testing.T) { checkFoods(t, Open(t, format, dir), want) })
	t.Run("again", func(t *testing.T) { checkAgain(t, format, dir) })
	t.Run("renamed", func(t *testing.T) { checkRenamed(t, format, dir) })
	if want.Damage.File != "" {
		t.Run("damage", func(t *testing.T) { checkDamage(t, format, dir, want.Damage) })
	}
}

func checkRelease(t *testing.T, r *table.Release, id string, want Want) {
	assert.Equal(t, id, r.Table.ID)
	assert.Equal(t, id, r.Table.Format)
	assert.Len(t, r.Table.Hash, 64)
	assert.NotEmpty(t, r.Table.Title)
	assert.NotEmpty(t, r.Table.Edition)
	assert.NotEmpty(t, r.Table.Licence)
	assert.NotEmpty(t, r.Table.Citation)
	if want.Columns > 0 {
		assert.Len(t, r.Columns, want.Columns)
	}
	seen := map[constituent.ID]bool{}
	for _, c := range r.Columns {
		known, ok := constituent.Find(string(c.ID))
		assert.Equal(t, ok, c.Constituent, c.ID)
		if ok {
			assert.Equal(t, known.ID, c.ID, "an alias is not an id")
		} else {
			assert.Equal(t, id+":"+c.Number, string(c.ID))
		}
		assert.NotEmpty(t, c.Unit, c.ID)
		assert.NotEmpty(t, c.Name, c.ID)
		assert.False(t, seen[c.ID], "%s is two columns", c.ID)
		seen[c.ID] = true
	}
}

func checkFoods(t *testing.T, r *table.Release, want Want) {
	works := map[string]bool{}
	for _, w := range r.Works {
		assert.NotEmpty(t, w.Citation, w.ID)
		assert.False(t, works[w.ID], "work %s stands twice", w.ID)
		works[w.ID] = true
	}
	columns := map[constituent.ID]bool{}
	for _, c := range r.Columns {
		columns[c.ID] = true
	}
	spots := map[string][]Spot{}
	for _, s := range want.Spots {
		spots[s.Code] = append(spots[s.Code], s)
	}
	foods, values, first, last := 0, 0, "", ""
	codes := map[string]bool{}
	for f, err := range r.Foods {
		require.NoError(t, err)
		if foods == 0 {
			first = f.ID.Code
		}
		last = f.ID.Code
		foods++
		values += len(f.Values)
		require.False(t, codes[last], "food %s stands twice", last)
		codes[last] = true
		checkFood(t, f, r.Table.ID, columns, works)
		if name, ok := want.Names[last]; ok {
			assert.Equal(t, name, f.Name())
			delete(want.Names, last)
		}
		for _, s := range spots[last] {
			checkSpot(t, f, s)
		}
		delete(spots, last)
	}
	assert.Equal(t, want.Foods, foods)
	assert.Equal(t, want.Values, values)
	assert.Equal(t, want.First, first)
	assert.Equal(t, want.Last, last)
	assert.Empty(t, want.Names, "foods with these names are missing")
	assert.Empty(t, spots, "foods with these values are missing")
}

// checkFood uses plain comparisons: it runs for every value of a release.
func checkFood(t *testing.T, f *food.Food, id string, columns map[constituent.ID]bool, works map[string]bool) {
	switch {
	case f.ID.Table != id:
		t.Errorf("%s: the table is not %s", f.ID, id)
	case len(f.Names) == 0 || f.Names[0].Text == "":
		t.Errorf("%s: has no name", f.ID)
	case food.Stated(f.Edible) && (f.Edible < 0 || f.Edible > 1):
		t.Errorf("%s: edible share %g", f.ID, f.Edible)
	case food.Stated(f.Density.GramsPerMl) && f.Density.GramsPerMl <= 0:
		t.Errorf("%s: density %g", f.ID, f.Density.GramsPerMl)
	}
	for _, n := range append([]food.Name{{Text: f.Note}, {Text: f.PublisherGroup}}, f.Names...) {
		if !utf8.ValidString(n.Text) || strings.ContainsAny(n.Text, "\x00\ufffd") {
			t.Errorf("%s: %q is not clean UTF-8", f.ID, n.Text)
		}
	}
	for _, p := range f.Portions {
		if p.Name == "" || !(p.Grams >= 0) || math.IsInf(p.Grams, 0) {
			t.Errorf("%s: portion %+v", f.ID, p)
		}
	}
	seen := map[constituent.ID]bool{}
	for _, v := range f.Values {
		if seen[v.Constituent] {
			t.Errorf("%s: %s stands twice", f.ID, v.Constituent)
		}
		seen[v.Constituent] = true
		if !columns[v.Constituent] {
			t.Errorf("%s: %s is not a column", f.ID, v.Constituent)
		}
		checkValue(t, f.ID, v, works)
	}
}

func checkValue(t testing.TB, id food.ID, v food.Value, works map[string]bool) {
	without := v.State == estimate.Trace || v.State == estimate.Below || v.State == estimate.Unknown
	if v.State > estimate.Unknown {
		t.Errorf("%s %s: state %d", id, v.Constituent, v.State)
	}
	if without == food.Stated(v.Amount) {
		t.Errorf("%s %s: amount %g with state %s", id, v.Constituent, v.Amount, v.State)
	}
	if v.State == estimate.Below && !(v.Limit > 0) {
		t.Errorf("%s %s: below no limit", id, v.Constituent)
	}
	for _, x := range []float64{v.Amount, v.SD, v.Low, v.High, v.Limit} {
		if x < 0 || math.IsInf(x, 0) {
			t.Errorf("%s %s: %g", id, v.Constituent, x)
		}
	}
	if v.N < 0 {
		t.Errorf("%s %s: n = %d", id, v.Constituent, v.N)
	}
	for _, source := range strings.Fields(v.Source) {
		if !works[source] {
			t.Errorf("%s %s: source %q is not among the works", id, v.Constituent, source)
		}
	}
	if v.Source == "" {
		t.Errorf("%s %s: no source", id, v.Constituent)
	}
}

func checkSpot(t *testing.T, f *food.Food, s Spot) {
	v, ok := f.Value(constituent.ID(s.Constituent))
	if !assert.True(t, ok, "%s has no %s: %s", f.ID, s.Constituent, s.Printed) {
		return
	}
	assert.Equal(t, s.State, v.State, "%s %s: %s", f.ID, s.Constituent, s.Printed)
	for _, pair := range [][2]float64{{s.Amount, v.Amount}, {s.SD, v.SD}} {
		if math.IsNaN(pair[0]) {
			assert.True(t, math.IsNaN(pair[1]), "%s %s is %g: %s", f.ID, s.Constituent, pair[1], s.Printed)
			continue
		}
		assert.InDelta(t, pair[0], pair[1], 1e-9*math.Abs(pair[0]), "%s %s: %s", f.ID, s.Constituent, s.Printed)
	}
}
