package assay

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/ledger"
)

// noise is how many times 1/√draws a correlation must be to count: less is what
// a sample of draws shows between quantities that have nothing to do with each
// other (one in 400 exceeds it).
const noise = 3

// fewestDraws is the number of draws below which there is no covariance.
const fewestDraws = 2

// update is the joint update by a list of readings.
type update struct {
	readings []reading
	move     [][]float64 // by reading: z + ε − h
	target   [][]float64 // by reading: ln of what it reads afterwards
	solve    *mat.Cholesky
	spread   []float64 // by reading: √(var(h) + r²)
}

func newUpdate(list []reading) *update {
	k, n := len(list), len(list[0].h)
	u := &update{readings: list, spread: make([]float64, k)}
	for _, r := range list {
		move := make([]float64, n)
		for d := range move {
			move[d] = r.noisy[d] - r.h[d]
		}
		u.move = append(u.move, move)
	}
	own, sum := mat.NewSymDense(k, nil), mat.NewSymDense(k, nil)
	if n-1 >= fewestDraws {
		for i := range list {
			for j := i; j < k; j++ {
				c := stat.Covariance(list[i].h[1:], list[j].h[1:], nil)
				own.SetSym(i, j, c)
				sum.SetSym(i, j, c)
			}
		}
	}
	for i, r := range list {
		sum.SetSym(i, i, sum.At(i, i)+r.r*r.r)
		u.spread[i] = math.Sqrt(sum.At(i, i))
		if r.linear() {
			clamp(u.move[i], disagreement*u.spread[i])
		}
	}
	var solve mat.Cholesky
	if n-1 < fewestDraws || !solve.Factorize(sum) {
		return u
	}
	u.solve = &solve
	for i := range list {
		target := make([]float64, n)
		copy(target, list[i].h)
		u.add(target, u.gain(mat.Row(nil, i, own)), u.move)
		u.target = append(u.target, target)
	}
	return u
}

// clamp keeps a column within ± most. How far an acidity is off beyond what the recipe
// leaves open is not for its foods to explain: closeOnAcidity takes it.
func clamp(col []float64, most float64) {
	for d, x := range col {
		col[d] = min(max(x, -most), most)
	}
}

// possible reports whether there is a covariance to update by.
func (u *update) possible() bool { return u.solve != nil }

// sd is the standard deviation of a reading's distance from the recipe.
func (u *update) sd(j int) float64 { return u.spread[j] }

// gain gives K of a quantity from its covariances with the readings.
func (u *update) gain(covariances []float64) []float64 {
	k := mat.NewVecDense(len(covariances), nil)
	if err := u.solve.SolveVecTo(k, mat.NewVecDense(len(covariances), covariances)); err != nil {
		return make([]float64, len(covariances)) // two readings of one thing without a spread: the first has said it
	}
	return k.RawVector().Data
}

// add adds K·move to a column.
func (u *update) add(col, gain []float64, move [][]float64) {
	for j, k := range gain {
		if k == 0 {
			continue
		}
		for d, m := range move[j] {
			col[d] += k * m
		}
	}
}

// left gives what the readings still lack to their targets. now is what they read, by
// reading; nil counts as nothing left.
func (u *update) left(now [][]float64) [][]float64 {
	rest := make([][]float64, len(u.readings))
	for j, r := range u.readings {
		col := now[j]
		for d, x := range col {
			switch {
			case !r.linear():
				col[d] = u.target[j][d] - math.Log(x)
			case r.model != nil:
				col[d] = u.target[j][d] - r.model[d] - x
			default:
				col[d] = u.target[j][d] - x
			}
		}
		rest[j] = col
	}
	return rest
}

// gains is K of every entry of a pot that has to do with the readings.
type gains struct {
	update *update
	list   []cellGain
}

type cellGain struct {
	column func(*ledger.Pot) []float64 // of a cell or of a tracer
	gain   []float64
}

// gains finds K of the entries: of the cells, and of what the rows carry beside them.
// Entries that are zero in a draw stay as they are, and so do those whose correlation
// with every reading is noise.
func (u *update) gains(pot *ledger.Pot) gains {
	g := gains{update: u}
	x := make([]float64, pot.N)
	consider := func(column []float64, write func(*ledger.Pot) []float64) {
		if positive(column) {
			copy(x, column)
			logs(x)
			if gain := u.gainOf(x); gain != nil {
				g.list = append(g.list, cellGain{write, gain})
			}
		}
	}
	for row := range pot.Rows {
		for col := range pot.Columns.List {
			consider(pot.Cell(row, col), func(p *ledger.Pot) []float64 { return p.Write(row, col) })
		}
		for _, t := range pot.Traced(row) {
			consider(t.Column, func(p *ledger.Pot) []float64 { return p.Carry(row, t.Tracer) })
		}
	}
	return g
}

// gainOf gives K of a quantity; nil if it has nothing to do with the readings.
func (u *update) gainOf(x []float64) []float64 {
	least := noise / math.Sqrt(float64(len(x)-1))
	sd := stat.StdDev(x[1:], nil)
	if sd == 0 {
		return nil
	}
	covariances, related := make([]float64, len(u.readings)), false
	for j, r := range u.readings {
		covariances[j] = stat.Covariance(x[1:], r.h[1:], nil)
		own := stat.StdDev(r.h[1:], nil)
		related = related || math.Abs(covariances[j]) > least*sd*own && own > 0
	}
	if !related {
		return nil
	}
	return u.gain(covariances)
}

// apply moves the entries.
func (g gains) apply(pot *ledger.Pot, move [][]float64) {
	shift := make([]float64, pot.N)
	for _, c := range g.list {
		clear(shift)
		g.update.add(shift, c.gain, move)
		column := c.column(pot)
		for d, s := range shift {
			column[d] *= math.Exp(s)
		}
	}
}
