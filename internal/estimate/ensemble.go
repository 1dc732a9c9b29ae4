package estimate

// Ensemble is one run's draws: which they are, how many, and who keeps account of them. It
// is all that anybody needs to turn what is uncertain into a column.
type Ensemble struct {
	Seed    uint64
	N       int      // length of a column: draws + 1
	Journal *Journal // nil: nobody asks where a spread comes from
	Only    string   // the one kind of input that varies, all others stay at their central values; "": all vary
}

// Stream names the stream of an input: its kind, and then the table, food and constituent,
// or the path of a line.
func (e Ensemble) Stream(parts ...string) Key {
	if e.Only != "" && parts[0] != e.Only {
		return steady
	}
	return KeyOf(e.Seed, parts...)
}

// Column draws an input.
func (e Ensemble) Column(in Input) []float64 {
	col := make([]float64, e.N)
	in.Fill(col)
	return col
}

// Of gives a column that is the same in every draw.
func (e Ensemble) Of(x float64) []float64 { return Constant(e.N, x) }

// Constant gives a column of n numbers that are all x.
func Constant(n int, x float64) []float64 {
	col := make([]float64, n)
	Fill(col, x)
	return col
}

// Fill makes every number of a column x.
func Fill(col []float64, x float64) {
	for d := range col {
		col[d] = x
	}
}
