package allergen

import (
	"fmt"
	"slices"
	"strings"

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
	contained, undeclared := newBook(rules), newBook(rules)
	d := Declaration{Rules: rules, Excepted: []Entry{}}
	checks := checkList{rules: rules}
	for _, it := range items {
		a := Assess(it)
		for _, code := range a.Leaves {
			switch x := exceptionOf(rules, code, it); {
			case !declared(rules, code):
				undeclared.add(code, it, a)
			case x != nil && a.Knowledge != Stated:
				d.except(x, code, it, a)
			default:
				contained.add(code, it, a)
			}
		}
		checks.add(it, a)
	}
	d.Contains, d.NotDeclared, d.Check = contained.entries(), undeclared.entries(), checks.all()
	d.MayContain = crossContact(rules, mayContain, d.Contains)
	return d, nil
}

// except notes what the rules take out of a class, by what it is taken out for.
func (d *Declaration) except(x *exception, code string, it Item, a Assessment) {
	i := slices.IndexFunc(d.Excepted, func(e Entry) bool { return e.Code == code && e.Source == x.source })
	if i < 0 {
		d.Excepted = append(d.Excepted, Entry{
			Code: code, Name: known().leaves[code].word, Leaves: []string{code}, Note: x.what, Source: x.source, Status: x.status,
			From: []string{}, Via: []string{}, Ways: []Way{}, Knowledge: []Evidence{},
		})
		i = len(d.Excepted) - 1
	}
	d.Excepted[i].hold(code, it, a)
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
				faults.Add(it.Place, "use one of: "+LeafNames(), "%s: unknown allergen %q", it.Food, code)
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

// crossContact gives the stated cross-contact that is not declared anyway.
func crossContact(rules string, codes []string, contains []Entry) []Entry {
	b := newBook(rules)
	for _, code := range codes {
		classes := classesOf(rules, code)
		if len(classes) == 0 {
			b.entry("", code)
		}
		for _, class := range classes {
			if !slices.ContainsFunc(contains, func(e Entry) bool {
				return e.Code == class && (known().classes[rules][class].naming == naming.class || slices.Contains(e.Leaves, code))
			}) {
				b.entry(class, code)
			}
		}
	}
	return b.entries()
}
