package difference

import (
	"math"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Columns gives the columns that only one of two editions has.
func Columns(old, new []food.Column) (added, removed []food.Column) {
	was, is := keys(old), keys(new)
	for _, c := range new {
		if _, ok := was[columnKey(c)]; !ok {
			added = append(added, c)
		}
	}
	for _, c := range old {
		if _, ok := is[columnKey(c)]; !ok {
			removed = append(removed, c)
		}
	}
	return added, removed
}

// keys gives the place of each column.
func keys(columns []food.Column) map[string]int {
	places := make(map[string]int, len(columns))
	for i, c := range columns {
		places[columnKey(c)] = i
	}
	return places
}

// columnKey names a column in whatever edition: the id of the vocabulary, or
// ":number".
func columnKey(c food.Column) string {
	if c.Constituent {
		return string(c.ID)
	}
	return ":" + c.Number
}

// key is columnKey of a value of a table.
func key(table string, id constituent.ID) string {
	if number, kept := strings.CutPrefix(string(id), table+":"); kept {
		return ":" + number
	}
	return string(id)
}

// comparer knows the columns of both editions.
type comparer struct {
	old, new map[string]int
	oldStep  []float64 // per column: one in the last decimal it says it prints, in the unit stored; 0 if it does not say
	newStep  []float64
}

func newComparer(old, new []food.Column) *comparer {
	return &comparer{old: keys(old), new: keys(new), oldStep: steps(old), newStep: steps(new)}
}

func steps(columns []food.Column) []float64 {
	all := make([]float64, len(columns))
	for i, c := range columns {
		if c.Decimals < 0 {
			continue
		}
		all[i] = math.Pow10(-c.Decimals)
		if stored, ok := constituent.Find(string(c.ID)); ok {
			if factor, ok := unit.Convert(c.Unit, stored.Unit); ok {
				all[i] *= factor
			}
		}
	}
	return all
}

// both reports whether both editions have the column.
func (c *comparer) both(key string) bool {
	_, was := c.old[key]
	_, is := c.new[key]
	return was && is
}

// place is where a value stands in the new edition.
func (c *comparer) place(old, new *food.Food, v Value) int {
	table := old.ID.Table
	if v.New != nil {
		table = new.ID.Table
	}
	return c.new[key(table, v.Constituent)]
}

// differ reports whether two values of a column differ by more than rounding.
func (c *comparer) differ(key string, old, new *food.Value) bool {
	if old.State != new.State {
		return true
	}
	a, b := figure(old), figure(new)
	if food.Stated(a) != food.Stated(b) {
		return true
	}
	if !food.Stated(a) {
		return false
	}
	coarser := max(step(a, c.oldStep[c.old[key]]), step(b, c.newStep[c.new[key]]))
	const noise = 1e-9 // of arithmetic in binary, relative
	return math.Abs(a-b) > coarser/2+noise*max(a, b)
}

// figure is what a value states: its amount or its limit.
func figure(v *food.Value) float64 {
	switch v.State {
	case estimate.Trace, estimate.Below, estimate.Unknown:
		return v.Limit
	}
	return v.Amount
}

// step is one in the last decimal of a figure: the last that it has or, if that
// is finer, the last that its column prints (0: not stated).
func step(x, column float64) float64 {
	const digits = 12 // significant, beyond which a figure is noise of arithmetic
	text := strconv.FormatFloat(x, 'e', digits-1, 64)
	mantissa, exponent, _ := strings.Cut(text, "e")
	_, fraction, _ := strings.Cut(strings.TrimRight(mantissa, "0"), ".")
	power, _ := strconv.Atoi(exponent)
	own := math.Pow10(min(power-len(fraction), 0)) // zeros before the point are digits
	if column > 0 {
		return min(own, column)
	}
	return own
}
