package allergen

// Declaration is what must be said of a drink under one set of rules. Its form
// in JSON is that of sipsum.allergens/1.
type Declaration struct {
	Rules       string  `json:"rules"`
	Contains    []Entry `json:"contains"`
	MayContain  []Entry `json:"may_contain"`  // cross-contact that the designer stated
	NotDeclared []Entry `json:"not_declared"` // present, and no class of these rules
	Check       []Check `json:"check"`        // what somebody has to decide
}

// Entry is one declared class, or one leaf that the rules do not declare.
type Entry struct {
	Code      string     `json:"code"`
	Name      string     `json:"name"` // as the rules have it printed
	From      []string   `json:"from"` // foods
	Via       []string   `json:"via"`  // components, or "garnish, not eaten"; empty if the food stands in the build
	Leaves    []string   `json:"leaves"`
	Knowledge []Evidence `json:"knowledge"`
	Note      string     `json:"note,omitempty"`
	Source    string     `json:"source"`
}

// Evidence says how it is known that a food holds a leaf.
type Evidence struct {
	Food  string    `json:"food"`
	Leaf  string    `json:"leaf"`
	How   Knowledge `json:"how"`
	Rules []string  `json:"rules,omitempty"` // ids in data/mark_rules.csv
}

// The codes of what is to be checked.
const (
	CheckNotAssessed = "not-assessed"  // nobody has stated or settled what the food holds
	CheckPossible    = "possible"      // often present in such a food: ask the supplier
	CheckContradicts = "contradiction" // the name says what the statement leaves out
)

// Check is one thing to be checked.
type Check struct {
	Code   string   `json:"code"`
	Leaf   string   `json:"leaf,omitempty"`
	Name   string   `json:"name,omitempty"`
	Foods  []string `json:"foods"`
	Text   string   `json:"text"`
	Source string   `json:"source,omitempty"`
}

// Open reports whether something is left that needs a decision.
func (d Declaration) Open() bool { return len(d.Check) > 0 }

// Caution is printed under every declaration.
const Caution = "Worked out from composition tables and from what their rows are called. Check it against the labels of what you use and your local code; tell guests who ask what the kitchen knows and what it does not."
