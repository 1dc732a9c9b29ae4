package titration

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/burette"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// hardly is the share of a liquid's equivalents below which an acid is not asked for.
const hardly = 0.002

// disagrees is the kind of a note that somebody has to decide.
const disagrees = "reading disagrees"

// asked is what a curve is asked of a pot: the acids that its recipe names, in the sample.
type asked struct {
	liquid burette.Liquid
	mass   []float64 // of the pot, g
	grams  float64   // of the sample
}

// ask lists the acids of a pot as its recipe has them, draw by draw. None: nothing that a
// titration could tell apart, as in what protein buffers, or in what was titrated before, whose ions
// are a spectrum.
func (r *Rig) ask(pot *ledger.Pot, grams, solvent float64) (asked, bool) {
	a := asked{mass: pot.Mass(), grams: grams}
	protein := pot.Total(constituent.Protein)
	if unit.Hundred*protein[0]/a.mass[0] > acidity.SpanOf("protein").High || pot.N <= estimate.FewestDraws {
		return a, false
	}
	for row := range pot.Rows {
		if acidity.Titrated(pot, row) {
			return a, false
		}
	}
	in := r.Lab.IonsOf(pot, pot.N)
	n := pot.N
	mol, central, sol := make([][]float64, len(acid.All())), acid.New(0), acid.New(0)
	for i := range mol {
		mol[i] = make([]float64, n)
	}
	strong := make([]float64, n)
	for d := range n {
		in.Fill(sol, d)
		part := grams / a.mass[d]
		for i, x := range sol.Acids {
			mol[i][d] = x * part
		}
		strong[d] = sol.Strong * part
		if d == 0 {
			central.Pour(sol, part)
		}
	}
	citric := acid.Must("citric")
	nameless := make([]float64, n)
	for d, named := range pot.Total(acidity.Citric) {
		own := named / constituent.Must(acidity.Citric).Molar * grams / a.mass[d]
		nameless[d] = max(mol[citric][d]-own, 0) * float64(len(acid.All()[citric].Steps))
		mol[citric][d] = own
	}
	equivalents := nameless[0]
	for i, x := range acid.All() {
		equivalents += mol[i][0] * float64(len(x.Steps))
	}
	a.liquid = burette.Liquid{Rest: central, Strong: strong}
	central.Solvent, central.Strong = grams*solvent/unit.Kilo, 0
	central.Acids[citric] = 0
	for i, x := range acid.All() {
		if x.Constituent == "" || x.Constituent == constituent.CarbonDioxide || mol[i][0]*float64(len(x.Steps)) <= hardly*equivalents {
			if acid.Index(i) == citric {
				central.Acids[i] = mol[i][0]
			}
			continue
		}
		central.Acids[i] = 0
		a.liquid.Acids = append(a.liquid.Acids, burette.Amount{Acid: acid.Index(i), Mol: mol[i]})
	}
	if nameless[0] > hardly*equivalents {
		a.liquid.Nameless = nameless
	}
	if protein[0] > 0 {
		a.liquid.Amines = r.amines(pot, protein, a)
	}
	return a, len(a.liquid.Acids) > 0
}

// amines draws the groups of free amino acids that come with a pot's protein, in the sample.
func (r *Rig) amines(pot *ledger.Pot, protein []float64, a asked) []float64 {
	per := burette.AminesPerGram(r.Lab.Ens, pot.Rows[0].Profile.Food.ID.String())
	out := make([]float64, len(protein))
	for d, x := range protein {
		out[d] = per[d] * x * a.grams / a.mass[d]
	}
	return out
}

// kit is what the bench titrates with. Who reads several liquids with one meter brings the same
// zero to each: it is drawn on the stream of what read.
func (r *Rig) kit(m *drink.Measured, b sampled) burette.Kit {
	zero := r.meter(m)
	for d := len(zero) - 1; d >= 0; d-- {
		zero[d] -= zero[0]
	}
	k := burette.NewKit(r.Lab.Ens, m.StepPath(), m.Acid == nil)
	k.Zero, k.Factor = zero, append([]float64(nil), b.strength...)
	if by := r.by(m); by != nil { // its check is the prior
		k.Noise = by.Noise
		for d, more := range by.Steeper() {
			k.Zero[d], k.Slope[d] = -zero[d], 1+more
		}
	}
	return k
}

// tell finds which acids the curve tells of a pot, and moves them in it, within their own range. In
// draws in which the recipe is right and the curve is wrong, by doubt, they stay; where no mixture
// of them titrates like the curve they span the recipe and the curve, as whatever was read against
// its recipe does (package reading), so that none is as sure as the end of its range. It gives the
// posterior; nil where nothing was asked, or the curve is not believed.
func (r *Rig) tell(pot *ledger.Pot, m *drink.Measured, b sampled, solvent float64, recipe []float64) *burette.Posterior {
	a, any := r.ask(pot, b.grams, solvent)
	if !any {
		return nil
	}
	k := r.kit(m, b)
	p, err := burette.Ask(r.Lab.Ens, m.StepPath(), acidity.MeterCelsius, a.liquid, k, b.points)
	if err != nil { // too few points, or nothing uncertain: the recipe stands
		if o, err := burette.Look(r.Lab.Ens, m.StepPath(), acidity.MeterCelsius, a.liquid, k, b.points); err == nil {
			r.Told = append(r.Told, begun(m, a, o, k).at(b))
		}
		return nil
	}
	contradicts := p.Contradicts() || !p.Adjusted && burette.Rejected(p.Zero[0])
	r.Doubted = r.Doubted || contradicts
	var side []float64
	if contradicts {
		side = r.sides(m)
	}
	used := make([][]float64, len(p.Acids))
	var held []bool
	for i, of := range a.liquid.Acids {
		was, read := of.Mol, p.Acids[i]
		is := slices.Clone(read)
		keepRange(was, is)
		held = append(held, math.Abs(read[0]-is[0]) > stat.StdDev(read[1:], nil))
		for d := 1; d < len(is); d++ {
			doubt := recipe[d]
			if contradicts {
				doubt = max(doubt, -side[d])
				is[d] = between(is[d], read[d], max(side[d], 0))
			}
			is[d] = between(is[d], was[d], doubt)
		}
		move(pot, acid.All()[of.Acid], was, is)
		used[i] = is
	}
	t := toldOf(p, m, a, k, p.Acids, used)
	t.Contradicts = contradicts
	for i := range t.Acids {
		t.Acids[i].Held = held[i]
	}
	r.Told = append(r.Told, t.at(b))
	r.Notes = append(r.Notes, t.notes(note.Place(m.StepPath()))...)
	if contradicts {
		return nil
	}
	return p
}

// between gives what is that share of the way from one positive amount to another, in logarithms.
func between(from, to, share float64) float64 {
	if share == 0 || from <= 0 {
		return from
	}
	return from * math.Pow(to/from, share)
}
