package houserules

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/liquid"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// serving answers for how many servings there are, how large, how hot, and how long they take.
func (c Case) serving(h *drink.HouseRules) []Line {
	var list []Line
	d := c.Assay.Drink
	if w := h.Servings; w != nil {
		l := Line{Key: "servings", Rule: "servings: " + w.Text, Verdict: Fails, Why: fmt.Sprintf("serves: %d", d.Serves)}
		if n := float64(d.Serves); n >= w.Low && n <= w.High {
			l.Verdict = Pass
		}
		list = append(list, l)
	}
	if w := h.Volume; w != nil {
		list = append(list, c.volume(w))
	}
	if w := h.Temperature; w != nil {
		list = append(list, stated("temperature", "temperature as served: "+w.Text, w, d.At, " °C", "write at the top of the drink file: at: … °C"))
	}
	if w := h.Minutes; w != nil {
		list = append(list, stated("minutes", "minutes of the performance: "+w.Text, w, d.Takes, " min", "take the time and write it at the top of the drink file: takes: … min"))
	}
	return list
}

// volume holds the draws of a serving's volume against two ends.
func (c Case) volume(w *drink.Within) Line {
	v := c.Assay.Volume
	l := Line{Key: "volume", Rule: "volume of a serving: " + w.Text, Verdict: CannotTell, Settle: []string{"measure a serving in a cylinder, or weigh it: under finish: - measured: {mass: … g}"}}
	if why := liquid.TooDry(c.Assay.Serving); why != "" {
		l.Why = "a serving has no volume as a liquid: " + why
		return l
	}
	if math.IsNaN(v.Mean) || v.Mean <= 0 {
		l.Why = "nobody knows its density"
		return l
	}
	draws := slices.Clone(v.Draws)
	if len(draws) == 0 {
		draws = []float64{v.Mean}
	}
	inside := 0
	for _, x := range draws {
		if unit.AtLeast(x, w.Low) && !unit.Over(x, w.High) {
			inside++
		}
	}
	p := float64(inside) / float64(len(draws))
	l.Why = fmt.Sprintf("%s ml (%s–%s): holds in %d of 100", note.Number(v.Mean), note.Number(v.Low), note.Number(v.High), claims.OfHundred(p))
	switch holds, fails := claim.Sides(p); {
	case holds:
		l.Verdict, l.Settle = Pass, nil
	case fails:
		l.Verdict, l.Settle = Fails, nil
	}
	return l
}

// stated holds what the file states against two ends.
func stated(key, rule string, w *drink.Within, q *drink.Quantity, in, settle string) Line {
	l := Line{Key: key, Rule: rule, Verdict: CannotTell, Settle: []string{settle}}
	if q == nil {
		l.Why = "the drink file does not say"
		return l
	}
	low, high := q.Number-q.Half, q.Number+q.Half
	l.Why = "stated: " + note.Grams(q.Number) + in
	if q.Half > 0 {
		l.Why += " ± " + note.Grams(q.Half) + in
	}
	switch {
	case unit.AtLeast(low, w.Low) && !unit.Over(high, w.High):
		l.Verdict, l.Settle = Pass, nil
	case !unit.AtLeast(high, w.Low) || unit.Over(low, w.High):
		l.Verdict, l.Settle = Fails, nil
	default:
		l.Settle = []string{"state it more closely"}
	}
	return l
}
