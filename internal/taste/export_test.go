package taste

import "sipsum/internal/constituent"

// Threshold gives the lowest and highest threshold that is used, in mg per litre.
func Threshold(of Taste, id constituent.ID) (low, high float64) {
	for _, t := range thresholds() {
		if t.taste == of && t.constituent.ID == id {
			return t.low, t.high
		}
	}
	return 0, 0
}
