package optimise

import "math"

// steps is a variable as whole numbers of its step.
type steps struct {
	least, most, start int
	step               float64
}

// grid is all that the amounts may be.
type grid []steps

// mostPaired is up to how many amounts steps of two are asked for: our own bound, since of so many
// there are three hundred, and of a hundred amounts twenty thousand.
const mostPaired = 12

// amounts gives a point of the grid in units.
func (a grid) amounts(at []int) []float64 {
	x := make([]float64, len(at))
	for i, k := range at {
		x[i] = float64(k) * a[i].step
	}
	return x
}

// on gives a point in units on the grid.
func (a grid) on(at []float64) []int {
	k := make([]int, len(at))
	for i, x := range at {
		k[i] = int(math.Round(x / a[i].step))
	}
	return k
}

// change is how far a point is from what is written: of each amount as a share of it.
func (a grid) change(at []int) float64 {
	sum := 0.0
	for i, k := range at {
		sum += a.weight(i) * math.Abs(float64(k-a[i].start))
	}
	return sum
}

// weight is what one step of a variable counts as a change.
func (a grid) weight(i int) float64 {
	return 1 / math.Max(float64(a[i].start), 1)
}

// start is what is written, on the grid.
func (a grid) start() []int {
	at := make([]int, len(a))
	for i, g := range a {
		at[i] = g.start
	}
	return at
}

// far is the stride to the farther end of an amount.
func (a grid) far(at []int) func(i int) int {
	return func(i int) int {
		g := a[i]
		if up := g.most - at[i]; up >= at[i]-g.least {
			return up
		}
		return g.least - at[i]
	}
}

// near is the stride of one step, inwards at an end.
func (a grid) near(at []int) func(i int) int {
	return func(i int) int {
		g := a[i]
		switch {
		case at[i] < g.most:
			return 1
		case at[i] > g.least:
			return -1
		}
		return 0
	}
}

// within is a stride of a tenth of the reach, a step at least, inwards at an end.
func (a grid) within(at []int, share float64) func(i int) int {
	const part = 0.1
	one := a.near(at)
	return func(i int) int {
		g := a[i]
		by := one(i) * max(1, int(part*share*float64(g.most-g.least)))
		if to := at[i] + by; to < g.least || to > g.most {
			return one(i)
		}
		return by
	}
}

func (a grid) neighbours(at []int) [][]int {
	var list [][]int
	add := func(moves ...[2]int) {
		next := append([]int(nil), at...)
		for _, m := range moves {
			next[m[0]] += m[1]
			if g := a[m[0]]; next[m[0]] < g.least || next[m[0]] > g.most {
				return
			}
		}
		list = append(list, next)
	}
	for i := range at {
		for _, by := range []int{-1, 1} {
			add([2]int{i, by})
		}
	}
	if len(at) > mostPaired {
		return list
	}
	for i := range at {
		for k := range i {
			for _, by := range [][2]int{{1, -1}, {-1, 1}, {-1, -1}, {1, 1}} {
				add([2]int{i, by[0]}, [2]int{k, by[1]})
			}
		}
	}
	return list
}

// program asks for the least change within a box.
func (a grid) program(box []steps) *program {
	p := &program{box: box, up: make([]float64, len(box)), down: make([]float64, len(box))}
	for i := range box {
		p.up[i], p.down[i] = a.weight(i), a.weight(i)
	}
	return p
}
