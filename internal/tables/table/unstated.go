package table

import (
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// NewFood makes a food of which nothing is stated yet but its code.
func NewFood(tableID, code string) *food.Food {
	return &food.Food{
		ID:      food.ID{Table: tableID, Code: code},
		Density: food.Density{GramsPerMl: food.None, SD: food.None},
		Edible:  food.None,
	}
}

// NewValue makes a value without a figure: none of its numbers is stated.
func NewValue(id constituent.ID, source, ref string) food.Value {
	return food.Value{
		Constituent: id, Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: food.None,
		Source: source, Ref: ref,
	}
}
