package drivers

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/reading"
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

// Sample is a pot at the moment when it could be read.
type Sample struct {
	of   string
	read map[string][]float64 // by kind
}

// SampleOf gives what could be read of a pot; of is its component, empty for the drink. Readings
// taken already, and those that say nothing of such a liquid, are left out: a
// refractometer is misled by alcohol, a hydrometer by bubbles, an alcoholometer finds none where there is
// none, and a scale for coffee is for coffee and tea.
func SampleOf(b *reading.Bench, of string, pot *ledger.Pot, read reading.Taken) Sample {
	s := Sample{of: of, read: map[string][]float64{}}
	for _, kind := range reading.ReadingKinds {
		if !read[kind] && suits(pot, kind) {
			if col := b.Expected(pot, kind); estimate.Positive(col) && !estimate.Certain(col) {
				s.read[kind] = col
			}
		}
	}
	if pH, per100g, ok := readable(b.Lab, pot.First(min(pot.N, b.Lab.Solved()))); ok {
		if !read[amount.ReadPH] && !estimate.Certain(pH) {
			s.read[amount.ReadPH] = pH
		}
		if !read[amount.ReadTA] && estimate.Positive(per100g) && !estimate.Certain(per100g) {
			s.read[amount.ReadTA] = per100g
		}
	}
	return s
}

// readable gives the acidity that a meter and a burette would read of a pot, if its
// foods say enough of it. Equilibria take time: they are solved for no more draws here than
// elsewhere.
func readable(lab *acidity.Laboratory, pot *ledger.Pot) (pH, per100g []float64, ok bool) {
	if acidity.Unsolvable(pot) != "" {
		return nil, nil, false
	}
	in := lab.IonsOf(pot, pot.N)
	if in.Open() {
		return nil, nil, false
	}
	pH, per100g, err := in.Read(pot)
	return pH, per100g, err == nil
}

func suits(pot *ledger.Pot, kind string) bool {
	alcohol := pot.Central(constituent.Alcohol) > 0
	switch kind {
	case amount.ReadBrix:
		return !alcohol && !liquid.Steeped(pot)
	case amount.ReadTDS:
		return !alcohol && liquid.Steeped(pot)
	case amount.ReadABV:
		return alcohol
	case amount.ReadDensity: // bubbles carry a hydrometer
		return liquid.Still(pot.Central(constituent.CarbonDioxide), pot.Central(constituent.Mass))
	}
	return true
}

// worthReading is the least that a reading narrows anything, to be listed: a
// fiftieth is less than a thousand draws can tell.
const worthReading = 0.02

// Next ranks the readings not yet taken by how much they narrow the wanted
// constituents of the serving. In logarithms the reading h with the instrument's
// variance r² takes from the variance of y
//
//	cov(y, h)² / (var(h) + r²)
//
// A correlation that is noise counts as none.
func Next(b *reading.Bench, samples []Sample, wanted []constituent.ID, serving *ledger.Pot) []Suggestion {
	return ranked(b, samples, spreadOf(wanted, serving))
}

// Closing ranks them by how much they narrow a column of the draws, such as the margin of a claim,
// in the same way, the column as it stands. Its draws may be fewer than the samples'.
func Closing(b *reading.Bench, samples []Sample, column []float64) []Suggestion {
	if len(column)-1 < estimate.FewestDraws || estimate.Certain(column) {
		return nil
	}
	return ranked(b, samples, []spread{{nil, column}})
}

// ranked gives the readings that narrow some of the figures enough, the most useful first.
func ranked(b *reading.Bench, samples []Sample, figures []spread) []Suggestion {
	var list []Suggestion
	for _, s := range samples {
		for _, kind := range slices.Concat(reading.ReadingKinds, []string{amount.ReadPH, amount.ReadTA}) {
			if h, ok := s.read[kind]; ok {
				if g := suggest(b, s.of, kind, h, figures); len(g.Narrows) > 0 && g.Narrows[0].By >= worthReading {
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

func spreadOf(wanted []constituent.ID, serving *ledger.Pot) []spread {
	var list []spread
	if serving.N-1 < estimate.FewestDraws {
		return nil
	}
	for _, id := range wanted {
		c := constituent.Must(id)
		col := composition.ColumnOf(serving, c)
		listed := slices.ContainsFunc(list, func(s spread) bool { return s.of == c })
		if !listed && estimate.Positive(col) && !estimate.Certain(col) {
			estimate.Logs(col)
			list = append(list, spread{c, col})
		}
	}
	return list
}

func suggest(b *reading.Bench, of, kind string, h []float64, figures []spread) Suggestion {
	s := Suggestion{Of: of, Reading: kind, Expect: estimate.Summarise(h), Unit: amount.MustInstrument(kind).Unit}
	r := instrumentSD(b, kind, h[0])
	h = slices.Clone(h)
	if kind == amount.ReadPH {
		off := acidity.ModelError(b.Lab.Ens, of)
		for d := range h {
			h[d] += off[d]
		}
	} else {
		r /= h[0]
		estimate.Logs(h)
	}
	own := stat.Variance(h[1:], nil)
	for _, f := range figures {
		n := min(len(h), len(f.logs))
		rho := stat.Correlation(f.logs[1:n], h[1:n], nil)
		if math.Abs(rho) <= estimate.Noise/math.Sqrt(float64(n-1)) {
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
func instrumentSD(b *reading.Bench, kind string, z float64) float64 {
	half := amount.MustInstrument(kind).HalfAt(z)
	if kind == amount.ReadMass && b.Hand.Scale != nil {
		half = b.Hand.Scale.Base() / 2
	}
	return half / amount.Sqrt3
}
