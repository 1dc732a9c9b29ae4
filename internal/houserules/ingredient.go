package houserules

import (
	"maps"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/phrase"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// forbidden is an ingredient as a rule names it.
type forbidden struct {
	text      string
	id        food.ID // of a code
	coded     bool
	name      string                   // what foods are called; of a code what stands before the comma of its name
	words     phrase.List              // of the name
	groups    []string                 // of foods that have its words
	substance *constituent.Constituent // that has this name; nil: none has, or it is in everything
}

func forbiddenOf(text string) forbidden {
	f := forbidden{text: text, name: text}
	if f.id, f.coded = food.ParseID(text); f.coded {
		f.name = ""
		if f.id.Table == coreTable {
			f.name = beforeComma(coreNames()[f.id.Code])
		}
		return f
	}
	f.words, f.groups = phraseOf(beforeComma(text)), claims.GroupsCalled(text)
	if of := constituent.Said(text); len(of) == 1 && of[0].Kind == constituent.Leaf && of[0].ID != constituent.Water {
		f.substance = of[0]
	}
	return f
}

// phraseOf makes a phrase of a name, plurals aside.
func phraseOf(name string) phrase.List {
	words := phrase.Words(name)
	for i, w := range words {
		if len(w) > len("gas") {
			words[i] = strings.TrimSuffix(w, "s")
		}
	}
	return phrase.Read(strings.Join(words, " "))
}

func beforeComma(name string) string {
	before, _, _ := strings.Cut(name, ",")
	return strings.TrimSpace(before)
}

// inWords is what the rule says, of a code of the core table with its name.
func (x forbidden) inWords() string {
	if name := coreNames()[x.id.Code]; x.coded && x.id.Table == coreTable {
		return name + " (" + x.text + ")"
	}
	return x.text
}

// is tells whether a food is surely it.
func (x forbidden) is(f pouredFood) bool {
	switch {
	case x.coded:
		return f.ID == x.id
	case claims.Called(f.Food, x.text):
		return true
	case x.substance == nil:
		return false
	}
	cell := f.profile().Cell(x.substance.ID)
	return cell.Known && cell.Amount >= unit.LimitOf("what is poured as one substance", "").Low
}

// nobodyTold is said of an own food without a kind and a lender, and tellIt is what settles that.
const (
	nobodyTold = ": nobody told what is in it"
	tellIt     = "state of your own food its group:, or what it borrows from with fill:"
	meansThat  = "read the rule again: does it mean that too?"
)

// settling says what would settle reasons for which it cannot be told.
func settling(maybe []string) (settle []string) {
	for _, why := range maybe {
		if strings.HasSuffix(why, nobodyTold) {
			settle = once(settle, tellIt)
		} else {
			settle = once(settle, meansThat)
		}
	}
	return settle
}

// maybe says why a food may be it; empty: nothing speaks for it.
func (x forbidden) maybe(f pouredFood) string {
	name := f.called()
	switch {
	case f.lender != nil && (x.coded && f.lender.ID == x.id || !x.coded && claims.Called(f.lender, x.text)):
		return name + " borrows its figures from " + f.lender.ID.String()
	case x.coded && x.name != "" && claims.Called(f.Food, x.name):
		return name + " is called " + x.name + " too"
	case x.coded && x.id.Table != coreTable && f.ID.Table != x.id.Table:
		return name + " is of another table than " + x.text + ": only its name would tell"
	case !x.coded && x.named(f.Food):
		return name + " has it in its name"
	case slices.Contains(x.groups, f.Group):
		return name + " is of the kind " + f.Group
	case f.untold():
		return name + nobodyTold
	}
	return ""
}

// named tells whether the forbidden name stands within a name of a food.
func (x forbidden) named(f *food.Food) bool {
	for _, n := range f.Names {
		if x.words.In(phrase.Words(n.Text)) {
			return true
		}
	}
	return false
}

// known tells whether foods of this name are known at all.
func (x forbidden) known() bool {
	if x.coded || claims.Common(x.text) {
		return true
	}
	if len(constituent.Said(x.text)) > 0 { // alcohol is in foods, and none is called so
		return false
	}
	for _, name := range coreNames() {
		if x.words.In(phrase.Words(name)) {
			return true
		}
	}
	return false
}

// ingredient answers for one forbidden ingredient.
func (c Case) ingredient(text string, p poured) Line {
	x := forbiddenOf(text)
	l := Line{Key: "ingredients", Rule: "no " + x.inWords(), Verdict: Pass, Why: "no food of the drink is called so"}
	var there, maybe []string
	for _, f := range p.foods {
		if x.is(f) {
			there = append(there, f.where())
		} else if why := x.maybe(f); why != "" {
			maybe = append(maybe, why)
		}
	}
	for _, t := range p.told {
		switch {
		case x.coded || !x.words.In(phrase.Words(t.text)) || t.pot && claims.Common(x.text):
		case t.surely:
			there = append(there, t.text+" in "+t.where)
		default:
			maybe = append(maybe, "“"+t.text+"” stands in "+t.where)
		}
	}
	switch {
	case len(there) > 0:
		l.Verdict, l.Why = Fails, "there is "+strings.Join(there, "; ")
	case len(maybe) > 0:
		l.Verdict, l.Why = CannotTell, strings.Join(maybe, "; ")
		l.Settle = settling(maybe)
	case c.declaredAs(text) != "":
		l.Verdict, l.Why = CannotTell, "no food of the drink is called so, but as an allergen: "+c.declaredAs(text)
		l.Settle = []string{"read the rule again: does it mean what is made of it?"}
	case !x.known():
		l.Verdict, l.Why = CannotTell, "no food that sipsum has is called "+text+", so that it would not know one"
		l.Settle = []string{near(text)}
	}
	return l
}

// declaredAs says what is declared of a name that is an allergen too: whey is no milk by its name; empty
// where nothing is.
func (c Case) declaredAs(text string) string {
	if len(allergen.LeavesOf(text)) == 0 {
		return ""
	}
	if l := c.allergen(text); l.Verdict != Pass {
		return l.Why
	}
	return ""
}

// near says which foods have such a name, and how else to forbid it.
func near(text string) string {
	if of := constituent.Said(text); len(of) > 0 {
		return of[0].Words() + " is a constituent: if that is meant, write it under constituents:"
	}
	var names []string
	for _, code := range slices.Sorted(maps.Keys(coreNames())) {
		names = append(names, beforeComma(coreNames()[code]))
	}
	say := "write it as sipsum food find shows it, or forbid its kind"
	if found := spelling.Nearest(text, names); len(found) > 0 {
		say = "perhaps " + found[0] + "; else " + say
	}
	return say
}

// kind answers for one forbidden kind.
func (c Case) kind(text string, p poured) Line {
	l := Line{Key: "kinds", Rule: "no food of the kind " + text, Verdict: Pass, Why: "no food of the drink is of this kind"}
	groups := claims.GroupsCalled(text)
	var there, maybe []string
	for _, f := range p.foods {
		switch {
		case slices.Contains(groups, f.Group):
			there = append(there, f.called()+", "+f.Group+", "+f.way())
		case f.lender != nil && slices.Contains(groups, f.lender.Group):
			maybe = append(maybe, f.called()+" borrows its figures from "+f.lender.ID.String()+", "+f.lender.Group)
		case f.untold():
			maybe = append(maybe, f.called()+nobodyTold)
		case f.Group == "" && f.lender == nil && f.ID.Table != "":
			maybe = append(maybe, "no rule knows of which kind "+f.called()+" is")
		}
	}
	words := phraseOf(text)
	for _, t := range p.told {
		if words.In(phrase.Words(t.text)) {
			maybe = append(maybe, "“"+t.text+"” stands in "+t.where)
		}
	}
	for _, f := range p.foods {
		if (forbidden{words: words}).named(f.Food) && !slices.Contains(groups, f.Group) {
			maybe = append(maybe, f.called()+" has it in its name")
		}
	}
	switch {
	case len(there) > 0:
		l.Verdict, l.Why = Fails, "there is "+strings.Join(there, "; ")
	case len(maybe) > 0:
		l.Verdict, l.Why, l.Settle = CannotTell, strings.Join(maybe, "; "), settling(maybe)
	case c.declaredAs(text) != "":
		l.Verdict, l.Why = CannotTell, "no food of the drink is of this kind, but as an allergen: "+c.declaredAs(text)
		l.Settle = []string{"read the rule again: does it mean what is made of it?"}
	}
	return l
}
