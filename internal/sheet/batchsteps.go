package sheet

import (
	"fmt"
	"strings"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/note"
	"sipsum/internal/solution"
)

// StepOf is a step as a bench card tells it, with the amounts of the batch.
func StepOf(m batch.Move) string {
	kind := m.Step.Kind()
	switch s := m.Step.(type) {
	case *drink.Reduce:
		return joined(kind, toward(m, "to"), agentBy(s.By), boiling(s.Boil))
	case *drink.Strain:
		return joined(kind, "through", s.Through) + collect(m)
	case *drink.Curdle:
		return joined(kind, "by", s.By, at(s.Temperature)) + collect(m)
	case *drink.Clarify:
		return joined(kind, "by", s.By, with(m), at(s.Temperature)) + collect(m)
	case *drink.Brew:
		return kind + ": " + listed(outOf(m), named("strength", s.Strength), named("yield", s.Yield))
	case *drink.Steep:
		return joined(kind, lines(m), at(s.Temperature), lasting(s.Minutes)) + collect(m)
	case *drink.Wash:
		return joined(kind, "with", lines(m)) + collect(m)
	case *drink.Add:
		return joined(kind, lines(m))
	case *drink.Chill:
		if s.Melt != nil {
			return joined("chill:", amountOf(m, "melt"), "of ice melts")
		}
		return joined("chill with ice from", quantity(s.From), "to", quantity(s.To))
	case *drink.Cool:
		return joined(kind, "to", quantity(&s.To))
	case *drink.Dilute:
		return joined("dilute with water", toward(m, "to"), reaching("°Brix", s.Brix))
	case *drink.Caramelise:
		return joined(kind, toward(m, "to")) + losing(s.Loss)
	case *drink.Concentrate:
		return joined(kind, "by", s.By, toward(m, "to"))
	case *drink.Adjust:
		return joined("adjust", reaching("pH", s.PH), reaching("acidity", s.TA), reaching("°Brix", s.Brix), with(m))
	}
	return plainStep(m)
}

// plainStep tells the steps that hardly any amount changes.
func plainStep(m batch.Move) string {
	kind := m.Step.Kind()
	switch s := m.Step.(type) {
	case *drink.Invert:
		return joined(kind, quantity(s.Share), at(s.Temperature), lasting(s.Minutes))
	case *drink.Hydrolyse:
		return joined(kind, quantity(&s.Lactose), "of the lactose")
	case *drink.Convert:
		return joined(kind, quantity(&s.Starch), "of the starch to", s.To)
	case *drink.Ferment:
		return joined(kind, at(s.Temperature), lasting(s.Minutes), until(s))
	case *drink.Heat:
		return joined(kind, boiling(s.Boil))
	case *drink.Split:
		return joined(kind+":", clean.Prose(s.Because)) + collect(m)
	case *drink.Carbonate:
		if s.Bottle == nil {
			return joined("carbonate to", quantity(s.Left))
		}
		return joined("charge a bottle of", s.Bottle.String(), "with", s.Charge.String(), "of carbon dioxide", at(s.Temperature))
	case *drink.Foam:
		return frothed(s)
	case *drink.Treat:
		return "treat: " + clean.Prose(s.Technique)
	case *drink.Measured:
		return "read again: " + listed(amountOf(m, "mass"), readAs("°Brix", s.Brix), readAs("% solids", s.TDS), readAs("pH", s.PH),
			readAs("acidity", s.TA), readAs("density", s.Density), readAs("alcohol", s.ABV), titrated(s))
	}
	return kind
}

// frothed tells how a foam is made, and what was read of it.
func frothed(s *drink.Foam) string {
	text := joined("foam", at(s.Temperature))
	if s.Gas != "" {
		vessel := "a siphon"
		if s.Bottle != nil {
			vessel += " of " + s.Bottle.String()
		}
		text = joined("foam: charge", vessel, "with", s.Charge.String(), "of", solution.Gas(s.Gas).Name(), at(s.Temperature))
	}
	if s.Overrun != nil {
		text += ", overrun " + quantity(s.Overrun) + " as read"
	}
	return text
}

// joined puts the words of a step together, those that are there.
func joined(words ...string) string {
	var said []string
	for _, w := range words {
		if w != "" {
			said = append(said, w)
		}
	}
	return strings.Join(said, " ")
}

// listed sets what is there beside each other.
func listed(words ...string) string {
	var said []string
	for _, w := range words {
		if w != "" {
			said = append(said, w)
		}
	}
	return strings.Join(said, ", ")
}

func amountOf(m batch.Move, name string) string {
	if w, ok := m.Find(name); ok {
		return WeighedText(w)
	}
	return ""
}

// toward is the mass to which a step is done.
func toward(m batch.Move, name string) string {
	if text := amountOf(m, name); text != "" {
		return "to " + text + precise(m, name)
	}
	return ""
}

func collect(m batch.Move) string {
	if text := amountOf(m, "collect"); text != "" {
		return ", collect " + text + precise(m, "collect")
	}
	return ""
}

func outOf(m batch.Move) string {
	if text := amountOf(m, "out"); text != "" {
		return text + " in the cup" + precise(m, "out")
	}
	return ""
}

// precise says to what an amount of a step is weighed.
func precise(m batch.Move, name string) string {
	if w, ok := m.Find(name); ok && StepText(w) != "" {
		return " (to " + StepText(w) + ")"
	}
	return ""
}

// lines are what a step brings.
func lines(m batch.Move) string {
	var list []string
	for _, w := range m.Lines {
		if w.Home != nil { // its amount stands in the list above, and is not to be added twice
			list = append(list, clean.Name(w.Name))
			continue
		}
		list = append(list, WeighedText(w)+" "+clean.Name(w.Name))
	}
	return strings.Join(list, ", ")
}

func with(m batch.Move) string {
	if text := lines(m); text != "" {
		return "with " + text
	}
	return ""
}

// quantity writes what the file states, without its ±.
func quantity(q *drink.Quantity) string {
	if q == nil {
		return ""
	}
	return strings.TrimSpace(fmt.Sprintf("%.*f %s", q.Decimals, q.Number, clean.Name(q.Unit)))
}

func at(q *drink.Quantity) string { return before("at", q) }

// lasting tells minutes, and hours of what takes long.
func lasting(q *drink.Quantity) string {
	const long, hour = 120, 60
	if q != nil && q.Number >= long {
		return "for " + note.Grams(q.Number/hour) + " h"
	}
	return before("for", q)
}

func agentBy(q *drink.Quantity) string { return before("by", q) }

func before(word string, q *drink.Quantity) string {
	if q == nil {
		return ""
	}
	return word + " " + quantity(q)
}

func boiling(b drink.Boil) string { return joined(at(b.Temperature), lasting(b.Minutes)) }

// reaching is a reading that a step aims at, readAs one that was taken.
func reaching(what string, q *drink.Quantity) string {
	if q == nil {
		return ""
	}
	return "to " + readAs(what, q)
}

func readAs(what string, q *drink.Quantity) string {
	switch {
	case q == nil:
		return ""
	case strings.HasPrefix(what, "°") || strings.HasPrefix(what, "%"):
		return quantity(&drink.Quantity{Number: q.Number, Decimals: q.Decimals}) + " " + what
	}
	return what + " " + quantity(q)
}

func named(what string, q *drink.Quantity) string {
	if q == nil {
		return ""
	}
	return what + " " + quantity(q)
}

func losing(q *drink.Quantity) string {
	if q == nil {
		return ""
	}
	return ", " + quantity(q) + " of the sugars go"
}

func until(s *drink.Ferment) string {
	if text := listed(readAs("°Brix", s.Brix), readAs("alcohol", s.ABV)); text != "" {
		return "until " + text
	}
	return ""
}

func titrated(s *drink.Measured) string {
	if len(s.Titration) > 0 {
		return "titration"
	}
	return ""
}
