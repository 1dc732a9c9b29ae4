package assay

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// split reads the shares that the designer states.
func (w *walk) split(pot *ledger.Pot, s *drink.Split) (prep.Outcome, error) {
	var keep []prep.Kept
	for _, k := range s.Keep {
		c, ok := constituent.Find(k.Tag)
		if !ok || c.Kind == constituent.Figure {
			w.faults.Add(k.Place, "use a tagname such as SUGAR, FAT, PROCNT, NA", "unknown constituent %s", quote(k.Tag))
			continue
		}
		keep = append(keep, prep.Kept{ID: c.ID, Share: w.amounts.quantity(k.Share, percent, s.StepPath()+"/"+k.Tag)})
	}
	var collect []float64
	if s.Collect != nil {
		collect = w.amounts.column(*s.Collect, s.StepPath()+"/collect")
	}
	return prep.Split(pot, keep, collect)
}
