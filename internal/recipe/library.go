package recipe

import (
	"context"

	"sipsum/internal/food"
)

// Foods is what finding needs of a library of foods.
type Foods interface {
	// Food gives a food, or a *fail.Error that says what is missing.
	Food(ctx context.Context, id food.ID) (*food.Food, error)
	// Named gives the food whose name is exactly this, if there is one.
	Named(ctx context.Context, name string) (food.ID, bool, error)
	// Near suggests foods for a text that names none.
	Near(ctx context.Context, text string) []string
}

// Item is a food of the drink and where it stands, for the allergens.
type Item struct {
	Food   *food.Food
	Path   []string
	Eaten  bool
	Own    bool
	Stated bool       // an own food that says what allergens it has
	Lender *food.Food // of which it borrows; nil if of none
}
