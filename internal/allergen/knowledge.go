package allergen

import (
	"sync"

	"sipsum/internal/embedded"
)

// Knowledge tells how the allergens of a food are known.
type Knowledge string

// The kinds of knowledge, the surest first.
const (
	Stated      Knowledge = "stated"       // by the publisher of a table, or by the owner of a pack
	Usual       Knowledge = "usual"        // our judgement of a food as it is usually sold
	Inferred    Knowledge = "inferred"     // by rules on its table, its group and its name
	NotAssessed Knowledge = "not assessed" // nobody looked
)

// markKnowledge tells what the marks of a table are worth where they are not a statement:
// data/allergen_knowledge.csv.
var markKnowledge = sync.OnceValue(func() map[string]Knowledge {
	of := map[string]Knowledge{}
	for _, row := range embedded.Rows("allergen_knowledge.csv") {
		how := Knowledge(row.Text("knowledge"))
		if how != Usual && how != Stated {
			row.Fail("marks cannot be %s", how)
		}
		of[row.Text("table")] = how
	}
	return of
})

// MarksAre tells what the marks of a table's foods are worth.
func MarksAre(table string) Knowledge {
	if how, ok := markKnowledge()[table]; ok {
		return how
	}
	return Stated
}

// knowledgeOf gives what the marks of a food are worth.
func knowledgeOf(it Item) Knowledge {
	if it.Stated {
		return Stated
	}
	return MarksAre(it.Food.Table)
}
