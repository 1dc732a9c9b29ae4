package assay

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// calibratedAs is the tracer of what gives a row the pH that has been published of its
// food: grams of the food as it was published.
var calibratedAs = ledger.Tracer{Name: "published pH", As: potassium}

// brewedAs is the tracer of what gives a row the pH that has been published of such brews:
// what the brew held, over itself.
func brewedAs(path string) ledger.Tracer {
	return ledger.Tracer{Name: brewedName + path, As: potassium}
}

const brewedName = "published pH of the brew "

// proteinAs is the tracer of the acid that is missing from a food whose protein takes up
// acid: it is the protein's own charge, and stays with it when milk curdles.
var proteinAs = ledger.Tracer{Name: "published pH, by protein", As: constituent.Protein}

func isCalibration(t ledger.Tracer) bool {
	return t == calibratedAs || t == proteinAs || strings.HasPrefix(t.Name, brewedName)
}

// calibration is what a gram of a food holds beside its composition, so that it has a pH
// that such a food can have: a weak acid without a name, and a strong ion.
type calibration struct {
	Calibration
	by         evidence
	silent     bool      // the composition tells nothing of the pH
	gain       float64   // the weight of the published pH beside the composition's
	weak       []float64 // by draw: mol of acid without a name, as citric
	strong     []float64 // by draw: mol of charge that is lacking; below zero it is an anion
	none, most float64   // strong, with none and with the most of the acid that nobody has stated
}

// calibrate makes the last row of a pot, just poured, have a pH that its food can have,
// if that is needed. From here on this goes with what is dissolved.
func (w *walk) calibrate(pot *ledger.Pot, grams []float64) {
	row := len(pot.Rows) - 1
	profile := pot.Rows[row].Profile
	if prep.IsDose(profile.Food.Group) || w.calibrationOf(profile, 1) == nil {
		return
	}
	copy(pot.Carry(row, calibratedAs), grams)
	if takesUpAcid(profile.Food) {
		copy(pot.Carry(row, proteinAs), grams)
	}
}

func takesUpAcid(f *food.Food) bool {
	group, _ := food.GroupOf(f.Group)
	return group.TakesUpAcid
}

// calibrateBrew makes the coffee and tea of a pot, just brewed or steeped, have the pH of
// such brews: it does not know how it was brewed better than those who read them.
func (w *walk) calibrateBrew(pot *ledger.Pot, path string) {
	for row := range pot.Rows {
		profile := pot.Rows[row].Profile
		if !prep.IsDose(profile.Food.Group) || len(pot.Traced(row)) > 0 { // it may have been brewed before
			continue
		}
		by, ok := evidenceOf(profile.Food)
		if !ok {
			continue
		}
		if total := pot.Mass(); w.strong(pot, total) {
			by = by.ofEspresso()
		}
		brew := w.brewOf(pot, row)
		t := brewedAs(path + " " + profile.Food.ID.String())
		w.brews[t.Name] = &brewed{by: by, pot: brew}
		if w.brewCalibration(t.Name, 1) == nil {
			continue
		}
		fill(pot.Carry(row, t), 1)
	}
}

// calibrateParted makes a pot whose milk an acid has parted as sour as milk parts at: what
// its composition makes of it beyond that lacks an acid.
func (w *walk) calibrateParted(pot *ledger.Pot, parted *prep.Parting, path string) {
	row := slices.IndexFunc(pot.Rows, func(r ledger.Row) bool { return takesUpAcid(r.Profile.Food) })
	if row < 0 || settled(pot, row) || w.unsolvable(pot) != "" {
		return
	}
	t := brewedAs(path)
	w.brews[t.Name] = &brewed{by: evidence{atMost: parted.AtMost, low: parted.Low, high: parted.High, source: parted.Source}, pot: copyOf(pot, w.columns)}
	if w.brewCalibration(t.Name, 1) != nil {
		fill(pot.Carry(row, t), 1)
	}
}

func copyOf(pot *ledger.Pot, columns *ledger.Columns) *ledger.Pot {
	out := ledger.New(columns, pot.N)
	out.Mix(pot, constantColumn(pot.N, 1), "")
	return out
}

// strong reports whether a pot is of the strength of espresso.
func (w *walk) strong(pot *ledger.Pot, mass []float64) bool {
	return w.weighted(pot, solubleShare)[0] >= prep.EspressoStrength()*mass[0]
}

// brewed is coffee or tea as it was brewed, with all the water of its pot and nothing else.
type brewed struct {
	by     evidence
	pot    *ledger.Pot
	answer *calibration
	asked  int // draws that the answer has; 0: not asked yet
}

func (w *walk) brewOf(pot *ledger.Pot, row int) *ledger.Pot {
	brew := pot.Only(func(r int) bool { return r == row })
	water := pot.Total(constituent.Water)
	for d, own := range brew.Total(constituent.Water) {
		water[d] -= own
	}
	out := ledger.New(w.columns, pot.N)
	out.Mix(brew, constantColumn(pot.N, 1), "")
	out.Pour(w.names.water, w.drawer.PerGram(w.names.water), water, "")
	return out
}

func (w *walk) brewCalibration(name string, n int) *calibration {
	b := w.brews[name]
	if n = max(n, min(w.amounts.n, chemistryDraws+1)); b.asked < n {
		b.answer, b.asked = w.findCalibration(b.pot, b.by, n), n
	}
	return b.answer
}

// calibrationOf gives the calibration of a food over at least n draws; nil where its
// composition needs none.
func (w *walk) calibrationOf(profile *food.Profile, n int) *calibration {
	n = max(n, min(w.amounts.n, chemistryDraws+1)) // the spread is always that of the same draws
	c, ok := w.calibrations[profile]
	if !ok || c != nil && len(c.strong) < n {
		c = nil
		if by, known := evidenceOf(profile.Food); known {
			c = w.findCalibration(w.gramOf(profile), by, n)
		}
		w.calibrations[profile] = c
	}
	return c
}

// findCalibration holds what is published of a food's pH against what its composition
// makes of it, draw by draw.
//
// A composition's pH h and a published one T are two measurements, of which each counts
// by its spread; what a composition leaves out counts as a spread of its own (row
// "composition" of data/acid_unmeasured.csv):
//
//	h′ = h + g·(T − h)     g = (var h + s²) / (var h + s² + var T)
//
// A composition that misses by more than s shows that something is missing from it: then s
// is what it misses by.
// Where acids or potassium are not stated a composition tells nothing: g = 1. Of a food
// without a pH of its own the range of its group is known (data/groups.csv): draws outside
// it come to its end; if the central value is, the composition tells nothing, and the pH
// is anywhere within the range. A liquid whose cations exceed its
// anions lacks an anion: most of it, or all, is drawn as a weak acid, since chloride and
// sulphate are drawn already (unmeasured.go), as far as the food can hold more acid than
// its table names. The acids that are known stay as they are.
func (w *walk) findCalibration(pot *ledger.Pot, by evidence, n int) *calibration {
	profile := pot.Rows[0].Profile
	l := w.reference(pot, n)
	own, near, err := l.acidities()
	if err != nil {
		return nil // the food stays withheld, with its own reason
	}
	published := by.draw(w, profile.Food.ID)
	silent, gain := w.weigh(profile, by, l, own, published)
	target := by.target(own, published, gain, len(l.in.bare) > 0)
	if slices.Equal(own, target) && (!l.in.open() || by.atMost != nil) {
		return nil
	}
	c := &calibration{Calibration: by.calibration(profile.Food.ID), by: by, silent: silent, gain: gain, weak: make([]float64, n), strong: make([]float64, n)}
	if err := c.solve(l, target, near, w.weakShare(profile.Food, n)); err != nil {
		return nil
	}
	c.Moved = (by.group != "" || by.atMost != nil) && (own[0] < by.low || own[0] > by.high || len(l.in.bare) > 0)
	w.noteContradiction(profile.Food, by, own, published, l)
	return c
}

// weigh gives the weight of a published pH beside what a composition makes of it. It is
// worked out from the same draws whatever the run's are, so that no central value hangs
// on draws or seed.
func (w *walk) weigh(profile *food.Profile, by evidence, l *reference, own, published []float64) (silent bool, gain float64) {
	if by.group != "" || by.brewed || by.atMost != nil || l.in.open() || l.in.protein {
		return true, 1
	}
	if scale := w.scales(); scale != w {
		if c := scale.calibrationOf(profile, 1); c != nil {
			return c.silent, c.gain
		}
		return false, 0
	}
	if wide(own) {
		return true, 1
	}
	s := max(spanOf("composition").high, math.Abs(own[0]-published[0]))
	v := solvedVariance(own) + s*s
	return false, v / (v + solvedVariance(published))
}

// weighingSeed is that of the draws by which measurements are weighed.
const weighingSeed = 1

// scales is a run of the same drink by which measurements are weighed: this one, if it has
// those draws.
func (w *walk) scales() *walk {
	if w.amounts.seed == weighingSeed && w.amounts.n > chemistryDraws {
		return w
	}
	if w.weighing == nil {
		w.weighing = newWalk(w.ctx, w.drink, w.names, Options{Draws: chemistryDraws, Seed: weighingSeed})
	}
	return w.weighing
}

// reference is the liquid of which the pH of a food is known: the food itself, a solution
// of a dry food, or a brew.
type reference struct {
	in    ions
	spare []float64 // mol of acid without a name, as citric, that it may hold besides
}

// gramOf is a gram of a food, with the water in which the pH of a dry one is read.
func (w *walk) gramOf(profile *food.Profile) *ledger.Pot {
	pot := ledger.New(w.columns, w.amounts.n)
	pot.Pour(profile, w.drawer.PerGram(profile), constantColumn(w.amounts.n, 1), "")
	if pot.Central(constituent.Water) < spanOf("dry food").high*pot.Central(constituent.Mass) {
		grams := spanOf("solution of a dry food").high
		pot.Pour(w.names.water, w.drawer.PerGram(w.names.water), constantColumn(w.amounts.n, grams), "")
	}
	return pot
}

func (w *walk) reference(pot *ledger.Pot, n int) *reference {
	return &reference{in: w.ionsOf(pot, n), spare: w.spareAcid(pot, n)}
}

// weakShare draws how much of a missing anion is a weak acid: all of it where it is
// protein.
func (w *walk) weakShare(f *food.Food, n int) []float64 {
	if takesUpAcid(f) {
		return constantColumn(n, 1)
	}
	return w.between(spanOf("weak share"), "weak share", f.ID)
}

// spareAcid gives how much acid without a name the first row of a pot may hold beside what
// is drawn of it, in mol of citric: nothing where the acidity has been titrated.
func (w *walk) spareAcid(pot *ledger.Pot, n int) []float64 {
	spare := make([]float64, n)
	if w.moreAcidOf(pot.Rows[0].Profile, n) != nil {
		return spare
	}
	carrier, named := carrierOf(pot, 0)
	if !named || takesUpAcid(pot.Rows[0].Profile.Food) { // as much as its metals need, whatever its bound is
		fill(spare, math.Inf(1))
		return spare
	}
	drawn := newIons(n)
	w.addAcids(&drawn, pot, 0)
	for d := range spare {
		spare[d] = max(spanOf("minor acids").high*carrier[d]-drawn.grams[citric][d], 0) / constituent.Must(citric).Molar
	}
	return spare
}

// acidities solves the pH of every draw.
func (l *reference) acidities() ([]float64, acid.State, error) {
	pH, near := make([]float64, l.in.n), acid.State{}
	err := l.in.each(func(s *acid.Solver, sol *acid.Solution, own, _ acid.State, d int) error {
		state, err := l.in.solve(s, sol, own, MeterCelsius)
		pH[d] = state.PH
		if d == 0 {
			near = state
		}
		return err
	})
	return pH, near, err
}

// solve finds what a gram lacks of a pH, draw by draw, and the strong ion at central values
// with none and with the most of its unknown acid.
func (c *calibration) solve(l *reference, pH []float64, near acid.State, weak []float64) error {
	err := eachDraw(l.in.n, func(s *acid.Solver, sol *acid.Solution, from, to int) error {
		l.in.fill(sol, 0)
		near, err := s.Titrate(sol, pH[0], near) // each draw from the central one: any number of cores gives the same
		if err != nil {
			return err
		}
		for d := from; d < to; d++ {
			l.in.fill(sol, d)
			state, err := s.Titrate(sol, pH[d], near)
			if err != nil {
				return err
			}
			if mol := min(weakAcid(sol, -state.Base, weak[d], pH[d])*sol.Solvent, l.spare[d]); mol > 0 {
				sol.Acids[acid.Must("citric")] += mol
				if state, err = s.Titrate(sol, pH[d], state); err != nil {
					return err
				}
				c.weak[d] = mol
			}
			c.strong[d] = atLeastNeutral(sol, state.Base) * sol.Solvent
		}
		return nil
	})
	if err != nil {
		return err
	}
	return c.solveEnds(l, pH[0])
}

// solveEnds finds the strong ion with none and with the most of the unknown acid.
func (c *calibration) solveEnds(l *reference, pH float64) error {
	c.none, c.most = c.strong[0], c.strong[0]
	ends, sol := l.in.nobody.ends(), acid.New(0)
	if c.by.atMost != nil {
		ends = l.in.vouched.ends()
	}
	if len(ends) < 2 {
		return nil
	}
	s, err := acid.NewSolver(MeterCelsius)
	if err != nil {
		return err
	}
	for i, strong := range []*float64{&c.none, &c.most} {
		l.in.fill(sol, 0)
		sol.Acids[acid.Must("citric")] += c.weak[0]
		ends[i](sol)
		target := pH
		if c.by.group != "" || c.by.atMost != nil {
			state, err := l.in.solve(s, sol, acid.State{}, MeterCelsius)
			if err != nil {
				return err
			}
			target = min(max(state.PH, c.by.low), c.by.high)
			if c.by.atMost != nil {
				target = min(state.PH, c.by.atMost[0])
			}
		}
		state, err := s.Titrate(sol, target, acid.State{})
		if err != nil {
			return err
		}
		*strong = state.Base * sol.Solvent
	}
	return nil
}

// weakAcid gives how much citric acid takes its share of a missing charge, mol/kg, and what
// no strong anion can take.
func weakAcid(sol *acid.Solution, missing, share, pH float64) float64 {
	if missing <= 0 {
		return 0
	}
	strong := min((1-share)*missing, max(sol.StrongIonDifference(), 0))
	return (missing - strong) / citricCharge(pH)
}

// atLeastNeutral keeps a strong ion, mol/kg, from making a food hold more anions of strong
// acids than metals: no food holds mineral acid.
func atLeastNeutral(sol *acid.Solution, base float64) float64 {
	return max(base, min(-sol.StrongIonDifference(), 0))
}

// citricCharge is the mean charge of citric acid at a pH and no ionic strength: only a
// guide to how much of it takes a charge up, the rest is titrated.
func citricCharge(pH float64) float64 {
	h, weight, sum, charge := math.Pow(10, -pH), 1.0, 1.0, 0.0
	for i, step := range acid.All()[acid.Must("citric")].Steps {
		weight *= math.Pow(10, -step.PK) / h
		sum += weight
		charge += float64(i+1) * weight
	}
	return charge / sum
}

// noteContradiction says where a composition and what is published of its pH do not fit.
func (w *walk) noteContradiction(f *food.Food, by evidence, own, published []float64, l *reference) {
	if by.group != "" || by.brewed || by.atMost != nil || l.in.open() || takesUpAcid(f) {
		return
	}
	s := spanOf("composition").high
	spread := math.Sqrt(solvedVariance(own) + solvedVariance(published) + s*s)
	if miss := math.Abs(own[0] - published[0]); miss > disagreement*spread {
		w.note(Note{Kind: "acidity", Foods: []string{f.ID.String()}, Text: f.Name() + ": its acids and minerals would make pH " +
			number(own[0]) + ", published is " + number(published[0]) + "; the published pH counts for most"})
	}
}

// wide reports whether a composition leaves its pH more open than is printed.
func wide(own []float64) bool {
	s := (&meter{}).Of(own)
	return (s.High-s.Low)/2 > spanOf("widest").high
}

// solvedVariance is the variance of the draws for which equilibria are solved.
func solvedVariance(col []float64) float64 {
	if len(col) < fewestDraws+1 {
		return 0
	}
	return stat.Variance(col[1:min(len(col), chemistryDraws+1)], nil)
}

// calibrated gives what a row has its published pH by, over n draws, and how much of each.
func (w *walk) calibrated(pot *ledger.Pot, row, n int) []applied {
	var list []applied
	for _, t := range pot.Traced(row) {
		switch {
		case t.Tracer == proteinAs: // goes with calibratedAs, which the row carries before it
			list[len(list)-1].weak = t.Column
		case t.Tracer == calibratedAs:
			list = append(list, applied{w.calibrationOf(pot.Rows[row].Profile, n), t.Column, t.Column})
		case isCalibration(t.Tracer):
			list = append(list, applied{w.brewCalibration(t.Name, n), t.Column, t.Column})
		}
	}
	return list
}

// published reports whether the pH of a pot rests on what has been published of a food of
// it, or of brews such as it holds.
func (w *walk) published(pot *ledger.Pot) bool {
	for row := range pot.Rows {
		for _, of := range w.calibrated(pot, row, 1) {
			if of.by.group == "" && of.by.atMost == nil {
				return true
			}
		}
	}
	return false
}

// applied is a calibration and how much of its strong ion and of its acid a row has, by
// draw.
type applied struct {
	*calibration
	strong, weak []float64
}

// addVouched adds what the table of a row left out whose food has a published pH, or a
// pH that its group has: then what is unknown of its metals does not leave the pH open,
// nor, with a pH of its own, what is unknown of its acids.
func (w *walk) addVouched(in *ions, pot *ledger.Pot, row int, c *calibration) {
	drawn := newIons(in.n)
	w.addUnmeasured(&drawn, pot, row)
	for id, col := range drawn.grams {
		for d, x := range col {
			in.grams[id][d] += x
		}
	}
	in.protein, in.aired, in.hidden = in.protein || drawn.protein, in.aired || drawn.aired, in.hidden || drawn.hidden
	open, foods := &in.vouched, &in.untold
	if c.by.group != "" {
		open, foods = &in.nobody, &in.unknown
	}
	for id, g := range drawn.nobody.acids {
		open.add(id, g)
	}
	*foods = append(*foods, drawn.unknown...)
}

// rest adds what a calibration found: the acid without a name, and the strong ion,
// potassium, or chloride where an anion is missing.
func (in *ions) rest(of applied) {
	c := of.calibration
	for d := range in.n {
		mol := c.strong[d] * of.strong[d]
		in.grams[potassium][d] += max(mol, 0) * constituent.Must(potassium).Molar
		in.grams[chloride][d] += max(-mol, 0) * constituent.Must(chloride).Molar
		in.grams[citric][d] += c.weak[d] * of.weak[d] * constituent.Must(citric).Molar
	}
	open := &in.vouched
	if c.by.group != "" {
		open = &in.nobody
	}
	in.silent = in.silent || c.silent || c.by.group != ""
	open.lessNone += (c.none - c.strong[0]) * of.strong[0]
	open.lessMost += (c.most - c.strong[0]) * of.strong[0]
	if told := (c.by.group != "" || c.by.atMost != nil) && !c.Moved; !told && !slices.Contains(in.restsOn, c.Calibration) {
		in.restsOn = append(in.restsOn, c.Calibration)
	}
}

// forget lets a pH that was read take the place of those that are published: what they
// found stays as one guess of what the table left out, which the reading moves.
func (w *walk) forget(pot *ledger.Pot) {
	w.settle(pot)
	for row := range pot.Rows {
		list := w.calibrated(pot, row, pot.N)
		if len(list) == 0 {
			continue
		}
		base, anion, acids := pot.Carry(row, unmeasuredOf(potassium)), pot.Carry(row, unmeasuredOf(chloride)), pot.Carry(row, unmeasuredOf(citric))
		for _, of := range list {
			c := of.calibration
			for d := range pot.N {
				mol := c.strong[d] * of.strong[d]
				base[d] += max(mol, 0) * constituent.Must(potassium).Molar
				anion[d] += max(-mol, 0) * constituent.Must(chloride).Molar
				acids[d] += c.weak[d] * of.weak[d] * constituent.Must(citric).Molar
			}
		}
		for _, t := range slices.Clone(pot.Traced(row)) {
			if isCalibration(t.Tracer) {
				pot.Shed(row, t.Tracer)
			}
		}
	}
}
