package across

import (
	"cmp"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// resultOf is a figure of a serving; what no food of it tracks is not known.
func resultOf(of composition.Composition, c *constituent.Constituent) composition.Result {
	if f, ok := of.Find(c.ID); ok {
		return f.Result
	}
	none := math.NaN()
	return composition.Result{
		Summary: estimate.Summary{Mean: none, SD: none, Low: none, High: none}, Unit: c.Unit, State: estimate.Unknown,
		Coverage: none, WithBounds: none, UpTo: none, Unknown: true, Partial: true,
	}
}

// linesOf gives the lines of the rows of a serving.
func linesOf(a *assay.Assay) []string {
	list := make([]string, len(a.Serving.Rows))
	for i, r := range a.Serving.Rows {
		list[i] = r.Line
	}
	return list
}

func compareIDs(a, b food.ID) int {
	return cmp.Or(cmp.Compare(a.Table, b.Table), cmp.Compare(a.Code, b.Code))
}
