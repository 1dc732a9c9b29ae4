package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
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
	Number      float64 // a share, a ratio or an amount in the constituent's unit
	Food        food.ID // of an ingredient
	Component   string  // of a component
}

// The limits of what is worth saying: our own bounds. Who brings less than half does not lead;
// less than half as much again as the coffee is not heard.
const (
	leastLead  = 0.5
	leastRatio = 1.5
	mostRatio  = 20
)

// say gives what surely holds: of each sense its first sentence before the second of any. Of a
// drink of one food there is nothing to say.
func (s briefing) say(senses []Sense, c *coffee) []Said {
	bySense := make([][]Said, len(senses))
	for i, x := range senses {
		for _, f := range x.Figures {
			if k, ok := constituent.Find(f.Key); ok && s.speaks(k, f.Result) {
				if said, ok := s.leads(k, f.By); ok {
					bySense[i] = append(bySense[i], said)
				}
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
	return append(list, s.most(senses)...)
}

// speaks reports whether a figure may be spoken of: a work that was seen stands behind it, it is
// more than a trace, and there is enough of it.
func (s briefing) speaks(c *constituent.Constituent, r composition.Result) bool {
	if r.State >= estimate.Trace || !evidence.Speaks(c, r, s.Assay.Volume.Mean) {
		return false
	}
	for _, category := range s.Evidence.Categories {
		for _, e := range category.Entries {
			if e.Constituent == c {
				return len(e.Works) > 0
			}
		}
	}
	return false
}

// leads says which ingredient, else which component, brings half or more of a constituent.
func (s briefing) leads(c *constituent.Constituent, by []Ingredient) (Said, bool) {
	if len(wordsOf(s.Assay.Serving)) < 2 {
		return Said{}, false
	}
	for _, i := range by {
		if i.Worst >= leastLead && !saysNothing(i, c) { // of NaN nothing is said
			return Said{ingredientLeads(i, c), SayIngredient, c, i.Worst, i.Food.ID, ""}, true
		}
	}
	a := s.Assay
	var groups [][]int
	for i := range a.Components {
		groups = append(groups, rowsOf(a, &a.Components[i]))
	}
	for i, b := range (&composition.Meter{Brief: true}).Bring(a.Serving, composition.SortOf(a.Serving, c), groups) {
		if part := a.Components[i]; part.House && len(a.Components) > 1 && b.Worst >= leastLead {
			text := fmt.Sprintf("The %s brings %s of the %s.", clean.Name(part.Name), atLeast(b.Worst), WordsFor(c))
			return Said{text, SayComponent, c, b.Worst, food.ID{}, part.Name}, true
		}
	}
	return Said{}, false
}

// saysNothing reports whether who brings a constituent has its name: sugar brings the sugars.
func saysNothing(i Ingredient, c *constituent.Constituent) bool {
	words := strings.Fields(strings.ToLower(i.Word))
	return !i.Pure && len(words) > 0 && strings.HasPrefix(strings.ToLower(WordsFor(c)), words[len(words)-1])
}

func ingredientLeads(i Ingredient, c *constituent.Constituent) string {
	much, words := atLeast(i.Worst), WordsFor(c)
	if i.Pure {
		return clean.UpperFirst(much) + " of the " + words + " is added pure."
	}
	name := clean.UpperFirst(i.The())
	if path := i.Through[0].Path; len(i.Through) == 1 && len(path) > 0 && !strings.EqualFold(path[0], i.Word) {
		name += " of the " + clean.Name(path[0])
	}
	return name + " brings " + much + " of the " + words + "."
}

// surely all: what arithmetic may leave of a whole.
const dust = 1e-9

// atLeast writes the least that a share can be.
func atLeast(share float64) string {
	if share >= 1-dust {
		return "all"
	}
	return fmt.Sprintf("at least %.0f %%", math.Floor(hundred*share))
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
		r, ok := s.Assay.PerServing.Find(id)
		if !ok || !s.speaks(k, r.Result) {
			continue
		}
		// What the others bring is at least this share of all, so the coffee brings at most the rest.
		least := (&composition.Meter{Brief: true}).Bring(pot, composition.SortOf(pot, k), [][]int{others})[0].Worst
		if ratio := 1 / (1 - least); ratio >= leastRatio && ratio <= mostRatio {
			tenths := math.Floor(10*ratio) / 10
			text := fmt.Sprintf("At least %s the %s of the %s alone.", times(tenths), WordsFor(k), clean.Name(c.name))
			return Said{text, SayAgainst, k, tenths, food.ID{}, ""}, true
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
			if f.Key != string(c.ID) || !s.speaks(c, f.Result) {
				continue
			}
			most := composition.SortOf(s.Assay.Serving, c).MostOf(s.Assay.Serving)
			if math.IsNaN(most) || most < f.Result.High {
				return nil
			}
			up := math.Ceil(most)
			return []Said{{fmt.Sprintf("No more than %.0f g of sugars in a serving.", up), SayMost, c, up, food.ID{}, ""}}
		}
	}
	return nil
}
