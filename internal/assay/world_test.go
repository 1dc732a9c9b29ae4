package assay_test

import (
	"math"
	"math/rand"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// parts spells the sums out for the simulated truths.
var parts = map[constituent.ID][]constituent.ID{
	"SUGAR": {"SUCS", "FRUS", "GLUS", "LACS"}, "OA": {"CITAC", "MALAC"}, "CHOCDF": {"SUCS", "FRUS", "GLUS", "LACS", "CITAC", "MALAC", "FIBTG"},
}

var weighs = []constituent.ID{"WATER", "SUCS", "FRUS", "GLUS", "LACS", "CITAC", "MALAC", "FIBTG", "PROCNT", "FAT", "ASH", "MASS-other"}

// fact is what the drink file above says of one constituent of a food: grams
// in 100 g; without sd it is the class default.
type fact struct {
	id       constituent.ID
	mean, sd float64
	below    float64
}

var facts = map[string][]fact{
	"fruit": {
		{id: "WATER", mean: 86, sd: 1}, {id: "SUCS", mean: 6, sd: 0.5}, {id: "FRUS", mean: 4}, {id: "CITAC", mean: 1.2, sd: 0.2}, {id: "FIBTG", mean: 2, sd: 0.4},
		{id: "PROCNT", mean: 0.5}, {id: "ASH", mean: 0.3, sd: 0.05}, {id: "K", mean: 0.18}, {id: "VITC", mean: 0.04, sd: 0.01},
	},
	"sharp": {
		{id: "WATER", mean: 90, sd: 0.8}, {id: "CITAC", mean: 5}, {id: "MALAC", mean: 0.3, sd: 0.09}, {id: "SUCS", mean: 2}, {id: "GLUS", mean: 1.4},
		{id: "FRUS", mean: 1.3}, {id: "K", mean: 0.12}, {id: "VITC", mean: 0.03},
	},
	"sweet": {{id: "WATER", mean: 0.1}, {id: "SUCS", mean: 99.9, sd: 0.2}},
	"rich": {
		{id: "WATER", mean: 70, sd: 2}, {id: "FAT", mean: 22, sd: 1}, {id: "LACS", mean: 5}, {id: "PROCNT", mean: 3, sd: 0.2},
		{id: "NA", mean: 0.045, sd: 0.005}, {id: "CAFFN", below: 0.002},
	},
	// What the figures leave of 100 g is other mass.
	"dark": {{id: "WATER", mean: 98, sd: 0.2}, {id: "MASS-other", mean: 2}, {id: "CAFFN", mean: 0.06, sd: 0.015}, {id: "K", mean: 0.11, sd: 0.012}},
}

// vessel is grams by constituent: a simulated truth keeps no rows and no draws.
type vessel map[constituent.ID]float64

func (v vessel) mass() float64 {
	sum := 0.0
	for _, id := range weighs {
		sum += v[id]
	}
	return sum
}

func (v vessel) pour(from vessel, grams float64) {
	for id, x := range from {
		v[id] += x * grams
	}
}

// world is one truth, drawn with a generator, and by formulae, that the
// ensemble does not use.
type world struct {
	*rand.Rand
	common map[constituent.ID]float64
}

// lognormal by its mean and standard deviation, through its median.
func lognormal(mean, sd, z float64) float64 {
	median := mean * mean / math.Sqrt(mean*mean+sd*sd)
	return median * math.Exp(z*math.Sqrt(2*math.Log(mean/median)))
}

// within is rectangular: middle ± half.
func (w world) within(middle, half float64) float64 { return middle + half*(2*w.Float64()-1) }

// spreadClass is the class default of an ungrouped food.
func spreadClass(id constituent.ID) float64 {
	return food.ClassSpread(constituent.Must(id), "")
}

// foods gives the true composition of each food, grams per gram. Values without
// a spread of their own go wrong together: half of the variance of a class
// default is common.
func (w world) foods() map[string]vessel {
	all := map[string]vessel{}
	for _, name := range []string{"fruit", "sharp", "sweet", "rich", "dark"} {
		v := w.food(name)
		for !v.whole() {
			v = w.food(name)
		}
		mass := v.mass()
		for _, id := range weighs {
			v[id] /= mass
		}
		for _, rider := range []constituent.ID{"K", "NA", "VITC", "CAFFN"} {
			v[rider] /= 100
		}
		all[name] = v
	}
	return all
}

// whole reports whether what was drawn of a food makes 100 g: worlds in which it does not are none.
func (v vessel) whole() bool {
	const near = 0.15
	return math.Abs(v.mass()-100) < near
}

// food draws what a file says of a food, each figure by itself. What they leave of 100 g is other mass.
func (w world) food(name string) vessel {
	v := vessel{}
	for _, f := range facts[name] {
		switch {
		case f.below > 0:
			v[f.id] = f.below * w.Float64()
		case f.id == constituent.MassOther:
			v[f.id] = math.Max(100-v.mass(), 0)
		case f.sd > 0:
			v[f.id] = lognormal(f.mean, f.sd, w.NormFloat64())
		default:
			if _, ok := w.common[f.id]; !ok {
				w.common[f.id] = w.NormFloat64()
			}
			z := (w.common[f.id] + w.NormFloat64()) / math.Sqrt2
			v[f.id] = lognormal(f.mean, f.mean*spreadClass(f.id), z)
		}
	}
	return v
}

// serving follows the drink once.
func (w world) serving() vessel {
	f := w.foods()

	cordial := vessel{}
	cordial.pour(f["fruit"], w.within(300, 10))
	cordial.pour(f["sharp"], w.within(120, 0.5))
	cordial.pour(f["sweet"], 80+2*w.NormFloat64())
	cordial["VITC"] *= w.within(0.85, 0.025) // retention code 2151, rounded to 5 %
	cordial["WATER"] -= cordial.mass() - w.within(330, 10)
	// data/phases.csv: cloth passes 5 to 60 % of suspended solids, 20 to 100 % of protein.
	cordial["FIBTG"] *= 0.05 + 0.55*w.Float64()
	cordial["PROCNT"] *= 0.2 + 0.8*w.Float64()
	// How much of the liquor is collected changes the component's mass only.

	washed := vessel{}
	washed.pour(f["rich"], w.within(200, 0.5))
	washed.pour(f["sharp"], w.within(60, 0.5))
	washed["FAT"] *= w.within(0.10, 0.04)
	washed["PROCNT"] *= 0.50 + 0.10*w.NormFloat64()
	named := washed["FAT"] + washed["PROCNT"]
	share := (w.within(150, 3) - named) / (washed.mass() - named)
	for id := range washed {
		if id != "FAT" && id != "PROCNT" {
			washed[id] *= share
		}
	}

	glass := vessel{}
	glass.pour(cordial, w.within(40, 4)/cordial.mass())
	glass.pour(washed, w.within(60, 3)/washed.mass())
	glass.pour(f["dark"], w.within(36, 2))
	glass.pour(f["fruit"], w.within(20, 0.5))
	glass["WATER"] += w.within(30, 8)
	for id := range glass {
		glass[id] /= 3
	}
	return glass
}

func (v vessel) of(id constituent.ID) float64 {
	switch sum := parts[id]; {
	case id == constituent.Mass:
		return v.mass()
	case sum != nil:
		total := 0.0
		for _, part := range sum {
			total += v[part]
		}
		return total
	}
	return v[id]
}
