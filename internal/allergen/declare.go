package allergen

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"sipsum/internal/fail"
)

// Declare works out the declaration of a drink from its ingredients and from
// the cross-contact that its designer knows of. Entries stand in the order of
// the rules, foods in that of the items. Unknown rules or leaf codes are an
// error with exit code 2.
func Declare(rules string, items []Item, mayContain []string) (Declaration, error) {
	if known().classes[rules] == nil {
		return Declaration{}, fail.New(fail.Wrong, fmt.Sprintf("no allergen rules %q", rules), "use one of: "+strings.Join(known().rules, ", "))
	}
	if err := CheckCodes(items, mayContain); err != nil {
		return Declaration{}, err
	}
	declared, undeclared := newBook(rules), newBook(rules)
	var checks checkList
	for _, it := range items {
		a := Assess(it)
		for _, code := range a.Leaves {
			if known().leaves[code].classes[rules] == "" {
				undeclared.add(code, it, a)
			} else {
				declared.add(code, it, a)
			}
		}
		checks.add(rules, it, a)
	}
	d := Declaration{Rules: rules, Contains: declared.entries(), NotDeclared: undeclared.entries(), Check: checks.all()}
	d.MayContain = crossContact(rules, mayContain, d.Contains)
	return d, nil
}

// Statement gives the line that is printed beside the drink, "" if no class is
// declared. It says nothing about what is not declared.
func (d Declaration) Statement() string {
	if len(d.Contains) == 0 {
		return ""
	}
	names := make([]string, len(d.Contains))
	for i, e := range d.Contains {
		names[i] = e.Name
	}
	return "Contains: " + strings.Join(names, ", ")
}

// CheckCodes reports the leaf codes that data/allergens.csv does not have.
func CheckCodes(items []Item, mayContain []string) error {
	var faults fail.List
	for _, it := range items {
		codes, _ := it.stated(markAllergen)
		for _, code := range codes {
			if !IsLeaf(code) {
				faults.Add(fail.Place{}, "use one of: "+LeafNames(), "%s: unknown allergen %q", it.Food, code)
			}
		}
	}
	for _, code := range mayContain {
		if !IsLeaf(code) {
			faults.Add(fail.Place{}, "use one of: "+LeafNames(), "may-contain: unknown allergen %q", code)
		}
	}
	return faults.Err(fail.Wrong)
}

// book gathers entries by class, or by leaf where the rules declare none.
type book struct {
	rules string
	byKey map[string]*Entry
	keys  []string
}

func newBook(rules string) *book { return &book{rules: rules, byKey: map[string]*Entry{}} }

func (b *book) entry(code string) *Entry {
	l := known().leaves[code]
	c, declared := known().classes[b.rules][l.classes[b.rules]]
	key := c.code
	if !declared {
		key = code
	}
	e := b.byKey[key]
	if e == nil {
		e = &Entry{Code: key, Name: c.name, From: []string{}, Via: []string{}, Leaves: []string{}, Knowledge: []Evidence{}, Note: c.note, Source: c.source}
		if !declared {
			e.Name, e.Source = l.word, l.sources[b.rules]
		}
		b.byKey[key] = e
		b.keys = append(b.keys, key)
	}
	e.Leaves = addOnce(e.Leaves, code)
	return e
}

func (b *book) add(code string, it Item, a Assessment) {
	e := b.entry(code)
	e.From = addOnce(e.From, it.Food.String())
	if via := it.via(); via != "" {
		e.Via = addOnce(e.Via, via)
	}
	evidence := Evidence{Food: it.Food.String(), Leaf: code, How: Stated}
	if a.Knowledge != Stated {
		evidence.How, evidence.Rules = Inferred, a.Rules[code]
	}
	if !slices.ContainsFunc(e.Knowledge, func(k Evidence) bool { return k.Food == evidence.Food && k.Leaf == evidence.Leaf }) {
		e.Knowledge = append(e.Knowledge, evidence)
	}
}

// entries gives the classes in the order of the rules, then leaves by name,
// each named as the rules want it.
func (b *book) entries() []Entry {
	classes := known().classes[b.rules]
	slices.SortStableFunc(b.keys, func(x, y string) int {
		return cmp.Or(cmp.Compare(place(classes, x), place(classes, y)), cmp.Compare(x, y))
	})
	out := make([]Entry, 0, len(b.keys))
	for _, key := range b.keys {
		e := *b.byKey[key]
		words := make([]string, len(e.Leaves))
		for i, code := range e.Leaves {
			words[i] = known().leaves[code].word
		}
		switch classes[key].naming {
		case "class and leaves":
			e.Name += " (" + strings.Join(words, ", ") + ")"
		case "leaves":
			e.Name = upperFirst(strings.Join(words, ", "))
		}
		out = append(out, e)
	}
	return out
}

// place orders classes as the rules do; what is no class comes last.
func place(classes map[string]class, key string) int {
	if c, ok := classes[key]; ok {
		return c.order
	}
	return math.MaxInt
}

func upperFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// crossContact gives the stated cross-contact that is not declared anyway.
func crossContact(rules string, codes []string, contains []Entry) []Entry {
	b := newBook(rules)
	for _, code := range codes {
		class := known().classes[rules][known().leaves[code].classes[rules]]
		if slices.ContainsFunc(contains, func(e Entry) bool {
			return e.Code == class.code && (class.naming == "class" || slices.Contains(e.Leaves, code))
		}) {
			continue
		}
		b.entry(code)
	}
	return b.entries()
}
