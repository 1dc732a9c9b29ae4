package sr

import (
	"fmt"
	"math"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// The fields of NUT_DATA that are read.
const (
	valueFields  = 18
	fieldNutrNo  = 1
	fieldAmount  = 2
	fieldPoints  = 3
	fieldError   = 4
	fieldSource  = 5
	fieldDeriv   = 6
	fieldFrom    = 7
	fieldMin     = 10
	fieldMax     = 11
	assumedDeriv = "Z"
)

// values turns rows of NUT_DATA into values. It keeps one copy of each text.
type values struct {
	columns map[string]column
	origins map[string]origin
	refs    map[string]string
	seen    []int // per column, the food (counted from 1) that last had it
	current int
	food    []food.Value // of the current food, gathered in the same place for all
}

// of reads the current line.
func (v *values) of(in *lines) (food.Value, error) {
	none := food.Value{}
	col, ok := v.columns[string(in.field(fieldNutrNo))]
	if !ok {
		return none, in.wrongField(fieldNutrNo, fmt.Sprintf("column %.40q is not in NUTR_DEF.txt", in.field(fieldNutrNo)), again)
	}
	if v.seen[col.index] == v.current {
		return none, in.wrongField(fieldNutrNo, fmt.Sprintf("food %s has column %s twice", in.field(0), in.field(fieldNutrNo)), again)
	}
	v.seen[col.index] = v.current
	from, ok := v.origins[string(in.field(fieldSource))]
	if !ok {
		return none, in.wrongField(fieldSource, fmt.Sprintf("source code %.40q is not in SRC_CD.txt", in.field(fieldSource)), again)
	}
	amount, stated, err := in.number(fieldAmount)
	if err != nil {
		return none, err
	}
	if !stated {
		return none, in.wrongField(fieldAmount, "the value is empty", again)
	}
	points, err := in.count(fieldPoints)
	if err != nil {
		return none, err
	}
	value := food.Value{Constituent: col.id, Amount: amount * col.factor, N: points, SD: food.None, Limit: food.None, Source: from.id, Ref: v.ref(in), Line: in.line}
	if value.Low, err = scaled(in, fieldMin, col.factor); err != nil {
		return none, err
	}
	if value.High, err = scaled(in, fieldMax, col.factor); err != nil {
		return none, err
	}
	standardError, err := scaled(in, fieldError, col.factor)
	if err != nil {
		return none, err
	}
	if points >= 1 {
		value.SD = standardError * math.Sqrt(float64(points)) // None stays None
	}
	setState(&value, from, string(in.field(fieldDeriv)) == assumedDeriv, col.limit)
	if what := table.CannotBe(value); what != "" {
		return none, in.wrongField(fieldAmount, fmt.Sprintf("%.40q of food %s, column %s, %s", in.field(fieldAmount), in.field(0), in.field(fieldNutrNo), what), again)
	}
	return value, nil
}

// setState says how the value is known; a zero that was looked for becomes
// below its limit.
func setState(v *food.Value, from origin, assumed bool, limit float64) {
	switch {
	case v.Amount == 0 && (from.assumed || assumed):
		v.State = estimate.Assumed
	case v.Amount == 0 && v.N >= 1:
		v.State, v.Amount, v.Limit = estimate.Below, food.None, limit
	case from.analysed && v.N >= 1 && v.Amount > 0:
		v.State = estimate.Measured
	default:
		v.State = estimate.Calculated
	}
}

// scaled reads a number in the stored unit; None if blank.
func scaled(in *lines, field int, factor float64) (float64, error) {
	x, stated, err := in.number(field)
	if err != nil || !stated {
		return food.None, err
	}
	return x * factor, nil
}

// ref names the derivation and the food that the value was taken from.
func (v *values) ref(in *lines) string {
	code, from := in.field(fieldDeriv), in.field(fieldFrom)
	if len(code) == 0 && len(from) == 0 {
		return ""
	}
	if len(from) == 0 {
		if text, ok := v.refs[string(code)]; ok {
			return text
		}
		text := derivRef(in.text(fieldDeriv))
		v.refs[string(code)] = text
		return text
	}
	return derivRef(in.text(fieldDeriv)) + " from " + in.text(fieldFrom)
}
