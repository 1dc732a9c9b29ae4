package ladder

import (
	"math"
	"slices"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Standing is how some rows of a pot stand among all that hold a constituent, in the worst of the
// draws, and with every unknown part at its most against them.
type Standing struct {
	Least, Most float64 // of their share; NaN where nothing bounds what is unknown
	Amount      float64 // the least that they bring, in the constituent's unit
	Leads       bool    // in every draw they bring more than each of the others may
}

// book is what the rows of a pot hold of a constituent, draw by draw.
type book struct {
	draws       int
	perGram     float64
	known, open [][]float64 // by row; open is what it does not know at its most; nil: nothing
}

func open(pot *ledger.Pot, c *constituent.Constituent) book {
	of := composition.SortOf(pot, c)
	b := book{draws: pot.N, perGram: of.PerGram}
	for row := range pot.Rows {
		b.known, b.open = append(b.known, of.Of(row)), append(b.open, of.UnknownOf(row))
	}
	return b
}

// slight reports whether rows bring too little at central values to reach any rung.
func (b book) slight(rows []int) bool {
	lowest, mine, all := 1.0, 0.0, 0.0
	for _, s := range rungs() {
		lowest = min(lowest, s.least)
	}
	for row, col := range b.known {
		if col == nil {
			continue
		}
		all += col[0]
		if slices.Contains(rows, row) {
			mine += col[0]
		}
	}
	return !(mine >= (lowest-dust)*all) || mine == 0
}

// sum adds up what rows hold: what is known, and that with what is not at its most.
func (b book) sum(rows []int) (known, most []float64) {
	known, most = make([]float64, b.draws), make([]float64, b.draws)
	for _, row := range rows {
		for d, x := range b.known[row] {
			known[d] += x
			most[d] += x
		}
		// guard: what nobody knows of others may be theirs
		for d, x := range b.open[row] {
			most[d] += x // NaN stays NaN
		}
	}
	return known, most
}

// standing tells how some rows stand among others, which are told apart.
func (b book) standing(mine []int, others [][]int) Standing {
	known, most := b.sum(mine)
	rest, restMost := b.sum(slices.Concat(others...))
	s := Standing{Least: 1, Most: 0, Amount: math.Inf(1), Leads: true}
	for d := range known {
		s.Least = min(s.Least, share(known[d], restMost[d])) // NaN stays NaN
		s.Most = max(s.Most, share(most[d], rest[d]))
		s.Amount = min(s.Amount, known[d]*b.perGram)
	}
	for _, other := range others {
		if !s.Leads {
			break
		}
		_, its := b.sum(other)
		for d, x := range its {
			s.Leads = s.Leads && known[d] > x // more than NaN is nothing
		}
	}
	return s
}

// share is a part of itself and a rest; of nothing it is nothing.
func share(part, rest float64) float64 {
	if part == 0 {
		return 0
	}
	return part / (part + rest)
}
