package assay

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// ions are what decides a pot's acidity, draw by draw: the grams of acids and ions
// that are known, a draw of those that are not (unmeasured.go), what readings have
// put in the place of the latter (settle.go), what was titrated (titration.go), and what
// gives a food its published pH (calibration.go).
type ions struct {
	n         int
	grams     map[constituent.ID][]float64
	unknown   []string // foods whose acids nobody has stated
	bare      []string // foods with acids and without a figure for potassium
	plain     bool     // nothing but waters, acids and salts, and what somebody states in full
	highest   float64  // pH that has been published of such foods
	nobody    openAcid // of the unknown foods
	unneutral float64  // mol of potassium that the bare foods may hold at most, at central values
	vouched   openAcid // of foods that have their published pH all the same
	untold    []string // those foods
	protein   bool     // a row's protein takes up acid
	titrated  []titratedPart
	restsOn   []Calibration
	silent    bool // a food's composition does not tell its pH
	read      bool // a reading has spoken of it
	aired     bool // nobody has stated a food's carbon dioxide: air tells it
	hidden    bool // it is of a food that is sold with its gas
}

// ionsOf collects a pot's acids and ions over its first n draws.
func (w *walk) ionsOf(pot *ledger.Pot, n int) ions {
	pot = pot.First(n)
	in := newIons(n)
	plain := pot.Only(func(row int) bool { return !w.titrated(pot, row) })
	for _, id := range acid.Constituents() {
		copy(in.grams[id], plain.Total(id))
	}
	for row := range pot.Rows {
		list := w.calibrated(pot, row, n)
		in.know(pot.Rows[row].Profile.Food)
		switch {
		case settled(pot, row):
			w.addSettled(&in, pot, row)
			in.read = true
		case len(list) > 0:
			w.addVouched(&in, pot, row, list[0].calibration)
		default:
			w.addUnmeasured(&in, pot, row)
		}
		for _, of := range list {
			in.rest(of)
		}
	}
	for _, id := range []constituent.ID{constituent.Water, constituent.Alcohol} {
		copy(in.grams[id], pot.Total(id))
	}
	gas := w.names.brought[prep.Gas().ID] // whoever carbonates says what is left
	in.hidden = in.hidden && !(gas != nil && slices.ContainsFunc(pot.Rows, func(r ledger.Row) bool { return r.Profile == gas }))
	return in
}

func newIons(n int) ions {
	in := ions{n: n, grams: map[constituent.ID][]float64{}, plain: true}
	for _, id := range acid.Constituents() {
		in.grams[id] = make([]float64, n)
	}
	return in
}

// know notes of what kind the foods of a pot are.
func (in *ions) know(f *food.Food) {
	group, _ := food.GroupOf(f.Group)
	in.plain = in.plain && (!group.Assumed && (f.Group != "" || f.Chemical || statesIons(f)) || f.Group == water)
	in.highest = max(in.highest, group.PHHigh)
}

// alone reports whether a pot holds one food and nothing else, and has the pH that has been
// published of it.
func (in ions) alone(pot *ledger.Pot) bool {
	one := len(in.restsOn) == 1 && in.restsOn[0].Group == "" && pot.Central(constituent.Water) > 0
	return one && !slices.ContainsFunc(pot.Rows, func(r ledger.Row) bool { return r.Profile.Food.ID != in.restsOn[0].Food })
}

// open reports whether foods leave open what decides the acidity.
func (in ions) open() bool { return len(in.unknown) > 0 || len(in.bare) > 0 || len(in.untold) > 0 }

// fill makes sol what the pot holds in one draw. It only reads the ions.
func (in ions) fill(sol *acid.Solution, d int) {
	sol.Reset(0)
	sol.AddGrams(func(id constituent.ID) float64 { return max(in.grams[id][d], 0) })
	for _, t := range in.titrated {
		t.pour(sol, d)
	}
}

// solve gives the equilibrium of a filled solution: of one whose carbon dioxide is known,
// or that was read, as it stands, else of one that stands in air (inAir).
func (in ions) solve(s *acid.Solver, sol *acid.Solution, near acid.State, celsius float64) (acid.State, error) {
	if in.read || !in.aired {
		return s.Solve(sol, near)
	}
	return inAir(s, sol, near, celsius)
}
