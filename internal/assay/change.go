package assay

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// percent turns a figure in per cent into a share.
const percent = 0.01

// change applies a step that turns, extracts or dissolves.
func (w *walk) change(pot *ledger.Pot, step drink.Step, f prep.Factors) (prep.Outcome, error) {
	switch s := step.(type) {
	case *drink.Curdle:
		celsius := math.NaN()
		if s.Temperature != nil {
			celsius = s.Temperature.Number
		}
		return prep.Curdle(pot, w.amounts.column(s.Collect, s.StepPath()+"/collect"), s.By, celsius, f)
	case *drink.Brew:
		return prep.Brew(pot, prep.Recipe{
			Out: w.optional(s.Out, s, "out"), Strength: w.figure(s.Strength, percent, s, "strength"), Yield: w.figure(s.Yield, percent, s, "yield"),
		}, f)
	case *drink.Steep:
		return prep.Steep(pot, w.aside(s.Ingredients), prep.Steeping{
			Minutes: w.figure(s.Minutes, 1, s, "for"), Celsius: w.figure(s.Temperature, 1, s, "at"), Collect: w.optional(s.Collect, s, "collect"),
		}, f)
	case *drink.Wash:
		return prep.Wash(pot, w.aside(s.Ingredients), w.optional(s.Collect, s, "collect"), f)
	case *drink.Concentrate:
		return prep.Freeze(pot, w.amounts.column(s.To, s.StepPath()+"/to"), f)
	case *drink.Invert:
		return prep.Invert(pot, w.inverted(s, f))
	case *drink.Hydrolyse:
		return prep.Hydrolyse(pot, w.figure(&s.Lactose, percent, s, "lactose"))
	case *drink.Caramelise:
		return prep.Caramelise(pot, prep.Burning{
			Loss: w.figure(&s.Loss, percent, s, "loss"), Acids: w.names.burnt, PerGram: w.plan.drawer.PerGram(w.names.burnt),
		}, f), nil
	case *drink.Ferment:
		return w.ferment(pot, s)
	case *drink.Carbonate:
		return w.carbonate(pot, s, f)
	}
	return prep.Outcome{}, nil
}

// optional gives the column of an amount that may be left out.
func (w *walk) optional(a *unit.Amount, step drink.Step, name string) []float64 {
	if a == nil {
		return nil
	}
	return w.amounts.column(*a, step.StepPath()+"/"+name)
}

// figure gives the column of a quantity that may be left out.
func (w *walk) figure(q *drink.Quantity, factor float64, step drink.Step, name string) []float64 {
	if q == nil {
		return nil
	}
	return w.amounts.quantity(*q, factor, step.StepPath()+"/"+name)
}

// aside pours lines into a pot of their own.
func (w *walk) aside(lines []drink.Line) *ledger.Pot {
	pot := w.plan.drawer.NewPot()
	w.pour(pot, lines)
	return pot
}

func (w *walk) inverted(s *drink.Invert, f prep.Factors) []float64 {
	if s.Share != nil {
		return w.figure(s.Share, percent, s, "share")
	}
	return prep.Inverted(w.figure(s.PH, 1, s, "ph"), w.figure(s.Temperature, 1, s, "at"), w.figure(s.Minutes, 1, s, "for"), f)
}

// ferment reads what 100 g of the pot hold afterwards.
func (w *walk) ferment(pot *ledger.Pot, s *drink.Ferment) (prep.Outcome, error) {
	var after []prep.Afterwards
	found := claims{}
	for _, figure := range s.Figures {
		id := constituent.ID(figure.Tag)
		factor, isMass := unit.Convert(figure.Unit, "g")
		if !prep.Fermentable(id) || (!isMass && figure.State == "") {
			w.faults.Add(figure.Place, "state ALC, acids such as LACAC, SUGAR or single sugars, in g or mg", "ferment cannot state %s", quote(figure.Tag))
			return prep.Outcome{}, nil
		}
		if k, ok := claimOf(figure, constituent.Must(id), factor*constituent.Must(id).PerGram); ok {
			found[id] = k
		}
		q := figure.Quantity
		if figure.State == drink.Below { // anything up to the limit
			q.Number, q.Half = figure.Limit/2, figure.Limit/2
		}
		after = append(after, prep.Afterwards{ID: id})
		if figure.State == "" || figure.State == drink.Below {
			after[len(after)-1].Per100g = w.figure(&q, factor, s, figure.Tag)
		}
	}
	if parts, sum, over := found.overTheWhole(); over {
		w.faults.Add(s.At(), "check the figures; they are of 100 g of what is there when it stops", "after it %s would make %s g in 100 g", parts, grams(sum.least))
		return prep.Outcome{}, nil
	}
	return prep.Ferment(pot, after, prep.Unnamed{Products: w.names.fermented, PerGram: w.plan.drawer.PerGram(w.names.fermented), Path: s.StepPath()})
}

func (w *walk) carbonate(pot *ledger.Pot, s *drink.Carbonate, f prep.Factors) (prep.Outcome, error) {
	const perMl = 0.001 // g/l to g/ml
	var charge *prep.Charge
	if s.Bottle != nil {
		_, unknown := pot.Bound(constituent.CarbonDioxide)
		charge = &prep.Charge{
			Bottle: w.optional(s.Bottle, s, "bottle"), Grams: w.optional(s.Charge, s, "charge"), Celsius: w.figure(s.Temperature, 1, s, "at"),
			Unmeasured: len(unknown) > 0,
		}
	}
	grams, told, err := prep.Carbonate(charge, w.figure(s.Left, perMl, s, "left"), w.volume(pot), pot.Total(constituent.CarbonDioxide), f)
	if err != nil {
		return prep.Outcome{}, err
	}
	out := prep.Aerate(pot, w.names.gas, w.plan.drawer.PerGram(w.names.gas), grams, s.StepPath())
	out.Notes = told.Notes
	return out, nil
}

// makes lists the constituents that the steps of a drink may make.
func makes(d *drink.Drink) []constituent.ID {
	var ids []constituent.ID
	add := func(steps []drink.Step) {
		for _, step := range steps {
			ids = append(ids, prep.Makes(step)...)
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
	if note, warn := prep.Crystallises(pot, c.Keeps.At.Number); warn {
		w.note(Note{Kind: "keeping", Text: c.Name + ": " + note})
	}
}
