package recipe

import (
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/spelling"
)

// What a kitchen calls by a plain word is more than one food of the tables, or none: water, sugar,
// ice. What to write instead is told by data/plain_foods.csv.

// plainFoods is data/plain_foods.csv: asked for each name and code of a drink.
var plainFoods = sync.OnceValue(func() []embedded.Row { return embedded.Rows("plain_foods.csv") })

// madeHere are words before the name of what a bar makes itself.
var madeHere = []string{"house", "homemade", "my", "our"}

// plainCode tells it for the code of a food that the tables do not have, where its letters alone would
// lead to others.
func plainCode(code string) string {
	for _, row := range plainFoods() {
		if strings.Contains(row.Text("of"), "codes") && row.Text("word") == spelling.Plain(code) {
			return row.Text("write")
		}
	}
	return ""
}

// plainly tells what to write for a plain word, "" if it is none.
func plainly(text string) string {
	words := spelling.Plain(text)
	for _, row := range plainFoods() {
		if row.Text("word") == words {
			return row.Text("write")
		}
	}
	for _, word := range madeHere {
		if strings.HasPrefix(words, word+" ") {
			return "what you make yourself is a component: under components: " + words + ": {ingredients: […]}"
		}
	}
	return ""
}
