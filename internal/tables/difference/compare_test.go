package difference_test

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/difference"
	"sipsum/internal/tables/tablestest"
)

// columns has fat to one decimal, caffeine in mg without stated decimals, and
// one of the table's own.
func columns(table string) []food.Column {
	return []food.Column{
		{ID: "FAT", Number: "1", Unit: "g", Decimals: 1, Constituent: true},
		{ID: "CAFFN", Number: "2", Unit: "g", Decimals: -1, Constituent: true},
		{ID: constituent.ID(table + ":3"), Number: "3", Unit: "g", Decimals: 2},
	}
}

func stated(id string, amount float64) food.Value {
	return food.Value{Constituent: constituent.ID(id), Amount: amount, Limit: food.None, SD: food.None, State: estimate.Calculated}
}

func below(id string, limit float64) food.Value {
	return food.Value{Constituent: constituent.ID(id), Amount: food.None, Limit: limit, SD: food.None, State: estimate.Below}
}

func foodOf(table, code, name string, values ...food.Value) *food.Food {
	return &food.Food{ID: food.ID{Table: table, Code: code}, Names: []food.Name{{Language: "en", Text: name}}, Values: values}
}

func edition(table string, foods ...*food.Food) difference.Edition {
	return difference.Edition{Columns: columns(table), Foods: stream(foods)}
}

func stream(foods []*food.Food) iter.Seq2[*food.Food, error] {
	return func(yield func(*food.Food, error) bool) {
		for _, f := range foods {
			if !yield(f, nil) {
				return
			}
		}
	}
}

// tell gives the changes as lines.
func tell(t *testing.T, old, new difference.Edition) []string {
	t.Helper()
	var lines []string
	for c, err := range difference.Compare(old, new) {
		require.NoError(t, err)
		line := c.Kind.String() + " " + c.Code
		if c.Renamed() {
			line += " " + c.OldName + " → " + c.NewName
		}
		for _, v := range c.Values {
			line += fmt.Sprintf("; %s %s → %s", v.Constituent, printed(v.Old), printed(v.New))
		}
		lines = append(lines, line)
	}
	return lines
}

func printed(v *food.Value) string {
	switch {
	case v == nil:
		return "nothing"
	case food.Stated(v.Amount):
		return fmt.Sprint(v.Amount)
	}
	return fmt.Sprintf("%s %g", v.State, v.Limit)
}

func TestFoodsThatCameWentAndChanged(t *testing.T) {
	old := edition("a",
		foodOf("a", "1", "gone", stated("FAT", 1)),
		foodOf("a", "2", "same", stated("FAT", 1), stated("a:3", 2)),
		foodOf("a", "3", "name", stated("FAT", 1)),
		foodOf("a", "5", "values", stated("a:3", 2), stated("FAT", 1), below("CAFFN", 5)),
		foodOf("a", "6", "less", stated("FAT", 1), stated("CAFFN", 1)),
	)
	new := edition("b",
		foodOf("b", "2", "same", stated("FAT", 1), stated("b:3", 2)),
		foodOf("b", "3", "other name", stated("FAT", 1)),
		foodOf("b", "4", "new", stated("FAT", 1)),
		foodOf("b", "5", "values", stated("FAT", 2), stated("CAFFN", 5), stated("b:3", 2.5)),
		foodOf("b", "6", "less", stated("FAT", 1), stated("b:3", 1)),
		foodOf("b", "7", "last"),
	)
	assert.Equal(t, []string{
		"removed 1",
		"changed 3 name → other name",
		"added 4",
		"changed 5; FAT 1 → 2; CAFFN below 5 → 5; b:3 2 → 2.5",
		"changed 6; CAFFN 1 → nothing; b:3 nothing → 1",
		"added 7",
	}, tell(t, old, new))
	back := tell(t, new, old)
	assert.Len(t, back, 6)
	assert.Equal(t, "added 1", back[0])
	assert.Equal(t, "removed 7", back[5])
	assert.Empty(t, tell(t, old, old))
	assert.Len(t, tell(t, old, edition("b")), 5)
	assert.Empty(t, tell(t, edition("a"), edition("b")))
}

func TestRounding(t *testing.T) {
	for _, c := range []struct {
		id       string
		old, new float64
		differ   bool
		why      string
	}{
		{"FAT", 3.9, 3.94, false, "3.94 rounds to 3.9"},
		{"FAT", 3.9, 3.85, false, "3.85 rounds to 3.9"},
		{"FAT", 3.9, 3.96, true, "3.96 rounds to 4.0"},
		{"FAT", 3.9, 4, true, "one decimal: 4 is 4.0"},
		{"FAT", 4, 4.04, false, "4.0"},
		{"FAT", 4, 4.3, true, "4.0, not 4"},
		{"FAT", 100, 103, true, "another whole number"},
		{"FAT", 0, 0, false, "nothing"},
		{"FAT", 0, 0.05, false, "0.05 may round to 0.0"},
		{"FAT", 0, 0.06, true, "0.06 rounds to 0.1"},
		{"FAT", 0.1 + 0.2, 0.3, false, "noise of arithmetic"},
		{"CAFFN", 40, 40.4, false, "no decimals stated: 40 is a whole number"},
		{"CAFFN", 40, 41, true, "another whole number"},
		{"CAFFN", 0.0071 * 1000, 7.1, false, "noise of a factor"},
		{"CAFFN", 1e-7, 2e-7, true, "a last digit far behind the point"},
		{"CAFFN", 35.1111111111, 35.1111112, true, "a quotient has no last digit"},
		{"CAFFN", 3212222.2222222, 3212222.2222222003, false, "the same quotient"},
	} {
		old, new := edition("a", foodOf("a", "1", "x", stated(c.id, c.old))), edition("a", foodOf("a", "1", "x", stated(c.id, c.new)))
		assert.Equal(t, c.differ, len(tell(t, old, new)) > 0, "%g → %g: %s", c.old, c.new, c.why)
		assert.Equal(t, c.differ, len(tell(t, new, old)) > 0, "%g → %g: %s", c.new, c.old, c.why)
	}
}

// The decimals of a column are of the unit it prints: g here, mg stored.
func TestDecimalsAreOfThePrintedUnit(t *testing.T) {
	of := func(amount float64) difference.Edition {
		return difference.Edition{
			Columns: []food.Column{{ID: "CAFFN", Number: "2", Unit: "g", Decimals: 2, Constituent: true}},
			Foods:   stream([]*food.Food{foodOf("a", "1", "x", stated("CAFFN", amount))}),
		}
	}
	assert.NotEmpty(t, tell(t, of(40), of(50)), "0.04 g and 0.05 g")
	assert.Empty(t, tell(t, of(40), of(40.4)), "0.040 g and 0.0404 g agree to the digits of the coarser")
}

func TestLimitsAndStates(t *testing.T) {
	of := func(v food.Value) difference.Edition { return edition("a", foodOf("a", "1", "x", v)) }
	assert.Equal(t, []string{"changed 1; FAT below 0.5 → below 0.2"}, tell(t, of(below("FAT", 0.5)), of(below("FAT", 0.2))))
	assert.Empty(t, tell(t, of(below("FAT", 0.5)), of(below("FAT", 0.5))))
	unknown := food.Value{Constituent: "FAT", Amount: food.None, Limit: food.None, State: estimate.Unknown}
	assert.Empty(t, tell(t, of(unknown), of(unknown)))
	limited := unknown
	limited.Limit = 2
	assert.NotEmpty(t, tell(t, of(unknown), of(limited)), "a limit was stated")
	zero := stated("FAT", 0)
	zero.State = estimate.Assumed
	assert.NotEmpty(t, tell(t, of(stated("FAT", 0)), of(zero)), "a zero that is now assumed")
}

// A column that came or went is told once, not at each food.
func TestColumns(t *testing.T) {
	old, new := columns("a"), columns("b")
	added, removed := difference.Columns(old, new)
	assert.Empty(t, added)
	assert.Empty(t, removed)
	new = append(new, food.Column{ID: "OA", Number: "4", Constituent: true})
	old = append(old, food.Column{ID: "a:5", Number: "5"})
	added, removed = difference.Columns(old, new)
	require.Len(t, added, 1)
	require.Len(t, removed, 1)
	assert.Equal(t, constituent.ID("OA"), added[0].ID)
	assert.Equal(t, constituent.ID("a:5"), removed[0].ID)
	assert.Empty(t, tell(t,
		difference.Edition{Columns: old, Foods: stream([]*food.Food{foodOf("a", "1", "x", stated("FAT", 1), stated("a:5", 1))})},
		difference.Edition{Columns: new, Foods: stream([]*food.Food{foodOf("b", "1", "x", stated("FAT", 1), stated("OA", 1))})},
	))
}

func TestErrorsEndTheStream(t *testing.T) {
	good := edition("a", foodOf("a", "1", "x"), foodOf("a", "2", "x"))
	disorder := edition("a", foodOf("a", "2", "x"), foodOf("a", "1", "x"))
	twice := edition("a", foodOf("a", "1", "x"), foodOf("a", "1", "x"))
	broken := errors.New("broken")
	failing := edition("a")
	failing.Foods = func(yield func(*food.Food, error) bool) {
		if yield(foodOf("a", "1", "x"), nil) {
			yield(nil, broken)
		}
	}
	for name, e := range map[string]difference.Edition{"disorder": disorder, "twice": twice, "failing": failing} {
		for _, pair := range [][2]difference.Edition{{good, e}, {e, good}} {
			var last error
			ended := false
			for _, err := range difference.Compare(pair[0], pair[1]) {
				require.False(t, ended, "the stream goes on after an error")
				if err != nil {
					last, ended = err, true
				}
			}
			require.Error(t, last, name)
			if name == "failing" {
				assert.ErrorIs(t, last, broken)
			}
		}
	}
	for range difference.Compare(edition("a", foodOf("a", "1", "x"), foodOf("a", "2", "x")), edition("a")) {
		break // leaving early stops both streams
	}
}

// The whole Ciqual and the same with one figure changed.
func TestWholeTable(t *testing.T) {
	release := tablestest.Open(t, ciqual.Format, tablestest.Published(t, "ciqual2020"))
	var foods, changed []*food.Food
	for f, err := range release.Foods {
		require.NoError(t, err)
		foods = append(foods, f)
		other := *f
		other.Values = slices.Clone(f.Values)
		if f.ID.Code == "18071" {
			i := slices.IndexFunc(other.Values, func(v food.Value) bool { return v.Constituent == "OA" })
			other.Values[i].Amount = 0.1 // printed: 0,033
		}
		changed = append(changed, &other)
	}
	for _, all := range [][]*food.Food{foods, changed} {
		slices.SortFunc(all, func(a, b *food.Food) int { return strings.Compare(a.ID.Code, b.ID.Code) })
	}
	a := difference.Edition{Columns: release.Columns, Foods: stream(foods)}
	assert.Empty(t, tell(t, a, a))
	assert.Equal(t, []string{"changed 18071; OA 0.033 → 0.1"}, tell(t, a, difference.Edition{Columns: release.Columns, Foods: stream(changed)}))
}
