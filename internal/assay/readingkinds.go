package assay

import (
	"math"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// The kinds of reading that condition a pot.
const (
	readMass    = "mass"
	readBrix    = "brix"
	readTDS     = "tds"
	readDensity = "density"
	readABV     = "abv"
)

var readingKinds = []string{readMass, readBrix, readTDS, readDensity, readABV}

// expected gives what an instrument would read of a pot, draw by draw.
func (w *walk) expected(pot *ledger.Pot, kind string) []float64 {
	switch kind {
	case readMass:
		return pot.Mass()
	case readBrix:
		return w.brix(pot)
	case readTDS:
		return w.solids(pot)
	case readDensity:
		return w.density(pot)
	case readABV:
		return w.abv(pot)
	}
	panic("assay: no reading is called " + kind)
}

// reading is one reading of a pot, in logarithms.
type reading struct {
	kind  string
	z     float64   // as read
	h     []float64 // ln of what the recipe gives
	noisy []float64 // ln z + ε; ε is 0 in column 0
	r     float64   // standard deviation of ε
}

// take reads the file's readings of a pot; faults are reported. ok is false if
// there is none to use.
func (w *walk) take(pot *ledger.Pot, m *drink.Measured) (list []reading, ok bool) {
	before := w.faults.Len()
	if m.Mass != nil {
		if m.Mass.Measure.Kind != unit.Mass {
			w.faults.Add(m.At(), "write it in g", "a mass is read in %s", quote(m.Mass.Measure.Name))
			return nil, false
		}
		col := w.amounts.draw(*m.Mass, m.StepPath()+"/"+readMass)
		list = w.with(list, pot, m, readMass, col, w.amounts.spread(*m.Mass))
	}
	for _, given := range []struct {
		kind string
		q    *drink.Quantity
	}{{readBrix, m.Brix}, {readTDS, m.TDS}, {readDensity, m.Density}, {readABV, m.ABV}} {
		if given.q == nil {
			continue
		}
		q := w.withInstrument(*given.q, given.kind)
		col := w.amounts.drawQuantity(q, 1, m.StepPath()+"/"+given.kind)
		list = w.with(list, pot, m, given.kind, col, halfSD(&q))
	}
	return list, len(list) > 0 && w.faults.Len() == before
}

// withInstrument gives a reading without ± the range of the instrument, at least
// half of the last digit written.
func (w *walk) withInstrument(q drink.Quantity, kind string) drink.Quantity {
	if q.Half == 0 {
		q.Half = max(mustInstrument(kind).halfAt(q.Number), math.Pow10(-q.Decimals)/2)
	}
	return q
}

// with adds a reading in logarithms.
func (w *walk) with(list []reading, pot *ledger.Pot, m *drink.Measured, kind string, read []float64, sd float64) []reading {
	h := w.expected(pot, kind)
	z := read[0]
	if z <= 0 || !positive(h) {
		w.faults.Add(m.At(), "check the reading and the recipe", "%s was read, but the reading is zero or the recipe gives none of it", kind)
		return list
	}
	w.journal.write(Readings, kind+" of "+readPot(m), read)
	logs(h)
	noisy := make([]float64, len(read))
	for d := range read {
		noisy[d] = math.Log(z) + read[d]/z - 1 // ε is r wide in logarithms too, however coarse the instrument
	}
	return append(list, reading{kind, z, h, noisy, sd / z})
}

// readPot names the pot of a reading: its path without the word.
func readPot(m *drink.Measured) string {
	path, _ := strings.CutSuffix(m.StepPath(), "/end/measured")
	return path
}

func logs(col []float64) {
	for d, x := range col {
		col[d] = math.Log(x)
	}
}

func positive(col []float64) bool {
	for _, x := range col {
		if x <= 0 {
			return false
		}
	}
	return true
}
