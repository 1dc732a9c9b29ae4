package assay

import (
	"encoding/csv"
	"strconv"
	"sync"

	"sipsum/data"
	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// span is a row of data/acid_unmeasured.csv: a rectangular range for what tables
// leave out and a pH needs.
type span struct{ low, high float64 }

var unmeasured = sync.OnceValue(func() map[string]span {
	file, err := data.FS.Open("acid_unmeasured.csv")
	if err != nil {
		panic("assay: " + err.Error())
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("assay: acid_unmeasured.csv: " + err.Error())
	}
	spans := map[string]span{}
	for _, row := range rows[1:] {
		low, errLow := strconv.ParseFloat(row[1], 64)
		high, errHigh := strconv.ParseFloat(row[2], 64)
		if errLow != nil || errHigh != nil {
			panic("assay: acid_unmeasured.csv: " + row[0] + ": not a number")
		}
		spans[row[0]] = span{low, high}
	}
	return spans
})

// spanOf gives a row of data/acid_unmeasured.csv; it panics if there is none.
func spanOf(what string) span {
	s, ok := unmeasured()[what]
	if !ok {
		panic("assay: acid_unmeasured.csv lacks " + what)
	}
	return s
}

// The constituents that stand in for what was not measured.
const (
	citric    constituent.ID = "CITAC"
	chloride  constituent.ID = "CLD"
	phosphate constituent.ID = "phosphate"
	sulphate  constituent.ID = "sulphate"
	potassium constituent.ID = "K"
	acidsRest constituent.ID = "OA-other"
)

// ions are the grams that decide a pot's acidity, by constituent and draw: what
// is known, and a draw of what is not.
type ions struct {
	n       int
	grams   map[constituent.ID][]float64
	unknown []string // foods whose acids nobody has stated
	bare    []string // foods with acids and without a figure for potassium
	protein bool     // a row's protein takes up acid
}

// ionsOf collects a pot's acids and ions over its first n draws.
func (w *walk) ionsOf(pot *ledger.Pot, n int) ions {
	in := ions{n: n, grams: map[constituent.ID][]float64{}}
	for _, id := range acid.Constituents() {
		in.grams[id] = pot.Total(id)[:n]
	}
	for row := range pot.Rows {
		w.addUnmeasured(&in, pot, row)
	}
	return in
}

// addUnmeasured adds what a row's table left out, each within the range of its
// row of data/acid_unmeasured.csv, the middle in column 0.
func (w *walk) addUnmeasured(in *ions, pot *ledger.Pot, row int) {
	f := pot.Rows[row].Profile.Food
	missing := func(id constituent.ID) bool { return pot.Bounds(row)[constituent.Must(id).Order] != 0 }
	molar := func(id constituent.ID) float64 { return constituent.Must(id).Molar }
	add := func(what string, to constituent.ID, per []float64, factor float64) {
		u := w.between(spanOf(what), what, f.ID)
		for d := range in.n {
			in.grams[to][d] += u[d] * per[d] * factor
		}
	}
	ones := make([]float64, in.n)
	fill(ones, 1)
	if bound := pot.Bounds(row)[constituent.Must(phosphate).Order]; bound > 0 {
		add("phosphate", phosphate, ones, bound)
	}
	k := pot.Of(row, potassium)
	if missing(chloride) {
		add("chloride by potassium", chloride, k, molar(chloride)/molar(potassium))
		add("chloride by sodium", chloride, pot.Of(row, constituent.Sodium), molar(chloride)/molar(constituent.Sodium))
	}
	if missing(sulphate) {
		add("sulphate by potassium", sulphate, k, molar(sulphate)/molar(potassium))
	}
	if takesUpAcid[f.Group] { // as if it brought that much potassium
		protein := pot.Of(row, constituent.Protein)
		add("protein charge", potassium, protein, molar(potassium))
		in.protein = in.protein || protein[0] > 0
	}
	measured, rest := pot.Of(row, constituent.OrganicAcids), pot.Of(row, acidsRest)
	switch {
	case rest[0] > 0: // their mass is known, their names are not
		for d := range in.n {
			in.grams[citric][d] += max(rest[d], 0)
		}
	case measured[0] > 0:
		if anyMissing(pot, row) {
			add("minor acids", citric, measured, 1)
		}
	default:
		if most := mostAcid(pot, row); most > 0 {
			add("acids", citric, ones, most)
			in.unknown = append(in.unknown, f.ID.String())
		}
	}
	if missing(potassium) && measured[0] > 0 {
		in.bare = append(in.bare, f.ID.String())
	}
}

// takesUpAcid are the groups of foods whose protein is native to pH 6 to 7 and
// takes up acid in a sour drink. The nitrogen of fruit, coffee and wine is for the
// most part in small molecules that already have their charge.
var takesUpAcid = map[string]bool{"milk": true, "cream": true, "whey": true, "cultured milk": true, "plant drink": true, "egg": true}

// between draws a rectangular range for a food.
func (w *walk) between(s span, what string, id food.ID) []float64 {
	const middle = 0.5
	col := make([]float64, w.amounts.n)
	estimate.Input{
		Central: s.low + middle*(s.high-s.low), Shape: estimate.Uniform, Low: s.low, High: s.high,
		Stream: estimate.KeyOf(w.amounts.seed, "unmeasured", what, id.Table, id.Code),
	}.Fill(col)
	return col
}

// acidsOf lists the acids of the vocabulary.
var acidsOf = sync.OnceValue(func() []*constituent.Constituent {
	var list []*constituent.Constituent
	for _, leaf := range constituent.Sums().Leaves(constituent.OrganicAcids) {
		if leaf.Kind == constituent.Leaf {
			list = append(list, leaf)
		}
	}
	return list
})

func anyMissing(pot *ledger.Pot, row int) bool {
	for _, c := range acidsOf() {
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
	for _, c := range acidsOf() {
		if b := bounds[c.Order]; b > most {
			most = b
		}
	}
	return most
}
