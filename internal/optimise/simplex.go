package optimise

import (
	"errors"
	"math"
)

// tableau is a linear program in the form of Dantzig: a row holds Σ a·x = b, x ≥ 0, and one
// variable of each row is its own. The costs stand in the last row.
type tableau struct {
	rows  [][]float64 // each with its right side last
	costs []float64
	own   []int
	free  int // variables that may come in: those behind only begin
}

var errStuck = errors.New("the linear program was not solved")

// The simplex: a pivot below this is none, and a cost above minus it pays nothing. Past so many
// pivots of the steepest price the first that pays is taken, with which no corner comes twice
// (Bland 1977, Math. Oper. Res. 2:103).
const (
	tight     = 1e-10
	steepest  = 200
	mostTries = 5000
)

// minimise solves a program whose last variables, one for each row, are its slacks.
func minimise(cost []float64, rows [][]float64, right []float64) (x []float64, value float64, err error) {
	n, m := len(cost), len(rows)
	t := &tableau{free: n, own: make([]int, m)}
	wants := 0
	for r := range rows {
		row := make([]float64, n+m+1)
		copy(row, rows[r])
		row[n+m] = right[r]
		t.own[r] = n - m + r
		if right[r] < 0 { // its slack would be below zero: another variable begins, and has to leave
			for i := range row {
				row[i] = -row[i]
			}
			row[n+r] = 1
			t.own[r] = n + r
			wants++
		}
		t.rows = append(t.rows, row)
	}
	if wants > 0 {
		if err := t.begin(n, m); err != nil {
			return nil, 0, err
		}
	}
	t.costs = make([]float64, n+m+1)
	copy(t.costs, cost)
	t.price()
	if err := t.descend(); err != nil {
		return nil, 0, err
	}
	x = make([]float64, n)
	for r, v := range t.own {
		if v < n {
			x[v] = math.Max(t.rows[r][n+m], 0)
			value += cost[v] * x[v]
		}
	}
	return x, value, nil
}

// begin finds a corner: it drives out the variables that only begin.
func (t *tableau) begin(n, m int) error {
	t.costs = make([]float64, n+m+1)
	for r := range t.rows {
		t.costs[n+r] = 1
	}
	t.price()
	if err := t.descend(); err != nil {
		return err
	}
	left := 0.0
	for r, v := range t.own {
		if v >= n {
			left += t.rows[r][n+m]
		}
	}
	if math.IsNaN(left) {
		return errStuck
	}
	if left > slack {
		return errNone
	}
	for r, v := range t.own { // what stays at nothing changes places with any other
		for c := 0; v >= n && c < n; c++ {
			if math.Abs(t.rows[r][c]) > tight {
				t.pivot(r, c)
				break
			}
		}
	}
	return nil
}

// price takes the costs of each row's own variable out of the cost row.
func (t *tableau) price() {
	for r, v := range t.own {
		if by := t.costs[v]; by != 0 {
			for i, x := range t.rows[r] {
				t.costs[i] -= by * x
			}
		}
	}
}

func (t *tableau) descend() error {
	for try := range mostTries {
		in := t.entering(try < steepest)
		if in < 0 {
			return nil
		}
		out := t.leaving(in)
		if out < 0 {
			return errStuck // it has no end, or a figure is no number
		}
		t.pivot(out, in)
	}
	return errStuck
}

// entering is a variable of which more costs less; −1 if there is none.
func (t *tableau) entering(steep bool) int {
	in, least := -1, -tight
	for c := range t.free {
		if t.costs[c] < least {
			in = c
			if !steep {
				break
			}
			least = t.costs[c]
		}
	}
	return in
}

// leaving is the row whose own variable comes to nothing first; −1 if none does.
func (t *tableau) leaving(in int) int {
	out, least := -1, math.Inf(1)
	last := len(t.costs) - 1
	for r, row := range t.rows {
		if row[in] <= tight {
			continue
		}
		switch to := row[last] / row[in]; {
		case to < least, to == least && out >= 0 && t.own[r] < t.own[out]:
			out, least = r, to
		}
	}
	return out
}

func (t *tableau) pivot(out, in int) {
	row := t.rows[out]
	by := row[in]
	for i := range row {
		row[i] /= by
	}
	clear := func(other []float64) {
		if by := other[in]; by != 0 {
			for i, x := range row {
				other[i] -= by * x
			}
			other[in] = 0
		}
	}
	for r := range t.rows {
		if r != out {
			clear(t.rows[r])
		}
	}
	clear(t.costs)
	t.own[out] = in
}
