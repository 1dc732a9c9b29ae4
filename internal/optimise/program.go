package optimise

import (
	"errors"
	"math"
	"slices"
)

// program is a linear program in moves: how many steps each amount goes up and down from a point.
// It is minimised over rows that hold and boxes that no amount leaves.
type program struct {
	box  []steps   // ends of each amount; start is where moves begin
	up   []float64 // what a step up costs
	down []float64
	rows []row
	more []float64 // what further variables cost, none of them below zero
}

// row holds if slope·move + more·further + is ≥ 0.
type row struct {
	slope []float64
	more  []float64 // of the further variables; nil: none
	is    float64
}

var errNone = errors.New("no point")

// relaxed solves the program between the steps. Ends of boxes that do not bind are left out until
// they do: most never do.
func (p *program) relaxed() (at []float64, value float64, err error) {
	k := len(p.box)
	bound := make([][2]bool, k) // lower end, upper end
	for i := range bound {
		free := !p.asks(i) // the library wants every amount in a row
		bound[i] = [2]bool{free || p.down[i] < 0, free || p.up[i] < 0}
	}
	for {
		z, value, err := p.simplex(bound)
		if err != nil {
			return nil, 0, err
		}
		at = make([]float64, k)
		ok := true
		for i, b := range p.box {
			at[i] = float64(b.start) + z[i] - z[k+i]
			if at[i] < float64(b.least)-whole && !bound[i][0] {
				bound[i][0], ok = true, false
			}
			if at[i] > float64(b.most)+whole && !bound[i][1] {
				bound[i][1], ok = true, false
			}
		}
		if ok {
			return at, value, nil
		}
	}
}

// asks reports whether any row asks for an amount.
func (p *program) asks(i int) bool {
	return slices.ContainsFunc(p.rows, func(r row) bool { return r.slope[i] != 0 })
}

// simplex solves it with some ends of its boxes as rows.
func (p *program) simplex(bound [][2]bool) ([]float64, float64, error) {
	k := len(p.box)
	list := append([]row(nil), p.rows...)
	for i, b := range p.box {
		if bound[i][0] {
			slope := make([]float64, k)
			slope[i] = 1
			list = append(list, row{slope: slope, is: float64(b.start - b.least)})
		}
		if bound[i][1] {
			slope := make([]float64, k)
			slope[i] = -1
			list = append(list, row{slope: slope, is: float64(b.most - b.start)})
		}
	}
	n := 2*k + len(p.more)
	cost := make([]float64, n+len(list))
	copy(cost, p.up)
	copy(cost[k:], p.down)
	copy(cost[2*k:], p.more)
	if len(list) == 0 {
		return make([]float64, n), 0, nil // nothing asks for a move
	}
	// −slope·up + slope·down − more·further + slack = is
	a := make([][]float64, len(list))
	b := make([]float64, len(list))
	for r, l := range list {
		scale := 0.0
		for _, x := range l.slope {
			scale = max(scale, math.Abs(x))
		}
		for _, x := range l.more {
			scale = max(scale, math.Abs(x))
		}
		if scale == 0 {
			if l.is < 0 {
				return nil, 0, errNone
			}
			scale = max(l.is, 1)
		}
		a[r] = make([]float64, len(cost))
		for i, x := range l.slope {
			a[r][i], a[r][k+i] = -x/scale, x/scale
		}
		for i, x := range l.more {
			a[r][2*k+i] = -x / scale
		}
		a[r][n+r] = 1
		b[r] = l.is/scale + slack*(1+uneven*float64(r))
	}
	z, value, err := minimise(cost, a, b)
	if err != nil {
		return nil, 0, err
	}
	return z[:n], value, nil
}

const (
	whole  = 1e-6 // a step within this is a whole one
	slack  = 1e-9 // by which rows give, each a little more than the one before: no corner is then
	uneven = 0.37 // of more rows than it has sides, and the simplex does not go round in circles
)
