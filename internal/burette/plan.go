package burette

import (
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/estimate"
)

// Plan is how somebody would titrate a liquid who has not begun.
type Plan struct {
	Grams    float64 // of the liquid
	Molarity float64 // of the base, mol/l
	End      float64 // pH
	Points   int     // with the liquid itself
}

// Usual is the plan for a liquid of which the usual sample, in g, takes mol of base to its end: a
// stronger base where that is more than a burette holds, a larger sample where it is hardly anything.
func Usual(grams, mol float64) Plan {
	p := Plan{Grams: grams, Molarity: rowOf("usual base").value, End: EndOfPlan(), Points: int(rowOf("points of a plan").value)}
	ml := func() float64 { return mol / p.Molarity * mlPerLitre }
	for _, stronger := range []string{"stronger base", "strongest base"} {
		if ml() > rowOf("most of a burette").value {
			p.Molarity = rowOf(stronger).value
		}
	}
	if ml() < rowOf("least of a plan").value {
		p.Grams = max(grams, rowOf("larger sample").value)
	}
	return p
}

// EndOfPlan is the pH up to which somebody titrates.
func EndOfPlan() float64 { return rowOf("end of a plan").value }

const mlPerLitre = 1000

// Lay gives the points of a plan in equal steps of base, without their pH: the volume is read with
// a standard deviation of off ml, and each ml brings kg of water.
func (p Plan) Lay(mol, off, water float64) []Point {
	list := make([]Point, p.Points)
	perMl := p.Molarity / mlPerLitre
	for i := range list {
		list[i].Base = mol * float64(i) / float64(p.Points-1)
		list[i].Water = list[i].Base / perMl * water
		if i > 0 { // of no volume nothing is read
			list[i].Off = off * perMl
		}
	}
	return list
}

// Pourer is what base is measured with.
type Pourer struct {
	Name string
	Off  float64   // standard deviation of a volume that was read, ml
	All  []float64 // by draw: what it pours over what its scale says, the same at each volume
}

// Names of what base is measured with.
const (
	ByBurette = "burette"
	BySyringe = "syringe"
	ByProved  = "proved"
)

// Pourers gives the burette and the syringe of data/burette.csv, and the syringe whose base was
// proved on a weighed acid, with what strength and sample are off by draw by draw.
func Pourers(ens estimate.Ensemble, path string, strength []float64) []Pourer {
	within := func(what string) []float64 {
		half := rowOf(what).value
		return ens.Column(estimate.Input{Central: 1, Shape: estimate.Uniform, Low: 1 - half, High: 1 + half, Stream: ens.Stream("burette", path, what)})
	}
	syringe := within("syringe")
	both := make([]float64, len(strength))
	for d := range both {
		both[d] = strength[d] * syringe[d]
	}
	stroke := rowOf("stroke of a syringe").value / math.Sqrt(3)
	return []Pourer{
		{ByBurette, rowOf("burette").value / math.Sqrt(3), strength},
		{BySyringe, stroke, both},
		{ByProved, stroke, within("proved base")},
	}
}

// KnownWell reports whether a base that is known to half of a 90 % interval, as a share, need not
// be proved on a weighed acid first.
func KnownWell(half float64) bool { return half <= rowOf("known well").value }

// Proof is a weighed acid that tells the strength of a base.
type Proof struct {
	Share float64 // of citric acid in the solution
	Grams float64 // of the solution
	Mol   float64 // of protons in it, up to the end of a plan
}

// ProofOf is the usual one, of a sample.
func ProofOf(grams float64) Proof {
	citric := acid.All()[acid.Must("citric")]
	share := rowOf("acid of a proof").value
	return Proof{share, grams, grams * share / citric.Molar * float64(len(citric.Steps))}
}

// Few gives the points of further that are worth their base, by place and in their order, and by how
// much all of them narrow the acids: the best one, the one that tells most beside it, and so on, up
// to as many, and at least as many as the curve wants before it tells anything. What was poured stays in the beaker, so the first of them comes next, and none is
// passed over for one that tells more behind it.
func (o *Outlook) Few(further []Point, most int) (places []int, narrows float64, err error) {
	o.watch(append(append([]Point{}, o.read...), further...))
	jac, r, err := o.information()
	if err != nil || len(further) == 0 {
		return nil, 0, err
	}
	kept := make([]int, len(o.read))
	for k := range kept {
		kept[k] = k
	}
	first, err := o.told(jac, r, kept)
	if err != nil {
		return nil, 0, err
	}
	least := Fewest() - len(o.read)
	for last := first; len(places) < max(most, least); {
		best, gain, then := -1, rowOf("worth a point").value, last
		if len(places) < least {
			gain = 0
		}
		for k := range further {
			if slices.Contains(places, k) {
				continue
			}
			with, err := o.told(jac, r, append(kept[:len(kept):len(kept)], len(o.read)+k))
			if err != nil {
				return nil, 0, err
			}
			if by := with.Narrows(last); by >= gain {
				best, gain, then = k, by, with
			}
		}
		if best < 0 {
			break
		}
		places, kept, last = append(places, best), append(kept, len(o.read)+best), then
		narrows = then.Narrows(first)
	}
	slices.Sort(places)
	return places, narrows, nil
}

// Fewest is how many points a curve wants before it tells acids apart.
func Fewest() int { return int(rowOf("fewest points").value) }

// TidyStep is a volume that somebody can read, of which some forty are in what is left, ml: 1, 2 or 5
// of a decimal place; 0 where nothing is left.
func TidyStep(left float64) float64 {
	const steps, finest = 40, 0.01
	if left < finest {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(left/steps)))
	for _, times := range []float64{5, 2} {
		if times*step <= left/steps {
			step *= times
			break
		}
	}
	return max(step, finest)
}
