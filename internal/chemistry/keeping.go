package chemistry

import (
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// syrup is the refractometer's reading, in °Brix, from which a component is asked how it
// keeps even if nobody says that it is kept: below it water is all but pure.
const syrup = 30.0

// Keeping is what decides how a house-made component keeps that is kept, or a syrup.
type Keeping struct {
	WaterActivity Estimate // at 25 °C
	Freezing      Estimate // °C at which ice begins to form
	FromMemory    bool     // it rests on constants that nobody has seen in print
	Holding       *Holding // nil unless the drink file says how long it is kept
}

// Holding is what the Food Code's interaction table says of a component, at the highest
// pH and water activity that it may have. A pH that no meter has read, or that the recipe contradicts, lifts nothing:
// somebody's health hangs on it.
type Holding struct {
	Keeps           drink.Keeps
	PH              float64 // as read; NaN: nobody has read it, or its recipe contradicts what was read, and it is taken as the worst
	Doubted         bool    // its recipe contradicts what was read
	WaterActivity   float64
	Animal          bool // it holds milk or egg, which no table lifts
	NeedsAssessment bool // before it may be held without time or temperature control
	Source          string
}

// keepingOf works a house-made component out, c is its chemistry. nil: it is neither kept nor
// a syrup.
func keepingOf(c *Chemistry, l Liquid) *Keeping {
	pot, keeps := l.Pot, l.Keeps
	if keeps == nil && !(c.Brix.Mean >= syrup) {
		return nil
	}
	k := &Keeping{}
	n := min(pot.N, acidity.ChemistryDraws+1)
	activity, freezing := make([]float64, n), make([]float64, n)
	first, grams := pot.First(n), map[constituent.ID][]float64{}
	for _, leaf := range pot.Columns.List {
		grams[leaf.ID] = first.Total(leaf.ID)
	}
	one := map[constituent.ID]float64{}
	for d := range n {
		for id, col := range grams {
			one[id] = col[d]
		}
		aw, wet := solution.WaterActivity(one)
		celsius, freezes := solution.FreezesAt(one)
		if !wet || !freezes {
			k.WaterActivity.withhold("there is too little water in it")
			k.Freezing.withhold("there is too little water in it")
			return k
		}
		activity[d], freezing[d] = aw, celsius
		if d == 0 {
			k.FromMemory = solution.RestsOnMemory(one)
		}
	}
	m := &composition.Meter{}
	k.WaterActivity = drawn(m, activity, "1")
	k.Freezing = drawn(m, freezing, "°C")
	if keeps != nil {
		pH := math.NaN()
		// a doubted pH lifts nothing
		if l.Read.PH && !l.Read.Doubted {
			pH = c.PHMeter.High
		}
		k.Holding = holding(pot, *keeps, k.WaterActivity.High, pH)
		k.Holding.Doubted = l.Read.PH && l.Read.Doubted
	}
	return k
}

// holding looks a component up, as one that nobody heated in its closed package.
func holding(pot *ledger.Pot, keeps drink.Keeps, aw, pH float64) *Holding {
	h := &Holding{Keeps: keeps, PH: pH, WaterActivity: aw}
	for _, row := range pot.Rows {
		h.Animal = h.Animal || row.Profile.Food.Facts().OfAnimals
	}
	worst := h.PH
	if math.IsNaN(worst) {
		const highest = 14 // pH
		worst = highest
	}
	const packed = false
	h.NeedsAssessment, h.Source = solution.NeedsAssessment(aw, worst, packed)
	h.NeedsAssessment = h.NeedsAssessment || h.Animal
	return h
}
