package recipe

import (
	"strings"
	"unicode"

	"sipsum/internal/drink"
	"sipsum/internal/food"
)

// PartID names what a line of the build pours: a component of the drink file, or a
// food. What they are called says nothing: a component may have the name of a food, and
// two foods may share one. Lines that pour the same are one part.
type PartID struct {
	Component string  // the component's name in the file; empty for a food
	Food      food.ID // poured directly
}

// Names is how parts are called on every page.
type Names map[PartID]string

// called gives every component and every food of a drink the name by which readers tell
// it from all the others: a component its own, a food the first of its names, with its
// code in brackets where another of them reads the same.
func called(d *drink.Drink, foods []*food.Food) Names {
	n, reading := Names{}, map[string]int{}
	call := func(id PartID, name string) {
		n[id] = name
		reading[readsLike(name)]++
	}
	for i := range d.Components {
		call(PartID{Component: d.Components[i].Name}, d.Components[i].Name)
	}
	for _, f := range foods {
		if id := (PartID{Food: f.ID}); n[id] == "" {
			call(id, f.Name())
		}
	}
	for again := true; again; { // a name with a code may read like another's plain one
		again = false
		for _, f := range foods {
			id := PartID{Food: f.ID}
			if plain := f.Name(); n[id] == plain && reading[readsLike(plain)] > 1 && plain != f.ID.String() {
				call(id, plain+" ("+f.ID.String()+")")
				again = true
			}
		}
	}
	return n
}

// readsLike gives what an eye compares of a name: nothing that cannot be seen, and
// letters whatever their case.
func readsLike(name string) string {
	seen := strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Cf, r) || unicode.IsControl(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, name)
	return strings.Join(strings.Fields(seen), " ")
}
