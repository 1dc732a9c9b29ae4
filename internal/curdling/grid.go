package curdling

import (
	"errors"
	"slices"
	"sync"

	"sipsum/internal/acid"
)

// Verdict is what to expect.
type Verdict string

// The verdicts.
const (
	Smooth   Verdict = "smooth"
	Doubtful Verdict = "doubtful"
	Curdles  Verdict = "curdles"
)

// A verdict holds with the confidence that claims are decided with.
const (
	sure    = 0.95
	notSure = 1 - sure
)

func verdictOf(smooth float64) Verdict {
	switch {
	case smooth >= sure:
		return Smooth
	case smooth <= notSure:
		return Curdles
	}
	return Doubtful
}

// Cell is the drink at a dose and a share.
type Cell struct {
	PH     float64 // at central values
	Smooth float64 // chance that it stays smooth
	Verdict
}

// Map is the verdict over doses of the sour part and amounts of the milk part, the
// rest of the drink being what it is.
type Map struct {
	Doses  []float64 // times the sour part as it stands, rising
	Milks  []float64 // times the milk part as it stands, rising
	Shares []float64 // of the milk part in the mass, at the sour part's own dose
	Cells  [][]Cell  // by milk, then dose
}

// The axes of the map, our choice: the drink as it stands is in the middle, the sour
// part goes from none to twice as much, the milk part from a quarter to four times.
var (
	doses = []float64{0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2}
	milks = []float64{1. / 4, 1. / 3, 1. / 2, 2. / 3, 1, 3. / 2, 2, 3, 4}
)

// Map judges the mixture over the grid. Its rows are judged side by side, each by
// itself, so that any number of cores gives the same.
func (m *Mixture) Map() (Map, error) {
	out := Map{Doses: slices.Clone(doses), Milks: slices.Clone(milks), Cells: make([][]Cell, len(milks))}
	if !m.whole() {
		return out, errParts
	}
	faults := make([]error, len(milks))
	var side sync.WaitGroup
	for i, milk := range milks {
		out.Shares = append(out.Shares, m.shareOf(milk))
		side.Go(func() { out.Cells[i], faults[i] = m.row(milk) })
	}
	side.Wait()
	return out, errors.Join(faults...)
}

// row judges the doses at one amount of milk.
func (m *Mixture) row(milk float64) ([]Cell, error) {
	j, err := m.judge()
	if err != nil {
		return nil, err
	}
	row := make([]Cell, len(doses))
	for k, dose := range doses {
		c := m.asItStands()
		c.dose, c.milk = dose, milk
		if row[k], err = j.cell(c); err != nil {
			return nil, err
		}
	}
	return row, nil
}

// Stand is the drink as it stands.
type Stand struct {
	PH        []float64 // by draw
	Curdling  Band      // of the pour
	MilkShare float64
	Smooth    float64
	Verdict
}

// Stand judges the drink as it stands.
func (m *Mixture) Stand() (Stand, error) {
	out := Stand{Curdling: m.Protein.At(m.Celsius), MilkShare: m.shareOf(1)}
	j, err := m.judge()
	if err != nil {
		return out, err
	}
	c, near := m.asItStands(), acid.State{}
	out.PH = make([]float64, len(m.Place))
	for d := range out.PH {
		if near, err = j.solver.Solve(j.pour(d, c), near); err != nil {
			return out, err
		}
		out.PH[d] = near.PH
	}
	out.Smooth, err = j.smooth(c)
	out.Verdict = verdictOf(out.Smooth)
	return out, err
}
