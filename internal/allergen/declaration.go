package allergen

// Declaration is what must be said of a drink under one set of rules.
type Declaration struct {
	Rules       string
	Contains    []Entry
	MayContain  []Entry // cross-contact that the designer stated
	NotDeclared []Entry // present, and no class of these rules
	Check       []Check // what somebody has to decide
}

// Entry is one declared class, or one leaf that the rules do not declare.
type Entry struct {
	Code      string
	Name      string   // as the rules have it printed
	From      []string // foods
	Via       []string // components, or "garnish, not eaten"; empty if the food stands in the build
	Leaves    []string
	Knowledge []Evidence
	Note      string
	Source    string
}

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
	CheckPossible    = "possible"      // often present in such a food: ask the supplier
	CheckContradicts = "contradiction" // the name says what the statement leaves out
)

// Check is one thing to be checked.
type Check struct {
	Code   string
	Leaf   string
	Name   string
	Foods  []string
	Text   string
	Source string
}

// Caution is printed under every declaration.
const Caution = "Worked out from composition tables and from what their rows are called. Check it against the labels of what you use and your local code; tell guests who ask what the kitchen knows and what it does not."
