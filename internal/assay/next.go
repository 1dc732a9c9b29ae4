package assay

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Suggestion is a reading that nobody has taken, and what it would narrow.
type Suggestion struct {
	Of      string // a component, or empty: the finished drink
	Reading string
	Expect  estimate.Summary // what it should read, by the recipe
	Unit    string
	Narrows []Narrowing // the wanted constituents, most first
	Score   float64     // mean narrowing of all wanted constituents that have a spread
}

// Narrowing is by how much of itself the standard deviation of a constituent of
// the serving would shrink.
type Narrowing struct {
	Constituent *constituent.Constituent
	By          float64
}

// sample is a pot at the moment when it could be read.
type sample struct {
	of   string
	read map[string][]float64 // by kind
}

// offer keeps what could be read of a pot, if anybody asks for it. Readings
// taken already, and those that say nothing of such a liquid, are left out: a
// refractometer is misled by alcohol, an alcoholometer finds none where there is
// none, and a scale for coffee is for coffee and tea.
func (w *walk) offer(of string, pot *ledger.Pot, taken []*drink.Measured) {
	if w.journal == nil || len(pot.Rows) == 0 {
		return
	}
	s := sample{of: of, read: map[string][]float64{}}
	for _, kind := range readingKinds {
		if !has(taken, kind) && suits(pot, kind) {
			if col := w.expected(pot, kind); positive(col) && !constant(col) {
				s.read[kind] = col
			}
		}
	}
	if pH, per100g, ok := w.readable(pot); ok {
		if !has(taken, readPH) && !constant(pH) {
			s.read[readPH] = pH
		}
		if !has(taken, readTA) && positive(per100g) && !constant(per100g) {
			s.read[readTA] = per100g
		}
	}
	w.samples = append(w.samples, s)
}

// readable gives the acidity that a meter and a burette would read of a pot, if its
// foods say enough of it.
func (w *walk) readable(pot *ledger.Pot) (pH, per100g []float64, ok bool) {
	if w.unsolvable(pot) != "" || w.ionsOf(pot, 1).open() {
		return nil, nil, false
	}
	pH, per100g, err := w.acidity(pot)
	return pH, per100g, err == nil
}

// lastReadings gives what was read of a pot as it stands: the steps that read after the
// last that does not, and what was read at the end.
func lastReadings(end *drink.Measured, steps []drink.Step) (read []*drink.Measured) {
	for _, step := range steps {
		if m, ok := step.(*drink.Measured); ok {
			read = append(read, m)
		} else {
			read = nil
		}
	}
	if end != nil {
		read = append(read, end)
	}
	return read
}

// has reports whether a kind of reading is among those taken. A titration tells both
// readings of acidity.
func has(read []*drink.Measured, kind string) bool {
	return slices.ContainsFunc(read, func(m *drink.Measured) bool {
		return map[string]bool{
			readMass: m.Mass != nil, readBrix: m.Brix != nil, readTDS: m.TDS != nil, readDensity: m.Density != nil, readABV: m.ABV != nil,
			readPH: m.PH != nil || m.Titration != nil, readTA: m.TA != nil || m.Titration != nil,
		}[kind]
	})
}

func suits(pot *ledger.Pot, kind string) bool {
	alcohol := pot.Central(constituent.Alcohol) > 0
	switch kind {
	case readBrix:
		return !alcohol && !steeped(pot)
	case readTDS:
		return !alcohol && steeped(pot)
	case readABV:
		return alcohol
	}
	return true
}

// worthReading is the least that a reading narrows anything, to be proposed: a
// fiftieth is less than a thousand draws can tell.
const worthReading = 0.02

// next ranks the readings not yet taken by how much they narrow the wanted
// constituents of the serving. In logarithms the reading h with the instrument's
// variance r² takes from the variance of y
//
//	cov(y, h)² / (var(h) + r²)
//
// A correlation that is noise counts as none.
func (a *Assay) next(w *walk) []Suggestion {
	figures := a.spreadOfWanted()
	var list []Suggestion
	for _, s := range w.samples {
		for _, kind := range slices.Concat(readingKinds, []string{readPH, readTA}) {
			if h, ok := s.read[kind]; ok {
				if g := w.suggest(s.of, kind, h, figures); len(g.Narrows) > 0 && g.Narrows[0].By >= worthReading {
					list = append(list, g)
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b Suggestion) int { return cmp.Compare(b.Score, a.Score) })
	return list
}

// spread is the logarithms of a constituent of the serving.
type spread struct {
	of   *constituent.Constituent
	logs []float64
}

func (a *Assay) spreadOfWanted() []spread {
	var list []spread
	if a.Draws < fewestDraws {
		return nil
	}
	for _, id := range a.Wanted {
		c := constituent.Must(id)
		col := columnOf(a.Serving, c)
		listed := slices.ContainsFunc(list, func(s spread) bool { return s.of == c })
		if !listed && positive(col) && !constant(col) {
			logs(col)
			list = append(list, spread{c, col})
		}
	}
	return list
}

func (w *walk) suggest(of, kind string, h []float64, figures []spread) Suggestion {
	s := Suggestion{Of: of, Reading: kind, Expect: estimate.Summarise(h), Unit: mustInstrument(kind).unit}
	r := w.instrumentSD(kind, h[0])
	h = slices.Clone(h)
	if kind == readPH {
		for d, off := range w.modelError(of) {
			h[d] += off
		}
	} else {
		r /= h[0]
		logs(h)
	}
	own := stat.Variance(h[1:], nil)
	least := noise / math.Sqrt(float64(len(h)-1))
	for _, f := range figures {
		rho := stat.Correlation(f.logs[1:], h[1:], nil)
		if math.Abs(rho) <= least {
			continue
		}
		by := 1 - math.Sqrt(1-rho*rho*own/(own+r*r))
		s.Narrows = append(s.Narrows, Narrowing{f.of, by})
		s.Score += by / float64(len(figures))
	}
	slices.SortStableFunc(s.Narrows, func(a, b Narrowing) int { return cmp.Compare(b.By, a.By) })
	return s
}

// instrumentSD is the spread of a reading that nobody has taken yet; a mass is
// weighed on the bar's scale.
func (w *walk) instrumentSD(kind string, z float64) float64 {
	half := mustInstrument(kind).halfAt(z)
	if kind == readMass && w.amounts.scale != nil {
		half = w.amounts.scale.Base() / 2
	}
	return half / sqrt3
}
