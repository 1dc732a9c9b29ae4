package allergen

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// class is what a set of rules declares.
type class struct {
	code   string
	order  int
	name   string // as printed
	naming string // "class", "leaves" or "class and leaves"
	note   string // what the declarer has to add or to check
	source string
}

// leaf is one allergen as exactly as it is known.
type leaf struct {
	code    string
	word    string            // as printed
	partOf  string            // the leaf that says the same less exactly
	classes map[string]string // by rules; "" = not declared there
	sources map[string]string // by rules
}

type catalogue struct {
	rules   []string                    // in order of appearance
	classes map[string]map[string]class // by rules and code
	leaves  map[string]*leaf
	order   []string // leaf codes in file order
}

var known = sync.OnceValue(func() *catalogue {
	c := &catalogue{classes: map[string]map[string]class{}, leaves: map[string]*leaf{}}
	for _, row := range embedded.Rows("allergen_rules.csv") {
		rules := row.Text("rules")
		if c.classes[rules] == nil {
			c.classes[rules] = map[string]class{}
			c.rules = append(c.rules, rules)
		}
		c.classes[rules][row.Text("class")] = class{
			code: row.Text("class"), order: row.Whole("order"), name: row.Text("name"),
			naming: row.Text("naming"), note: row.Text("note"), source: row.Text("source"),
		}
	}
	for _, row := range embedded.Rows("allergens.csv") {
		l := c.leaves[row.Text("leaf")]
		if l == nil {
			l = &leaf{
				code: row.Text("leaf"), word: row.Text("word"), partOf: row.Text("part_of"),
				classes: map[string]string{}, sources: map[string]string{},
			}
			c.leaves[l.code] = l
			c.order = append(c.order, l.code)
		}
		l.classes[row.Text("rules")], l.sources[row.Text("rules")] = row.Text("class"), row.Text("source")
	}
	return c
})

// IsLeaf reports whether a code is a leaf of data/allergens.csv.
func IsLeaf(code string) bool { return known().leaves[code] != nil }

// LeafNames gives all leaf codes as one line of advice.
func LeafNames() string { return strings.Join(known().order, ", ") }

// LeavesOf gives the leaves that a word means: a leaf itself, or all the leaves
// of a declared class of any rules, such as "milk" or "tree nuts".
func LeavesOf(word string) []string {
	if IsLeaf(word) {
		return []string{word}
	}
	var found []string
	for _, code := range known().order {
		for _, class := range known().leaves[code].classes {
			if class == word {
				found = addOnce(found, code)
			}
		}
	}
	return found
}

// Words gives everything that LeavesOf understands: the classes, then the
// leaves.
func Words() []string {
	var words []string
	for _, code := range known().order {
		for _, rules := range known().rules {
			if class := known().leaves[code].classes[rules]; class != "" {
				words = addOnce(words, class)
			}
		}
	}
	slices.Sort(words)
	for _, code := range known().order {
		words = addOnce(words, code)
	}
	return words
}
