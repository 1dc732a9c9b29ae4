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
	status string // "verified", "secondary" or "unverified"
}

// Unverified is the status of a reference that nobody has read in the official text.
const Unverified = "unverified"

// naming is how a class is printed.
var naming = struct{ class, leaves, both string }{"class", "leaves", "class and leaves"}

// leaf is one allergen as exactly as it is known.
type leaf struct {
	code    string
	word    string           // as printed
	generic bool             // which one nobody has said
	partOf  string           // the leaf that says the same less exactly
	under   map[string]under // by rules
}

// under is what one set of rules makes of a leaf.
type under struct {
	classes []string // empty = not declared there
	name    string   // as these rules have it printed; empty = the word of the leaf
	source  string
	status  string
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
			naming: row.Text("naming"), note: row.Text("note"), source: row.Text("source"), status: row.Text("status"),
		}
	}
	for _, row := range embedded.Rows("allergens.csv") {
		l := c.leaves[row.Text("leaf")]
		if l == nil {
			l = &leaf{code: row.Text("leaf"), word: row.Text("word"), partOf: row.Text("part_of"), generic: row.Text("generic") == "yes", under: map[string]under{}}
			c.leaves[l.code] = l
			c.order = append(c.order, l.code)
		}
		l.under[row.Text("rules")] = under{list(row.Text("class")), row.Text("name"), row.Text("source"), row.Text("status")}
	}
	return c
})

// classesOf gives the classes that a leaf is declared as under a set of rules; none: it is
// not declared there.
func classesOf(rules, code string) []string { return known().leaves[code].under[rules].classes }

// declared reports whether a set of rules declares a leaf.
func declared(rules, code string) bool { return len(classesOf(rules, code)) > 0 }

// IsLeaf reports whether a code is a leaf of data/allergens.csv.
func IsLeaf(code string) bool { return known().leaves[code] != nil }

// LeafNames gives all leaf codes as one line of advice.
func LeafNames() string { return strings.Join(known().order, ", ") }

// LeavesOf gives the leaves by which a food may hold what a word means: a leaf, or all the
// leaves of a declared class of any rules, such as "milk" or "nuts", in capitals or not. Who
// wants none of them wants neither what is more exact (cows' milk is milk) nor what nobody
// has said exactly: a nut that is not stated may be an almond.
func LeavesOf(word string) []string {
	asked := meantBy(word)
	var found []string
	for _, code := range known().order {
		l := known().leaves[code]
		of := func(a string) bool {
			other := known().leaves[a]
			wider := l.partOf == a || other.generic && alike(a, code)
			return a == code || wider || other.partOf == code || l.generic && alike(a, code)
		}
		if slices.ContainsFunc(asked, of) {
			found = append(found, code)
		}
	}
	return found
}

// meantBy gives the leaf of a word, and the leaves of the class of it.
func meantBy(word string) []string {
	word = plain(word)
	var found []string
	for _, code := range known().order {
		if plain(code) == word || plain(known().leaves[code].word) == word {
			found = addOnce(found, code)
		}
		for _, u := range known().leaves[code].under {
			if slices.ContainsFunc(u.classes, func(class string) bool { return plain(class) == word }) {
				found = addOnce(found, code)
			}
		}
	}
	return found
}

// plain is a word without what nobody minds in it: capitals, hyphens, a plural.
func plain(word string) string {
	return strings.TrimSuffix(strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(word), "-", " ")), " "), "s")
}

// alike reports whether some rules declare two leaves as one class.
func alike(a, b string) bool {
	return slices.ContainsFunc(known().rules, func(rules string) bool {
		return slices.ContainsFunc(classesOf(rules, a), func(class string) bool { return slices.Contains(classesOf(rules, b), class) })
	})
}

// Words gives everything that LeavesOf understands: the classes, then the
// leaves.
func Words() []string {
	var words []string
	for _, code := range known().order {
		for _, rules := range known().rules {
			for _, class := range classesOf(rules, code) {
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
