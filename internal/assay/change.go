package assay

import (
	"fmt"

	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// kitchen is what a step sees of a walk, and what was read of its pot before it.
type kitchen struct {
	walk *walk
	read acidity.Surely
}

var _ prep.Kitchen = kitchen{}

func (k kitchen) Amount(a unit.Amount, path string) []float64 {
	return k.walk.amounts.Column(a, path)
}

func (k kitchen) Quantity(q drink.Quantity, factor float64, path string) []float64 {
	return k.walk.amounts.Quantity(q, factor, path)
}

func (k kitchen) Pour(pot *ledger.Pot, lines []drink.Line) { k.walk.pour(pot, lines) }

func (k kitchen) Drawn(f *food.Food) (*food.Profile, ledger.Cells) {
	p := k.walk.plan.recipe.Brought[f.ID]
	return p, k.walk.plan.drawer.PerGram(p)
}

func (k kitchen) Volume(pot *ledger.Pot) []float64 { return k.walk.volume(pot) }

func (k kitchen) Refracted(pot *ledger.Pot) []float64 { return k.walk.plan.lab.Gauge.Refracted(pot) }

func (k kitchen) Laboratory() *acidity.Laboratory { return k.walk.plan.lab }

func (k kitchen) Surely() acidity.Surely { return k.read }

func (k kitchen) Doser(line drink.Line) (pour func(*ledger.Pot, []float64), name string) {
	in := k.walk.plan.recipe.Lines[line.Path]
	if in.Component == nil {
		return func(pot *ledger.Pot, grams []float64) {
			k.walk.food(pot, in, grams)
			k.walk.plan.flatten(pot)
		}, in.Profile.Food.Name()
	}
	from := k.walk.component(in.Component).pot
	return func(pot *ledger.Pot, grams []float64) {
		pot.Mix(from, shares(grams, from), in.Component.Name)
		k.walk.plan.flatten(pot)
	}, in.Component.Name
}

func (k kitchen) Weigh(pot *ledger.Pot, line drink.Line, grams []float64) {
	in := k.walk.plan.recipe.Lines[line.Path]
	k.walk.making.yield.pour(in, grams[0])
	k.walk.add(pot, in, grams)
}

// Hold adds figures up as those of an own food.
func (k kitchen) Hold(figures []drink.Stated) error {
	found := recipe.Claims{}
	for _, figure := range figures {
		c := constituent.Must(constituent.ID(figure.Tag))
		factor, _ := unit.Convert(figure.Unit, "g")
		if stated, ok := recipe.ClaimOf(figure, c, factor*c.PerGram); ok {
			found[c.ID] = stated
		}
	}
	if parts, sum, over := found.OverTheWhole(); over {
		return fail.New(fail.Wrong, fmt.Sprintf("after it %s would make %s g in 100 g", parts, note.Grams(sum.Least)), "check the figures; they are of 100 g of what is there when it stops")
	}
	return nil
}

// makes lists the constituents that the steps of a drink may make.
func makes(d *drink.Drink) []constituent.ID {
	var ids []constituent.ID
	add := func(steps []drink.Step) {
		for _, step := range steps {
			ids = append(ids, prep.MethodOf(step).Makes(step)...)
		}
	}
	for _, c := range d.Components {
		add(c.Steps)
	}
	add(d.Finish)
	return ids
}

// keep warns of a component that will not keep as it is.
func (w *walk) keep(c *drink.Component, pot *ledger.Pot) {
	if c.Keeps == nil || c.Keeps.At == nil {
		return
	}
	if text, warn := prep.Crystallises(pot, c.Keeps.At.Number); warn {
		w.note(note.Note{Kind: "keeping", Text: c.Name + ": " + text})
	}
}
