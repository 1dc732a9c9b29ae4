package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/source"
)

// Kinds of what may be said.
const (
	SayIngredient = "ingredient" // a food brings at least Number of a constituent
	SayComponent  = "component"  // a part of the build does
	SayAgainst    = "against"    // the drink has at least Number times as much as the coffee alone
	SayMost       = "most"       // a serving holds no more than Number
)

// Said is a sentence that holds in every draw, with all that nobody has measured at its most
// against it.
type Said struct {
	Text        string
	Kind        string
	Constituent *constituent.Constituent
	Number      float64     // the least share, a ratio or an amount in the constituent's unit
	Food        food.ID     // of an ingredient
	Component   string      // of a component
	Rung        ladder.Rung // of who brings something; empty: of another kind
	Most        float64     // the most that the share may be; NaN where nothing bounds it
	Works       []source.Work
}

// The limits of what is worth saying: our own bounds. Less than half as much again as the coffee
// is not heard.
const (
	leastRatio = 1.5
	mostRatio  = 20
)

// say gives what surely holds: of each sense its first sentence before the second of any.
func (s briefing) say(senses []Sense, c *coffee) []Said {
	bySense := make([][]Said, len(senses))
	for i, x := range senses {
		for _, f := range x.Figures {
			if said, ok := s.brings(f.Key); ok {
				bySense[i] = append(bySense[i], said)
			}
		}
	}
	var list []Said
	if said, ok := s.against(c); ok {
		list = append(list, said)
	}
	for i := 0; ; i++ {
		before := len(list)
		for _, sayings := range bySense {
			if i < len(sayings) {
				list = append(list, sayings[i])
			}
		}
		if len(list) == before && i > 0 {
			break
		}
	}
	// What says that somebody leads stands before what says less.
	slices.SortStableFunc(list, func(a, b Said) int { return cmp.Compare(a.less(), b.less()) })
	return append(list, s.most(senses)...)
}

// less is 1 for a sentence in which nobody leads.
func (s Said) less() int {
	if s.Rung != "" && s.Rung.Height() > ladder.Lead.Height() {
		return 1
	}
	return 0
}

// brings is the sentence of the evidence about who brings a constituent.
func (s briefing) brings(id string) (Said, bool) {
	for _, category := range s.Evidence.Categories {
		for _, x := range category.Sentences {
			if string(x.Constituent.ID) != id || s.inDoubt(x.Constituent.ID) {
				continue
			}
			kind := SayIngredient
			if x.Component != "" {
				kind = SayComponent
			}
			return Said{x.Text, kind, x.Constituent, x.Least, x.Food, x.Component, x.Rung, x.Most, x.Works}, true
		}
	}
	return Said{}, false
}

// works are those behind the figure of a constituent; none if it may not be spoken of, or hangs on a reading that
// contradicts its recipe.
func (s briefing) works(id constituent.ID) []source.Work {
	for _, category := range s.Evidence.Categories {
		for _, e := range category.Entries {
			if e.Constituent.ID == id && evidence.Speaks(e, s.Assay.Volume.Mean) && !hangs(s.Sheet, id, e.Contributions) {
				return e.Works
			}
		}
	}
	return nil
}

// inDoubt reports whether a figure hangs on a reading that contradicts its recipe: what either makes
// of it is not said as if it were known.
func (s briefing) inDoubt(id constituent.ID) bool {
	for _, category := range s.Evidence.Categories {
		for _, e := range category.Entries {
			if e.Constituent.ID == id {
				return hangs(s.Sheet, id, e.Contributions)
			}
		}
	}
	return false
}

const hundred = 100

// against says how many times the acids of the coffee alone a drink has.
func (s briefing) against(c *coffee) (Said, bool) {
	if c == nil || len(c.rows) == 0 {
		return Said{}, false
	}
	pot := s.Assay.Serving
	var others []int
	for row := range pot.Rows {
		if !slices.Contains(c.rows, row) {
			others = append(others, row)
		}
	}
	for _, id := range []constituent.ID{constituent.OrganicAcids, "CITAC", "MALAC"} {
		k := constituent.Must(id)
		works := s.works(id)
		if len(works) == 0 {
			continue
		}
		// What the others bring is at least this share of all, so the coffee brings at most the rest.
		least := (&composition.Meter{Brief: true}).Bring(pot, composition.SortOf(pot, k), [][]int{others})[0].Worst
		if ratio := 1 / (1 - least); ratio >= leastRatio && ratio <= mostRatio {
			tenths := math.Floor(10*ratio) / 10
			text := fmt.Sprintf("At least %s the %s of the %s alone.", times(tenths), WordsFor(k), clean.Name(c.name))
			return Said{Text: text, Kind: SayAgainst, Constituent: k, Number: tenths, Works: works}, true
		}
	}
	return Said{}, false
}

// times writes a ratio.
func times(ratio float64) string {
	if ratio == 2 {
		return "twice"
	}
	return fmt.Sprintf("%g times", ratio)
}

// most says up to how much sugar there is in a serving.
func (s briefing) most(senses []Sense) []Said {
	c := constituent.Must(constituent.Sugar)
	for _, x := range senses {
		for _, f := range x.Figures {
			works := s.works(c.ID)
			if f.Key != string(c.ID) || len(works) == 0 {
				continue
			}
			most := composition.SortOf(s.Assay.Serving, c).MostOf(s.Assay.Serving)
			if math.IsNaN(most) || most < f.Result.High {
				return nil
			}
			up := math.Ceil(most)
			return []Said{{Text: fmt.Sprintf("No more than %.0f g of sugars in a serving.", up), Kind: SayMost, Constituent: c, Number: up, Works: works}}
		}
	}
	return nil
}
