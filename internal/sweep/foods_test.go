package sweep_test

import (
	"fmt"
	"testing"

	"sipsum/internal/food"
)

// everyNth food of the table is in the sample.
const everyNthFood = 23

func alone(f *food.Food) string {
	return fmt.Sprintf("drink: \"Alone\"\nserves: 1\nbuild:\n  - 100 g %s\n", f.ID)
}

// Every core food by itself keeps every law.
func TestEveryFoodAlone(t *testing.T) {
	k, b := newKitchen(t), newBreaches(laws, printedLaws, refusalLaws)
	sideBySide(sample(k.list, everyNthFood), func(f *food.Food) {
		name := "alone " + f.ID.String()
		s, refused := k.serve(name, alone(f))
		if refused != nil {
			b.add(foodIsServed.name, breach{1, name, alone(f), refused.err.Error()})
			return
		}
		b.judge(s, laws, printedLaws)
	})
	b.report(t)
}

var (
	foodIsServed  = law{name: "a food is served", says: "every core food alone, and every blend, is calculated", from: "must show 1"}
	properRefusal = law{name: "a refusal is proper", says: "a drink is refused by an error with its place and what to do, never by a panic", from: "design §4"}
	refusalLaws   = []law{foodIsServed, properRefusal}
)
