// Package solution is the physics of a drink as a liquid: density and volume,
// what a refractometer reads, alcohol by volume, dissolved gas, water activity,
// freezing, and the tables by which a food's keeping is judged.
//
// # Model
//
// Volumes: each mass-additive constituent brings its apparent specific volume
// at 20 °C in water (data/specific_volumes.csv), and sugars and ethanol bring
// what they really take up at their strength (Excess),
//
//	V = Σ mᵢ·vᵢ + E     ρ = Σ mᵢ / V
//
// with m in g, v in ml/g, ρ in g/ml. A constituent without a row takes its
// parent's: an acid that nobody has read takes citric acid's, with a wider spread. Refraction is
// a sum of shares likewise (data/refraction.csv), and ethanol brings what it reads at its strength
// (RefractionExcess). The density
// of sucrose in water is a smooth curve through published points
// (data/solution_sucrose.csv); ethanol in water is the polynomial of OIML R 22 at
// 20 °C (data/solution_ethanol.csv). Water activity is Norrish's; ice forms where
// it equals the activity of ice, and ethanol lowers that as published (FreezesAt,
// data/solution_ethanol_freezing.csv). What holds too little water to be a liquid (Wetness; IsFat) has
// no reading of a refractometer. The solubility of carbon dioxide is Weiss's, that of the other gases of
// a bar is by Henry's constants (gas.go).
//
// # Limits
//
// 20 °C (water activity 25 °C). Sucrose to 70 % by mass: within 3e-4 g/ml of
// points that were not used. Sugar and alcohol together are
// added as if each had the water to itself. Other sugars count as sucrose.
// OIML's terms for other temperatures are left out: no complete copy was seen.
// A refractometer's reading of an alcoholic drink means little. Norrish's
// constants for single sugars other than sucrose and polyols are from memory;
// salts count as ideal ions, good to about 2 %. Dissolved gas hardly counts for
// the density; foam is not a liquid.
package solution
