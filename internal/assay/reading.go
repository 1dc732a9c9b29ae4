package assay

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// sweeps is how often what the curvature of the model leaves is taken away
// after an update. Each pass leaves a small part of the one before.
const sweeps = 4

// stated is what the steps state of a pot.
type stated struct {
	mass bool
	gas  bool // in g/l
}

// bench takes the readings of pots.
type bench struct {
	lab    *laboratory
	gauge  *gauge // for which, while a pot is read, the constants of nature are others
	hand   hand
	rig    *rig
	faults *fail.List

	notes    []Note
	readings []Reading
}

func newBench(lab *laboratory, hand hand, faults *fail.List) *bench {
	b := &bench{lab: lab, gauge: lab.gauge, hand: hand, faults: faults}
	b.rig = &rig{lab: lab, hand: hand, faults: faults, notes: &b.notes}
	return b
}

func (b *bench) note(n Note) { b.notes = append(b.notes, n) }

// take conditions a pot on all that was read of it, in one joint update. In
// logarithms, draw by draw,
//
//	x′ = x + K·(z + ε − h),   K = cov(x, h)·(cov(h) + R)⁻¹
//
// with h what the recipe gives for each reading z, R the variances of the
// instruments and ε drawn from them (0 at central values): the ensemble form of
// the least squares of recipe and readings (Evensen 2003, Ocean Dynamics 53:343,
// with perturbed observations). The least certain entry moves most, an entry
// that has nothing to do with a reading stays, contributions stay.
//
// Each reading itself moves to h′ = h + cov(h)·(cov(h) + R)⁻¹·(z + ε − h). The
// readings are not linear in the logarithms, so the pot is swept with the same K
// until it reads h′; a mass is then closed on its h′ exactly.
//
// A reading that the recipe does not explain counts as the nearest that it does
// (readingupdate.go), no constituent leaves its own range (readingrange.go), and what is
// left is water, where water may have gone or come (readingwater.go). A gas
// that is stated stays as it is (readinggas.go).
//
// Readings of acidity stand as they are, not in logarithms. They are swept once: what
// is left of them is closed by closeOnAcidity. A titration takes the place of all that
// the composition says of acids and ions (titrate). A pH that was read takes the place
// of those that have been published (calibration.go).
func (b *bench) take(pot *ledger.Pot, read []*drink.Measured, state stated) {
	if slices.ContainsFunc(read, func(m *drink.Measured) bool { return m.PH != nil }) {
		b.lab.forget(pot)
	}
	list := b.read(pot, read)
	held := b.heldPH(pot, list)
	before := keepCells(pot, len(list) > 0)
	target := map[string][]float64{}
	if len(list) > 0 {
		condition := func() { target = b.condition(pot, list, before, state.mass) }
		if state.gas {
			prep.KeepAdded(pot, func() { b.keepGas(pot, condition) })
		} else {
			prep.KeepAdded(pot, condition)
		}
	}
	if bench := slices.DeleteFunc(slices.Clone(read), func(m *drink.Measured) bool { return m.Titration == nil }); len(bench) > 0 {
		b.rig.titrate(pot, bench)
		delete(target, readTA) // the titration tells it
	}
	if target[readPH] != nil || target[readTA] != nil {
		mass := pot.Mass()
		if target[readPH] == nil {
			target[readPH] = held
		}
		if err := b.lab.meet(pot, before.spareAcids(pot), target[readPH], target[readTA]); err != nil {
			b.faults.Add(read[len(read)-1].At(), "check the reading and the recipe", "the acidity that was read cannot be met: %s", err.Error())
		}
		if target[readMass] != nil {
			estimate.Logs(mass)
			fillUp(pot, mass)
		}
	}
	b.report(pot, list, before)
}

// heldPH gives the pH of a pot that rests on what has been published of its foods, where an
// acidity was read and no pH: a burette tells how much acid there is, not how sour the pot
// is, which stays as published. nil: nothing is held.
func (b *bench) heldPH(pot *ledger.Pot, list []reading) []float64 {
	of := func(kind string) bool {
		return slices.ContainsFunc(list, func(r reading) bool { return r.kind == kind })
	}
	if !of(readTA) || of(readPH) || !restsOnPublished(pot) {
		return nil
	}
	pH, _, err := b.lab.acidity(pot)
	if err != nil {
		return nil
	}
	return pH
}

// condition makes the joint update, and gives what each reading reads afterwards, by
// kind: what the instrument says where there is no covariance to update by, and of
// acidity always, since what a table leaves out of it has no limit.
func (b *bench) condition(pot *ledger.Pot, list []reading, before *kept, weighed bool) map[string][]float64 {
	b.findWater(pot, list, weighed)
	u := newUpdate(list)
	target := u.targets()
	for j := range list {
		list[j].spread = u.sd(j)
	}
	if !u.possible() {
		return target
	}
	bulky := bulk(pot)
	gains := u.gains(pot)
	own := b.gauge
	b.gauge = own.with(gains.constants(own.constants))
	scales := before.newScales(pot, target[readMass])
	gains.apply(pot, u.move)
	for i := range sweeps {
		scales.share(pot)
		gains.apply(pot, u.left(b.readAgain(pot, list, i == 0)))
	}
	b.gauge = own
	for range sweeps { // what is held comes back on the scale, for others to take
		scales.share(pot)
		before.hold(pot)
	}
	if scales != nil {
		if before.held || gains.held {
			fillUp(pot, scales.target)
		}
		scales.close(pot)
	}
	growBounds(pot, bulky)
	before.causes = b.moveWater(pot, u)
	return target
}

// readAgain gives what a pot reads now, reading by reading; nil for those of acidity
// unless they are asked for.
func (b *bench) readAgain(pot *ledger.Pot, list []reading, acidity bool) [][]float64 {
	now := make([][]float64, len(list))
	var pH, per100g []float64
	if acidity && slices.ContainsFunc(list, reading.linear) {
		pH, per100g, _ = b.lab.acidity(pot) // it was solved before
	}
	for j, r := range list {
		switch r.kind {
		case readPH:
			now[j] = pH
		case readTA:
			now[j] = per100g
		default:
			now[j] = b.expected(pot, r.kind)
		}
	}
	return now
}

// bulk gives the central mass of each row.
func bulk(pot *ledger.Pot) []float64 {
	mass := make([]float64, len(pot.Rows))
	for row := range pot.Rows {
		mass[row] = pot.Of(row, constituent.Mass)[0]
	}
	return mass
}

// growBounds lets what is unknown of a row grow with the row. It does not
// shrink it: a reading of what is known says nothing of the rest.
func growBounds(pot *ledger.Pot, before []float64) {
	for row, now := range bulk(pot) {
		if now <= before[row] || before[row] <= 0 {
			continue
		}
		bounds := pot.Bounds(row)
		for i := range bounds {
			bounds[i] *= now / before[row] // NaN stays NaN
		}
	}
}
