package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/food"
)

// What stands before a colon is a table only if a table may be called so.
func TestIDsAreTablesAndCodes(t *testing.T) {
	for text, want := range map[string]food.ID{
		"core:espresso": {Table: "core", Code: "espresso"}, "Core:Espresso": {Table: "core", Code: "Espresso"}, "SR: 09160 ": {Table: "sr", Code: "09160"},
		"core:lemon juice": {Table: "core", Code: "lemon juice"}, "a:b:c": {Table: "a", Code: "b:c"},
	} {
		id, ok := food.ParseID(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, id)
	}
	for _, text := range []string{"espresso", "to 40 g core:espresso", "core:", ":espresso", "9:a", "café:a", "", "my table:1"} {
		_, ok := food.ParseID(text)
		assert.False(t, ok, text)
	}
}
