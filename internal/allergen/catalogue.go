package allergen

import (
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/data"
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
	for _, row := range rowsOf("allergen_rules.csv") {
		rules := row["rules"]
		if c.classes[rules] == nil {
			c.classes[rules] = map[string]class{}
			c.rules = append(c.rules, rules)
		}
		order, err := strconv.Atoi(row["order"])
		if err != nil {
			panic("allergen: allergen_rules.csv: " + err.Error())
		}
		c.classes[rules][row["class"]] = class{
			code: row["class"], order: order, name: row["name"],
			naming: row["naming"], note: row["note"], source: row["source"],
		}
	}
	for _, row := range rowsOf("allergens.csv") {
		l := c.leaves[row["leaf"]]
		if l == nil {
			l = &leaf{
				code: row["leaf"], word: row["word"], partOf: row["part_of"],
				classes: map[string]string{}, sources: map[string]string{},
			}
			c.leaves[l.code] = l
			c.order = append(c.order, l.code)
		}
		l.classes[row["rules"]], l.sources[row["rules"]] = row["class"], row["source"]
	}
	return c
})

// rowsOf reads an embedded file whose rows are named by its header.
func rowsOf(name string) []map[string]string {
	file, err := data.FS.Open(name)
	if err != nil {
		panic("allergen: " + err.Error())
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("allergen: " + name + ": " + err.Error())
	}
	rows := make([]map[string]string, 0, len(records)-1)
	for _, record := range records[1:] {
		row := make(map[string]string, len(record))
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// Rules gives the sets of rules that this package can declare under.
func Rules() []string { return slices.Clone(known().rules) }

// Leaves gives every leaf code, in the order of data/allergens.csv.
func Leaves() []string { return slices.Clone(known().order) }

// IsLeaf reports whether a code is a leaf of data/allergens.csv.
func IsLeaf(code string) bool { return known().leaves[code] != nil }

// leafNames gives all leaf codes as one line of advice.
func leafNames() string { return strings.Join(known().order, ", ") }

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
