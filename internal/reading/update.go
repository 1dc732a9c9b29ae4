package reading

import (
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/estimate"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// update is the joint update by a list of readings.
//
// Where a reading is further from the recipe than a number of its standard deviations
// (data/reading_limits.csv; S = cov(h) + R), the recipe does not explain it. It then
// counts as the nearest reading that the recipe explains,
//
//	κ = min(max(z − h, −c·√S), c·√S)
//
// at central values, and the further away it is the less it narrows the draws: they move
// by κ + (1 − ρ)·(ε − (h − h₀)), with ρ growing from 0 at c·√S to 1 at twice that. So all
// that a reading moves grows with it and stays where it was at its limit. Readings that
// each agree with the recipe may contradict one another. By Cauchy and Schwarz nothing
// moves more standard deviations than
//
//	m² = κᵀ·(C + R)⁻¹·C·(C + R)⁻¹·κ,   C = cov(h)
//
// and where that is beyond the recipe's 99 % the instruments count as coarser, by as much
// as it takes: the least squares of recipe and readings within that range.
type update struct {
	readings []reading
	off      []float64   // by reading: z − h at central values
	kappa    []float64   // by reading: what of it the recipe explains
	doubt    []float64   // by reading: ρ
	move     [][]float64 // by reading: κ + (1 − ρ)·(ε − (h − h₀))
	target   [][]float64 // by reading: ln of what it reads afterwards
	solve    *mat.Cholesky
	spread   []float64 // by reading: √(var(h) + r²)
	groups   []int     // by reading: those of one group have to do with one another
}

func newUpdate(list []reading) *update {
	k, n := len(list), len(list[0].h)
	u := &update{readings: list}
	own := mat.NewSymDense(k, nil)
	if n-1 >= estimate.FewestDraws {
		for i := range list {
			for j := i; j < k; j++ {
				own.SetSym(i, j, stat.Covariance(list[i].h[1:], list[j].h[1:], nil))
			}
		}
	}
	u.group(own)
	for i, r := range list {
		u.spread = append(u.spread, math.Sqrt(own.At(i, i)+r.r*r.r))
		u.explain(r, u.spread[i])
	}
	if n-1 < estimate.FewestDraws || !u.factorise(own) {
		return u
	}
	for i := range list {
		target := make([]float64, n)
		copy(target, list[i].h)
		u.add(target, u.gain(mat.Row(nil, i, own)), u.move)
		u.target = append(u.target, target)
	}
	return u
}

// group parts the readings into those that have to do with one another, and takes away what
// a sample of draws shows between the others: where a reading is far surer than another, the
// gain would make much of it.
func (u *update) group(own *mat.SymDense) {
	k := len(u.readings)
	u.groups = make([]int, k)
	for i := range u.groups {
		u.groups[i] = i
	}
	for i := range k {
		for j := i + 1; j < k; j++ {
			if u.groups[i] == u.groups[j] || !estimate.Counts(own.At(i, j), math.Sqrt(own.At(i, i)*own.At(j, j)), len(u.readings[i].h)-1) {
				continue
			}
			from, to := u.groups[j], u.groups[i]
			for l, g := range u.groups {
				if g == from {
					u.groups[l] = to
				}
			}
		}
	}
	for i := range k {
		for j := i + 1; j < k; j++ {
			if u.groups[i] != u.groups[j] {
				own.SetSym(i, j, 0)
			}
		}
	}
}

// explain finds what of a reading the recipe explains, and how each draw moves by it.
func (u *update) explain(r reading, spread float64) {
	limit := limitOf("plausible") * spread
	if r.water || r.linear() {
		limit = limitOf("plausible beside another cause") * spread
	}
	off, doubt := r.noisy[0]-r.h[0], 0.0
	kappa := min(max(off, -limit), limit)
	if limit > 0 {
		doubt = min(math.Abs(off-kappa)/limit, 1)
	}
	move := make([]float64, len(r.h))
	for d := range move {
		move[d] = kappa + (1-doubt)*((r.noisy[d]-r.noisy[0])*r.r/r.own-(r.h[d]-r.h[0]))
	}
	u.off, u.kappa, u.doubt, u.move = append(u.off, off), append(u.kappa, kappa), append(u.doubt, doubt), append(u.move, move)
}

// factorise solves for the gain, with instruments that count as coarser where the
// readings together would move the recipe beyond its range.
func (u *update) factorise(own *mat.SymDense) bool {
	const halvings = 40
	coarser := func(times float64) bool {
		sum := mat.NewSymDense(len(u.readings), nil)
		sum.CopySym(own)
		for i, r := range u.readings {
			sum.SetSym(i, i, sum.At(i, i)+times*r.r*r.r)
		}
		u.solve = &mat.Cholesky{}
		return u.solve.Factorize(sum)
	}
	if !coarser(1) {
		u.solve = nil
		return false
	}
	low, high := 1.0, 1.0
	for u.moves(own) > limitOf("plausible") && high < math.MaxFloat32 {
		low, high = high, 2*high
		coarser(high)
	}
	for range halvings {
		if high == low {
			break
		}
		middle := (low + high) / 2
		if coarser(middle); u.moves(own) > limitOf("plausible") {
			low = middle
		} else {
			high = middle
		}
	}
	return coarser(high)
}

// moves gives m: how many standard deviations the update may move anything.
func (u *update) moves(own *mat.SymDense) float64 {
	pull := mat.NewVecDense(len(u.kappa), u.gain(u.kappa))
	return math.Sqrt(max(mat.Inner(pull, own, pull), 0))
}

// targets gives what the pot reads after the update, by kind. Of an acidity it is what was
// read; one that was read more than once is the mean, the surer the heavier.
func (u *update) targets() map[string][]float64 {
	sum, weight := map[string][]float64{}, map[string]float64{}
	for j, r := range u.readings {
		each, w := r.noisy, 1/(r.own*r.own)
		if u.possible() && !r.linear() {
			each = u.target[j]
		}
		if sum[r.kind] == nil {
			sum[r.kind] = make([]float64, len(each))
		}
		for d, x := range each {
			sum[r.kind][d] += w * x
		}
		weight[r.kind] += w
	}
	for kind, col := range sum {
		for d := range col {
			col[d] /= weight[kind]
		}
	}
	return sum
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
			case r.kind == amount.ReadMass:
				col[d] = 0 // closed
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
