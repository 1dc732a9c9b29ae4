package reading

import (
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// tap is the water of a pot, to be changed and put back.
type tap struct {
	pot   *ledger.Pot
	col   int
	water [][]float64 // by row, as it was
}

func openTap(pot *ledger.Pot) *tap {
	t := &tap{pot: pot, col: -1}
	for _, col := range pot.Columns.Below(constituent.Water) {
		t.col = col
	}
	for row := range pot.Rows {
		t.water = append(t.water, slices.Clone(pot.Cell(row, t.col)))
	}
	return t
}

// set makes the water of each row factor times what it was.
func (t *tap) set(factor func(d int) float64) {
	for row, was := range t.water {
		if !t.pot.Has(row, t.col) {
			continue
		}
		now := t.pot.Write(row, t.col)
		for d, x := range was {
			now[d] = x * factor(d)
		}
	}
}

// central gives the water that there was.
func (t *tap) central() float64 {
	sum := 0.0
	for _, water := range t.water {
		sum += water[0]
	}
	return sum
}

// tell tells each juice how much of its water has gone.
func (t *tap) tell() {
	for row, was := range t.water {
		gone := make([]float64, len(was))
		for d, now := range t.pot.Cell(row, t.col) {
			gone[d] = was[d] - now
		}
		ledger.Dry(t.pot, row, gone)
	}
}

func (t *tap) putBack() { t.set(func(int) float64 { return 1 }) }

// causes are what a pot's readings are taken for beyond what the recipe explains, at
// central values.
type causes struct {
	water   float64 // g that came; below zero, that went
	lost    float64 // share of everything
	alcohol float64 // g that the recipe takes to have boiled off, and that are there; below zero, that went in the heat
	strain  float64 // how far water and loss are stretched (doubt.go)
}

// findWater tells which of the readings water may be the cause of: those whose instruments
// notice it. A mass that was read says how much water there is; where the mass of the pot
// is stated and was not read, no water has gone or come.
func (b *Bench) findWater(pot *ledger.Pot, list []reading, weighed bool) {
	byMass := slices.ContainsFunc(list, func(r reading) bool { return r.kind == amount.ReadMass })
	if weighed && !byMass {
		return
	}
	t := openTap(pot)
	for j, r := range list {
		if r.linear() {
			continue
		}
		list[j].told = b.tells(t, r)
		list[j].water = list[j].told >= limitOf("notice") && (r.kind == amount.ReadMass || !byMass)
	}
	t.putBack()
}

// tells gives how well a reading tells water, in its standard deviations.
func (b *Bench) tells(t *tap, r reading) float64 {
	ends := [2]float64{}
	for i, name := range []string{"least water", "most water"} {
		t.set(func(int) float64 { return limitOf(name) })
		ends[i] = math.Log(b.Expected(t.pot, r.kind)[0])
	}
	return math.Abs(ends[1]-ends[0]) / math.Sqrt(estimate.Variance(r.h)+r.r*r.r)
}

// moveWater lets water go or come until the pot reads what was read, as far as the recipe
// does not explain it. Readings that ask for different water have it between them, each
// by how well it tells water. What is dissolved stays.
//
// A mass that was read fixes the sum. Where it is too small there is less water, or, as
// far as the other readings ask for that water, something of all is lost.
func (b *Bench) moveWater(pot *ledger.Pot, u *update) (c causes) {
	t, mass, others := openTap(pot), pool{}, pool{}
	target, asks, short := []float64(nil), false, false
	var all []asked
	for j, r := range u.readings {
		if r.told < limitOf("notice") {
			continue
		}
		rest := u.off[j] - u.kappa[j]
		want, factor := b.wanted(pot, u, j), make([]float64, pot.N)
		if rest != 0 {
			asks = asks || r.water
			factor = b.waterFor(t, r.kind, want, [2]float64{math.Log(limitOf("least water")), math.Log(limitOf("most water"))})
		}
		all = append(all, asked{r.kind, factor[0]})
		if r.kind != amount.ReadMass {
			others.add(factor, r.told*r.told)
			continue
		}
		mass.add(factor, r.told*r.told)
		target, short = want, short || rest < 0
	}
	if !asks {
		return c
	}
	t.set(func(d int) float64 {
		switch {
		case mass.weight == 0:
			return math.Exp(others.mean(d))
		case short && others.weight > 0:
			return math.Exp(min(max(others.mean(d), mass.mean(d)), 0))
		}
		return math.Exp(mass.mean(d))
	})
	t.tell()
	became := pot.Central(constituent.Water) / t.central()
	c.water = pot.Central(constituent.Water) - t.central()
	if short && others.weight > 0 {
		c.lost = lose(pot, target)
	}
	c.strain = strainOf(math.Log(became), c.lost, all)
	return c
}

// pool is what several readings ask for, draw by draw, each with its weight.
type pool struct {
	sum    []float64
	weight float64
}

func (p *pool) add(col []float64, weight float64) {
	if p.sum == nil {
		p.sum = make([]float64, len(col))
	}
	for d, x := range col {
		p.sum[d] += x * weight
	}
	p.weight += weight
}

func (p *pool) mean(d int) float64 { return p.sum[d] / p.weight }

// wanted gives ln of what a pot shall read once water has moved.
func (b *Bench) wanted(pot *ledger.Pot, u *update, j int) []float64 {
	r, rest := u.readings[j], u.off[j]-u.kappa[j]
	now := b.Expected(pot, r.kind)
	estimate.Logs(now)
	for d := range now {
		now[d] = (1-u.doubt[j])*(now[d]+rest) + u.doubt[j]*r.noisy[d]
	}
	return now
}

// lose takes of everything until a pot weighs no more than exp(target), and gives the
// share that is lost at central values.
func lose(pot *ledger.Pot, target []float64) float64 {
	left := pot.Mass()
	for d, mass := range left {
		left[d] = min(math.Exp(target[d])/mass, 1)
	}
	pot.Scale(left)
	return 1 - left[0]
}

// waterFor gives the ln of the factor of the water with which a pot reads exp(want), draw
// by draw, within limits of that logarithm; where none does, the limit that comes nearest.
func (b *Bench) waterFor(t *tap, kind string, want []float64, ends [2]float64) []float64 {
	const halvings = 45
	read := func(factor []float64) []float64 {
		t.set(func(d int) float64 { return math.Exp(factor[d]) })
		col := b.Expected(t.pot, kind)
		estimate.Logs(col)
		return col
	}
	low, high := make([]float64, len(want)), make([]float64, len(want))
	estimate.Fill(low, ends[0])
	estimate.Fill(high, ends[1])
	atLow, atHigh := read(low), read(high)
	middle := make([]float64, len(want))
	for range halvings {
		for d := range middle {
			middle[d] = (low[d] + high[d]) / 2
		}
		for d, is := range read(middle) {
			if (is < want[d]) == (atLow[d] < atHigh[d]) {
				low[d] = middle[d]
			} else {
				high[d] = middle[d]
			}
		}
	}
	t.putBack()
	return middle
}

// fillUp makes a pot weigh exp(target), with water.
func fillUp(pot *ledger.Pot, target []float64) {
	now, water := pot.Mass(), pot.Total(constituent.Water)
	openTap(pot).set(func(d int) float64 {
		if water[d] <= 0 {
			return 1
		}
		return max(1+(math.Exp(target[d])-now[d])/water[d], 0)
	})
}
