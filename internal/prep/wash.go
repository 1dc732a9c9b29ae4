package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Wash stirs a fat (a pot of its own) into the pot and takes it out again, chilled
// and strained. Of the fat's rows almost no fat stays (data/kinetics.csv, fat
// left); pulp and protein pass as through a cloth; water, salt and sugars of the
// fat, such as butter's, stay in the drink. Collect is the mass collected, nil if
// it was not weighed. It is an error to collect more than there is.
//
// Limits: what the fat takes out of the drink (aroma, a little alcohol) is not
// known and not taken off. The allergens of the fat stay.
func Wash(pot, fat *ledger.Pot, collect []float64, f Factors) (Outcome, error) {
	bound, _ := fat.Bound(constituent.Fat)
	least := unit.LimitOf("fat of a wash", "g/100 g").Low
	// guard: a wash has a fat
	if most := unit.Hundred * (fat.Central(constituent.Fat) + bound); most < least*fat.Central(constituent.Mass) {
		return Outcome{}, fail.New(fail.Wrong, "what is washed with holds next to no fat", "wash with butter, oil or the like; add: brings what stays in the drink")
	}
	m := &washing{
		left: f.draw("fat left", kinetics()["fat left"]), part: estimate.Constant(pot.N, 1),
		others: newFilter("cloth", f),
	}
	if collect != nil {
		liquor := passing(fat, m)
		for d, x := range pot.Mass() {
			liquor[d] += x
		}
		if collect[0] > liquor[0] {
			return Outcome{}, unlike("collect %s g: about %s g are left without the fat", collect[0], liquor[0])
		}
		m.part = partOf(collect, liquor)
		m.others.part = m.part
	}
	out := Outcome{Lost: apply(fat, m).Plus(apply(pot, evenly(m.part)))}
	pot.Join(fat)
	return out, nil
}

// washing keeps what the fat leaves in the drink.
type washing struct {
	left   []float64
	part   []float64
	others *filter
}

func (m *washing) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	if c.Phase != fatPhase {
		m.others.Share(row, c, share)
		return
	}
	for d := range share {
		share[d] = m.left[d] * m.part[d]
	}
}
