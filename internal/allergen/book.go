package allergen

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
)

// book gathers entries by class, or by leaf where the rules declare none.
type book struct {
	rules string
	byKey map[string]*Entry
	keys  []string
}

func newBook(rules string) *book { return &book{rules: rules, byKey: map[string]*Entry{}} }

// entry gives the entry of a class; of the leaf itself where the class is empty.
func (b *book) entry(class, code string) *Entry {
	key := cmp.Or(class, code)
	e := b.byKey[key]
	if e == nil {
		e = &Entry{Code: key, From: []string{}, Via: []string{}, Ways: []Way{}, Leaves: []string{}, Knowledge: []Evidence{}}
		if c, ok := known().classes[b.rules][class]; ok {
			e.Name, e.Note, e.Source, e.Status = c.name, c.note, c.source, c.status
		} else {
			l := known().leaves[code]
			e.Name, e.Source, e.Status = l.word, l.under[b.rules].source, l.under[b.rules].status
		}
		b.byKey[key] = e
		b.keys = append(b.keys, key)
	}
	e.Leaves = addOnce(e.Leaves, code)
	return e
}

// add writes down that a food holds a leaf, under each class that declares it.
func (b *book) add(code string, it Item, a Assessment) {
	classes := classesOf(b.rules, code)
	if len(classes) == 0 {
		classes = []string{""}
	}
	for _, class := range classes {
		b.entry(class, code).hold(code, it, a)
	}
}

// hold notes the food, its way into the drink, and how it is known.
func (e *Entry) hold(code string, it Item, a Assessment) {
	id := it.Food.String()
	e.From = addOnce(e.From, id)
	via := it.via()
	if via != "" {
		e.Via = addOnce(e.Via, via)
	}
	i := slices.IndexFunc(e.Ways, func(w Way) bool { return w.Food == id })
	if i < 0 {
		e.Ways = append(e.Ways, Way{Food: id, Via: []string{}})
		i = len(e.Ways) - 1
	}
	if via == "" {
		via = inBuild
	}
	e.Ways[i].Via = addOnce(e.Ways[i].Via, via)
	evidence := Evidence{Food: id, Leaf: code, How: a.Knowledge}
	if a.Knowledge == NotAssessed || a.Knowledge == Inferred {
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
			words[i] = cmp.Or(known().leaves[code].under[b.rules].name, known().leaves[code].word)
		}
		switch classes[key].naming {
		case naming.both:
			e.Name += " (" + strings.Join(words, ", ") + ")"
		case naming.leaves:
			e.Name = clean.UpperFirst(strings.Join(words, ", "))
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
