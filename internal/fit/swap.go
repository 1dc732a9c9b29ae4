package fit

import (
	"context"
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// Exchange is what is to stand in the place of a food of the drink.
type Exchange struct {
	Food    string                   // a code, its name, or its name before the comma
	Without []string                 // leaves of allergens that it is not to hold
	Less    *constituent.Constituent // of which it is to bring less; nil: nobody asks
}

// Exchanged is what could stand in the place of a food, the best first.
type Exchanged struct {
	Exchange
	Of      *food.Food
	Lines   []drink.Line // that pour it
	Unread  []string     // components whose readings no longer hold, neither before nor after
	Brings  []Trait      // what would be missed without it, the first most
	Kept    []Trait      // what is held of the drink, these among it
	Before  *assay.Assay // the drink, with draws, without those readings
	Found   []Substitute
	Would   []Would
	Out     []LeftOut
	Looked  int      // foods of the same use that were compared
	Remarks []string // what of the drink is not held, and why
	Why     string   // nothing was found: why
}

// Substitute is a food in the place of another, with the drink that it makes.
type Substitute struct {
	Food      *food.Food
	Poured    []Pour
	Recipe    *recipe.Recipe
	After     *assay.Assay
	Held      []Trait  // those of Kept, with what they come to
	Comes     []Trait  // what the drink had not before, and has
	Sure, May float64  // the share of draws in which all of Kept stays within what a judge notices
	Still     []string // foods of the drink that hold, or may hold, what it is to be without
	Thick     []Thick  // pots in which so much of it is dissolved that it may not stay so
	Smelled   bool     // most of its acid is acetic, and that of the other food is not
	Asked     bool     // nobody has looked whether it holds what it is to be without
	far       float64  // at central values, in what a judge notices
}

// Likely reports whether what is held stays in so many of the draws that it is called likely.
func (x Substitute) Likely() bool { return x.Sure >= claim.LikelyFrom() }

// Pour is a line before and after.
type Pour struct {
	Path, Now string // the path, and that of the line with the other food
	Pot       string // that the line pours, where it is one which the food fills; empty: the line pours the food
	From, To  unit.Amount
}

// Moves reports whether the amount is another.
func (p Pour) Moves() bool { return p.From.Number != p.To.Number }

// Thick is how much of a pure food stands in the water of a pot.
type Thick struct {
	Pot    string
	Of     float64 // g in 100 g of its water
	Surely float64 // up to which nobody asks
}

// Would is a food that would do if something of it were known.
type Would struct {
	Food *food.Food
	Read string // what nobody has measured, or said
	far  float64
}

// LeftOut is a food that comes near and cannot be used.
type LeftOut struct {
	Food *food.Food
	Why  string
	far  float64
}

// Our own bounds of a search: what is listed, and how many foods are tried on the way.
const (
	mostFound  = 5
	mostWould  = 3
	mostOut    = 3
	twice      = 2  // what a judge notices: what is further off by composition is not told of
	mostTried  = 24 // at central values: some tenths of a second
	mostJudged = 10 // with draws
)

// Swap looks in a pool of foods for what could stand in the place of one of the drink. Steps and all
// other lines stay. Errors are *fail.Error.
func (b Bench) Swap(ctx context.Context, r *recipe.Recipe, ask Exchange, pool []*food.Food, kitchen Kitchen) (*Exchanged, error) {
	s := &swap{Exchanged: &Exchanged{Exchange: ask}, recipe: r, kitchen: kitchen}
	var err error
	if err = s.find(); err != nil {
		return nil, err
	}
	if s.bench, err = s.asItIs(ctx); err != nil {
		return nil, err
	}
	if err = s.weigh(ctx); err != nil {
		return nil, err
	}
	if s.even = len(s.Brings) == 0; s.even && len(s.Without) > 0 {
		s.Remarks = append(s.Remarks, "nothing that these figures tell would be missed without it: foods of its use are poured at its mass, and what it is there for, such as its foam or its smell, is not held")
	} else if s.even {
		s.Why = "nothing that these figures tell would be missed without it: what it is there for, such as its smell, is not calculated"
		return s.Exchanged, nil
	}
	var tried []*trial
	for _, n := range s.near(pool) {
		t, err := s.try(ctx, n)
		if err != nil {
			return nil, err
		}
		if t != nil {
			tried = append(tried, t)
		}
	}
	if err := s.rank(ctx, tried); err != nil {
		return nil, err
	}
	if len(s.Found) > 0 { // those that are far off go without a word
		s.Out = slices.DeleteFunc(s.Out, func(x LeftOut) bool { return x.far > twice })
	}
	s.Out = s.Out[:min(len(s.Out), mostOut)]
	s.Why = s.none()
	return s.Exchanged, nil
}

// swap is the search for it.
type swap struct {
	*Exchanged
	recipe  *recipe.Recipe
	kitchen Kitchen
	bench   Bench        // of the drink without the readings that no longer hold
	central *assay.Assay // of it
	fills   *drink.Line  // of the build: pours the pot that is mostly the food; nil: there is none
	grams   float64      // of the food for a serving, as it is weighed in
	brought float64      // g of Less that the food brings to a serving
	even    bool         // it brings nothing by which another is fitted: as much is poured as before
}

// none says why nothing does; empty if something does.
func (s *swap) none() string {
	switch {
	case slices.ContainsFunc(s.Found, func(x Substitute) bool { return x.far <= 1 }):
		return ""
	case len(s.Found) > 0:
		return "none of them keeps all that is held within what a judge notices"
	case s.Looked == 0 && len(s.Without) > 0:
		return "no food of its use is known to be without it"
	case s.Looked == 0:
		return "no food of its use was found in the tables"
	case s.Less != nil:
		return "what would bring less " + s.Less.Words() + " does not keep the rest"
	}
	return "none of the nearest foods goes through the steps of the drink and brings what it brings"
}

// holds tells whether a food holds or may hold what it is to be without, and whether nobody has looked.
func (s *swap) holds(it allergen.Item) (is, may, open bool) {
	known := allergen.Assess(it)
	among := func(list []string) bool {
		return slices.ContainsFunc(s.Without, func(code string) bool { return slices.Contains(list, code) })
	}
	return among(known.Leaves) || among(known.Missed), among(known.Likely) || among(known.Lent), known.Knowledge == allergen.NotAssessed
}

// itemOf is a food of a table, as far as allergens go.
func itemOf(f *food.Food) allergen.Item {
	it := allergen.Item{Food: f.ID, Name: f.Name(), Group: f.Group, PublisherGroup: f.PublisherGroup, Chemical: f.Chemical, Marks: f.Marks, Eaten: true}
	for i, n := range f.Names {
		if i > 0 {
			it.Names = append(it.Names, n.Text)
		}
	}
	return it
}
