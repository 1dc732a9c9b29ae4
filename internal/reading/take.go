package reading

import (
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/meter"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/titration"
)

// sweeps is how often what the curvature of the model leaves is taken away
// after an update. Each pass leaves a small part of the one before.
const sweeps = 4

// Stated is what the steps state of a pot.
type Stated struct {
	Mass bool
	Gas  bool // in g/l
	// Met is the acidity that it was brought to, as its instrument read it: what is read
	// beside it moves what the dose was, not what was met.
	Met acidity.Surely
}

// Bench takes the readings of pots.
type Bench struct {
	Lab    *acidity.Laboratory
	gauge  *liquid.Gauge // for which, while a pot is read, the constants of nature are others
	Hand   amount.Hand
	Meters *meter.Run // the instruments of the shelf; nil: there are none
	faults *fail.List

	surveying bool // what was read is only looked at

	Notes    []note.Note
	Readings []Reading
	Titrated []titration.Told
	Doubted  bool // what was read of an acidity and its recipe contradict one another
}

// NewBench makes one for the readings of a pot; what is wrong with them goes into faults.
func NewBench(lab *acidity.Laboratory, hand amount.Hand, faults *fail.List) *Bench {
	return &Bench{Lab: lab, gauge: lab.Gauge, Hand: hand, faults: faults}
}

func (b *Bench) note(n note.Note) { b.Notes = append(b.Notes, n) }

// Take conditions a pot on all that was read of it, in one joint update. In
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
// (update.go), no constituent leaves its own range (range.go), and what is left is water,
// where water may have gone or come (water.go). A gas that is stated stays as it is (gas.go).
//
// Readings of acidity stand as they are, not in logarithms. They are swept once: what
// is left of them is closed by meet. A titration takes the place of all that the
// composition says of acids and ions (package titration). A pH that was read takes the
// place of those that have been published (package acidity).
//
// What is read against its recipe leaves the pot between the two (worlds.go).
func (b *Bench) Take(pot *ledger.Pot, read []*drink.Measured, state Stated) {
	if len(read) == 0 {
		return
	}
	before := pot.Copy()
	b.span(pot, before, read, state, b.take(pot, read, state))
	b.nextLot(pot, read)
}

// take conditions a pot on readings as if none could be wrong.
func (b *Bench) take(pot *ledger.Pot, read []*drink.Measured, state Stated) taken {
	if slices.ContainsFunc(read, func(m *drink.Measured) bool { return m.PH != nil }) {
		b.Lab.Forget(pot)
	}
	told := b.tellOpen(pot, read)
	list, rest := tellsLast(b.read(pot, read), told)
	heldPH, heldTA := b.held(pot, list, state.Met)
	before := keepCells(pot, len(list) > 0)
	target := map[string][]float64{}
	if len(rest) > 0 {
		condition := func() { target = b.condition(pot, rest, before, state.Mass) }
		if state.Gas {
			prep.KeepAdded(pot, func() { b.keepGas(pot, condition) })
		} else {
			prep.KeepAdded(pot, condition)
		}
	}
	if bench := slices.DeleteFunc(slices.Clone(read), func(m *drink.Measured) bool { return m.Titration == nil }); len(bench) > 0 {
		rig := &titration.Rig{Lab: b.Lab, Hand: b.Hand, Meters: b.Meters, Faults: b.faults}
		rig.Titrate(pot, bench)
		b.Notes, b.Titrated = append(b.Notes, rig.Notes...), append(b.Titrated, rig.Told...)
		b.Doubted = b.Doubted || rig.Doubted
		delete(target, amount.ReadTA) // the titration tells it
	}
	if target[amount.ReadTA] == nil {
		target[amount.ReadTA] = heldTA
	}
	if target[amount.ReadPH] == nil && (target[amount.ReadTA] != nil || state.Met.PH) {
		target[amount.ReadPH] = heldPH
	}
	if target[amount.ReadPH] != nil || target[amount.ReadTA] != nil {
		mass := pot.Mass()
		if err := meet(b.Lab, pot, before.spareAcids(pot), target[amount.ReadPH], target[amount.ReadTA]); err != nil {
			b.faults.Add(read[len(read)-1].At(), "check the reading and the recipe", "the acidity that was read cannot be met: %s", err.Error())
		}
		if target[amount.ReadMass] != nil {
			estimate.Logs(mass)
			fillUp(pot, mass)
		}
	}
	t := taken{list: list, doubts: b.report(pot, list, before), weighed: state.Mass || target[amount.ReadMass] != nil, closed: target[amount.ReadMass] != nil,
		titrated: slices.ContainsFunc(read, func(m *drink.Measured) bool { return m.Titration != nil })}
	t.acidity.pH, t.acidity.per100g = target[amount.ReadPH], target[amount.ReadTA]
	return t
}

// tellsLast puts the reading last that told how much of what is open is water, with those that ask
// for the same of the pot, and gives the rest, on which it is conditioned: it has said all that it
// can, and who reads twice sees whether they agree.
func tellsLast(list []reading, told string) (all, rest []reading) {
	var last []reading
	for _, r := range list {
		if told == "" || !slices.Contains([]string{amount.ReadBrix, amount.ReadTDS, amount.ReadDensity}, r.kind) {
			rest = append(rest, r)
			continue
		}
		r.open = r.kind == told
		r.spread = math.Hypot(math.Sqrt(estimate.Variance(r.h)), r.r)
		last = append(last, r)
	}
	all = append(rest, last...)
	return all, all[:len(rest)]
}

// held gives the acidity of a pot that stays as it is, draw by draw, whatever was read of the
// rest; nil: it does not. The pH stays that rests on what has been published of its foods, where
// an acidity was read and no pH: a burette tells how much acid there is, not how sour the pot
// is, which stays as published. What the pot was brought to (met) stays as long as nobody
// reads it again.
func (b *Bench) held(pot *ledger.Pot, list []reading, met acidity.Surely) (pH, per100g []float64) {
	of := func(kind string) bool {
		return slices.ContainsFunc(list, func(r reading) bool { return r.kind == kind })
	}
	published := of(amount.ReadTA) && acidity.RestsOnPublished(pot)
	keepsPH, keepsTA := (met.PH || published) && !of(amount.ReadPH), met.Acidity && !of(amount.ReadTA)
	if len(list) == 0 || !keepsPH && !keepsTA {
		return nil, nil
	}
	if met.PH || met.Acidity {
		b.Lab.Settle(pot)
	}
	pH, per100g, err := b.Lab.Acidity(pot)
	if err != nil || !keepsPH {
		pH = nil
	}
	if err != nil || !keepsTA {
		per100g = nil
	}
	return pH, per100g
}

// condition makes the joint update, and gives what each reading reads afterwards, by
// kind: what the instrument says where there is no covariance to update by, and of
// acidity always, since what a table leaves out of it has no limit.
func (b *Bench) condition(pot *ledger.Pot, list []reading, before *kept, weighed bool) map[string][]float64 {
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
	b.gauge = own.With(gains.constants(own.Constants))
	scales := before.newScales(pot, target[amount.ReadMass])
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
	alcohol := b.moveAlcohol(pot, u, weighed || target[amount.ReadMass] != nil)
	before.causes = b.moveWater(pot, u)
	for j := range list {
		list[j].explained = u.kappa[j]
	}
	before.causes.alcohol = alcohol
	return target
}

// readAgain gives what a pot reads now, reading by reading; nil for those of acidity
// unless they are asked for.
func (b *Bench) readAgain(pot *ledger.Pot, list []reading, acidity bool) [][]float64 {
	now := make([][]float64, len(list))
	var pH, per100g []float64
	if acidity && slices.ContainsFunc(list, reading.linear) {
		pH, per100g, _ = b.Lab.Acidity(pot) // it was solved before
	}
	for j, r := range list {
		switch r.kind {
		case amount.ReadPH:
			now[j] = slices.Clone(pH) // each its own: two may be read of one thing
		case amount.ReadTA:
			now[j] = slices.Clone(per100g)
		default:
			now[j] = b.Expected(pot, r.kind)
		}
	}
	return now
}

// bulk gives the central mass of each row.
func bulk(pot *ledger.Pot) []float64 {
	mass := make([]float64, len(pot.Rows))
	for row := range pot.Rows {
		mass[row] = pot.CentralOf(row, constituent.Mass)
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
