package optimise

import (
	"errors"
	"math"
)

// tableau is a linear program in the form of Dantzig: a row holds Σ a·x = b, 0 ≤ x ≤ most, and one
// variable of each row is its own. The costs stand in the last row. A variable that stands at its most
// is turned: counted from there downwards (Dantzig 1955, Econometrica 23:174), so that an end of an
// amount needs no row.
type tableau struct {
	rows   [][]float64 // each with its right side last
	costs  []float64
	own    []int
	most   []float64 // of each variable; infinite where it has none
	turned []bool
	free   int // variables that may come in: those behind only begin
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

// minimise solves a program whose last variables, one for each row, are its slacks; no variable is
// above its most.
func minimise(cost []float64, rows [][]float64, right, most []float64) (x []float64, value float64, err error) {
	n, m := len(cost), len(rows)
	t := &tableau{free: n, own: make([]int, m), most: make([]float64, n+m), turned: make([]bool, n+m)}
	copy(t.most, most)
	for i := n; i < n+m; i++ {
		t.most[i] = math.Inf(1)
	}
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
	for v := range n {
		if t.turned[v] {
			t.costs[v] = -cost[v]
		}
	}
	t.price()
	if err := t.descend(); err != nil {
		return nil, 0, err
	}
	x = make([]float64, n+m)
	for r, v := range t.own {
		x[v] = math.Max(t.rows[r][n+m], 0)
	}
	for v := range n {
		if t.turned[v] {
			x[v] = math.Max(t.most[v]-x[v], 0)
		}
		value += cost[v] * x[v]
	}
	return x[:n], value, nil
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
		in := t.entering(try < steepest+t.free)
		if in < 0 {
			return nil
		}
		out, to, full := t.leaving(in)
		switch {
		case math.IsInf(to, 1) || math.IsNaN(to):
			return errStuck // it has no end, or a figure is no number
		case out < 0:
			t.turn(in)
		default:
			if full {
				t.turnOwn(out)
			}
			t.pivot(out, in)
		}
	}
	return errStuck
}

// entering is a variable of which more costs less; −1 if there is none.
func (t *tableau) entering(steep bool) int {
	in, least := -1, -tight
	for c := range t.free {
		if t.costs[c] < least && t.most[c] > 0 {
			in = c
			if !steep {
				break
			}
			least = t.costs[c]
		}
	}
	return in
}

// leaving is the row whose own variable comes first to nothing, or to its most, and how far the one
// that comes in goes until then; −1 if that comes to its own most before.
func (t *tableau) leaving(in int) (out int, to float64, full bool) {
	out, to = -1, t.most[in]
	last := len(t.costs) - 1
	for r, row := range t.rows {
		var at float64
		fills := false
		switch by := row[in]; {
		case by > tight:
			at = math.Max(row[last], 0) / by
		case by < -tight && !math.IsInf(t.most[t.own[r]], 1):
			at, fills = math.Max(t.most[t.own[r]]-row[last], 0)/-by, true
		default:
			continue
		}
		if at < to || at == to && out >= 0 && t.own[r] < t.own[out] {
			out, to, full = r, at, fills
		}
	}
	return out, to, full
}

// turn brings a variable that is in no row's own place to its other end.
func (t *tableau) turn(in int) {
	last := len(t.costs) - 1
	over := func(row []float64) {
		row[last] -= row[in] * t.most[in]
		row[in] = -row[in]
	}
	for _, row := range t.rows {
		over(row)
	}
	over(t.costs)
	t.turned[in] = !t.turned[in]
}

// turnOwn counts a row's own variable from its most.
func (t *tableau) turnOwn(r int) {
	row, v := t.rows[r], t.own[r]
	last := len(row) - 1
	right := t.most[v] - row[last]
	for i := range row {
		row[i] = -row[i]
	}
	row[v], row[last] = 1, right
	t.turned[v] = !t.turned[v]
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
