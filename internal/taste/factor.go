package taste

import "sipsum/internal/constituent"

// AsSucrose is the sucrose, in grams, that is as sweet as what 100 ml hold, by the factors that are
// published, where the whole is as sweet as so much sucrose in 100 g. What no factor was found for counts nothing.
func AsSucrose(grams func(constituent.ID) float64, level float64) (sum float64) {
	for _, s := range sweeteners() {
		if x := grams(s.constituent.ID); x > 0 && len(s.strengths) > 0 {
			sum += x * s.at(level).value
		}
	}
	return sum
}
