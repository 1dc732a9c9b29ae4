package chemistry

import (
	"math"
	"sync"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Water is what brewing asks of a water, in mg/l as calcium carbonate.
type Water struct {
	Hardness   composition.Result // calcium and magnesium
	Alkalinity composition.Result // acid that it takes to alkalinityEnd
}

// alkalinityEnd is the pH to which a water's total alkalinity is titrated (ISO 9963-1).
const alkalinityEnd = 4.5

// chalk is the molar mass of calcium carbonate, the weight that hardness and
// alkalinity are written with.
var chalk = sync.OnceValue(func() float64 {
	molar, err := constituent.MolarMass("CaCO3")
	if err != nil {
		panic("chemistry: " + err.Error())
	}
	return molar
})

// water works out the hardness and alkalinity of a liquid that is hardly sour, as brewing
// waters are; nil if it is not, or has neither.
func (c *Chemistry) water(lab *acidity.Laboratory, in acidity.Ions, pot *ledger.Pot) (*Water, error) {
	if ta := c.Acidity[0].Per100g; ta.Why != "" || ta.High >= HardlySour {
		return nil, nil
	}
	const milli, charges = 1000, 2
	litres := lab.Gauge.Volume(pot)
	hardness, alkalinity := make([]float64, in.N), make([]float64, in.N)
	err := in.Each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		if err := acidity.Degas(s, sol, near); err != nil { // what fizzes neither adds nor takes alkalinity
			return err
		}
		end, err := s.Titrate(sol, alkalinityEnd, near)
		if err != nil {
			return err
		}
		perLitre := milli * chalk() / (litres[d] / acidity.PerLitre)
		hardness[d] = (sol.Metals[acid.Calcium] + sol.Metals[acid.Magnesium]) * perLitre
		alkalinity[d] = max(-end.Base*sol.Solvent, 0) / charges * perLitre
		return nil
	})
	if err != nil {
		return nil, err
	}
	m := &composition.Meter{}
	out := &Water{Hardness: composition.Known(m.Of(hardness), "mg/l"), Alkalinity: composition.Known(m.Of(alkalinity), "mg/l")}
	const noticed = 1                                                 // mg/l
	blank := milli * chalk() / charges * math.Pow(10, -alkalinityEnd) // the acid that the end point holds, without any bicarbonate
	if out.Hardness.Mean < noticed && out.Alkalinity.Mean < blank+noticed {
		return nil, nil
	}
	return out, nil
}
