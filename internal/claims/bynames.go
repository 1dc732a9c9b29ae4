package claims

import (
	"context"
	"slices"
	"strings"

	"sipsum/internal/claim"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/spelling"
)

// Called tells whether a food bears a name: its own, or what stands before its first comma.
func Called(f *food.Food, name string) bool { return called(f, name) }

// Common tells whether a core food bears a name before its comma.
func Common(name string) bool { return len(heads()[spelling.Plain(name)]) > 0 }

// GroupsCalled gives the groups of foods that have all the words of a name: "juice", "citrus".
func GroupsCalled(name string) []string {
	words := spelling.Words(name)
	var groups []string
	for _, group := range food.Groups() {
		of := spelling.Words(group.Name)
		if len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool {
			return !slices.Contains(of, w) && !slices.Contains(of, strings.TrimSuffix(w, "s"))
		}) {
			groups = append(groups, group.Name)
		}
	}
	return groups
}

// Weigh judges an expression that is no sentence of the drink; no nearest world is looked for.
func (b Bench) Weigh(ctx context.Context, of drink.Claim) (Said, error) {
	c, err := claim.Parse(of.Check, of.CheckAt)
	if err != nil {
		return Said{}, err
	}
	b.Again = nil
	return b.judge(ctx, NewGlass(b.Assay, b.Declared), c, of)
}

// InShort is how surely a claim holds; where the unknown decides, what would settle it.
func (c Said) InShort() string { return c.verdict() }

// OfHundred counts draws of a hundred. Only all are all, and only none are none.
func OfHundred(share float64) int { return ofHundred(share) }
