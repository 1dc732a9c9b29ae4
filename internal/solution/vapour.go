package solution

import (
	"sync"

	"sipsum/internal/embedded"
)

// equilibrium is a row of data/vapour_ethanol.csv: the mole fraction of ethanol in the liquid
// and its volatility there beside water.
type equilibrium struct{ liquid, volatility float64 }

var equilibria = sync.OnceValue(func() []equilibrium {
	var list []equilibrium
	for _, row := range embedded.Rows("vapour_ethanol.csv") {
		x, y := row.Number("liquid"), row.Number("vapour")
		list = append(list, equilibrium{x, y / (1 - y) / (x / (1 - x))})
	}
	return list
})

// AlcoholVolatility gives how much more of the alcohol than of the water leaves a liquid of
// this mole fraction, straight between the rows; settled says that it stays as it is when
// more has left, for below the first row nobody measured.
func AlcoholVolatility(x float64) (volatility float64, settled bool) {
	list := equilibria()
	if x <= list[0].liquid {
		return list[0].volatility, true
	}
	for i, above := range list[1:] {
		if below := list[i]; x <= above.liquid {
			part := (x - below.liquid) / (above.liquid - below.liquid)
			return below.volatility + part*(above.volatility-below.volatility), false
		}
	}
	return list[len(list)-1].volatility, false
}
