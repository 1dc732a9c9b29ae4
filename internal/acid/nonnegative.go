package acid

import (
	"gonum.org/v1/gonum/mat"
)

// nonNegative minimises |a·x − b| over x ≥ 0: the active-set method of Lawson and
// Hanson (1974, Solving Least Squares Problems, chapter 23). It ends after a
// bounded number of exchanges.
func nonNegative(a [][]float64, b []float64) []float64 {
	rows, columns := len(a), len(a[0])
	flat := mat.NewDense(rows, columns, nil)
	for i, row := range a {
		flat.SetRow(i, row)
	}
	right := mat.NewVecDense(rows, b)
	x := make([]float64, columns)
	free := make([]bool, columns)
	for range 3 * columns {
		enter := steepest(flat, right, x, free)
		if enter < 0 {
			return x
		}
		free[enter] = true
		for {
			try, ok := leastSquares(flat, right, free)
			if !ok { // the new column repeats others
				free[enter] = false
				return x
			}
			back, blocked := 1.0, false
			for j := range x {
				if free[j] && try[j] <= 0 {
					blocked = true
					back = min(back, x[j]/(x[j]-try[j]))
				}
			}
			if !blocked {
				x = try
				break
			}
			for j := range x {
				x[j] += back * (try[j] - x[j])
				if free[j] && (x[j] <= 0 || try[j] <= 0 && x[j] < tiny) {
					x[j], free[j] = 0, false
				}
			}
		}
	}
	return x
}

const tiny = 1e-15 // mol/kg

// steepest gives the fixed column along which the misfit falls fastest, or −1.
func steepest(a *mat.Dense, b *mat.VecDense, x []float64, free []bool) int {
	var miss, slope mat.VecDense
	miss.MulVec(a, mat.NewVecDense(len(x), x))
	miss.SubVec(b, &miss)
	slope.MulVec(a.T(), &miss)
	best, at := 1e-10, -1
	for j := range x {
		if !free[j] && slope.AtVec(j) > best {
			best, at = slope.AtVec(j), j
		}
	}
	return at
}

// leastSquares solves for the free columns; the others are 0.
func leastSquares(a *mat.Dense, b *mat.VecDense, free []bool) ([]float64, bool) {
	rows, _ := a.Dims()
	var columns []int
	for j, is := range free {
		if is {
			columns = append(columns, j)
		}
	}
	part := mat.NewDense(rows, len(columns), nil)
	for k, j := range columns {
		part.SetCol(k, mat.Col(nil, j, a))
	}
	var solved mat.VecDense
	if err := solved.SolveVec(part, b); err != nil {
		return nil, false
	}
	x := make([]float64, len(free))
	for k, j := range columns {
		x[j] = solved.AtVec(k)
	}
	return x, true
}
