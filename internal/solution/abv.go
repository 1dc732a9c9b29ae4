package solution

// ABV gives the alcoholic strength by volume in per cent: the volume that the
// ethanol alone would take up at 20 °C, as a share of the liquid's volume. A
// volume of zero or less gives 0.
func ABV(ethanolGrams, volumeMl float64) float64 {
	if volumeMl <= 0 {
		return 0
	}
	return percent * ethanolGrams / constants()["ethanol density"] / volumeMl
}
