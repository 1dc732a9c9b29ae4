package titration

import (
	"cmp"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/burette"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Outlook is what a titration that nobody has begun, or a further point of one, would tell of a pot.
type Outlook struct {
	Of    string // the component; empty: the finished drink
	Acids []Suspect
	Plan  burette.Plan   // of a titration that nobody has begun
	Ml    float64        // of base that the plan takes
	Kits  []Kit          // what each would tell by the plan; of one that was begun its own, by its points so far
	Read  int            // points so far
	Few   int            // how many it wants before they count for the acids; 0: they do
	Next  *Addition      // nil: no point is worth its base
	Wrong bool           // the curve contradicts its recipe: somebody has to decide first
	Done  bool           // the last point stands at the end of what tells acids apart
	Proof *burette.Proof // the base is to be proved on it first; nil: it is known well
}

// Left is what the best of the kits leaves of the recipe's interval of an acid, as a share.
func (o Outlook) Left(i int) float64 {
	least := o.Kits[0].Half[i]
	for _, k := range o.Kits {
		least = min(least, k.Half[i])
	}
	of := o.Acids[i].Recipe
	if of.High <= of.Low {
		return 1
	}
	return 2 * least / (of.High - of.Low)
}

// Suspect is an acid that may be there, g in 100 g.
type Suspect struct {
	*constituent.Constituent
	Recipe estimate.Summary
}

// Kit is what a kit tells of the acids of an outlook, by their place.
type Kit struct {
	Name   string    // burette.ByBurette and its like; empty: what the file says of it
	Half   []float64 // half of the 90 % interval, g in 100 g
	Joined []Pair
	Base   float64 // half of what sample and base are off by together, as a share
}

// Pair is two acids that cannot be told apart.
type Pair struct {
	First, Second int
	Correlation   float64
	Half          float64 // of their sum, g in 100 g
}

// Addition is the next point of a titration that was begun.
type Addition struct {
	Ml      float64   // to add
	Total   float64   // ml then
	PH      float64   // that the meter will show
	Then    []float64 // ml at the points worth reading after it
	Narrows float64   // by how much of themselves the intervals of the acids shrink with all of them, in their mean
}

// Foresee gives the outlook of a pot that nobody has titrated; nil where a titration tells none of
// its acids, as of what protein buffers.
func Foresee(lab *acidity.Laboratory, hand amount.Hand, of string, pot *ledger.Pot) *Outlook {
	name := cmp.Or(of, "the drink") + "/foreseen"
	mass, water := pot.Mass(), pot.Total(constituent.Water)
	if !(mass[0] > 0 && water[0] > 0) || acidity.Unsolvable(pot) != "" {
		return nil
	}
	r := &Rig{Lab: lab, Hand: hand}
	solvent := (water[0] + pot.Central(constituent.Alcohol)) / mass[0]
	usual := amount.MustInstrument(amount.ReadSample)
	a, k, o := r.lookAt(pot, name, usual.Usual, solvent)
	if o == nil {
		return nil
	}
	perMl := mlOfWater() / unit.Kilo
	mol, err := o.BaseTo(burette.EndOfPlan(), perMl*acidity.PerLitre)
	if err != nil || mol <= 0 {
		return nil
	}
	plan := burette.Usual(usual.Usual, mol)
	if plan.Grams != usual.Usual {
		mol *= plan.Grams / usual.Usual
		if a, k, o = r.lookAt(pot, name, plan.Grams, solvent); o == nil {
			return nil
		}
	}
	out := &Outlook{Of: of, Acids: suspects(a), Plan: plan, Ml: mol / plan.Molarity * acidity.PerLitre}
	for _, by := range burette.Pourers(lab.Ens, name, k.Factor) {
		k.Factor = by.All
		o, err := burette.Look(lab.Ens, name, acidity.MeterCelsius, a.liquid, k, nil)
		if err != nil {
			return nil
		}
		points := plan.Lay(mol, by.Off, perMl)
		if err := o.Shown(points); err != nil {
			return nil
		}
		told, err := o.Tells(points)
		if err != nil {
			return nil
		}
		kit := kitOf(by.Name, told, a)
		out.Kits = append(out.Kits, kit)
		if out.Proof == nil && !burette.KnownWell(kit.Base) {
			p := burette.ProofOf(usual.Usual)
			out.Proof = &p
		}
	}
	return out
}

// lookAt asks of a sample of a pot what its recipe tells, and of the usual kit what it is off by.
func (r *Rig) lookAt(pot *ledger.Pot, name string, grams, solvent float64) (asked, burette.Kit, *burette.Outlook) {
	a, any := r.ask(pot, grams, solvent)
	if !any {
		return a, burette.Kit{}, nil
	}
	draw := func(kind string, number float64) []float64 {
		return r.Hand.DrawQuantity(drink.Quantity{Number: number, Half: amount.MustInstrument(kind).HalfAt(number)}, 1, name+"/"+kind)
	}
	k := burette.NewKit(r.Lab.Ens, name, true)
	const neutral = 7.0
	k.Zero = draw(amount.ReadPH, neutral)
	for d := range k.Zero {
		k.Zero[d] -= neutral
	}
	sample, strength := draw(amount.ReadSample, grams), draw(amount.ReadStrength, 1)
	k.Factor = make([]float64, len(sample))
	for d := range k.Factor {
		k.Factor[d] = strength[d] * grams / sample[d]
	}
	o, err := burette.Look(r.Lab.Ens, name, acidity.MeterCelsius, a.liquid, k, nil)
	if err != nil {
		return a, k, nil
	}
	return a, k, o
}

// suspects lists the acids of a liquid.
func suspects(a asked) []Suspect {
	var list []Suspect
	for _, of := range a.liquid.Acids {
		x := acid.All()[of.Acid]
		list = append(list, Suspect{constituent.Must(x.Constituent), estimate.Summarise(times(of.Mol, x.Molar*unit.Hundred/a.grams))})
	}
	return list
}

// kitOf puts what a kit tells into grams. A curve never tells less than the recipe does.
func kitOf(name string, told burette.Told, a asked) Kit {
	gramsOf := func(i int) float64 { return acid.All()[a.liquid.Acids[i].Acid].Molar * unit.Hundred / a.grams }
	k := Kit{Name: name, Base: told.Factor}
	for i, of := range a.liquid.Acids {
		recipe := estimate.Summarise(of.Mol)
		k.Half = append(k.Half, min(told.Half[i], (recipe.High-recipe.Low)/2)*gramsOf(i))
	}
	for _, p := range told.Joined() {
		k.Joined = append(k.Joined, Pair{p.First, p.Second, p.Correlation, told.Sum([]int{p.First, p.Second}, gramsOf)})
	}
	return k
}

// Outlook is what further points of a titration that was begun would tell.
func (t Told) Outlook() *Outlook {
	out := &Outlook{Of: t.Component(), Read: t.Points, Wrong: t.Contradicts}
	for _, a := range t.Acids {
		out.Acids = append(out.Acids, Suspect{a.Constituent, a.Expected})
	}
	if t.TooFew {
		out.Few = burette.Fewest()
	}
	k := Kit{Base: (t.Base.Read.High - t.Base.Read.Low) / 2}
	for _, a := range t.Acids {
		k.Half = append(k.Half, (a.Read.High-a.Read.Low)/2)
	}
	for _, j := range t.Joined {
		k.Joined = append(k.Joined, j.pairs()...)
	}
	out.Kits = []Kit{k}
	if !burette.KnownWell(k.Base) {
		p := burette.ProofOf(amount.MustInstrument(amount.ReadSample).Usual)
		out.Proof = &p
	}
	out.Next, out.Done = t.next()
	return out
}

// pairs gives the acids of a sum as pairs, each with the sum of all.
func (j Joined) pairs() []Pair {
	var list []Pair
	for at, i := range j.Acids[1:] {
		list = append(list, Pair{j.Acids[at], i, j.Correlation, (j.Sum.High - j.Sum.Low) / 2})
	}
	return list
}

// next finds the next addition of base; of acid none is proposed.
func (t Told) next() (next *Addition, done bool) {
	if t.perMl <= 0 {
		return nil, false
	}
	water := mlOfWater() / unit.Kilo
	mol, err := t.look.BaseTo(burette.EndOfPlan(), water*acidity.PerLitre)
	if err != nil {
		return nil, false
	}
	var points []burette.Point
	var at []float64
	step := burette.TidyStep(mol/t.perMl - t.poured)
	for ml := t.poured + step; step > 0 && ml*t.perMl <= mol; ml += step {
		at = append(at, ml)
		points = append(points, burette.Point{Base: ml * t.perMl, Off: t.off, Water: ml * water})
	}
	if len(points) == 0 || t.look.Shown(points) != nil {
		return nil, true
	}
	const most = 5 // of a handful somebody sees the end
	places, narrows, err := t.look.Few(points, most)
	if err != nil || len(places) == 0 {
		return nil, false
	}
	next = &Addition{Ml: at[places[0]] - t.poured, Total: at[places[0]], PH: points[places[0]].PH, Narrows: narrows}
	for _, k := range places[1:] {
		next.Then = append(next.Then, at[k])
	}
	return next, false
}
