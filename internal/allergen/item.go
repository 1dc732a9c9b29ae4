package allergen

import (
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/phrase"
)

// Item is one ingredient of a drink as far as allergens and cautions go.
type Item struct {
	Food           food.ID
	Name           string   // the name to print; rules read it
	Names          []string // further names; only rules that find something read them
	Group          string   // of data/groups.csv
	PublisherGroup string   // as the table has it
	Chemical       bool     // a pure substance by formula
	Marks          []food.Mark
	Stated         bool       // the owner lists allergens, if only an empty list
	Own            bool       // written in the drink or pantry file
	Lender         *Item      // of which an own food borrows what it does not state; nil if of none
	Place          fail.Place // where an own food is written
	Path           []string   // components from the outermost in; empty if the food stands in the build
	Eaten          bool       // false for a garnish that is taken out: it counts here all the same

	known *Assessment // by Assessed; nil: each who asks assesses it
}

// Mark kinds that this package reads.
const (
	markAllergen = "allergen"
	markCaution  = "caution"
)

// inBuild is the way of a food that stands in the build.
const inBuild = "the build"

// notEaten is the last step of the way by which an uneaten garnish gets in.
const notEaten = "garnish, not eaten"

// names gives the words of each name of a food, of the one to print first.
func (it Item) names() [][]string {
	all := make([][]string, 0, 1+len(it.Names))
	all = append(all, phrase.Words(it.Name))
	for _, name := range it.Names {
		all = append(all, phrase.Words(name))
	}
	return all
}

// via names the way into the drink: components from the outermost in.
func (it Item) via() string {
	way := it.Path
	if !it.Eaten {
		way = append(way[:len(way):len(way)], notEaten)
	}
	return strings.Join(way, " / ")
}

// stated gives the values of the marks of a kind, and whether there is any mark
// of that kind: a mark without a value states that there is none.
func (it Item) stated(kind string) (values []string, found bool) {
	for _, m := range it.Marks {
		if m.Kind != kind {
			continue
		}
		found = true
		if m.Value != "" {
			values = append(values, m.Value)
		}
	}
	return values, found
}
