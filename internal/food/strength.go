package food

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// tolerance is a row of data/strength_tolerances.csv: how far the strength of a drink may lie
// from what its label states, in % vol.
type tolerance struct {
	group string
	words phrase.List // empty: whatever it is called
	above float64     // from a stated strength above this
	vol   float64
}

var tolerances = sync.OnceValue(func() []tolerance {
	var all []tolerance
	for _, row := range embedded.Rows("strength_tolerances.csv") {
		all = append(all, tolerance{row.Text("group"), phrase.Read(row.Text("words")), row.Number("above"), row.Number("tolerance")})
	}
	return all
})

// alcoholFacts are the sizes by which a strength is told from masses: what ethanol weighs,
// what a gram of water and of sugar take up, and how many proof a per cent is.
var alcoholFacts = sync.OnceValue(func() (f struct{ ethanol, water, sugar, proof float64 }) {
	for _, row := range embedded.Rows("constants.csv") {
		switch row.Text("constant") {
		case "ethanol density":
			f.ethanol = 1 / row.Number("value")
		case "proof of a per cent by volume":
			f.proof = row.Number("value")
		}
	}
	for _, row := range embedded.Rows("specific_volumes.csv") {
		switch constituent.ID(row.Text("constituent")) {
		case constituent.Water:
			f.water = row.Number("ml_per_g")
		case constituent.Sugar:
			f.sugar = row.Number("ml_per_g")
		}
	}
	return f
})

// strengths finds "40 % vol", "40% v/v", "80 proof", with what makes a range of it.
var strengths = regexp.MustCompile(`(?i)(approximately|approx\.?|about|around|circa|ca\.|up to|over|under|than|least|most|\bto|[-–<>~≤≥])?\s*(\d{1,3}(?:[.,]\d+)?)[\s-]*(%\s*(?:vol|v/v|abv|alc)|vol\.?\s*%|proof\b)`)

// NamedStrength gives the strength that the names of a food state, in % vol. A range, an
// estimate and two that differ are none.
func NamedStrength(f *Food) (vol float64, stated bool) {
	for _, n := range f.Names {
		for _, m := range strengths.FindAllStringSubmatch(n.Text, -1) {
			x, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
			if strings.EqualFold(m[3], "proof") {
				x /= alcoholFacts().proof
			}
			if err != nil || m[1] != "" || stated && x != vol {
				return 0, false
			}
			vol, stated = x, true
		}
	}
	return vol, stated
}

// toleranceOf gives how far the strength of a food may lie from the stated one, in % vol.
func toleranceOf(s subject, vol float64) (float64, bool) {
	for _, t := range tolerances() {
		if t.group == s.group && vol > t.above && (len(t.words) == 0 || s.called(t.words)) {
			return t.vol, true
		}
	}
	return 0, false
}

// fixStrength gives the alcohol of a food whose name states its strength the tolerance that
// the law leaves a label (rectangular), and its water what the others leave it: not what lies
// between bottles of any strength. A figure that is not of that strength is told and keeps
// its spread, and a designer's own ± stands.
func fixStrength(e *entry) bool {
	vol, stated := NamedStrength(e.Food)
	tolerance, law := toleranceOf(e.subject, vol)
	alcohol, water := e.cell(constituent.Must(constituent.Alcohol)), e.cell(constituent.Must(constituent.Water))
	if !stated || !law || vol <= 0 || !alcohol.Known || alcohol.Amount <= 0 || !water.Known || e.Food.Chemical || e.Food.ID.Table == Own && !alcohol.Class {
		return false
	}
	if has := strengthOf(alcohol.Amount, water.Amount); math.Abs(has-vol) > shrinks*vol+tolerance {
		e.note("strength", constituent.Alcohol, "its name states %s %% vol, and its alcohol in 100 g is that of about %.0f: read the bottle", trimmed(vol), has)
		return false
	}
	alcohol.SD, alcohol.Class = alcohol.Amount*tolerance/math.Sqrt(3)/vol, false
	_, all := e.sum(constituent.Must(constituent.Mass))
	water.SD, water.Class = math.Min(water.SD, math.Sqrt(max(all-water.variance(), 0))), false
	return true
}

// shrinks is by how much the strength told from masses may be off: ethanol and water take up
// less together, at most 3.7 % (OIML R 22, at equal masses), and what is neither is taken for
// sugar. Our own bound.
const shrinks = 0.05

// strengthOf gives the strength of a gram, in % vol, as if volumes added up.
func strengthOf(alcohol, water float64) float64 {
	f := alcoholFacts()
	v := alcohol * f.ethanol
	const percent = 100
	return percent * v / (v + water*f.water + max(whole-alcohol-water, 0)*f.sugar)
}
