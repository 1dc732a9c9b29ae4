package evidence

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/estimate"
)

// most is the least share of a constituent that is worth a sentence: whoever
// brings less does not lead.
const most = 0.5

// whole is the share from which a sentence says "all".
const whole = 0.995

// sentences says, for each constituent of a category, what leads it. A sentence
// must hold whatever is unknown: with every unknown part at its most, the low end of the
// lead's share is still at least half. It is left out where no seen source stands behind
// the figure, or where the figure is only a trace or below a limit, or less than is
// worth a word.
func sentences(c Category, ml float64) []string {
	var list []string
	for _, e := range c.Entries {
		if len(e.Parts) == 0 || len(e.Works) == 0 || e.State >= estimate.Trace || !Speaks(e.Constituent, e.Result, ml) {
			continue
		}
		if text, ok := sentence(e); ok {
			list = append(list, text)
		}
	}
	return list
}

// slightGrams is what nobody would speak of, of what is counted in grams: our own bound, a
// tenth of a gram, as cards print less than half a gram as little or nothing.
const slightGrams = 0.1

func sentence(e Entry) (string, bool) {
	lead, name := e.Parts[0], e.Constituent.Name
	much, but, ok := e.led()
	switch {
	case !ok:
		return "", false
	case lead.Itself: // that a substance brings itself is no evidence
		return fmt.Sprintf("%s%s of the %s is added pure%s.", strings.ToUpper(much[:1]), much[1:], name, but), true
	}
	return fmt.Sprintf("%s brings %s of the %s%s.", lead.Name, much, name, but), true
}

// led tells how much of a constituent its lead brings, in words, and what must be said
// beside it; ok is false where nothing leads.
func (e Entry) led() (much, but string, ok bool) {
	lead := e.Parts[0]
	switch {
	case e.Partial && lead.Share.Least >= 1:
		return "all", ", whatever is unknown", true
	case e.Partial:
		return fmt.Sprintf("at least %.0f %%", math.Floor(percent(lead.Share.Least))), ", whatever is unknown", lead.Share.Least >= most // NaN is not
	case lead.Share.Low >= whole:
		return "all", "", true
	case lead.Share.Low >= most:
		return fmt.Sprintf("%.0f %% (%.0f to %.0f)", percent(lead.Share.Mean), percent(lead.Share.Low), percent(lead.Share.High)), "", true
	}
	return "", "", false
}

func percent(share float64) float64 { return 100 * share }
