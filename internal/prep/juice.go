package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// probe is a tracer of one gram of what is dissolved, to see how much of it a step keeps.
type probe struct{}

func (probe) As() constituent.ID { return ledger.WaterGone{}.As() }

// noteWater tells each juice of a pot how much more of its water than of its sugars a step has
// taken out.
func noteWater(pot *ledger.Pot, change func()) {
	juices := map[int][]float64{} // water by row
	for row, r := range pot.Rows {
		if r.Profile.Food.Facts().Juice {
			juices[row] = pot.Of(row, constituent.Water)
			estimate.Fill(pot.Carry(row, probe{}), 1)
		}
	}
	change()
	for row, gone := range juices {
		kept := pot.Carry(row, probe{})
		pot.Shed(row, probe{})
		left, some := pot.Of(row, constituent.Water), false
		for d, before := range gone {
			gone[d] = kept[d]*before - left[d]
			some = some || gone[d] > dust*before
		}
		if some {
			ledger.Dry(pot, row, gone)
		}
	}
}

// AddConcentrated counts the sugars of concentrated juice in a finished drink as added, as far
// as they are more than those of the same volume of that juice:
//
//	added = sugars · missing / volume    volume of the juice with all its water again
//	missing = water gone · (1 − other water / water gone from all juices), at least 0
//
// since all the water of the finished drink may be taken to bring a juice back, and no water
// that has left it (21 CFR 101.9(c)(6)(iii), as the guidance explains it). Milk sugar and
// what is added already do not count. It gives what has become added of each row, in grams
// at central values.
func AddConcentrated(pot *ledger.Pot, volume func(*ledger.Pot) []float64) map[int]float64 {
	col, counted := pot.Columns.At(constituent.AddedSugar), map[int]float64{}
	gone, missing := missingWater(pot)
	water, _ := solution.VolumeOf(constituent.Water)
	for row, left := range gone {
		if left == nil || col < 0 {
			continue
		}
		now := volume(pot.Only(func(r int) bool { return r == row }))
		share := make([]float64, pot.N) // of the sugars that are not added yet
		for d, x := range left {
			if x > 0 {
				share[d] = x * missing[d] * water.MlPerGram / (now[d] + x*water.MlPerGram)
			}
		}
		sugars, added := pot.Of(row, constituent.Sugar), pot.Write(row, col)
		counted[row] = max(sugars[0]-added[0], 0) * share[0]
		for d, s := range share {
			added[d] += max(sugars[d]-added[d], 0) * s
		}
		bounds := pot.Bounds(row)
		if share[0] > 0 { // nothing of nothing bounded is nothing
			bounds[constituent.Must(constituent.AddedSugar).Order] += bounds[constituent.Must(constituent.Sugar).Order] * share[0] // NaN stays NaN
		}
	}
	return counted
}

// missingWater gives the water that has gone from each juice of a pot, nil where none has, and
// which share of it the other water of the pot does not bring back.
func missingWater(pot *ledger.Pot) (gone [][]float64, missing []float64) {
	gone, missing = make([][]float64, len(pot.Rows)), make([]float64, pot.N)
	all, other := make([]float64, pot.N), make([]float64, pot.N)
	for row, r := range pot.Rows {
		for _, t := range pot.Traced(row) {
			if t.Tracer == (ledger.WaterGone{}) {
				gone[row] = t.Column
			}
		}
		for d, x := range gone[row] {
			all[d] += x
		}
		if !r.Profile.Food.Facts().Juice {
			for d, x := range pot.Of(row, constituent.Water) {
				other[d] += x
			}
		}
	}
	for d, x := range all {
		if x > 0 {
			missing[d] = max(1-other[d]/x, 0)
		}
	}
	return gone, missing
}
