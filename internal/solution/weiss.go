package solution

import (
	"math"

	"sipsum/internal/unit"
)

// zeroCelsius is 0 °C in kelvin, by definition of the Celsius scale.
const zeroCelsius = 273.15

// Kelvin gives the thermodynamic temperature.
func Kelvin(celsius float64) float64 { return celsius + zeroCelsius }

// GasConstant gives R in J/(mol K).
func GasConstant() float64 { return constants()["molar gas constant"] }

// FaradayConstant is the charge of a mole of electrons, C/mol.
func FaradayConstant() float64 { return constants()["Faraday constant"] }

// CO2Solubility gives K₀ of carbon dioxide in pure water, in mol/(l atm):
//
//	ln K₀ = A₁ + A₂·(100/T) + A₃·ln(T/100)
//
// (Weiss 1974, Marine Chemistry 2:203, at zero salinity; measured from 0 to
// 40 °C.) Sugar and alcohol are not allowed for: sugar lowers it.
func CO2Solubility(celsius float64) float64 {
	k, t := constants(), Kelvin(celsius)/unit.Hundred
	return math.Exp(k["carbon dioxide solubility A1"] + k["carbon dioxide solubility A2"]/t + k["carbon dioxide solubility A3"]*math.Log(t))
}

// CO2Pressure is Pressure of carbon dioxide. The air that was left in the vessel is not counted.
func CO2Pressure(mol, liquid, head, celsius float64) float64 {
	return CarbonDioxide.Pressure(mol, liquid, head, celsius)
}

// litreAtmospheres gives R·T in l atm/mol.
func litreAtmospheres(celsius float64) float64 {
	const pascalPerKilopascal = 1000
	return GasConstant() * Kelvin(celsius) / (constants()["standard atmosphere"] / pascalPerKilopascal)
}

// CO2Volumes gives litres of carbon dioxide at 0 °C and 1 atm from mol.
func CO2Volumes(mol float64) float64 { return mol * constants()["carbon dioxide molar volume"] }

// Bar gives bar from atm.
func Bar(atm float64) float64 {
	const pascal = 1e5
	return atm * constants()["standard atmosphere"] / pascal
}
