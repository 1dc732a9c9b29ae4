package prep

import (
	"math"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// Gas is carbon dioxide by formula, a food like any other.
func Gas() *food.Food {
	return &food.Food{
		ID:       food.ID{Code: "the gas of a charge"},
		Names:    []food.Name{{Language: "en", Text: "Carbon dioxide"}},
		Chemical: true,
		Density:  food.Density{GramsPerMl: food.None, SD: food.None},
		Edible:   food.None,
		Values: []food.Value{{
			Constituent: constituent.CarbonDioxide, Amount: 100, SD: 0, Low: food.None, High: food.None, Limit: food.None,
			State: estimate.Calculated, Source: "formula", Ref: "CO2",
		}},
		Marks: []food.Mark{{Kind: "allergen", Source: "carbon dioxide by formula"}},
	}
}

// Charge is a closed vessel and what was put into it, in columns.
type Charge struct {
	Gas     solution.Gas
	Bottle  []float64 // ml
	Grams   []float64 // of the gas
	Celsius []float64

	Unmeasured bool // the drink brings gas that nobody stated
}

// Carbonate gives the column of carbon dioxide that is in the drink, in grams.
// The volume of the liquid is a column in ml; held is the carbon dioxide that is
// already in it. Left is what stays in the glass, in g/ml, nil if not stated.
//
//	closed:  p = n / (K₀·V_liquid + V_head/(R·T)),  dissolved = K₀·p·M
//	open:    dissolved = K₀·1 atm·M
//
// with K₀ of Weiss 1974 (solution.CO2Solubility), valid from 0 to 40 °C. What is
// stated as left is what is in the drink. Otherwise it lies between the open and
// the closed figure: rectangular, its middle as central value. A charge that is too
// small for the open figure stays below it: the closed figure is the most.
//
// It is an error to charge a bottle that is smaller than the drink, or beyond what
// bottles stand (data/limits.csv), or to leave more gas than the charge and the drink
// brought, or than any drink that is poured.
//
// Limits: water's solubility, so sugar and alcohol are not allowed for; ideal gas,
// no gas lost in charging, no air left in the vessel: the closed figure is the
// most that there can be.
func Carbonate(charge *Charge, left, volume, held []float64, f Factors) ([]float64, Outcome, error) {
	var out Outcome
	var closed, open []float64
	if charge != nil {
		closed, open = charge.equilibria(volume, held)
		if err := charge.tell(&out, volume, held, closed); err != nil {
			return nil, Outcome{}, err
		}
	}
	target := make([]float64, f.N)
	if left != nil {
		// guard: no glass holds that gas
		if most := unit.LimitOf("gas in a glass", "g/l").High; unit.Kilo*left[0] > most {
			return nil, Outcome{}, impossible("%s g/l of carbon dioxide do not stay in a glass: a closed bottle of champagne holds about %s g/l. State what is left when it is poured", plain(unit.Kilo*left[0]), plain(most))
		}
		for d := range target {
			target[d] = left[d] * volume[d]
		}
		if err := charge.allows(target, held); err != nil {
			return nil, Outcome{}, err
		}
		if closed != nil && target[0] > closed[0] {
			out.note("%.2g g/l are stated to stay in the glass, more than the charge can dissolve: check", unit.Kilo*left[0])
		}
		return target, out, nil
	}
	const half = 0.5
	at := f.draw("between open and closed", factor{half, 0, 1})
	for d := range target {
		low := min(open[d], closed[d])
		target[d] = low + at[d]*(closed[d]-low)
	}
	if open[0] >= closed[0] {
		out.note("what stays in the glass is not stated: taken as the %.2g g/l that the closed bottle dissolves, less than water holds at 1 atm of it", perLitre(closed[0], volume[0]))
		return target, out, nil
	}
	out.note("what stays in the glass is not stated: taken between %.2g g/l, open at 1 atm, and %.2g g/l, closed", perLitre(open[0], volume[0]), perLitre(closed[0], volume[0]))
	return target, out, nil
}

// allows holds what is left, in grams, to what the charge and the drink brought: an
// error at central values, and no more than that in single draws.
func (c *Charge) allows(left, held []float64) error {
	if c == nil || c.Unmeasured {
		return nil
	}
	// guard: gas is charged before it is left
	if all := c.Grams[0] + held[0]; left[0] > all {
		return unlike("%s g of carbon dioxide are left in the drink: the charge and the drink brought only %s g", left[0], all)
	}
	for d := range left {
		left[d] = min(left[d], c.Grams[d]+held[d])
	}
	return nil
}

func perLitre(grams, ml float64) float64 {
	if ml <= 0 {
		return 0
	}
	return unit.Kilo * grams / ml
}

// equilibria gives the grams dissolved in the closed vessel and open at 1 atm.
func (c *Charge) equilibria(volume, held []float64) (closed, open []float64) {
	molar := molarMass(constituent.CarbonDioxide)
	closed, open = make([]float64, len(volume)), make([]float64, len(volume))
	for d, ml := range volume {
		liquid, head := ml/unit.Kilo, max(c.Bottle[d]-ml, 0)/unit.Kilo
		atAtm := solution.CO2Solubility(c.Celsius[d]) * liquid * molar
		open[d] = atAtm
		closed[d] = atAtm * solution.CO2Pressure((c.Grams[d]+held[d])/molar, liquid, head, c.Celsius[d])
	}
	return closed, open
}

// tell gives the pressures, or the error of atRest.
func (c *Charge) tell(out *Outcome, volume, held, closed []float64) error {
	rest, err := c.atRest(volume, held)
	if err != nil {
		return err
	}
	molar := c.Gas.Molar()
	mol, liquid, head := (c.Grams[0]+held[0])/molar, volume[0]/unit.Kilo, (c.Bottle[0]-volume[0])/unit.Kilo
	out.note("closed, at rest: about %.2g bar of carbon dioxide, %.2g g/l or %.2g volumes; before it dissolves up to about %.2g bar. Upper limits, of an ideal gas",
		rest, perLitre(closed[0], volume[0]), solution.CO2Volumes(closed[0]/molar)/liquid, solution.Bar(c.Gas.Pressure(mol, 0, head, c.Celsius[0])))
	return nil
}

// atRest gives the pressure in bar at central values. It is an error if the drink does not fit into
// the vessel, or if no vessel stands the pressure.
func (c *Charge) atRest(volume, held []float64) (float64, error) {
	mol, liquid, head := (c.Grams[0]+held[0])/c.Gas.Molar(), volume[0]/unit.Kilo, (c.Bottle[0]-volume[0])/unit.Kilo
	if liquid <= 0 {
		return 0, impossible("there is no liquid to charge")
	}
	// guard: the drink fits the bottle
	if head <= 0 {
		return 0, unlike("the bottle is overfilled: %s ml of drink in %s ml leave no room for gas. Do not charge it", volume[0], c.Bottle[0])
	}
	rest := solution.Bar(c.Gas.Pressure(mol, liquid, head, c.Celsius[0]))
	// guard: no bottle stands that
	if most := unit.LimitOf("pressure of a bottle", "bar").High; rest > most {
		return 0, impossible("%s g of gas in %s ml would be about %.3g bar at rest: no bottle stands more than %s bar. Do not charge it", plain(c.Grams[0]), plain(c.Bottle[0]), rest, plain(most))
	}
	return rest, nil
}

// plain writes a figure of a bottle as somebody would.
func plain(x float64) string {
	const digits = 4
	return strconv.FormatFloat(math.Round(x*math.Pow10(digits))/math.Pow10(digits), 'f', -1, 64)
}
