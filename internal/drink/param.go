package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// Constructors for the parameters that steps share. Field gives the place in the
// step that the value goes to.

// mass is an amount by weight; the pot stands on a scale.
func mass[T any](name, doc string, field func(*T) **unit.Amount) key[T] {
	return key[T]{name, doc, false, amountShape(massOnly), func(r *reader, s *T, n ast.Node) {
		*field(s) = r.amount(n, name, massOnly)
	}}
}

// massValue is a mass that must be given.
func massValue[T any](name, doc string, field func(*T) *unit.Amount) key[T] {
	return key[T]{name, doc, true, amountShape(massOnly), func(r *reader, s *T, n ast.Node) {
		if a := r.amount(n, name, massOnly); a != nil {
			*field(s) = *a
		}
	}}
}

// scaled is a quantity of a scale.
func scaled[T any](name, doc string, must bool, on scale, field func(*T) **Quantity) key[T] {
	return key[T]{name, doc, must, quantityShape(on), func(r *reader, s *T, n ast.Node) {
		*field(s) = r.quantity(n, name, on)
	}}
}

// scaledValue is a quantity that must be given.
func scaledValue[T any](name, doc string, on scale, field func(*T) *Quantity) key[T] {
	return key[T]{name, doc, true, quantityShape(on), func(r *reader, s *T, n ast.Node) {
		if q := r.quantity(n, name, on); q != nil {
			*field(s) = *q
		}
	}}
}

// lasting is a time, kept in minutes.
func lasting[T any](name, doc string, field func(*T) **Quantity) key[T] {
	return key[T]{name, doc, false, quantityShape(duration), func(r *reader, s *T, n ast.Node) {
		*field(s) = r.minutesOf(n, name)
	}}
}

// word is one of a closed list and must be given.
func word[T any](name, doc string, allowed []string, field func(*T) *string) key[T] {
	return key[T]{name, doc, true, enumShape(allowed), func(r *reader, s *T, n ast.Node) {
		if text, ok := r.text(n, name, mostName); ok && r.oneOf(n, text, name, allowed) {
			*field(s) = text
		}
	}}
}

// prose is a sentence that must be given.
func prose[T any](name, doc string, field func(*T) *string) key[T] {
	return key[T]{name, doc, true, textShape(mostProse), func(r *reader, s *T, n ast.Node) {
		*field(s), _ = r.text(n, name, mostProse)
	}}
}

// someLines is a line or a list of lines of a step that must be given.
func someLines[T any, P stepOf[T]](name, doc string) key[T] {
	return key[T]{name, doc, true, oneOrMoreShape, func(r *reader, s *T, n ast.Node) {
		*P(s).list() = r.oneOrMore(n, name, P(s).StepPath())
	}}
}
