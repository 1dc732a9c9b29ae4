package stfcj

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
)

// FuzzSTFCJ reads any text as a cell and as a remark: a value is finite and not
// negative, and whatever is not a value is a fault or a sign.
func FuzzSTFCJ(f *testing.F) {
	for _, seed := range []string{"1.9", "(1.9)", "Tr", "(Tr)", "(0)", "（0）", "-", "*", "14.0†", "1e400", "-1", "カフェイン： 0.06 g、タンニン： Tr", "(100 g：97 mL、100 mL：103 g)"} {
		f.Add(seed, "0.0_);\\(0.0\\)")
	}
	r := &reader{tableID: name}
	r.data()
	f.Fuzz(func(t *testing.T, cell, format string) {
		v, stated, what := r.byID["CITAC"].value(shown(cell, format), acids)
		if what != "" {
			require.False(t, stated, what)
		}
		values := r.noted(cell, mainTable)
		if stated {
			values = append(values, v)
		}
		for _, v := range values {
			for _, x := range []float64{v.Amount, v.Limit} {
				require.False(t, x < 0 || math.IsInf(x, 0), "%q: %+v", cell, v)
			}
			require.True(t, food.Stated(v.Amount) || food.Stated(v.Limit), "%q: %+v", cell, v)
		}
		if d := density(cell); food.Stated(d.GramsPerMl) {
			require.True(t, d.GramsPerMl > 0 && !math.IsInf(d.GramsPerMl, 0), cell)
		}
	})
}
