package invent

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// Filter says which foods somebody wants in no design.
type Filter struct {
	Leaves []string // allergens
	Groups []string // food groups

	Alcohol, Sodium bool // the drink has alcohol, or targets ask for it: foods that bring some are let in
}

// Passed counts the foods that were looked at, and those that were left out, each by the first reason.
type Passed struct {
	Foods       int // of the tables
	Tried       int // in at least one preparation
	Unpoured    int // nobody pours such foods, or nothing is known of how much
	Unwanted    int // they hold, or may hold, what is not wanted
	NotAssessed int // nobody has looked whether they hold it
	Alcohol     int
	Salty       int
	Unmade      int // no pot can be made of them as the preparation says
}

// liquid is a food as somebody may pour it.
type liquid struct {
	food     *food.Food
	by       *Preparation
	from, to float64 // g of a serving
	words    []string
}

// plain reports whether a food is what any drink may have: it makes no design another.
func (l liquid) plain() bool {
	return l.food.Chemical || slices.Contains([]string{"sugar", "water"}, l.food.Group)
}

// candidates gives what may be poured of some foods.
func candidates(foods []*food.Food, f Filter) ([]liquid, Passed) {
	var list []liquid
	var p Passed
	for _, of := range foods {
		p.Foods++
		as := pouredOf(of)
		if len(as) == 0 {
			p.Unpoured++
			continue
		}
		profile := food.Enter(of, nil)
		if count := f.against(of, profile, &p); count != nil {
			*count++
			continue
		}
		p.Tried++
		for _, row := range as {
			list = append(list, liquid{of, row.by, row.from, row.to, wordsOf(of)})
		}
	}
	return list, p
}

// against gives where a food is counted that is left out; nil if it is not.
func (f Filter) against(of *food.Food, profile *food.Profile, p *Passed) *int {
	most := func(id constituent.ID) float64 {
		c := profile.Cell(id)
		switch {
		case c.Known:
			return max(c.Amount, c.Limit)
		case food.Stated(c.Bound):
			return c.Bound
		}
		return 0
	}
	holds, looked := f.judge(of)
	switch {
	case holds:
		return &p.Unwanted
	case !looked:
		return &p.NotAssessed
	case !f.Alcohol && (of.Facts().Alcoholic || hundred*most(constituent.Alcohol) > unit.LimitOf("alcohol of what is put into a drink without any", "g/100 g").High):
		return &p.Alcohol
	case !f.Sodium && hundred*most(constituent.Sodium) > unit.LimitOf("sodium of what is put into a drink", "g/100 g").High:
		return &p.Salty
	}
	return nil
}

// judge tells whether a food holds, or may hold, what is not wanted, and whether anybody has looked.
func (f Filter) judge(of *food.Food) (holds, looked bool) {
	if slices.Contains(f.Groups, of.Group) {
		return true, true
	}
	if len(f.Leaves) == 0 {
		return false, true
	}
	known := allergen.Assess(allergen.Item{
		Food: of.ID, Name: of.Name(), Group: of.Group, PublisherGroup: of.PublisherGroup, Chemical: of.Chemical, Marks: of.Marks,
	})
	holds = slices.ContainsFunc(f.Leaves, func(code string) bool {
		return slices.Contains(known.Leaves, code) || slices.Contains(known.Likely, code)
	})
	return holds, known.Knowledge != allergen.NotAssessed
}

// head is what tells a food from others in its name: what stands before the first comma, or behind it where
// that only says of which part of its table it is.
func head(f *food.Food) string {
	first, rest, more := strings.Cut(f.Name(), ",")
	if more && f.PublisherGroup != f.Group && within(first, spelling.Words(f.PublisherGroup)) {
		first, _, _ = strings.Cut(rest, ",")
	}
	before, inside, bracketed := strings.Cut(first, "(")
	if _, after, closed := strings.Cut(inside, ")"); bracketed && closed {
		before += after
	}
	return strings.Join(strings.Fields(before), " ")
}

// within reports whether all words of a text are among some.
func within(text string, words []string) bool {
	return !slices.ContainsFunc(spelling.Words(text), func(w string) bool {
		return !slices.Contains(words, w) && !slices.Contains(words, singular(w))
	})
}

// Short names a food by what tells it from others; a sort of food by what stands behind the comma too.
func Short(f *food.Food) string {
	name := head(f)
	if within(name, sorts()) {
		_, rest, _ := strings.Cut(f.Name(), name)
		if more, _, _ := strings.Cut(strings.TrimPrefix(rest, ","), ","); strings.TrimSpace(more) != "" {
			name += ", " + strings.TrimSpace(more)
		}
	}
	return clean.LowerFirst(clean.Name(name))
}

// wordsOf are the words of a head by which foods are alike: all but those that name a sort of food.
func wordsOf(f *food.Food) []string {
	var list []string
	for _, w := range spelling.Words(head(f)) {
		if w = singular(w); !slices.Contains(sorts(), w) && !slices.Contains(list, w) {
			list = append(list, w)
		}
	}
	if len(list) == 0 { // water, milk
		list = []string{f.Group}
	}
	slices.Sort(list)
	return list
}

// singular takes the ending of an English plural off a word: cherries, juices.
func singular(w string) string {
	switch {
	case strings.HasSuffix(w, "ies"):
		return strings.TrimSuffix(w, "ies") + "y"
	case strings.HasSuffix(w, "oes"):
		return strings.TrimSuffix(w, "es")
	case strings.HasSuffix(w, "ss"):
		return w
	}
	return strings.TrimSuffix(w, "s")
}

// sorts are the words of the groups' names: juice, syrup, milk.
var sorts = sync.OnceValue(func() []string {
	var list []string
	for _, g := range food.Groups() {
		for _, w := range spelling.Words(g.Name) {
			list = append(list, singular(w))
		}
	}
	return list
})
