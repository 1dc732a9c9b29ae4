package acidity

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
)

// published is the tracer of what gives a row the pH that has been published of its food,
// in grams of the food as it was published, or of such brews, in what the brew held over
// itself.
type published struct{ *calibration }

func (published) As() constituent.ID { return Potassium }

// byProtein is the tracer of the acid that is missing from a food whose protein takes up
// acid: it is the protein's own charge, and stays with it when milk curdles. A row carries
// it after what is published.
type byProtein struct{ *calibration }

func (byProtein) As() constituent.ID { return constituent.Protein }

func isCalibration(t ledger.Tracer) bool {
	switch t.(type) {
	case published, byProtein:
		return true
	}
	return false
}

// calibration is what a gram of a food holds beside its composition, so that it has a pH
// that such a food can have: a weak acid without a name, and a strong ion.
type calibration struct {
	Calibration
	by         evidence
	lab        *Laboratory
	liquid     *ledger.Pot // of which the pH is known
	silent     bool        // the composition tells nothing of the pH
	gain       float64     // the weight of the published pH beside the composition's
	weak       []float64   // by draw: mol of acid without a name, as citric
	strong     []float64   // by draw: mol of charge that is lacking; below zero it is an anion
	none, most float64     // strong, with none and with the most of the acid that nobody has stated

	contradiction *note.Note // nil: the composition and what is published fit

	pending *food.Profile // of which nobody has asked yet: nothing else is filled in; else nil
}

// Calibrate makes the last row of a pot, just poured, have a pH that its food can have,
// if that is needed. From here on this goes with what is dissolved. What is said of it is
// given; nil is nothing.
func (lab *Laboratory) Calibrate(pot *ledger.Pot, grams []float64) *note.Note {
	row := len(pot.Rows) - 1
	profile := pot.Rows[row].Profile
	if profile.Food.Facts().Dose {
		return nil
	}
	c := lab.calibrationOf(profile)
	if c == nil {
		return nil
	}
	carry(pot, row, c, grams)
	return c.contradiction
}

// CalibrateLater is Calibrate for whoever wants no chemistry: what the row lacks is found when a step
// or a reading asks what its pot holds, and nothing is said of it.
func (lab *Laboratory) CalibrateLater(pot *ledger.Pot, grams []float64) {
	row := len(pot.Rows) - 1
	profile := pot.Rows[row].Profile
	if _, known := evidenceOf(profile.Food); !known || profile.Food.Facts().Dose {
		return
	}
	carry(pot, row, &calibration{lab: lab, pending: profile}, grams)
}

// carry lets a row carry a calibration of its food.
func carry(pot *ledger.Pot, row int, c *calibration, grams []float64) {
	copy(pot.Carry(row, published{c}), grams)
	if takesUpAcid(pot.Rows[row].Profile.Food) {
		copy(pot.Carry(row, byProtein{c}), grams)
	}
}

// found gives a calibration, also one that nobody has asked for before; nil where the composition
// needs none.
func (c *calibration) found() *calibration {
	if c.pending == nil {
		return c
	}
	return c.lab.calibrationOf(c.pending)
}

func takesUpAcid(f *food.Food) bool {
	return f.Facts().TakesUpAcid
}

// calibrationOf gives the calibration of a food; nil where its composition needs none.
func (lab *Laboratory) calibrationOf(profile *food.Profile) *calibration {
	c, ok := lab.calibrations[profile]
	if !ok {
		if by, known := evidenceOf(profile.Food); known {
			c = lab.findCalibration(lab.gramOf(profile), by, lab.Solved())
		}
		lab.calibrations[profile] = c
	}
	return c
}

// over gives the calibration over at least n draws.
func (c *calibration) over(n int) *calibration {
	missing := n - len(c.strong)
	if missing <= 0 {
		return c
	}
	if more := c.lab.findCalibration(c.liquid, c.by, n); more != nil {
		*c = *more
	} else { // draws beyond the first that cannot be solved have the composition's own pH
		c.weak, c.strong = append(c.weak, make([]float64, missing)...), append(c.strong, make([]float64, missing)...)
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
func (lab *Laboratory) findCalibration(pot *ledger.Pot, by evidence, n int) *calibration {
	profile := pot.Rows[0].Profile
	l := lab.reference(pot, n)
	own, near, err := l.acidities()
	if err != nil {
		return nil // the food stays withheld, with its own reason
	}
	known := by.draw(lab.Ens, profile.Food.ID)
	silent, gain := lab.weigh(profile, by, l, own, known)
	target := by.target(own, known, gain, len(l.in.Bare) > 0)
	if slices.Equal(own, target) && (!l.in.Open() || by.atMost != nil) {
		return nil
	}
	c := &calibration{
		Calibration: by.calibration(profile.Food.ID), by: by, lab: lab, liquid: pot,
		silent: silent, gain: gain, weak: make([]float64, n), strong: make([]float64, n),
	}
	if err := c.solve(l, target, near, lab.weakShare(profile.Food, n)); err != nil {
		return nil
	}
	c.Moved = (by.group != "" || by.atMost != nil) && (own[0] < by.low || own[0] > by.high || len(l.in.Bare) > 0)
	c.contradiction = contradiction(profile.Food, by, own, known, l)
	return c
}

// weigh gives the weight of a published pH beside what a composition makes of it. It is
// worked out from the same draws whatever the run's are, so that no central value hangs
// on draws or seed.
func (lab *Laboratory) weigh(profile *food.Profile, by evidence, l *reference, own, published []float64) (silent bool, gain float64) {
	if by.group != "" || by.brewed || by.atMost != nil || l.in.Open() || l.in.protein {
		return true, 1
	}
	if scale := lab.scales(); scale != lab {
		if c := scale.calibrationOf(profile); c != nil {
			return c.silent, c.gain
		}
		return false, 0
	}
	if wide(own) {
		return true, 1
	}
	s := max(SpanOf("composition").High, math.Abs(own[0]-published[0]))
	v := solvedVariance(own) + s*s
	return false, v / (v + solvedVariance(published))
}

// weighingSeed is that of the draws by which measurements are weighed.
const weighingSeed = 1

// scales is the same foods in the draws by which measurements are weighed: this laboratory,
// if it has them.
func (lab *Laboratory) scales() *Laboratory {
	if lab.Ens.Seed == weighingSeed && lab.Ens.N > ChemistryDraws {
		return lab
	}
	if lab.weighing == nil {
		ens := estimate.Ensemble{Seed: weighingSeed, N: ChemistryDraws + 1}
		lab.weighing = NewLaboratory(ens, lab.drawer.With(ens), lab.water, lab.gas)
	}
	return lab.weighing
}

// contradiction says where a composition and what is published of its pH do not fit; nil
// where they do.
func contradiction(f *food.Food, by evidence, own, published []float64, l *reference) *note.Note {
	if by.group != "" || by.brewed || by.atMost != nil || l.in.Open() || takesUpAcid(f) {
		return nil
	}
	s := SpanOf("composition").High
	spread := math.Sqrt(solvedVariance(own) + solvedVariance(published) + s*s)
	if miss := math.Abs(own[0] - published[0]); miss > estimate.Disagreement*spread {
		return &note.Note{Kind: "acidity", Foods: []string{f.ID.String()}, Text: f.Name() + ": its acids and minerals would make pH " +
			note.Number(own[0]) + ", published is " + note.Number(published[0]) + "; the published pH counts for most"}
	}
	return nil
}

// wide reports whether a composition leaves its pH more open than is printed.
func wide(own []float64) bool {
	s := estimate.Summarise(own)
	return (s.High-s.Low)/2 > SpanOf("widest").High
}

// solvedVariance is the variance of the draws for which equilibria are solved.
func solvedVariance(col []float64) float64 {
	if len(col) < estimate.FewestDraws+1 {
		return 0
	}
	return stat.Variance(col[1:min(len(col), ChemistryDraws+1)], nil)
}
