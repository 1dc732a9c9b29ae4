package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// Constructors for the keys that grammars share. Field gives the place that the value
// goes to.

// into is a key whose value goes as it is read into a field.
func into[T, V any](name, doc string, must bool, s shape, read func(r *reader, n ast.Node, name string) V, field func(*T) *V) key[T] {
	return key[T]{name, doc, must, s, func(r *reader, t *T, n ast.Node) { *field(t) = read(r, n, name) }}
}

// text is a text for people, or one that names something.
func text[T any](name, doc string, must bool, most int, field func(*T) *string) key[T] {
	read := func(r *reader, n ast.Node, name string) string {
		text, _ := r.text(n, name, most)
		return text
	}
	return into(name, doc, must, textShape(most), read, field)
}

// prose is a sentence that must be given.
func prose[T any](name, doc string, field func(*T) *string) key[T] {
	return text(name, doc, true, mostProse, field)
}

// word is one of a closed list, in capitals or not.
func word[T any](name, doc string, must bool, allowed []string, field func(*T) *string) key[T] {
	return key[T]{name, doc, must, enumShape(allowed), func(r *reader, t *T, n ast.Node) {
		text, ok := r.text(n, name, mostName)
		text, _ = amongWords(text, name, allowed)
		if ok && r.oneOf(n, text, name, allowed) {
			*field(t) = text
		}
	}}
}

// words is a list of different texts, any or of a closed list.
func words[T any](name, doc string, allowed []string, field func(*T) *[]Word) key[T] {
	entry := textShape(mostName)
	if len(allowed) > 0 {
		entry = enumShape(allowed)
	}
	read := func(r *reader, n ast.Node, name string) []Word { return r.words(n, name, allowed) }
	return into(name, doc, false, listOf(entry), read, field)
}

// amount is a kitchen measure, with or without ±.
func amount[T any](name, doc string, kinds []unit.Kind, field func(*T) **unit.Amount) key[T] {
	read := func(r *reader, n ast.Node, name string) *unit.Amount { return r.amount(n, name, kinds) }
	return into(name, doc, false, amountShape(kinds), read, field)
}

// mass is an amount by weight; the pot stands on a scale.
func mass[T any](name, doc string, field func(*T) **unit.Amount) key[T] {
	return amount(name, doc, massOnly, field)
}

// massValue is a mass that must be given.
func massValue[T any](name, doc string, field func(*T) *unit.Amount) key[T] {
	return key[T]{name, doc, true, amountShape(massOnly), func(r *reader, t *T, n ast.Node) {
		if a := r.amount(n, name, massOnly); a != nil {
			*field(t) = *a
		}
	}}
}

// exact is an amount without ±.
func exact[T any](name, doc string, kinds []unit.Kind, field func(*T) **unit.Amount) key[T] {
	read := func(r *reader, n ast.Node, name string) *unit.Amount { return r.exactAmount(n, name, kinds) }
	return into(name, doc, false, amountShape(kinds), read, field)
}

// end is one end of a range of amounts.
func end[T any](name, doc string, field func(*T) *unit.Amount) key[T] {
	read := func(r *reader, n ast.Node, name string) unit.Amount { return r.bound(n, name, either) }
	return into(name, doc, true, amountShape(either), read, field)
}

// scaled is a quantity of a scale.
func scaled[T any](name, doc string, on unit.Scale, field func(*T) **Quantity) key[T] {
	read := func(r *reader, n ast.Node, name string) *Quantity { return r.quantity(n, name, on) }
	return into(name, doc, false, quantityShape(on), read, field)
}

// scaledValue is a quantity that must be given.
func scaledValue[T any](name, doc string, on unit.Scale, field func(*T) *Quantity) key[T] {
	return key[T]{name, doc, true, quantityShape(on), func(r *reader, t *T, n ast.Node) {
		if q := r.quantity(n, name, on); q != nil {
			*field(t) = *q
		}
	}}
}

// lasting is a time, kept in minutes.
func lasting[T any](name, doc string, field func(*T) **Quantity) key[T] {
	return into(name, doc, false, quantityShape(duration), (*reader).minutesOf, field)
}

// someLines is a line or a list of lines of a step that must be given.
func someLines[T any, P stepOf[T]](name, doc string) key[T] {
	return key[T]{name, doc, true, oneOrMoreShape, func(r *reader, s *T, n ast.Node) {
		*P(s).list() = r.oneOrMore(n, name, P(s).StepPath())
	}}
}
