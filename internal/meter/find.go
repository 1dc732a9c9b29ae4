package meter

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// Seen is a reading beside what its pot is known to be.
type Seen struct {
	By    *Reader
	Shown float64   // as read, in the unit of the instrument
	Scale float64   // of a small change of it in the unit of the columns: 1, or of a logarithm 1/z
	Noise float64   // standard deviation of the reading alone, in that unit
	H     []float64 // what the recipe gives, draw by draw
	V     []float64 // what was read, less what the instrument is off by and less H, draw by draw
}

// Found is what the pots told of an instrument beside its check.
type Found struct {
	Name     string
	Kind     string
	Unit     string
	Readings int
	At       float64 // where it is told: the mean of what it showed
	Was, U   float64 // what it was off by as its check has it, and its standard uncertainty
	Is, IsU  float64 // as the pots have it too
	Low      float64 // 5 % of the draws lie below
	High     float64 // 5 % of the draws lie above

	day int // of its latest reading
}

// Found gives what was found, in the order of the shelf.
func (r *Run) Found() []Found {
	if r == nil {
		return nil
	}
	return r.found
}

// Find moves what the instruments are off by as far as the pots tell it that they read: all readings together, in
// whatever order.
func (r *Run) Find(seen []Seen) {
	seen = slices.DeleteFunc(slices.Clone(seen), func(s Seen) bool { return math.IsNaN(stat.Mean(s.V, nil)) })
	if len(seen) == 0 || len(seen[0].V)-1 < estimate.FewestDraws {
		return
	}
	was := r.before(seen)
	k := len(seen)
	cov := mat.NewSymDense(k, nil)
	for i, a := range seen {
		for j := i; j < k; j++ {
			b := seen[j]
			shared := stat.Covariance(a.H[1:], b.H[1:], nil)
			if i != j && !estimate.Counts(shared, math.Sqrt(estimate.Variance(a.H)*estimate.Variance(b.H)), len(a.H)-1) {
				shared = 0
			}
			cov.SetSym(i, j, shared+a.with(b))
		}
		cov.SetSym(i, i, cov.At(i, i)+a.Noise*a.Noise)
		// one that lies further from its recipe counts as so much coarser
		if off := math.Abs(a.V[0]) / rule("agrees"); off*off > cov.At(i, i) {
			cov.SetSym(i, i, off*off)
		}
	}
	var solve mat.Cholesky
	if !solve.Factorize(cov) {
		return // readings without a spread: the first has said it
	}
	moved := map[*drawn][parameters][]float64{}
	for _, s := range seen {
		if _, done := moved[s.By.drawn]; !done {
			moved[s.By.drawn] = s.By.drawn.follow(seen, &solve)
		}
	}
	for x, columns := range moved {
		x.deviation = columns
	}
	r.tell(was)
}

// with gives the covariance of two readings by what their instrument is off by.
func (s Seen) with(o Seen) float64 {
	if s.By.drawn != o.By.drawn {
		return 0
	}
	sum, b := 0.0, o.By.to(o.Shown)
	for i, a := range s.By.to(s.Shown) {
		for j := range b {
			sum += a * b[j] * s.By.spread[i][j]
		}
	}
	return sum * s.Scale * o.Scale
}

// follow moves the parameters of an instrument by all readings, draw by draw, and narrows them.
func (x *drawn) follow(seen []Seen, solve *mat.Cholesky) (moved [parameters][]float64) {
	k := len(seen)
	toReadings := mat.NewDense(k, parameters, nil) // their covariances with the readings
	for j, s := range seen {
		if s.By.drawn != x {
			continue
		}
		for i := range parameters {
			sum := 0.0
			for l, t := range s.By.to(s.Shown) {
				sum += t * x.spread[i][l]
			}
			toReadings.Set(j, i, sum*s.Scale)
		}
	}
	var gain, less mat.Dense
	if err := solve.SolveTo(&gain, toReadings); err != nil {
		return x.deviation
	}
	for i := range parameters {
		col := slices.Clone(x.deviation[i])
		for j, s := range seen {
			for d, v := range s.V {
				col[d] += gain.At(j, i) * v
			}
		}
		moved[i] = col
	}
	less.Mul(toReadings.T(), &gain)
	for i := range parameters {
		for j := range parameters {
			x.spread[i][j] -= less.At(i, j)
		}
	}
	return moved
}

// before notes what the instruments of some readings are off by as their checks have it.
func (r *Run) before(seen []Seen) []Found {
	var list []Found
	for i := range r.drink.Meters {
		m := &r.drink.Meters[i]
		f := Found{Name: m.Name, Kind: m.Kind, Unit: Unit(m.Kind)}
		for _, s := range seen {
			if s.By.Name() == m.Name {
				f.Readings++
				f.At += s.Shown
			}
		}
		if f.Readings == 0 {
			continue
		}
		f.At /= float64(f.Readings)
		f.day = dayOf(seen, m.Name)
		by := &Reader{r.of(m), f.day}
		f.Was, f.U = by.Off(f.At)[0], by.U(f.At)
		list = append(list, f)
	}
	return list
}

// tell notes what they are off by now.
func (r *Run) tell(was []Found) {
	for _, f := range was {
		by := &Reader{r.drawn[f.Name], f.day}
		now := estimate.Summarise(by.Off(f.At))
		f.Is, f.IsU, f.Low, f.High = now.Mean, by.U(f.At), now.Low, now.High
		r.found = append(r.found, f)
	}
}

// dayOf gives the latest day on which an instrument took a reading.
func dayOf(seen []Seen, name string) int {
	day := 0
	for _, s := range seen {
		if s.By.Name() == name {
			day = max(day, s.By.day)
		}
	}
	return day
}
