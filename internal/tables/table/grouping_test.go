package table_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/tables/table"
)

// Names and groups as in FOOD_DES and FD_GROUP of SR28.
func TestGroups(t *testing.T) {
	sr := table.GroupsOf("sr")
	cases := []struct{ publisher, name, want string }{
		{"Dairy and Egg Products", "Milk, whole, 3.25% milkfat, with added vitamin D", "milk"},
		{"dairy and egg products", "MILK, WHOLE", "milk"},
		{"Dairy and Egg Products", "Egg, whole, raw, fresh", "egg"},
		{"Dairy and Egg Products", "Milk substitutes, fluid, with lauric acid oil", "other"},
		{"Fruits and Fruit Juices", "Lime juice, raw", "citrus juice"},
		{"Fruits and Fruit Juices", "Apples, raw, with skin", "fruit"},
		{"Beverages", "Beverages, coffee, brewed, prepared with tap water", "coffee drink"},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, sr.Group(c.publisher, c.name), c.name)
	}
	nobody := table.GroupsOf("nothing")
	assert.Empty(t, nobody.Group("Beverages", "Coffee"))
}
