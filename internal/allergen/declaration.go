package allergen

import (
	"slices"

	"sipsum/internal/fail"
)

// Declaration is what must be said of a drink under one set of rules.
type Declaration struct {
	Rules       string
	Contains    []Entry
	MayContain  []Entry // cross-contact that the designer stated
	NotDeclared []Entry // present, and no class of these rules
	Excepted    []Entry // of a class of these rules, and taken out of it by them
	Check       []Check // what somebody has to decide
}

// Entry is one declared class, or one leaf that the rules do not declare.
type Entry struct {
	Code      string
	Name      string   // as the rules have it printed
	From      []string // foods
	Via       []string // components, or "garnish, not eaten"; empty if the food stands in the build
	Ways      []Way    // each food with its own ways into the drink, in the order of From
	Leaves    []string
	Knowledge []Evidence
	Note      string
	Source    string
	Status    string // of the reference: "verified", "secondary" or "unverified"
}

// HowKnown gives the kinds of knowledge behind one food of the entry.
func (e *Entry) HowKnown(food string) []string {
	var list []string
	for _, k := range e.Knowledge {
		if k.Food == food && !slices.Contains(list, string(k.How)) {
			list = append(list, string(k.How))
		}
	}
	return list
}

// Way is how one food gets into the drink: by components from the outermost in, or by the
// build itself.
type Way struct {
	Food string
	Via  []string
}

// Straight reports whether the food stands in the build and nowhere else.
func (w Way) Straight() bool { return len(w.Via) == 1 && w.Via[0] == inBuild }

// Evidence says how it is known that a food holds a leaf.
type Evidence struct {
	Food  string
	Leaf  string
	How   Knowledge
	Rules []string // ids in data/mark_rules.csv
}

// The codes of what is to be checked.
const (
	CheckNotAssessed = "not-assessed"  // nobody has stated or settled what the food holds
	CheckPossible    = "possible"      // a question is open, and an allergen hangs on it
	CheckContradicts = "contradiction" // the name or the group says what the statement leaves out
	CheckLent        = "lent"          // what the food borrows from holds what the statement leaves out
)

// Check is one thing to be checked.
type Check struct {
	Code     string
	Leaf     string   // the first of Leaves
	Leaves   []string // that could be in it; empty: any
	Name     string   // of their classes
	Foods    []string
	Places   []fail.Place // where own foods are written
	Question string       // "of which animal?"
	Text     string
	Answer   string // how it is settled
	Source   string

	says string // what speaks against the statement
}

// Caution is printed under every declaration.
const Caution = "Worked out from composition tables and from what their rows are called. Check it against the labels of what you use and your local code; tell guests who ask what the kitchen knows and what it does not."
