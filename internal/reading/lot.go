package reading

import (
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/benchlog"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// nextLot lets a pot be of the next lot of a bar, where its readings were logged of several (drink.ForNextLot): it reads
// what it reads, and in each draw as much more or less as lots differ. The water of a lot is what differs, of a mass all of it, of
// a pH the strong ions, of an acidity the acid without a name.
func (b *Bench) nextLot(pot *ledger.Pot, read []*drink.Measured) {
	for _, m := range read {
		for _, l := range m.Logged {
			if !l.NextLot {
				continue
			}
			column := b.Lab.Ens.Column(estimate.Input{Shape: estimate.Normal, SD: l.Spread.Next, Low: math.Inf(-1), High: math.Inf(1), Stream: b.Lab.Ens.Stream("lot", m.StepPath(), l.Quantity)})
			b.Lab.Ens.Journal.Write(estimate.Readings, "how lots of "+m.What()+" differ in "+l.Quantity, column)
			b.differ(pot, m, l.Quantity, l.Spread, column)
		}
	}
}

// differ moves a pot by what its lots differ in a reading.
func (b *Bench) differ(pot *ledger.Pot, m *drink.Measured, kind string, s benchlog.Spread, by []float64) {
	switch kind {
	case amount.ReadPH, amount.ReadTA:
		pH, per100g, err := b.Lab.Acidity(pot)
		if err != nil {
			return // of none nothing was read
		}
		for d := range by {
			if kind == amount.ReadPH {
				pH[d] += by[d]
			} else {
				per100g[d] *= max(1+by[d]/s.Mean, 0)
			}
		}
		if kind == amount.ReadPH {
			per100g = nil
		}
		spare := make([]float64, pot.N)
		estimate.Fill(spare, 1-closeEnough)
		if err := meet(b.Lab, pot, spare, pH, per100g); err != nil {
			b.faults.Add(m.At(), "check the lots in the log", "the next lot cannot be met: %s", err.Error())
		}
	case amount.ReadMass:
		for d := range by {
			by[d] = max(1+by[d]/s.Mean, 0)
		}
		pot.Scale(by)
	default:
		want := b.Expected(pot, kind)
		for d := range want {
			want[d] = math.Log(want[d] * max(1+by[d]/s.Mean, limitOf("least water")))
		}
		t := openTap(pot)
		factor := b.waterFor(t, kind, want, [2]float64{math.Log(limitOf("least water")), math.Log(limitOf("most water"))})
		t.set(func(d int) float64 { return math.Exp(factor[d]) })
		t.tell()
	}
}
