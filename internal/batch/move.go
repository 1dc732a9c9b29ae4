package batch

import (
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// Move is a step with the amounts that it has in the batch.
type Move struct {
	Step    drink.Step
	Lines   []Weighed // what it brings
	Amounts []Weighed // to what it is collected, reduced, diluted
}

// Find gives an amount of the step by its parameter.
func (m Move) Find(name string) (Weighed, bool) {
	for _, a := range m.Amounts {
		if a.Name == name {
			return a, true
		}
	}
	return Weighed{}, false
}

// move is a step k times, and that done again and again.
func (m *maker) move(step drink.Step, k, more float64) Move {
	move := Move{Step: step}
	for _, line := range step.Lines() {
		move.Lines = append(move.Lines, m.weighed(line, k, more))
	}
	for _, p := range Growing(step) {
		exact := times(*p.Amount, k)
		move.Amounts = append(move.Amounts, Weighed{
			Path: step.StepPath() + "/" + p.Name, Name: p.Name, Amount: exact, Rounded: m.round(exact),
			Grams: exact.Base(), Times: k * more, file: 1 / k,
		})
	}
	return move
}

// Parameter is an amount of a step.
type Parameter struct {
	Name   string
	Amount *unit.Amount // in the step
}

// Growing lists the amounts of a step that grow with the pot. What a titration takes of it does not.
func Growing(step drink.Step) []Parameter {
	var list []Parameter
	add := func(name string, a *unit.Amount) {
		if a != nil {
			list = append(list, Parameter{name, a})
		}
	}
	switch s := step.(type) {
	case *drink.Reduce:
		add("to", s.To)
	case *drink.Strain:
		add("collect", &s.Collect)
	case *drink.Curdle:
		add("collect", &s.Collect)
	case *drink.Clarify:
		add("collect", &s.Collect)
	case *drink.Brew:
		add("out", s.Out)
	case *drink.Steep:
		add("collect", s.Collect)
	case *drink.Chill:
		add("melt", s.Melt)
	case *drink.Dilute:
		add("to", s.To)
	case *drink.Caramelise:
		add("to", s.To)
	case *drink.Concentrate:
		add("to", &s.To)
	case *drink.Wash:
		add("collect", s.Collect)
	case *drink.Split:
		add("collect", s.Collect)
	case *drink.Carbonate:
		add("bottle", s.Bottle)
		add("charge", s.Charge)
	case *drink.Foam:
		add("bottle", s.Bottle)
		add("charge", s.Charge)
	case *drink.Measured:
		add("mass", s.Mass)
	}
	return list
}

// doses are the lines whose amount a step finds, by path.
func (m *maker) doses() map[string]bool {
	found := map[string]bool{}
	add := func(steps []drink.Step) {
		for _, step := range steps {
			if _, ok := step.(*drink.Adjust); ok {
				for _, line := range step.Lines() {
					found[line.Path] = true
				}
			}
		}
	}
	for _, c := range m.Recipe.Drink.Components {
		add(c.Steps)
	}
	add(m.Recipe.Drink.Finish)
	return found
}
