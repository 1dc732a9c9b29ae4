package ledger

// Toward is a pot that holds the same rows otherwise, and how much of it counts, draw by draw.
type Toward struct {
	Pot   *Pot
	Share []float64
}

// Lean makes of each draw a mixture of a pot as it stands and of others that hold the same
// rows: grams by grams, with what the rows carry beside them. The shares of a draw come to 1
// at most; where they are 0 nothing changes.
func Lean(p *Pot, others ...Toward) {
	for row := range p.Rows {
		for col := range p.Columns.List {
			mix(others, p.Cell(row, col), func() []float64 { return p.Write(row, col) }, func(o *Pot) []float64 { return o.Cell(row, col) })
		}
		for _, t := range carriedBy(p, others, row) {
			own := p.Carry(row, t)
			mix(others, own, func() []float64 { return own }, func(o *Pot) []float64 { return o.Carry(row, t) })
		}
	}
}

// carriedBy lists what a row carries in any of some pots.
func carriedBy(p *Pot, others []Toward, row int) (all []Tracer) {
	seen := map[Tracer]bool{}
	add := func(list []Traced) {
		for _, t := range list {
			if !seen[t.Tracer] {
				seen[t.Tracer] = true
				all = append(all, t.Tracer)
			}
		}
	}
	add(p.traced[row])
	for _, o := range others {
		add(o.Pot.traced[row])
	}
	return all
}

// mix moves a column by what others have more of it, each by its share; own is written only
// where it changes.
func mix(others []Toward, is []float64, own func() []float64, of func(*Pot) []float64) {
	var more []float64
	for _, o := range others {
		for d, x := range of(o.Pot) {
			if o.Share[d] == 0 || x == is[d] {
				continue
			}
			if more == nil {
				more = make([]float64, len(is))
			}
			more[d] += o.Share[d] * (x - is[d])
		}
	}
	if more == nil {
		return
	}
	for d, column := 0, own(); d < len(column); d++ {
		column[d] = max(column[d]+more[d], 0)
	}
}
