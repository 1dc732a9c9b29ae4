package evidence

import (
	"fmt"
	"math"

	"sipsum/internal/estimate"
)

// most is the least share of a constituent that is worth a sentence: whoever
// brings less does not lead.
const most = 0.5

// whole is the share from which a sentence says "all".
const whole = 0.995

// sentences says, for each constituent of a category, what leads it. A sentence
// must hold whatever is unknown: with every unknown part at its most, the lead
// still brings at least half. It is left out where no seen source stands behind
// the figure, or where the figure is only a trace or below a limit.
func sentences(c Category) []string {
	var list []string
	for _, e := range c.Entries {
		if len(e.Parts) == 0 || len(e.Works) == 0 || e.State >= estimate.Trace {
			continue
		}
		if text, ok := sentence(e); ok {
			list = append(list, text)
		}
	}
	return list
}

func sentence(e Entry) (string, bool) {
	lead, name := e.Parts[0], e.Constituent.Name
	if !e.Partial {
		switch {
		case lead.Share.Low >= whole:
			return fmt.Sprintf("%s brings all of the %s.", lead.Name, name), true
		case lead.Share.Low >= most:
			return fmt.Sprintf("%s brings %.0f %% (%.0f to %.0f) of the %s.", lead.Name, percent(lead.Share.Mean), percent(lead.Share.Low), percent(lead.Share.High), name), true
		}
		return "", false
	}
	least := lead.Mean / e.WithBounds
	if math.IsNaN(least) || least < most {
		return "", false
	}
	return fmt.Sprintf("%s brings at least %.0f %% of the %s, whatever is unknown.", lead.Name, math.Floor(percent(least)), name), true
}

func percent(share float64) float64 { return 100 * share }
