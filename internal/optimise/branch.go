package optimise

import (
	"errors"
	"math"
)

// How many programmes end a search by branches: one whose lines hold everywhere, some tenths of a
// second; and one of many on a walk, whose lines hold only nearby. Our own bounds.
const (
	mostNodes   = 4000
	nodesOfWalk = 100
)

// best finds the point of the grid at which a program is least: by branches on an amount that
// stands between two steps, bounded by what is possible between the steps (Land and Doig 1960,
// Econometrica 28:497). sure is false where the search was cut.
func (p *program) best() (at []int, value float64, sure bool, err error) {
	const many = 16 // amounts: a programme of more takes longer, and there are fewer
	return p.bestOf(mostNodes * many / max(many, len(p.box)))
}

func (p *program) bestOf(most int) (at []int, value float64, sure bool, err error) {
	b := &branches{p: *p, value: math.Inf(1), sure: true, most: most}
	err = b.follow(p.box)
	if err == nil && b.at == nil {
		err = errNone
	}
	return b.at, b.value, b.sure, err
}

type branches struct {
	p     program
	at    []int
	value float64
	nodes int
	most  int
	sure  bool
}

func (b *branches) follow(box []steps) error {
	if b.nodes++; b.nodes > b.most {
		b.sure = false
		return nil
	}
	sub := b.p
	sub.box = box
	x, value, err := sub.relaxed()
	switch {
	case errors.Is(err, errNone):
		return nil
	case err != nil:
		b.sure = false // the library cannot solve this one
		return nil
	case value >= b.value-dust*math.Max(1, math.Abs(b.value)):
		return nil
	}
	on, most := -1, whole
	for i := range x {
		if part := math.Abs(x[i] - math.Round(x[i])); part > most {
			on, most = i, part
		}
	}
	if on < 0 {
		at := make([]int, len(x))
		for i := range x {
			at[i] = min(max(int(math.Round(x[i])), box[i].least), box[i].most)
		}
		b.at, b.value = at, value
		return nil
	}
	below, above := append([]steps(nil), box...), append([]steps(nil), box...)
	below[on].most = int(math.Floor(x[on]))
	above[on].least = int(math.Ceil(x[on]))
	order := [][]steps{below, above}
	if x[on]-math.Floor(x[on]) > 0.5 {
		order[0], order[1] = order[1], order[0]
	}
	for _, next := range order {
		if err := b.follow(next); err != nil {
			return err
		}
	}
	return nil
}
