package allergen_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/allergen"
	"sipsum/internal/food"
)

// What the core table states of its foods and what their names say must agree:
// a contradiction is an error in one of the two.
func TestCoreTableAgreesWithItsNames(t *testing.T) {
	marks := map[string][]food.Mark{}
	for _, row := range rows(t, "core/marks.csv") {
		marks[row["code"]] = append(marks[row["code"]], food.Mark{Kind: row["kind"], Value: row["value"]})
	}
	for _, row := range rows(t, "core/foods.csv") {
		a := allergen.Assess(allergen.Item{
			Food: food.ID{Table: "core", Code: row["code"]}, Name: row["name"], Group: row["group"],
			Marks: marks[row["code"]], Eaten: true,
		})
		assert.Equal(t, allergen.Stated, a.Knowledge, row["code"])
		assert.Empty(t, a.Missed, "%s: %s states %v", row["code"], row["name"], a.Leaves)
		for _, code := range a.Leaves {
			assert.True(t, allergen.IsLeaf(code), "%s: %s", row["code"], code)
		}
		for _, code := range a.Cautions {
			assert.Contains(t, marks[row["code"]], food.Mark{Kind: "caution", Value: code}, "%s: %s: its name says %s", row["code"], row["name"], code)
		}
	}
}
