package assay

import (
	"sync"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Water is what brewing asks of a water, in mg/l as calcium carbonate.
type Water struct {
	Hardness   Result // calcium and magnesium
	Alkalinity Result // acid that it takes to alkalinityEnd
}

// alkalinityEnd is the pH to which a water's total alkalinity is titrated (ISO 9963-1).
const alkalinityEnd = 4.5

// chalk is the molar mass of calcium carbonate, the weight that hardness and
// alkalinity are written with.
var chalk = sync.OnceValue(func() float64 {
	molar, err := constituent.MolarMass("CaCO3")
	if err != nil {
		panic("assay: " + err.Error())
	}
	return molar
})

// water works out the hardness and alkalinity of a liquid that is hardly sour, as brewing
// waters are; nil if it is not, or has neither.
func (c *Chemistry) water(lab *laboratory, in ions, pot *ledger.Pot) (*Water, error) {
	if ta := c.Acidity[0].Per100g; ta.Why != "" || ta.High >= HardlySour {
		return nil, nil
	}
	const milli, charges = 1000, 2
	litres := lab.gauge.volume(pot)
	hardness, alkalinity := make([]float64, in.n), make([]float64, in.n)
	err := in.each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		end, err := s.Titrate(sol, alkalinityEnd, near)
		if err != nil {
			return err
		}
		perLitre := milli * chalk() / (litres[d] / perLitre)
		hardness[d] = (sol.Metals[acid.Calcium] + sol.Metals[acid.Magnesium]) * perLitre
		alkalinity[d] = max(-end.Base*sol.Solvent, 0) / charges * perLitre
		return nil
	})
	if err != nil {
		return nil, err
	}
	m := &meter{}
	out := &Water{Hardness: known(m.Of(hardness), "mg/l"), Alkalinity: known(m.Of(alkalinity), "mg/l")}
	const noticed = 1 // mg/l
	if out.Hardness.Mean < noticed && out.Alkalinity.Mean < noticed {
		return nil, nil
	}
	return out, nil
}
