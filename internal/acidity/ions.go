package acidity

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Ions are what decides a pot's acidity, draw by draw: the grams of acids and ions
// that are known, a draw of those that are not (unmeasured.go), what readings have
// put in the place of the latter (settle.go), what was titrated (titration.go), and what
// gives a food its published pH (calibration.go).
type Ions struct {
	N         int
	grams     map[constituent.ID][]float64
	columns   [][]float64 // the same in the order of acid.Constituents
	Unknown   []string    // foods whose acids nobody has stated
	Bare      []string    // foods with acids and without a figure for potassium
	Plain     bool        // nothing but waters, acids and salts, and what somebody states in full
	highest   float64     // pH that has been published of such foods
	Nobody    openAcid    // of the unknown foods
	Unneutral float64     // mol of potassium that the bare foods may hold at most, at central values
	Vouched   openAcid    // of foods that have their published pH all the same
	Untold    []string    // those foods
	protein   bool        // a row's protein takes up acid
	Titrated  []titratedPart
	RestsOn   []Calibration
	Silent    bool // a food's composition does not tell its pH
	read      bool // a reading has spoken of it
	aired     bool // nobody has stated a food's carbon dioxide: air tells it
	Hidden    bool // it is of a food that is sold with its gas
}

// IonsOf collects a pot's acids and ions over its first n draws.
func (lab *Laboratory) IonsOf(pot *ledger.Pot, n int) Ions {
	pot = pot.First(n)
	in := newIons(n)
	plain := pot.Only(func(row int) bool { return !Titrated(pot, row) })
	for _, id := range acid.Constituents() {
		copy(in.grams[id], plain.Total(id))
	}
	for row := range pot.Rows {
		list := calibrated(pot, row, n)
		in.know(pot.Rows[row].Profile.Food)
		switch {
		case settled(pot, row):
			in.addSettled(pot, row)
			in.read = true
		case len(list) > 0:
			lab.addVouched(&in, pot, row, list[0].calibration)
		default:
			lab.addUnmeasured(&in, pot, row)
		}
		for _, of := range list {
			in.rest(of)
		}
	}
	for _, id := range []constituent.ID{constituent.Water, constituent.Alcohol} {
		copy(in.grams[id], pot.Total(id))
	}
	gas := lab.gas // whoever carbonates says what is left
	in.Hidden = in.Hidden && !(gas != nil && slices.ContainsFunc(pot.Rows, func(r ledger.Row) bool { return r.Profile == gas }))
	return in
}

func newIons(n int) Ions {
	in := Ions{N: n, grams: map[constituent.ID][]float64{}, Plain: true}
	slab := make([]float64, n*len(acid.Constituents()))
	for i, id := range acid.Constituents() {
		in.grams[id] = slab[i*n : (i+1)*n : (i+1)*n]
		in.columns = append(in.columns, in.grams[id])
	}
	return in
}

// know notes of what kind the foods of a pot are.
func (in *Ions) know(f *food.Food) {
	group, _ := food.GroupOf(f.Group)
	in.Plain = in.Plain && (!group.Assumed && (f.Group != "" || f.Chemical || statesIons(f)) || group.Water)
	in.highest = max(in.highest, group.PHHigh)
}

// Alone reports whether a pot holds one food and nothing else, and has the pH that has been
// published of it.
func (in Ions) Alone(pot *ledger.Pot) bool {
	one := len(in.RestsOn) == 1 && in.RestsOn[0].Group == "" && pot.Central(constituent.Water) > 0
	return one && !slices.ContainsFunc(pot.Rows, func(r ledger.Row) bool { return r.Profile.Food.ID != in.RestsOn[0].Food })
}

// Open reports whether foods leave open what decides the acidity.
func (in Ions) Open() bool { return len(in.Unknown) > 0 || len(in.Bare) > 0 || len(in.Untold) > 0 }

// Fill makes sol what the pot holds in one draw. It only reads the ions.
func (in Ions) Fill(sol *acid.Solution, d int) {
	sol.Reset(0)
	sol.AddGrams(func(at int) float64 { return max(in.columns[at][d], 0) })
	for _, t := range in.Titrated {
		t.pour(sol, d)
	}
}

// Solve gives the equilibrium of a filled solution: of one whose carbon dioxide is known,
// or that was read, as it stands, else of one that stands in air (inAir).
func (in Ions) Solve(s *acid.Solver, sol *acid.Solution, near acid.State, celsius float64) (acid.State, error) {
	if in.read || !in.aired {
		return s.Solve(sol, near)
	}
	return inAir(s, sol, near, celsius)
}
