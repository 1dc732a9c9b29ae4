package acidity

import (
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
)

// Laboratory tells what decides the acidity of the pots of a run. It keeps what it has
// found of a food, which is the same in every pot.
type Laboratory struct {
	Ens        estimate.Ensemble
	drawer     *ledger.Drawer
	Gauge      *liquid.Gauge
	water, gas *food.Profile // of melted ice, and of carbonation: nil if there is none

	titratedFoods map[*food.Profile]*moreAcid    // what their publishers titrated
	calibrations  map[*food.Profile]*calibration // where a published pH counts beside the composition
	weighing      *Laboratory                    // see scales
}

func NewLaboratory(ens estimate.Ensemble, drawer *ledger.Drawer, water, gas *food.Profile) *Laboratory {
	return &Laboratory{
		Ens: ens, drawer: drawer, Gauge: liquid.NewGauge(ens, drawer), water: water, gas: gas,
		titratedFoods: map[*food.Profile]*moreAcid{}, calibrations: map[*food.Profile]*calibration{},
	}
}

// solved is the length of a column for which equilibria are solved.
func (lab *Laboratory) solved() int { return min(lab.Ens.N, ChemistryDraws+1) }

// MeterCelsius is the temperature of a pH meter's table and of titrations.
const MeterCelsius = 25.0

// EndPoints of titratable acidity: IFU and AOAC 8.1 first, OIV and RSK 7.0, and
// 8.2 of coffee laboratories.
var EndPoints = []float64{8.1, 7.0, 8.2}

// ChemistryDraws is how many draws the equilibria are solved for: the first of
// the run's. A 90 % interval of 200 draws is good to a tenth of its width.
const ChemistryDraws = 200

const PerLitre = 1000
