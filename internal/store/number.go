package store

import (
	"fmt"

	"sipsum/internal/food"
)

// number reads a REAL column: NULL is food.None.
type number float64

// Scan implements sql.Scanner.
func (x *number) Scan(from any) error {
	switch v := from.(type) {
	case nil:
		*x = number(food.None)
	case float64:
		*x = number(v)
	default:
		return fmt.Errorf("a number was expected, not %T", from)
	}
	return nil
}

// stated gives the parameter for a REAL column: food.None is NULL.
func stated(x float64) any {
	if food.Stated(x) {
		return x
	}
	return nil
}
