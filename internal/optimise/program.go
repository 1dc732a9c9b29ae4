package optimise

import (
	"errors"
	"math"
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

// row holds if slope·move + more·further − spent·|move| + is ≥ 0.
type row struct {
	slope []float64
	more  []float64 // of the further variables; nil: none
	spent []float64 // nil: moves are free
	is    float64
}

var errNone = errors.New("no point")

// relaxed solves the program between the steps.
func (p *program) relaxed() (at []float64, value float64, err error) {
	k := len(p.box)
	n := 2*k + len(p.more)
	cost, most, base := make([]float64, n+len(p.rows)), make([]float64, n+len(p.rows)), make([]float64, k)
	copy(cost, p.up)
	copy(cost[k:], p.down)
	copy(cost[2*k:], p.more)
	for i := 2 * k; i < len(most); i++ {
		most[i] = math.Inf(1)
	}
	for i, b := range p.box { // an amount whose start is outside begins at the nearer end
		low, high := float64(b.least-b.start), float64(b.most-b.start)
		base[i] = math.Min(math.Max(0, low), high)
		most[i], most[k+i] = high-base[i], base[i]-low
		value += p.up[i]*math.Max(base[i], 0) - p.down[i]*math.Min(base[i], 0)
	}
	a, right, err := p.equations(base, n)
	if err != nil {
		return nil, 0, err
	}
	z, moved, err := minimise(cost, a, right, most)
	if err != nil {
		return nil, 0, err
	}
	at = make([]float64, k)
	for i, b := range p.box {
		at[i] = float64(b.start) + base[i] + z[i] - z[k+i]
	}
	return at, value + moved, nil
}

// equations writes the rows as −slope·up + slope·down − more·further + slack = is, from where the
// amounts begin.
func (p *program) equations(base []float64, n int) (a [][]float64, right []float64, err error) {
	k := len(p.box)
	a, right = make([][]float64, len(p.rows)), make([]float64, len(p.rows))
	for r, l := range p.rows {
		scale := 0.0
		for _, x := range l.slope {
			scale = max(scale, math.Abs(x))
		}
		for _, x := range l.more {
			scale = max(scale, math.Abs(x))
		}
		spent := l.spent
		if spent == nil {
			spent = make([]float64, k)
		}
		is := l.is
		for i, x := range l.slope {
			is += x*base[i] - spent[i]*math.Abs(base[i])
			scale = max(scale, math.Abs(spent[i]))
		}
		if scale == 0 {
			if is < 0 {
				return nil, nil, errNone
			}
			scale = max(is, 1)
		}
		a[r] = make([]float64, n+len(p.rows))
		for i, x := range l.slope {
			a[r][i], a[r][k+i] = (spent[i]-x)/scale, (spent[i]+x)/scale
		}
		for i, x := range l.more {
			a[r][2*k+i] = -x / scale
		}
		a[r][n+r] = 1
		right[r] = is/scale + slack*(1+uneven*float64(r))
	}
	return a, right, nil
}

const (
	whole  = 1e-6 // a step within this is a whole one
	slack  = 1e-9 // by which rows give, each a little more than the one before: no corner is then
	uneven = 0.37 // of more rows than it has sides, and the simplex does not go round in circles
)
