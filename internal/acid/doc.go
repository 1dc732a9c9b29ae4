// Package acid is the acid–base chemistry of a drink: its pH, the base that
// takes it to another pH, and what follows from that (titratable acidity,
// buffer capacity, blends, doses).
//
// # Model
//
// A Solution holds amounts: mol of each weak acid in all its forms, of calcium
// and magnesium, and of charge on the ions that stay as they are (potassium,
// sodium, chloride: the strong ions), in so many kilograms of solvent.
// Amounts are what blending conserves; pH is not, so two solutions are pooled
// by adding their amounts and solving once.
//
// The pH is the one at which the charges cancel. For an acid of N protons whose
// bare form carries zL,
//
//	strong + 2·calcium + 2·magnesium + Σ n·zL + Σ bound protons + [H⁺] − [OH⁻] = 0
//
// with the protons bound by each acid from its stepwise constants and those of
// its pairs with calcium and magnesium (M + h·H + L, one metal an acid). pH is
// −log₁₀ of the activity of the hydrogen ion, as a meter calibrated with
// standard buffers reads it. Concentrations are molal, in mol per kilogram of
// water (with alcohol: of water and ethanol together). Activity coefficients
// are those of Davies,
//
//	log γ = −A·z²·(√I/(1+√I) − b·I)     b = 0.2, γ = 1 for what has no charge
//
// with A by temperature; the hydrogen ion and the ions of carbonic acid have those
// of Debye and Hückel for their own size (activity.go). Constants move with
// temperature as
//
//	ln K(T) = ln K° − (ΔH/R)(1/T − 1/T₀) + (ΔCp/R)(T₀/T − 1 + ln(T/T₀))
//
// (Goldberg, Kishore and Lennen 2002); a blank ΔH leaves K as it is at 25 °C.
// Ethanol weakens carboxylic acids by a shift proportional to its mass share
// in the solvent. Constants are rows of data/acid_*.csv, with their sources;
// those not seen in print are marked there and told by FromMemory.
//
// At a fixed ionic strength the charge rises strictly with the hydrogen ion, so
// a Newton step inside a bracket always finds the pH; the ionic strength that
// reproduces itself lies between zero and the limit of the activity model, and
// is bracketed too. Solve therefore converges or says why it cannot.
//
// An open solution is one whose CO2(aq) a gas keeps as it is (Degas): carbonic acid
// then has no total, and its forms stand in proportion to the one without charge,
//
//	[form] = [CO2(aq)]·weight(form)/weight(CO2(aq))
//
// so what it brings to the balance is found in the same solve.
//
// A solution whose acids nobody knows (milk, a plant drink) can be titrated:
// Fit turns the curve into amounts of monoprotic sites on a fixed scale of pK
// (a buffer spectrum), which then blend and titrate like any other acid.
//
// # Limits
//
// 0 to 60 °C; ionic strength to 0.6 mol/kg, beyond which activity coefficients
// stay as at the limit and State.Beyond is set. Davies with b = 0.2 was chosen
// for doing no worse than 0.3 on the standard buffers and better on the
// McIlvaine table (which is then no independent test of b). Two ions have their
// published sizes because b = 0.2 alone misses the carbonate buffer by 0.025 and
// 0.1 mol/l of a strong acid by 0.03; no size was fitted. Na⁺ and K⁺ pairs are
// left out on purpose: the Davies term already holds them, and with them the
// phosphate buffer would miss by 0.09. Pairs of malate,
// quinate, oxalate and chlorogenate with calcium are not modelled: no constants
// seen; the effect in a juice is a few hundredths of a pH. The ethanol shift is
// known at 12 % vol and for carboxylic acids only. Nothing precipitates.
// Proteins, pectin and melanoidins buffer and are no acids here: their
// solutions need a titration. The sites of a fitted spectrum do not move with
// temperature, know nothing of calcium, and hold between the lowest and the
// highest pH that was titrated. Sugar's and gums' effect on activities is left
// out. In syrups the ions crowd in little water: the molal scale is right, the
// activity model at its edge.
package acid
