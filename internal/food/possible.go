package food

import (
	"math"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Impossible says what no food can have of a constituent, by data/limits.csv: more than
// 100 g in 100 g, more energy than fat; empty if nothing is wrong. rounding is the share
// by which a figure may be more, since somebody rounded it. Sums are not looked at:
// published tables print parts that exceed their total, and both stand (balance.go).
func Impossible(v Value, rounding float64) string {
	c, ok := constituent.Find(string(v.Constituent))
	if !ok {
		return "" // a column of the table's own: nothing is known of its unit
	}
	limit, scale, in := LimitOf(c)
	if scale == 0 {
		return ""
	}
	for _, x := range []float64{v.Amount, v.Limit} {
		if x *= scale; Stated(x) && !limit.Holds(x/(1+rounding)) {
			const digits = 1000
			return c.Name + " of " + strconv.FormatFloat(math.Round(x*digits)/digits, 'f', -1, 64) + " " + in + " in 100 g"
		}
	}
	return ""
}

// LimitOf gives the least and the most that 100 g can have of a constituent, in, and by
// which scale its own unit comes to that; scale is 0 where nothing limits it. What stands
// for other mass, such as monosaccharide equivalents, may be more than the whole.
func LimitOf(c *constituent.Constituent) (limit unit.Limit, scale float64, in string) {
	switch {
	case c.ID == constituent.Energy || c.ID == constituent.EnergyKcal:
		return unit.LimitOf("energy", c.Unit+"/100 g"), 1, c.Unit
	case c.PerGram > 0 && c.Kind == constituent.Figure:
		return unit.LimitOf("equivalent", "g/100 g"), 1 / c.PerGram, "g"
	case c.PerGram > 0:
		return unit.LimitOf("amount", "g/100 g"), 1 / c.PerGram, "g"
	}
	return unit.Limit{}, 0, ""
}
