package reading

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// ReadingKinds are those that take no equilibrium to foretell.
var ReadingKinds = []string{amount.ReadMass, amount.ReadBrix, amount.ReadTDS, amount.ReadDensity, amount.ReadABV}

// Expected gives what an instrument would read of a pot, draw by draw.
func (b *Bench) Expected(pot *ledger.Pot, kind string) []float64 {
	switch kind {
	case amount.ReadMass:
		return pot.Mass()
	case amount.ReadBrix:
		return b.gauge.Brix(pot)
	case amount.ReadTDS:
		return b.gauge.Solids(pot)
	case amount.ReadDensity:
		return b.gauge.Density(pot)
	case amount.ReadABV:
		return b.gauge.Abv(pot)
	}
	panic("reading: no reading is called " + kind)
}

// expectedCentrally gives ln of what an instrument would read of a pot if the constants of
// nature were certain.
func (b *Bench) expectedCentrally(pot *ledger.Pot, kind string) []float64 {
	h := (&Bench{gauge: b.gauge.Certain()}).Expected(pot, kind)
	estimate.Logs(h)
	return h
}

// reading is one reading of a pot: in logarithms, but for those of acidity, which are
// linear (a pH is a logarithm already, and a titratable acidity may be none).
type reading struct {
	kind  string
	path  string    // of the step that read
	z     float64   // as read, in the unit of h
	read  float64   // as read, in its own unit
	h     []float64 // what the recipe gives
	noisy []float64 // z + ε; ε is 0 in column 0
	r     float64   // standard deviation of ε where the recipe expects it
	own   float64   // standard deviation of ε where it was read
	model []float64 // part of h: what the model is off by; nil if it is not
	open  bool      // the recipe hardly tells it, so it cannot disagree

	of     []string // the component that was read; none: the drink
	unit   string   // as read
	scale  float64  // from the unit as read to that of h, where there are no logarithms
	nature float64  // share of the constants of nature in the variance of h
	spread float64  // standard deviation of its distance from the recipe
	water  bool     // water that went or came may be its cause
	told   float64  // how well it tells water, in its standard deviations

	explained float64 // what of its distance from the recipe the recipe explains
	by        *taker  // the instrument of the shelf; nil: nobody says which
}

func (r reading) linear() bool { return r.kind == amount.ReadPH || r.kind == amount.ReadTA }

// read reads the file's readings of one state of a pot; faults are reported, and then
// there is none to use.
func (b *Bench) read(pot *ledger.Pot, read []*drink.Measured) (list []reading) {
	before := b.faults.Len()
	var expected *acidityOf
	for _, m := range read {
		if m.Mass != nil {
			if m.Mass.Measure.Kind != unit.Mass {
				b.faults.Add(m.At(), "write it in g", "a mass is read in %s", note.Quote(m.Mass.Measure.Name))
				continue
			}
			list = b.with(list, pot, m, b.weighed(m))
		}
		for _, given := range []struct {
			kind string
			q    *drink.Quantity
		}{{amount.ReadBrix, m.Brix}, {amount.ReadTDS, m.TDS}, {amount.ReadDensity, m.Density}, {amount.ReadABV, m.ABV}} {
			if given.q == nil {
				continue
			}
			list = b.with(list, pot, m, b.shown(m, *given.q, given.kind))
		}
		if m.PH == nil && m.TA == nil {
			continue
		}
		if expected == nil {
			if expected = b.foretell(pot, m); expected == nil {
				continue
			}
		}
		list = b.withAcidity(list, pot, m, *expected)
	}
	if b.faults.Len() > before {
		return nil
	}
	slices.SortStableFunc(list, func(a, b reading) int { return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.z, b.z)) })
	return list // in whatever order it was read
}

// with adds a reading in logarithms. sd is its standard deviation: where the recipe expects
// it, so that it counts the same whatever was read; where the recipe expects so little that the
// instrument would hardly see it and more was read, as far up as it sees well.
func (b *Bench) with(list []reading, pot *ledger.Pot, m *drink.Measured, s shown) []reading {
	h, kind, read, sd := b.Expected(pot, s.kind), s.kind, s.column, s.sd
	z := read[0]
	if z <= 0 || !estimate.Positive(h) {
		b.faults.Add(m.At(), "check the reading and the recipe", "%s was read, but the reading is zero or the recipe gives none of it", kind)
		return list
	}
	// an instrument sees more than it may be off by
	if z < sd(z) {
		b.faults.Add(m.At(), "leave it out, or read it with a finer instrument and write its ±", "%s: the reading is less than its instrument may be off by", kind)
		return list
	}
	b.write(m, s)
	expected := h[0]
	sure := max(expected, min(z, limitOf("seen")*sd(z)))
	estimate.Logs(h)
	nature := 0.0
	if all := estimate.Variance(h); all > 0 {
		nature = min(max(1-estimate.Variance(b.expectedCentrally(pot, kind))/all, 0), 1)
	}
	noisy := make([]float64, len(read))
	for d := range read {
		noisy[d] = math.Log(z) + read[d]/z - 1 // ε is as wide in logarithms, however coarse the instrument
	}
	return append(list, reading{
		kind: kind, path: m.StepPath(), of: m.Of(), unit: amount.MustInstrument(kind).Unit,
		z: z, read: s.read, h: h, noisy: noisy, r: sd(sure) / sure, own: sd(z) / z, nature: nature, by: s.by,
	})
}

// acidityOf is what the recipe says of a pot's acidity, draw by draw; open if it hardly
// does.
type acidityOf struct {
	pH, per100g []float64
	open        bool
}

// foretell settles the pot, for a reading to move what its tables leave out, and gives
// the acidity that the recipe expects; nil, with a fault, if there is none.
func (b *Bench) foretell(pot *ledger.Pot, m *drink.Measured) *acidityOf {
	open := b.Lab.IonsOf(pot, 1).Open()
	b.Lab.Settle(pot)
	pH, per100g, err := b.Lab.Acidity(pot)
	if err != nil {
		b.faults.Add(m.At(), "check the recipe", "its acidity was read, but the recipe has none: %s", err.Error())
		return nil
	}
	return &acidityOf{pH, per100g, open}
}

// withAcidity adds the readings of pH and of titratable acidity, the latter brought to
// g/100 g.
func (b *Bench) withAcidity(list []reading, pot *ledger.Pot, m *drink.Measured, expected acidityOf) []reading {
	add := func(q drink.Quantity, kind string, h, model []float64, in func(d int) float64) {
		s := b.shown(m, q, kind)
		b.write(m, s)
		read := s.column
		for d := range read {
			read[d] *= in(d)
		}
		h = slices.Clone(h)
		for d, off := range model {
			h[d] += off
		}
		list = append(list, reading{
			kind: kind, path: m.StepPath(), of: m.Of(), unit: cmp.Or(q.Unit, amount.MustInstrument(kind).Unit), scale: in(0),
			z: read[0], read: q.Number, h: h, noisy: read, r: s.sd(max(h[0]/in(0), 0)) * in(0), own: s.sd(q.Number) * in(0),
			model: model, open: expected.open, by: s.by,
		})
	}
	if m.PH != nil {
		add(*m.PH, amount.ReadPH, expected.pH, acidity.ModelError(b.Lab.Ens, strings.Join(m.Of(), "/")), func(int) float64 { return 1 })
	}
	if m.TA != nil {
		density := b.gauge.Density(pot)
		add(*m.TA, amount.ReadTA, expected.per100g, nil, map[string]func(int) float64{
			"%":        func(int) float64 { return 1 },
			"g/100 g":  func(int) float64 { return 1 },
			"g/100 ml": func(d int) float64 { return 1 / density[d] },
			"g/l":      func(d int) float64 { return 100 / (acidity.PerLitre * density[d]) },
		}[m.TA.Unit])
	}
	return list
}

// Taken is what has been read of a pot as it stands, by kind. A titration tells both
// readings of acidity.
type Taken map[string]bool

// TakenOf tells what was read.
func TakenOf(read []*drink.Measured) Taken {
	t := Taken{}
	for _, m := range read {
		for kind, is := range map[string]bool{
			amount.ReadMass: m.Mass != nil, amount.ReadBrix: m.Brix != nil, amount.ReadTDS: m.TDS != nil, amount.ReadDensity: m.Density != nil, amount.ReadABV: m.ABV != nil,
			amount.ReadPH: m.PH != nil || m.Titration != nil, amount.ReadTA: m.TA != nil || m.Titration != nil,
		} {
			t[kind] = t[kind] || is
		}
	}
	return t
}

// Acidity tells what was read of a pot's acidity.
func (t Taken) Acidity() acidity.Surely {
	return acidity.Surely{PH: t[amount.ReadPH], Acidity: t[amount.ReadTA]}
}
