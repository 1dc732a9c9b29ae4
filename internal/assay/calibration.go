package assay

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
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
	if profile.Food.Facts().Dose || w.calibrationOf(profile, 1) == nil {
		return
	}
	copy(pot.Carry(row, calibratedAs), grams)
	if takesUpAcid(profile.Food) {
		copy(pot.Carry(row, proteinAs), grams)
	}
}

func takesUpAcid(f *food.Food) bool {
	return f.Facts().TakesUpAcid
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
