package sweep_test

// aFoamIsItsLiquidAndGas holds each foam of a drink to what an overrun is, and its gas to the charge: of
// carbon dioxide what the pot held before is in the siphon too.
func aFoamIsItsLiquidAndGas(s *subject, broken say) {
	if s.assay.Filled.Mean < s.assay.Volume.Mean*(1-rounding) {
		broken(s.assay.Volume.Mean-s.assay.Filled.Mean, "a serving of %g ml fills %g ml", s.assay.Volume.Mean, s.assay.Filled.Mean)
	}
	for _, f := range s.assay.Foams {
		if f.Fraction.Unit != "" && !(f.Fraction.Low > 0 && f.Fraction.High <= 100*(1+rounding)) {
			broken(f.Fraction.High, "%s: %g to %g %% of it are liquid", f.Path, f.Fraction.Low, f.Fraction.High)
		}
		if f.Volume.Unit != "" && f.Volume.Mean < f.Liquid.Mean*(1-rounding) {
			broken(f.Liquid.Mean-f.Volume.Mean, "%s: %g ml make %g ml of foam", f.Path, f.Liquid.Mean, f.Volume.Mean)
		}
		if f.Pressure.Unit == "" {
			continue
		}
		if !(f.Pressure.Low > 0) {
			broken(-f.Pressure.Low, "%s: a pressure of %g bar", f.Path, f.Pressure.Low)
		}
		if most := limit("pressure of a bottle"); f.Pressure.High > most*(1+rounding) {
			broken(f.Pressure.High/most, "%s: up to %g bar", f.Path, f.Pressure.High)
		}
		in := f.Dissolved.Mean + f.Head.Mean
		if less := f.Charge.Mean - in; less > rounding*f.Charge.Mean || f.Gas != "carbon dioxide" && -less > rounding*f.Charge.Mean {
			broken(less, "%s: %g g of gas are charged, and %g g are in it", f.Path, f.Charge.Mean, in)
		}
	}
}
