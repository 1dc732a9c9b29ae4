package taste

import (
	"math"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// SweetIndex is the sweetness in grams of sucrose per 100 ml.
type SweetIndex struct {
	Index
	Parts   []SweetPart
	Without []*constituent.Constituent // there, and no factor for them was found
	Notices Difference
}

// SweetPart is what one substance brings.
type SweetPart struct {
	Constituent *constituent.Constituent
	Grams       composition.Result // per 100 ml
	Factor      float64            // at the sweetness of the whole, from Low to High
	Low, High   float64
	Equivalent  float64 // grams of sucrose per 100 ml
	Sources     []string
}

// sweet is a substance of a glass: its grams per 100 ml, and where in its factor's range each
// draw is, from −1 (its low end) to 1.
type sweet struct {
	sweetener
	grams, within []float64
}

// Sweetness gives the sucrose equivalents of a liquid, with draws and the most that they may be.
func Sweetness(g Glass) SweetIndex {
	out := SweetIndex{Notices: differences()[Sweet]}
	var list []sweet
	for _, s := range sweeteners() {
		id := s.constituent.ID
		switch grams := estimate.Ratio(g.Pot.Total(id), g.Volume, perHundred); {
		case grams[0] == 0:
		case len(s.strengths) == 0:
			out.Without = append(out.Without, s.constituent)
		default:
			list = append(list, sweet{s, grams, g.within(s)})
		}
	}
	level := make([]float64, g.Pot.N)
	for d := range level {
		level[d] = levelOf(list, d)
	}
	out.Index = indexOf(level, "g")
	for _, s := range list {
		f := s.at(level[0])
		grams := composition.Known(estimate.Summarise(s.grams), "g")
		out.Parts = append(out.Parts, SweetPart{s.constituent, grams, f.value, f.low, f.high, grams.Mean * f.value, s.sources})
	}
	if more, unknown := g.unknownSweet(); unknown || len(out.Without) > 0 {
		if len(out.Without) > 0 {
			more = math.NaN()
		}
		out.atMost(plus(level, g.Volume, more))
	}
	return out
}

// within draws where in the range of its factor a substance is.
func (g Glass) within(s sweetener) []float64 {
	ens := g.ensemble()
	return ens.Column(estimate.Input{Shape: estimate.Uniform, Low: -1, High: 1, Stream: ens.Stream("sweetness", string(s.constituent.ID))})
}

// repeats bring a level to rest: a factor rises by at most 0.026 with a gram of sweetness, and
// only up to 20 g, so of 25 g of glucose each leaves two thirds of what the one before was off by; and factors
// go in straight lines, so that two steps tell where they lead (Aitken 1926, Proc R Soc Edinb 46:289).
const (
	repeats = 60
	atRest  = 1e-9 // g
)

// levelOf finds the sweetness at which the factors that hold there make it.
func levelOf(list []sweet, d int) float64 { return settle(list, d, 0, 0) }

// settle finds it with so many grams of sucrose beside them, from a level on.
func settle(list []sweet, d int, beside, level float64) float64 {
	made := func(level float64) float64 {
		sum := beside
		for _, s := range list {
			sum += max(s.grams[d], 0) * s.at(level).drawn(s.within[d])
		}
		return sum
	}
	for range repeats {
		once := made(level)
		if math.Abs(once-level) < atRest {
			return once
		}
		twice := made(once)
		if bend := (twice - once) - (once - level); bend != 0 {
			level = max(twice-(twice-once)*(twice-once)/bend, beside)
		} else {
			level = twice
		}
	}
	return level
}

// drawn is a factor at a place of its range.
func (f factor) drawn(within float64) float64 {
	if within < 0 {
		return f.value + within*(f.value-f.low)
	}
	return f.value + within*(f.high-f.value)
}

// unknownSweet gives the most that what nobody knows could add, in grams of sucrose: of sugars
// and of polyols by their totals, as sweet as the sweetest of them; NaN if nothing bounds it.
func (g Glass) unknownSweet() (grams float64, unknown bool) {
	sweetest := map[constituent.ID]float64{}
	for _, s := range sweeteners() {
		total := s.constituent.Parent
		if total == "" {
			total = s.constituent.ID
		}
		sweetest[total] = max(sweetest[total], s.most())
	}
	for _, c := range constituent.All() {
		factor, ok := sweetest[c.ID]
		if !ok || c.Kind != constituent.Parent && !g.carried(c.ID) {
			continue
		}
		if most, rows := composition.MostOf(g.Pot, c.ID); len(rows) > 0 && most != 0 {
			if factor == 0 { // glycyrrhizic acid: how sweet is not known
				factor = math.NaN()
			}
			grams, unknown = grams+most*factor, true
		}
	}
	return grams, unknown
}

// plus adds grams of the whole to a column per 100 ml; nil if they have no bound.
func plus(col, volume []float64, grams float64) []float64 {
	if math.IsNaN(grams) {
		return nil
	}
	out := make([]float64, len(col))
	for d := range col {
		out[d] = col[d] + perHundred*grams/volume[d]
	}
	return out
}
