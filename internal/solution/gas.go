package solution

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Gas is a gas that bottles and siphons are charged with, by its formula.
type Gas string

// The gases of a bar.
const (
	CarbonDioxide Gas = "CO2"
	NitrousOxide  Gas = "N2O"
	Nitrogen      Gas = "N2"
)

// names are those of the rows of data/solution_constants.csv.
var names = map[Gas]string{NitrousOxide: "nitrous oxide", Nitrogen: "nitrogen", CarbonDioxide: "carbon dioxide"}

// Name is what people call a gas.
func (g Gas) Name() string { return names[g] }

// Molar gives the molar mass in g/mol.
func (g Gas) Molar() float64 {
	if g == CarbonDioxide {
		return constituent.Must(constituent.CarbonDioxide).Molar
	}
	return constants()[g.Name()+" molar mass"]
}

// Solubility gives what pure water dissolves of a gas, in mol/(l atm): of carbon dioxide by
// Weiss (CO2Solubility), of the others
//
//	H(T) = H(T₀) · exp(B · (1/T − 1/T₀)),  T₀ = 298.15 K
//
// with the evaluated constants of Sander 2023 (Atmos. Chem. Phys. 23:10901). One slope for all
// temperatures: of nitrogen it gives 8 % less at 0 °C, and 3 % less at 5 and 40 °C, than was measured
// (J. Res. Natl. Bur. Stand. 77A:133, table 3). Sugar lowers a solubility, alcohol raises it, and fat
// holds gases in its own way: none of them is allowed for.
func (g Gas) Solubility(celsius float64) float64 {
	if g == CarbonDioxide {
		return CO2Solubility(celsius)
	}
	k := constants()
	at := k[g.Name()+" solubility"] * math.Exp(k[g.Name()+" solubility slope"]*(1/Kelvin(celsius)-1/k["reference temperature of gases"]))
	return at * k["standard atmosphere"] / unit.Kilo // of a pascal and a cubic metre to an atmosphere and a litre
}

// Pressure gives the pressure in atm at which mol of a gas share a closed vessel with liquid and
// head space, in litres, at equilibrium:
//
//	p = n / (K·V_liquid + V_head / (R·T))
//
// The gas is ideal. It is what a gauge shows where the vessel was closed with air in it: the air
// keeps its own atmosphere.
func (g Gas) Pressure(mol, liquid, head, celsius float64) float64 {
	perAtm := g.Solubility(celsius)*liquid + head/litreAtmospheres(celsius)
	if perAtm <= 0 {
		return 0
	}
	return mol / perAtm
}
