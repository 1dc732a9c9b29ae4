package caution

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/constituent"
)

const alcoholID = constituent.Alcohol

// printed is the strength, % vol, below which one prints as 0.0: our own bound, less is in
// ripe fruit and bread.
const printed = 0.05

// fineStrength is the strength, % vol, up to which the second decimal decides: our own
// bound, above the limits of the law (0.5, 1.15, 1.2).
const fineStrength = 2

// brewed is what makes unstated alcohol plausible: what is sold for it, or a ferment.
var brewed = []together{{{kind: "mark", key: "alcohol"}}, {{kind: "group", key: "wine"}}, {{kind: "group", key: "beer"}}, {{kind: "group", key: "spirit"}}, {{kind: "step", key: "ferment"}}}

// strength is how strong a drink is, as far as anybody can say.
type strength struct {
	abv, most float64  // % vol; NaN: not known
	unstated  []string // foods that are sold for their alcohol, of which nobody says how strong they are
	plausible bool     // a food or step could bring more than is known
}

func (l *look) strength() strength {
	s := strength{abv: l.ABV, most: max(l.ABV, l.ABVMost)}
	m := l.any(brewed)
	s.plausible = m != nil
	if m == nil {
		return s
	}
	for _, i := range m.items {
		if id := l.Items[i].Food; slices.Contains(l.Unstated[alcoholID], id) {
			s.unstated = addOnce(s.unstated, named(l.Items[i]))
		}
	}
	return s
}

// text prints a strength; of one that is over a limit only at the end of its interval,
// that end.
func (s strength) text(certain bool) string {
	known := s.abv >= printed
	switch {
	case len(s.unstated) > 0 && known:
		return "at least " + vol(s.abv) + ", the strength of the rest not known"
	case math.IsNaN(s.abv), len(s.unstated) > 0:
		return "strength not known"
	case !certain:
		return fmt.Sprintf("about %s, up to %s", number(s.abv), vol(s.most))
	}
	return vol(s.abv)
}

func vol(abv float64) string {
	if abv < fineStrength {
		return fmt.Sprintf("%.2f %% vol", abv)
	}
	return fmt.Sprintf("%.1f %% vol", abv)
}

// strong judges the strength by the limit of a row.
func (l *look) strong(r *row) (ok, certain bool) {
	s := l.strength()
	certain = r.exceeds(s.abv)
	return certain || r.exceeds(s.most) || len(s.unstated) > 0, certain
}

func addOnce(list []string, text string) []string {
	if slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}
