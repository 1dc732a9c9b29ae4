package batch

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// homeSettings are those of data/home.csv.
type homeSettings struct {
	spoons    []spoon // the largest first
	standIns  map[string]standIn
	sparkles  string            // the food that is bought in the place of a siphon's gas
	bought    map[string]string // foods that nobody makes at home, and why
	least     float64           // shares of its beginning between which the amount of a stand-in is looked for
	most      float64
	stays     map[string]float64 // between which shares of a pot's sugar and water their amounts are looked for
	held      map[string]float64 // shares within which a stand-in is fitted
	water     float64            // ml in which a spoon of a powder is dissolved
	bands     map[string]noticed // tastes to which a drink is held at home, beside those of a batch
	figures   []constituent.ID
	dissolves map[string]bool // groups of powders
	nobody    []string        // words of a step that nothing at home does
	filling
	pot  float64 // g: of a recipe that makes more a home makes no more than it needs
	melt float64 // g/ml of the water that ice gives
}

// filling is how well a home measures.
type filling struct {
	spread  map[string]float64 // relative standard deviations: of a spoon, a cup of a liquid, a piece, a mark on a pot
	worst   float64            // of so many of them the worst is judged
	cupFrom float64            // ml from which a liquid is poured with a cup
	pieces  map[string]float64 // by a word of data/portion_words.csv, the least part of one that is counted
	most    float64            // pieces that anybody counts
	pinches float64            // that anybody counts
}

// Beyond reports whether a step is of a word that nothing at home does.
func Beyond(step string) bool {
	step = strings.ToLower(step)
	return slices.ContainsFunc(atHome().nobody, func(word string) bool { return strings.Contains(step, word) })
}

// What spreads as it is measured.
const (
	bySpoon = "spoon"
	byCup   = "cup"
	byPiece = "piece"
	byMark  = "mark"
)

// spoon is a measure of a kitchen, and what of one is sold.
type spoon struct {
	unit.Measure
	part float64
}

// standIn is what a kitchen has in the place of a food.
type standIn struct {
	food   string
	begins float64 // g of it for a gram, where the search for its amount begins
	source string
}

const (
	acidityHeld = "titratable acidity"
	sugarsHeld  = "sugars"
)

// atHome reads data/home.csv.
var atHome = sync.OnceValue(func() homeSettings {
	s := homeSettings{standIns: map[string]standIn{}, bought: map[string]string{}, held: map[string]float64{}, bands: map[string]noticed{}, stays: map[string]float64{}}
	s.spread, s.filling.pieces, s.dissolves = map[string]float64{}, map[string]float64{}, map[string]bool{}
	for _, row := range embedded.Rows("home.csv") {
		of := row.Text("of")
		value, _ := row.Optional("value")
		switch what := row.Text("what"); what {
		case "spoon":
			m, known := unit.FindMeasure(of)
			if !known || m.Kind != unit.Volume {
				row.Fail("%q is no measure of a volume", of)
			}
			s.spoons = append(s.spoons, spoon{m, value})
		case "stand-in":
			s.standIns[of] = standIn{row.Text("to"), value, row.Text("source")}
		case "gas":
			s.sparkles = of
		case "café":
			s.bought[of] = row.Text("source")
		case "search":
			if of == "least" {
				s.least = value
			} else {
				s.most = value
			}
		case "stays":
			s.stays[of] = value
		case "spread":
			s.spread[of] = value * percent
		case "worst":
			s.worst = value
		case "cup from":
			cup, _ := unit.FindMeasure(row.Text("unit"))
			s.cupFrom = value * cup.Factor
		case "piece":
			s.pieces[of] = value
		case "dissolves":
			s.dissolves[of] = true
		case "nobody":
			s.nobody = append(s.nobody, of)
		case "pinch":
			s.pinches = value
		case "pieces":
			s.filling.most = value
		case "water":
			s.melt = value
		case "pot":
			s.pot = value
		case "held":
			s.held[of] = value * percent
		case "band":
			s.bands[of] = noticed{value * percent, row.Text("source")}
		case "solution":
			s.water = value
		case "figure":
			s.figures = append(s.figures, constituent.ID(of))
		default:
			row.Fail("no setting %q", what)
		}
	}
	return s
})
