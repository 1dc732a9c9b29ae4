// Package solution is the physics of a drink as a liquid. So far it knows
// density only.
//
// # Model
//
// Volumes add: each mass-additive constituent brings its apparent specific
// volume at 20 °C in water (data/specific_volumes.csv),
//
//	V = Σ mᵢ·vᵢ    ρ = Σ mᵢ / V
//
// with m in g, v in ml/g, ρ in g/ml. A constituent without a row takes its
// parent's.
//
// # Limits
//
// 20 °C; no contraction beyond what apparent volumes hold: against the sucrose
// table of the CRC Handbook it errs by less than 0.003 g/ml up to 46 % and 0.009 at
// 60 %, for ethanol by less than 0.002 g/ml up to 40 %. Dissolved gas hardly counts; foam
// is not a liquid.
package solution
