package acidity

import (
	"sync"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Span is a row of data/acid_unmeasured.csv: a rectangular range for what tables
// leave out and a pH needs.
type Span struct{ Low, High float64 }

// SpanOf gives a row of data/acid_unmeasured.csv; it panics if there is none.
func SpanOf(what string) Span {
	low, high := food.Unmeasured(what)
	return Span{low, high}
}

// The constituents that stand in for what was not measured.
const (
	Citric    constituent.ID = "CITAC"
	Chloride  constituent.ID = "CLD"
	phosphate constituent.ID = "phosphate"
	sulphate  constituent.ID = "sulphate"
	Potassium constituent.ID = "K"
	acidsRest constituent.ID = "OA-other"
)

// addUnmeasured adds what a row's table left out, each within the range of its
// row of data/acid_unmeasured.csv, the middle in column 0.
func (lab *Laboratory) addUnmeasured(in *Ions, pot *ledger.Pot, row int) {
	lab.addIons(in, pot, row)
	lab.addAcids(in, pot, row)
}

// addIons adds the phosphate, chloride and sulphate that a row's table left out, and
// the acid that its protein takes up.
func (lab *Laboratory) addIons(in *Ions, pot *ledger.Pot, row int) {
	f := pot.Rows[row].Profile.Food
	group, _ := food.GroupOf(f.Group)
	missing := func(id constituent.ID) bool {
		return group.Assumed && pot.Bounds(row)[constituent.Must(id).Order] != 0
	}
	molar := func(id constituent.ID) float64 { return constituent.Must(id).Molar }
	in.aired = in.aired || missing(constituent.CarbonDioxide)
	in.Hidden = in.Hidden || missing(constituent.CarbonDioxide) && f.Carbonated()
	if bound := pot.Bounds(row)[constituent.Must(phosphate).Order]; bound > 0 {
		lab.addWithin(in, f.ID, "phosphate", phosphate, estimate.Constant(in.N, bound), 1)
	}
	if group.Water && missing(Chloride) && !missing(constituent.CarbonDioxide) {
		in.addWaterAnions(pot, row)
		return
	}
	k := pot.Of(row, Potassium)
	if f.Group == "" && !f.Chemical && pot.Bounds(row)[constituent.Must(Chloride).Order] != 0 {
		lab.addWithin(in, f.ID, "chloride by sodium", Chloride, pot.Of(row, constituent.Sodium), molar(Chloride)/molar(constituent.Sodium))
	}
	if missing(Chloride) {
		lab.addWithin(in, f.ID, "chloride by potassium", Chloride, k, molar(Chloride)/molar(Potassium))
		lab.addWithin(in, f.ID, "chloride by sodium", Chloride, pot.Of(row, constituent.Sodium), molar(Chloride)/molar(constituent.Sodium))
	}
	if missing(sulphate) {
		lab.addWithin(in, f.ID, "sulphate by potassium", sulphate, k, molar(sulphate)/molar(Potassium))
	}
	if group.TakesUpAcid {
		lab.addProtein(in, pot, row)
	}
}

// addProtein adds the charges of a row's protein: its amines, which stay charged in all that
// is drunk and hold as many acid groups beside what metals hold, and, in a food without a
// published pH, those acid groups as the salt of a weak acid: nothing at the food's own pH.
// A published pH tells them by the balance of charge (findCalibration).
func (lab *Laboratory) addProtein(in *Ions, pot *ledger.Pot, row int) {
	f, protein := pot.Rows[row].Profile.Food, pot.Of(row, constituent.Protein)
	potassium, citric := constituent.Must(Potassium).Molar, constituent.Must(Citric).Molar
	lab.addWithin(in, f.ID, "protein amines", Potassium, protein, potassium)
	if _, known := evidenceOf(f); known {
		return
	}
	const protons = 3 // of citric acid, whose pK, 3.1 to 6.4, span those of carboxyls and of colloidal phosphate
	lab.addWithin(in, f.ID, "protein amines", Citric, protein, citric/protons)
	lab.addWithin(in, f.ID, "protein charge", Potassium, protein, potassium)
	lab.addWithin(in, f.ID, "protein charge", Citric, protein, citric/protons)
	in.protein = in.protein || protein[0] > 0
}

// waterCharges are the ions of a water whose chloride is found by its balance of charge;
// its inorganic carbon is bicarbonate.
var waterCharges = []struct {
	id     constituent.ID
	charge float64
}{{constituent.Sodium, 1}, {Potassium, 1}, {"CA", 2}, {"MG", 2}, {constituent.CarbonDioxide, -1}, {sulphate, -2}}

// addWaterAnions adds the chloride and sulphate of a water, as chloride: what its metals
// have beside its bicarbonate.
func (in *Ions) addWaterAnions(pot *ledger.Pot, row int) {
	sum := make([]float64, in.N)
	for _, ion := range waterCharges {
		col, molar := pot.Of(row, ion.id), constituent.Must(ion.id).Molar
		for d := range sum {
			sum[d] += ion.charge * col[d] / molar
		}
	}
	to, molar := in.grams[Chloride], constituent.Must(Chloride).Molar
	for d, x := range sum {
		to[d] += max(x, 0) * molar
	}
}

// addAcids adds the acids that a row's table left out: those with a known mass and no
// name and those that nobody has measured as citric acid, and more of its own where a
// published titratable acidity tells so.
func (lab *Laboratory) addAcids(in *Ions, pot *ledger.Pot, row int) {
	f := pot.Rows[row].Profile.Food
	group, _ := food.GroupOf(f.Group)
	in.addRest(pot, row)
	carrier, named := carrierOf(pot, row)
	more := lab.moreAcidOf(pot.Rows[row].Profile, in.N)
	if carrier == nil && more != nil {
		carrier = pot.Of(row, constituent.Water)
	}
	if named && more == nil {
		lab.addBounded(in, pot, row, carrier[0])
	}
	switch {
	case carrier == nil:
	case more != nil:
		in.addMore(pot, row, more, carrier)
	case !named:
		before := in.grams[Citric][0]
		lab.addWithin(in, f.ID, "acids", Citric, carrier, 1)
		in.Unknown = append(in.Unknown, f.ID.String())
		in.Nobody.add(Citric, openGrams{in.grams[Citric][0] - before, carrier[0] * SpanOf("acids").High})
	case group.Assumed && pot.Of(row, acidsRest)[0] <= 0 && anyMissing(pot, row):
		lab.addWithin(in, f.ID, "minor acids", Citric, carrier, 1)
	}
	if (named || more != nil) && pot.Bounds(row)[constituent.Must(Potassium).Order] != 0 {
		in.Bare = append(in.Bare, f.ID.String())
		in.Unneutral += equivalentsIn(pot, row)
	}
}

// equivalentsIn gives the protons of a row's organic acids at central values, in mol: the
// most potassium that it can hold beside them.
func equivalentsIn(pot *ledger.Pot, row int) float64 {
	sum := 0.0
	for _, a := range acid.All() {
		if IsOrganic(a) {
			sum += pot.Of(row, a.Constituent)[0] / a.Equivalent()
		}
	}
	return sum
}

// addRest adds the acids of a row whose mass is known and whose names are not.
func (in *Ions) addRest(pot *ledger.Pot, row int) {
	if rest := pot.Of(row, acidsRest); rest[0] > 0 {
		to := in.grams[Citric]
		for d := range in.N {
			to[d] += max(rest[d], 0)
		}
	}
}

// carrierOf gives the grams with which a row's unnamed acid goes through the steps: its
// named acids, else the most that they could be. nil: it has none.
func carrierOf(pot *ledger.Pot, row int) (grams []float64, measured bool) {
	if named := pot.Of(row, constituent.OrganicAcids); named[0] > 0 {
		return named, true
	}
	if most := mostAcid(pot, row); most > 0 {
		return estimate.Constant(pot.N, most), false
	}
	return nil, false
}

// addWithin adds a drawn share of a column to the grams of a constituent.
func (lab *Laboratory) addWithin(in *Ions, food food.ID, what string, to constituent.ID, per []float64, factor float64) {
	u, col := lab.within(SpanOf(what), what, food), in.grams[to]
	for d := range in.N {
		col[d] += u[d] * per[d] * factor
	}
}

// betweenKey names a range that is drawn for a food.
type betweenKey struct {
	what string
	food food.ID
}

// within draws a rectangular range for a food, once: the column is the laboratory's own.
func (lab *Laboratory) within(s Span, what string, id food.ID) []float64 {
	key := betweenKey{what, id}
	if col := lab.between[key]; col != nil {
		return col
	}
	const middle = 0.5
	col := lab.Ens.Column(estimate.Input{
		Central: s.Low + middle*(s.High-s.Low), Shape: estimate.Uniform, Low: s.Low, High: s.High,
		Stream: lab.Ens.Stream("unmeasured", what, id.Table, id.Code),
	})
	lab.between[key] = col
	return col
}

// AcidsOf lists the acids of the vocabulary.
var AcidsOf = sync.OnceValue(func() []*constituent.Constituent {
	var list []*constituent.Constituent
	for _, leaf := range constituent.Sums().Leaves(constituent.OrganicAcids) {
		if leaf.Kind == constituent.Leaf {
			list = append(list, leaf)
		}
	}
	return list
})

func anyMissing(pot *ledger.Pot, row int) bool {
	for _, c := range AcidsOf() {
		if pot.Bounds(row)[c.Order] != 0 {
			return true
		}
	}
	return false
}

// mostAcid gives the most acid that a row without any measured could hold, in
// grams: the bound of all acids, else the largest bound of one. 0 means that
// none is missing or that nothing bounds it.
func mostAcid(pot *ledger.Pot, row int) float64 {
	bounds := pot.Bounds(row)
	if all := bounds[constituent.Must(constituent.OrganicAcids).Order]; all > 0 {
		return all
	}
	most := 0.0
	for _, c := range AcidsOf() {
		if b := bounds[c.Order]; b > most {
			most = b
		}
	}
	return most
}

// IsOrganic tells acids that are a leaf of the organic acids: what tables name.
func IsOrganic(a acid.Acid) bool {
	return a.Constituent != "" && constituent.Must(a.Constituent).Parent == constituent.OrganicAcids
}
