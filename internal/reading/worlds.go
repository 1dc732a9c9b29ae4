package reading

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/meter"
)

// taken is a pot as its readings left it.
type taken struct {
	list    []reading
	doubts  []doubt
	acidity struct{ pH, per100g []float64 } // to which it was brought; nil: it was not
	weighed bool                            // how much there is of it is known
	closed  bool                            // on the mass that was read

	titrated bool // a titration tells its acidity
}

// span lets a pot that was read against its recipe be, draw by draw, what either of them says:
// in a third of the draws the reading is wrong, and the pot is what its recipe and the readings
// that agree make of it; in a third it is right, beyond what the recipe explains; in the others
// it is between the two. So the interval of whatever hangs on it holds both. How far a draw goes
// to its end grows with the doubt, from nothing where the reading agrees; the central values
// stay what is used.
//
// Where several readings are doubted the recipe's end is without those that are doubted most, in
// steps of their doubts (the weights of a Choquet integral), so that it does not jump when one
// more joins them; and each draw has one reading of all that were taken to be the right one, so
// that those that agree leave less to one that does not.
func (b *Bench) span(pot, before *ledger.Pot, read []*drink.Measured, state Stated, t taken) {
	if !slices.ContainsFunc(t.doubts, doubt.any) {
		return
	}
	side := b.Hand.Sides(read[0])
	pick := b.Lab.Ens.Column(estimate.Input{Shape: estimate.Uniform, High: 1, Stream: b.Lab.Ens.Stream("reading", "which", Reading{Path: read[0].Of()}.of())})
	var worlds []ledger.Toward
	lean := func(to *ledger.Pot, share func(d int) float64) {
		if to == nil {
			return
		}
		col := make([]float64, pot.N)
		for d := 1; d < pot.N; d++ {
			col[d] = share(d)
		}
		worlds = append(worlds, ledger.Toward{Pot: to, Share: col})
	}
	order := make([]int, len(t.list))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(t.doubts[j].recipe, t.doubts[i].recipe) })
	for n, j := range order {
		next := 0.0
		if n+1 < len(order) {
			next = t.doubts[order[n+1]].recipe
		}
		if weight := t.doubts[j].recipe - next; weight > 0 {
			lean(b.without(before, read, state, t.list, order[:n+1]), func(d int) float64 { return weight * max(-side[d], 0) })
		}
	}
	for j, of := range t.doubts {
		if of.reading > 0 {
			lean(b.asIfRight(pot, t, j), func(d int) float64 {
				if int(pick[d]*float64(len(t.list))) != j {
					return 0
				}
				return of.reading * max(side[d], 0)
			})
		}
	}
	ledger.Lean(pot, worlds...)
}

// without gives the pot as it is without some of its readings; nil where there is none.
func (b *Bench) without(before *ledger.Pot, read []*drink.Measured, state Stated, list []reading, wrong []int) *ledger.Pot {
	var left []*drink.Measured
	sour := false
	for _, m := range read {
		kept := *m
		for _, j := range wrong {
			if list[j].path == m.StepPath() {
				clearReading(&kept, list[j].kind)
			}
		}
		left = append(left, &kept)
	}
	for _, r := range list {
		sour = sour || r.linear()
	}
	pot, alone := before.Copy(), NewBench(b.Lab, b.Hand, &fail.List{})
	alone.Meters = b.Meters
	alone.take(pot, left, state)
	if alone.faults.Len() > 0 {
		return nil
	}
	if slices.ContainsFunc(read, func(m *drink.Measured) bool { return m.PH != nil }) {
		b.Lab.Forget(pot)
	} else if sour {
		b.Lab.Settle(pot)
	}
	return pot
}

// clearReading takes a reading of a kind away.
func clearReading(m *drink.Measured, kind string) {
	switch kind {
	case amount.ReadMass:
		m.Mass = nil
	case amount.ReadBrix:
		m.Brix = nil
	case amount.ReadTDS:
		m.TDS = nil
	case amount.ReadDensity:
		m.Density = nil
	case amount.ReadABV:
		m.ABV = nil
	case amount.ReadPH:
		m.PH = nil
	case amount.ReadTA:
		m.TA = nil
	case meter.Titration:
		m.Titration = nil
	}
}

// asIfRight gives the pot as it were if a reading were right however little the recipe explains
// of it: a mass by a share of all; what tells water by water, and where the mass is known by the
// rest of the pot too; an acidity by its named acids. nil: the pot cannot read that.
func (b *Bench) asIfRight(used *ledger.Pot, t taken, j int) *ledger.Pot {
	r, pot := t.list[j], used.Copy()
	switch {
	case r.linear():
	case r.kind == amount.ReadMass:
		pot.Scale(toward(r.noisy, used.Mass()))
	default:
		tap := openTap(pot)
		if b.tells(tap, r) < limitOf("notice") {
			return nil
		}
		ends := [2]float64{math.Log(limitOf("least water of a contradiction")), math.Log(limitOf("most water of a contradiction"))}
		factor := b.waterFor(tap, r.kind, r.noisy, ends)
		tap.set(func(d int) float64 { return math.Exp(factor[d]) })
		tap.tell()
		if t.weighed {
			mass := used.Mass()
			estimate.Logs(mass)
			pot.Scale(toward(mass, pot.Mass()))
		}
	}
	if t.titrated {
		asTitrated(pot)
	}
	if t.acidity.pH == nil && t.acidity.per100g == nil {
		return pot
	}
	spare := make([]float64, pot.N)
	estimate.Fill(spare, 1-closeEnough)
	mass := pot.Mass()
	if err := meet(b.Lab, pot, spare, t.acidity.pH, t.acidity.per100g); err != nil {
		return nil
	}
	if t.closed {
		estimate.Logs(mass)
		fillUp(pot, mass)
	}
	return pot
}

// asTitrated makes a gram of a pot what was titrated of it, however much water there is.
func asTitrated(pot *ledger.Pot) {
	var carried [][]float64
	grams := make([]float64, pot.N)
	for row := range pot.Rows {
		for _, c := range pot.Traced(row) {
			if _, is := c.Tracer.(*acidity.Titration); is {
				carried = append(carried, c.Column)
			}
		}
	}
	for _, column := range carried {
		for d, x := range column {
			grams[d] += x
		}
	}
	mass := pot.Mass()
	for _, column := range carried {
		for d := range column {
			if grams[d] > 0 {
				column[d] *= mass[d] / grams[d]
			}
		}
	}
}

// toward gives the factors that bring masses to exp(target).
func toward(target, mass []float64) []float64 {
	factor := make([]float64, len(mass))
	for d, m := range mass {
		if factor[d] = 1; m > 0 {
			factor[d] = math.Exp(target[d]) / m
		}
	}
	return factor
}
